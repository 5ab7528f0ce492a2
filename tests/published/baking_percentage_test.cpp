// Published examples of the baker's percentage, of scaling and of yield. Every tolerance is half
// a unit of the last printed digit unless a comment says more; printed figures that are exact
// are held to 1e-9, far below any scale and far above the rounding of doubles.
#include "published/published_support.hpp"
#include "support/formulas.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

namespace leavenwright {
namespace {

using namespace leavenwright::testing;

constexpr double exact = 1e-9;

double pounds(Mass mass) {
    return in_kilograms(mass) / 0.45359237; // the international pound
}

double ounces(double grams) {
    return grams / 453.59237 * 16.0;
}

} // namespace

// Source: a vocational baking course handout (title not known).
TEST_CASE("published: 73 baguettes of 390 g, sized by what they make") {
    for (const char* notation : {"dough", "overall"}) {
        CAPTURE(notation);
        const Formula formula =
            formula_from("formula: 1\nname: Baguettes\nmakes: 73 x 390 g\n" + std::string(notation) +
                         ":\n"
                         "  bread flour: 100%\n"
                         "  water: 67%\n"
                         "  salt: 2%\n"
                         "  fresh yeast: 1%\n");
        const Overall overall = compute_overall(formula);
        // printed to 0.01 g
        CHECK(near(in_grams(formula.dough_mass()), 28470.0, 0.0, 0.005));
        CHECK(near(in_grams(overall.total_flour), 16747.06, 0.0, 0.005));
        CHECK(near(grams_in(overall, "water"), 11220.53, 0.0, 0.005));
        CHECK(near(grams_in(overall, "salt"), 334.94, 0.0, 0.005));
        CHECK(near(grams_in(overall, "fresh yeast"), 167.47, 0.0, 0.005));
        REQUIRE(formula.makes);
        CHECK(formula.makes->pieces == 73.0);
        REQUIRE(formula.makes->piece);
        CHECK(near(in_grams(*formula.makes->piece), 390.0, exact, 0.0));
    }
}

// Source: a pizza trade magazine's baker's-percentage tutorial.
TEST_CASE("published: a pizza dough in pounds and ounces has round percentages") {
    const Overall overall = compute_overall(formula_from("formula: 1\nname: Pizza dough\n"
                                                         "dough:\n"
                                                         "  bread flour: 40 lb\n"
                                                         "  salt: 11.2 oz\n"
                                                         "  sugar: 12.8 oz\n"
                                                         "  fresh yeast: 9.6 oz\n"
                                                         "  olive oil: 1 lb 3.2 oz\n"
                                                         "  water: 23 lb 3.2 oz\n"));
    // printed exactly
    CHECK(near(percent_in(overall, "bread flour"), 100.0, exact, 0.0));
    CHECK(near(percent_in(overall, "salt"), 1.75, exact, 0.0));
    CHECK(near(percent_in(overall, "sugar"), 2.0, exact, 0.0));
    CHECK(near(percent_in(overall, "fresh yeast"), 1.5, exact, 0.0));
    CHECK(near(percent_in(overall, "olive oil"), 3.0, exact, 0.0));
    CHECK(near(percent_in(overall, "water"), 58.0, exact, 0.0));
}

// Source: bakery course slides; salt and yeast recomputed.
TEST_CASE("published: fractions of ounces") {
    const Overall overall = compute_overall(formula_from("formula: 1\nname: Slides\n"
                                                         "dough:\n"
                                                         "  bread flour: 5 lb 4 oz\n"
                                                         "  water: 3 lb 8 oz\n"
                                                         "  salt: 1 3/4 oz\n"
                                                         "  fresh yeast: 1 1/4 oz\n"));
    CHECK(near(overall.hydration_added().in_percent(), 66.7, 0.0, 0.05));
    CHECK(near(percent_in(overall, "salt"), 2.08, 0.0, 0.005));
    CHECK(near(percent_in(overall, "fresh yeast"), 1.49, 0.0, 0.005));
}

// Source: inputs from a bakery network's bulletin; answer by division. The bulletin adds the two
// losses, 2 % and 11 %, to a yield of 87 %. There is no verb for losses: the yield is divided out
// here, and the library reads the size in pounds, solves the percentages and scales.
TEST_CASE("published: dough for 500 lb of baked bread at 87 % yield") {
    Formula formula = formula_from("formula: 1\nname: White pan bread\nmakes: 500 lb\n"
                                   "overall:\n"
                                   "  bread flour: 100%\n"
                                   "  water: 62%\n"
                                   "  salt: 2%\n"
                                   "  fresh yeast: 2.5%\n");
    CHECK(near(pounds(formula.dough_mass()), 500.0, exact, 0.0));
    formula.scale(1.0 / 0.87);
    CHECK(near(pounds(formula.dough_mass()), 574.7, 0.0, 0.05));
    const Overall overall = compute_overall(formula);
    CHECK(near(overall.hydration_added().in_percent(), 62.0, exact, 0.0));  // percentages stay
    CHECK(near(pounds(overall.total_flour), 574.7126 / 1.665, 0.0, 0.001)); // from 7 digits
}

// Source: Time magazine, 11 August 1941; loss recomputed.
TEST_CASE("published: field bread of 1941, 100 lb of flour for about 140 lb of bread") {
    struct Case {
        const char* water;
        double dough_lb;
        double loss_percent;
    };
    for (const Case& example : {Case{"53 lb", 159.25, 12.1}, Case{"55 lb", 161.25, 13.2}}) {
        CAPTURE(example.water);
        const Formula formula = formula_from("formula: 1\nname: Field bread\n"
                                             "dough:\n"
                                             "  bread flour: 100 lb\n"
                                             "  water: " +
                                             std::string(example.water) +
                                             "\n"
                                             "  fresh yeast: 12 oz\n"
                                             "  salt: 2 lb\n"
                                             "  sugar: 3 lb\n"
                                             "  shortening: 8 oz\n");
        const Overall overall = compute_overall(formula);
        CHECK(near(percent_in(overall, "fresh yeast"), 0.75, exact, 0.0));
        CHECK(near(percent_in(overall, "shortening"), 0.5, exact, 0.0));
        CHECK(near(pounds(formula.dough_mass()), example.dough_lb, exact, 0.0));
        const Mass baked = kilograms(140.0 * 0.45359237);
        const Fraction loss = Fraction::of(formula.dough_mass() - baked, formula.dough_mass());
        CHECK(near(loss.in_percent(), example.loss_percent, 0.0, 0.05));
    }
}

// Source: a newspaper food column's discussion.
TEST_CASE("published: no-knead dough") {
    const Overall overall = compute_overall(formula_from("formula: 1\nname: No-knead\n"
                                                         "dough:\n"
                                                         "  bread flour: 430 g\n"
                                                         "  water: 345 g\n"
                                                         "  instant yeast: 1 g\n"
                                                         "  salt: 8 g\n"));
    CHECK(near(overall.hydration_added().in_percent(), 80.0, 0.0, 0.5));
    CHECK(near(percent_in(overall, "instant yeast"), 0.23, 0.0, 0.005));
    CHECK(near(percent_in(overall, "salt"), 1.86, 0.0, 0.005));
}

// Source: Hamelman, Bread.
TEST_CASE("published: 7.5 kg of water on 10 kg of flour are 75 %") {
    const Overall overall = compute_overall(
        formula_from("formula: 1\nname: Dough\ndough:\n  bread flour: 10 kg\n  water: 7.5 kg\n"));
    CHECK(near(overall.hydration_added().in_percent(), 75.0, exact, 0.0));
    CHECK(near(overall.hydration_true().in_percent(), 75.0, exact, 0.0));
}

// Source: TM 10-412 as adapted. The kind of the yeast is not said; active dry is written here, and
// no figure depends on it.
TEST_CASE("published: military white bread at three sizes") {
    const std::string text = "formula: 1\nname: White bread\n"
                             "dough:\n"
                             "  bread flour: 110 oz\n"
                             "  milk: 40 oz\n"
                             "  egg: 12\n"
                             "  sugar: 19 oz\n"
                             "  butter: 16 oz\n"
                             "  salt: 2 oz\n"
                             "  active dry yeast: 2.5 oz\n";
    struct Case {
        double factor;
        double flour_oz;
        double milk_oz;
        double yeast_oz;
        double eggs;
        double whole_eggs;
    };
    for (const Case& size : {Case{0.45, 49.5, 18.0, 1.13, 5.4, 5.0}, Case{0.30, 33.0, 12.0, 0.75, 3.6, 4.0},
                             Case{0.15, 16.5, 6.0, 0.38, 1.8, 2.0}}) {
        CAPTURE(size.factor);
        Formula formula = formula_from(text);
        formula.scale(size.factor);
        const Overall overall = compute_overall(formula);
        CHECK(near(ounces(in_grams(overall.total_flour)), size.flour_oz, exact, 0.0));
        CHECK(near(ounces(grams_in(overall, "milk")), size.milk_oz, exact, 0.0));
        // printed to 0.01 oz; 1.125 and 0.375 are exact halves of it, so the bound itself is met
        CHECK(near(ounces(grams_in(overall, "active dry yeast")), size.yeast_oz, 0.0, 0.005 + exact));
        const auto egg = mass_of_piece(ingredient_named("egg"), "");
        REQUIRE(egg);
        const double eggs = grams_in(overall, "egg") / in_grams(*egg);
        CHECK(near(eggs, size.eggs, exact, 0.0));
        CHECK(near(eggs, size.whole_eggs, 0.0, 0.5)); // printed as whole eggs
    }
}

} // namespace leavenwright
