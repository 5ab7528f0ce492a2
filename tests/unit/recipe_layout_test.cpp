// Layouts of recipe texts: where lists, columns and stages stand.
#include "support/near.hpp"
#include "support/recipes.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/transcribe.hpp"

#include <doctest/doctest.h>

#include <memory>
#include <string>

using namespace leavenwright;
using leavenwright::testing::lines_of;
using leavenwright::testing::Read;
using leavenwright::testing::read;

TEST_CASE("layout: tables headed by their stage, and a whole formula beside its parts") {
    const Read found = read("Slack loaf\n\n"
                            "TOTAL FORMULA        %       KG\n"
                            "Flour, bread       100.0    3.000\n"
                            "Water               70.0    2.100\n"
                            "Salt                 2.0    0.060\n"
                            "TOTAL              172.0    5.160\n\n"
                            "POOLISH              %       KG\n"
                            "Flour, bread       100.0    1.000\n"
                            "Water              100.0    1.000\n\n"
                            "FINAL DOUGH                  KG\n"
                            "Flour, bread                2.000\n"
                            "Water                       1.100\n"
                            "Salt                        0.060\n"
                            "Poolish                     2.000\n");
    CHECK(lines_of(found.transcription) ==
          "total: bread flour 3000, total: water 2100, total: salt 60, poolish: bread flour 1000, "
          "poolish: water 1000, dough: bread flour 2000, dough: water 1100, dough: salt 60, stage: poolish "
          "2000");
    CHECK(found.codes == "recipe-batches");
    CHECK(found.transcription.formula.find("# and the poolish below") != std::string::npos);
    REQUIRE(found.transcription.hydration.has_value());
}

TEST_CASE("layout: a whole formula with no final dough is the dough") {
    const Read found = read("Slack loaf\n\nTotal formula:\n500 g bread flour\n350 g water\n10 g salt\n\n"
                            "Poolish:\n100 g bread flour\n100 g water\n");
    CHECK(lines_of(found.transcription) == "dough: bread flour 500, dough: water 350, dough: salt 10, "
                                           "total: bread flour 100, total: water 100");
    CHECK(found.codes == "recipe-batches");
}

TEST_CASE("layout: columns of stages, and amounts of two columns with one space between") {
    const Read found = read("PAN BREAD.\n\n"
                            "                    SPONGE.      DOUGH.       TOTAL.\n\n"
                            "Flour, bread        60 lbs.      40 lbs.      100 lbs.\n"
                            "Water               36 lbs.      24 lbs.      60 lbs.\n"
                            "Lard                --           2 lbs. 8 oz. 2 lbs. 8 oz.\n");
    CHECK(lines_of(found.transcription) == "sponge: bread flour 27216, dough: bread flour 18144, "
                                           "sponge: water 16329, dough: water 10886, dough: lard 1134");
}

TEST_CASE("layout: a head with bars over rows without, pounds and ounces in columns") {
    const Read found = read("SWEET DOUGH\n\n"
                            "--------------------------+---------+---------\n"
                            "INGREDIENTS               | Pounds  | Ounces\n"
                            "--------------------------+---------+---------\n"
                            "  Water ...................    4         8\n"
                            "  Flour, bread ............    9         4\n"
                            "  Salt ....................   --         3\n");
    CHECK(lines_of(found.transcription) == "dough: water 2041, dough: bread flour 4196, dough: salt 85");
}

TEST_CASE("layout: two lists side by side, with leaders and without, keep their columns") {
    CHECK(lines_of(read("Corn loaf\n\n"
                        "Water ........ 1 1/2 cups     Salt ......... 2 tsp.\n"
                        "Cornmeal ..... 1/2 cup        Raisins (if liked) . 1/2 cup\n")
                       .transcription) ==
          "dough: water 355, dough: cornmeal 61, dough: salt 12, dough: raisin 73");
    const Read pie =
        read("TOMATO PIE\n\n"
             " 4 c. flour                     1 large can tomatoes\n"
             " 1 1/3 c. warm water              (No. 2 1/2), drained\n"
             " 1 tsp. dry yeast               1/2 lb. mozzarella\n"
             " 1 1/2 tsp. salt                2 tsp. oregano\n"
             "                                3 Tbsp. olive oil\n\n"
             "Mix flour, water, yeast and salt; knead. Break up tomatoes and spread over the dough. "
             "Lay on the mozzarella, sprinkle with oregano. Bake 20 min.\n");
    CHECK(lines_of(pie.transcription) ==
          "dough: all-purpose flour 500, dough: water 315, dough: active dry yeast 4?, dough: salt 9, "
          "filling: tomato?, topping: mozzarella 227?, topping: oregano 2?, filling: olive oil 41?");
}

TEST_CASE("layout: lists among directions, while the dough still lacks something") {
    const Read found = read("# Milk bread\n\n"
                            "**Water roux**: whisk these over low heat until thick\n\n"
                            "- bread flour: **20 g**\n- milk: **100 g**\n\n"
                            "Leave to cool to room temperature.\n\n"
                            "**Dough**: everything but the butter goes in the bowl\n\n"
                            "- bread flour: **320 g**\n- salt: **5 g**\n- instant yeast: **6 g**\n\n"
                            "Knead 15 minutes. Rise 1 hour.\n");
    CHECK(lines_of(found.transcription) == "scald: bread flour 20, scald: milk 100, dough: bread flour 320, "
                                           "dough: salt 5, dough: instant yeast 6");
    const Read next_day =
        read("Rye\n\nEvening: 50 g water, 250 g rye flour, 1 g instant yeast. Leave 12 hours.\n\n"
             "Next day\n300 g rye flour\n100 g bread flour\n14 g salt\n\nBake 1 h at 220 C.\n");
    CHECK(lines_of(next_day.transcription) ==
          "dough: water 50, dough: rye flour 250, dough: instant yeast 1, dough: rye flour 300, "
          "dough: bread flour 100, dough: salt 14");
}

TEST_CASE("layout: a second dough behind the first is left, and said so") {
    const Read found = read("Loaf\n\n500 g flour\n300 g water\n10 g salt\n5 g instant yeast\n\n"
                            "Mix and knead the dough, and let it rise for an hour in a warm place.\n\n"
                            "400 g rye flour\n300 g water\n8 g salt\n");
    CHECK(lines_of(found.transcription) ==
          "dough: all-purpose flour 500, dough: water 300, dough: salt 10, dough: instant yeast 5");
    CHECK(found.codes == "recipe-batches");
}

TEST_CASE("layout: sentences are the recipe where the list is only of a topping") {
    const Read found = read("THE CORNER.\n\n"
                            "STREUSEL COFFEE CAKE.--On Saturday noon scald one cup and a half of\n"
                            "milk, and put into it half a cup of butter. Add one\n"
                            "yeast cake and four cups of flour, and let it rise.\n\n"
                            "For the top rub together with the fingers three-quarters of a cup of\n"
                            "flour, half a cup of brown sugar, a teaspoonful of cinnamon and a\n"
                            "quarter of a cup of butter until all is in crumbs.\n");
    CHECK(lines_of(found.transcription) ==
          "dough: milk 366?, dough: butter 114?, dough: fresh yeast 17?, dough: all-purpose flour 500?, "
          "topping: all-purpose flour 94?, topping: brown sugar 110?, topping: cinnamon 3?, topping: butter "
          "57?");
}

TEST_CASE("habits: fractions with a hyphen, by others of the kind or by one cup") {
    CHECK(lines_of(read("1 1-2 teaspoons salt\n1-2 cup sugar\n3-4 cups flour\n").transcription) ==
          "dough: salt 9?, dough: sugar 101, dough: all-purpose flour 438?");
    CHECK(lines_of(read("1-4 cup water\n500 g flour\n").transcription) ==
          "dough: water 59?, dough: all-purpose flour 500");
    CHECK(lines_of(read("1-2 cups water\n500 g flour\n").transcription) ==
          "dough: water 355?, dough: all-purpose flour 500");
}

TEST_CASE("habits: bare numbers are grams where one is too large to count") {
    CHECK(lines_of(read("500 strong white\n350 water\n7 instant yeast\n2 eggs\n").transcription) ==
          "dough: bread flour 500?, dough: water 350?, dough: instant yeast 7?, dough: egg 100");
    CHECK(lines_of(read("500 flour\n350 water\n7 instant yeast\n\nAll in grams.\n").transcription) ==
          "dough: all-purpose flour 500, dough: water 350, dough: instant yeast 7");
}

TEST_CASE("habits: cups of metric kitchens hold 250 ml, doubtfully; spoons may hold 20") {
    const Read found = read("3 cups plain flour\n1 tbsp caster sugar\n1 cup water\n");
    CHECK(lines_of(found.transcription) ==
          "dough: all-purpose flour 396?, dough: sugar 13?, dough: water 250?");
    const WeightRange& water = *found.transcription.lines[2].weight;
    CHECK(leavenwright::testing::near(in_grams(water.least), 236.588 * 0.97, 0.01, 0.0));
}

TEST_CASE("names: a kind alone is read as flour or yeast, with a warning") {
    CHECK(lines_of(read("500 g strong white\n2 g instant\n300 g water\n100 g wholemeal\n").transcription) ==
          "dough: bread flour 500?, dough: instant yeast 2?, dough: water 300, dough: whole wheat flour 100");
}

TEST_CASE("measures: flour by the quartern and the peck, 'half-a-pint'") {
    CHECK(lines_of(read("a quartern of flour\nhalf a peck of flour\nhalf-a-pint of water\n").transcription) ==
          "dough: all-purpose flour 1588, dough: all-purpose flour 3175, dough: water 284");
}

TEST_CASE("layout: one word over its items is their heading, and 'all of it' is the stage") {
    CHECK(lines_of(read("Pane\n\nBiga (night before)\n  flour 200 g\n  water 140 g\n  yeast a pinch\n"
                        "Dough\n  biga all of it\n  flour 400 g\n  salt 16 g\n")
                       .transcription) ==
          "biga: all-purpose flour 200, biga: water 140, biga: active dry yeast 0?, stage: biga, "
          "dough: all-purpose flour 400, dough: salt 16");
}

TEST_CASE("layout: what is cooked in, what stands behind the directions, and times are not the dough's") {
    CHECK(lines_of(read("500g flour\n30g yeast\n1 egg\nTo cook:\n1/4 litre milk\n").transcription) ==
          "dough: all-purpose flour 500, dough: fresh yeast 30?, dough: egg 50, bath: milk 258");
    CHECK(
        lines_of(
            read("Flour (00)   600g\nWater        372g\nYeast (IDY)  0.6g\n\n24h RT 20C. Ball after 18h.\n\n"
                 "Sauce: 400g can tomatoes\n")
                .transcription) ==
        "dough: all-purpose flour 600, dough: water 372, dough: instant yeast 1, topping: tomato 400");
}

TEST_CASE("layout: what is mixed with a topping goes with it, what is saved for one stays") {
    CHECK(
        lines_of(
            read(
                "4 cups flour\n1/2 cup sugar mixed with 1 Tbsp. cinnamon\n3 eggs (save some for the tops)\n\n"
                "Mix flour and eggs, roll out, sprinkle with cinnamon sugar.\n")
                .transcription) ==
        "dough: all-purpose flour 500, topping: sugar 101?, topping: cinnamon 8?, dough: egg 150?");
}

TEST_CASE("layout: sizes of a loaf over their columns are batches") {
    const Read found = read("White Bread\n\n"
                            "             1 lb loaf    1 1/2 lb loaf\n"
                            "Water        3/4 cup      1 1/8 cups\n"
                            "Bread flour  2 cups       3 cups\n"
                            "Salt         1 tsp        1 1/2 tsp\n");
    CHECK(lines_of(found.transcription) == "dough: water 177, dough: bread flour 274, dough: salt 6");
    CHECK(found.codes == "recipe-batches");
}

TEST_CASE("layout: 'to 2 lbs. of flour allow' is a list") {
    CHECK(
        lines_of(
            read(
                "BUNS.\n\nINGREDIENTS.--To every 2 lbs. of flour allow 1/2 lb. of sugar, 1/2 teaspoonful of\n"
                "salt, 1/2 lb. of butter.\n\nMode.--Mix the flour and sugar.\n")
                .transcription) ==
        "dough: all-purpose flour 907, dough: sugar 227, dough: salt 3, dough: butter 227");
}

TEST_CASE("layout: names and amounts that run on over the margin, behind a heading") {
    CHECK(
        lines_of(
            read("GRAHAM BREADS\n\nGraham Loaf\nGraham flour, 3 cups; salt, 1 teaspoon; molasses,\n1/3 cup; "
                 "lukewarm water, 2 cups; shortening, 1\ntablespoon. Mix as for white bread.\n")
                .transcription) == "dough: whole wheat flour 360, dough: salt 6, dough: molasses 107, dough: "
                                   "water 473, dough: shortening 13");
}

TEST_CASE("markup: JSON without a type, and templates of a wiki") {
    CHECK(
        lines_of(
            read("{\"title\": \"Rolls\", \"ingredients\": [\"300 g rye flour\", {\"amount\": 200, \"unit\": "
                 "\"g\", \"name\": \"water\"}], \"directions\": [\"Rise 1 h.\"]}")
                .transcription) == "dough: rye flour 300, dough: water 200");
    CHECK(lines_of(read("{{summary|Bread|2}}\n\n* 500 [[Cookbook:Gram|g]] flour\n* 1 {{Tablespoon}} oil\n")
                       .transcription) == "dough: all-purpose flour 500, dough: vegetable oil 14");
}

TEST_CASE("layout: another recipe behind a list in sentences is left, and said so") {
    const Read found =
        read("ROLLS.\n\n1 qt. flour, 1 pt. milk, 1 tablespoon sugar, 1 cake yeast. Let rise over night.\n\n"
             "BROWN BREAD.\n\n3 cups rye flour, 2 cups water, 1 teaspoon soda. Steam 3 hours.\n");
    CHECK(lines_of(found.transcription) ==
          "dough: all-purpose flour 500, dough: milk 488, dough: sugar 13, dough: fresh yeast 17?");
    CHECK(found.codes.find("recipe-batches") != std::string::npos);
}

TEST_CASE("layout: a unit over the figures of one column, and lines that begin with what is done") {
    CHECK(lines_of(read("FIELD BREAD\n\n                              Pounds\n"
                        "Flour, issue . . . . . . . .  60\nYeast, compressed  . . . . .  1/2\n")
                       .transcription) == "dough: all-purpose flour 27216, dough: fresh yeast 227");
    CHECK(lines_of(read("4 cups flour\nFill with: 1/2 cup brown sugar\nIce with 1 cup powdered sugar\n")
                       .transcription) ==
          "dough: all-purpose flour 500, filling: brown sugar 110, topping: powdered sugar 120");
}

TEST_CASE("print: a letter for the figure one is mended with a warning") {
    CHECK(lines_of(read("I cup milk\nl tablespoon sugar\nI 1/2 cups cornmeal\nl\u00BD cups rye flour\nI-2 "
                        "cup butter\n"
                        "I yeast cake\n")
                       .transcription) ==
          "dough: milk 244?, dough: sugar 13?, dough: cornmeal 183?, "
          "dough: rye flour 153?, dough: butter 114?, dough: fresh yeast 17?");
    CHECK(plain_line("I can bake") == "I can bake");
}

TEST_CASE("reading: what fills an egg up to a volume is weighed, with a warning") {
    CHECK(lines_of(read("530 g flour\n3 eggs + enough water to make 270 ml\n").transcription) ==
          "dough: all-purpose flour 530, dough: egg 150, dough: water 120?");
    CHECK(lines_of(read("530 g flour\n2 eggs beaten with milk to make 1 cup\n").transcription) ==
          "dough: all-purpose flour 530, dough: egg 100?, dough: milk 144?");
}

TEST_CASE("reading: a dough that hardly anybody makes is said to be unlikely") {
    CHECK(read("500 g flour\n50 g water\n").codes == "hydration-unusual");
    CHECK(read("500 g flour\n1500 g water\n").codes == "hydration-unusual");
    CHECK(read("500 g flour\n300 g water\n50 g salt\n").codes == "salt-unusual");
    CHECK(read("500 g flour\n300 g water\n10 g salt\n").codes.empty());
}

TEST_CASE("layout: a dough below the steps of its starter, which comes first in its list") {
    CHECK(lines_of(
              read("Rolls\n\nStarter:\n75 g water\n75 g flour\nLeave 12 hours, covered with a plate, at room "
                   "temperature.\n\nDough:\nall the starter\n425 g flour\n7 g salt\n")
                  .transcription) ==
          "preferment: water 75, preferment: all-purpose flour 75, stage: preferment, "
          "dough: all-purpose flour 425, dough: salt 7");
    CHECK(
        lines_of(read("4 c. flour\n2 t. salt\nCoating - 1 c. brown sugar, 1 stick butter\n").transcription) ==
        "dough: all-purpose flour 500, dough: salt 12, brushing: brown sugar 220, brushing: butter 113");
}

TEST_CASE("layout: a part of a stage is said to be one") {
    const std::string stage = "Rolls\n\nSponge:\n100 g water\n100 g flour\n\nDough:\n";
    CHECK(read(stage + "150 g of the sponge\n400 g flour\n240 g water\n8 g salt\n").codes ==
          "amounts-disagree");
    CHECK(read(stage + "200 g sponge\n400 g flour\n240 g water\n8 g salt\n").codes.empty());
    CHECK(read(stage + "all the sponge\n400 g flour\n240 g water\n8 g salt\n").codes.empty());
}

TEST_CASE("layout: sentences are the recipe where the list behind them is of another") {
    const Read found =
        read("PARKER ROLLS.\n\nScald one pint of milk, and pour it over one tablespoonful each of sugar and\n"
             "butter; when cool add half a yeast-cake, a teaspoonful of salt and a quart\n"
             "of flour. Let it rise six hours.\n\n"
             "TEA RUSK.\n\nThree cupfuls of flour, two eggs, three teaspoonfuls baking powder.\n");
    CHECK(lines_of(found.transcription) ==
          "dough: milk 488?, dough: sugar 13?, dough: butter 14?, "
          "dough: fresh yeast 9?, dough: salt 6?, dough: all-purpose flour 500?");
    CHECK(found.codes.find("recipe-batches") != std::string::npos);
}

TEST_CASE("layout: names with their amounts behind them in one line") {
    CHECK(
        lines_of(read("Ingredients: flour 500g, water 350g, salt 10g, oil 20g\nMethod: mix; bulk 4h @ 24C\n")
                     .transcription) ==
        "dough: all-purpose flour 500, dough: water 350, dough: salt 10, dough: vegetable oil 20");
}

TEST_CASE("markup: headings among the ingredients of JSON, and flour with more for dusting") {
    CHECK(lines_of(read("{\"@type\": \"Recipe\", \"recipeIngredient\": [\"DOUGH\", \"3 1/2 cups (440g) flour "
                        "(plus more "
                        "for dusting)\", \"1 tsp salt\", \"For the top:\", \"2 tbsp butter\"]}")
                       .transcription) == "dough: all-purpose flour 440, dough: salt 6, topping: butter 28");
}

TEST_CASE("layout: a total set in below a rule is no part of the row above it") {
    CHECK(lines_of(read("GARRISON BREAD\n\n"
                        "        Ingredients            |   Pounds   |  Ounces\n"
                        "-----------------------------------------------------\n"
                        "Flour, hard wheat .............|     30     |    --\n"
                        "Lard or lard substitute .......|     --     |    14.4\n"
                        "-----------------------------------------------------\n"
                        "       Total ..................|     52     |     3.2\n")
                       .transcription) == "dough: bread flour 13608, dough: lard 408");
}

TEST_CASE("sentences: a glaze with amounts of its own, fat that stands ready, and flour said later") {
    CHECK(
        lines_of(
            read("INGREDIENTS: 1 1/2 lb. flour, 1 oz. fresh yeast, 1 level teaspoonful sugar,\n1/2 pint "
                 "water.\n"
                 "For the glaze: 1 dessertspoonful sugar, 1 tablespoonful water.\n\nMETHOD: Mix and knead.\n")
                .transcription)
            .find("sugar 4, dough: water 284, ") != std::string::npos);
    const std::string lines =
        lines_of(read("DOUGHNUTS\n\nAt night stir half a yeast cake into one pint of milk and one quart of "
                      "flour. Now put in\n"
                      "flour to make a dough--some three cupfuls more will be wanted--and let it rise.\n\n"
                      "Have ready three pounds of lard, smoking hot, and drop in four or five.\n")
                     .transcription);
    CHECK(lines.find("all-purpose flour 375?") != std::string::npos);
    CHECK(lines.find("bath: lard 1361?") != std::string::npos);
}

TEST_CASE("lines: what is brushed on, with and without a word that says so") {
    const std::string rolls = "Rolls\n\n3 cups flour\n1 cup milk\n7 g instant yeast\n1 tsp salt\n";
    const std::string dough =
        "dough: all-purpose flour 375, dough: milk 244, dough: instant yeast 7, dough: salt 6, ";
    CHECK(lines_of(read(rolls + "egg wash: 1 egg beaten with 1 tbsp milk\n").transcription) ==
          dough + "brushing: egg 50, brushing: milk 15");
    CHECK(lines_of(read(rolls + "egg wash (1 egg beaten with 1 tbsp milk)\n").transcription) ==
          dough + "brushing: egg 50, brushing: milk 15");
    CHECK(lines_of(read(rolls + "1 egg + 1 tbsp water (egg wash)\n").transcription) ==
          dough + "brushing: egg 50, brushing: water 15");
    const Read silent = read(rolls + "1 egg, beaten with 1 tbsp water\n");
    CHECK(lines_of(silent.transcription) == dough + "brushing: egg 50?, brushing: water 15?");
    CHECK(silent.codes.find("ingredient-doubtful") != std::string::npos);
    CHECK(lines_of(read(rolls + "2 eggs beaten with 1/2 cup water\n").transcription) ==
          dough + "dough: egg 100, dough: water 118");
}

TEST_CASE("lines: an amount among names without one is that of the name behind it") {
    const std::string loaf = "Flat loaf\n\n500 g bread flour\n400 g water\n10 g salt\n2 g instant yeast\n";
    const std::string dough =
        "dough: bread flour 500, dough: water 400, dough: salt 10, dough: instant yeast 2, ";
    CHECK(lines_of(read(loaf + "Topping: rosemary, sea salt, 3 tbsp olive oil\n").transcription) ==
          dough + "topping: rosemary, topping: sea salt, topping: olive oil 41");
    CHECK(lines_of(read(loaf + "raisins, currants, 50 g peel\n").transcription) ==
          dough + "dough: raisin?, dough: currants?, dough: peel 50");
    CHECK(lines_of(read(loaf + "Salt, 2 g kosher\n").transcription) == dough + "dough: kosher salt 2");
}

TEST_CASE("lines: a share with the weight that a baker worked out behind it") {
    const Read found =
        read("For 4 balls\n\n600 g 00 flour\n65% water so 390 g\n2.8% salt = 17 g\n0.3% IDY 1.8 g\n");
    CHECK(lines_of(found.transcription) ==
          "dough: 00 flour 600, dough: water 390, dough: salt 17, dough: instant yeast 2");
}

TEST_CASE("layout: a stage named in a line of its own right over its items, and kinds in short") {
    const Read found =
        read("Class loaf\n\nLEVAIN (night before)\n  60 g water\n  30 g WW + 30 g AP\n"
             "DOUGH\n  all the levain (120 g)\n  700 g bread flour\n  560 g water\n  18 g salt\n");
    CHECK(
        lines_of(found.transcription) ==
        "levain: water 60, levain: whole wheat flour 30?, levain: all-purpose flour 30?, stage: levain 120, "
        "dough: bread flour 700, dough: water 560, dough: salt 18");
}

TEST_CASE("layout: items of a list are no sentence, though one names two amounts") {
    const Read found =
        read("Cardamom buns\n\n5 dl / 500 ml milk\n50 g fresh yeast\n1 kg bread flour\n1 tsp ground moss\n");
    CHECK(lines_of(found.transcription) ==
          "dough: milk 516, dough: fresh yeast 50, dough: bread flour 1000, dough: ground moss?");
}

TEST_CASE("layout: two columns with the same ingredients are two batches") {
    const std::string rows = "1 cup water                1 1/3 cups water\n"
                             "1 tsp salt                 1 1/2 tsp salt\n"
                             "3 cups bread flour         4 cups bread flour\n"
                             "2 tsp instant yeast        2 1/2 tsp instant yeast\n";
    const std::string first =
        "dough: water 237, dough: salt 6, dough: bread flour 411, dough: instant yeast 6";
    const Read headed = read("Plain loaf\n\n1.5 lb loaf                2 lb loaf\n" + rows);
    CHECK(lines_of(headed.transcription) == first);
    CHECK(headed.codes == "recipe-batches");
    const Read bare = read("Plain loaf\n\n" + rows);
    CHECK(lines_of(bare.transcription) == first);
    CHECK(bare.codes == "recipe-batches");
}

TEST_CASE("sentences: a number alone is of the measure before it") {
    const Read found =
        read("Tea cakes.\n\nTake three cups of flour, one of milk, half a cup of sugar, one of the eggs left "
             "from breakfast, a teaspoonful of salt and one of cinnamon, and half a yeast cake.\n");
    CHECK(
        lines_of(found.transcription) ==
        "dough: all-purpose flour 375, dough: milk 244, dough: sugar 101, dough: salt 6, dough: cinnamon 3, "
        "dough: fresh yeast 9");
}

TEST_CASE("lines: small words and headings of other languages") {
    const Read german =
        read("Vollkornbrot\n\n500 g Roggenvollkornmehl\n1 Pck. Trockenhefe\n400 ml Wasser, lauwarm\n"
             "10 g Salz\netwas Butter für die Form\n");
    CHECK(lines_of(german.transcription) ==
          "dough: whole rye flour 500, dough: trockenhefe 7, dough: water 400, "
          "dough: salt 10, greasing: butter");
    const Read italian =
        read("Pane di semola\n\nbiga:\n  farina 0 forte 200 g\n  acqua 110 g\n\nimpasto:\n  biga tutta\n"
             "  semola rimacinata 500 g\n  acqua 380 g\n  sale 14 g\n");
    CHECK(lines_of(italian.transcription) ==
          "biga: farina 0 200, biga: water 110, stage: biga, "
          "dough: semola rimacinata 500, dough: water 380, dough: salt 14");
}

TEST_CASE("layout: Markdown with comments, tags and lists within lists") {
    const Read found =
        read("<!-- imported -->\n# Sweet bread\n\n<!-- two\nlines -->\n## Ingredients\n\n* Sponge\n"
             "  * 100 ml lukewarm [milk](milk.md)\n  * 25 g fresh [yeast](yeast.md)\n* Main dough\n"
             "  * 925 g <b>bread flour</b>\n  * 10 g salt<br>\n* Finishing\n  * 1 [egg yolk](eggs.md)\n");
    CHECK(found.transcription.name == "Sweet bread");
    CHECK(lines_of(found.transcription) ==
          "sponge: milk 103, sponge: fresh yeast 25, dough: bread flour 925, "
          "dough: salt 10, topping: egg yolk 17");
}

TEST_CASE("layout: heads of tables with their batch above a break, or what they measure in brackets") {
    const Read broken =
        read("# Rolls\n\n"
             "| Ingredients | 50 Servings<br>Weight | 50 Servings<br>Measure | 100 Servings<br>Weight |\n"
             "|---|---|---|---|\n"
             "| Bread flour | 1 lb 12 oz | 1 qt 2 cups | 3 lb 8 oz |\n"
             "| Water | | 2 cups | |\n"
             "| Salt | | 2 Tbsp | |\n");
    CHECK(lines_of(broken.transcription) == "dough: bread flour 794, dough: water 473, dough: salt 36");
    CHECK(broken.codes.find("recipe-batches") != std::string::npos);
    const Read dotted = read("DOUGHNUTS\n\n"
                             "Ingredients              100 portions (weights)   Approximate measures\n"
                             "Water, lukewarm ........ 1 pound ................ 1 pint.\n"
                             "Eggs, whole, beaten .... 1 pound ................ 9 eggs.\n"
                             "Flour, hard, sifted .... 6 pounds ............... 6 quarts.\n"
                             "Nutmeg ................. ........................ 1 tablespoon.\n"
                             "Fat for frying.\n"
                             "Sugar, powdered (for dusting) 1 pound ........... 1 quart.\n");
    CHECK(lines_of(dotted.transcription) ==
          "dough: water 454, dough: egg 454, dough: bread flour 2722, dough: nutmeg 7, "
          "bath: fat, dusting: powdered sugar 454");
    const Read bare =
        read("Buns\n\nEggs, whole .... 1 pound ..... 9 eggs.\nFlour .... 6 pounds ..... 6 quarts.\n");
    CHECK(lines_of(bare.transcription) == "dough: egg 454, dough: all-purpose flour 2722");
}

TEST_CASE(
    "layout: a remark amid a list, a filling in two columns below the steps, and what is brushed on there") {
    const Read found = read("Nut roll\n\n"
                            "8 c. flour                         3 eggs, beaten\n"
                            "1 tsp. salt                        1/2 c. warm milk\n"
                            "when cool, the yeast, and then\n"
                            "1 cake yeast\n\n"
                            "    Mix well. Let rise 1 hour. Brush tops with 1 beaten egg. Bake at 350 F.\n\n"
                            "Filling:\n"
                            "2 lb. ground walnuts               1 c. hot milk\n"
                            "2 c. sugar                         1 stick butter, melted\n");
    CHECK(
        lines_of(found.transcription) ==
        "dough: all-purpose flour 1000, dough: salt 6, dough: egg 150?, dough: milk 122, dough: fresh yeast "
        "17?, "
        "filling: walnut 907, filling: sugar 403, filling: milk 244, filling: butter 113, brushing: egg 50");
}

TEST_CASE("lines: paste for crosses, sprays, and seeds and toppings that the directions name") {
    const Read buns =
        read("Buns\n\n4 cups flour\n40 g butter\nFLOUR PASTE:  1/2 cup plain flour;  4 to 5 tblspns water\n"
             "nonstick cooking spray\n");
    CHECK(lines_of(buns.transcription) ==
          "dough: all-purpose flour 528?, dough: butter 40, topping: all-purpose flour 66?, "
          "topping: water 67?, greasing: vegetable oil");
    const Read flat =
        read("Flat loaf\n\n600 g bread flour\n400 ml water\n1 tbsp sesame seeds\n1 tsp nigella seeds\n"
             "1 cup tomato sauce\n\nMix flour and water. Top with sauce. Sprinkle seeds. Bake at 220 C.\n");
    CHECK(lines_of(flat.transcription) ==
          "dough: bread flour 600, dough: water 400, topping: sesame seed 9?, "
          "topping: nigella seed 2?, topping: tomato sauce?");
}

TEST_CASE("layout: a title behind its number in a book is no amount") {
    const Read found =
        read("1722.--YEAST-CAKES, OR TEA-CAKES.\n\n"
             "INGREDIENTS.--2 lbs. of flour, 1/2 teaspoonful of salt, 1/4 lb. of butter, 1 egg.\n\n"
             "Mode.--Put the flour into a basin; let it rise near the fire.\n");
    CHECK(found.transcription.name == "YEAST-CAKES, OR TEA-CAKES.");
    CHECK(lines_of(found.transcription) ==
          "dough: all-purpose flour 907, dough: salt 3, dough: butter 113, dough: egg 50");
}

TEST_CASE("layout: a right column beside what the pantry does not know") {
    const Read found = read("Oat bread\n\n1 cup moss             1/2 yeast cake softened in\n"
                            "1 tablespoon lard      1/4 cup warm water\n"
                            "1 1/2 teaspoons salt   2 1/2 cups bread flour\n");
    CHECK(lines_of(found.transcription) ==
          "dough: moss?, dough: lard 13, dough: salt 9, dough: fresh yeast 9, "
          "dough: water 59, dough: bread flour 343");
}

TEST_CASE("lines: a measure without a number, and yeast by the pound") {
    const Read found =
        read("Rolls.\n\nOne quart of flour, add two eggs, one half-pint of milk, tablespoon of yeast.\n");
    CHECK(lines_of(found.transcription).find("active dry yeast 12?") != std::string::npos);
    const Read shop = read("Bakehouse loaf\n\ncup of water\n98 lb flour\n1 lb yeast\n");
    CHECK(lines_of(shop.transcription) ==
          "dough: water 237, dough: all-purpose flour 44452, dough: fresh yeast 454?");
}

TEST_CASE("lines: French spoons and elisions, and words of Spanish recipes") {
    const Read french =
        read("Brioche\n\nPâte :\n- 500 g de farine T45\n- 20 g de levure de boulanger fraîche\n"
             "- 250 g de beurre mou\n- 1 càs d'huile d'olive\n- 2 c. à café de sel\n"
             "Dorure : 1 jaune d'œuf + 1 c. à soupe de lait\n");
    CHECK(lines_of(french.transcription) ==
          "dough: farine t45 500, dough: fresh yeast 20, dough: butter 250, "
          "dough: olive oil 14, dough: salt 12, brushing: egg yolk 17, brushing: milk 15");
    const Read spanish =
        read("Pan de campo\n\nIngredientes:\n500 g de harina de fuerza\n350 ml de agua tibia\n"
             "harina para espolvorear\n\nPreparación:\nMezclar todo y amasar 10 minutos.\n");
    CHECK(lines_of(spanish.transcription) ==
          "dough: harina de fuerza 500, dough: water 350, dusting: harina");
}

TEST_CASE("layout: a stage that a table takes whole, and a heading for a purpose right over its items") {
    const Read table =
        read("Slipper bread\n\nIngredient        g      baker's %\nBIGA\nBread flour       300    100\n"
             "Water             180    60\n\nDOUGH\nBiga              all\nBread flour       300\n"
             "Water             300\nInstant yeast     2\n");
    CHECK(lines_of(table.transcription) ==
          "biga: bread flour 300, biga: water 180, stage: biga, dough: bread flour 300, "
          "dough: water 300, dough: instant yeast 2");
    const Read list =
        read("Rolls\nIngredients\n3 cups bread flour\n1 cup pumpkin puree (245 g) *not pie filling\n"
             "2 tbsp oil/butter\nFor brushing\n1 tbsp honey\n");
    CHECK(lines_of(list.transcription) ==
          "dough: bread flour 411, dough: pumpkin puree 245, dough: vegetable oil 27?, "
          "brushing: honey 21");
}

TEST_CASE("lines: dozens, amounts less another, scant halves and tall cans") {
    const Read found =
        read("Buns\n\n1 doz. eggs\n1 cup less 2 tablespoons bread flour\na scant half cup of lard\n"
             "1 tall can evaporated milk\n1/2 gill yeast\n2 c. graham meal\n");
    CHECK(lines_of(found.transcription) ==
          "dough: egg 600, dough: bread flour 120, dough: lard 92?, "
          "dough: evaporated milk 369, dough: yeast 59?, dough: whole wheat flour 240");
}

TEST_CASE("layout: columns with headings of their own, and lists below remarks") {
    const Read columns = read("ROLLS (Aunt Ida's)\nDOUGH                     FILLING\n2 c. milk, scalded     "
                              "   1/2 c. butter, soft\n"
                              "2 tsp. salt               2 T. cinnamon\n2 cakes fresh yeast       FROSTING\n"
                              "7 c. flour                2 c. powdered sugar\n");
    CHECK(lines_of(columns.transcription) == "dough: milk 488, dough: salt 12, dough: fresh yeast 34, dough: "
                                             "all-purpose flour 875, filling: butter 114, "
                                             "filling: cinnamon 16, topping: powdered sugar 240");
    const Read stages =
        read("SALT RISING BREAD\n\nIn the evening:\n2 tablespoons corn meal\n4 cups boiling water\n\n"
             "In the morning, strain it and add\n1 cup scalded milk\n4 cups flour\n\nWhen light add\n6 cups "
             "flour\n");
    CHECK(lines_of(stages.transcription) == "dough: cornmeal 15, dough: water 946, dough: milk 244, "
                                            "dough: all-purpose flour 500, dough: all-purpose flour 750");
}

TEST_CASE("lines: kinds of flour behind a comma with preparation, yolks before their number, a last name "
          "without amount") {
    const Read dotted =
        read("Loaf\n\nFlour, whole wheat (stone ground)....3 cups, sifted\nSalt......2 tsp.\n");
    CHECK(lines_of(dotted.transcription) == "dough: whole wheat flour 360, dough: salt 12");
    const Read waffles = read(
        "Raised Waffles.\n\n1 3/4 cups milk. 1/4 yeast cake. 2 cups flour. Yolks 2 eggs. Whites 2 eggs.\n");
    CHECK(lines_of(waffles.transcription) ==
          "dough: milk 427?, dough: fresh yeast 4?, dough: all-purpose flour 250?, "
          "dough: egg yolk 34?, dough: egg white 66?");
    const Read brack = read("Brack\n\n1 lb. flour\npinch salt, nutmeg\n");
    CHECK(lines_of(brack.transcription) == "dough: all-purpose flour 454, dough: salt 0, dough: nutmeg?");
}

TEST_CASE("layout: lines of a list that begins with what the pantry does not know") {
    const Read found = read(
        "Griddle bread\nIngredient | Qty\nMoss | 500 gms\nFern | 100 gms\nMilk | 150 ml\nSalt | 1 tsp\n");
    CHECK(lines_of(found.transcription) ==
          "dough: moss 500?, dough: fern 100?, dough: milk 155, dough: salt 6");
    const Read card =
        read("Aunt's rolls\n\n1/4 c warm H2O\n1 pkg yst\n1 c milk - scald & cool\n1 egg\nabt 4 c flr\n");
    CHECK(lines_of(card.transcription) ==
          "dough: water 59?, dough: active dry yeast 7?, dough: milk 244, dough: egg 50, "
          "dough: all-purpose flour 500?");
    const Read pie =
        read("Flat loaf\n\n500 g flour\n300 g water\nToppings of choice: 1/2 cup olives, 2 tsp oregano\n");
    CHECK(lines_of(pie.transcription) ==
          "dough: all-purpose flour 500, dough: water 300, topping: black olive 68, "
          "topping: oregano 2");
}

TEST_CASE("layout: columns of trays, groups set in below a word, measures without a number or 'of'") {
    const Read trays = read(
        "FLAT LOAF\n\n                 %      1 tray    2 trays\nStrong flour   100      1200      2400\n"
        "Water           80       960      1920\nFresh yeast    1.5        18        36\n");
    CHECK(lines_of(trays.transcription) ==
          "dough: bread flour 1200?, dough: water 960?, dough: fresh yeast 18?");
    CHECK(trays.codes.find("recipe-batches") != std::string::npos);
    const Read groups =
        read("Loaf\n\nWet\n  5 c. water\n  1/2 c. honey\nDry\n  6 c. bread flour\n  2 Tbsp. salt\n");
    CHECK(lines_of(groups.transcription) ==
          "dough: water 1183, dough: honey 168, dough: bread flour 822, dough: salt 36");
    const Read spoons = read("Rolls - 500 g bread flour, 300 ml water, 7 g instant yeast, teaspoon salt, "
                             "tablespoon honey. Mix and bake.\n");
    CHECK(lines_of(spoons.transcription) ==
          "dough: bread flour 500, dough: water 300, dough: instant yeast 7, "
          "dough: salt 6, dough: honey 21");
    const Read last =
        read("Rolls\n\nTwo quarts flour, one pint milk, one-half cup yeast, salt. Mix; bake.\n");
    CHECK(lines_of(last.transcription) ==
          "dough: all-purpose flour 1000, dough: milk 488, dough: yeast 118?, dough: salt?");
}

TEST_CASE("layout: tables of a spreadsheet, by their tabs") {
    const Read found =
        read("Ring rolls\n\nINGREDIENT\tGRAMS\tOZ\t%\tNOTES\nSPONGE\nBread flour\t510\t18\t50.0\t\n"
             "Water, 70F\t510\t18\t50.0\t\nDOUGH\nBread flour\t500\t18\t50.0\tless in "
             "winter\nSalt\t20\t0.7\t2.0\t\n"
             "TOTAL DOUGH\t1540\t54\t\t\nBATH\nWater\t4 qt\t\t\twide pot\nBaking soda\t1 T\n");
    CHECK(lines_of(found.transcription) ==
          "sponge: bread flour 510, sponge: water 510, dough: bread flour 500, dough: salt 20, "
          "bath: water 3785?, bath: baking soda 14");
}

TEST_CASE("layout: a second table behind steps, and headings behind their time") {
    const Read found = read(
        "# Country loaf\n\n**Friday 8:00 am — Levain build**\n\n"
        "| Ingredient | Weight |\n|---|---:|\n| Bread flour | 100 g |\n| Water | 100 g |\n"
        "| **Total levain** | **200 g** |\n\nLeave it warm, 4 hours.\n\n**Saturday 12:00 — final dough**\n\n"
        "| Ingredient | Weight |\n|---|---:|\n| Bread flour | 700 g |\n| Water | 500 g |\n| Salt | 18 g |\n"
        "| Levain (from above) | 200 g |\n\n1. Mix. 2. Bake.\n");
    CHECK(lines_of(found.transcription) ==
          "levain: bread flour 100, levain: water 100, dough: bread flour 700, dough: water 500, "
          "dough: salt 18, stage: levain 200");
}

TEST_CASE("layout: titles with their size, quoted mails, asides and what is 100 %") {
    const Read title = read("LIGHT RYE WITH CARAWAY (2 lb. loaf)\n\n1 cup water\n3 cups bread flour\n");
    CHECK(title.transcription.name == "LIGHT RYE WITH CARAWAY (2 lb. loaf)");
    CHECK(lines_of(title.transcription) == "dough: water 237, dough: bread flour 411");
    const Read mail = read(
        "Re: too dense\n\n> 9 cups flour to 2 cups water, 2 eggs. What is wrong?\n\n1000 g bread flour\n"
        "400 g water\n(use milk for 20 g of it)\n18 g salt\n10 g instant yeast\nFlour = 100 % = 1.0 kg\n");
    CHECK(lines_of(mail.transcription) == "dough: bread flour 1000, dough: water 400, dough: salt 18, "
                                          "dough: instant yeast 10, total: all-purpose flour 1000?");
    const Read yeast = read(
        "Buns\n\nFor the yeast mixture:\n3/4 cup milk\n2 tsp active dry yeast 1 packet\n\nFor the dough:\n"
        "2 cups bread flour\n1/2 cup old-fashioned rolled oats\n");
    CHECK(lines_of(yeast.transcription) ==
          "dough: milk 183, dough: active dry yeast 7, dough: bread flour 274, "
          "dough: rolled oats 41");
}

TEST_CASE("lines: leaders before a remark, toppings of each pizza, and a pinch behind a plus") {
    const Read found = read("Flat loaf\n\nFlour ......... 980g\nWater ......... 608g\nOlive oil ..... "
                            "optional, 1 tbsp. Only for cool ovens.\n\n"
                            "PER PIZZA\n80g mozzarella, torn\n\nMix. Bake hot.\n");
    CHECK(lines_of(found.transcription) ==
          "dough: all-purpose flour 980, dough: water 608, dough: olive oil 14, "
          "topping: mozzarella 80");
    const Read wash = read("Buns\n\n500 g flour\nglaze: 2 eggs + 1 yolk + pinch salt\n");
    CHECK(lines_of(wash.transcription) ==
          "dough: all-purpose flour 500, brushing: egg 100, brushing: egg yolk 17, "
          "brushing: salt 0");
}

TEST_CASE("layout: stages in a line of their own over the columns of each") {
    const Read found =
        read("Seeded tin\n\n                       SPONGE           DOUGH            TOTAL FORMULA\n"
             "                       %       kg       %       kg       %        kg\n"
             "---------------------------------------------------------------------\n"
             "Strong white flour    30.0    1.410     -        -       -         -\n"
             "Water                 19.0    0.893    52.0     2.444    -         -\n"
             "---------------------------------------------------------------------\n"
             "Wholemeal flour         -      -       70.0     3.290    -         -\n"
             "Salt                    -      -        1.9     0.089    -         -\n"
             "---------------------------------------------------------------------\n"
             "TOTAL                 49.3    2.317   139.6     6.561   188.9     8.878\n\n"
             "Flour = 100 % = 4.700 kg (sponge + dough)\n");
    CHECK(lines_of(found.transcription) == "sponge: bread flour 1410, sponge: water 893, dough: water 2444, "
                                           "dough: whole wheat flour 3290, dough: salt 89, "
                                           "total: all-purpose flour 4700?");
}

TEST_CASE("lines: a mixture before another ingredient, and a remark that a row leaves open") {
    const Read found = read("SALLY LUNN\n\nFour cups flour, 2 eggs,\nOne-half cup butter and lard mixed, one "
                            "teaspoonful salt.\n\nWarm and bake.\n");
    CHECK(lines_of(found.transcription) ==
          "dough: all-purpose flour 500, dough: egg 100, dough: butter 57?, dough: lard 51?, "
          "dough: salt 6");
    const Read rows = read("CORN BREAD\n\nCorn meal .... 1 cup\nYeast ........ 1/2 cake (softened in\n"
                           "                  1/4 cup of warm water)\nFlour ........ 2 3/4 cups\n");
    CHECK(lines_of(rows.transcription) == "dough: cornmeal 122, dough: fresh yeast 9?, dough: water 59, "
                                          "dough: all-purpose flour 344");
}

TEST_CASE("lines: a name counted by its row is that name") {
    const Read found = read(
        "Loaf\n\n700 g bread flour\nWater 1 (autolyse): 450 g\nWater 2 (with the salt): 50 g\n14 g salt\n");
    CHECK(lines_of(found.transcription) ==
          "dough: bread flour 700, dough: water 450, dough: water 50, dough: salt 14");
}

TEST_CASE("layout: what is 100 % is an ingredient where it stands first or weighs something else") {
    const Read behind = read("Loaf\n\n500 g bread flour = 100 %\n330 g water = 66 %\n10 g salt = 2 %\n");
    CHECK(lines_of(behind.transcription) == "dough: bread flour 500, dough: water 330, dough: salt 10");
    const Read before = read("Loaf\n\nBread flour = 100% = 500 g\nWater = 66% = 330 g\nSalt = 2% = 10 g\n");
    CHECK(lines_of(before.transcription) == "dough: bread flour 500, dough: water 330, dough: salt 10");
    const Read stage =
        read("Loaf\n\nPoolish\nflour = 100 % = 100 g\nwater = 100 % = 100 g\n\nDough\nflour = 100 % = 400 g\n"
             "water = 60 % = 240 g\nsalt = 2 % = 8 g\n");
    CHECK(lines_of(stage.transcription) ==
          "poolish: all-purpose flour 100, poolish: water 100, dough: all-purpose flour 400, "
          "dough: water 240, dough: salt 8");
}

TEST_CASE(
    "layout: an ingredient in brackets, a number before it or a remark behind it, is no title or aside") {
    const Read aside = read("Buns\n\n500 g flour\n300 g water\n(1/2 cup raisins)\n(sifted)\n10 g salt\n");
    CHECK(lines_of(aside.transcription) ==
          "dough: all-purpose flour 500, dough: water 300, dough: raisin 73, dough: salt 10");
    const Read numbered = read("1. 500 G FLOUR\n2. 300 G WATER\n3. 10 G SALT\n");
    CHECK(lines_of(numbered.transcription) ==
          "dough: all-purpose flour 500, dough: water 300, dough: salt 10");
    const Read batch = read("1 kg bread flour (2 loaves)\n650 g water\n20 g salt\n");
    CHECK(lines_of(batch.transcription) == "dough: bread flour 1000, dough: water 650, dough: salt 20");
    const Read times = read("Buns\n\n4 cups flour\n2 * 7 g sachets instant yeast\n2 tsp salt\n");
    CHECK(lines_of(times.transcription) ==
          "dough: all-purpose flour 500, dough: instant yeast 14, dough: salt 12");
    const Read paste =
        read("Pizza\n\n500 g flour\n325 g water\n2 tbsp concentrate (tomato paste)\n40 g olive "
             "oil\n10 g salt\n");
    CHECK(lines_of(paste.transcription) == "dough: all-purpose flour 500, dough: water 325, "
                                           "dough: concentrate?, dough: olive oil 40, dough: salt 10");
}

TEST_CASE("layout: an ingredient without an amount is no heading over what stands deeper or below") {
    const Read list = read("Buns\n\nIngredients\n- 500 g flour\n- Salt to taste\n    - 7 g instant yeast\n"
                           "    - 50 g butter\n- Raisins\n    - 1 egg\n");
    CHECK(lines_of(list.transcription) ==
          "dough: all-purpose flour 500, dough: salt?, dough: instant yeast 7, dough: butter 50, "
          "dough: raisin?, dough: egg 50");
    const Read columns = read("Fruit bread\n\n500 g bread flour          60 g butter\n"
                              "250 g milk                 Golden syrup\n"
                              "10 g salt                  2 eggs\n"
                              "7 g instant yeast          100 g raisins\n");
    CHECK(lines_of(columns.transcription) ==
          "dough: bread flour 500, dough: milk 250, dough: salt 10, dough: instant yeast 7, "
          "dough: butter 60, dough: golden syrup?, dough: egg 100, dough: raisin 100");
}

TEST_CASE("layout: a quoted list is a part of the recipe, a quoted question is not") {
    const Read quoted = read("Re: buns\n\n500 g flour\n300 g milk\n10 g salt\n7 g instant yeast\n\n> Glaze:\n"
                             "> 1 egg\n> 2 tbsp milk\n");
    CHECK(lines_of(quoted.transcription) ==
          "dough: all-purpose flour 500, dough: milk 300, dough: salt 10, dough: instant yeast 7, "
          "brushing: egg 50, brushing: milk 31");
}

TEST_CASE("layout: leaders before a measure and its number, and a name over two lines of a right column") {
    const Read army = read("BREAD FOR 100 MEN\n\nFlour ............. pounds   75\n"
                           "Salt .............. do.       1 1/4\nYeast, compressed .... ounces  8\n"
                           "Water ............. gallons   5\n");
    CHECK(lines_of(army.transcription) ==
          "dough: all-purpose flour 34019, dough: salt 567, dough: fresh yeast 227, dough: water 18927");
    const Read columns = read("Entire Wheat Bread\n\n"
                              "2 cups scalded milk.        1 yeast cake dissolved in\n"
                              "1/4 cup sugar or            1/4 cup lukewarm water.\n"
                              "1/3 cup molasses.           4 2/3 cups coarse entire\n"
                              "1 teaspoon salt.            wheat flour.\n\nMix and bake.\n");
    CHECK(lines_of(columns.transcription) ==
          "dough: milk 488, dough: sugar 50?, dough: salt 6, dough: fresh yeast 17, dough: water 59, "
          "dough: whole wheat flour 560");
}

TEST_CASE("layout: lists for loaves of several sizes under each other: the first is read") {
    const std::string small = "3/4 c water\n1 t salt\n1 3/4 c bread flour\n1 1/2 t active dry yeast\n";
    const std::string large = "1 1/8 c water\n1 1/2 t salt\n2 2/3 c bread flour\n2 t active dry yeast\n";
    const std::string expected =
        "dough: water 177, dough: salt 6, dough: bread flour 240, dough: active dry yeast 6";
    const Read named =
        read("Oat loaf\n\nSmall loaf\n" + small + "\nLarge loaf\n" + large + "\nMix and bake.\n");
    CHECK(lines_of(named.transcription) == expected);
    CHECK(named.codes.find("recipe-batches") != std::string::npos);
    const Read counted = read("Oat loaf\n\nFor 1 loaf:\n" + small + "For 2 loaves:\n" + large + "\nMix.\n");
    CHECK(lines_of(counted.transcription) == expected);
    const Read drawn = read("     Title: Oat loaf\n\nMMMMM-----SMALL LOAF (1 LB)-----\n" + small +
                            "\nMMMMM-----LARGE LOAF (1.5 LB)-----\n" + large + "\n  Mix.\n");
    CHECK(lines_of(drawn.transcription) == expected);
    const Read yield = read("Tea buns\n12 buns\n\n" + small);
    CHECK(lines_of(yield.transcription) == expected);
}

TEST_CASE("layout: a wiki's table, and what it names for another part") {
    const Read table =
        read("==Ingredients==\n{| class=\"wikitable\"\n! Ingredient !! Volume !! Weight\n|-\n"
             "| [[Flour|Bread flour]] || 8 cups || 1000 g\n|-\n| [[Salt]] || 1 tablespoon || 18 g\n"
             "|-\n| Warm [[water]] || 1\xC2\xBE cups || 415 g\n|}\n\n==Procedure==\n#Mix.\n");
    CHECK(lines_of(table.transcription) == "dough: bread flour 1000, dough: salt 18, dough: water 415");
    const Read brine =
        read("==Ingredienti==\n*500 g di [[farina]]\n*un pizzico di sale\n*un po' di zucchero\n\n"
             "'''Per la salamoia:'''\n*100 ml di acqua\n*5 g di sale\n");
    CHECK(lines_of(brine.transcription) ==
          "dough: farina 500, dough: salt 0, dough: sugar?, salamoia: water 100, salamoia: salt 5");
}

TEST_CASE("layout: what a recipe is made with is no ingredient") {
    const Read tools =
        read("Buns\n\nIngredients:\n\n500 g flour\n7 g instant yeast\n\nEquipment:\n1 loaf tin\n\n"
             "Method\n\nMix.\n");
    CHECK(lines_of(tools.transcription) == "dough: all-purpose flour 500, dough: instant yeast 7");
}

TEST_CASE("lines: liquid is water or milk, and a paste that is mixed is a dough") {
    const Read loaf =
        read("White bread\n\nFor 1 loaf                   For 4 loaves\n\n"
             "1 cup liquid                 1 quart liquid\n1 teaspoon salt              4 teaspoons "
             "salt\n1/2 cake compressed yeast    1 cake compressed yeast\n"
             "3 1/2 cups flour             14 cups flour\n");
    CHECK(lines_of(loaf.transcription) ==
          "dough: water 237?, dough: salt 6, dough: fresh yeast 9, dough: all-purpose flour 438");
    CHECK(loaf.codes.find("ingredient-ambiguous") != std::string::npos);
    const Read rolls =
        read("ROLLS.\n\nTake three pounds of flour, a spoonful of salt, two spoonfuls of yeast,\n"
             "and a pint of new milk warmed; mix these to a light paste; let it stand.\n");
    CHECK(lines_of(rolls.transcription) ==
          "dough: all-purpose flour 1361, dough: salt 18?, dough: active dry yeast 24?, dough: milk 488?");
}

TEST_CASE("prose: names without an amount beside those with one") {
    const Read raised =
        read("RAISED DOUGHNUTS.\n\nScald a pint of milk, add a tablespoonful of lard, and when lukewarm a "
             "teacupful of\n"
             "yeast, with flour to make a sponge. In the morning add salt, two eggs, a cupful of sugar,\n"
             "and flavor with nutmeg and cinnamon. Knead in flour to make a soft dough.\n");
    CHECK(lines_of(raised.transcription) ==
          "dough: milk 488?, dough: lard 13?, dough: yeast 177?, dough: all-purpose flour?, dough: salt?, "
          "dough: egg 100?, dough: sugar 202?, dough: nutmeg?, dough: cinnamon?, dough: all-purpose flour?");
    const Read squash =
        read("Squash Biscuit.\n\nOne pint strained squash, butter the size of an egg, salt, half a "
             "cup of sugar, half a cup of yeast, flour to knead. Let it rise over night.\n");
    CHECK(lines_of(squash.transcription) ==
          "dough: strained squash 490, dough: butter 57?, dough: salt?, dough: sugar 101, dough: yeast 118?, "
          "dough: all-purpose flour?");
    const Read water =
        read("BREAD.\n\nTake six pounds of flour, two ounces of yeast, two teaspoonfuls of salt and a\n"
             "quart and half pint of lukewarm water. Knead it twenty minutes, and bake.\n");
    CHECK(lines_of(water.transcription) ==
          "dough: all-purpose flour 2722, dough: fresh yeast 57?, dough: salt 12, dough: water 1183?");
}

TEST_CASE("layout: weights of loaves over two columns") {
    const Read found =
        read("Raisin bread\n\n                 1 pound        1 1/2 pounds\n"
             "Water            3/4 cup        1 1/8 cups\nBread flour      2 cups         3 cups\n"
             "Salt             1 tsp.         1 1/2 tsp.\n");
    CHECK(lines_of(found.transcription) == "dough: water 177, dough: bread flour 274, dough: salt 6");
    CHECK(found.codes.find("recipe-batches") != std::string::npos);
}

TEST_CASE("lines: 'or more', the same of another, an emphasised 'or', items in paragraphs of their own") {
    const Read more = read("Bread\n\n1 lb flour\n1 pint or more milk\n1 cup sugar and as much butter\n"
                           "3 wine-glasses of water\n2 table-spoons lard\n");
    CHECK(lines_of(more.transcription) ==
          "dough: all-purpose flour 454, dough: milk 488?, dough: sugar 202, dough: butter 227, "
          "dough: water 177?, dough: lard 26");
    const Read velvet = read("VELVET ROLLS.\n\nThree pints of flour.\n\nOne teacup of sweet milk.\n\n"
                             "One tablespoonful of lard, and the same of butter.\n\nMix well and beat it.\n");
    CHECK(lines_of(velvet.transcription) ==
          "dough: all-purpose flour 750?, dough: milk 183?, dough: lard 13, dough: butter 14");
    const Read either =
        read("Bread\n\n2 cups milk             1 yeast cake\n1/4 cup sugar _or_      6 cups flour\n"
             "1/3 cup molasses        1 teaspoon salt\n");
    CHECK(lines_of(either.transcription) == "dough: milk 488, dough: sugar 50?, dough: fresh yeast 17, "
                                            "dough: all-purpose flour 750, dough: salt 6");
}

TEST_CASE("prose: flour that only the sentences name, or more than the list has") {
    const Read rusk =
        read("RUSK.\n\n1 pint warm milk.\n2 eggs.\n1 teaspoonful of salt.\n1 cake yeast.\n\nMake a sponge "
             "with the milk, yeast, and enough flour for a thin batter,\nand let it rise over night.\n");
    CHECK(
        lines_of(rusk.transcription) ==
        "dough: milk 488?, dough: egg 100, dough: salt 6, dough: fresh yeast 17?, dough: all-purpose flour?");
    const Read sponge = read(
        "BREAD.\n\nFive pints warm water, five quarts sifted flour, one cup yeast; mix in a jar, cover,\n"
        "and set to rise. In the morning sift six quarts flour into a pail, pour in the sponge, add one\n"
        "tablespoonful of salt; mix thoroughly, using up the rest of the flour.\n");
    CHECK(lines_of(sponge.transcription).find("all-purpose flour 3000?") != std::string::npos);
    const Read mixed =
        read("BREAD.\n\nWith two pounds of fine flour mix three eggs, a little salt, half a pint of\n"
             "milk. Set it to rise and bake it well.\n");
    CHECK(lines_of(mixed.transcription) ==
          "dough: all-purpose flour 907?, dough: egg 150?, dough: salt?, dough: milk 244?");
}

TEST_CASE("layout: what looks like another batch, measure or choice and is none, and the other way round") {
    const Read asides =
        read("Bread\n\n500 g bread flour\n(4 cups bread flour)\n300 g water\n(or 300 g milk)\n"
             "10 g salt\n(2 tsp salt)\n");
    CHECK(lines_of(asides.transcription) == "dough: bread flour 500, dough: water 300, dough: salt 10");
    const Read apart =
        read("Bread\n\n## Small loaf\n\n- 500 g flour\n- 10 g salt\n- 7 g instant yeast\n\n"
             "## Large loaf\n\n- 1000 g flour\n\n- 20 g salt\n- 14 g instant yeast\n\n## Method\n\nMix.\n");
    CHECK(lines_of(apart.transcription) ==
          "dough: all-purpose flour 500, dough: salt 10, dough: instant yeast 7");
    const Read drawn =
        read("Bread\n\nMMMMM-----SMALL LOAF-----\n500 g flour\n10 g salt\n7 g instant yeast\n\n"
             "MMMMM-----MEDIUM LOAF-----\n700 g flour\n14 g salt\n9 g instant yeast\n");
    CHECK(lines_of(drawn.transcription) == lines_of(apart.transcription));
    const Read yield =
        read("Bread\n\n500 g flour\n10 g salt\n7 g instant yeast\n\nMakes 2 loaves\n50 g butter\n1 egg\n");
    CHECK(lines_of(yield.transcription) == "dough: all-purpose flour 500, dough: salt 10, dough: instant "
                                           "yeast 7, dough: butter 50, dough: egg 50");
    const Read rolls = read("Bread\n\n500 g flour\n6 small rolls\n300 g milk\n10 g salt\n");
    CHECK(lines_of(rolls.transcription).find("rolls") != std::string::npos);
    const Read equal = read("Bread\n\nRye flour = 1000 g\nBread flour = 1000 g\nWater = 1300 g\n");
    CHECK(lines_of(equal.transcription) ==
          "dough: rye flour 1000, dough: bread flour 1000, dough: water 1300");
    const Read either = read("Bread\n\n1 cake yeast or\n1 package dry yeast\n\n6 cups flour\n2 cups water\n");
    CHECK(lines_of(either.transcription) ==
          "dough: fresh yeast 17?, dough: all-purpose flour 750, dough: water 473");
}

TEST_CASE("lines: pastes for something, as much as is needed, hyphens behind 'un', and 'do.'") {
    const Read lines = read("Bread\n\n500 g flour\n200 g dates, cooked to a paste for the filling\n"
                            "2 cups water and as much milk as will make a batter\n50 g un-salted butter\n");
    CHECK(lines_of(lines.transcription).find("filling: date 200") != std::string::npos);
    CHECK(lines_of(lines.transcription).find("salted butter 50?") != std::string::npos);
    CHECK(lines_of(lines.transcription).find("milk 4") == std::string::npos);
    const Read little = read("Pan\n\n500 g harina\nun poco de sal\nun po' di zucchero\nein wenig Milch\n");
    CHECK(lines_of(little.transcription) == "dough: harina 500, dough: salt?, dough: sugar?, dough: milk?");
    const Read leaders = read("Bread\n\nFlour ..... pounds   75\nWater ..... 5 gallons\nMilk ..... do.  2\n");
    CHECK(lines_of(leaders.transcription) ==
          "dough: all-purpose flour 34019, dough: water 18927, dough: milk 7808");
}

TEST_CASE("layout: a run of items between bullets, behind its heading") {
    CHECK(
        lines_of(
            read("Buns\n\nDOUGH: 50 g fresh yeast \xE2\x80\xA2 5 dl milk \xE2\x80\xA2 800 g plain flour\n"
                 "FILLING: 100 g soft butter \xE2\x80\xA2 80 g sugar\n\nMix and knead.\n")
                .transcription) ==
        "dough: fresh yeast 50, dough: milk 516, dough: all-purpose flour 800, filling: butter 100, filling: "
        "sugar 80");
    CHECK(
        lines_of(read("Loaf\n\nServes 4 \xE2\x80\xA2 20 min \xE2\x80\xA2 easy\n\n500 g flour\n300 g water\n")
                     .transcription) == "dough: all-purpose flour 500, dough: water 300");
}

TEST_CASE("layout: a box drawn around a list") {
    CHECK(lines_of(read("Pretzels\n\n+---- YOU WILL NEED ----+\n|  [ ] 500 g flour      |\n|  [ ] 10 g salt  "
                        "      |\n"
                        "|                       |\n|  For the soda dip:    |\n|  [ ] 20 g baking soda |\n"
                        "+-----------------------+\n")
                       .transcription) ==
          "dough: all-purpose flour 500, dough: salt 10, soda dip: baking soda 20");
}

TEST_CASE("layout: a wiki's table with links, styles and cells that are not there") {
    CHECK(
        lines_of(
            read("{{summary|x}}\n== Ingredients ==\n{| class=\"wikitable\"\n! Ingredient !! Volume !! Weight "
                 "!! "
                 "[[Cookbook:Percentage|Baker's %]]\n|-\n! colspan=\"4\" | Dough\n|-\n| [[Cookbook:Bread "
                 "Flour|Bread flour]] || 7 [[Cookbook:Cup|cups]] || 1000 g || 100%\n|-\n| Malt syrup || 2 "
                 "tbsp || "
                 "40 g || 4%\n|-\n! colspan=\"4\" | Topping\n|-\n| Egg white || 1 each || n/a || n/a\n|}\n\n"
                 "== Procedure ==\n# Knead for 10 minutes.\n")
                .transcription) == "dough: bread flour 1000, dough: malt syrup 40, topping: egg white 33");
}

TEST_CASE("layout: 'Amount (g)' over figures with a gap, in columns of tabs") {
    CHECK(lines_of(read("Rye\n\nIngredients\tAmount (g)\t%\nSponge\t\t\nMedium rye flour\t1 "
                        "500\t30\nWater\t1 500\t30\n"
                        "Total sponge\t3 000\t60\nDough\t\t\nBread flour\t3 500\t70\nSalt\t100\t2\n")
                       .transcription) ==
          "sponge: rye flour 1500, sponge: water 1500, dough: bread flour 3500, dough: salt 100");
}

TEST_CASE("layout: items as maps in a page's data") {
    CHECK(
        lines_of(
            read("Babka\n\n- {qty: 500, unit: g, item: all-purpose flour}\n- {qty: 3, unit: , item: \"eggs, "
                 "cold\"}\n- {qty: 120, unit: ml, item: whole milk}\n- {name: 'sugar, white', amount: 85, "
                 "unit: "
                 "g}\n")
                .transcription) ==
        "dough: all-purpose flour 500, dough: egg 150, dough: milk 124, dough: sugar 85");
}

TEST_CASE("layout: the last of a right column may begin with a part of a fruit") {
    CHECK(lines_of(read("Kuchen\n\n250 g milk           |  5 g salt\n100 g butter         |  20 g fresh "
                        "yeast\n50 g sugar    "
                        "       |  500 g flour\n                     |  grated rind of 1 lemon\n")
                       .transcription)
              .ends_with("dough: lemon zest 6"));
}

TEST_CASE("layout: a row that goes on below the names before the first bar") {
    CHECK(lines_of(read("Rolls\n\n                |      50 Servings       |      100 Servings      "
                        "|\nIngredients     |  "
                        "Weight   |  Measure   |  Weight   |  Measure   |\n"
                        "----------------|-----------|------------|-----------|------------|\n"
                        "Flour           | 1 lb 8 oz | 1 qt 2 cups| 3 lb      | 3 qt       |\n"
                        "Salt            |           | 1 Tbsp 1   |           | 2 Tbsp     |\n"
                        "                |           |  tsp       |           |  2 tsp     |\n"
                        "Sugar           | 5 oz      | 3/4 cup    | 10 oz     | 1 1/2 cups |\n")
                       .transcription) == "dough: all-purpose flour 680, dough: salt 24, dough: sugar 142");
}

TEST_CASE("layout: leaders of underscores, and two columns that came out as one line") {
    CHECK(lines_of(read("Rolls\n\n Flour, sifted__________pounds__  20\n Water_________________quarts__   4\n"
                        " Salt_________________ounces__   5\n")
                       .transcription)
              .starts_with("dough: all-purpose flour 9072, dough: water 3785"));
    CHECK(
        lines_of(
            read("Kuchen\n\n1 pint milk 1 ounce compressed yeast\n100 g butter 60 ml water\n2 teaspoons salt "
                 "7 cups flour\n")
                .transcription)
            .find("fresh yeast 28") != std::string::npos);
}

TEST_CASE("layout: a remark in brackets with a sum is none of the list") {
    CHECK(lines_of(read("Oat loaf\n\n20 ounces flour\n10 ounces water\n\n(Flour is measured after one "
                        "sifting. One cup = "
                        "4 ounces.)\n")
                       .transcription) == "dough: all-purpose flour 567, dough: water 283");
}
