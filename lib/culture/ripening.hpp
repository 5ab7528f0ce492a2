// A levain build: seed, fresh flour and fresh water in a jar, until it is ripe.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "ferment/ensemble.hpp"
#include "ferment/windows.hpp"

#include <optional>

namespace leavenwright {

/// weight of the seed / fresh flour of the build
using SeedShare = Ratio<struct SeedOnFreshFlour>;

struct LevainBuild {
    SeedShare seed = SeedShare::percent(20.0);
    Hydration hydration = Hydration::percent(100.0); // of the whole build; the seed has it too
    Fraction whole_grain;                            // of the flour: its bran holds pH up
    BakersPercentage salt;
    TemperatureProfile place{Temperature::celsius(24.0)};
    std::optional<Temperature> mixed_at; // as the place without
    Mass mass = grams(400.0);
    SourcedText seed_place; // for what is reported
    SourcedText hydration_place;
    SourcedText salt_place;
    SourcedText temperature_place;
};

inline constexpr SeedShare least_seed = SeedShare::percent(1.0);
inline constexpr SeedShare most_seed = SeedShare::percent(500.0);
inline constexpr Hydration driest_levain = Hydration::percent(40.0);
inline constexpr Hydration wettest_levain = Hydration::percent(250.0);

struct Ripening {
    StageWindow ripe;
    Duration ripe_for; // likely, from ripe to past its best
    std::vector<CurvePoint> curve;
    int members = 0;
    std::uint64_t seed = 0;
};

/// Ripe is a levain that has risen by four fifths and made 41 mmol of acid per kg (pH 4.10 of white
/// flour), as bakers take it to raise a dough; at pH 3.85 it is past its best for that. Set to the
/// published processes in ferment/README.md.
/// Reports a build outside the bounds above, salt that stops it, and warns where it is too warm
/// or does not get ripe.
std::optional<Ripening> compute_ripening(const LevainBuild& build, const Ensemble& ensemble,
                                         Diagnostics& diagnostics);

/// From the mixing on, until it is taken as a sour, which is there for its acid (of rye, or a San Francisco
/// sponge): at pH 3.85. Of a build that compute_ripening has an answer for.
Window compute_souring(const LevainBuild& build, const Ensemble& ensemble);

} // namespace leavenwright
