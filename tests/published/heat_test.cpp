// Cooling and warming of dough against the textbook series for bodies at one temperature that meet air
// of another.
#include "ferment/dough_heat.hpp"

#include "published/transient_series.hpp"
#include "support/dough_figures.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

struct OneTermRow {
    double biot;
    std::array<double, 6> figures; // wall z, A; cylinder z, A; sphere z, A
};

// Cengel YA, Heat Transfer: A Practical Approach, Table 4-2 (coefficients of the one-term solution).
constexpr auto one_term_table = std::to_array<OneTermRow>({
    {0.01, {0.0998, 1.0017, 0.1412, 1.0025, 0.1730, 1.0030}},
    {0.1, {0.3111, 1.0161, 0.4417, 1.0246, 0.5423, 1.0298}},
    {0.2, {0.4328, 1.0311, 0.6170, 1.0483, 0.7593, 1.0592}},
    {0.4, {0.5932, 1.0580, 0.8516, 1.0931, 1.0528, 1.1164}},
    {0.5, {0.6533, 1.0701, 0.9408, 1.1143, 1.1656, 1.1441}},
    {0.6, {0.7051, 1.0814, 1.0184, 1.1345, 1.2644, 1.1713}},
    {0.8, {0.7910, 1.1016, 1.1490, 1.1724, 1.4320, 1.2236}},
    {1.0, {0.8603, 1.1191, 1.2558, 1.2071, 1.5708, 1.2732}},
    {2.0, {1.0769, 1.1785, 1.5995, 1.3384, 2.0288, 1.4793}},
    {5.0, {1.3138, 1.2403, 1.9898, 1.5029, 2.5704, 1.7870}},
    {10.0, {1.4289, 1.2620, 2.1795, 1.5677, 2.8363, 1.9249}},
});

constexpr std::array bodies{Body::wall, Body::cylinder, Body::sphere};
constexpr double hour = 3600.0;
constexpr double from_c = 24.0;
constexpr double to_c = 4.0;

DoughForm form_of(Body body) {
    return body == Body::wall       ? DoughForm::slab()
           : body == Body::cylinder ? DoughForm::log()
                                    : DoughForm::ball();
}

DoughHeat cooling(DoughForm form, Mass mass, double hours, Surroundings::Air air = Surroundings::Air::still) {
    return {.mass = mass,
            .form = form,
            .composition = plain_dough(0.65),
            .gas = {},
            .start = Temperature::celsius(from_c),
            .surroundings = {.air = air},
            .environment = TemperatureProfile(Temperature::celsius(to_c)),
            .until = seconds(hours * hour),
            .heat_of_fermentation = {}};
}

// The numbers of a cooling dough that the series works with.
struct Scales {
    double biot;             // h R / k
    double fourier_per_hour; // alpha / R2
};

Scales scales_of(const DoughHeat& dough) {
    const ThermalProperties p =
        thermal_properties(dough.composition, Temperature::celsius((from_c + to_c) / 2.0));
    const OneDimensionalBody body = body_of(dough.form, dough.mass, p, dough.surroundings.coefficient());
    return {.biot = dough.surroundings.coefficient() * body.radius / p.conductivity,
            .fourier_per_hour = p.diffusivity() / (body.radius * body.radius) * hour};
}

double celsius_at(double theta) {
    return to_c + (from_c - to_c) * theta;
}

// Hours in which the mean falls from 1/e to 1/e2 of the difference.
double time_constant(const TemperatureHistory& history) {
    const auto falls_below = [&](double theta) {
        double hours = 0.0;
        while (history.mean_c(hours) > celsius_at(theta)) {
            hours += 0.001;
        }
        return hours;
    };
    return falls_below(std::exp(-2.0)) - falls_below(std::exp(-1.0));
}

} // namespace

TEST_CASE("one-term table: every row, from the roots of the equations") {
    for (const OneTermRow& row : one_term_table) {
        for (std::size_t i = 0; i < bodies.size(); ++i) {
            CAPTURE(row.biot);
            CAPTURE(i);
            const double root = roots_of(bodies[i], row.biot, 1).front();
            // four digits are printed, some rounded the other way
            CHECK(near(root, row.figures[2 * i], 0.0, 1e-4));
            CHECK(near(amplitude(bodies[i], root), row.figures[2 * i + 1], 0.0, 1e-4));
        }
    }
}

TEST_CASE("one-term table: the surface held cold") {
    const std::array limits{std::numbers::pi / 2.0, 2.4048, std::numbers::pi};
    for (std::size_t i = 0; i < bodies.size(); ++i) {
        CHECK(near(roots_of(bodies[i], 1e4, 1).front(), limits[i], 0.0, 1e-3));
    }
}

TEST_CASE("one-term table: a late cooling follows each row") {
    // The table's decay, z2, from the library: a dough whose size gives the Biot number of the row.
    for (const OneTermRow& row : one_term_table) {
        for (std::size_t i = 0; i < bodies.size(); ++i) {
            DoughHeat dough = cooling(form_of(bodies[i]), kilograms(1.0), 1.0);
            const double biot = scales_of(dough).biot; // ~ the cube root of the mass
            dough.mass = dough.mass * std::pow(row.biot / biot, 3.0);
            const Scales scales = scales_of(dough);
            const double root = row.figures[2 * i];
            const double decay_per_hour = root * root * scales.fourier_per_hour;
            // Begun late enough for one term, ended before the differences are lost in rounding.
            const double begin = std::max(0.4 / scales.fourier_per_hour, 0.5 / decay_per_hour);
            const double end = begin + 1.0 / decay_per_hour;
            dough.until = seconds(end * hour);
            const HeatNumerics fine{.shells = 20, .zones = 1, .step = seconds(end * hour / 400.0)};
            const TemperatureHistory history = compute_temperature_history(dough, fine);
            const double fallen = (history.mean_c(begin) - to_c) / (history.mean_c(end) - to_c);
            CAPTURE(row.biot);
            CAPTURE(i);
            // Squares of printed roots are good to 1e-3 at Bi 0.01, the shells to a few 1e-3 at Bi 10.
            CHECK(near(std::log(fallen), 1.0, 0.0, 4e-3));
        }
    }
}

TEST_CASE("full series: zones of a ball, a log and a slab, to 0.02 K") {
    struct Case {
        Body body;
        Mass mass;
        Surroundings::Air air;
    };
    for (const Case& row : std::to_array<Case>({{Body::sphere, grams(250.0), Surroundings::Air::still},
                                                {Body::sphere, grams(850.0), Surroundings::Air::still},
                                                {Body::sphere, kilograms(5.0), Surroundings::Air::moving},
                                                {Body::cylinder, grams(390.0), Surroundings::Air::still},
                                                {Body::cylinder, kilograms(2.0), Surroundings::Air::moving},
                                                {Body::wall, kilograms(1.0), Surroundings::Air::still},
                                                {Body::wall, kilograms(6.0), Surroundings::Air::moving}})) {
        CAPTURE(static_cast<int>(row.body));
        CAPTURE(in_grams(row.mass));
        const DoughHeat dough = cooling(form_of(row.body), row.mass, 24.0, row.air);
        const TemperatureHistory history = compute_temperature_history(dough);
        REQUIRE(history.zone_count() == 5);
        const Scales scales = scales_of(dough);
        const std::vector<double> roots = roots_of(row.body, scales.biot, 40);
        double worst = 0.0;
        for (double hours = 0.5; hours <= 24.0; hours += 0.25) {
            for (std::size_t zone = 0; zone < 5; ++zone) {
                const double v = static_cast<double>(zone) / 5.0;
                const double exact =
                    celsius_at(shell_theta(row.body, roots, scales.fourier_per_hour * hours, v, v + 0.2));
                worst = std::max(worst, std::abs(history.temperature_c(zone, hours) - exact));
            }
        }
        CAPTURE(worst);
        CHECK(worst < 0.02);
    }
}

TEST_CASE("full series: a tub is a wall times a cylinder") {
    // The mean of the product is the product of the means (Carslaw and Jaeger, 1.15); the library's
    // body of one dimension stands for it within 2 % of the difference, 1 % unless it is flat.
    for (const double aspect : {0.1, 0.3, 0.6, 1.0, 2.0}) {
        for (const auto air : {Surroundings::Air::still, Surroundings::Air::moving}) {
            CAPTURE(aspect);
            const DoughHeat dough = cooling(DoughForm::tub(aspect), kilograms(5.0), 24.0, air);
            const TemperatureHistory history = compute_temperature_history(dough);
            const ThermalProperties p = thermal_properties(dough.composition, Temperature::celsius(14.0));
            const double radius = std::cbrt(5.0 / p.density / (2.0 * std::numbers::pi * aspect));
            const double half_height = aspect * radius;
            const double h = dough.surroundings.coefficient();
            const auto side = roots_of(Body::cylinder, h * radius / p.conductivity, 30);
            const auto ends = roots_of(Body::wall, h * half_height / p.conductivity, 30);
            double worst = 0.0;
            for (double hours = 0.25; hours <= 24.0; hours += 0.25) {
                const double diffused = p.diffusivity() * hours * hour;
                const double theta =
                    shell_theta(Body::cylinder, side, diffused / (radius * radius), 0.0, 1.0) *
                    shell_theta(Body::wall, ends, diffused / (half_height * half_height), 0.0, 1.0);
                worst = std::max(worst, std::abs(history.mean_c(hours) - celsius_at(theta)));
            }
            CAPTURE(worst);
            CHECK(worst < (aspect < 0.3 ? 0.02 : 0.01) * (from_c - to_c));
        }
    }
}

TEST_CASE("full series: a ball of 250 g and a tub of 5 kg cool as differently as they do") {
    const DoughHeat ball = cooling(DoughForm::ball(), grams(250.0), 48.0);
    const Scales ball_scales = scales_of(ball);
    const double ball_root = roots_of(Body::sphere, ball_scales.biot, 1).front();
    const double ball_hours = 1.0 / (ball_root * ball_root * ball_scales.fourier_per_hour);
    const double ball_computed = time_constant(compute_temperature_history(ball));
    CHECK(near(ball_computed, ball_hours, 0.01, 0.0)); // 1 %: shells, and the second term

    const DoughHeat tub = cooling(DoughForm::tub(), kilograms(5.0), 48.0);
    const ThermalProperties p = thermal_properties(tub.composition, Temperature::celsius(14.0));
    const double radius = std::cbrt(5.0 / p.density / (2.0 * std::numbers::pi)); // and half its height
    const double biot = 9.37 * radius / p.conductivity;
    const double side = roots_of(Body::cylinder, biot, 1).front();
    const double ends = roots_of(Body::wall, biot, 1).front();
    const double tub_hours = radius * radius / (p.diffusivity() * (side * side + ends * ends)) / hour;
    const double tub_computed = time_constant(compute_temperature_history(tub));
    CAPTURE(ball_computed);
    CAPTURE(tub_computed);
    CAPTURE(tub_hours);
    CHECK(near(tub_computed, tub_hours, 0.02, 0.0)); // 2 %: other terms
    CHECK(tub_computed > 3.0 * ball_computed);       // 20 times the mass, 2.7 times the size
}

TEST_CASE("energy balance: all heat that was in the dough leaves through its surface") {
    // The series' own first moment: the integral over time of the mean's difference is the heat, times
    // the resistances of air and dough:  rho cp R (1/h + R / (k (m + 3))) / (m + 1)  for exponent m.
    for (const Body shape : bodies) {
        CAPTURE(static_cast<int>(shape));
        const DoughHeat dough = cooling(form_of(shape), kilograms(2.0), 96.0);
        const TemperatureHistory history =
            compute_temperature_history(dough, {.shells = 20, .zones = 5, .step = seconds(60.0)});
        const ThermalProperties p = thermal_properties(dough.composition, Temperature::celsius(14.0));
        const OneDimensionalBody body = body_of(dough.form, dough.mass, p, dough.surroundings.coefficient());
        const double expected_s = p.density * p.specific_heat * body.radius / (body.exponent + 1.0) *
                                  (1.0 / 9.37 + body.radius / (p.conductivity * (body.exponent + 3.0)));
        double integral_s = 0.0; // Simpson, over steps of the solver
        constexpr double step = 1.0 / 60.0;
        for (double hours = 0.0; hours < 96.0 - step / 2.0; hours += step) {
            const double sum = history.mean_c(hours) + 4.0 * history.mean_c(hours + step / 2.0) +
                               history.mean_c(hours + step) - 6.0 * to_c;
            integral_s += sum / 6.0 * step * hour / (from_c - to_c);
        }
        CHECK(near(integral_s, expected_s, 1e-3, 0.0)); // the error of 20 shells early on
    }
}
