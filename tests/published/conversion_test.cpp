// Published doughs in the direction of a conversion: a preferment moved out and in again, and
// printed conversions. Printed figures that are exact are held to 1e-9, far below any scale and
// far above the rounding of doubles; others to half a unit of the last printed digit.
#include "published/published_support.hpp"
#include "render/conversion.hpp"
#include "support/formulas.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

namespace leavenwright {
namespace {

using namespace leavenwright::testing;

constexpr double exact = 1e-9;

ConversionRequest prefermented(double flour_percent, double hydration_percent) {
    ConversionRequest request;
    request.inoculation = PrefermentedFlour::percent(flour_percent);
    request.levain_hydration = Hydration::percent(hydration_percent);
    return request;
}

// Every ingredient but packaged yeast weighs in the whole formula what it weighed before.
void check_overall_unchanged(const Formula& before, const Formula& after) {
    const Overall was = compute_overall(before);
    const Overall is = compute_overall(after);
    int compared = 0;
    for (const Line& line : was.lines) {
        CAPTURE(line.name);
        const double expected = line.ingredient->is_yeast() ? 0.0 : in_grams(line.mass);
        CHECK(near(in_grams(is.mass_of(*line.ingredient)), expected, exact, exact));
        ++compared;
    }
    CHECK(compared >= 3);
    for (const Line& line : is.lines) {
        CAPTURE(line.name);
        CHECK(was.mass_of(*line.ingredient).value() > 0.0); // nothing new came in
    }
}

} // namespace

// Source: a community thread after Hamelman's layout; 352 g of flour as printed.
TEST_CASE("published: country bread, the printed preferment as a levain") {
    const std::string base = "formula: 1\nname: Country bread\nflour weight: 352 g\n"
                             "overall:\n"
                             "  bread flour: 100%\n"
                             "  water: 68%\n"
                             "  salt: 2%\n"
                             "  instant yeast: 0.4%\n";
    const std::string sponge = "preferments:\n"
                               "  sponge:\n"
                               "    prefermented flour: 50%\n"
                               "    water: 60%\n";
    for (const std::string& text : {base, base + sponge}) {
        CAPTURE(text);
        const Formula formula = formula_from(text);
        const Conversion conversion = converted(formula, prefermented(50.0, 60.0));
        CHECK(near(in_grams(conversion.levain.flour), 176.0, exact, 0.0));
        CHECK(near(in_grams(conversion.levain.water), 105.6, exact, 0.0));
        CHECK(near(grams_in(conversion.after.dough, "bread flour"), 176.0, exact, 0.0));
        check_overall_unchanged(formula, conversion.after);
    }
}

// What `makes` promises is met without the yeast, so the factor grows from 600 / 170.4 to 600 / 170.
TEST_CASE("published: country bread of 600 g still weighs 600 g without its yeast") {
    const Conversion conversion = converted(formula_from("formula: 1\nname: Country bread\nmakes: 600 g\n"
                                                         "overall:\n"
                                                         "  bread flour: 100%\n"
                                                         "  water: 68%\n"
                                                         "  salt: 2%\n"
                                                         "  instant yeast: 0.4%\n"),
                                            prefermented(50.0, 60.0));
    CHECK(near(conversion.scaled_by, 170.4 / 170.0, exact, 0.0));
    CHECK(near(in_grams(conversion.after.dough_mass()), 600.0, exact, 0.0));
    CHECK(near(in_grams(conversion.levain.flour), 300.0 / 1.7, exact, 0.0));
}

// Source: a baking trade magazine's formula page.
TEST_CASE("published: French bread, the poolish dissolved and put back as a levain") {
    const std::string base = "formula: 1\nname: French bread\nflour weight: 10 kg\n"
                             "overall:\n"
                             "  bread flour: 100%\n"
                             "  water: 67%\n"
                             "  salt: 2%\n"
                             "  fresh yeast: 1.1%\n";
    const std::string poolish = "preferments:\n"
                                "  poolish:\n"
                                "    prefermented flour: 33%\n"
                                "    bread flour: 100%\n"
                                "    water: 100%\n"
                                "    fresh yeast: 0.2%\n";
    for (const std::string& text : {base, base + poolish}) {
        CAPTURE(text);
        const Formula formula = formula_from(text);
        const Conversion conversion = converted(formula, prefermented(33.0, 100.0));
        CHECK(near(in_grams(conversion.levain.flour), 3300.0, exact, 0.0));
        CHECK(near(in_grams(conversion.levain.water), 3300.0, exact, 0.0));
        CHECK(near(grams_in(conversion.after.dough, "bread flour"), 6700.0, exact, 0.0));
        CHECK(near(grams_in(conversion.after.dough, "water"), 3400.0, exact, 0.0));
        CHECK(near(grams_in(conversion.after.dough, "salt"), 200.0, exact, 0.0));
        CHECK(near(in_grams(conversion.after.dough_mass()), 17010.0 - 110.0, exact, 0.0));
        check_overall_unchanged(formula, conversion.after);
        Mass yeast = kilograms(0.0);
        for (const Removed& removed : conversion.removed) {
            yeast += removed.mass;
        }
        CHECK(near(in_grams(yeast), 110.0, exact, 0.0)); // the poolish's too
    }
}

// Source: a bread-baking site's baker's-percentage lesson.
TEST_CASE("published: poolish baguette, both notations give the printed final dough") {
    const std::string poolish = "preferments:\n"
                                "  poolish:\n"
                                "    bread flour: 468 g\n"
                                "    water: 468 g\n"
                                "    instant yeast: 0.3 g\n";
    const std::string head = "formula: 1\nname: Poolish baguette\n";
    const std::string dough =
        "dough:\n  bread flour: 900 g\n  water: 468 g\n  instant yeast: 9 g\n  salt: 27 g\n";
    const std::string overall =
        "overall:\n  bread flour: 1368 g\n  water: 936 g\n  instant yeast: 9.3 g\n  salt: 27 g\n";
    for (const std::string& text : {head + dough + poolish, head + overall + poolish, head + overall}) {
        CAPTURE(text);
        const Formula formula = formula_from(text);
        const Conversion conversion = converted(formula, prefermented(46800.0 / 1368.0, 100.0));
        CHECK(near(in_grams(conversion.levain.mass()), 936.0, exact, 0.0));
        CHECK(near(grams_in(conversion.after.dough, "bread flour"), 900.0, exact, 0.0));
        CHECK(near(grams_in(conversion.after.dough, "water"), 468.0, exact, 0.0));
        CHECK(near(grams_in(conversion.after.dough, "salt"), 27.0, exact, 0.0));
        check_overall_unchanged(formula, conversion.after);
    }
}

// Source: after Hamelman, Bread, "Five-Grain Levain".
TEST_CASE("published: five-grain levain, its levain taken out and put back, its soaker left alone") {
    const Formula formula = formula_from(five_grain_levain);
    const Conversion conversion = converted(formula, prefermented(25.0, 18500.0 / 150.0));
    CHECK(near(in_grams(conversion.levain.mass()), 335.0, exact, 0.0));
    CHECK(near(grams_in(conversion.after.dough, "bread flour"), 300.0, exact, 0.0));
    CHECK(near(grams_in(conversion.after.dough, "whole wheat flour"), 150.0, exact, 0.0));
    CHECK(near(grams_in(conversion.after.dough, "water"), 155.0, exact, 0.0));
    CHECK(near(grams_in(conversion.after.dough, "salt"), 11.0, exact, 0.0));
    const Stage* soaker = conversion.after.find_stage("five-grain soaker");
    REQUIRE(soaker != nullptr);
    CHECK(near(in_grams(soaker->used), 444.0, exact, 0.0));
    check_overall_unchanged(formula, conversion.after);
}

// Source: a sourdough community's hydration thread. The thread's sour holds 11.25 g of the malt; a
// levain of a conversion is flour and water alone, so the malt stays in the dough.
TEST_CASE("published: country dough by sour, the model case of a conversion") {
    const std::string base = "formula: 1\nname: Country dough\n"
                             "overall:\n"
                             "  bread flour: 15 kg\n"
                             "  water: 11.1 kg\n"
                             "  salt: 300 g\n"
                             "  malt flour: 37.5 g\n";
    const std::string sour = "preferments:\n"
                             "  sour:\n"
                             "    kind: levain\n"
                             "    bread flour: 4.5 kg\n"
                             "    water: 2.475 kg\n"
                             "    malt flour: 11.25 g\n";
    for (const std::string& text : {base, base + sour}) {
        CAPTURE(text);
        const Formula formula = formula_from(text);
        const Conversion conversion = converted(formula, prefermented(30.0, 55.0));
        CHECK(near(in_kilograms(conversion.levain.flour), 4.5, exact, 0.0));
        CHECK(near(in_kilograms(conversion.levain.water), 2.475, exact, 0.0));
        CHECK(near(grams_in(conversion.after.dough, "bread flour"), 10500.0, exact, 0.0));
        CHECK(near(grams_in(conversion.after.dough, "water"), 8625.0, exact, 0.0));
        CHECK(near(grams_in(conversion.after.dough, "salt"), 300.0, exact, 0.0));
        CHECK(near(grams_in(conversion.after.dough, "malt flour"), 37.5, exact, 0.0));
        CHECK(near(in_kilograms(conversion.after.dough_mass()), 26.4375, exact, 0.0));
        check_overall_unchanged(formula, conversion.after);
        CHECK(conversion.removed.empty());
    }
}

// Sources: (a) levain flour over total flour: Forkish, Flour Water Salt Yeast, p. 197, printed
// footnote; (b) levain weight over the flour of the final dough: common practice, no source.
TEST_CASE("published: the two meanings of 20 % levain") {
    const Formula formula = formula_from("formula: 1\nname: Lean bread\n"
                                         "dough:\n"
                                         "  bread flour: 1000 g\n"
                                         "  water: 700 g\n"
                                         "  salt: 20 g\n"
                                         "  instant yeast: 7 g\n");
    const Conversion by_flour = converted(formula, prefermented(20.0, 100.0));
    ConversionRequest request;
    request.inoculation = LevainOnDoughFlour::percent(20.0);
    request.levain_hydration = Hydration::percent(100.0);
    const Conversion by_weight = converted(formula, request);

    CHECK(near(in_grams(by_flour.levain.flour), 200.0, exact, 0.0));
    CHECK(near(in_grams(by_flour.levain.mass()), 400.0, exact, 0.0));
    // L = 0.2 (1000 - L / 2), so L = 200 / 1.1
    CHECK(near(in_grams(by_weight.levain.mass()), 200.0 / 1.1, exact, 0.0));
    CHECK(near(in_grams(by_weight.levain.flour), 100.0 / 1.1, exact, 0.0));

    // Each states all three bases.
    CHECK(near(by_flour.levain.prefermented_flour.in_percent(), 20.0, exact, 0.0));
    CHECK(near(by_flour.levain.on_total_flour.in_percent(), 40.0, exact, 0.0));
    CHECK(near(by_flour.levain.on_dough_flour.in_percent(), 50.0, exact, 0.0));
    CHECK(near(by_weight.levain.prefermented_flour.in_percent(), 10.0 / 1.1, exact, 0.0));
    CHECK(near(by_weight.levain.on_total_flour.in_percent(), 20.0 / 1.1, exact, 0.0));
    CHECK(near(by_weight.levain.on_dough_flour.in_percent(), 20.0, exact, 0.0));
}

TEST_CASE("published: the report of 20 % levain names the base of every share") {
    const Formula formula = formula_from("formula: 1\nname: Lean bread\n"
                                         "dough:\n  bread flour: 1000 g\n  water: 700 g\n  salt: 20 g\n");
    TextStyle style;
    style.columns = 500; // wide enough that no sentence is broken
    const std::string text = render_conversion_text(converted(formula, prefermented(20.0, 100.0)), style);
    CAPTURE(text);
    CHECK(text.find("20 % of the flour is prefermented") != std::string::npos);
    CHECK(text.find("40 % of the total flour") != std::string::npos);
    CHECK(text.find("50 % of the flour added at mixing") != std::string::npos);
}

// Source: Hamelman, Bread (2004), "Yeast conversions, fresh to dry": x 0.4. Published spread of fresh
// to active dry: 0.375 to 0.5; the USDA portion weights give 7.2 g / 17 g = 0.424.
TEST_CASE("published: a packet of active dry yeast over a cake of fresh yeast") {
    const Overall overall = compute_overall(formula_from("formula: 1\nname: Two yeasts\n"
                                                         "dough:\n"
                                                         "  bread flour: 500 g\n"
                                                         "  water: 350 g\n"
                                                         "  active dry yeast: 1 packet\n"
                                                         "  fresh yeast: 1 cake\n"));
    const double ratio = grams_in(overall, "active dry yeast") / grams_in(overall, "fresh yeast");
    CHECK(near(ratio, 0.424, 0.0, 0.0005));
    CHECK(ratio > 0.375);
    CHECK(ratio < 0.5);
    CHECK(
        near(ratio, 0.4, 0.1, 0.0)); // the portion weights are given in whole and tenth grams of small things
}

// Source: the same, fresh to instant: x 0.33. Instant yeast is fresh yeast with its water taken out: what the
// pantry has of either (USDA) says how much of one is in the other.
TEST_CASE("published: instant yeast is a third of fresh yeast by its dry matter") {
    const Pantry pantry;
    const auto dry_matter_of = [&](std::string_view name) {
        return 1.0 - pantry.find(name).ingredient->composition.water.value();
    };
    CHECK(near(dry_matter_of("fresh yeast") / dry_matter_of("instant yeast"), 0.33, 0.03, 0.0));
}

// Source: a cooking site's guest article on converting yeast recipes.
TEST_CASE("published: a printed conversion, 20 % of the flour prefermented at 100 %") {
    const Formula formula = formula_from("formula: 1\nname: Plain bread\n"
                                         "dough:\n"
                                         "  bread flour: 1000 g\n"
                                         "  water: 650 g\n"
                                         "  salt: 20 g\n"
                                         "  active dry yeast: 2 packets\n");
    const Conversion conversion = converted(formula, prefermented(20.0, 100.0));
    CHECK(near(grams_in(conversion.after.dough, "bread flour"), 800.0, exact, 0.0));
    CHECK(near(grams_in(conversion.after.dough, "water"), 450.0, exact, 0.0));
    CHECK(near(grams_in(conversion.after.dough, "salt"), 20.0, exact, 0.0));
    CHECK(near(in_grams(conversion.levain.mass()), 400.0, exact, 0.0));
    CHECK(conversion.after.dough.size() == 3); // no yeast
    REQUIRE(conversion.removed.size() == 1);
    CHECK(near(in_grams(conversion.removed.front().mass), 14.4, exact, 0.0)); // 2 x 7.2 g, USDA SR26
    check_overall_unchanged(formula, conversion.after);
}

// Source: a home baker's page. 100 g of levain at 100 % hold 50 g of the 500 g of flour; the same
// levain asked for on each of the three bases.
TEST_CASE("published: a printed conversion, 100 g of levain for one packet") {
    const Formula formula = formula_from("formula: 1\nname: Plain bread\n"
                                         "dough:\n"
                                         "  bread flour: 500 g\n"
                                         "  water: 350 g\n"
                                         "  active dry yeast: 1 packet\n");
    for (const Inoculation inoculation :
         {Inoculation(PrefermentedFlour::percent(10.0)), Inoculation(LevainOnTotalFlour::percent(20.0)),
          Inoculation(LevainOnDoughFlour(100.0 / 450.0))}) {
        CAPTURE(inoculation.index());
        ConversionRequest request;
        request.inoculation = inoculation;
        request.levain_hydration = Hydration::percent(100.0);
        const Conversion conversion = converted(formula, request);
        CHECK(near(grams_in(conversion.after.dough, "bread flour"), 450.0, exact, 0.0));
        CHECK(near(grams_in(conversion.after.dough, "water"), 300.0, exact, 0.0));
        CHECK(near(in_grams(conversion.levain.mass()), 100.0, exact, 0.0));
        CHECK(conversion.after.dough.size() == 2);
        check_overall_unchanged(formula, conversion.after);
    }
}

} // namespace leavenwright
