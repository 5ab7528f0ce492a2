// Rates summed over a temperature history: how many hours at its best temperature each microbe of
// a dough has had. Every culture in the same dough shares them, and what an integrator walks along
// them no longer sees the temperature, nor the corners of the curves in rates.hpp.
//
// Plain doubles: hours since the history's beginning, C.
#pragma once

#include "ferment/temperature_history.hpp"

#include <array>
#include <cstddef>
#include <span>
#include <vector>

namespace leavenwright {

/// The curves over temperature: growth of both yeasts of cultures (packaged yeast grows as the
/// second), of the lactobacilli, and the gas of packaged yeast and of the second.
enum RateIndex { humilis_growth, cerevisiae_growth, bacteria_growth, packaged_gas };
using RateValues = std::array<double, 4>;

/// One zone of a dough at one time.
struct RatePoint {
    RateValues sums;        // hours at the best temperature since the history's beginning
    RateValues rates;       // relative
    double dissolved_limit; // mmol of carbon dioxide per kg of water
    double gas_litres;      // per mmol of free gas
};

/// Of a history whose rates are summed.
inline constexpr std::size_t most_zones = 5;

/// Sums and rates at any time. Before and after the history its first and last temperatures hold.
class RateSums {
public:
    static constexpr double usual_step_h = 0.5;

    /// `step_h`: no microbe has more hours at its best temperature between two steps of a
    /// simulation. The error falls with the fourth power where the temperature holds, else with the
    /// second.
    explicit RateSums(TemperatureHistory temperatures, double step_h = usual_step_h);

    const TemperatureHistory& temperatures() const { return temperatures_; }
    std::size_t zone_count() const { return temperatures_.zone_count(); }

    /// Every zone.
    void at(double hours, std::span<RatePoint> zones) const;

    /// Where a simulation steps to: ascending, from 0 to the history's end.
    std::span<const double> step_hours() const { return step_hours_; }
    /// Per zone, at one of those.
    std::span<const RatePoint> at_step(std::size_t number) const {
        return {steps_.data() + number * zone_count(), zone_count()};
    }
    /// The end of a step that begins at any other time.
    double step_end(double hours) const;

private:
    struct Knot {
        double hours;
        RateValues sums;
        RateValues rates;
    };
    RateValues rates_at(std::size_t zone, double hours) const;
    void sum_over(std::size_t zone, double from, double to);
    void sums_at(std::size_t zone, double hours, RatePoint& point) const;
    double most_between(double from, double to) const;
    void lay_steps();

    TemperatureHistory temperatures_;
    double step_h_;
    std::vector<std::vector<Knot>> knots_; // per zone
    std::vector<double> step_hours_;
    std::vector<RatePoint> steps_;
};

} // namespace leavenwright
