// Lists as pages of wikis, repositories, schools and old books set them.
#include "support/recipes.hpp"

#include <doctest/doctest.h>

using leavenwright::testing::lines_of;
using leavenwright::testing::read;

namespace {

std::string read_lines(const std::string& text) {
    return lines_of(read(text).transcription);
}

} // namespace

TEST_CASE("page: heads of a wiki with their buttons glued on, and the box beside them") {
    CHECK(read_lines(
              "Cookbook:Rolls\n\nRolls\nTime        about 4 hours\nDifficulty  3/5\n\n"
              "Ingredients[edit | edit source]\n\nDough[edit | edit source]\n  500 g bread flour\n"
              "  300 ml water\n\nFilling[edit | edit source]\n  80 g butter\n\nProcedure[edit]\n  Mix.\n") ==
          "dough: bread flour 500, dough: water 300, filling: butter 80");
}

TEST_CASE("page: fractions and captions of a wiki") {
    CHECK(
        read_lines("==Ingredients==\n* 500 g flour\n* {{frac|1|2}} cup water\n* {{frac|2|1|2}} tsp salt\n") ==
        "dough: all-purpose flour 500, dough: water 118, dough: salt 15");
    CHECK(read_lines("==Ingredients==\n{| class=\"wikitable\"\n|+ Dough\n! Ingredient !! Weight\n|-\n"
                     "| Bread flour || 500 g\n|-\n| Water || 300 g\n|}\n") ==
          "dough: bread flour 500, dough: water 300");
}

TEST_CASE("page: a label that begins no directions stands over a table") {
    CHECK(read_lines("STANDARDIZED RECIPE\n\nProcess: #2 Same Day Service\n\n"
                     "INGREDIENT                 WEIGHT         MEASURE\n"
                     "Water, warm                2 lb 8 oz      1 qt 1 cup\n"
                     "Flour, bread               4 lb           1 gal\n"
                     "Salt                       1 oz           1 Tbsp 2 tsp\n\nPROCEDURE\n1. Mix.\n") ==
          "dough: water 1134, dough: bread flour 1814, dough: salt 28");
}

TEST_CASE("page: a heading of no group ends the list") {
    CHECK(read_lines("# Loaf\n\n## Ingredients\n- 500 g bread flour\n- 10 g salt\n\n## Schedule\n\n"
                     "| Time | Step |\n|---|---|\n| 22:00 | Feed the starter |\n\n## Method\n1. Mix.\n") ==
          "dough: bread flour 500, dough: salt 10");
}

TEST_CASE("page: an item that names a stage is no heading, and neither is one for the bench") {
    const std::string list = read_lines("# Ciabatta\n\n## Ingredients\n\n### Biga\n\n- 200 g bread flour\n"
                                        "- 130 g water\n\n### Main dough\n\n- all of the biga\n"
                                        "- 300 g bread flour\n- 11 g salt\n\nFlour for dusting.\n\n"
                                        "## Directions\n\n1. Mix.\n");
    CHECK(list.find("biga: bread flour 200, biga: water 130") != std::string::npos);
    CHECK(list.find("dough: bread flour 300, dough: salt 11") != std::string::npos);
    CHECK(list.find("dusting: all-purpose flour") != std::string::npos);
}

TEST_CASE("page: headings underlined, a sourdough among them") {
    CHECK(read_lines("Rye\n===\n\nSoaker\n------\n- 250 g rye chops\n- 400 ml boiling water\n\nSourdough\n"
                     "---------\n- 250 g whole rye flour\n- 300 ml water\n\nFinal dough\n-----------\n"
                     "- 300 g whole rye flour\n\nMethod\n------\nMix.\n") ==
          "soaker: rye chops 250, soaker: water 400, levain: whole rye flour 250, levain: water 300, "
          "dough: whole rye flour 300");
}

TEST_CASE("page: a left column goes on below, set in") {
    CHECK(read_lines("BISCUITS\n\n  1/2 cup squash, steamed            1/4 yeast cake\n"
                     "    and sifted                       1/4 cup water\n"
                     "  1/4 cup sugar                      1/4 cup butter\n"
                     "  1/2 teaspoon salt                  2 1/2 cups flour\n\nMix.\n")
              .find("sifted") == std::string::npos);
}

TEST_CASE("page: how a culture stands is no part of its name") {
    for (const char* line : {"1 cup active sourdough starter", "1 cup bubbly, active sourdough starter",
                             "1 cup ripe sourdough starter (100% hydration)"}) {
        CAPTURE(line);
        const auto lines = read(std::string("500 g flour\n") + line + "\n10 g salt\n").transcription.lines;
        REQUIRE(lines.size() == 3);
        CHECK(lines[1].name == "sourdough starter");
        CHECK(lines[1].unit == "cup");
    }
}

TEST_CASE("page: a small cake of yeast is a cake; thick yeast is brewed") {
    CHECK(read_lines("500 g flour\n1 small compressed yeast cake\n") ==
          "dough: all-purpose flour 500, dough: fresh yeast 17?");
    const auto brewed = read("500 g flour\n300 g water\n2 tablespoonfuls of good thick yeast\n");
    CHECK(brewed.transcription.lines.back().key.empty());
}

TEST_CASE("page: a range with two measures") {
    CHECK(read_lines("900 g-1 kg flour\n500 ml - 1 l water\n2 tsp to 1 tbsp salt\n") ==
          "dough: all-purpose flour 950?, dough: water 750?, dough: salt 15?");
    CHECK(read_lines("1 cup - 240 ml water\n500 g flour\n").starts_with("dough: water 237,"));
}

TEST_CASE("page: fat without an amount is not of the dough that has its own") {
    const std::string list = "Rolls\n\nIngredients\n";
    CHECK(read_lines(list + "3 tablespoons butter\n500 g flour\n1 cup milk\nMelted butter\n\nMix.\n")
              .find("brushing: butter") != std::string::npos);
    CHECK(read_lines(list + "Butter\n500 g flour\n1 cup milk\n\nMix.\n").starts_with("dough: butter"));
}

TEST_CASE("page: what the directions add, and the list does not have") {
    const std::string list =
        "Loaf\n\nIngredients\n500 g flour\n7 g instant yeast\n300 g milk\n10 g salt\n\nMethod\n";
    CHECK(read_lines(list + "Soften the yeast in 2 tablespoons of water. Mix.\n")
              .ends_with("dough: water 30?"));
    CHECK(read_lines(list + "Mix. You may add 1/2 cup of raisins.\n").find("raisin") == std::string::npos);
    CHECK(read_lines(list + "Mix 1 cup of the flour with the milk.\n").ends_with("salt 10"));
    CHECK(read_lines(list + "Mix in 2 teaspoons of sea salt.\n").ends_with("salt 10"));
}

TEST_CASE("page: what is mixed to be brushed on") {
    const std::string list = "Naan\n\n500 g flour\n300 g milk\n3 tbsp ghee\n2 cloves garlic\n\n";
    CHECK(read_lines(list +
                     "Knead flour and milk to a dough. Mix the garlic into the ghee and brush it over.\n")
              .find("brushing: garlic") != std::string::npos);
    CHECK(read_lines(list + "Meanwhile mix ghee and garlic. Bake. Brush with garlic ghee.\n")
              .find("brushing: garlic") != std::string::npos);
    CHECK(read_lines(list + "Mix the garlic into the flour. Brush the pan with ghee.\n")
              .find("dough: garlic") != std::string::npos);
}

TEST_CASE("page: sentences of old books") {
    const auto has = [](const std::string& text, const std::string& line) {
        const std::string lines = read_lines(text);
        CAPTURE(lines);
        return lines.find(line) != std::string::npos;
    };
    CHECK(
        has("Rub butter the size of an egg into a quart of flour; add a pint of milk.", "all-purpose flour"));
    CHECK(has("Take a quart of flour. Beat one egg light, and add to it a pint of milk.", "egg 50"));
    CHECK(
        has("To every seven pounds of flour allow two pounds and a half of mealy potatoes.", "potato 1134"));
    CHECK(has("Take a pint of milk and two eggs, and stir in sifted flour until it is a thick batter.",
              "all-purpose flour"));
    CHECK(
        has("Take a quart of flour and a pint of milk. Cover with streusel, made by rubbing together one cup "
            "of sugar and one ounce of butter.",
            "topping: butter 28"));
    CHECK(
        has("Take a quart of flour and a pint of milk. Sprinkle with the following: Mix 1/2 cup sugar and 1 "
            "teaspoon cinnamon.",
            "topping: sugar 101"));
    CHECK(has("For four 1-pound loaves take--\n\n  2 pounds of flour.\n  1 pint of milk.\n",
              "dough: all-purpose flour 907, dough: milk"));
    CHECK_FALSE(has("Pour in a quart of water, just milk-warm, on three pounds of flour.", "dough: milk"));
}

TEST_CASE("page: the headings that a page shows over the items of its markup") {
    const std::string items = "\"500 g flour\",\"300 ml milk\",\"80 g butter\",\"50 g sugar\"";
    const auto page = [&](const std::string& shown) {
        return read_lines(
            "<html><head><script type=\"application/ld+json\">{\"@context\":\"https://schema.org\","
            "\"@type\":\"Recipe\",\"name\":\"Rolls\",\"recipeIngredient\":[" +
            items + "],\"recipeInstructions\":\"Mix.\"}</script></head><body><h1>Rolls</h1>" + shown +
            "<h2>Directions</h2><p>Mix.</p></body></html>");
    };
    const std::string dough =
        "<h2>Ingredients</h2><h3>Dough</h3><ul><li>500 g flour</li><li>300 ml milk</li></ul>";
    CHECK(page(dough + "<h3>Filling</h3><ul><li>80 g butter</li><li>50 g sugar</li></ul>") ==
          "dough: all-purpose flour 500, dough: milk 309, filling: butter 80, filling: sugar 50");
    CHECK(page("<p>Our rolls.</p>") ==
          "dough: all-purpose flour 500, dough: milk 309, dough: butter 80, dough: sugar 50");
}

TEST_CASE("page: a column that says the amounts again in metric") {
    CHECK(read_lines("BUNS\n\n1/2 cup         warm water               125 mL\n"
                     "3/4 cup         milk, scalded            175 mL\n1 tsp           salt                  "
                     "     5 mL\n"
                     "4 cups          flour                     500 g\n2               eggs                  "
                     "      2\n\n"
                     "Icing\n1 cup           icing sugar              250 mL\n\nMix.\n")
              .starts_with("dough: water 125, dough: milk 180, dough: salt 6, dough: all-purpose flour 500, "
                           "dough: egg 100, topping: powdered sugar"));
}

TEST_CASE("page: what a brush's sentence only picks off") {
    CHECK(
        read_lines("Stollen\n\n500 g flour\n300 g milk\n100 g raisins\n\nKnead to a dough. Brush with butter "
                   "while hot, pick off any burnt raisins.\n")
            .find("dough: raisin 100") != std::string::npos);
}

TEST_CASE("page: headings that the list goes on below") {
    CHECK(read_lines("# Bread\n\n## Day 1\n\n100 g rye flour\n100 g water\n\n## Day 2\n\n400 g bread flour\n"
                     "10 g salt\n\n## Method\nMix.\n") ==
          "dough: rye flour 100, dough: water 100, dough: bread flour 400, dough: salt 10");
    CHECK(read_lines("# Bread\n\n## Ingredients\n\n- Poolish\n- 150 g flour\n- 150 g water\n\n- Final dough\n"
                     "- 350 g flour\n- 10 g salt\n\n## Method\nMix.\n")
              .ends_with("dough: all-purpose flour 350, dough: salt 10"));
    CHECK(read_lines(
              "Bread\n\nIngredients\n500 g flour\n\nYeast mix (proof in small pot):\n7 g instant yeast\n"
              "300 g water\n") == "dough: all-purpose flour 500, dough: instant yeast 7, dough: water 300");
    CHECK(read_lines("Bread\n\n500 g flour\nLevel  2 cups water\n").ends_with("water 473"));
    CHECK(read_lines("Bread\n\n500 g flour\n300 g water\nEgg wash\n---------\n\nMix.\n").find("egg wash") !=
          std::string::npos);
}

TEST_CASE("page: what follows a stage is the dough, what stands below it is the stage's") {
    const std::string stage = "100 g flour\n100 g water\n";
    const std::string as_sponge = "sponge: all-purpose flour 100, sponge: water 100, ";
    const std::string dough = "400 g flour\n10 g salt\n";
    const std::string as_dough = "dough: all-purpose flour 400, dough: salt 10";
    for (const std::string rest :
         {"## Next morning\n", "## Ingredients for 2 loaves\n", "## Mix\n\n### Autolyse\n"}) {
        CAPTURE(rest);
        CHECK(read_lines("# Bread\n\n## Sponge\n" + stage + rest + dough) == as_sponge + as_dough);
    }
    CHECK(read_lines("Bread\n\nSponge:\n" + stage + "Everything else:\n" + dough) == as_sponge + as_dough);
    CHECK(read_lines("Bread\n\nSponge\n------\n" + stage + "\nMorning\n-------\n" + dough) ==
          as_sponge + as_dough);
    CHECK(read_lines("# Bread\n\n## Sponge, 8 am\n" + stage + "## 2. Dough\n" + dough) ==
          as_sponge + as_dough);
    CHECK(read_lines("# Bread\n\n## Sponge\n### Ingredients\n" + stage +
                     "### Method\nMix.\n## Dough\n### Ingredients\n" + dough) == as_sponge + as_dough);
    CHECK(read_lines("# Bread\n\n## Sponge\n- 100 g flour\n- 100 g water\n## The rest\n- Sponge\n"
                     "- 400 g flour\n- 10 g salt\n") == as_sponge + "stage: sponge, " + as_dough);
    CHECK(read_lines("# Poolish bread\n\n## Ingredients\n" + dough) == as_dough);
}

TEST_CASE("page: words that head a part elsewhere, and an item here") {
    const std::string list = "Bread\n\n500 g flour\n300 g water\n";
    const std::string as_list = "dough: all-purpose flour 500, dough: water 300";
    CHECK(read_lines(list + "\nMelted butter\n10 g salt\n").find("topping: salt") == std::string::npos);
    CHECK(read_lines("Sourdough\n\n500 g flour\n300 g water\n") == as_list);
    CHECK(read_lines("Bread\n\nMilk for brushing\n500 g flour\n300 g water\n").ends_with(as_list));
    CHECK(read_lines(list + "\nCustard cream for filling\n\n200 g milk\n50 g sugar\n") ==
          as_list + ", filling: milk 200, filling: sugar 50");
    CHECK(read_lines("Bread\n\nFor assembling the dough:\n500 g flour\n300 g water\n") == as_list);
    CHECK(read_lines(list + "Butter to mold\nFlour to mould\n") ==
          as_list + ", greasing: butter, dough: all-purpose flour?");
}

TEST_CASE("page: an amount with a name of its own is not that of the name before") {
    CHECK(read_lines("Bread.\n\nTwo quarts of flour, salt sufficient, a cup of yeast, water to mix.\n")
              .find("salt 2") == std::string::npos);
    CHECK(read_lines("Bread\n\n500 g flour\nsalt to taste, a cup of water\n") ==
          "dough: all-purpose flour 500, dough: salt?, dough: water 237");
    CHECK(read_lines("Bread\n\n1 lb-3 oz flour\n300 g water\n") ==
          "dough: all-purpose flour 539, dough: water 300");
    CHECK(read_lines("Bread\n\n500 g flour\n1/4 cup raw rice, boiled\n").find("40") == std::string::npos);
}

TEST_CASE("page: what is mixed in and brushed on later stays in the dough") {
    const std::string list = "Bread\n\n500 g flour\n300 g water\n30 g honey\n7 g yeast\n";
    CHECK(read_lines(list + "Mix all ingredients with the honey, shape, brush with water and bake.\n")
              .find("dough: honey 30") != std::string::npos);
    CHECK(read_lines(list +
                     "Dissolve the yeast in the water. Add honey and flour, knead. Brush the loaf with "
                     "honey.\n")
              .find("dough: honey 30") != std::string::npos);
    const std::string dry = "Bread\n\n500 g flour\n300 g milk\n7 g instant yeast\n\n";
    CHECK(read_lines(dry + "Fry 2 onions until softened.\n").find("onion") == std::string::npos);
    CHECK(read_lines(dry + "Dissolve the yeast in 50 g of water.\n").ends_with("dough: water 50?"));
}

TEST_CASE("page: a list without flour behind the dough is of what goes on it") {
    CHECK(read_lines("Sweet dough\n\n1 cup milk\n1 package dry yeast\n1 teaspoon salt\n4 cups bread flour\n\n"
                     "Mix and knead. Let rise until doubled.\n\nTEA RING (half of the dough)\n\n"
                     "2 tablespoons butter, melted\n1/2 cup raisins\n\nRoll out and spread.\n")
              .ends_with("topping: butter 28, topping: raisin 73"));
}

TEST_CASE("page: what a page's buttons and its figures of nutrition say is no ingredient") {
    CHECK(
        read_lines("Rolls\n\nIngredients\n\nUS Customary | Metric    1x 2x 3x\n\n500 g flour\n300 g water\n\n"
                   "Method\nMix.\n\nNUTRITION\nServing: 1 roll   Calories: 318   Fat: 11g\n") ==
        "dough: all-purpose flour 500, dough: water 300");
}

TEST_CASE("page: what the list lacks and the directions name") {
    const std::string list = "Rolls\n\n1 quart of flour.\n2 eggs.\n1 teaspoonful of salt.\n\n";
    CHECK(read_lines(list + "Mix all, with enough warm milk to make a dough. Knead.\n")
              .ends_with("dough: milk?"));
    CHECK(read_lines(
              "Rolls\n\n1 pint milk.\n2 eggs.\n1 teaspoonful of salt.\n\nMake a sponge with the milk and "
              "enough flour for a thin batter.\n")
              .ends_with("dough: all-purpose flour?"));
    CHECK(read_lines("Bread\n\n500 g flour\n1 x 5ml spoon salt\na quart and a half-pint of water\n") ==
          "dough: all-purpose flour 500, dough: salt 6, dough: water 1183?");
}

TEST_CASE("page: more of a line's thing for elsewhere, and a share of it") {
    const std::string as_flour = "dough: bread flour 500";
    for (const std::string tail : {", more for dusting", ", extra for dusting", "; more for the board",
                                   ", with extra for the bench", " (plus extra for dusting)"}) {
        CAPTURE(tail);
        CHECK(
            read_lines("Bread\n\n500 g bread flour" + tail + "\n300 g water\n").starts_with(as_flour + ", "));
    }
    CHECK(read_lines("Buns\n\n500 g bread flour\n300 ml milk (plus extra to glaze)\n") ==
          as_flour + ", dough: milk 309");
    CHECK(read_lines("Buns\n\n500 g bread flour\nSugar 40 g + 100 g for coating\n") ==
          as_flour + ", dough: sugar 40, brushing: sugar 100");
    for (const std::string share : {"2 eggs (1 for the dough, 1 for brushing)", "2 eggs, 1 for glaze",
                                    "2 eggs, 1 for the dough and 1 for brushing"}) {
        CAPTURE(share);
        CHECK(read_lines("Buns\n\n500 g bread flour\n" + share + "\n") == as_flour + ", dough: egg 100?");
    }
    CHECK(read_lines("Buns\n\n500 g bread flour, not counting that for the board\n300 g water\n") ==
          as_flour + ", dough: water 300");
}

TEST_CASE("page: headings of what is made apart, and of nobody knows what") {
    const auto below = [](const std::string& heading) {
        const std::string lines = read_lines("Buns\n\n500 g flour\n300 g milk\n7 g instant yeast\n\n" +
                                             heading + "\n50 g butter\n");
        return lines.substr(lines.rfind(", ") + 2);
    };
    CHECK(below("Custard") == "filling: butter 50");
    CHECK(below("For the pastry cream:") == "filling: butter 50");
    CHECK(below("**Garlic butter**") == "topping: butter 50");
    CHECK(below("Butter block") == "layers: butter 50");
    CHECK(below("Fruit") == "dough: butter 50");
    CHECK(below("Kaya") == "dough: butter 50?");
    CHECK(read_lines("Bialys\n\nOnion mixture:\n2 onions\n\nDough:\n500 g flour\n310 g water\n")
              .starts_with("dough: onion 220?, dough: all-purpose flour 500"));
    CHECK(below("**Anko**") == "dough: butter 50?");
}

TEST_CASE("page: a stage that stands first below the dough's heading, or has its time beside it") {
    const std::string stage = "150 g flour\n90 g water\n\n";
    const std::string as_stage = "poolish: all-purpose flour 150, poolish: water 90, ";
    const std::string as_dough = "dough: all-purpose flour 350, dough: salt 10";
    CHECK(read_lines("Bread\n\nPoolish:\n" + stage + "Final dough:\nPoolish\n350 g flour\n10 g salt\n") ==
          as_stage + "stage: poolish, " + as_dough);
    for (const std::string heading :
         {"Poolish, 12 hours at room temperature", "For the poolish, the evening before:"}) {
        CAPTURE(heading);
        CHECK(read_lines("Bread\n\n" + heading + "\n" + stage + "Dough\n350 g flour\n10 g salt\n") ==
              as_stage + as_dough);
    }
    CHECK(read_lines("Bread\n\nPoolish:\n" + stage + "Day 2\n350 g flour\n10 g salt\n") ==
          as_stage + as_dough);
}

TEST_CASE("page: a name that begins with a word of cooking is an item where its amount ends the line") {
    CHECK(read_lines("Bread\n\nFlour 500 g\nCool water 300 g\nCream: 100 g\nSalt 10 g\n") ==
          "dough: all-purpose flour 500, dough: water 300, dough: cream 100, dough: salt 10");
    CHECK(read_lines("Bread\n\n3 -1/2 cups bread flour\n1 - 1/4 cups milk\n") ==
          "dough: bread flour 480, dough: milk 305");
}

TEST_CASE("page: more than a dough holds, where the directions boil or fry") {
    const std::string list = "Buns\n\n500 g flour\n300 g milk\n7 g instant yeast\n";
    CHECK(read_lines(list + "1 litre vegetable oil\n\nMix and knead. Fry in the hot oil until golden.\n")
              .ends_with("bath: vegetable oil 920?"));
    CHECK(read_lines(list + "50 g baking soda\n\nMix. Boil water with the baking soda, dip each piece.\n")
              .ends_with("bath: baking soda 50?"));
    CHECK(read_lines(list + "60 g vegetable oil\n\nMix all and knead. Fry in hot oil.\n")
              .find("dough: vegetable oil 60") != std::string::npos);
    CHECK(read_lines(list +
                     "100 g powdered sugar\n\nMix and knead. Whisk powdered sugar with juice and drizzle "
                     "over.\n")
              .ends_with("topping: powdered sugar 100?"));
    CHECK(read_lines(list + "\nMix. Bake.\n\nTips\n- for a softer crumb swap 50 g water for milk\n")
              .ends_with("dough: instant yeast 7"));
}

TEST_CASE("page: a table with a column for each stage") {
    const std::string as_stages =
        "poolish: all-purpose flour 200, dough: all-purpose flour 300, poolish: water 150, dough: water 140, "
        "dough: salt 10";
    CHECK(read_lines("# Bread\n\n| Ingredient | Poolish | Dough |\n|---|---|---|\n| Flour | 200 g | 300 g |\n"
                     "| Water | 150 g | 140 g |\n| Salt | | 10 g |\n") == as_stages);
    CHECK(read_lines("Bread\n\nIngredient\tPoolish\tDough\nFlour\t200 g\t300 g\nWater\t150 g\t140 g\n"
                     "Salt\t\t10 g\n") == as_stages);
    CHECK(read_lines("# Bread\n\n| Ingredient | Poolish (g) | Dough (g) | Total |\n|---|---|---|---|\n"
                     "| Flour | 200 | 300 | 500 |\n| Water | 150 | 140 | 290 |\n| Salt | | 10 | 10 |\n") ==
          as_stages);
}

TEST_CASE("page: rules of what is kept apart stop at what goes into the dough") {
    const std::string list = "Bread\n\n500 g flour\n320 g water\n10 g salt\n7 g instant yeast\n";
    const auto has = [](const std::string& text, const std::string& line) {
        const std::string lines = read_lines(text);
        CAPTURE(lines);
        return lines.find(line) != std::string::npos;
    };
    CHECK_FALSE(
        has(list + "\nMix, knead. Knead in the seeds below.\n\nSeeds\n\n40 g sunflower seeds\n40 g pumpkin "
                   "seeds\n",
            "topping"));
    CHECK(
        has("Tip 500 g flour into a bowl with 10 g salt and 7 g instant yeast. Pour in 300 ml water and mix.",
            "all-purpose flour 500"));
    CHECK(has(list + "\nNut mixture:\n80 g walnuts\n80 g raisins\n\nKnead, and work in the nut mixture.\n",
              "dough: walnut 80?"));
    CHECK(has(
        list +
            "60 g honey\n\nProof the yeast in the water. Whisk in the honey, then brush the bowl with oil. "
            "Knead in flour and salt.\n",
        "dough: honey 60"));
    CHECK(
        has("Flatbread\n\n300 g flour\n160 g lard\n100 g water\n5 g salt\n\nRub the lard into the flour, add "
            "water and salt, roll out and fry on a dry griddle.\n",
            "dough: lard 160"));
    CHECK(has(
        "Gingerbread\n\n250 g flour\n15 g baking soda\n200 g honey\n\nBoil the honey, cool. Add flour and "
        "soda.\n",
        "dough: baking soda 15"));
    CHECK(has(list + "\nButter\n250 g butter\n", "dough: butter 250"));
    CHECK(has("Bread\n\n500 g flour, more if needed for the bench\n320 g water\n",
              "dough: all-purpose flour 500"));
}

TEST_CASE("page: stages named below the dough, on one line, or over an empty one") {
    CHECK(read_lines(
              "Bread\n\nDough:\nPoolish\n350 g flour\n10 g salt\n\nPoolish:\n150 g flour\n150 g water\n") ==
          "stage: poolish, dough: all-purpose flour 350, dough: salt 10, poolish: all-purpose flour 150, "
          "poolish: water 150");
    CHECK(read_lines("Bread\n\nSponge\n\n100 g flour\n100 g water\n\nDough\n\n400 g flour\n10 g salt\n") ==
          "sponge: all-purpose flour 100, sponge: water 100, dough: all-purpose flour 400, dough: salt 10");
    CHECK(read_lines(
              "Bread\n\nSponge (night before): 100 g flour, 100 g water\nDough: 400 g flour, 10 g salt\n\n"
              "Mix.\n") ==
          "sponge: all-purpose flour 100, sponge: water 100, dough: all-purpose flour 400, dough: salt 10");
    CHECK(read_lines("Bread\n\n| Ingredient | Dough | Topping |\n|---|---|---|\n| Flour | 500 g | |\n"
                     "| Olive oil | 20 g | 30 g |\n") ==
          "dough: all-purpose flour 500, dough: olive oil 20, topping: olive oil 30");
}

TEST_CASE("page: parts that stand on a line each") {
    const std::string as_dough = "dough: all-purpose flour 450, dough: salt 8";
    CHECK(read_lines("Stollen\n\nPoolish: 250 g flour + 250 g water\nDough: 450 g flour; 8 g salt\n") ==
          "poolish: all-purpose flour 250, poolish: water 250, " + as_dough);
    CHECK(
        read_lines(
            "Stollen\n\nFruit: 350 g raisins, 80 g honey - soak overnight\nDough: 450 g flour, 8 g salt\n") ==
        "dough: raisin 350, dough: honey 80, " + as_dough);
    CHECK(read_lines("Loaf\n\nTangzhong: 20 g flour and 100 g milk\nDough: 450 g flour, 8 g salt.\n") ==
          "scald: all-purpose flour 20, scald: milk 100, " + as_dough);
    CHECK(read_lines("Loaf\n\n450 g flour\n8 g salt\nGlaze: 1 egg, beaten\n") ==
          as_dough + ", brushing: egg 50");
    CHECK(read_lines("Loaf\n\nNutrition: 5 g fat, 20 g sugar\n450 g flour\n8 g salt\n") == as_dough);
}

TEST_CASE("page: a stage with words behind a comma is an item among bullets") {
    CHECK(read_lines("# Bread\n\n## Autolyse\n- 450 g flour\n- 250 g water\n## Mix\n- Levain, all of it\n- "
                     "10 g salt\n")
              .ends_with("dough: salt 10"));
    CHECK(
        read_lines("Buns\n\n500 g flour\n7 g instant yeast\nwarm water to mix\n\nDissolve the yeast in 300 g "
                   "water.\n")
            .ends_with("dough: instant yeast 7, dough: water 300?"));
}

TEST_CASE("page: one of the eggs is brushed on") {
    const std::string list = "Challah\n\n500 g flour\n5 eggs\n";
    CHECK(read_lines(list + "Mix, beat in 4 eggs. Beat the remaining egg and brush it on.\n")
              .ends_with("egg 250?"));
    CHECK(read_lines(list + "Mix, beat in 4 eggs, then the remaining egg.\n").ends_with("egg 250"));
    CHECK(read_lines("Buns\n\n500 g flour\n3 eggs (2 for the dough + 1 beaten for egg wash)\n")
              .ends_with("egg 150?"));
    CHECK(read_lines("Rolls\n\n500 g flour\n7 g instant yeast\n\nAdd 300 ml water and mix to a dough.\n")
              .ends_with("dough: water 300?"));
}

TEST_CASE("page: a sourdough as a heading, and a leaven of which only the weight is said") {
    CHECK(read_lines(
              "Rye\n\nSoaker, the evening before\n150 g cracked rye\n250 g water\n\nSourdough, the evening "
              "before\n200 g rye flour\n200 g water\n\nFinal dough\n200 g rye flour\n10 g salt\n") ==
          "soaker: rye chops 150, soaker: water 250, levain: rye flour 200, levain: water 200, dough: rye "
          "flour "
          "200, dough: salt 10");
    CHECK(read_lines("Loaf\n\nLeaven\n200 g at 100%\n\nDough\n700 g bread flour\n20 g salt\n")
              .ends_with("dough: bread flour 700, dough: salt 20"));
    CHECK(read("Loaf\n\nLeaven\n200 g at 100%\n\nDough\n700 g bread flour\n").transcription.lines.size() ==
          2);
}

TEST_CASE("page: amounts in words that join two") {
    CHECK(read_lines("500 g flour\n100 g olive or vegetable oil\n") ==
          "dough: all-purpose flour 500, dough: olive "
          "oil 100?");
    CHECK(read_lines("5 lb dried and sifted flour\nc. 300 g water\n") ==
          "dough: all-purpose flour 2268, dough: water 300");
    CHECK(read_lines(
              "Muffins\n\nWarm a pint and a half of milk, and as much water, and stir into it an ounce of "
              "German yeast. Have four pounds of flour in a pan; pour the liquid to it. Bake.\n")
              .find("dough: water 852?") != std::string::npos);
    CHECK(read_lines(
              "Muffins\n\nTake a pint of milk, an ounce of German yeast and as much flour as will make a "
              "stiff batter. Bake them.\n")
              .ends_with("dough: all-purpose flour?"));
}

TEST_CASE("page: a table whose first cells are the stages") {
    const std::string all =
        "sponge: all-purpose flour 200, sponge: water 200, dough: all-purpose flour 300, dough: "
        "salt 10, topping: butter 30";
    CHECK(read_lines(
              "Buns\n\n| Part | Ingredient | Grams |\n|---|---|---|\n| Sponge | Flour | 200 |\n| | Water | "
              "200 |\n| Dough | Flour | 300 |\n| | Salt | 10 |\n| Topping | Butter | 30 |\n") == all);
    CHECK(read_lines("Buns\n\nStage\tIngredient\tAmount\nSponge\tFlour\t200 g\nSponge\tWater\t200 g\n"
                     "Dough\tFlour\t300 g\nDough\tSalt\t10 g\nTopping\tButter\t30 g\n") == all);
}

TEST_CASE("page: parts on a line without a mark, and with a name that is not known") {
    CHECK(read_lines(
              "Rolls\n\ndough: 500 g flour, 10 g salt\nfilling 85 g butter, 110 g brown sugar\nicing 120 g "
              "icing sugar + 30 g milk\n") == "dough: all-purpose flour 500, dough: salt 10, filling: butter "
                                              "85, filling: brown sugar 110, topping: "
                                              "powdered sugar 120, topping: milk 30");
    CHECK(read_lines(
              "Stollen\n\nPre-dough: 150 g flour, 100 g milk\nMain dough: 450 g flour, 200 g butter, 2 tsp "
              "stollen spice\n")
              .starts_with(
                  "preferment: all-purpose flour 150, preferment: milk 100, dough: all-purpose flour 450, "
                  "dough: butter 200, dough: stollen spice"));
    CHECK(read_lines("Bread\n\n500 g flour\nsalt 8 g + 50 g water\nButter 50 g + 20 g\n") ==
          "dough: all-purpose flour 500, dough: salt 8, dough: water 50, dough: butter 70");
}

TEST_CASE("page: an ingredient as a heading, and a few of what is not known") {
    CHECK(read_lines("Babka\n\n500 g flour\n10 g salt\n\nChocolate\n120 g dark chocolate\n80 g butter\n") ==
          "dough: all-purpose flour 500, dough: salt 10, dough: chocolate 120?, dough: butter 80?");
    CHECK(read_lines(
              "Biscuits\n\nOne pound of flour, half an ounce of German yeast, a few caraway comfits, and ten "
              "ounces of milk. Mix for a few minutes and bake.\n")
              .find("dough: fresh yeast 14, dough: caraway comfits") != std::string::npos);
}

TEST_CASE("page: headings that count days, and what stands below all of a stage") {
    CHECK(read_lines(
              "Rye\n\nDay 1: soaker\n150 g cracked rye\n300 g water\n\nDay 1: sour\n250 g whole rye flour\n"
              "250 g water\n\nDay 2\nAll of the soaker\n200 g whole rye flour\n15 g salt\n")
              .ends_with(
                  "preferment: whole rye flour 250, preferment: water 250, stage: soaker, dough: whole rye "
                  "flour 200, dough: salt 15"));
    CHECK(read_lines(
              "Loaf\n\nLevain\nIngredient | Weight\nBread flour | 75 g\nWater | 100 g\n\nFinal dough\n"
              "Ingredient | Weight\nBread flour | 800 g\nSalt | 20 g\n\nTimetable\n22:00 Mix the levain.\n"
              "08:00 Mix flours and water.\n") ==
          "levain: bread flour 75, levain: water 100, dough: bread flour 800, dough: salt 20");
}

TEST_CASE("page: crumbs below a word that is not known, and a table that begins with a tab") {
    CHECK(read_lines(
              "Kolache\n\n500 g flour\n80 g sugar\n7 g instant yeast\n\nFlakes\n60 g flour\n50 g sugar\n40 g "
              "butter\n")
              .ends_with("dough: all-purpose flour 60?, dough: sugar 50?, dough: butter 40?"));
    CHECK(read_lines("Bialys\n\n\tVolume\tOunces\tGrams\nBread flour\t3 3/4 cups\t17\t480\nInstant yeast\t1 "
                     "tsp\t0.1\t3\n"
                     "\nFILLING\n2 tsp poppy seeds\n2 tablespoons dry bread crumbs\n") ==
          "dough: bread flour 482, dough: instant yeast 3?, filling: poppy seed 6, filling: dry breadcrumbs "
          "14");
}

TEST_CASE("page: rows of items, and what pieces are dipped into") {
    CHECK(read_lines("Simit\n\n300 g flour, 200 g water, 5 g salt, 3 g instant yeast\n\nto dip: 100 g "
                     "molasses + 100 g "
                     "water\nto coat: 150 g sesame seeds\n\nBake.\n") ==
          "dough: all-purpose flour 300, dough: water 200, dough: salt 5, dough: instant yeast 3, topping: "
          "molasses "
          "100, topping: water 100, topping: sesame seed 150");
    CHECK(read_lines(
              "Old cake\n\n4 lb. flour, 2 lb. butter, 6 eggs, 1 lb. raisins, half a\npound of citron and an "
              "ounce of German yeast.\n")
              .find("candied peel 227") != std::string::npos);
}

TEST_CASE("page: a list of rows with a zest and a pinch among them, and a temperature below") {
    CHECK(
        read_lines("Stollen\n\n500 g flour, 42 g fresh yeast, pinch salt, zest of 1 lemon, 200 g butter\n"
                   "200 g marzipan for the middle\nafter baking: 75 g melted butter, 100 g powdered sugar\n\n"
                   "170° 50 min. Wrap, wait 2 weeks.\n")
            .ends_with("dough: butter 200, filling: marzipan 200?, topping: butter 75, topping: powdered "
                       "sugar 100"));
}

TEST_CASE("page: stages of a table that are not known, and a subtitle") {
    CHECK(read_lines("Buns\n\n| Stage | Ingredient | Grams |\n|---|---|---|\n| Dough | Flour | 500 |\n| "
                     "Dough | Salt | 10 "
                     "|\n| Pastry cream | Milk | 250 |\n| Brown smear | Butter | 80 |\n| 3 Glaze | Sugar | "
                     "50 |\n| 3 | "
                     "Water | 50 |\n") == "dough: all-purpose flour 500, dough: salt 10, filling: milk 250, "
                                          "dough: butter 80?, brushing: sugar 50, "
                                          "brushing: water 50");
    CHECK(read_lines("Country loaf\n\nSourdough\n500 g bread flour\n350 g water\n10 g salt\n") ==
          "dough: bread flour 500, dough: water 350, dough: salt 10");
    CHECK(read_lines("Bread\n\n{| class=\"wikitable\"\n! Ingredient !! Volume !! Weight\n|-\n| Bread flour "
                     "|| 4 cups || "
                     "500 g\n|-\n| Salt || 2 tsp || 10 g\n|-\n! colspan=3 | Topping\n|-\n| Flour || 2 tsp || "
                     "6 g ||\n|-\n! "
                     "Roomal\n|-\n| Sesame seeds || 1 tbsp || 9 g\n|}\n") ==
          "dough: bread flour 500, dough: salt 10?, topping: all-purpose flour 6, dough: sesame seed 9?");
}

TEST_CASE("page: parts of a bakery's card on a line each") {
    CHECK(
        read_lines("Formula\n\nPOOLISH: bread flour 1.00 kg, water 1.00 kg\nSOAKER: rolled oats 0.30 kg, "
                   "teff 0.20 kg\n"
                   "FINAL: bread flour 3.20 kg, salt 0.11 kg, poolish all, soaker all\n\nMix and shape.\n") ==
        "poolish: bread flour 1000, poolish: water 1000, soaker: rolled oats 300, soaker: teff 200, dough: "
        "bread "
        "flour 3200, dough: salt 110, stage: poolish, stage: soaker");
    CHECK(read_lines(
              "Buns\n\n500 g flour\n10 g salt\n\nFilling - 50 g butter, 100 g currants\nFor the top: 300 g "
              "mozzarella, grated; 200 g feta, crumbled; 40 g butter\n") ==
          "dough: all-purpose flour 500, dough: salt 10, filling: butter 50, filling: currants 100, topping: "
          "mozzarella "
          "300, topping: feta 200, topping: butter 40");
    CHECK(read_lines("For the pretzels:\n500 g flour\n10 g salt\n\nPizza topping:\n50 g butter\n") ==
          "dough: all-purpose flour 500, dough: salt 10, topping: butter 50");
    CHECK(
        read_lines("Loaf\n\nLevain\n40 g rye flour\n40 g water\n\nIngredient\tWeight\nBread flour\t400 "
                   "g\nLevain\t80 g\n"
                   "Salt\t10 g\n\n8:00 Feed the levain. The leftover goes back as starter.\n12:00 Mix.\n") ==
        "levain: rye flour 40, levain: water 40, dough: bread flour 400, stage: levain 80, dough: salt 10");
}

TEST_CASE("page: a row with slashes, and a colon behind two sentences") {
    CHECK(lines_of(read("Rye\n\nSour: 600 g rye flour / 600 g water / 60 g starter - 16 h\n"
                        "Dough: 600 g rye flour, 330 g water, 30 g salt\n\nMix and bake.\n")
                       .transcription)
              .find("water 600, ") != std::string::npos);
    CHECK(lines_of(read("Posted for all:\n\nFinally got a crumb I like. Here is what I did:\n\n375 g water\n"
                        "500 g bread flour\n10 g salt\n\nMix and bake.\n")
                       .transcription) == "dough: water 375, dough: bread flour 500, dough: salt 10");
}

TEST_CASE("page: a jotting whose purpose stands behind a full stop in a small letter") {
    CHECK(lines_of(read("I need 400 g flour, 7 g instant yeast, 250 g water, 8 g salt, 30 g olive oil. for "
                        "brushing after: 50 g butter and 10 g honey. dough has to rise an hour\n")
                       .transcription)
              .ends_with("dough: olive oil 30, brushing: butter 50?, brushing: honey 10?"));
}

TEST_CASE("page: cream in a row, a name above the list, and the warmth of the water") {
    CHECK(lines_of(read("Rich loaf\n\nBread flour | 500 g | 100%\nMilk | 150 g | 30%\nCream | 180 g | 36%\n"
                        "Salt | 10 g | 2%\n")
                       .transcription) ==
          "dough: bread flour 500, dough: milk 150, dough: cream 180, dough: salt 10");
    CHECK(
        lines_of(read("My bread\n\nlev 100\n500 g bread flour\n350 g water (30C)\n10 g salt\n").transcription)
            .ends_with("dough: bread flour 500, dough: water 350, dough: salt 10"));
}

TEST_CASE("page: an amount that is a sum of things in its bracket") {
    CHECK(lines_of(
              read("Loaf\n\n500 g flour (400 white, 100 wholewheat)\n350 g water\n10 g salt\n").transcription)
              .starts_with("dough: all-purpose flour 500?"));
    CHECK(lines_of(read("Loaf\n\n20 oz flour (1 pound 4 ounces)\n350 g water\n10 g salt\n").transcription)
              .starts_with("dough: all-purpose flour 567,"));
}

TEST_CASE("page: types of flour behind the name, and headings of the pan") {
    CHECK(lines_of(read("Pain\n\n850 g white flour T65\n150 g rye flour T130\n680 g water\n20 g salt\n")
                       .transcription) ==
          "dough: white flour t65 850, dough: rye flour t130 150, dough: water 680, dough: salt 20");
    for (const std::string heading : {"FOR THE PAN", "For the tin:", "Per la teglia"}) {
        CAPTURE(heading);
        CHECK(lines_of(read("Pizza\n\nFOR THE DOUGH\n240 g flour\n190 g water\n\n" + heading +
                            "\n20 g olive oil\n\nMix.\n")
                           .transcription)
                  .ends_with("greasing: olive oil 20"));
    }
}

TEST_CASE("page: a filling by its heading that the directions work into the dough") {
    const std::string lists =
        "Nut loaf\n\nFor the dough:\n500 g flour\n300 g water\n10 g salt\n7 g instant yeast\n\n"
        "For the filling:\n120 g walnuts\n50 g honey\n\n";
    CHECK(lines_of(read(lists + "Mix the dough, then knead the walnuts into the dough. Spread with honey.\n")
                       .transcription)
              .ends_with("filling: walnut 120?, filling: honey 50"));
    CHECK(lines_of(read(lists + "Mix the dough. Spread with the walnuts and honey.\n").transcription)
              .ends_with("filling: walnut 120, filling: honey 50"));
}

TEST_CASE("page: rows of notes with a time, a remark and what is cooked with water") {
    CHECK(lines_of(
              read("Loaf\n\nLevain (8am): 40 g whole wheat flour, 80 g bread flour, 100 g water, ready 1pm\n"
                   "Dough: 800 g bread flour, 600 g water, 200 g levain\n"
                   "Mix (1pm): 20 g salt + 50 g water, pinch it in\n"
                   "Add at 2nd fold: 60 g toasted walnuts, 15 g maple syrup\nBulk 1pm - 5:30pm\nBake 475F 20 "
                   "min\n")
                  .transcription) ==
          "levain: whole wheat flour 40, levain: bread flour 80, levain: water 100, dough: bread flour 800, "
          "dough: water 600, stage: levain 200?, dough: salt 20, dough: water 50, dough: walnut 60, "
          "dough: maple syrup 15");
    CHECK(lines_of(read("Loaf\n\nPorridge: 50 g rolled oats cooked with 100 g water\n"
                        "Dough: 400 g bread flour, 340 g water, 11 g salt\n\nBake.\n")
                       .transcription)
              .starts_with("scald: rolled oats 50, scald: water 100, dough: bread flour 400"));
}

TEST_CASE("page: a dough without a heading below the list of a soaker or a levain") {
    CHECK(
        lines_of(
            read("Seed loaf\n\nFor the seed soaker:\n40 g sunflower seeds\n100 g boiling water\n\n"
                 "500 g bread flour\n300 g water\n10 g salt\n\nMix all the other ingredients and work in the "
                 "soaked seeds.\n")
                .transcription) == "soaker: sunflower seed 40, soaker: water 100, dough: bread flour 500, "
                                   "dough: water 300, dough: salt 10");
    CHECK(lines_of(
              read("Loaf\n\nLevain:\n30 g rye flour\n60 g flour\n60 g water\n\nTomorrow:\nall of the levain\n"
                   "420 g flour\n300 g water\n9 g salt\n\nMix.\n")
                  .transcription)
              .ends_with("dough: all-purpose flour 420, dough: water 300, dough: salt 9"));
}

TEST_CASE("page: the pan's mixture, its oil, and water for a stiff dough") {
    CHECK(lines_of(
              read("Rolls\n\n500 g flour\n300 g water, plus 20 g more if the dough can take it\n10 g salt\n"
                   "30 g olive oil in the pan\nPan: 100 g butter, 150 g brown sugar, 90 g pecans\n\nMix.\n")
                  .transcription) ==
          "dough: all-purpose flour 500, dough: water 300, dough: salt 10, greasing: olive oil 30, "
          "greasing: butter 100, greasing: brown sugar 150, greasing: pecan 90");
}

TEST_CASE("page: stages of notes, with clocks, days and what they wait for") {
    const std::string dough = "500 g bread flour\n350 g water\n10 g salt\n";
    const std::string read_dough = "dough: bread flour 500, dough: water 350, dough: salt 10";
    const auto lines = [](const std::string& text) { return lines_of(read(text).transcription); };
    CHECK(lines("Loaf\n\nLEVAIN 9:00 pm Fri\n80 g bread flour\n100 g water\n\nDOUGH 8:00 am Sat\n" + dough) ==
          "levain: bread flour 80, levain: water 100, " + read_dough);
    CHECK(lines("Loaf\n\nDay 1 evening, soaker:\n150 g cracked rye\n300 g water\n\nDay 2, dough:\n" +
                dough) == "soaker: rye chops 150, soaker: water 300, " + read_dough);
    CHECK(lines("Loaf\n\nLevain: 45 g flour, 45 g water. Ready in 5-6 hrs at 78F.\n"
                "Dough: 450 g flour, 300 g water, 10 g salt\n\nMix.\n") ==
          "levain: all-purpose flour 45, levain: water 45, dough: all-purpose flour 450, dough: water 300, "
          "dough: salt 10");
    CHECK(lines("Loaf\n\nstiff levain: 50 g bread flour / 25 g water, overnight\n"
                "tangzhong: 25 g bread flour + 125 g milk\n" +
                dough) ==
          "levain: bread flour 50, levain: water 25, scald: bread flour 25, scald: milk 125, " + read_dough);
    CHECK(lines("Buns\n\nSponge first: 1 cup milk, 1 cup flour. Leave it an hour.\n"
                "Then beat in 80 g sugar, 5 g salt, 2 eggs and 300 g flour.\n")
              .find("sugar 80") != std::string::npos);
    CHECK(lines("Pizza\n\nDOUGH\n" + dough + "\nPAN\n50 g olive oil\n").ends_with("greasing: olive oil 50"));
}

TEST_CASE("page: what is tossed, and what stands in a bracket") {
    CHECK(
        lines_of(read("Focaccia\n\n500 g flour\n350 g water\n10 g salt\n200 g cherry tomatoes\n\n"
                      "Mix the dough and let rise 1 hour. Toss the tomatoes with salt. Dimple the dough and "
                      "scatter the tomatoes over.\n")
                     .transcription)
            .ends_with("topping: tomato 200?"));
    CHECK(
        lines_of(read("Loaf\n\n500 g flour\n350 g water\n10 g salt\n150 g raisins (soaked in 1/4 cup rum)\n")
                     .transcription)
            .ends_with("dough: raisin 150?"));
}

TEST_CASE("page: salt that only the directions add, and the paste of crosses") {
    const std::string list = "Loaf\n\n500 g bread flour\n350 g water\n5 g instant yeast\n";
    CHECK(lines_of(read(list + "\nMix. Add 10 g salt. Bulk 4 hours.\n").transcription)
              .ends_with("dough: instant yeast 5, dough: salt 10?"));
    CHECK(lines_of(read(list + "5 g kosher salt\n\nMix. Add 10 g salt. Bulk 4 hours.\n").transcription)
              .ends_with("dough: kosher salt 5"));
    CHECK(lines_of(read(list + "\nFlour paste for crosses\n60 g flour\n75 g water\n\nMix.\n").transcription)
              .ends_with("topping: all-purpose flour 60, topping: water 75"));
}
