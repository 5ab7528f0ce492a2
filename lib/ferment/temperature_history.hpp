// Temperature over time in a few zones of a dough, made for being asked many times: by the
// right-hand side of an integrator.
//
// Plain doubles: hours since the start, C.
#pragma once

#include "quantity/quantity.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <cstddef>
#include <span>
#include <vector>

namespace leavenwright {

class TemperatureHistory {
public:
    /// `bucket` is the longest time between moments; lookups use it.
    TemperatureHistory(std::size_t zones, Duration bucket);

    /// One temperature in one zone, for all time.
    static TemperatureHistory constant(Temperature temperature);

    /// Zones of equal mass, from the middle outwards.
    std::size_t zone_count() const { return zones_; }
    /// The time that was computed; before 0 and after it the first and the last temperatures hold.
    double end_hours() const { return times_.back(); }
    /// Where the place changes. Temperatures are continuous there, their slopes are not: an
    /// integrator restarts. Between them everything is once continuously differentiable.
    std::span<const double> breaks_hours() const { return breaks_; }

    double temperature_c(std::size_t zone, double hours) const;
    /// Of the whole dough.
    double mean_c(double hours) const { return temperature_c(zones_, hours); }
    /// All zones at once.
    void temperatures_c(double hours, std::span<double> zones) const;

    /// The lowest and highest temperature of any zone.
    double lowest_c() const { return lowest_; }
    double highest_c() const { return highest_; }

    /// Adds a moment: not before the last. A second one at the same time has the slopes after a change.
    void add(double hours, std::span<const double> zones_c, std::span<const double> slopes_c_per_h);

private:
    // Weights of a cubic Hermite polynomial at one moment, and the knot before it.
    struct Weights {
        std::size_t knot;
        double value_left, value_right, slope_left, slope_right;
    };
    Weights weights(double hours) const;
    double at(const Weights& weight, std::size_t zone) const {
        const std::size_t left = weight.knot * (zones_ + 1) + zone;
        const std::size_t right = left + zones_ + 1;
        return weight.value_left * values_[left] + weight.value_right * values_[right] +
               weight.slope_left * slopes_[left] + weight.slope_right * slopes_[right];
    }

    std::size_t zones_;
    double bucket_hours_;
    double lowest_;
    double highest_;
    std::vector<double> times_;
    std::vector<double> values_; // per moment: the zones, then their mean
    std::vector<double> slopes_;
    std::vector<double> breaks_;
    std::vector<std::size_t> first_knot_; // per bucket: the last knot at or before its beginning
};

inline TemperatureHistory::Weights TemperatureHistory::weights(double hours) const {
    if (!(hours > times_.front())) { // NaN too
        return {0, 1.0, 0.0, 0.0, 0.0};
    }
    if (hours >= times_.back()) {
        return {times_.size() - 2, 0.0, 1.0, 0.0, 0.0};
    }
    // The division may round up to the bucket behind the last.
    const auto bucket = static_cast<std::size_t>(hours / bucket_hours_);
    std::size_t knot = first_knot_[std::min(bucket, first_knot_.size() - 1)];
    while (times_[knot + 1] <= hours) {
        ++knot;
    }
    const double step = times_[knot + 1] - times_[knot];
    const double s = (hours - times_[knot]) / step;
    const double rest = 1.0 - s;
    return {knot, (1.0 + 2.0 * s) * rest * rest, s * s * (3.0 - 2.0 * s), step * s * rest * rest,
            -step * s * s * rest};
}

inline double TemperatureHistory::temperature_c(std::size_t zone, double hours) const {
    return at(weights(hours), zone);
}

inline void TemperatureHistory::temperatures_c(double hours, std::span<double> zones) const {
    assert(zones.size() == zones_);
    const Weights weight = weights(hours);
    for (std::size_t zone = 0; zone < zones.size(); ++zone) {
        zones[zone] = at(weight, zone);
    }
}

} // namespace leavenwright
