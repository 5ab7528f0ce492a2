// Choi Y, Okos MR (1986), Effects of temperature and composition on the thermal properties of foods, in
// Food Engineering and Process Applications 1, 93-101.
#include "ferment/dough_properties.hpp"

#include "support/dough_figures.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <array>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

struct PureRow {
    const char* name;
    Fraction DoughComposition::*part;
    double specific_heat; // kJ/(kg K)
    double conductivity;  // W/(m K)
    double density;       // kg/m3
};

// The equations at 25 C, worked out by hand to the digits shown.
constexpr auto pure_rows = std::to_array<PureRow>({
    {"water", &DoughComposition::water, 4.1774, 0.6110, 994.9},
    {"protein", &DoughComposition::protein, 2.0376, 0.2070, 1316.9},
    {"fat", &DoughComposition::fat, 2.0180, 0.1737, 915.2},
    {"carbohydrate", &DoughComposition::carbohydrate, 1.5942, 0.2334, 1591.3},
    {"fibre", &DoughComposition::fibre, 1.8888, 0.2126, 1302.4},
    {"ash", &DoughComposition::ash, 1.1375, 0.3628, 2416.8},
    {"salt", &DoughComposition::salt, 1.1375, 0.3628, 2416.8},
});

struct DoughRow {
    double hydration;
    double specific_heat;      // kJ/(kg K)
    double conductivity;       // W/(m K)
    double density;            // kg/m3
    double diffusivity;        // 1e-7 m2/s
    double specific_heat_cold; // at 5 C
};

// Flour, water and 2 % salt at 25 C, without gas: the mixing rules worked out with a spreadsheet.
constexpr auto dough_rows = std::to_array<DoughRow>({
    {0.55, 2.734, 0.433, 1245.0, 1.27, 2.714},
    {0.60, 2.779, 0.440, 1235.0, 1.28, 2.760},
    {0.65, 2.821, 0.446, 1226.0, 1.29, 2.802},
    {0.70, 2.860, 0.452, 1218.0, 1.30, 2.842},
    {0.80, 2.933, 0.463, 1203.0, 1.31, 2.915},
});

} // namespace

TEST_CASE("Choi-Okos: pure components at 25 C") {
    for (const PureRow& row : pure_rows) {
        CAPTURE(row.name);
        DoughComposition pure{
            .water = {}, .protein = {}, .fat = {}, .carbohydrate = {}, .fibre = {}, .ash = {}, .salt = {}};
        pure.*row.part = Fraction(1.0);
        const ThermalProperties p = thermal_properties(pure, Temperature::celsius(25.0));
        // half of the last digit shown
        CHECK(near(p.specific_heat / 1000.0, row.specific_heat, 0.0, 5.1e-5));
        CHECK(near(p.conductivity, row.conductivity, 0.0, 5.1e-5));
        CHECK(near(p.density, row.density, 0.0, 0.051));
    }
}

TEST_CASE("Choi-Okos: wheat dough") {
    for (const DoughRow& row : dough_rows) {
        CAPTURE(row.hydration);
        const DoughComposition dough = plain_dough(row.hydration);
        const ThermalProperties p = thermal_properties(dough, Temperature::celsius(25.0));
        const ThermalProperties cold = thermal_properties(dough, Temperature::celsius(5.0));
        // one in the last digit: the flour's parts were normalised with rounded figures
        CHECK(near(p.specific_heat / 1000.0, row.specific_heat, 0.0, 1e-3));
        CHECK(near(cold.specific_heat / 1000.0, row.specific_heat_cold, 0.0, 1e-3));
        CHECK(near(p.conductivity, row.conductivity, 0.0, 6e-4));
        CHECK(near(p.density, row.density, 0.0, 0.6));
        CHECK(near(p.diffusivity() * 1e7, row.diffusivity, 0.0, 6e-3));
    }
}

TEST_CASE("Rask 1989: wheat dough is in the published band") {
    // Rask C (1989), J Food Eng 9, 167-193, from memory: doughs of 43 to 46 % water have 2.76 to
    // 2.88 kJ/(kg K) and 0.4 to 0.5 W/(m K). 60 to 65 % hydration has that water.
    for (const double hydration : {0.60, 0.65}) {
        CAPTURE(hydration);
        const ThermalProperties p = thermal_properties(plain_dough(hydration), Temperature::celsius(25.0));
        CHECK(p.specific_heat > 2760.0);
        CHECK(p.specific_heat < 2880.0);
        CHECK(p.conductivity > 0.4);
        CHECK(p.conductivity < 0.5);
    }
}
