#include "formula/overall.hpp"
#include "support/formulas.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <string>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

constexpr double exact = 1e-12;
const std::string head = "formula: 1\nname: Test\n";

bool is_grams(Mass mass, double expected_g) {
    return near(in_grams(mass), expected_g, exact, 1e-9);
}

const Ingredient& ingredient(std::string_view name) {
    static const Pantry pantry;
    return *pantry.find(name).ingredient;
}

} // namespace

TEST_CASE("overall: sums of a dough") {
    const Overall overall =
        compute_overall(formula_from(head + "dough:\n  bread flour: 900 g\n  rye flour: 100 g\n  water: 500 "
                                            "g\n  milk: 200 g\n  salt: 20 g\n  sea salt: 2 g\n"
                                            "  sugar: 50 g\n  butter: 40 g\n  instant yeast: 10 g\n"));
    CHECK(is_grams(overall.total_flour, 1000.0));
    CHECK(is_grams(overall.added_water, 500.0));
    CHECK(is_grams(overall.salt, 22.0));
    CHECK(is_grams(overall.sugar, 50.0 * 0.998 + 200.0 * 0.0505 + 40.0 * 0.0006));
    CHECK(is_grams(overall.fat, 200.0 * 0.0325 + 40.0 * 0.8111));
    CHECK(is_grams(overall.total, 1822.0));
    const double salts = 20.0 * ingredient("salt").composition.water.value() +
                         2.0 * ingredient("sea salt").composition.water.value();
    CHECK(is_grams(overall.true_water,
                   500.0 + 200.0 * 0.8813 + 50.0 * 0.0002 + 40.0 * 0.1794 + 10.0 * 0.0508 + salts));
    CHECK(near(overall.hydration_added().value(), 0.5, exact, 0.0));
    CHECK(near(overall.percentage(overall.salt).value(), 0.022, exact, 0.0));
    REQUIRE(overall.flours().size() == 2);
    CHECK(overall.flours()[1].name == "rye flour");
    CHECK(is_grams(overall.mass_of(ingredient("milk")), 200.0));
    CHECK(is_grams(overall.mass_of(ingredient("egg")), 0.0));
}

TEST_CASE("overall: what a formula counts as water is added water, whole") {
    const Overall overall = compute_overall(formula_from(
        head + "count as water: [milk]\ndough: { bread flour: 100 g, water: 20 g, milk: 40 g }\n"));
    CHECK(is_grams(overall.added_water, 60.0));
    CHECK(is_grams(overall.true_water, 20.0 + 40.0 * 0.8813));
}

TEST_CASE("overall: a stage counts in the share that is used, culture as flour and water") {
    const Formula formula = formula_from(
        head + "dough:\n  bread flour: 450 g\n  water: 155 g\n  levain: 182.5 g\npreferments:\n  levain:\n   "
               " culture hydration: 50%\n"
               "    bread flour: 75 g\n    rye flour: 75 g\n    water: 185 g\n    culture: 30 g\n");
    const Overall overall = compute_overall(formula);
    // Half of the levain: 150 g of fresh flour and 20 g in the culture, 185 g of water and 10 g in the
    // culture.
    CHECK(is_grams(overall.total_flour, 450.0 + 85.0));
    CHECK(is_grams(overall.added_water, 155.0 + 97.5));
    CHECK(is_grams(overall.mass_of(ingredient("rye flour")), 42.5));
    CHECK(is_grams(overall.total, 787.5));
    for (const Line& line : overall.lines) {
        CHECK_FALSE(line.ingredient->is_culture());
    }
}

TEST_CASE("overall: lines of one ingredient are one") {
    const Overall overall =
        compute_overall(formula_from(head + "dough: { bread flour: 100 g, strong flour: 50 g, water: 80 g "
                                            "}\nsoakers:\n  seeds: { flaxseed: 10 g, water: 20 g }\n"));
    REQUIRE(overall.lines.size() == 3);
    CHECK(overall.lines[0].name == "bread flour");
    CHECK(is_grams(overall.lines[0].mass, 150.0));
    CHECK(is_grams(overall.lines[1].mass, 100.0));
}

TEST_CASE("overall: the uncertainty of measures") {
    const Overall weighed =
        compute_overall(formula_from(head + "dough: { bread flour: 100 g, water: 60 g }\n"));
    CHECK(weighed.hydration_uncertainty().value() == 0.0);
    const Overall measured =
        compute_overall(formula_from(head + "dough: { bread flour: 4 cups, water: 300 g }\n"));
    const double relative = ingredient("bread flour").volume_uncertainty.value();
    CHECK(near(measured.flour_uncertainty.value(), relative * measured.total_flour.value(), exact, 0.0));
    CHECK(near(measured.hydration_uncertainty().value(), relative * measured.hydration_true().value(), exact,
               0.0));
    const Overall both = compute_overall(
        formula_from(head + "dough: { bread flour: 4 cups, rye flour: 1 cup, water: 300 g }\n"));
    const double bread = relative * both.mass_of(ingredient("bread flour")).value();
    const double rye =
        ingredient("rye flour").volume_uncertainty.value() * both.mass_of(ingredient("rye flour")).value();
    CHECK(near(both.flour_uncertainty.value(), std::hypot(bread, rye), exact, 0.0));
}

TEST_CASE("overall: nothing adds up to nothing") {
    const Overall overall = add_up({}, {});
    CHECK(overall.total.value() == 0.0);
    CHECK(overall.lines.empty());
}
