// What of a recipe's list goes into the dough, and what is brushed, strewn, boiled or filled with it.
#include "support/recipes.hpp"

#include <doctest/doctest.h>

using leavenwright::testing::lines_of;
using leavenwright::testing::Read;
using leavenwright::testing::read;

TEST_CASE("use: meal strewn over pans, and what one sentence mixes and the next brushes") {
    const Read found =
        read("Crusty loaves\n\n600 g bread flour\n400 g water\n12 g salt\n60 g cornmeal\n100 g egg white\n"
             "200 g water\n\n1. Mix flour, water and salt.\n2. Sprinkle corn meal over the pans.\n"
             "3. Combine egg whites and water. Brush loaves. Bake at 220 C.\n");
    CHECK(lines_of(found.transcription) ==
          "dough: bread flour 600, dough: water 400, dough: salt 12, topping: cornmeal 60?, "
          "brushing: egg white 100?, brushing: water 200?");
    const Read mixed = // a wash of something else
        read("Rolls\n\n600 g bread flour\n400 g water\n12 g salt\n30 g egg white\n\n"
             "Combine egg whites and flour. Brush the pan with oil. Bake at 220 C.\n");
    CHECK(lines_of(mixed.transcription) ==
          "dough: bread flour 600, dough: water 400, dough: salt 12, dough: egg white 30, "
          "brushing: vegetable oil");
}

TEST_CASE("use: two words of a name, and what is baked that is called after an ingredient") {
    const Read found =
        read("Cinnamon buns\n\n500 g bread flour\n300 g milk\n10 g salt\n100 g brown sugar\n"
             "5 g cinnamon\n\nMix the dough. Sprinkle the brown sugar and the cinnamon over it. "
             "That is all there is to cinnamon buns. Bake at 190 C.\n");
    CHECK(lines_of(found.transcription) ==
          "dough: bread flour 500, dough: milk 300, dough: salt 10, topping: brown sugar 100?, "
          "topping: cinnamon 5?");
    const Read melted = // "melted" is no name
        read("Loaf\n\n500 g bread flour\n300 g milk\n40 g butter, melted\n10 g salt\n\n"
             "Mix flour, milk and butter. Brush the hot loaf with melted butter. Bake at 190 C.\n");
    CHECK(lines_of(melted.transcription) ==
          "dough: bread flour 500, dough: milk 300, dough: butter 40, dough: salt 10");
}

TEST_CASE("use: water to boil in, and the last of a list") {
    const Read bagels = read("Bagels\n\n900 g bread flour\n500 g water\n18 g salt\n1 gallon water\n\n"
                             "Mix and knead. Boil the water, and boil each bagel for a minute.\n");
    CHECK(lines_of(bagels.transcription) ==
          "dough: bread flour 900, dough: water 500, dough: salt 18, bath: water 3785?");
    const Read glazed =
        read("Limpa\n\n900 g rye flour\n600 g milk\n18 g salt\n1 tbsp molasses\n2 tbsp hot water\n\n"
             "Mix and knead. Mix the last two ingredients and brush the loaves with it.\n");
    CHECK(lines_of(glazed.transcription) == "dough: rye flour 900, dough: milk 600, dough: salt 18, "
                                            "brushing: molasses 20?, brushing: water 30?");
}

TEST_CASE("use: lists among the steps, led by what is done with them") {
    const Read found = read("Rolls\n\n4 cups bread flour\n1 cup milk\n1 tsp salt\n1 pkg. dry yeast\n\n"
                            "Mix and knead. Let rise 1 hour. Roll out and spread with:\n\n"
                            "     1/4 c. soft butter\n     3/4 c. brown sugar\n\n"
                            "Roll up, cut and bake at 350 F. While warm ice with:\n\n"
                            "     1 c. powdered sugar\n     1 T. butter\n\nMakes 2 dozen.\n");
    CHECK(lines_of(found.transcription) ==
          "dough: bread flour 548, dough: milk 244, dough: salt 6, dough: active dry yeast 7?, "
          "filling: butter 57, filling: brown sugar 165, topping: powdered sugar 120, topping: butter 14");
    const Read parts = read("Batter bread\n\nMeasure into a bowl\n     1 1/4 cups warm water\n\n"
                            "Sprinkle in, stirring until dissolved\n     1 package active dry yeast\n\n"
                            "Add\n     2 tsp. salt\n     3 cups bread flour\nBeat 2 minutes.\n");
    CHECK(lines_of(parts.transcription) ==
          "dough: water 296, dough: active dry yeast 7, dough: salt 12, dough: bread flour 411");
    const Read lead =
        read("French bread\n\nThe night before, set the sponge:\n    1 1/2 cups lukewarm water\n"
             "    2 1/2 cups bread flour\nBeat well and leave in a warm place.\n\n"
             "Into what's left stir\n    1 pkg. active dry yeast, softened in\n    1/4 cup warm water\n"
             "    1 Tbsp. sugar\n    2 tsp. salt\n    3 cups bread flour\n"
             "and work it in till the dough leaves the bowl. Knead 8 minutes. Bake at 400 F.\n");
    CHECK(lines_of(lead.transcription) ==
          "sponge: water 355, sponge: bread flour 343, dough: active dry yeast 7, dough: water 59, "
          "dough: sugar 13, dough: salt 12, dough: bread flour 411");
}

TEST_CASE("use: a group below a dough is what it is for") {
    const Read found = read("# Pizza\n\n## Ingredients\n\n- 600 g bread flour\n- 390 ml water\n- 15 g salt\n"
                            "- 3 g fresh yeast\n- semolina, for stretching\n\n### For a margherita\n\n"
                            "- 400 g tomatoes\n- olive oil\n\n## Directions\n\n1. Mix.\n");
    CHECK(
        lines_of(found.transcription) ==
        "dough: bread flour 600, dough: water 390, dough: salt 15, dough: fresh yeast 3, dusting: semolina, "
        "margherita: tomato 400, margherita: olive oil");
}

TEST_CASE("use: sentences that say all again at their end are counted once") {
    const Read found =
        read("Tea loaf.\n\nRub half a pound of butter into two pounds of flour, add six ounces of sugar, and "
             "moisten with a pint of milk and two ounces of fresh yeast.\n\n"
             "Flour, 2 lbs.; butter, 1/2 lb.; sugar, 6 oz.; milk, 1 pint; fresh yeast, 2 oz.\n");
    CHECK(lines_of(found.transcription) ==
          "dough: butter 227?, dough: all-purpose flour 907?, dough: sugar 170?, dough: milk 488?, "
          "dough: fresh yeast 57?, total: all-purpose flour 907?, total: butter 227?, total: sugar 170?, "
          "total: milk 488?, total: fresh yeast 57?");
}

TEST_CASE("use: flour that a list names without an amount, and the sentences with two") {
    const Read found =
        read("Rolls\n\n   2 cups scalded milk.\n   2 teaspoons salt.\n   1 yeast cake.\n   Flour.\n\n"
             "Add salt and yeast to the milk, and three cups of flour. Let rise. Add enough flour\n"
             "to knead (it will take about two and one-half cups). Bake.\n");
    CHECK(lines_of(found.transcription) ==
          "dough: milk 488, dough: salt 12, dough: fresh yeast 17, dough: all-purpose flour?, "
          "dough: all-purpose flour 375?, dough: all-purpose flour 313?");
}

TEST_CASE("use: sentences that roll, rub and brush") {
    const Read found = read(
        "Doughnuts.\n\nTake one pint of milk, one yeast cake, one pound of flour, the grated peel of two\n"
        "lemons and two eggs. Roll while warm in powdered sugar with a little cinnamon. Rub each with a\n"
        "little lard. Brush the crust with a thin paste of cornstarch and water.\n");
    CHECK(lines_of(found.transcription) ==
          "dough: milk 488?, dough: fresh yeast 17, dough: all-purpose flour 454, dough: lemon zest 12, "
          "dough: egg 100, topping: powdered sugar, topping: cinnamon, brushing: lard, brushing: cornstarch, "
          "brushing: water");
}

TEST_CASE("use: amounts that a plus, a range or a choice of two go on with") {
    const Read found =
        read("Buns\n\n1 tbsp sugar + 1 cup lukewarm water\n6 1/2 cups bread flour -- to 7 1/2 cups\n"
             "1 t. each anise seed and caraway seed, crushed\nSprig or two of rosemary\n"
             "1/2 cup (120ml) milk, plus 1-2 tbsp if needed\n6 oz rye flour      1 2/3 c\n"
             "1 egg (or 2 tablespoons dried egg)\n");
    CHECK(lines_of(found.transcription) ==
          "dough: sugar 13, dough: water 237, dough: bread flour 959?, dough: anise seed 2, dough: caraway "
          "seed 2, "
          "dough: rosemary?, dough: milk 122, dough: rye flour 170, dough: egg 50");
}

TEST_CASE("use: names in a row, and butter beside another fat") {
    const Read seeds = read("Bagels\n\n500 g bread flour\n300 g water\n\nTopping:\n"
                            "Poppy seeds, sesame seeds, coarse salt or dried onion flakes\n");
    CHECK(lines_of(seeds.transcription) == "dough: bread flour 500, dough: water 300, topping: poppy seed, "
                                           "topping: sesame seed, topping: coarse salt");
    const Read kinds = read("Bread\n\n300 g water\nFlour, whole wheat\n");
    CHECK(kinds.transcription.lines.size() == 2);
    const Read rolls =
        read("Rolls\n\n800 g bread flour\n500 g water\n16 g salt\n60 g shortening\n40 g butter, melted\n\n"
             "Mix flour, water and salt. Add shortening. Put in buttered pans. Bake at 200 C. "
             "Brush with melted butter.\n");
    CHECK(lines_of(rolls.transcription) == "dough: bread flour 800, dough: water 500, dough: salt 16, "
                                           "dough: shortening 60, brushing: butter 40?");
}

TEST_CASE("use: a group that the directions spread as a whole, and a range in a bracket") {
    const Read found = read(
        "# Snails\n\n## Ingredients\n\n### Dough\n\n- 250 g whole milk\n- 25 g fresh yeast\n- 450 g flour\n\n"
        "### Remonce\n\n- 125 g soft butter\n- 125 g brown sugar\n\n## Directions\n\n"
        "1. Mix the dough. Mix butter and sugar to a spread.\n2. Roll out, spread the remonce on it.\n");
    CHECK(lines_of(found.transcription) ==
          "dough: milk 250, dough: fresh yeast 25, dough: all-purpose flour 450, "
          "filling: butter 125?, filling: brown sugar 125?");
    const Read fruit =
        read("# Loaf\n\n## Ingredients\n\n### Dough\n\n- 250 g whole milk\n- 450 g flour -- (440 to 460)\n\n"
             "### Fruit\n\n- 125 g raisins\n\n## Directions\n\n1. Mix the dough, knead in the fruit.\n");
    CHECK(lines_of(fruit.transcription) ==
          "dough: milk 250, dough: all-purpose flour 450?, dough: raisin 125");
    const Read cups = read("Loaf\n\n3 cups all-purpose flour -- (3 to 3 1/2)\n1 cup water\n");
    CHECK(lines_of(cups.transcription) == "dough: all-purpose flour 406?, dough: water 237");
}

namespace {

std::string read_lines(const std::string& text) {
    return lines_of(read(text).transcription);
}

} // namespace

TEST_CASE("use: a glaze at the end of one flat list") {
    CHECK(read_lines(
              "Doughnuts\n\n500 g flour\n7 g instant yeast\n60 g sugar\n6 g salt\n250 g milk\n80 g butter\n"
              "60 g butter\n200 g icing sugar\n30 g hot water\n\nMix the flour, yeast, sugar and salt. "
              "Add the milk and the soft butter and knead. Let rise 1 hour. Roll out, cut rings and fry. "
              "Melt the butter, stir in the icing sugar and water. Dip the doughnuts into it.\n")
              .ends_with(
                  "dough: milk 250, dough: butter 80, topping: butter 60?, topping: powdered sugar 200?, "
                  "topping: water 30?"));
    CHECK(read_lines(
              "Buns\n\n500 g bread flour\n10 g salt\n75 g caster sugar\n10 g instant yeast\n300 g milk\n"
              "75 g plain flour\n75 g water\n25 g sugar\n30 g water\n\nMix everything to a dough and knead. "
              "Prove 1 hour. Shape. Mix the plain flour and water to a paste and pipe crosses. Bake. Boil "
              "the sugar and water and brush over the hot buns.\n")
              .ends_with("dough: milk 300, topping: all-purpose flour 75?, topping: water 75?, "
                         "brushing: sugar 25?, brushing: water 30?"));
}

TEST_CASE("use: butter, and butter again for what the pieces are dipped in") {
    const std::string list =
        "Monkey bread\n\n450 g flour\n7 g instant yeast\n240 g milk\n60 g butter\n6 g salt\n"
        "50 g egg\n200 g brown sugar\n110 g butter\n\n";
    CHECK(read_lines(list +
                     "Make a dough of the first six ingredients. Let rise. Shape balls. Melt the butter. "
                     "Dip each ball in the butter and roll in the brown sugar. Bake.\n")
              .ends_with("dough: egg 50, topping: brown sugar 200?, topping: butter 110?"));
    // in a sponge dough the rest is mixed in behind the first rise
    CHECK(read_lines(list +
                     "Mix yeast, milk and half the flour. Let rise. Add the butter, the brown sugar, egg "
                     "and salt and the other flour and knead. Let rise, shape, brush with milk, bake.\n")
              .ends_with("dough: egg 50, dough: brown sugar 200, dough: butter 110"));
    CHECK(read_lines("Loaf\n\n500 g flour\n7 g instant yeast\n300 g water\n50 g butter\n10 g salt\n\nMix all "
                     "ingredients and knead. Let rise, shape, let rise. Brush with butter and bake.\n")
              .ends_with("dough: butter 50, dough: salt 10"));
}

TEST_CASE("use: what sweetens the water that bagels are boiled in") {
    const std::string list =
        "Bagels\n\n500 g bread flour\n300 g water\n10 g salt\n20 g malt syrup\n"
        "7 g instant yeast\n2 l water\n25 g sugar\n\nKnead the flour, water, salt, malt and "
        "yeast. Rise 1 hour. Shape. ";
    CHECK(read_lines(list + "Boil the water with the sugar and poach the bagels.\n")
              .ends_with("dough: instant yeast 7, bath: water 2000?, bath: sugar 25?"));
}

TEST_CASE("use: the oil of the bowl, and what stands behind the oil of the tray") {
    const std::string list = "Buns\n\n500 g bread flour\n300 g milk\n50 g sugar\n14 g sunflower oil\n"
                             "7 g instant yeast\n\nMix the flour, sugar, yeast and milk. Knead. ";
    CHECK(read_lines(list + "Put the dough in a bowl greased with the oil and leave to rise.\n")
              .find("greasing: sunflower oil 14?") != std::string::npos);
    CHECK(read_lines(list + "Work in the oil. Put the dough in a greased bowl and leave to rise.\n")
              .find("dough: sunflower oil 14,") != std::string::npos);
    const std::string focaccia = "Focaccia\n\n800 g flour\n640 g water\n16 g salt\n5 g instant yeast\n"
                                 "60 g olive oil for the tray\ncherry tomatoes, 250 g\n\n";
    CHECK(read_lines(focaccia + "Night before, fridge. Bake hot.\n").ends_with("dough: tomato 250?"));
    CHECK(read_lines(focaccia + "Mix flour, water, salt, yeast and the tomatoes. Bake.\n")
              .ends_with("dough: tomato 250"));
}

TEST_CASE("use: the last of what was weighed, and the number of a step") {
    CHECK(
        read_lines(
            "Loaf\n\n500 g flour\n350 g water\n10 g salt\n7 g instant yeast\n\nMix with 330 g of the water. "
            "Sprinkle over the salt with the last 20 g of water.\n") ==
        "dough: all-purpose flour 500, dough: water 350, dough: salt 10, dough: instant yeast 7");
    CHECK(
        read_lines("Buns\n\n300 g milk\n500 g flour\n7 g instant yeast\n\n1 Bring the milk to the boil, then "
                   "cool.\n\n2 Mix.\n") ==
        "dough: milk 300, dough: all-purpose flour 500, dough: instant yeast 7");
}

TEST_CASE("use: all but two things are mixed, and what is stirred into the glaze") {
    CHECK(read_lines(
              "Buns\n\n500 g flour\n300 g milk\n7 g instant yeast\n40 g butter, melted\n10 g sesame seeds\n\n"
              "Mix and knead all of the ingredients except the melted butter and seeds. Let rise. Shape. "
              "Brush with the melted butter. Sprinkle with seeds.\n")
              .ends_with("topping: sesame seed 10?"));
    CHECK(read_lines(
              "Naan\n\n375 g flour\n5 g instant yeast\n120 g yogurt\n40 g ghee for brushing\n2 garlic "
              "cloves\n\n"
              "Combine flour and yeast. Add the yogurt. Knead. Rise. Roll. Stir the garlic into the ghee. "
              "Brush over the hot naan. Seeds may be pressed into the dough.\n")
              .ends_with("brushing: garlic 6?"));
    CHECK(read_lines(
              "Cake\n\nFour pounds of flour, one and three-quarters of butter, one and a half of sugar, a "
              "quart of milk, an ounce of German yeast. Mix, let it rise, and bake.\n")
              .find("dough: butter 794, dough: sugar 680") != std::string::npos);
    CHECK(read_lines("Buns\n\n500 g flour\n12 cardamom seeds, pounded\n").ends_with("dough: cardamom?"));
}

TEST_CASE("use: what goes into the dough behind its first rise stays in it") {
    const std::string base = "500 g flour\n300 g milk\n7 g instant yeast\n10 g salt\n";
    const std::string mixed = "\nMix flour, milk, yeast and salt. Let rise 1 hour. ";
    struct Case {
        const char* lines;
        const char* directions;
    };
    for (const Case& one :
         {Case{"150 g raisins\n80 g walnuts\n",
               "Mix in the raisins and walnuts. Dust the counter with flour and shape."},
          Case{"80 g sugar\n200 g butter\n", "Beat in the sugar and the butter. Brush the tins."},
          Case{"120 g butter\n", "Beat in the soft butter. Half fill buttered tins."},
          Case{"60 g butter\n100 g currants\n",
               "Mix in the butter and currants. Shape a loaf and lay it in a tin."},
          Case{"30 g honey\n150 g raisins\n",
               "Stir in the honey and raisins. Place in a case brushed with butter."},
          Case{"280 g butter\n", "Beat the butter to a slab. Lay the slab on the dough, fold over it."},
          Case{"250 g butter\n", "Roll out, spread the butter over two thirds of it; fold in three."},
          Case{"120 g cheese\n", "Fold in the cheese. Shape and bake."},
          Case{"60 g honey\n", "Warm the honey, work it into the dough and spread that in a tin."}}) {
        CAPTURE(one.directions);
        const auto lines =
            read("Bread\n\n" + base + one.lines + mixed + one.directions + "\n").transcription.lines;
        for (const auto& line : lines) {
            CAPTURE(line.text);
            CHECK((line.role == "dough" || !line.number));
        }
    }
}

TEST_CASE("use: flours, and what the making names by its amount") {
    CHECK(read_lines(
              "Loaf\n\n400 g bread flour\n100 g rye flour\n350 g water\n7 g instant yeast\n10 g salt\n\nMix "
              "flours, water, yeast and salt. Let rise. Shape, dust with rye flour, bake.\n")
              .find("dough: rye flour 100,") != std::string::npos);
    CHECK(
        read_lines(
            "Loaf\n\n20 g flour\n100 g milk\n480 g bread flour\n7 g instant yeast\n10 g salt\n\nCook the 20 "
            "g "
            "flour in the 100 g milk. Mix with the bread flour, yeast and salt. Let rise, brush with milk.\n")
            .find("dough: milk 100,") != std::string::npos);
    CHECK(
        read_lines(
            "Buns\n\n500 g flour\n300 g milk\n7 g instant yeast\n10 g salt\n75 g flour\n75 g water\n\nMix "
            "the "
            "flour, milk, yeast and salt. Let rise. Shape. Mix the flour with the water to a paste and pipe "
            "crosses. Bake.\n")
            .ends_with("topping: all-purpose flour 75?, topping: water 75?"));
}

TEST_CASE("use: of one thing a share is kept") {
    CHECK(
        read_lines(
            "Lardy cake\n\n500 g flour\n7 g instant yeast\n300 g water\n10 g salt\n170 g lard\n\nMake a "
            "dough "
            "with the flour, yeast, salt and water and 15 g of the lard. Rise. Roll out. Dot with a third of "
            "the lard. Bake.\n")
            .ends_with("dough: lard 170?"));
    CHECK(read_lines(
              "Loaf\n\n500 g flour\n7 g instant yeast\n300 g water\n10 g salt\n60 g pumpkin seeds\n\nMix "
              "flour, "
              "water, yeast, salt and all but two tablespoons of the pumpkin seeds. Rise. Scatter over the "
              "reserved pumpkin seeds.\n")
              .ends_with("dough: pumpkin seed 60?"));
}

TEST_CASE("use: acts and tools of a mixture behind the making") {
    const std::string base = "500 g flour\n300 g milk\n7 g instant yeast\n10 g salt\n";
    const std::string mixed = "\nMix flour, milk, yeast and salt and knead. Let rise. ";
    struct Case {
        const char* lines;
        const char* directions;
        const char* end;
    };
    for (const Case& one :
         {Case{"85 g butter\n150 g brown sugar\n",
               "Mash the butter with the brown sugar. Smear with it and roll up.",
               "filling: butter 85?, filling: brown sugar 150?"},
          Case{"60 g butter\n40 g garlic\n", "Gently melt the butter with the garlic. Toss the knots in it.",
               "topping: butter 60?, topping: garlic 40?"},
          Case{"250 g sugar\n100 g rum\n",
               "For the syrup, boil the sugar and add the rum. Soak the babas in it.",
               "topping: sugar 250?, topping: rum 100?"},
          Case{"30 g butter, melted\n", "Shape into rolls, let rise, bake and brush with the melted butter.",
               "brushing: butter 30?"},
          Case{"100 g brown sugar\n60 g butter\n60 g corn syrup\n",
               "Combine the brown sugar, butter and corn syrup and pour into a pan. Roll up the dough and "
               "lay it in.",
               "topping: brown sugar 100?, topping: butter 60?, topping: corn syrup 60?"},
          Case{"80 g honey\n3 l water\n",
               "Bring the water and the honey to a boil. Boil the bagels 45 seconds.",
               "bath: honey 80?, bath: water 3000?"},
          Case{"1 kg vegetable oil\n", "Heat the oil to 180 C. Fry the rings.", "bath: vegetable oil 1000?"},
          Case{"200 g raisins\n", "Flatten, spread the raisins over. Fold in thirds and shape.",
               "dough: raisin 200?"},
          Case{"100 g eggs\n1 egg\n", "Beat in the eggs. Shape, brush with beaten egg and bake.",
               "dough: egg 100?, brushing: egg 50?"}}) {
        CAPTURE(one.directions);
        const std::string lines = read_lines("Bread\n\n" + base + one.lines + mixed + one.directions + "\n");
        CAPTURE(lines);
        CHECK(lines.ends_with(one.end));
    }
}

TEST_CASE("use: other water for a sourdough, and a knob of other butter") {
    CHECK(
        read_lines(
            "Loaf\n\n900 g flour\n750 g water\n20 g salt\n7 g instant yeast\n50 g water\n\nMix the flour, "
            "yeast "
            "and 750 g water. Rest. Sprinkle the salt over, pour on the 50 g water and squeeze it through.\n")
            .ends_with("dough: water 50"));
    CHECK(
        read_lines(
            "Loaf\n\n500 g flour\n300 g milk\n7 g instant yeast\n10 g salt\n80 g butter\n\nMix flour, milk, "
            "yeast, salt and butter. Rise. Score a cross, put a 10 g knob of butter in each and bake.\n")
            .ends_with("dough: butter 80"));
}

TEST_CASE("use: fillings of everyday words behind the making") {
    struct Case {
        std::string lines;
        std::string directions;
        std::string end;
    };
    const std::string base = "Bread\n\n500 g flour\n7 g instant yeast\n300 g water\n10 g salt\n60 g butter\n";
    const std::string mixed = "\nKnead the flour, salt, yeast, water and butter. Rise 1 hour. ";
    for (const Case& one :
         {Case{"1 onion\n1 tsp cumin\n",
               mixed + "Mix onion and cumin. Roll out ovals, put the mix on them. Bake.",
               "filling: onion 110?, filling: cumin seed 2?"},
          Case{"200 g hazelnuts\n80 g honey\n",
               "\nMake a dough of the flour, yeast, water, salt and butter and leave it in a warm place 45 "
               "minutes. Mix the hazelnuts with the honey. Roll the dough, put a spoon of the nut mixture on "
               "each and roll up.",
               "filling: hazelnut 200?, filling: honey 80?"},
          Case{
              "100 g butter\n100 g honey\n",
              "\nPrepare a dough from flour, yeast, water, salt and 60 g butter; let rise. Melt 100 g butter "
              "and the honey and spread on the dough. Bake.",
              "filling: butter 100?, filling: honey 100?"},
          Case{"100 g potato starch\n100 ml water\n",
               "\nMix everything but the starch and the last water. Let rise. Bake. Boil the starch with 100 "
               "ml "
               "water and brush on the loaf.",
               "brushing: potato starch 100?, brushing: water 100?"},
          Case{"60 g honey\n60 g walnuts\n",
               mixed + "Mash the walnuts and honey. Roll out the dough, spread it and roll up.",
               "filling: honey 60?, filling: walnut 60?"},
          Case{"100 g flour\n100 g shortening\n",
               mixed +
                   "For the topping cream the shortening with the 100 g flour. Press a disc of topping on "
                   "each. Bake.",
               "topping: all-purpose flour 100?, topping: shortening 100?"},
          Case{"600 g leeks\n150 g cream\n",
               mixed + "Whisk the cream and mix with the leeks. Line a tin with the dough, pour in the leeks "
                       "and bake.",
               "filling: leeks 600?, filling: cream 150?"},
          Case{"2 eggs\n1 egg plus 1 tsp water\n", mixed + "Wash with the egg. Bake.",
               "brushing: egg 50?, brushing: water 5?"},
          Case{"60 g honey\n", mixed + "Beat the honey. Place the loaf in the middle of the oven.",
               "dough: honey 60"},
          Case{"400 g rice flour\n300 g lard\n",
               mixed + "Rub the 400 g rice flour and the lard to crumbs and scatter over the dough.",
               "topping: rice flour 400?, topping: lard 300?"},
          Case{
              "1 egg\n400 g ricotta\n60 g honey\n1 egg\n",
              "\nKnead the flour, salt, yeast, water, butter and egg. Rise 1 hour. Mash the ricotta with the "
              "honey and egg. Spread the mixture over the dough.",
              "filling: ricotta 400?, filling: honey 60?, filling: egg 50?"},
          Case{"1 egg, beaten\n", "\nMake a dough with everything but the egg. Chill. Brush with the egg.",
               "dough: egg 50?"},
          Case{"white sesame\n", mixed + "Scatter sesame. Bake.", "topping: white sesame?"}}) {
        CAPTURE(one.directions);
        const std::string lines = read_lines(base + one.lines + one.directions + "\n");
        CAPTURE(lines);
        CHECK(lines.ends_with(one.end));
    }
}

TEST_CASE("use: a share that is left for the top, though its amount is named") {
    CHECK(
        read_lines("Focaccia\n\n500 g flour\n7 g instant yeast\n400 g water\n10 g salt\n50 g olive oil\n\n"
                   "Mix the flour, salt and yeast. Pour in the water and 20 g of the oil and stir. Cover and "
                   "leave for 2 hours. Drizzle over the remaining 30 g oil.\n")
            .ends_with("dough: olive oil 50?"));
    CHECK(
        read_lines("Pikelets\n\n450 g flour\n15 g fresh yeast\n700 g milk\n5 g salt\n2 g baking soda\n\n"
                   "Cream the yeast, add the milk and beat it into the flour. Cover, and leave for one hour. "
                   "Dissolve the soda in the rest of the liquid, beat it in. Pour on the batter.\n")
            .ends_with("dough: baking soda 2"));
}
