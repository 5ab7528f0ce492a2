// Readings that a rule for one layout must not take from another: found by a review.
#include "support/recipes.hpp"

#include <doctest/doctest.h>

using leavenwright::testing::lines_of;
using leavenwright::testing::read;

namespace {

std::string read_lines(const std::string& text) {
    return lines_of(read(text).transcription);
}

// The lines of a list between a flour and a salt.
std::string amid(const std::string& items, const std::string& directions = "") {
    const std::string whole =
        read_lines("Loaf\n\n500 g bread flour\n" + items + "10 g salt\n\n" + directions);
    const std::string begin = "dough: bread flour 500, ";
    const std::string end = ", dough: salt 10";
    const std::size_t last = whole.find(end);
    return whole.starts_with(begin) && last != std::string::npos
               ? whole.substr(begin.size(), last - begin.size()) + whole.substr(last + end.size())
               : whole;
}

} // namespace

TEST_CASE("care: what is added is added, and more as needed is not") {
    CHECK(amid("1 cup water plus 2 tablespoons, plus more as needed\n") == "dough: water 266");
    CHECK(amid("1 cup water, plus 2 tablespoons if needed\n") == "dough: water 237");
    CHECK(amid("1/2 cup butter plus 1 tablespoon melted butter\n") == "dough: butter 128");
    CHECK(amid("100 g milk - to 110 F\n") == "dough: milk 100");
}

TEST_CASE("care: another measure of the same is no second amount") {
    CHECK(amid("400 g rye flour, 4 cups rye flour\n").find("400") != std::string::npos);
    CHECK(amid("200 g unbleached flour, 2 cups flour\n").find("250") == std::string::npos);
}

TEST_CASE("care: an 'o' among others is 'or', and each flour keeps its number") {
    CHECK(amid("12 g lievito di birra fresco\no 4 g lievito di birra secco\n").find("secco 4,") ==
          std::string::npos);
    CHECK(
        read_lines("Canteen rolls\n\n100 portions          50 portions\n\nFlour .....  10 lb.         5 lb.\n"
                   "Butter ....   1 lb.         8 oz.\n")
            .find("butter 454") != std::string::npos);
}

TEST_CASE("care: items that begin as directions do, with numbers or without") {
    CHECK(read_lines("Loaf\n\nIngredients\n1. Bread flour 500 g\n\n2. Warm water 300 g\n\n3. Salt 10 g\n") ==
          "dough: bread flour 500, dough: water 300, dough: salt 10");
    CHECK(amid("Peel of 1 lemon, grated\n") == "dough: lemon zest 6");
    CHECK(read_lines("2     CUPS FLOUR\n1     CUP WATER\n1     TSP. SALT\n")
              .starts_with("dough: all-purpose flour"));
    CHECK(read_lines("Loaf\n\nFlour  ..   ..   ..      500 g\nWater  ..   ..   ..      300 g\n")
              .starts_with("dough: all-purpose flour 500"));
}

TEST_CASE("care: what belongs to the dough stays there") {
    CHECK(
        amid("300 g water\n40 g olive oil\n", "Mix flour, water, salt and oil. Drizzle with olive oil.\n") ==
        "dough: water 300, dough: olive oil 40");
    CHECK(amid("300 g semolina\n300 g water\n", "Mix the flours and water. Dust the peel with semolina.\n") ==
          "dough: semolina 300, dough: water 300");
    CHECK(amid("100 g egg yolk\n300 g water\n",
               "Mix flour, egg yolk and water. Brush a baking sheet lightly.\n") ==
          "dough: egg yolk 100, dough: water 300");
    CHECK(amid("60 g raisins\n300 g water\n",
               "Mix. Knead in the last two ingredients and lay the dough in a bowl.\n") ==
          "dough: raisin 60, dough: water 300");
    CHECK(
        amid("100 g powdered sugar\n300 g milk\n", "Mix flour, milk and salt. Dust with powdered sugar.\n") ==
        "dusting: powdered sugar 100?, dough: milk 300");
    CHECK(read_lines("Loaf\n\nFor a single batch:\n500 g bread flour\n300 g water\n10 g salt\n") ==
          "dough: bread flour 500, dough: water 300, dough: salt 10");
    CHECK(read_lines("# Loaf\n\n## Ingredients\n\n- 500 g bread flour\n- 300 g water\n- 10 g salt\n- 5 g "
                     "instant yeast\n\n"
                     "### For the enrichment\n\n- 100 g butter\n\n## Directions\n\n1. Knead in the butter.\n")
              .ends_with("dough: butter 100"));
    CHECK(read_lines("Loaf\n\n## Overnight ferment dough\n\n500 g bread flour\n300 g water\n")
              .starts_with("dough: bread flour"));
}

TEST_CASE("care: sentences of old books") {
    const std::string lead =
        "Bread.\n\nTake two pounds of flour, one ounce of fresh yeast and half an ounce of salt, ";
    CHECK(read_lines(lead + "rub it with half a pound of butter.\n").find("brushing") == std::string::npos);
    CHECK(read_lines(lead + "one pint of milk. Brush each roll with 1 tbsp butter.\n")
              .find("brushing: butter 14") != std::string::npos);
    CHECK(read_lines("Bread.\n\nSet a sponge with one pint of milk and one quart of flour, one ounce of "
                     "fresh yeast, half "
                     "an ounce of salt. In the morning add one pint of milk, one quart of flour, half an "
                     "ounce of salt.\n")
              .find("total") == std::string::npos);
}

TEST_CASE("care: so many times a cup is doubtful, so many times a can is not") {
    CHECK(amid("18 1 cup milk\n").ends_with("?"));
    CHECK(amid("2 14 oz cans tomatoes\n") == "dough: tomato 794");
    CHECK(amid("2 x 250 g butter\n") == "dough: butter 500");
}

TEST_CASE("care: a number behind words begins another item only where the words are a name of another kind") {
    CHECK(amid("250 ml milk 20 g fresh yeast\n") == "dough: milk 258?, dough: fresh yeast 20?");
    for (const char* line :
         {"100 g Butter, oder 80 g \xC3\x96l", "7 g instant yeast, alternatively 21 g fresh yeast",
          "3 cups flour 360 g bread flour", "125 g Butter oder 100 g Margarine",
          "5 g instant yeast 15 g fresh yeast", "500 g flour, including 100 g rye flour"}) {
        CAPTURE(line);
        const std::string lines = amid(std::string(line) + "\n");
        CHECK(lines.find(", dough") == std::string::npos);
    }
}

TEST_CASE("care: figures and letters that are right are not mended") {
    CHECK(amid("1.34 cups milk\n") == "dough: milk 327");
    CHECK(amid("1 cup warm water (34 C)\n") == "dough: water 237");
    CHECK(amid("34 cups all-purpose flour\n") == "dough: all-purpose flour 4250");
    CHECK(amid("100 g farine de bl\xC3\xA9 t110\n").find('?') == std::string::npos);
    CHECK(amid("7 g (21/4 tsp) instant yeast\n") == "dough: instant yeast 7");
    CHECK(amid("\xC2\xBD l tub yogurt\n") == "dough: yogurt 518");
    CHECK(amid("1 cup rice flour (short grain)\n") == amid("1 cup rice flour\n"));
}

TEST_CASE("care: bullets between figures of food, and between what may be added, are no list of the dough") {
    CHECK(read_lines("Loaf\n\n120 kcal \xE2\x80\xA2 2 g fat \xE2\x80\xA2 1 g sugar\n\n500 g bread flour\n10 "
                     "g salt\n") == "dough: bread flour 500, dough: salt 10");
    CHECK(amid("", "Variations: 100 g raisins \xE2\x80\xA2 50 g walnuts\n").find("raisin 100") ==
          std::string::npos);
}

TEST_CASE("care: a column of shares is no column of weights, and a form is no leader") {
    CHECK(read_lines(
              "Loaf\n\n| Ingredient | Amount (%) | Amount (g) |\n|---|---|---|\n| Bread flour | 100 | 500 |\n"
              "| Water | 60 | 300 |\n| Salt | 2 | 10 |\n") ==
          "dough: bread flour 500, dough: water 300, dough: salt 10");
    CHECK(read_lines(
              "Ingredient | Grams | %\n---|---|---|\n  | Bread flour | 500 | 100 |\n  | Water | 300 | 60 |\n")
              .starts_with("dough: bread flour 500"));
    CHECK(read_lines("Loaf\n\nFlour: ____500____ g\nWater: ____300____ g\n")
              .starts_with("dough: all-purpose flour 500"));
}
