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

TEST_CASE("frame: counts, volumes and weights of a table, parts of it by their titles") {
    const Read found =
        read("Brioche\n\nIngredient\tCount\tVolume\tWeight\tBaker\xE2\x80\x99s %\nSponge\n"
             "Whole milk\t\t\xC2\xBD cup\t121 g\t24.2 %\nActive dry yeast\t1 package\t2 tsp\t7 g\t1.4 %\n"
             "Dough\nBread flour\t\t\t500 g\t100 %\nEgg wash\nEgg\t1 each\t\t50 g\t\n"
             "Salt\t1 pinch\t\t\t\n\n1. Mix the dough well.\n");
    CHECK(lines_of(found.transcription) == "sponge: milk 121, sponge: active dry yeast 7, "
                                           "dough: bread flour 500, brushing: egg 50, brushing: salt 0");
    const Read classes = read("Rolls.\n\n                        _Individual._      _One pan (16)._\n\n"
                              " Scalded milk             1/4 c.              1 c.\n"
                              " Salt                     1/8 t.              1/2 t.\n"
                              " Egg white, beaten        ----                1\n"
                              " Flour                    3/4 to 7/8 c.       3 to 3 1/2 c.\n");
    CHECK(lines_of(classes.transcription) == "dough: milk 61, dough: salt 1, dough: all-purpose flour 102?");
}

TEST_CASE("frame: leaders with the measure before the number, pounds with ounces, and figures in words") {
    const Read found = read("GARRISON BREAD\n\n"
                            "Flour, hard wheat..............pounds..        200             98\n"
                            "Salt...........................pounds..          3 1/4          1 5/8\n"
                            "Yeast, compressed..............ounces..         24             14\n");
    CHECK(lines_of(found.transcription) ==
          "dough: bread flour 90718, dough: salt 1474, dough: fresh yeast 680");
    const Read spaced =
        read("RYE\n\n   White rye flour  . . . . .  40 lbs.\n   Yeast, compressed  . . .   1 lb.   4 oz.\n"
             "   Eggs . . . . . . . . . .   16 in number.\n\n   Temperature of dough, 78 to 80 degrees F.\n");
    CHECK(lines_of(spaced.transcription) ==
          "dough: white rye flour 18144, dough: fresh yeast 567, dough: egg 800");
}

TEST_CASE("frame: columns with a line drawn between them, and words that go on below in the right one") {
    const Read found = read("BARLEY BREAD\n\n1 cup milk.                   | 1/2 cake compressed yeast.\n"
                            "1 tablespoon fat.             | 1 1/6 cups barley flour.\n"
                            "1 1/8 teaspoons salt.         | 2 1/3 cups bread flour.\n");
    CHECK(lines_of(found.transcription) ==
          "dough: milk 244, dough: fat 13, dough: salt 7, dough: fresh yeast 9, "
          "dough: barley flour 173, dough: bread flour 320");
    const Read dashed = read("Stollen\n\n      1 c  Raisins                            6 c  Bread flour\n"
                             "    1/2 c  Butter                             1 c  Almonds, blanched and\n"
                             "                                                   -slivered\n");
    CHECK(dashed.transcription.lines.size() == 4);
}

TEST_CASE("frame: a list in sentences that ends with warm milk") {
    const Read found = read(
        "TEA-CAKES.\n\n1786. INGREDIENTS.--2 lbs. of flour, 1/4 lb. of\nbutter or lard, 1 egg, 3 oz. of\n"
        "moist sugar, warm milk.\n\n_Mode_.--Put the flour into a basin.\n");
    CHECK(lines_of(found.transcription) == "dough: all-purpose flour 907, dough: butter 113?, dough: egg 50, "
                                           "dough: brown sugar 85, dough: milk?");
}

TEST_CASE("frame: a wiki's table with a cell a line") {
    const Read found = read(
        "__NOTOC__\n{{Recipe summary\n| Servings = 1 loaf\n}}\n\n'''Milk bread''' is soft.\n\n== Ingredients "
        "==\n\n"
        "=== Tangzhong ===\n{| class=\"wikitable\"\n!Ingredient\n!Count\n!Volume\n!Weight\n"
        "![[Cookbook:Baker's Percentage|Baker's %]]\n|-\n|[[Cookbook:Bread Flour|Bread flour]]\n|\n"
        "|2 [[Cookbook:Tablespoon|tbsp]]\n|20 g\n|5.88%\n|-\n|Whole milk\n|\n|100 ml\n|103 g\n|30 %\n|}\n\n"
        "=== Dough ===\n{| class=\"wikitable\"\n! style=\"width:9em\" | Ingredient\n!Count\n!Weight\n|-\n"
        "|Bread flour\n|\n|320 g\n|-\n|Egg, beaten\n|1 each\n|50 g\n|-\n|'''Total'''\n|\n|'''370 g'''\n|}\n\n"
        "== Procedure ==\n# Mix and bake at 180 C.\n");
    CHECK(lines_of(found.transcription) ==
          "scald: bread flour 20, scald: milk 103, dough: bread flour 320, dough: egg 50");
}
