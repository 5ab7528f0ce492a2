// Many cultures instead of one: which yeast and how vigorous a culture is is not known, so the
// windows come from members that differ as published cultures do.
#pragma once

#include "ferment/dough_heat.hpp"
#include "ferment/kinetics.hpp"
#include "ferment/simulate.hpp"
#include "ferment/windows.hpp"

#include <optional>
#include <string>
#include <vector>

namespace leavenwright {

/// How many members, drawn from which seed, on how many threads. The result does not depend on
/// the threads.
struct Ensemble {
    int members = 1000;
    std::uint64_t seed = 1893;
    unsigned threads = 1;
    /// A culture's own speed against the published middle, 1 without observations.
    double vigour = 1.0;
};
inline constexpr int least_members = 100;
inline constexpr int most_members = 100000;

/// The constants of one member; the same for the same seed and number.
Kinetics member_kinetics(const Ensemble& ensemble, int number);

struct PlannedStage {
    std::string name;
    Temperature surroundings = Temperature::celsius(24.0);
    std::optional<Duration> lasts; // by the clock
    std::optional<Fraction> rise;  // or by the rise over the mixed dough
    std::optional<double> ph;      // and by acid
    Fraction gas_kept{1.0};        // of the bubbles, when it begins
    Mass mass;                     // of one piece
    DoughForm form;
    Surroundings place;
    std::optional<std::size_t> step; // of the process; carried to the window, as the next three
    std::string written;
    std::string signs;
    std::string past;
};

struct DoughPlan {
    DoughMix mix;
    DoughComposition composition;
    Temperature mixed_at = Temperature::celsius(24.0);
    std::vector<PlannedStage> stages; // at least one
    /// Where the dough stands from the mixing on, whatever the stages say; without it each stage
    /// has its own surroundings.
    std::optional<TemperatureProfile> profile;
    Duration longest = hours(96.0); // that one stage is looked at
};

/// Heat first, once per stage, for the likely times; then every member through the stages; then
/// 10, 50 and 90 % of them.
Windows compute_windows(const DoughPlan& plan, const Ensemble& ensemble);

} // namespace leavenwright
