#include "ferment/rate_sums.hpp"

#include "ferment/rates.hpp"

#include <algorithm>
#include <cmath>

namespace leavenwright {
namespace {

constexpr double longest_span_h = 2.0;   // between knots, however level the temperature
constexpr double shortest_span_h = 1e-4; // across a corner of a curve
constexpr double sum_error = 1e-5;       // of a span, per hour of a step

// The integral of a parabola through three points.
double simpson(double span, double left, double middle, double right) {
    return span / 6.0 * (left + 4.0 * middle + right);
}

} // namespace

RateSums::RateSums(TemperatureHistory temperatures, double step_h)
    : temperatures_(std::move(temperatures)), step_h_(step_h), knots_(zone_count()) {
    assert(step_h > 0.0 && zone_count() <= most_zones);
    std::vector<double> ends(temperatures_.breaks_hours().begin(), temperatures_.breaks_hours().end());
    ends.push_back(temperatures_.end_hours());
    for (std::size_t zone = 0; zone < zone_count(); ++zone) {
        knots_[zone].push_back({0.0, {}, rates_at(zone, 0.0)});
        for (const double end : ends) {
            while (knots_[zone].back().hours < end) {
                const double from = knots_[zone].back().hours;
                sum_over(zone, from, std::min(end, from + longest_span_h));
            }
        }
    }
    lay_steps();
}

RateValues RateSums::rates_at(std::size_t zone, double hours) const {
    const double celsius = temperatures_.temperature_c(zone, hours);
    return {growth_rate(Yeast::humilis, celsius), growth_rate(Yeast::cerevisiae, celsius),
            bacteria_rate(celsius), gas_rate(Yeast::packaged, celsius)};
}

// Adds knots up to `to`: one where Simpson's rule and at() fit the whole span as well as its halves.
void RateSums::sum_over(std::size_t zone, double from, double to) {
    const Knot& last = knots_[zone].back();
    const double span = to - from;
    const RateValues left = rates_at(zone, from + 0.25 * span);
    const RateValues middle = rates_at(zone, from + 0.5 * span);
    const RateValues right = rates_at(zone, from + 0.75 * span);
    Knot end{to, {}, rates_at(zone, to)};
    bool fits = true;
    for (std::size_t i = 0; i < end.sums.size(); ++i) {
        const double first_half = simpson(span / 2.0, last.rates[i], left[i], middle[i]);
        const double halves = first_half + simpson(span / 2.0, middle[i], right[i], end.rates[i]);
        const double whole = simpson(span, last.rates[i], middle[i], end.rates[i]);
        const double between = halves / 2.0 + span / 8.0 * (last.rates[i] - end.rates[i]);
        fits =
            fits && std::max(std::abs(whole - halves), std::abs(between - first_half)) < sum_error * step_h_;
        end.sums[i] = last.sums[i] + halves;
    }
    if (fits || span < shortest_span_h) {
        knots_[zone].push_back(end);
        return;
    }
    sum_over(zone, from, from + span / 2.0);
    sum_over(zone, from + span / 2.0, to);
}

void RateSums::sums_at(std::size_t zone, double hours, RatePoint& point) const {
    const std::vector<Knot>& knots = knots_[zone];
    const Knot* beyond = nullptr;
    if (!(hours > 0.0)) { // NaN too
        beyond = &knots.front();
    } else if (hours >= knots.back().hours) {
        beyond = &knots.back();
    }
    if (beyond != nullptr) {
        for (std::size_t i = 0; i < point.sums.size(); ++i) {
            point.sums[i] = beyond->sums[i] + beyond->rates[i] * (hours - beyond->hours);
        }
        point.rates = beyond->rates;
        return;
    }
    const auto right = std::upper_bound(knots.begin(), knots.end(), hours,
                                        [](double value, const Knot& knot) { return value < knot.hours; });
    const auto left = std::prev(right);
    const double span = right->hours - left->hours;
    const double s = (hours - left->hours) / span;
    const double rest = 1.0 - s;
    const double bend = 6.0 * s * rest / span;
    for (std::size_t i = 0; i < point.sums.size(); ++i) { // Hermite's cubic, and its slope
        const double made = right->sums[i] - left->sums[i];
        point.sums[i] = left->sums[i] + s * s * (3.0 - 2.0 * s) * made +
                        span * s * rest * (rest * left->rates[i] - s * right->rates[i]);
        point.rates[i] =
            bend * made + rest * (1.0 - 3.0 * s) * left->rates[i] + s * (3.0 * s - 2.0) * right->rates[i];
    }
}

void RateSums::at(double hours, std::span<RatePoint> zones) const {
    std::array<double, most_zones> celsius{};
    temperatures_.temperatures_c(hours, std::span(celsius).first(zones.size()));
    for (std::size_t zone = 0; zone < zones.size(); ++zone) {
        sums_at(zone, hours, zones[zone]);
        zones[zone].dissolved_limit = dissolved_gas_limit(celsius[zone]);
        zones[zone].gas_litres = gas_litres(celsius[zone]);
    }
}

// The most hours at its best temperature that any microbe has between two times.
double RateSums::most_between(double from, double to) const {
    double most = 0.0;
    for (std::size_t zone = 0; zone < zone_count(); ++zone) {
        RatePoint begin;
        RatePoint end;
        sums_at(zone, from, begin);
        sums_at(zone, to, end);
        for (std::size_t i = 0; i < begin.sums.size(); ++i) {
            most = std::max(most, end.sums[i] - begin.sums[i]);
        }
    }
    return most;
}

double RateSums::step_end(double hours) const {
    double span = 8.0; // the longest, where all stand still
    double most = most_between(hours, hours + span);
    while (most > step_h_) {
        // a little less than would do if the rates did not change
        span *= std::max(0.2, 0.98 * step_h_ / most);
        most = most_between(hours, hours + span);
    }
    return hours + span;
}

void RateSums::lay_steps() {
    std::vector<double> stops(temperatures_.breaks_hours().begin(), temperatures_.breaks_hours().end());
    stops.push_back(temperatures_.end_hours());
    step_hours_.push_back(0.0);
    for (const double stop : stops) {
        while (step_hours_.back() < stop) {
            step_hours_.push_back(std::min(stop, step_end(step_hours_.back())));
        }
    }
    steps_.resize(step_hours_.size() * zone_count());
    for (std::size_t step = 0; step < step_hours_.size(); ++step) {
        at(step_hours_[step], std::span(steps_).subspan(step * zone_count(), zone_count()));
    }
}

} // namespace leavenwright
