// What stands around a recipe: pages, boxes, heads and columns of other figures.
#include "support/recipes.hpp"

#include <doctest/doctest.h>

using leavenwright::testing::lines_of;
using leavenwright::testing::Read;
using leavenwright::testing::read;

TEST_CASE("frame: a wiki's page with its box, its edit links and a ring for each item") {
    const Read found =
        read("White Bread\n\nWhite Bread\nCategory\tBread recipes\nYield\t2 loaves\nTime\t3-4 hours\n"
             "Difficulty\t2 out of 5\n\nIngredients [edit | edit source]\n\n"
             "  o 2 packages (14 g) active dry yeast\n  o 1/2 cup (120 ml) warm water (about 110 F / 43 C)\n"
             "  o 600 g bread flour\n  o pinch of salt\n\n"
             "Procedure [edit | edit source]\n\n  Mix. Bake at 220 C for 30 minutes.\n");
    CHECK(lines_of(found.transcription) ==
          "dough: active dry yeast 14, dough: water 118, dough: bread flour 600, dough: salt 0");
}

TEST_CASE("frame: the head of a page in a book, and what things cost") {
    const Read head =
        read("12                   BREAD AND YEAST.\n\nGraham Bread.\n\n"
             "Take a quart of warm water, one-half cup brown sugar and two quarts graham flour.\n");
    CHECK(lines_of(head.transcription) ==
          "dough: water 946, dough: brown sugar 110, dough: whole wheat flour 960");
    const Read costs = read("TEA-CAKES.\n\n                    _Ingredients._                    s.  d.\n"
                            "1 lb. of flour ..   ..   ..   ..   ..       0  2\n"
                            "2 oz. currants, 1 oz. sultanas   ..   ..    0  1\n"
                            "1/2 oz. of German yeast   ..   ..   ..      0  0\xC2\xBD\n"
                            "                                            ------\n"
                            "                                            0  3\xC2\xBD\n\n"
                            "1. Put the flour into a basin and rub it with\n   the tips of the fingers.\n");
    CHECK(lines_of(costs.transcription) ==
          "dough: all-purpose flour 454, dough: currants 57, dough: sultanas 28, dough: fresh yeast 14");
    CHECK(costs.transcription.lines.size() == 4);
}

TEST_CASE("frame: heads of two rows, with directions beside the columns") {
    const Read found = read(
        "Pizza Crust\n\n"
        "Ingredients            50 Servings               100 Servings            Directions\n"
        "                       Weight       Measure      Weight       Measure\n\n"
        "Bread flour            2 lb 12 oz   2 qt 1 cup   5 lb 8 oz    1 gal      1. Mix all in a bowl.\n"
        "Salt                   1 oz         2 Tbsp       2 oz         1/4 cup    2. Let rise 1 hour.\n"
        "Water (110 F)                       1 qt 1/2 cup              2 qt\n"
        "Cornmeal               2 oz         1/3 cup      4 oz         2/3 cup    3. Sprinkle each\n"
        "                                                                         pan with cornmeal.\n");
    CHECK(lines_of(found.transcription) ==
          "dough: bread flour 1247, dough: salt 28?, dough: water 1065, topping: cornmeal 57?");
}

TEST_CASE("frame: names over two rows of a table, and a column of remarks") {
    const Read found = read("White bread\n\n"
                            "                       1 loaf      4 loaves\n"
                            "Liquid (milk, potato\n  water or water)...   1 c.        1 qt.\n"
                            "Yeast, compressed...   1/2 cake    1 1/2 cakes\n"
                            "Salt................   1 t.        4 t.\n"
                            "Flour, sifted.......   3 c.        3 qts.\n");
    CHECK(lines_of(found.transcription) == "dough: milk 244?, dough: fresh yeast 9, dough: salt 6, "
                                           "dough: all-purpose flour 375");
    const Read remarks = read("Rolls\n\nIngredient         For 2 loaves      Notes\n"
                              "-----------------  ----------------  --------------------\n"
                              "Bread flour        6 cups            enriched\n"
                              "Milk               2 cups            for the sponge\n"
                              "Butter             1 tablespoon      melted, for tops\n");
    CHECK(lines_of(remarks.transcription) == "dough: bread flour 822, dough: milk 488, topping: butter 14");
}

TEST_CASE("frame: an item that goes on below, and a remark amid the list") {
    const Read found =
        read("Oat bread\n\n    1 cup milk.\n    2 teaspoons salt.\n"
             "    1/2 cake compressed yeast, or 1/2 cake dry yeast softened over\n"
             "        night in 1/2 cup of the liquid.\n    4 cups bread flour.\n\nMix and bake.\n");
    CHECK(lines_of(found.transcription) ==
          "dough: milk 244, dough: salt 12, dough: fresh yeast 9, dough: bread flour 548");
    const Read remark =
        read("Buns\n\n     1 cup of milk\n     4 cups of bread flour\n     1 teaspoon of salt\n\n"
             "     I'll repeat the ingredients, while you check your list: (REPEAT)\n\n"
             "Also:\n     1 cake of compressed yeast\n");
    CHECK(lines_of(remark.transcription).find("repeat") == std::string::npos);
}
