#include "ferment/kinetics.hpp"

#include "support/fermentation.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <utility>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

const DoughParts with_levain{.flour = 90.0, .water = 70.0, .levain = 20.0, .salt = 2.0};
const DoughParts with_yeast{.flour = 100.0, .water = 68.0, .salt = 2.0, .fresh_yeast = 2.0};

MicrobeState change_at(const MicrobeEquations& equations, const MicrobeState& state, double celsius) {
    MicrobeState change{};
    equations.derivative(state.data(), change.data(), celsius);
    return change;
}

} // namespace

TEST_CASE("start: a levain brings its cells and its acid, yeast its cells, and no gas") {
    const Kinetics middle;
    const MicrobeState levain = MicrobeEquations(middle, mix_of(with_levain)).start();
    const double share = 20.0 / 182.0;
    CHECK(near(levain[yeast_state], share * middle.ripe_yeast, 1e-12, 0.0));
    CHECK(near(levain[bacteria_state], share * middle.ripe_bacteria, 1e-12, 0.0));
    CHECK(near(levain[acid_state], share * middle.ripe_acid, 1e-12, 0.0));
    CHECK(levain[gas_state] == 0.0);
    CHECK(levain[packaged_state] == 0.0);
    const MicrobeState yeasted = MicrobeEquations(middle, mix_of(with_yeast)).start();
    CHECK(near(yeasted[packaged_state], 2.0 / 172.0 * cells_per_gram_fresh_yeast, 1e-12, 0.0));
    CHECK(yeasted[yeast_state] == 0.0);
}

TEST_CASE("derivative: what is not in the dough does nothing") {
    const MicrobeEquations levain(Kinetics{}, mix_of(with_levain));
    const MicrobeState of_levain = change_at(levain, levain.start(), 25.0);
    CHECK(of_levain[yeast_state] > 0.0);
    CHECK(of_levain[bacteria_state] > 0.0);
    CHECK(of_levain[packaged_state] == 0.0);
    CHECK(of_levain[packaged_lag_state] == 0.0);
    const MicrobeEquations yeasted(Kinetics{}, mix_of(with_yeast));
    const MicrobeState of_yeast = change_at(yeasted, yeasted.start(), 25.0);
    CHECK(of_yeast[packaged_state] > 0.0);
    CHECK(of_yeast[gas_state] > 0.0);
    CHECK(of_yeast[acid_state] == 0.0);
    CHECK(of_yeast[yeast_state] == 0.0);
}

TEST_CASE("derivative: gas of both yeasts adds up") {
    DoughMix both = mix_of(with_levain);
    both.fresh_yeast = Fraction(0.005);
    DoughMix yeast = both;
    yeast.levain = Fraction(0.0);
    DoughMix levain = both;
    levain.fresh_yeast = Fraction(0.0);
    const auto gas_of = [](const DoughMix& mix) {
        const MicrobeEquations equations(Kinetics{}, mix);
        return change_at(equations, equations.start(), 25.0)[gas_state];
    };
    CHECK(near(gas_of(both), gas_of(yeast) + gas_of(levain), 1e-12, 0.0));
}

TEST_CASE("derivative: growth ends at the cap, acid at pH 3.55") {
    const Kinetics middle;
    const MicrobeEquations equations(middle, mix_of(with_levain));
    MicrobeState full = equations.start();
    full[yeast_state] = middle.yeast_cap;
    full[bacteria_state] = middle.bacteria_cap;
    const MicrobeState still = change_at(equations, full, 25.0);
    CHECK(still[yeast_state] == 0.0);
    CHECK(still[bacteria_state] == 0.0);
    CHECK(still[acid_state] > 0.0); // cells that stand still go on
    MicrobeState sour = full;
    sour[acid_state] = 100.0;
    REQUIRE(equations.ph(sour[acid_state]) < 3.55);
    CHECK(change_at(equations, sour, 25.0)[acid_state] == 0.0);
}

TEST_CASE("pH: flour's without acid, falls, and less in whole grain") {
    DoughMix mix = mix_of(with_levain);
    const MicrobeEquations white(Kinetics{}, mix);
    mix.whole_grain = Fraction(1.0);
    const MicrobeEquations whole(Kinetics{}, mix);
    CHECK(white.ph(0.0) == 6.0);
    CHECK(white.ph(20.0) > white.ph(40.0));
    CHECK(whole.ph(40.0) > white.ph(40.0));
    CHECK(white.ph(1e6) == 3.45);
}

TEST_CASE("rise: nothing until water is full, smooth where dough begins to leak, bounded") {
    const MicrobeEquations dough(Kinetics{}, mix_of(with_levain));
    const double dissolved = dough.dissolved_limit(25.0);
    CHECK(dough.rise(dissolved, 25.0) == 0.0);
    CHECK(dough.rise(0.5 * dissolved, 25.0) == 0.0);
    CHECK(dough.rise(dissolved + 1.0, 25.0) > 0.0);
    CHECK(dough.dissolved_limit(4.0) > 1.5 * dissolved); // cold water holds more
    double last = 0.0;
    double last_step = 0.0;
    for (double gas = dissolved; gas < 400.0; gas += 0.1) {
        const double rise = dough.rise(gas, 25.0);
        CAPTURE(gas);
        REQUIRE(rise >= last);
        REQUIRE(rise < 2.6);
        if (gas > dissolved + 0.15) {
            REQUIRE(near(rise - last, last_step, 0.0, 1e-5)); // the slope does not jump
        }
        last_step = rise - last;
        last = rise;
    }
    CHECK(last > 2.5);
}

TEST_CASE("lag: a culture with more of it begins more slowly") {
    Kinetics slow;
    slow.lag = 1.0;
    const auto growth = [](const Kinetics& kinetics) {
        const MicrobeEquations equations(kinetics, mix_of(with_levain));
        return change_at(equations, equations.start(), 25.0)[yeast_state];
    };
    // at the beginning  q / (1 + q) = e^-lag
    CHECK(near(growth(slow) / growth(Kinetics{}), std::exp(-0.7), 1e-12, 0.0));
}

TEST_CASE("yeasts in closed form: as their equations in small steps") {
    const DoughParts both{.flour = 90.0, .water = 65.0, .levain = 20.0, .salt = 2.0, .fresh_yeast = 0.2};
    const DoughParts levain_alone{.flour = 0.0, .water = 0.0, .levain = 100.0};
    Kinetics crowded; // more cells than the dough lets grow
    crowded.ripe_yeast = 1.2 * crowded.yeast_cap;
    for (const auto& [kinetics, parts] : {std::pair(Kinetics{}, both), std::pair(crowded, levain_alone)}) {
        const MicrobeEquations equations(kinetics, mix_of(parts));
        for (const double hours : {0.0, 1.0, 5.0, 12.0}) {
            CAPTURE(hours);
            const MicrobeState expected = state_after(kinetics, mix_of(parts), 26.0, hours);
            const MicrobeState change = change_at(equations, expected, 26.0);
            const double rate = growth_rate(Yeast::humilis, 26.0);
            const YeastStanding culture = equations.culture_after(rate * hours);
            CHECK(near(culture.cells, expected[yeast_state], 1e-8, 0.0));
            CHECK(near(culture.growth * rate, change[yeast_state], 1e-7, 1e-3));
            CHECK(culture.awake == equations.culture_awake(rate * hours));
            if (equations.has_packaged()) {
                const double packaged_rate = growth_rate(Yeast::packaged, 26.0);
                const YeastStanding packaged = equations.packaged_after(packaged_rate * hours);
                CHECK(near(packaged.cells, expected[packaged_state], 1e-8, 0.0));
                CHECK(near(packaged.growth * packaged_rate, change[packaged_state], 1e-7, 1e-3));
            }
        }
    }
}

TEST_CASE("souring: lactobacilli that bear acid grow on where the others stop") {
    Kinetics kinetics;
    kinetics.culture_bacteria = Lactobacillus::acid_tolerant;
    const MicrobeEquations tolerant(kinetics, mix_of(with_levain));
    const MicrobeEquations usual(Kinetics{}, mix_of(with_levain));
    CHECK(tolerant.souring_corners()[0] < tolerant.souring_corners()[1]);
    CHECK(near(tolerant.ph(tolerant.souring_corners()[1]), 3.5, 1e-12, 0.0));
    const double beyond = usual.souring_corners()[0] + 1.0;
    CHECK(usual.souring(1e9, beyond, 1.0).bacteria == 0.0);
    CHECK(tolerant.souring(1e9, beyond, 1.0).bacteria > 0.0);
    CHECK(tolerant.souring(1e9, tolerant.souring_corners()[1] + 1.0, 1.0).bacteria == 0.0);
}

TEST_CASE("souring: its slopes jump at its corners and nowhere else") {
    const MicrobeEquations equations(Kinetics{}, mix_of(with_levain));
    const auto slope_at = [&](double acid) {
        constexpr double little = 1e-4;
        return (equations.souring(1e9, acid + little, 1.0).acid -
                equations.souring(1e9, acid - little, 1.0).acid) /
               (2.0 * little);
    };
    const auto [last_growth, fading] = equations.souring_corners();
    CHECK(near(equations.ph(last_growth), 3.8, 1e-12, 0.0));
    CHECK(near(equations.ph(fading), 3.65, 1e-12, 0.0));
    double last = slope_at(1.0);
    for (double acid = 1.01; equations.ph(acid) > 3.56; acid += 0.01) {
        const bool is_corner = std::abs(acid - last_growth) < 0.02 || std::abs(acid - fading) < 0.02;
        const double slope = slope_at(acid);
        CAPTURE(acid);
        REQUIRE((is_corner || near(slope, last, 0.0, 2e-3)));
        last = slope;
    }
}
