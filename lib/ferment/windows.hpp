// What the engine says about a dough: when each stage is ready, and how rise, acid and warmth go
// on the way. Plain values; plan.hpp makes them, renderers and the card read them.
#pragma once

#include "quantity/quantity.hpp"

#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <vector>

namespace leavenwright {

/// Where the members of the ensemble end: 10, 50 and 90 % of them are ready by these times.
/// Infinite where too few get there within the time that was looked at.
struct Window {
    Duration earliest;
    Duration likely;
    Duration latest;
};

constexpr Duration never() {
    return Duration::from_value(std::numeric_limits<double>::infinity());
}
constexpr bool is_reached(Duration time) {
    return time < never();
}

/// 10, 50 and 90 % of the ensemble: V/V0 - 1 over the mixed dough.
struct RiseRange {
    Fraction low{0.0};
    Fraction likely{0.0};
    Fraction high{0.0};
};

struct StageWindow {
    std::string stage;               // the step: bulk, divide or shape, rest, proof, retard, temper
    std::optional<std::size_t> step; // its number in the process; none where it was made up
    Window in_stage;                 // from the beginning of the stage
    Window after_mixing;             // from the mixing
    bool by_clock = false;           // the stage ends by the clock, not by its rise
    std::string written;             // its time in the formula; empty without one
    std::optional<Fraction> rise;    // that ends it, over the mixed dough: 0.5 is half as much again
    RiseRange rise_at_end;
    Temperature surroundings = Temperature::celsius(0.0);
    Temperature dough = Temperature::celsius(0.0); // at its likely end
    std::string signs;                             // to look for
    std::string past;                              // what happens past the window
};

/// The dough at one time after mixing: 10, 50 and 90 % of the ensemble's rise, the rest of the
/// likely member.
struct CurvePoint {
    Duration time;
    Fraction rise_low;
    Fraction rise_likely;
    Fraction rise_high;
    double ph = 0.0;
    double acid_mmol_per_kg = 0.0;
    Fraction gas_dissolved; // of the gas in the dough
    Temperature surroundings = Temperature::celsius(0.0);
    Temperature dough = Temperature::celsius(0.0);
};

struct Windows {
    std::vector<StageWindow> stages;
    std::vector<CurvePoint> curve; // to the likely end and a third beyond
    int members = 0;
    std::uint64_t seed = 0;
    std::vector<std::string> settings; // one line each: rise targets, losses, shape, temperatures
    std::vector<std::string> cautions;
};

} // namespace leavenwright
