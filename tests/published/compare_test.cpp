// Published formulas as one straight dough and with their preferment moved out: the comparison
// must find them the same in both directions, and must find a slip of one gram. Tolerances are half a gram
// unless a case says what its source rounds.
#include "convert/compare.hpp"
#include "published/published_support.hpp"
#include "support/formulas.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <string>

namespace leavenwright {
namespace {

using namespace leavenwright::testing;

constexpr Mass half_a_gram = grams(0.5);

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    const std::size_t at = text.find(from);
    REQUIRE(at != std::string::npos);
    REQUIRE(text.find(from, at + 1) == std::string::npos);
    return text.replace(at, from.size(), to);
}

std::set<std::string> moved(const Comparison& comparison) {
    std::set<std::string> names;
    for (const ComparedMass& mass : comparison.masses) {
        if (mass.moved) {
            names.insert(mass.name);
        }
    }
    return names;
}

// The dough's weight moves with each of its parts.
using Names = std::set<std::string>;

struct Slip {
    std::string from; // a line of the formula with its preferment
    std::string to;   // the same, one gram off
    Names found;      // masses that must be named
    bool hydration;   // and whether the added water's share of the flour is
};

void check_pair(const std::string& straight_text, const std::string& moved_text,
                const std::vector<Slip>& slips, Mass tolerance = half_a_gram) {
    const Formula straight = formula_from(straight_text);
    const Formula with_stage = formula_from(moved_text);
    for (const bool any_size : {false, true}) {
        for (const auto& comparison : {compare_formulas(straight, with_stage, tolerance, any_size),
                                       compare_formulas(with_stage, straight, tolerance, any_size)}) {
            CHECK(comparison.unchanged());
            CHECK(moved(comparison).empty());
            REQUIRE(comparison.hydrations.size() == 2);
            CHECK_FALSE(comparison.hydrations[0].moved);
            CHECK_FALSE(comparison.hydrations[1].moved);
            CHECK(near(comparison.scaled_by, 1.0, 0.0, any_size ? 1e-3 : 0.0));
        }
    }
    for (const Slip& slip : slips) {
        CAPTURE(slip.to);
        const Formula slipped = formula_from(replaced(moved_text, slip.from, slip.to));
        for (const auto& comparison : {compare_formulas(straight, slipped, tolerance, false),
                                       compare_formulas(slipped, straight, tolerance, false)}) {
            CHECK_FALSE(comparison.unchanged());
            CHECK(moved(comparison) == slip.found);
            CHECK(comparison.hydrations[0].moved == slip.hydration);
        }
    }
}

const Names one_flour = {"total flour", "bread flour", "dough"};
const Names water = {"added water", "true water", "dough"};
const Names salt = {"salt", "dough"};

} // namespace

// Source: a baking trade magazine's formula page: 10 kg of flour, a third of it in a poolish, to 1 g.
TEST_CASE("published: French bread, straight and with its poolish") {
    check_pair("formula: 1\nname: French bread\n"
               "dough:\n"
               "  bread flour: 10 kg\n"
               "  water: 6.7 kg\n"
               "  salt: 0.2 kg\n"
               "  fresh yeast: 0.11 kg\n",
               "formula: 1\nname: French bread with poolish\n"
               "dough:\n"
               "  bread flour: 6.7 kg\n"
               "  water: 3.4 kg\n"
               "  salt: 0.2 kg\n"
               "  fresh yeast: 0.103 kg\n"
               "preferments:\n"
               "  poolish:\n"
               "    bread flour: 3.3 kg\n"
               "    water: 3.3 kg\n"
               "    fresh yeast: 0.007 kg\n",
               {{"  bread flour: 6.7 kg", "  bread flour: 6.701 kg", one_flour, true},
                {"    bread flour: 3.3 kg", "    bread flour: 3.299 kg", one_flour, true},
                {"  water: 3.4 kg", "  water: 3.399 kg", water, true},
                {"    water: 3.3 kg", "    water: 3.301 kg", water, true},
                {"  salt: 0.2 kg", "  salt: 0.199 kg", salt, false},
                {"  salt: 0.2 kg", "  salt: 0.201 kg", salt, false}});
}

// Source: a bread-baking site's baker's-percentage lesson. The overall column is recomputed; its
// percentages, 68.42, 1.97 and 0.68, are printed to 0.01 % of 1368 g: 0.07 g.
TEST_CASE("published: poolish baguette, straight and with its poolish") {
    const std::string with_poolish = "formula: 1\nname: Poolish baguette\n"
                                     "dough:\n"
                                     "  bread flour: 900 g\n"
                                     "  water: 468 g\n"
                                     "  instant yeast: 9 g\n"
                                     "  salt: 27 g\n"
                                     "preferments:\n"
                                     "  poolish:\n"
                                     "    bread flour: 468 g\n"
                                     "    water: 468 g   # as much\n"
                                     "    instant yeast: 0.3 g\n";
    const std::vector<Slip> slips = {{"  bread flour: 900 g", "  bread flour: 899 g", one_flour, true},
                                     {"    water: 468 g   # as much", "    water: 469 g", water, true},
                                     {"  salt: 27 g", "  salt: 28 g", salt, false}};
    check_pair("formula: 1\nname: Baguette\n"
               "dough:\n"
               "  bread flour: 1368 g\n"
               "  water: 936 g\n"
               "  instant yeast: 9.3 g\n"
               "  salt: 27 g\n",
               with_poolish, slips);
    check_pair("formula: 1\nname: Baguette\nflour weight: 1368 g\n"
               "dough:\n"
               "  bread flour: 100%\n"
               "  water: 68.42%\n"
               "  instant yeast: 0.68%\n"
               "  salt: 1.97%\n",
               with_poolish, slips);
    // The column of the final dough alone is another bread: 52 % of water and 3 % of salt.
    const Formula alone = formula_from("formula: 1\nname: Column\ndough:\n  bread flour: 900 g\n"
                                       "  water: 468 g\n  instant yeast: 9 g\n  salt: 27 g\n");
    const Comparison comparison = compare_formulas(formula_from(with_poolish), alone, half_a_gram, true);
    CHECK_FALSE(comparison.unchanged());
    CHECK(comparison.hydrations[0].moved);
    CHECK(near(comparison.hydrations[0].after, 0.52, 1e-12, 0.0)); // exact
    CHECK(near(comparison.hydrations[0].before, 0.6842, 0.0, 0.00005));
}

// Source: after Hamelman, Bread, "Five-Grain Levain": 30 g of ripe culture in, 30 g held back.
TEST_CASE("published: five-grain levain, straight and with levain and soaker") {
    check_pair("formula: 1\nname: Five-grain bread\n"
               "dough:\n"
               "  bread flour: 450 g\n"
               "  whole wheat flour: 150 g\n"
               "  rye chops: 55 g\n"
               "  flaxseed: 55 g\n"
               "  sunflower seeds: 45 g\n"
               "  rolled oats: 45 g\n"
               "  water: 580 g\n"
               "  salt: 15 g\n"
               "  instant yeast: 5 g\n",
               five_grain_levain,
               {{"  bread flour: 300 g", "  bread flour: 301 g", one_flour, true},
                {"  whole wheat flour: 150 g",
                 "  whole wheat flour: 149 g",
                 {"total flour", "whole wheat flour", "dough"},
                 true},
                {"  water: 155 g", "  water: 156 g", water, true},
                {"    water: 240 g", "    water: 239 g", water, true},
                {"  salt: 11 g", "  salt: 12 g", salt, false},
                {"    salt: 4 g", "    salt: 3 g", salt, false}});
}

// Source: a sourdough community's hydration thread: 15 kg of flour, 30 % of it in a sour. The sour's
// starter is taken out again and is not counted.
TEST_CASE("published: country dough, straight and by sour") {
    check_pair("formula: 1\nname: Country dough\n"
               "dough:\n"
               "  bread flour: 15 kg\n"
               "  water: 11.1 kg\n"
               "  salt: 300 g\n"
               "  malt flour: 37.5 g\n",
               "formula: 1\nname: Country dough by sour\n"
               "dough:\n"
               "  bread flour: 10.5 kg\n"
               "  water: 8.625 kg\n"
               "  salt: 300 g\n"
               "  malt flour: 26.25 g\n"
               "preferments:\n"
               "  sour:\n"
               "    kind: levain\n"
               "    bread flour: 4.5 kg\n"
               "    water: 2.475 kg\n"
               "    malt flour: 11.25 g\n",
               {{"  bread flour: 10.5 kg", "  bread flour: 10.501 kg", one_flour, true},
                {"    water: 2.475 kg", "    water: 2.474 kg", water, true},
                {"  salt: 300 g", "  salt: 301 g", salt, false}},
               half_a_gram);
}

// Sources: German bakers' glossaries. A dough yield of 160 is 500 g of flour and 300 g of liquid,
// one of 150 is 10 kg and 5 kg; 159 is 155 + 370 g of flour with 110 + 120 + 80 g of liquid.
TEST_CASE("published: dough yield compares doughs of any size") {
    const Formula kilogram = formula_from("formula: 1\nname: Dough yield 160\nflour weight: 10 kg\n"
                                          "dough:\n  bread flour: 100%\n  water: 60%\n");
    const Formula half_kilogram =
        formula_from("formula: 1\nname: Dough yield 160\ndough:\n  bread flour: 500 g\n  water: 300 g\n");
    const Comparison same = compare_formulas(kilogram, half_kilogram, grams(0.0), true);
    CHECK(same.unchanged());
    CHECK(near(same.scaled_by, 20.0, 1e-12, 0.0));
    const Comparison back = compare_formulas(half_kilogram, kilogram, grams(0.0), true);
    CHECK(back.unchanged());
    CHECK(near(back.scaled_by, 0.05, 1e-12, 0.0));
    CHECK_FALSE(compare_formulas(kilogram, half_kilogram, half_a_gram, false).unchanged());

    const Formula stiffer =
        formula_from("formula: 1\nname: Dough yield 150\ndough:\n  bread flour: 10 kg\n  water: 5 kg\n");
    const Comparison other = compare_formulas(half_kilogram, stiffer, half_a_gram, true);
    CHECK(moved(other) == water);
    CHECK(other.hydrations[0].moved);
    CHECK(near(other.hydrations[0].before, 0.6, 1e-12, 0.0));
    CHECK(near(other.hydrations[0].after, 0.5, 1e-12, 0.0));

    check_pair("formula: 1\nname: Dough yield 159\n"
               "dough:\n"
               "  bread flour: 525 g\n"
               "  water: 310 g\n"
               "  salt: 10 g\n",
               "formula: 1\nname: Dough yield 159, its sour of yield 171\n"
               "dough:\n"
               "  bread flour: 370 g\n"
               "  water: 200 g\n"
               "  salt: 10 g\n"
               "preferments:\n"
               "  sour:\n"
               "    kind: levain\n"
               "    bread flour: 155 g\n"
               "    water: 110 g\n",
               {{"  bread flour: 370 g", "  bread flour: 371 g", one_flour, true},
                {"    water: 110 g", "    water: 109 g", water, true},
                {"  salt: 10 g", "  salt: 9 g", salt, false}});
}

// Source: a German bakers' glossary: 1000 g of rye, 45 % of it soured in three stages. The full sour's
// 450 g of flour are 300 fresh and 150 out of the basic sour. Water and salt are chosen here.
TEST_CASE("published: rye bread, straight and with the full sour of three stages") {
    const Names rye = {"total flour", "rye flour", "dough"};
    check_pair("formula: 1\nname: Rye\n"
               "dough:\n"
               "  rye flour: 1000 g\n"
               "  water: 800 g\n"
               "  salt: 20 g\n",
               "formula: 1\nname: Rye by three-stage sour\n"
               "dough:\n"
               "  rye flour: 550 g\n"
               "  water: 350 g\n"
               "  salt: 20 g\n"
               "preferments:\n"
               "  full sour:\n"
               "    kind: levain\n"
               "    rye flour: 300 g\n"
               "    water: 300 g\n"
               "    culture: 300 g\n"
               "    culture hydration: 100%\n",
               {{"  rye flour: 550 g", "  rye flour: 549 g", rye, true},
                {"    water: 300 g", "    water: 301 g", water, true},
                {"  salt: 20 g", "  salt: 21 g", salt, false}});
}

// Source: a cooking site's guest article on converting yeast recipes.
TEST_CASE("published: 1000 g of flour with two packets of yeast, and with 400 g of levain") {
    const std::string straight = "formula: 1\nname: Yeasted\n"
                                 "dough:\n"
                                 "  bread flour: 1000 g\n"
                                 "  water: 650 g\n"
                                 "  salt: 20 g\n"
                                 "  active dry yeast: 2 packets\n";
    const std::string by_levain = "formula: 1\nname: By levain\n"
                                  "dough:\n"
                                  "  bread flour: 800 g\n"
                                  "  water: 450 g\n"
                                  "  salt: 20 g\n"
                                  "  levain: 400 g\n"
                                  "preferments:\n"
                                  "  levain:\n"
                                  "    bread flour: 100%\n"
                                  "    water: 100%\n"
                                  "    weight: 400 g\n";
    check_pair(straight, by_levain,
               {{"  bread flour: 800 g", "  bread flour: 801 g", one_flour, true},
                {"  water: 450 g", "  water: 449 g", water, true},
                {"  salt: 20 g", "  salt: 19 g", salt, false}});
    // The yeast is shown apart and does not count.
    const Comparison comparison =
        compare_formulas(formula_from(straight), formula_from(by_levain), half_a_gram, false);
    REQUIRE(comparison.yeast.size() == 1);
    CHECK(in_grams(comparison.yeast[0].before) > 0.0);
    CHECK(in_grams(comparison.yeast[0].after) == 0.0);
    CHECK_FALSE(comparison.yeast[0].moved);
}

// Source: a home baker's page. It leaves the salt out; so does the check.
TEST_CASE("published: 500 g of flour with one packet of yeast, and with 100 g of levain") {
    const std::string straight = "formula: 1\nname: Yeasted\n"
                                 "dough:\n"
                                 "  bread flour: 500 g\n"
                                 "  water: 350 g\n"
                                 "  active dry yeast: 1 packet\n";
    const std::string by_levain = "formula: 1\nname: By levain\n"
                                  "dough:\n"
                                  "  bread flour: 450 g\n"
                                  "  water: 300 g\n"
                                  "preferments:\n"
                                  "  levain:\n"
                                  "    bread flour: 50 g\n"
                                  "    water: 50 g # of the 100 g\n";
    check_pair(straight, by_levain,
               {{"  bread flour: 450 g", "  bread flour: 451 g", one_flour, true},
                {"    water: 50 g # of the 100 g", "    water: 49 g", water, true}});
    // The same bread from twice the flour.
    const Formula twice = formula_from("formula: 1\nname: Yeasted\ndough:\n  bread flour: 1000 g\n"
                                       "  water: 700 g\n  active dry yeast: 2 packets\n");
    const Comparison comparison = compare_formulas(twice, formula_from(by_levain), half_a_gram, true);
    CHECK(comparison.unchanged());
    CHECK(near(comparison.scaled_by, 2.0, 1e-12, 0.0));
}

} // namespace leavenwright
