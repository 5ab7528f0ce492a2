// Whole recipes, written by somebody who had not seen the reader, against the weights that an experienced
// baker would accept for each line. A row of an `.expected` file: ingredient, least and most grams ("-"
// where nothing is to be weighed), "dough" or "aside", and the line, with tabs between. Weights in a text
// within 1 %, household measures by their usual spread (common practice, no source).
#include "support/formulas.hpp"
#include "support/recipes.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <sstream>
#include <string>
#include <vector>

namespace leavenwright {
namespace {

struct ExpectedRange {
    std::string ingredient;
    std::string least_g;
    std::string most_g;
    std::string place;
    std::string text;
};

std::vector<ExpectedRange> ranges_of(const std::string& file) {
    std::istringstream rows(testing::project_file(file));
    std::vector<ExpectedRange> expected;
    for (std::string row; std::getline(rows, row);) {
        std::istringstream cells(row);
        ExpectedRange range;
        std::getline(cells, range.ingredient, '\t');
        std::getline(cells, range.least_g, '\t');
        std::getline(cells, range.most_g, '\t');
        std::getline(cells, range.place, '\t');
        std::getline(cells, range.text);
        REQUIRE_MESSAGE(!range.text.empty(), row);
        expected.push_back(std::move(range));
    }
    return expected;
}

bool is_aside(const IngredientLine& line) {
    return !is_in_dough(line.role);
}

// Whether the line weighs what it may; of what is kept apart only a weight that was given counts.
bool weighs_right(const IngredientLine& line, const ExpectedRange& expected) {
    constexpr double rounding = 0.015;
    if (expected.least_g == "-") {
        return !line.weight || is_aside(line) || line.unit == "pinch" || line.unit == "dash" ||
               line.unit == "splash";
    }
    const double weight_g = line.weight ? in_grams(line.weight->likely) : 0.0;
    return weight_g >= std::stod(expected.least_g) * (1.0 - rounding) &&
           weight_g <= std::stod(expected.most_g) * (1.0 + rounding);
}

struct RangeScore {
    int rows = 0;
    int right = 0;
    int wrong_and_sure = 0;
};

void score_ranges(const std::filesystem::path& table, RangeScore& score) {
    const Pantry pantry;
    const Transcription transcription = testing::transcription_beside(table, pantry);
    std::vector<const IngredientLine*> open;
    for (const IngredientLine& line : transcription.lines) {
        open.push_back(&line);
    }
    for (const ExpectedRange& expected : ranges_of(table.string())) {
        const Ingredient* ingredient = pantry.find(expected.ingredient).ingredient;
        const auto is_named = [&](const IngredientLine* line) {
            const bool is_kind = line->name.find(expected.ingredient) != std::string::npos; // coarse salt
            return is_kind || (ingredient != nullptr && line->ingredient == ingredient);
        };
        auto found = std::find_if(open.begin(), open.end(), [&](const IngredientLine* line) {
            return is_named(line) && is_aside(*line) == (expected.place == "aside") &&
                   weighs_right(*line, expected);
        });
        const bool is_right = found != open.end();
        if (!is_right) {
            found = std::find_if(open.begin(), open.end(), is_named);
        }
        const bool is_wrong = !is_right && found != open.end() && (*found)->weight && (*found)->is_sure;
        score.rows += 1;
        score.right += is_right;
        score.wrong_and_sure += is_wrong;
        if (!is_right) {
            const std::string how = found == open.end() ? "no line"
                                    : is_wrong          ? "wrong and sure"
                                                        : "doubtful";
            MESSAGE(table.stem().string()
                    << ": " << expected.ingredient << ", " << how << ": " << expected.text);
        }
        if (found != open.end()) {
            open.erase(found);
        }
    }
}

} // namespace

TEST_CASE("recipes by the weights that a baker accepts") {
    RangeScore score;
    for (const std::filesystem::path& table : testing::expectations_in("tests/published/recipes_by_range")) {
        score_ranges(table, score);
    }
    MESSAGE(score.right << " of " << score.rows << " rows right; wrong without a warning "
                        << score.wrong_and_sure);
    CHECK(score.rows >= 720);
    // What is missed are mostly things that only the directions name.
    CHECK(score.right >= 0.91 * score.rows);
    // dried egg by the spoon; two dried fruits as one; more for rolling
    CHECK(score.wrong_and_sure <= 3);
}

} // namespace leavenwright
