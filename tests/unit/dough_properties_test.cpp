#include "ferment/dough_properties.hpp"

#include "support/dough_figures.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

constexpr double exact = 1e-12; // one rounding of a product
const Temperature room = Temperature::celsius(25.0);

} // namespace

TEST_CASE("thermal_properties: fractions are scaled to add up to 1") {
    const DoughComposition dough = plain_dough(0.65);
    DoughComposition rounded = dough;
    for (Fraction* part : {&rounded.water, &rounded.protein, &rounded.fat, &rounded.carbohydrate,
                           &rounded.fibre, &rounded.ash, &rounded.salt}) {
        *part = Fraction(part->value() * 0.98);
    }
    const ThermalProperties one = thermal_properties(dough, room);
    const ThermalProperties other = thermal_properties(rounded, room);
    CHECK(near(other.specific_heat, one.specific_heat, exact, 0.0));
    CHECK(near(other.conductivity, one.conductivity, exact, 0.0));
    CHECK(near(other.density, one.density, exact, 0.0));
}

TEST_CASE("thermal_properties: bubbles thin the dough and block heat") {
    const ThermalProperties mixed = thermal_properties(plain_dough(0.65), room);
    const ThermalProperties risen = thermal_properties(plain_dough(0.65), room, Fraction(0.5));
    CHECK(near(risen.density, mixed.density / 2.0, exact, 0.0));
    CHECK(near(risen.conductivity, mixed.conductivity * 0.5 / 1.25, exact, 0.0)); // Maxwell-Eucken
    CHECK(risen.specific_heat == mixed.specific_heat);
}

TEST_CASE("thermal_properties: water below its freezing point stays liquid") {
    const DoughComposition water{.water = Fraction(1.0),
                                 .protein = {},
                                 .fat = {},
                                 .carbohydrate = {},
                                 .fibre = {},
                                 .ash = {},
                                 .salt = {}};
    const ThermalProperties cold = thermal_properties(water, dough_freezes_at());
    CHECK(near(cold.specific_heat, 4176.2, exact, 0.0));
    CHECK(near(cold.density, 997.18, exact, 0.0));
}
