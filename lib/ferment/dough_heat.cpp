#include "ferment/dough_heat.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>
#include <utility>
#include <vector>

namespace leavenwright {
namespace {

using std::numbers::pi;

constexpr double seconds_per_hour = 3600.0;
// The condition at the surface of a body of exponent m for a term of its cooling, x C' + Bi C, where
// C(x) = sum (-x2/4)^k / (k! ((m+1)/2)_k): cos x, J0(x), sin x / x for m = 0, 1, 2. Above 0 up
// to the first root, the slowest term.
double surface_condition(double exponent, double biot, double x) {
    const double square = -x * x / 4.0;
    double term = 1.0;
    double sum = biot;
    for (double k = 1.0; k < 60.0 && std::abs(term) > 1e-16; k += 1.0) {
        term *= square / (k * ((exponent - 1.0) / 2.0 + k));
        sum += term * (2.0 * k + biot);
    }
    return sum;
}

// Where a condition that is above 0 at `low` and below at `high` is 0.
template <class Condition>
double root_between(double low, double high, Condition condition) {
    for (int i = 0; i < 45; ++i) {
        const double middle = (low + high) / 2.0;
        (condition(middle) > 0.0 ? low : high) = middle;
    }
    return low;
}

double slowest_root(double exponent, double biot) {
    constexpr double beyond_first = 2.5; // of wall and cylinder, however cold the surface
    return root_between(0.0, beyond_first, [&](double x) { return surface_condition(exponent, biot, x); });
}

OneDimensionalBody tub_body(double volume, double aspect, double coefficient_on_conductivity) {
    const double radius = std::cbrt(volume / (2.0 * pi * aspect));
    const double half_height = aspect * radius;
    const double surface_per_volume = 2.0 / radius + 1.0 / half_height;
    const double slowest =
        std::hypot(slowest_root(1.0, coefficient_on_conductivity * radius) / radius,
                   slowest_root(0.0, coefficient_on_conductivity * half_height) / half_height);
    const auto condition = [&](double exponent) {
        const double size = (exponent + 1.0) / surface_per_volume;
        return surface_condition(exponent, coefficient_on_conductivity * size, slowest * size);
    };
    constexpr double step = 0.5;
    constexpr double most = 20.0; // reached where the Biot number is so small that no exponent matters
    double exponent = 0.0;
    while (exponent < most && condition(exponent + step) > 0.0) {
        exponent += step;
    }
    exponent = root_between(exponent, exponent + step, condition);
    return {.exponent = exponent, .radius = (exponent + 1.0) / surface_per_volume};
}

} // namespace

double Surroundings::coefficient() const {
    const double open = air == Air::still ? 9.37 : 20.0;
    return covered ? open / 2.0 : open;
}

OneDimensionalBody body_of(const DoughForm& form, Mass mass, const ThermalProperties& properties,
                           double coefficient) {
    assert(mass.value() > 0.0 && form.aspect > 0.0);
    const double volume = mass.value() / properties.density;
    switch (form.kind) {
    case DoughForm::Kind::ball:
        return {.exponent = 2.0, .radius = std::cbrt(3.0 * volume / (4.0 * pi))};
    case DoughForm::Kind::log: // V = pi r2 (2 r a)
        return {.exponent = 1.0, .radius = std::cbrt(volume / (2.0 * pi * form.aspect))};
    case DoughForm::Kind::slab: // V = s2 (s a), half of s a
        return {.exponent = 0.0, .radius = form.aspect / 2.0 * std::cbrt(volume / form.aspect)};
    case DoughForm::Kind::tub:
        break;
    }
    return tub_body(volume, form.aspect, coefficient / properties.conductivity);
}

double biot_number(const OneDimensionalBody& body, const ThermalProperties& properties, double coefficient) {
    return coefficient / (body.surface_per_volume() * properties.conductivity);
}

namespace {

// dT_i/dt = inner_i (T_i-1 - T_i) + inner_i+1 (T_i+1 - T_i), the last shell's neighbour being the air.
// `conductance[i]` is that inside of shell i, per heat capacity of a shell, in 1/s.
struct Shells {
    std::vector<double> conductance; // one more than shells; the first is 0

    std::size_t count() const { return conductance.size() - 1; }
};

// The heat that crosses a face is exact for a temperature a + b r2 if a shell's mean stands at the root
// mean square of its radius: so is the steady state of a fermenting dough, and nearly so any late
// cooling. With x = r/R, v = x^(m+1) (0 to 1, equal steps) and p = 1 + 2/(m+1):
//     mean x2 in a shell = (v2^p - v1^p) / (p (v2 - v1))
Shells shells_of(const OneDimensionalBody& body, const ThermalProperties& properties, double coefficient,
                 std::size_t count) {
    const double n = static_cast<double>(count);
    const double power = 1.0 + 2.0 / (body.exponent + 1.0);
    std::vector<double> square(count);
    for (std::size_t i = 0; i < count; ++i) {
        const double inner = std::pow(static_cast<double>(i) / n, power);
        const double outer = std::pow(static_cast<double>(i + 1) / n, power);
        square[i] = n * (outer - inner) / power;
    }
    // k A 2 r / (difference of r2), over the heat capacity of a shell
    const double unit =
        properties.diffusivity() / (body.radius * body.radius) * (body.exponent + 1.0) * 2.0 * n;
    Shells shells{.conductance = std::vector<double>(count + 1, 0.0)};
    for (std::size_t i = 1; i < count; ++i) {
        shells.conductance[i] = unit * (static_cast<double>(i) / n) / (square[i] - square[i - 1]);
    }
    const double inside = unit / (1.0 - square[count - 1]);
    const double outside =
        coefficient * body.surface_per_volume() * n / (properties.density * properties.specific_heat);
    shells.conductance[count] = inside * outside / (inside + outside);
    return shells;
}

// I + (step/2) A, factored once: the left side of a Crank-Nicolson step and of a backward-Euler
// half step alike.
class ImplicitStep {
public:
    ImplicitStep(const Shells& shells, double step) : lower_(shells.count()), inverse_pivot_(shells.count()) {
        double upper = 0.0;
        for (std::size_t i = 0; i < shells.count(); ++i) {
            const double inner = step / 2.0 * shells.conductance[i];
            const double outer = step / 2.0 * shells.conductance[i + 1];
            lower_[i] = -inner;
            inverse_pivot_[i] = 1.0 / (1.0 + inner + outer - inner * upper);
            upper = outer * inverse_pivot_[i];
        }
    }

    void solve(std::vector<double>& values) const {
        values[0] *= inverse_pivot_[0];
        for (std::size_t i = 1; i < values.size(); ++i) {
            values[i] = (values[i] - lower_[i] * values[i - 1]) * inverse_pivot_[i];
        }
        for (std::size_t i = values.size() - 1; i-- > 0;) {
            // The matrix is symmetric: what is above pivot i is what is below it.
            values[i] -= lower_[i + 1] * inverse_pivot_[i] * values[i + 1];
        }
    }

private:
    std::vector<double> lower_;
    std::vector<double> inverse_pivot_;
};

struct Place {
    double celsius;
    double end_s;
};

// Neighbours of one temperature are one place: cutting it in pieces changes nothing.
std::vector<Place> places_until(const TemperatureProfile& environment, double until_s) {
    std::vector<Place> places;
    const auto add = [&](Temperature at, double end_s) {
        if (places.empty() || places.back().celsius != at.in_celsius()) {
            places.push_back({at.in_celsius(), end_s});
        }
        places.back().end_s = std::min(end_s, until_s);
    };
    double end_s = 0.0;
    for (const TemperatureProfile::Leg& leg : environment.legs()) {
        if (end_s >= until_s) {
            break;
        }
        end_s += leg.time.value();
        add(leg.at, end_s);
    }
    if (end_s < until_s) {
        add(environment.at(environment.length()), until_s);
    }
    return places;
}

class HeatSolver {
public:
    HeatSolver(const DoughHeat& dough, const ThermalProperties& properties, Shells shells, std::size_t zones,
               Duration step)
        : dough_(dough), specific_heat_(properties.specific_heat), shells_(std::move(shells)),
          longest_step_s_(step.value()), values_(shells_.count(), dough.start.in_celsius()),
          slopes_(shells_.count()), history_(zones, step) {}

    TemperatureHistory run() {
        for (const Place& place : places_until(dough_.environment, dough_.until.value())) {
            run_place(place);
        }
        return std::move(history_);
    }

private:
    void run_place(const Place& place) {
        const double length = place.end_s - now_s_;
        air_c_ = place.celsius;
        set_slopes(now_s_);
        record(now_s_);
        const double begin_s = now_s_;
        const double count = std::max(1.0, std::ceil(length / longest_step_s_));
        const double step = length / count;
        const ImplicitStep implicit(shells_, step);
        for (const double moment : {begin_s + step / 2.0, begin_s + step}) { // backward Euler
            add_source(step / 2.0 * heat_rate(moment), step / 2.0);
            implicit.solve(values_);
            set_slopes(moment);
            record(moment);
        }
        for (double i = 2.0; i <= count; i += 1.0) { // Crank-Nicolson
            const double moment = i < count ? begin_s + i * step : place.end_s;
            for (std::size_t shell = 0; shell < values_.size(); ++shell) {
                values_[shell] += step / 2.0 * slopes_[shell];
            }
            add_source(step / 2.0 * heat_rate(moment), step / 2.0);
            implicit.solve(values_);
            set_slopes(moment);
            record(moment);
        }
        now_s_ = place.end_s;
    }

    // What the new moment adds on the right side: heat of fermentation, and the air.
    void add_source(double heat_k, double time_s) {
        for (double& value : values_) {
            value += heat_k;
        }
        values_.back() += time_s * shells_.conductance.back() * air_c_;
    }

    double heat_rate(double moment_s) const { // K/s
        return dough_.heat_of_fermentation
                   ? dough_.heat_of_fermentation(moment_s / seconds_per_hour) / specific_heat_
                   : 0.0;
    }

    void set_slopes(double moment_s) {
        const double heat = heat_rate(moment_s);
        double from_inside = 0.0;
        for (std::size_t i = 0; i < values_.size(); ++i) {
            const double outer = i + 1 < values_.size() ? values_[i + 1] : air_c_;
            const double from_outside = shells_.conductance[i + 1] * (outer - values_[i]);
            slopes_[i] = from_inside + from_outside + heat;
            from_inside = -from_outside;
        }
    }

    void record(double moment_s) {
        const std::size_t zones = history_.zone_count();
        const std::size_t per_zone = values_.size() / zones;
        zone_values_.assign(zones, 0.0);
        zone_slopes_.assign(zones, 0.0);
        const double share = 1.0 / static_cast<double>(per_zone);
        for (std::size_t i = 0; i < values_.size(); ++i) {
            zone_values_[i / per_zone] += share * values_[i];
            zone_slopes_[i / per_zone] += share * seconds_per_hour * slopes_[i];
        }
        history_.add(moment_s / seconds_per_hour, zone_values_, zone_slopes_);
    }

    const DoughHeat& dough_;
    double specific_heat_;
    Shells shells_;
    double longest_step_s_;
    double now_s_ = 0.0;
    double air_c_ = 0.0;
    std::vector<double> values_; // C
    std::vector<double> slopes_; // C/s
    std::vector<double> zone_values_;
    std::vector<double> zone_slopes_;
    TemperatureHistory history_;
};

// Halfway between the coldest and the hottest of start and places, however the places are cut.
Temperature typical_temperature(const DoughHeat& dough) {
    Temperature coldest = dough.start;
    Temperature hottest = dough.start;
    const auto take = [&](Temperature at) {
        coldest = std::min(coldest, at);
        hottest = std::max(hottest, at);
    };
    for (const TemperatureProfile::Leg& leg : dough.environment.legs()) {
        take(leg.at);
    }
    if (const auto held = dough.environment.held()) {
        take(*held);
    }
    return coldest + (hottest - coldest) / 2.0;
}

} // namespace

TemperatureHistory compute_temperature_history(const DoughHeat& dough, const HeatNumerics& numerics) {
    assert(dough.until.value() > 0.0 && numerics.step.value() > 0.0);
    assert(numerics.zones > 0 && numerics.shells % numerics.zones == 0);
    const ThermalProperties properties =
        thermal_properties(dough.composition, typical_temperature(dough), dough.gas);
    const double coefficient = dough.surroundings.coefficient();
    const OneDimensionalBody body = body_of(dough.form, dough.mass, properties, coefficient);
    const bool is_lumped = biot_number(body, properties, coefficient) < lumped_below_biot;
    const std::size_t shells = is_lumped ? 1 : static_cast<std::size_t>(numerics.shells);
    const std::size_t zones = is_lumped ? 1 : static_cast<std::size_t>(numerics.zones);
    return HeatSolver(dough, properties, shells_of(body, properties, coefficient, shells), zones,
                      numerics.step)
        .run();
}

} // namespace leavenwright
