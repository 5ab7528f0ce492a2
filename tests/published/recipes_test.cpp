// Whole recipes in many people's styles against what each line means by hand: which lines are ingredients,
// their place, and amount, mass and name of each. The rows of a `.expected` file are those of
// ingredient_lines.txt.
#include "support/formulas.hpp"
#include "support/near.hpp"
#include "support/recipes.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <sstream>
#include <string>
#include <vector>

namespace leavenwright {
namespace {

struct ExpectedLine {
    std::string text;
    std::string ingredient;
    std::string amount;
    std::string unit;
    std::string grams;
    std::string role = "dough";
};

std::string trimmed_cell(std::string text) {
    text.erase(0, std::min(text.find_first_not_of(" |"), text.size()));
    text.erase(text.find_last_not_of(" |") + 1);
    return text;
}

std::vector<ExpectedLine> rows_of(const std::string& file) {
    std::istringstream rows(testing::project_file(file));
    std::vector<ExpectedLine> lines;
    for (std::string row; std::getline(rows, row);) {
        std::vector<std::string> cells;
        std::istringstream parts(row);
        for (std::string cell; std::getline(parts, cell, '|');) {
            cells.push_back(trimmed_cell(cell));
        }
        REQUIRE_MESSAGE(cells.size() >= 4, row);
        cells.resize(6);
        lines.push_back(
            {cells[0], cells[1], cells[2], cells[3], cells[4], cells[5].empty() ? "dough" : cells[5]});
    }
    return lines;
}

// 5 %: ounces and spoons are printed rounded.
bool is_near(const std::optional<double>& actual, const std::string& expected, double relative) {
    return expected.empty() ? !actual : actual && testing::near(*actual, std::stod(expected), relative, 1e-3);
}

bool is_right(const IngredientLine& line, const ExpectedLine& expected) {
    const auto grams = line.weight ? std::optional(in_grams(line.weight->likely)) : std::nullopt;
    return (line.key.empty() ? line.name : line.key) == expected.ingredient && line.unit == expected.unit &&
           line.role == expected.role && is_near(line.number, expected.amount, 1e-5) &&
           is_near(grams, expected.grams, 0.05);
}

struct Score {
    int lines = 0;
    int right = 0;
    int wrong_and_sure = 0;
};

void score_recipe(const std::filesystem::path& table, Score& score) {
    const Pantry pantry;
    const Transcription transcription = testing::transcription_beside(table, pantry);
    std::vector<const IngredientLine*> open;
    for (const IngredientLine& line : transcription.lines) {
        open.push_back(&line);
    }
    for (const ExpectedLine& expected : rows_of(table.string())) {
        const auto found = std::find_if(open.begin(), open.end(), [&](const IngredientLine* line) {
            return trimmed_cell(line->text).starts_with(expected.text) ||
                   expected.text.ends_with(trimmed_cell(line->text));
        });
        const bool fits = found != open.end() && is_right(**found, expected);
        score.lines += 1;
        score.right += fits;
        score.wrong_and_sure += found != open.end() && !fits && (*found)->is_sure;
        if (!fits) {
            MESSAGE(table.stem().string()
                    << ": " << expected.text << " -> "
                    << (found == open.end() ? "no line"
                                            : (*found)->key + ", " + (*found)->unit + ", " + (*found)->role));
        }
        if (found != open.end()) {
            open.erase(found);
        }
    }
}

Score score_of(const std::string& folder) {
    Score score;
    for (const std::filesystem::path& table : testing::expectations_in(folder)) {
        score_recipe(table, score);
    }
    MESSAGE(folder << ": " << score.right << " of " << score.lines << " lines right; wrong without a warning "
                   << score.wrong_and_sure);
    return score;
}

} // namespace

TEST_CASE("recipes in many styles: every line's place, name, amount and mass as by hand") {
    const Score score = score_of("tests/published/recipes");
    CHECK(score.lines >= 130);
    CHECK(score.right >= 0.97 * score.lines);
    CHECK(score.wrong_and_sure <= 1); // mace weighs less than nutmeg, whose figure the pantry lends it
}

TEST_CASE("recipes in many styles, read after the rules were written") {
    const Score score = score_of("tests/published/recipes_held_out");
    CHECK(score.lines >= 65);
    CHECK(score.right >= 0.95 * score.lines);
    CHECK(score.wrong_and_sure == 0);
}

} // namespace leavenwright
