// The questions the other way round: what makes the dough ready in the time there is.
#pragma once

#include "quantity/weigh.hpp"
#include "schedule/dough_plan.hpp"

#include <optional>
#include <string>

namespace leavenwright {

enum class Sought { inoculation, temperature, retard };

struct Answer {
    Sought sought = Sought::inoculation;
    std::optional<PrefermentedFlour> inoculation;
    std::optional<Temperature> temperature;
    std::optional<Duration> retard; // all retards together
    std::string sentence;
};

/// Bounds of the searches.
inline constexpr PrefermentedFlour least_inoculation = PrefermentedFlour::percent(1.0);
inline constexpr PrefermentedFlour most_inoculation = PrefermentedFlour::percent(50.0);
inline constexpr Temperature coolest_search = Temperature::celsius(12.0);
inline constexpr Temperature warmest_search = Temperature::celsius(28.0);
inline constexpr Duration longest_retard = hours(72.0);

struct SearchRequest {
    Sought sought = Sought::inoculation;
    Duration available;                        // from mixing to the likely end
    PrefermentedFlour inoculation;             // what the formula has
    PrefermentedFlour most = most_inoculation; // what it has room for
    std::optional<PrefermentedFlour> unfit;    // what it should have had, but has no room for
    UnitSystem units = UnitSystem::metric;     // of the answer's sentence
    SourcedText place;
    std::string command; // that was given, less the time there is, for the command that would work
};

/// Bisection between the bounds, since each of the three shortens or lengthens the whole steadily.
/// Where nothing fits, says so with the times at both bounds, rounded inward so that they can be
/// asked for, and the command for the nearer one.
std::optional<Answer> search(const Formula& formula, const PlanRequest& request, const SearchRequest& wish,
                             const Ensemble& ensemble, Diagnostics& diagnostics);

} // namespace leavenwright
