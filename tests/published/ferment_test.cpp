// Rates, counts, acid and gas against published figures. Whole processes are in
// process_cases_test.cpp.
#include "ferment/kinetics.hpp"
#include "ferment/rates.hpp"
#include "support/fermentation.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

// Where a rate is highest, to a hundredth of a degree.
template <class Rate>
double best_temperature(Rate rate) {
    double best = 0.0;
    for (int hundredths = 0; hundredths < 5000; ++hundredths) {
        const double celsius = hundredths / 100.0;
        best = rate(celsius) > rate(best) ? celsius : best;
    }
    return best;
}

double humilis(double celsius) {
    return growth_rate(Yeast::humilis, celsius);
}

} // namespace

TEST_CASE("cardinal temperatures: the printed values") {
    // macrogrow reference T_lim, after Rosso et al. 1993: limits 5, 20 and 30
    constexpr CardinalTemperature gamma{5.0, 20.0, 30.0};
    struct Point {
        double at;
        double expected;
    };
    for (const Point& point : std::to_array<Point>({{6, 0.02},
                                                    {7, 0.07215686},
                                                    {10, 0.33333333},
                                                    {15, 0.8},
                                                    {22, 0.96333333},
                                                    {25, 0.76190476},
                                                    {29, 0.19692308}})) {
        CAPTURE(point.at);
        CHECK(near(gamma(point.at), point.expected, 0.0, 1e-7)); // eight printed digits
    }
    CHECK(gamma(5.0) == 0.0);
    CHECK(gamma(20.0) == 1.0);
    CHECK(gamma(30.0) == 0.0);
    CHECK(gamma(4.0) == 0.0);
    CHECK(gamma(31.0) == 0.0);
}

TEST_CASE("sourdough yeast: half and a quarter of its best rate") {
    // Gänzle, rec.food.sourdough FAQ Q37 and Q39
    CHECK(near(humilis(20.0) / humilis(28.0), 0.5, 0.0, 0.06));
    CHECK(near(humilis(32.0) / humilis(28.0), 0.5, 0.0, 0.06));
    CHECK(near(humilis(14.0) / humilis(28.0), 0.25, 0.0, 0.06));
    CHECK(near(humilis(34.0) / humilis(28.0), 0.25, 0.0, 0.06));
    // "doubles per 7 F" from 40 to 75 F, D. Adams in Q37: 32 times; read off a curve, so 20 to 45
    const double steepness = humilis(23.9) / humilis(4.4);
    CHECK(steepness >= 20.0);
    CHECK(steepness <= 45.0);
}

TEST_CASE("lactobacilli: half and a quarter of their best rate") {
    // the same
    CHECK(near(bacteria_rate(20.0) / bacteria_rate(32.5), 0.5, 0.0, 0.07));
    CHECK(near(bacteria_rate(37.0) / bacteria_rate(32.5), 0.5, 0.0, 0.07));
    CHECK(near(bacteria_rate(15.0) / bacteria_rate(32.5), 0.25, 0.0, 0.07));
    CHECK(near(bacteria_rate(39.0) / bacteria_rate(32.5), 0.25, 0.0, 0.07));
}

TEST_CASE("optima and limits") {
    // Gänzle et al. 1998 (27 C in broth) and Brandt et al. 2004 (28 C and 32 C in rye); FAQ Q39: 32 to
    // 33 C; one degree of tolerance
    const double yeast = best_temperature(humilis);
    const double bacteria = best_temperature(bacteria_rate);
    CHECK(near(yeast, 27.5, 0.0, 1.5));
    CHECK(near(bacteria, 32.5, 0.0, 1.5));
    CHECK(bacteria > yeast);
    // FAQ Q39: growth ends at 35.5 C ("inhibited at 35 C") and 41 C
    CHECK(humilis(35.5) == 0.0);
    CHECK(humilis(45.0) == 0.0);
    CHECK(bacteria_rate(41.0) == 0.0);
    // Brandt et al. 2004: pH 3.8; 4 % salt of flour
    CHECK(bacteria_ph_rate(Lactobacillus::sanfranciscensis, 3.8) == 0.0);
    CHECK(bacteria_ph_rate(Lactobacillus::sanfranciscensis, 3.5) == 0.0);
    CHECK(bacteria_salt_rate(BakersPercentage::percent(4.0)) == 0.0);
    CHECK(bacteria_salt_rate(BakersPercentage::percent(6.0)) == 0.0);
    // yeast is not inhibited at 4 % of flour, tolerates 8 % (Brandt 2004, Gänzle 1998)
    CHECK(yeast_salt_rate(BakersPercentage::percent(4.0)) > 0.5);
}

TEST_CASE("S. cerevisiae: optimum and upper limit") {
    // Salvadó et al. 2011
    const auto rate = [](double celsius) { return growth_rate(Yeast::cerevisiae, celsius); };
    CHECK(near(best_temperature(rate), 32.3, 0.0, 0.1));
    CHECK(rate(45.3) > 0.0);
    CHECK(rate(45.5) == 0.0);
}

TEST_CASE("packaged yeast: a tenth more gas per degree") {
    // a baking trade magazine's "The science of fermentation"
    const double step = gas_rate(Yeast::packaged, 26.0) / gas_rate(Yeast::packaged, 25.0);
    CHECK(step >= 1.05);
    CHECK(step <= 1.12);
}

TEST_CASE("dilution: lactobacilli of a dough with a tenth of sourdough instead of four tenths") {
    // Sci Rep 2017, s41598-017-00549-2, table 2: log 8.5 to 7.9 per g
    const auto bacteria = [](double fraction) {
        DoughMix mix = mix_of({});
        mix.levain = Fraction(fraction);
        return MicrobeEquations(Kinetics{}, mix).start()[bacteria_state];
    };
    CHECK(near(std::log10(bacteria(0.1) / bacteria(0.4)), 7.9 - 8.5, 0.0, 0.1));
}

TEST_CASE("dilution: yeast of a San Francisco sponge") {
    // Pyler: 10 to 25 million per g in the sponge, 2 to 4 million in the dough of a 7th to a 10th;
    // those divided are 1 to 3.6 million, so a factor of 1.5
    const Kinetics middle;
    CHECK(middle.ripe_yeast >= 10e6);
    CHECK(middle.ripe_yeast <= 25e6);
    for (const double times : {7.0, 10.0}) {
        CAPTURE(times);
        DoughMix mix = mix_of({});
        mix.levain = Fraction(1.0 / times);
        const double yeast = MicrobeEquations(middle, mix).start()[yeast_state];
        CHECK(yeast >= 2e6 / 1.5);
        CHECK(yeast <= 4e6 * 1.5);
    }
}

TEST_CASE("a sour from 4 to 24 hours: falls in pH, gains acid, yeast and lactobacilli") {
    // Nutrients 2019, 11:2954, table 2; the factors are in process_cases_test.cpp
    const DoughMix sour = mix_of({.flour = 100.0, .water = 60.0, .levain = 40.0, .levain_hydration = 0.6});
    const MicrobeState early = state_after(Kinetics{}, sour, 30.0, 4.0);
    const MicrobeState late = state_after(Kinetics{}, sour, 30.0, 24.0);
    for (const MicrobeIndex index : {yeast_state, bacteria_state, acid_state}) {
        CAPTURE(static_cast<int>(index));
        CHECK(late[index] > 1.1 * early[index]);
    }
    const MicrobeEquations equations(Kinetics{}, sour);
    CHECK(equations.ph(late[acid_state]) < equations.ph(early[acid_state]));
}

TEST_CASE("packaged yeast multiplies less where there is more of it") {
    // Hoffman, Schweizer and Dalby 1941, after Pyler: strict order; the counts are in process_cases_test.cpp
    const auto grown = [](double fresh_yeast) {
        const DoughMix mix = mix_of({.flour = 100.0, .water = 60.0, .fresh_yeast = fresh_yeast});
        const MicrobeState first = state_after(Kinetics{}, mix, 27.0, 0.0);
        return state_after(Kinetics{}, mix, 27.0, 6.0)[packaged_state] / first[packaged_state];
    };
    CHECK(grown(0.5) > grown(1.67));
    CHECK(grown(1.67) > grown(2.0));
}

TEST_CASE("gas: volume of a mole, of a gram of glucose, of a pup loaf") {
    // 1 g of glucose gives 2 of carbon dioxide per mole of 180.156 g: 0.2716 L at 25 C, 1 atm
    CHECK(near(2000.0 / 180.156 * gas_litres(25.0), 0.2716, 1e-3, 0.0));
    // Moore and Hoseney, pup loaf of 100 g of flour: 145 to 515 cm3 with 40 % of the gas kept. That gas
    // is 925 cm3, about 38 mmol at 28 C, and more than 3.55 times its volume the dough hardly holds.
    const double made_litres = (0.515 - 0.145) / 0.40;
    CHECK(near(made_litres, 0.925, 0.02, 0.0));
    CHECK(near(made_litres / gas_litres(28.0), 38.0, 0.02, 0.0));
    const MicrobeEquations dough(Kinetics{}, mix_of({}));
    CHECK(near(1.0 + dough.rise(1e4, 28.0), 515.0 / 145.0, 0.02, 0.0));
}

TEST_CASE("gas dissolved in water") {
    // Sander 2015: 0.034 mol/(kg bar) at 25 C, 2400 K; L of gas per L of water, derived from it, printed to
    // two digits
    struct Point {
        double celsius;
        double litres;
    };
    for (const Point& point :
         std::to_array<Point>({{4, 1.44}, {10, 1.23}, {20, 0.95}, {25, 0.84}, {30, 0.75}, {35, 0.67}})) {
        CAPTURE(point.celsius);
        CHECK(near(dissolved_gas_limit(point.celsius) * gas_litres(point.celsius), point.litres, 0.02, 0.0));
    }
}
