#include "ferment/dough_heat.hpp"

#include "support/dough_figures.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <limits>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

constexpr double hour = 3600.0;

DoughHeat ball_of(Mass mass, TemperatureProfile environment, double hours = 24.0) {
    return {.mass = mass,
            .form = DoughForm::ball(),
            .composition = plain_dough(0.65),
            .gas = {},
            .start = Temperature::celsius(24.0),
            .surroundings = {},
            .environment = std::move(environment),
            .until = seconds(hours * hour),
            .heat_of_fermentation = {}};
}

TemperatureProfile refrigerator() {
    return TemperatureProfile(Temperature::celsius(4.0));
}

TemperatureProfile room_cold_room() {
    return TemperatureProfile({{seconds(1.3 * hour), Temperature::celsius(26.0)},
                               {seconds(14.0 * hour), Temperature::celsius(4.0)},
                               {seconds(4.0 * hour), Temperature::celsius(22.0)}});
}

OneDimensionalBody litre_of(DoughForm form, double coefficient = 9.37) {
    return body_of(form, kilograms(1.0), {.specific_heat = 2800.0, .conductivity = 0.44, .density = 1000.0},
                   coefficient);
}

} // namespace

TEST_CASE("Surroundings: a fan takes more heat, a cover halves it") {
    CHECK(Surroundings{}.coefficient() == 9.37);
    CHECK(Surroundings{.air = Surroundings::Air::moving}.coefficient() == 20.0);
    CHECK(Surroundings{.air = Surroundings::Air::still, .covered = true}.coefficient() == 9.37 / 2.0);
}

TEST_CASE("body_of: a body has the volume and the surface of its form") {
    // 1 kg at 1000 kg/m3: a litre. Surfaces by school geometry; 1e-9 for cube roots.
    constexpr double pi = 3.14159265358979;
    const double ball = std::cbrt(36.0 * pi * 1e-6) / 1e-3;
    CHECK(near(litre_of(DoughForm::ball()).surface_per_volume(), ball, 1e-9, 0.0));
    CHECK(near(litre_of(DoughForm::slab(0.1)).radius, 0.05 * std::cbrt(1e-3 / 0.1), 1e-9, 0.0));
    const double radius = std::cbrt(1e-3 / (2.0 * pi));
    CHECK(near(litre_of(DoughForm::tub()).surface_per_volume(), 3.0 / radius, 1e-9, 0.0));
    CHECK(near(litre_of(DoughForm::log(1.0)).radius, radius, 1e-9, 0.0));
}

TEST_CASE("body_of: tubs drawn out or flattened become logs and slabs") {
    CHECK(near(litre_of(DoughForm::tub(1000.0), 1e4).exponent, 1.0, 0.0, 0.02));
    CHECK(near(litre_of(DoughForm::tub(0.0001), 1e6).exponent, 0.0, 0.0, 0.02));
}

TEST_CASE("body_of: a tub in air that takes hardly any heat still has its surface") {
    const OneDimensionalBody tub = litre_of(DoughForm::tub(), 1e-6);
    CHECK(near(tub.surface_per_volume(), 3.0 / std::cbrt(1e-3 / (2.0 * 3.14159265358979)), 1e-9, 0.0));
}

TEST_CASE("compute_temperature_history: a ball in a refrigerator cools from outside") {
    const TemperatureHistory history = compute_temperature_history(ball_of(grams(850.0), refrigerator()));
    REQUIRE(history.zone_count() == 5);
    CHECK(history.end_hours() == 24.0);
    CHECK(history.temperature_c(0, 0.0) == 24.0);
    for (std::size_t zone = 1; zone < 5; ++zone) {
        CHECK(history.temperature_c(zone, 2.0) < history.temperature_c(zone - 1, 2.0));
    }
    CHECK(near(history.mean_c(24.0), 4.0, 0.0, 0.05)); // nine time constants
    CHECK(history.lowest_c() >= 4.0);                  // nothing rings below the air
    CHECK(history.highest_c() == 24.0);
}

TEST_CASE("compute_temperature_history: small pieces have one zone") {
    DoughHeat roll = ball_of(grams(60.0), refrigerator());
    roll.surroundings.covered = true;
    CHECK(compute_temperature_history(roll).zone_count() == 1);
    // Bi ~ cube root of the mass: the mass at which it is 0.1, and 1 % beside it.
    const ThermalProperties p = thermal_properties(roll.composition, Temperature::celsius(14.0));
    const double h = roll.surroundings.coefficient();
    const double biot = biot_number(body_of(roll.form, roll.mass, p, h), p, h);
    const Mass limit = roll.mass * std::pow(lumped_below_biot / biot, 3.0);
    roll.mass = limit * 1.01;
    const TemperatureHistory shells = compute_temperature_history(roll);
    REQUIRE(shells.zone_count() == 5);
    roll.mass = limit * 0.99;
    const TemperatureHistory lumped = compute_temperature_history(roll);
    REQUIRE(lumped.zone_count() == 1);
    // 0.7 % of the time constant is 0.05 K where the dough falls by 8 K in it.
    CHECK(near(lumped.mean_c(1.0), shells.mean_c(1.0), 0.0, 0.06));
}

TEST_CASE("compute_temperature_history: one place cut in pieces is one place") {
    const TemperatureProfile pieces({{seconds(2.7 * hour), Temperature::celsius(4.0)},
                                     {seconds(0.01 * hour), Temperature::celsius(4.0)},
                                     {seconds(7.0 * hour), Temperature::celsius(4.0)}});
    const TemperatureHistory whole = compute_temperature_history(ball_of(grams(850.0), refrigerator()));
    const TemperatureHistory cut = compute_temperature_history(ball_of(grams(850.0), pieces));
    // Places that differ by nothing a thermometer shows are cut by the solver.
    const TemperatureProfile nearly({{seconds(2.7 * hour), Temperature::celsius(4.0)},
                                     {seconds(0.01 * hour), Temperature::celsius(4.0 + 1e-9)},
                                     {seconds(14.29 * hour), Temperature::celsius(4.0)}});
    const TemperatureHistory restarted = compute_temperature_history(ball_of(grams(850.0), nearly));
    CHECK(restarted.breaks_hours().size() == 2);
    for (double hours = 0.0; hours < 24.0; hours += 0.37) {
        CAPTURE(hours);
        for (std::size_t zone = 0; zone < 5; ++zone) {
            CHECK(cut.temperature_c(zone, hours) == whole.temperature_c(zone, hours));
            // 5 mK: the steps differ, and each set has an error of 2 mK.
            CHECK(near(restarted.temperature_c(zone, hours), whole.temperature_c(zone, hours), 0.0, 5e-3));
        }
    }
}

TEST_CASE("compute_temperature_history: half the step has a quarter of the error") {
    const DoughHeat ball = ball_of(grams(850.0), room_cold_room());
    const auto with_step = [&](double step_s) {
        return compute_temperature_history(ball, {.shells = 20, .zones = 5, .step = seconds(step_s)});
    };
    const TemperatureHistory fine = with_step(10.0);
    const TemperatureHistory coarse = with_step(1200.0);
    const TemperatureHistory half = with_step(600.0);
    const TemperatureHistory usual = with_step(300.0);
    double coarse_error = 0.0;
    double half_error = 0.0;
    double usual_error = 0.0;
    for (double hours = 3.0; hours < 15.0; hours += 0.5) {
        coarse_error = std::max(coarse_error, std::abs(coarse.mean_c(hours) - fine.mean_c(hours)));
        half_error = std::max(half_error, std::abs(half.mean_c(hours) - fine.mean_c(hours)));
        usual_error = std::max(usual_error, std::abs(usual.mean_c(hours) - fine.mean_c(hours)));
    }
    CHECK(coarse_error / half_error > 3.3);
    CHECK(half_error / usual_error > 3.3);
    CHECK(usual_error < 3e-3); // K
}

TEST_CASE("compute_temperature_history: places change where they should, to the second") {
    const TemperatureHistory history = compute_temperature_history(ball_of(grams(850.0), room_cold_room()));
    REQUIRE(history.breaks_hours().size() == 2);
    CHECK(near(history.breaks_hours()[0], 1.3, 1e-12, 0.0));
    CHECK(near(history.breaks_hours()[1], 15.3, 1e-12, 0.0));
    CHECK(history.mean_c(1.3) > 24.0);
    CHECK(history.temperature_c(4, 1.35) < history.temperature_c(4, 1.3));
    CHECK(history.mean_c(16.0) > history.mean_c(15.3));
    CHECK(history.end_hours() == 24.0);                // beyond the last place its temperature holds
    CHECK(near(history.mean_c(24.0), 22.0, 0.0, 0.6)); // 18 K less, four time constants later
}

TEST_CASE("compute_temperature_history: a fermenting dough settles above its room, by Poisson's parabola") {
    // At rest heat made is heat lost: mean = air + q rho R (1/h + R/(k (m+3))) / (m+1).
    constexpr double watts_per_kg = 0.3;
    for (const DoughForm form : {DoughForm::ball(), DoughForm::log(), DoughForm::slab(), DoughForm::tub()}) {
        CAPTURE(static_cast<int>(form.kind));
        DoughHeat dough = ball_of(kilograms(5.0), TemperatureProfile(Temperature::celsius(24.0)), 500.0);
        dough.form = form;
        dough.heat_of_fermentation = [](double) { return watts_per_kg; };
        const ThermalProperties p = thermal_properties(dough.composition, Temperature::celsius(24.0));
        const OneDimensionalBody body = body_of(form, dough.mass, p, 9.37);
        const double expected =
            24.0 + watts_per_kg * p.density * body.radius / (body.exponent + 1.0) *
                       (1.0 / 9.37 + body.radius / (p.conductivity * (body.exponent + 3.0)));
        CHECK(near(compute_temperature_history(dough).mean_c(500.0), expected, 0.0, 1e-6));
    }
}

TEST_CASE("compute_temperature_history: a dough that makes heat warms by what it makes") {
    // Air held at the dough's own temperature for ten seconds: nothing has left yet.
    DoughHeat dough = ball_of(kilograms(5.0), TemperatureProfile(Temperature::celsius(24.0)), 10.0 / hour);
    dough.heat_of_fermentation = [](double hours) { return 100.0 * (1.0 + 360.0 * hours); };
    const ThermalProperties p = thermal_properties(dough.composition, Temperature::celsius(24.0));
    const TemperatureHistory history =
        compute_temperature_history(dough, {.shells = 20, .zones = 5, .step = seconds(0.1)});
    // 1500 J/kg in ten seconds; the surface loses less than 1e-4 of it.
    CHECK(near(history.temperature_c(0, 1.0), 24.0 + 1500.0 / p.specific_heat, 0.0, 2e-3));
}

TEST_CASE("TemperatureHistory: between moments it follows a cubic exactly") {
    const auto value = [](double t) { return 20.0 + t * (3.0 + t * (-2.0 + t)); };
    const auto slope = [](double t) { return 3.0 + t * (-4.0 + 3.0 * t); };
    TemperatureHistory history(2, seconds(hour));
    for (const double t : {0.0, 0.5, 0.75, 1.75, 2.0}) {
        history.add(t, std::array{value(t), 2.0 * value(t)}, std::array{slope(t), 2.0 * slope(t)});
    }
    std::array<double, 2> zones{};
    for (double t = 0.0; t <= 2.0; t += 0.01) {
        CAPTURE(t);
        CHECK(near(history.temperature_c(0, t), value(t), 1e-13, 0.0)); // roundings
        CHECK(near(history.mean_c(t), 1.5 * value(t), 1e-13, 0.0));
        history.temperatures_c(t, zones);
        CHECK(zones[1] == history.temperature_c(1, t));
    }
    CHECK(history.temperature_c(0, -1.0) == value(0.0));
    CHECK(history.temperature_c(0, 9.0) == value(2.0));
    CHECK(history.temperature_c(0, std::numeric_limits<double>::quiet_NaN()) == value(0.0));
}

TEST_CASE("TemperatureHistory: a change of place has two slopes") {
    TemperatureHistory history(1, seconds(hour));
    history.add(0.0, std::array{20.0}, std::array{0.0});
    history.add(0.5, std::array{20.0}, std::array{0.0});
    history.add(0.5, std::array{20.0}, std::array{-4.0});
    history.add(1.5, std::array{16.0}, std::array{-4.0});
    REQUIRE(history.breaks_hours().size() == 1);
    CHECK(history.temperature_c(0, 0.4) == 20.0);
    CHECK(near(history.temperature_c(0, 1.0), 18.0, 1e-14, 0.0));
    CHECK(near(history.temperature_c(0, 0.5), 20.0, 1e-14, 0.0));
}

TEST_CASE("TemperatureHistory: constant") {
    const TemperatureHistory history = TemperatureHistory::constant(Temperature::celsius(26.0));
    CHECK(history.zone_count() == 1);
    CHECK(near(history.mean_c(1000.0), 26.0, 1e-14, 0.0));
}
