// Water temperature and ice as the trade prints them.
#include "ferment/water_temperature.hpp"

#include "support/near.hpp"

#include <doctest/doctest.h>

#include <array>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

constexpr double roundings = 1e-9; // F to C and back

FactorFriction fahrenheit_degrees(double degrees) {
    return kelvins(degrees * 5.0 / 9.0);
}

MixTemperatures flour_and_room_f(double flour, double room) {
    return {.flour = Temperature::fahrenheit(flour),
            .room = Temperature::fahrenheit(room),
            .preferment = {},
            .others = {}};
}

struct FactorRow {
    const char* source;
    double dough, flour, room, friction, water; // F
};

constexpr auto factor_rows = std::to_array<FactorRow>({
    {"San Francisco Baking Institute, Artisan I course notes (2009)", 75, 65, 65, 8, 87},
    {"T. Lehmann, Pizza Today, June 2018", 80, 65, 75, 35, 65},
    {"a general how-to (8 min of mixing at 2 F each)", 78, 60, 70, 16, 88},
    {"W. Gisslen, Professional Baking, from memory", 80, 68, 72, 20, 80},
});

struct IceRow {
    double tap;
    double water;
    double pounds; // of ice per pound of water
};

// Koerner Co. (a bakery supplier), table of ice for dough water. Water below 32 F is a figure of the
// calculation.
constexpr auto ice_rows = std::to_array<IceRow>({
    {80, 75, .026}, {80, 60, .103}, {80, 50, .155}, {80, 40, .206}, {80, 20, .309}, {80, 0, .416},
    {70, 60, .054}, {70, 50, .109}, {70, 40, .163}, {70, 20, .272}, {70, 0, .380},  {60, 50, .057},
    {60, 40, .115}, {60, 20, .230}, {60, 0, .345},  {50, 40, .061}, {50, 20, .183}, {50, 0, .305},
    {40, 20, .130}, {40, 0, .260},  {32, 20, .083}, {32, 0, .222},
});

} // namespace

TEST_CASE("water by factors: printed examples, and their friction found again") {
    for (const FactorRow& row : factor_rows) {
        CAPTURE(row.source);
        const MixTemperatures mix = flour_and_room_f(row.flour, row.room);
        const Temperature dough = Temperature::fahrenheit(row.dough);
        const FactorFriction friction = fahrenheit_degrees(row.friction);
        CHECK(near(water_by_factors(dough, mix, friction).in_fahrenheit(), row.water, roundings, 0.0));
        CHECK(near(friction_by_factors(dough, mix, Temperature::fahrenheit(row.water)).value(),
                   friction.value(), 1e-9, 0.0));
    }
}

TEST_CASE("water by factors: a preferment is a fourth factor") {
    // 4 x 76 - (70 + 72 + 78) - 24 = 60, by hand
    MixTemperatures mix = flour_and_room_f(70, 72);
    mix.preferment = Temperature::fahrenheit(78);
    CHECK(mix.factors() == 4);
    const Temperature water = water_by_factors(Temperature::fahrenheit(76), mix, fahrenheit_degrees(24));
    CHECK(near(water.in_fahrenheit(), 60.0, roundings, 0.0));
}

TEST_CASE("ice instead of water: the supplier's table") {
    for (const IceRow& row : ice_rows) {
        CAPTURE(row.tap);
        CAPTURE(row.water);
        const auto ice = ice_for(Temperature::fahrenheit(row.water), Temperature::fahrenheit(row.tap),
                                 Temperature::fahrenheit(32.0));
        REQUIRE(ice);
        // The table was worked with rounded heats: it is within 0.003 down to 40 F and 0.006 below.
        CHECK(near(ice->instead.value(), row.pounds, 0.0, row.water >= 40.0 ? 0.003 : 0.006));
    }
}

TEST_CASE("ice: instead of water and on top of it are not the same") {
    // A published answer for 40 kg from 20 to 10 C is 4.4 kg, which is what is to be added (D. Argyriou);
    // what is to be replaced is 4.00 kg. Printed with heats of 79.9 K, here 80 K.
    const auto ice =
        ice_for(Temperature::celsius(10.0), Temperature::celsius(20.0), Temperature::celsius(0.0));
    REQUIRE(ice);
    CHECK(near(40.0 * ice->instead.value(), 4.00, 0.0, 0.02));
    CHECK(near(40.0 * ice->on_top.value(), 4.448, 0.0, 0.01));
    // Both mixtures are at 10 C: the heat that water gives is the heat that ice takes.
    const double instead = 40.0 * ice->instead.value();
    const double melted =
        heat_to_melt(kilograms(instead), Temperature::celsius(0.0), Temperature::celsius(10.0));
    CHECK(near(melted, (40.0 - instead) * water_specific_heat * 10.0, 1e-12, 0.0));
}

TEST_CASE("ice: a textbook's ten ounces") {
    // W. Gisslen, Professional Baking, from memory: 16 lb at 58 F from a tap of 65 F, 0.633 lb (10 oz).
    const auto ice =
        ice_for(Temperature::fahrenheit(58), Temperature::fahrenheit(65), Temperature::fahrenheit(32));
    REQUIRE(ice);
    CHECK(near(16.0 * ice->instead.value(), 0.633, 0.0, 5e-4)); // half of the last digit
}

TEST_CASE("ice: heat to melt it, by a refrigeration course") {
    // 25 lb at 5 F to water of 40 F: 340.2 + 3600 + 200 = 4140.2 Btu.
    constexpr double joules_per_btu = 1055.05585262;
    const double heat = heat_to_melt(25.0 * pound(), Temperature::fahrenheit(5), Temperature::fahrenheit(40));
    CHECK(near(heat / joules_per_btu, 4140.2, 0.0, 0.05)); // half of the last digit
}
