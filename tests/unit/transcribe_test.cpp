#include "transcribe/transcribe.hpp"

#include "formula/read_formula.hpp"
#include "support/formulas.hpp"
#include "support/near.hpp"
#include "transcribe/kitchen_amount.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/read_directions.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <memory>
#include <string>

using namespace leavenwright;

namespace {

SourceHandle source_of(const std::string& text, const std::string& name = "recipe.txt") {
    return std::make_shared<SourceText>(name, text);
}

struct Transcribed {
    Transcription transcription;
    std::string codes; // of the findings, in order
};

Transcribed transcribed(const std::string& text) {
    const Pantry pantry;
    Diagnostics diagnostics;
    const auto result = transcribe(source_of(text), pantry, diagnostics);
    REQUIRE(result.has_value());
    std::string codes;
    for (const Diagnostic& item : diagnostics.in_order()) {
        codes += (codes.empty() ? "" : " ") + std::string(name_of(item.code));
    }
    return {*result, codes};
}

bool holds(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

double number_of(const std::string& line) {
    const auto amount = read_kitchen_amount(line_tokens(plain_line(line)));
    return amount ? amount->number : -1.0;
}

std::vector<DirectionStep> steps_of(const std::string& text) {
    const std::vector<std::string> paragraphs{text};
    return read_directions(paragraphs);
}

} // namespace

TEST_CASE("line tokens: a number in every spelling is one token") {
    for (const char* text :
         {"1 1/2", "1-1/2", "1½", "1 ½", "1 and 1/2", "1 & 1/2", "1.5", "1,5", "1 1\u20442"}) {
        CAPTURE(text);
        const auto tokens = line_tokens(plain_line(text));
        REQUIRE(tokens.size() == 1);
        CHECK(testing::near(tokens.front().value, 1.5, 1e-15, 0.0)); // to the last bit but rounding
    }
    CHECK(line_tokens("1,000").front().value == 1000.0);
    CHECK(line_tokens("2,500.5").front().value == 2500.5);
}

TEST_CASE("line tokens: bullets, boxes, numbers of a list and emphasis are taken off") {
    for (const char* text :
         {"- 2 cups", "* 2 cups", "• 2 cups", "[ ] 2 cups", "- [x] 2 cups", "1. 2 cups", "**2** cups"}) {
        CHECK(plain_line(text) == "2 cups");
    }
    CHECK(plain_line("1.5 cups") == "1.5 cups");
}

TEST_CASE("line tokens: of links, pictures and names of characters the words remain") {
    CHECK(plain_line("* 2 [[cup]]s [[Flour|rye flour]]") == "2 cups rye flour");
    CHECK(plain_line("- [cane sugar](/sugar), 2 tbsp") == "cane sugar, 2 tbsp");
    CHECK(plain_line("&frac12; cup milk &amp; honey") == "½ cup milk & honey");
    CHECK(plain_line("'''2''' cups ''very'' fine meal") == "2 cups very fine meal");
    CHECK(plain_line("a 12'' tin ![tin](tin.png)") == "a 12'' tin");
    CHECK(plain_line("[[open, and [half](open") == "[[open, and [half](open");
}

TEST_CASE("kitchen amount: words, sums and shares") {
    CHECK(number_of("half a cup") == 0.5);
    CHECK(number_of("two and a half cups") == 2.5);
    CHECK(number_of("three-quarters cup") == 0.75);
    CHECK(number_of("half a dozen eggs") == 6.0);
    CHECK(number_of("1 lb 8 oz") == 1.5);
    CHECK(number_of("2 x 7 g sachets") == 14.0);
    CHECK(number_of("68 %") == 68.0);
    CHECK(number_of("flour") == -1.0);
}

TEST_CASE("transcribe: purposes are kept apart, and stages have their place") {
    const auto result = transcribed(
        "Loaf\n\nPoolish:\n100 g bread flour\n100 g water\n\nDough:\n400 g bread flour\n200 g water\n"
        "\nFor the glaze:\n1 egg\n");
    CHECK(result.transcription.lines.at(0).role == "poolish");
    CHECK(result.transcription.lines.at(2).role == "dough");
    CHECK(result.transcription.lines.at(4).role == "brushing");
    const Formula formula = testing::formula_from(result.transcription.formula);
    REQUIRE(formula.stages.size() == 1);
    CHECK(formula.stages.front().kind == StageKind::poolish);
    CHECK(testing::near(in_grams(formula.dough_mass()), 800.0, 1e-12, 0.0)); // sums of whole grams
}

TEST_CASE("transcribe: an ingredient given twice is one line of the formula") {
    const auto result = transcribed("2 cups bread flour\n1/2 cup bread flour\n250 g water\n1 tbsp water\n");
    const Formula formula = testing::formula_from(result.transcription.formula);
    REQUIRE(formula.dough.size() == 2);
    CHECK(testing::near(in_grams(formula.dough[0].mass), 2.5 * 137.0, 1e-9, 0.0)); // SR26: 137 g a cup
    CHECK(formula.dough[0].uncertainty.value() > 0.1);
}

TEST_CASE("transcribe: what is missing has a name") {
    CHECK(transcribed("500 g flour\n10 g salt\n").codes == "water-missing");
    CHECK(transcribed("500 g water\n10 g salt\n").codes == "flour-missing");
    CHECK(holds(transcribed("500 g flour\n300 g water\nsalt\n").codes, "amount-missing"));
}

TEST_CASE("transcribe: doubt is counted, and says so in the formula") {
    const auto result =
        transcribed("500 g flour\n300 g water\n1 teacup sugar\n2 tbsp moon dust\n").transcription;
    CHECK(result.sure == 2);
    CHECK(result.doubtful == 1);
    CHECK(result.unread == 1);
    CHECK(holds(result.formula, "(doubtful) 1 teacup sugar"));
    CHECK(holds(result.formula, "# moon dust: 2 tbsp"));
}

TEST_CASE("transcribe: cups leave the hydration a range that grams do not") {
    const auto cups = transcribed("4 cups flour\n1 1/2 cups water\n").transcription.hydration;
    REQUIRE(cups.has_value());
    CHECK(cups->most - cups->least > 0.1);
    const auto weights = transcribed("500 g flour\n325 g water\n").transcription.hydration;
    REQUIRE(weights.has_value());
    CHECK(weights->most - weights->least < 1e-12);
}

TEST_CASE("transcribe: the example of schema.org/Recipe (its facts, reworded)") {
    // Source: https://schema.org/Recipe, the first example; its three lines of ingredients are verbatim.
    const auto result = transcribed(
        R"({"@context": "https://schema.org", "@type": "Recipe", "name": "Banana bread", "cookTime": "PT1H",
            "recipeYield": "1 loaf",
            "recipeIngredient": ["3 or 4 ripe bananas, smashed", "1 egg", "3/4 cup of sugar"],
            "recipeInstructions": "Heat the oven to 350 F. Mix, add the flour last, and bake for one hour."})");
    const auto& lines = result.transcription.lines;
    REQUIRE(lines.size() == 3);
    CHECK(lines[0].key == "banana");
    CHECK(testing::near(in_grams(lines[0].weight->likely), 3.5 * 118.0, 1e-9, 0.0)); // SR26 09040
    CHECK(testing::near(in_grams(lines[1].weight->likely), 50.0, 1e-9, 0.0));        // SR26 01123
    CHECK(testing::near(in_grams(lines[2].weight->likely), 150.0, 0.01, 0.0));       // SR26: 4.2 g a teaspoon
    CHECK(holds(result.transcription.formula, "makes: 1 loaf"));
    CHECK(holds(result.transcription.formula, "bake: { for: 1 h, at: 350 F }"));
    CHECK(holds(result.codes, "flour-missing"));
}

TEST_CASE("transcribe: a page without markup is read by its text") {
    const auto result =
        transcribed("<html><body><h1>Loaf</h1><ul><li>500 g <b>bread flour</b></li><li>1&frac12; cups "
                    "water</li></ul></body></html>");
    REQUIRE(result.transcription.lines.size() == 2);
    CHECK(result.transcription.lines[1].number == 1.5);
}

TEST_CASE("directions: rises before and after shaping, the cold, and the oven") {
    const auto steps =
        steps_of("Preheat the oven to 450 F. Let rise 1 hour 30 minutes at 75 F. Shape into loaves. "
                 "Refrigerate overnight. Let rise 45-60 minutes. Bake 35 to 40 minutes.");
    REQUIRE(steps.size() == 5);
    CHECK(steps[0].verb == "bulk");
    CHECK(steps[0].time == "1 h 30 min");
    CHECK(steps[0].temperature == "75 F");
    CHECK(steps[1].verb == "shape");
    CHECK(steps[2].verb == "retard");
    CHECK(steps[3].verb == "proof");
    CHECK(steps[3].time == "45 to 60 min");
    CHECK(steps[4].verb == "bake");
    CHECK(steps[4].temperature == "450 F");
}

namespace {

// "bulk 2 h 75 F, shape, proof 45 min"
std::string told(const std::string& directions) {
    std::string text;
    for (const DirectionStep& step : steps_of(directions)) {
        text += (text.empty() ? "" : ", ") + step.verb + (step.time.empty() ? "" : " " + step.time) +
                (step.temperature.empty() ? "" : " " + step.temperature);
    }
    return text;
}

} // namespace

TEST_CASE("directions: each thing that a sentence says to do is a step") {
    CHECK(told("Divide into 12, shape into balls, and let rise until doubled, about 1 1/2 hours.") ==
          "divide, shape, proof 1 1/2 h");
    CHECK(told("Knead 10 mins, rise 1 hr, knock back, shape into a tin, prove for 40 mins, bake at 200C for "
               "35-40 mins.") == "knead 10 min, bulk 1 h, shape, proof 40 min, bake 35 to 40 min 200 C");
    CHECK(told("Place in an oiled bowl, cover and leave to prove for 2-3 hours, until doubled in size.") ==
          "bulk 2 to 3 h");
    CHECK(told("Let rise 1 hour and 30 minutes.") == "bulk 1 h 30 min");
    CHECK(told("Cover and leave on the counter for 8 hours at 70 F.") == "bulk 8 h 70 F");
    CHECK(told("Refrigerate overnight, 12 to 16 hours.") == "retard 12 to 16 h");
    CHECK(told("Place in the icebox over night.") == "retard 8 to 12 h");
}

TEST_CASE("directions: what is no step of the dough is left out") {
    CHECK(told("Dissolve the yeast in the water and let stand 10 minutes.").empty());
    CHECK(told("Leave the poolish for 12 hours at 21 C.").empty());
    CHECK(told("Mix to form a soft dough. Let rise 1 hour.") == "bulk 1 h");
    CHECK(told("Take out of the fridge 2 hours before baking.").empty());
    CHECK(told("Bake 20 minutes at 400 F. Let stand 1 hour on a rack.") == "bake 20 min 400 F");
}

TEST_CASE("directions: an oven without a scale, by gas mark, and turned down") {
    CHECK(told("Bake at 375 for 30 minutes.") == "bake 30 min 375 F");
    CHECK(told("Bake at 200 for 30 minutes.") == "bake 30 min 200 C");
    CHECK(told("Bake at 275 for 30 minutes.") == "bake 30 min");
    CHECK(told("Preheat the oven to gas mark 7. Bake for 30 minutes.") == "bake 30 min 220 C");
    CHECK(told("Bake 25 minutes at 220 C, then lower the heat to 200 C and bake for a further 10 minutes.") ==
          "bake 25 min 220 C, bake 10 min 200 C");
}

TEST_CASE("transcribe: a group's heading needs no mark, and a lead gives its line a purpose") {
    const auto result =
        transcribed("Stollen\n\nSponge\n100 g flour\n100 g milk\n\nFruit (soaked)\n200 g raisins\n"
                    "Glaze: 50 g sugar\n");
    const auto& lines = result.transcription.lines;
    REQUIRE(lines.size() == 4);
    CHECK(lines[0].role == "sponge");
    CHECK(lines[2].role == "dough");
    CHECK(lines[3].role == "brushing");
}

TEST_CASE("transcribe: a mixture is halved with a warning, and each part may be all of it") {
    const auto result = transcribed("500 g flour\n300 g milk and water\n");
    const auto& lines = result.transcription.lines;
    REQUIRE(lines.size() == 3);
    CHECK(lines[1].key == "milk");
    CHECK(lines[2].key == "water");
    CHECK(!lines[2].is_sure);
    CHECK(testing::near(in_grams(lines[2].weight->likely), 150.0, 1e-12, 0.0)); // half of 300 g
    CHECK(testing::near(in_grams(lines[2].weight->most), 300.0, 1e-12, 0.0));
}

TEST_CASE("transcribe: pints are by the recipe's own words, not by those of the page around it") {
    const std::string page =
        "<html><script>const cups = 'package ';</script><script type=\"application/ld+json\">"
        "{\"@type\": \"Recipe\", \"name\": \"Pier loaf\", \"recipeIngredient\": "
        "[\"500 g flour\", \"1/2 pint milk\"]}</script></html>";
    CHECK(holds(transcribed(page).codes, "amount-doubtful"));
    CHECK(holds(transcribed("Loaf\n\n500 g plain flour\n1 pint milk\n").transcription.formula,
                "imperial pint"));
    CHECK_FALSE(holds(transcribed("Loaf\n\n4 cups flour\n1 pint milk\n").codes, "amount-doubtful"));
}

TEST_CASE("transcribe: what frames a recipe is no ingredient") {
    const auto result = transcribed(
        "---\ntitle: \"Quay rolls\"\ndate: 2021-04-02\ntags: [bread, salt]\nservings: 9 rolls\n---\n\n"
        "![rolls](/quay.jpg)\nSoft and salty, from the quay.\n\n- \xE2\x8F\xB2\xEF\xB8\x8F Prep time: 30 "
        "min\n\n"
        "## Ingredients\n- 500 g flour\n- 300 g water\n- Salt: 2 tsp\n- Date: 1 cup, chopped\n\n"
        "Per serving:\nCalories 180  Total Fat 2 g\nSugar 3 g\n");
    CHECK(result.transcription.name == "Quay rolls");
    CHECK(holds(result.transcription.formula, "makes: 9 rolls"));
    CHECK(result.transcription.lines.size() == 4);
    CHECK(result.transcription.sure == 4);
}

TEST_CASE("transcribe: keys of TOML, buttons of a page, sums and figures are no ingredients") {
    const auto result = transcribed(
        "+++\ntitle = \"Fog rolls\"\ndate = 2022-05-14\n[extra]\nserves = 3\n+++\nPrint Recipe\n\n"
        "Made with 900 g of flour, these keep a week\n\nIngredients\n1x 2x 3x\n500 g flour\n300 g water\n"
        "Fat 20 g\nTotal dough weight 820 g\nWater temperature: 24 C\n");
    CHECK(result.transcription.name == "Fog rolls");
    REQUIRE(result.transcription.lines.size() == 3);
    CHECK(result.transcription.lines[2].role == "dough"); // fat, where no table of nutrition is
}

TEST_CASE("transcribe: what stands behind plus may have a purpose of its own") {
    const auto roles = [](const std::string& line) {
        std::string text;
        for (const IngredientLine& read :
             transcribed("Loaf\n\n500 g flour\n300 g water\n" + line).transcription.lines) {
            text += read.role == "dough" ? "" : read.key + " ";
        }
        return text;
    };
    CHECK(roles("2 eggs plus 1 yolk for brushing\n") == "egg yolk ");
    CHECK(roles("1 yolk + 1 tbsp milk for brushing\n") == "egg yolk milk ");
    CHECK(roles("2 tbsp butter + 1 tbsp honey for brushing\n") == "butter honey ");
    CHECK(roles("60 g sugar + 20 g butter for greasing\n") == "butter ");
}

TEST_CASE("transcribe: a part of what is listed is not counted twice") {
    const auto result =
        transcribed("500 g flour\n300 g water\n7 g instant yeast dissolved in 1/4 cup of the water\n");
    CHECK(result.transcription.lines.size() == 3);
}

TEST_CASE("transcribe: groups of a wiki's definitions, and a recipe that a mail quotes") {
    const auto wiki = transcribed(";Dough\n:500 g [[flour]]\n:300 ml [[water]]\n\n;Glaze\n:1 [[egg yolk]]\n");
    CHECK(wiki.transcription.lines.at(0).key == "all-purpose flour");
    CHECK(wiki.transcription.lines.at(2).role == "brushing");
    const auto mail =
        transcribed("From: mate\n\nit goes:\n\n> 4 cups flour\n> 1 cup water\n>\n> Mix, bake 1 hour.\n");
    CHECK(mail.transcription.lines.size() == 2);
}

TEST_CASE("transcribe: a mail's head, its rules and its signature are no ingredients") {
    const auto result =
        transcribed("From: the galley\nDate: Mon, 3 Apr 1995 19:02:11\n\n======  Galley Recipes  ======\n\n"
                    "Title: DECK BREAD\nServings: 12\nPreparation: 0:25\n\nQty  Unit  Ingredient\n"
                    "  6 c  Flour; up to 7\n       -if the day is damp\n  2 c  Water\n  1 lg Egg white\n"
                    "         slightly beaten\n\nMix flour and water. Brush with egg white.\n--\nThe Cook, 2 "
                    "cups of salt\n");
    const auto& lines = result.transcription.lines;
    CHECK(result.transcription.name == "DECK BREAD");
    REQUIRE(lines.size() == 3);
    CHECK(testing::near(lines[0].number.value_or(0.0), 6.5, 1e-12, 0.0)); // the middle of 6 and 7
    CHECK(lines[1].key == "water");
    CHECK(lines[2].role == "brushing");
    CHECK(!lines[2].is_sure);
}

TEST_CASE("transcribe: only whole packages are multiplied by what stands behind them") {
    CHECK(testing::near(number_of("2 14 oz cans milk"), 28.0, 1e-12, 0.0));
    CHECK(testing::near(number_of("1.22 3 oz flour"), 1.22, 1e-12, 0.0));
    CHECK(testing::near(number_of("40 3 oz flour"), 40.0, 1e-12, 0.0));
    CHECK(testing::near(number_of("40 x 3 oz flour"), 120.0, 1e-12, 0.0));
}

TEST_CASE("transcribe: a row keeps the words that it was written in") {
    const auto leaders =
        transcribed("Dough:\nFlour ....... 500 g\nWater ....... 300 g\nSalt ........ ½ tsp\n");
    REQUIRE(leaders.transcription.lines.size() == 3);
    CHECK(leaders.transcription.lines[0].text == "Flour ....... 500 g");
    CHECK(leaders.transcription.lines[2].text == "Salt ........ ½ tsp");
    CHECK(leaders.transcription.lines[2].unit == "tsp");
    const auto barred =
        transcribed("| Ingredient | Amount |\n|---|---|\n| Flour | 500 g |\n| Water | 300 g |\n");
    REQUIRE(barred.transcription.lines.size() == 2);
    CHECK(barred.transcription.lines[0].text == "Flour | 500 g");
    CHECK(barred.transcription.lines[0].place.text == "Flour | 500 g");
}

TEST_CASE("transcribe: the title stands above what a recipe makes, and what is sold by the bag is no list") {
    const auto result =
        transcribed("Relief store, leaflet 4\n\nRolled oats        42 oz can\nDry milk           4 lb box\n\n"
                    "OAT BREAD\nMakes 2 loaves\n\n2 cups rolled oats\n3 cups flour\n2 cups water\n");
    CHECK(result.transcription.name == "OAT BREAD");
    CHECK(result.transcription.lines.size() == 3);
}

TEST_CASE("transcribe: a thing that the directions only strew or fill with is kept apart") {
    const std::string list = "500 g flour\n300 g water\n2 tbsp pearl sugar\n200 g plum jam\n\n";
    const auto apart =
        transcribed(list + "Mix all but the jam. Strew with pearl sugar, fill with the jam.\n");
    CHECK(apart.transcription.lines.at(2).role == "topping");
    CHECK(apart.transcription.lines.at(3).role == "filling");
    const auto mixed =
        transcribed(list + "Knead in the jam and the pearl sugar. Strew pearl sugar on top.\n");
    CHECK(mixed.transcription.lines.at(2).role == "dough");
    CHECK(mixed.transcription.lines.at(3).role == "dough");
}

TEST_CASE("transcribe: a group whose first line is for the bath is set apart with a warning") {
    const auto result = transcribed("Rings\n\nIngredients\n500 g flour\n280 g water\n\nWater:\n3 l water for "
                                    "boiling\n1 tsp baking soda\n");
    CHECK(result.transcription.lines.at(3).role == "bath");
    CHECK(!result.transcription.lines.at(3).is_sure);
}

TEST_CASE("transcribe: words cut at a margin, amounts behind their names, and parts of what was named") {
    const auto result =
        transcribed("QUAY CAKES.\n\nDissolve half a cake of yeast in one-\nhalf cup of luke-\n"
                    "warm water with a\nspoonful of the flour. Add\nsugar, two table-\nspoonfuls, "
                    "and work in\nthree cups of flour, or to\nmake a stiff dough. Let it\nrise, and "
                    "use half a pint\nof the water to wash up.\n");
    std::string read;
    for (const IngredientLine& line : result.transcription.lines) {
        read += line.key +
                (line.weight ? " " + std::to_string(std::lround(in_grams(line.weight->likely))) : "") + " " +
                line.role + "\n";
    }
    CHECK(read == "fresh yeast 9 dough\nwater 118 dough\nsugar 25 dough\nall-purpose flour 375 dough\n");
}

TEST_CASE("transcribe: sentences say what goes into the dough and what is only done with a thing") {
    const auto result = transcribed("Sift one quart of flour with a teaspoonful of salt, pour in a pint of "
                                    "milk or two cups of water, and add "
                                    "a little nutmeg. Put the loaves in tins rubbed with lard, brush them "
                                    "with melted butter and strew with "
                                    "a spoonful of sugar. Eat with honey. This makes two pounds of bread.\n");
    const auto role_of = [&](std::string_view key) {
        for (const IngredientLine& line : result.transcription.lines) {
            if (line.key == key) {
                return line.role + (line.weight ? " weighed" : "");
            }
        }
        return std::string("none");
    };
    CHECK(role_of("all-purpose flour") == "dough weighed");
    CHECK(role_of("salt") == "dough weighed");
    CHECK(role_of("milk") == "dough weighed");
    CHECK(role_of("water") == "none"); // the first of two is taken
    CHECK(role_of("nutmeg") == "dough");
    CHECK(role_of("lard") == "greasing");
    CHECK(role_of("butter") == "brushing");
    CHECK(role_of("sugar") == "topping weighed");
    CHECK(role_of("honey") == "serving");
    CHECK(result.transcription.lines.size() == 8);
}

TEST_CASE("transcribe: how much of an unknown whole is no amount of the dough") {
    const auto result = transcribed("Take an ounce of salt to every three pounds of flour, flour to make a "
                                    "stiff dough, about two quarts, and a "
                                    "pint of water. By using half a cup less flour the rolls are softer, and "
                                    "they take a long while to bake.\n");
    double flour_g = 0.0;
    for (const IngredientLine& line : result.transcription.lines) {
        CHECK((line.key != "salt" || !line.weight));
        flour_g += line.key == "all-purpose flour" && line.weight ? in_grams(line.weight->likely) : 0.0;
    }
    CHECK(testing::near(flour_g, 1000.0, 1e-9, 0.0)); // two quarts
}

TEST_CASE("transcribe: a range of percentages is doubtful and weighs nothing by itself") {
    const auto result = transcribed("Flour 100%\nWater 65-70%\nSalt 2%\nInstant yeast 1%\n");
    REQUIRE(result.transcription.lines.size() == 4);
    const IngredientLine& water = result.transcription.lines[1];
    CHECK(water.amount == "67.5%");
    CHECK(!water.weight);
    CHECK(!water.is_sure);
}

TEST_CASE("transcribe: percentages of one ingredient add up, but not to a weight") {
    const auto added = transcribed("Flour 100%\nWater 50%\nWater, warm 15.5%\nSalt 2%\nInstant yeast 1%\n");
    CHECK(added.transcription.formula.find("  water: 65.5%") != std::string::npos);
    CHECK(added.transcription.lines.at(1).is_sure);

    const auto mixed = transcribed("500 g flour\n300 g water\nWater 5%\n10 g salt\n5 g instant yeast\n");
    CHECK(mixed.transcription.formula.find("  water: 300 g") != std::string::npos);
    CHECK(mixed.transcription.formula.find("# water: 5 %  # to fill in: Water 5%") != std::string::npos);
    CHECK(!mixed.transcription.lines.at(2).is_sure);
}

TEST_CASE("recipe text: a formula, broken or not, is none") {
    const Pantry pantry;
    CHECK(is_recipe_text(*source_of("2 cups flour\n1 cup water\n"), pantry));
    CHECK(is_recipe_text(*source_of("Dough:\n500 g flour\n300 g water\n"), pantry));
    CHECK_FALSE(is_recipe_text(*source_of("formula: 1\nname: x\ndough:\n  bread flour: 500 g\n"), pantry));
    CHECK_FALSE(is_recipe_text(*source_of("name: x\ndough:\n  bread flour: 500 g\n"), pantry));
    CHECK_FALSE(is_recipe_text(*source_of("2 cups flour\n", "loaf.yaml"), pantry));
    CHECK_FALSE(is_recipe_text(*source_of("salt 20\xFF g\n"), pantry));
}
