#include "transcribe/read_table.hpp"
#include "transcribe/table_cells.hpp"
#include "transcribe/table_head.hpp"

#include <doctest/doctest.h>

#include <memory>
#include <string>
#include <vector>

namespace leavenwright {
namespace {

std::vector<std::string> texts_of(std::string_view line) {
    std::vector<std::string> texts;
    for (const TableCell& cell : table_cells(line)) {
        texts.emplace_back(cell.text);
    }
    return texts;
}

RecipeTable table_of(const std::string& text) {
    const auto table = read_table(std::make_shared<SourceText>("pier.txt", text), 1);
    REQUIRE(table.has_value());
    return *table;
}

std::vector<std::string> words_of(const RecipeTable& table) {
    std::vector<std::string> words;
    for (const RecipeLine& line : table.lines) {
        words.push_back(line.words);
    }
    return words;
}

using Texts = std::vector<std::string>;

} // namespace

TEST_CASE("gaps, leaders, tabs and bars part the cells of a line") {
    CHECK(texts_of("Salt       1 oz.   2 tbsp") == Texts{"Salt", "1 oz.", "2 tbsp"});
    CHECK(texts_of("Salt . . . . 1 t.") == Texts{"Salt", "1 t."});
    CHECK(texts_of("Salt......1.5 oz....") == Texts{"Salt", "1.5 oz"});
    CHECK(texts_of("Salt\t1 oz") == Texts{"Salt", "1 oz"});
    CHECK(texts_of("| Salt |  | 1 oz |") == Texts{"Salt", "", "1 oz"});
    CHECK(texts_of("Milk, or milk and water") == Texts{"Milk, or milk and water"});
    CHECK(texts_of("").empty());
    CHECK(texts_of(" .. ").size() <= 1);
}

TEST_CASE("columns of cells count code points") {
    const auto cells = table_cells("½ cup  rye");
    REQUIRE(cells.size() == 2);
    CHECK(cells[1].begin == 7);
    CHECK(cells[1].end == 10);
}

TEST_CASE("labels of batches") {
    CHECK(is_batch_label("50 portions"));
    CHECK(is_batch_label("One loaf."));
    CHECK(is_batch_label("for 100 men"));
    CHECK_FALSE(is_batch_label("50 g"));
    CHECK_FALSE(is_batch_label("portions"));
    CHECK_FALSE(is_batch_label("2 rolls of dough"));
}

TEST_CASE("pounds and ounces of two columns are one weight, dashes none, and percent is not read") {
    const RecipeTable table = table_of("Ingredients          Percent   Pounds   Ounces\n"
                                       "Flour, bread           100        5        8\n"
                                       "Salt                     1.8      -        1.5\n"
                                       "Lard                     2        0        2\n");
    CHECK(words_of(table) == Texts{"5 lb 8 oz Flour, bread", "1.5 oz Salt", "2 oz Lard"});
    CHECK(table.end_line == 5);
}

TEST_CASE("a weight has its measure in brackets, and names go on below") {
    const RecipeTable table = table_of("Ingredients        Weights    Measures\n"
                                       "Flour, wheat,      4 lb       1 gal\n"
                                       "  sifted\n"
                                       "Water                         3 cups\n"
                                       "                              2 tbsp\n");
    CHECK(words_of(table) == Texts{"4 lb (1 gal) Flour, wheat, sifted", "3 cups 2 tbsp Water"});
}

TEST_CASE("the first of several batches is read") {
    const RecipeTable table = table_of("              24 servings            48 servings\n"
                                       "Ingredients   Weight     Measure     Weight      Measure\n"
                                       "Salt          1 oz       2 tbsp      2 oz        4 tbsp\n"
                                       "Water                    1 qt                    2 qt\n");
    CHECK(words_of(table) == Texts{"1 oz (2 tbsp) Salt", "1 qt Water"});
    CHECK(table.batches == Texts{"24 servings", "48 servings"});
}

TEST_CASE("a column of numbers has its measure beside the name, and leaves out what only others have") {
    const RecipeTable table = table_of("                 Plain   Rye\n"
                                       "Water, cups        2      2\n"
                                       "Salt, teaspoons    1      1 1/2\n"
                                       "Flour, cups        6      3\n"
                                       "Rye flour, cups    —      3\n");
    CHECK(words_of(table) == Texts{"2 cups Water", "1 teaspoons Salt", "6 cups Flour"});
    CHECK(table.batches == Texts{"Plain", "Rye"});
}

TEST_CASE("directions beside a table are read down their column") {
    const RecipeTable table = table_of("Ingredients   Weight    Method\n"
                                       "Flour         2 lb      1. Mix all and\n"
                                       "Salt          1 oz      knead well.\n"
                                       "                        2. Let rise 1 hour.\n"
                                       "Bake it well until the whole of the crust is brown.\n");
    CHECK(table.directions == Texts{"1. Mix all and", "knead well.", "2. Let rise 1 hour."});
    CHECK(table.lines.size() == 2);
    CHECK(table.end_line == 5);
}

TEST_CASE("a head in a table gives its role to what stands below") {
    const RecipeTable table = table_of("Ingredients   Weight    Measure\n"
                                       "Flour         2 lb\n"
                                       "Water                   3 cups\n"
                                       "Glaze:\n"
                                       "Milk          2 oz\n");
    REQUIRE(table.lines.size() == 3);
    CHECK(table.lines[1].role == "dough");
    CHECK(table.lines[2].role == "brushing");
}

TEST_CASE("words over a list, or a head without rows, are no table") {
    const auto none = [](const std::string& text) {
        return !read_table(std::make_shared<SourceText>("pier.txt", text), 1).has_value();
    };
    CHECK(none("500 g flour\n300 g water\n"));
    CHECK(none("Ingredients     Directions\nFlour           Mix\nSalt            Knead\n"));
    CHECK(none("Ingredients     Weight\nnothing of the kind stands below this head at all\n"));
    CHECK(none(""));
}

TEST_CASE("leaders turn a name and its amount about") {
    const auto words_of = [](std::string_view line) {
        std::vector<std::string> words;
        std::string unit;
        for (const LeaderRow& row : leader_rows(line, unit)) {
            words.push_back(row.words);
        }
        return words;
    };
    using Words = std::vector<std::string>;
    CHECK(words_of("Salt . . . . 1 t.") == Words{"1 t. Salt"});
    CHECK(words_of("Lard .... 2 oz .... 1/4 cup") == Words{"2 oz (1/4 cup) Lard"});
    CHECK(words_of("Mix ... and wait").empty());
    CHECK(words_of("Salt 1 t.").empty());
    CHECK(words_of("Salt ..... 2 tsp.    Yeast, dry .... 1/2 cake") ==
          Words{"2 tsp. Salt", "1/2 cake Yeast, dry"});
    std::string unit;
    const auto rows = leader_rows("Fat ..... 1 tbsp.    Raisins (if liked) . 1/2 cup", unit);
    REQUIRE(rows.size() == 2);
    CHECK(rows[1].begin == 21);
    CHECK(rows[1].length == 28);
}

} // namespace leavenwright
