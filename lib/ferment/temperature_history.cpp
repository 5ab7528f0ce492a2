#include "ferment/temperature_history.hpp"

#include <array>
#include <limits>

namespace leavenwright {

TemperatureHistory::TemperatureHistory(std::size_t zones, Duration bucket)
    : zones_(zones), bucket_hours_(bucket.value() / 3600.0), lowest_(std::numeric_limits<double>::infinity()),
      highest_(-lowest_) {
    assert(zones > 0 && bucket.value() > 0.0);
}

TemperatureHistory TemperatureHistory::constant(Temperature temperature) {
    TemperatureHistory history(1, seconds(3600.0));
    const std::array value{temperature.in_celsius()};
    const std::array slope{0.0};
    history.add(0.0, value, slope);
    history.add(1.0, value, slope);
    return history;
}

void TemperatureHistory::add(double hours, std::span<const double> zones_c,
                             std::span<const double> slopes_c_per_h) {
    assert(zones_c.size() == zones_ && slopes_c_per_h.size() == zones_);
    assert(times_.empty() || hours >= times_.back());
    if (!times_.empty() && hours == times_.back()) {
        breaks_.push_back(hours);
    }
    while (static_cast<double>(first_knot_.size()) * bucket_hours_ <= hours) {
        first_knot_.push_back(times_.empty() ? 0 : times_.size() - 1);
    }
    times_.push_back(hours);
    double value_sum = 0.0;
    double slope_sum = 0.0;
    for (std::size_t zone = 0; zone < zones_; ++zone) {
        values_.push_back(zones_c[zone]);
        slopes_.push_back(slopes_c_per_h[zone]);
        value_sum += zones_c[zone];
        slope_sum += slopes_c_per_h[zone];
        lowest_ = std::min(lowest_, zones_c[zone]);
        highest_ = std::max(highest_, zones_c[zone]);
    }
    values_.push_back(value_sum / static_cast<double>(zones_));
    slopes_.push_back(slope_sum / static_cast<double>(zones_));
}

} // namespace leavenwright
