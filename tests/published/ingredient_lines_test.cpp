// Ingredient lines in many styles against what each means by hand: amount and mass, both. Prints precision
// and recall for the lines that rules were written with and for those that were held out.
#include "support/formulas.hpp"
#include "support/near.hpp"
#include "transcribe/ingredient_line.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <optional>
#include <sstream>
#include <string>
#include <vector>

namespace leavenwright {
namespace {

struct ExpectedLine {
    std::string text;
    std::string ingredient;
    std::optional<double> amount;
    std::string unit;
    std::optional<double> grams;
    std::string role = "dough";
    bool is_held_out = false;
};

std::string trimmed_text(std::string text) {
    text.erase(0, std::min(text.find_first_not_of(' '), text.size()));
    const std::size_t end = text.find_last_not_of(' ');
    text.erase(end == std::string::npos ? 0 : end + 1);
    return text;
}

std::vector<ExpectedLine> expected_lines() {
    std::istringstream file(testing::project_file("tests/published/ingredient_lines.txt"));
    std::vector<ExpectedLine> lines;
    bool is_held_out = false;
    for (std::string row; std::getline(file, row);) {
        is_held_out = is_held_out || row == "held out";
        if (row.empty() || row.front() == '#' || row == "held out") {
            continue;
        }
        std::vector<std::string> cells;
        // a row of a table is a text with bars of its own
        std::size_t from = 0;
        if (row.starts_with("|")) {
            from = row.rfind("| bread flour") - 1;
            cells.push_back(row.substr(0, from));
            from = row.find('|', from) + 1;
        }
        for (std::size_t end = row.find('|', from); from <= row.size(); end = row.find('|', from)) {
            end = std::min(end, row.size());
            cells.push_back(trimmed_text(row.substr(from, end - from)));
            from = end + 1;
        }
        REQUIRE_MESSAGE(cells.size() >= 5, row);
        ExpectedLine line;
        line.text = cells[0];
        line.ingredient = cells[1];
        line.unit = cells[3];
        line.is_held_out = is_held_out;
        line.amount = cells[2].empty() ? std::nullopt : std::optional(std::stod(cells[2]));
        line.grams = cells[4].empty() ? std::nullopt : std::optional(std::stod(cells[4]));
        line.role = cells.size() > 5 ? cells[5] : "dough";
        lines.push_back(line);
    }
    return lines;
}

IngredientLine as_read(const std::string& text) {
    const auto source = std::make_shared<SourceText>("line", text);
    const Pantry pantry;
    Diagnostics diagnostics;
    return read_ingredient_line({source, {0, text.size()}, source->text()}, pantry, "dough", diagnostics)
        .front();
}

// 2 %: the last digits that cups and spoons are printed with.
bool is_near(const std::optional<double>& actual, const std::optional<double>& expected, double relative) {
    if (!actual || !expected) {
        return actual.has_value() == expected.has_value();
    }
    return testing::near(*actual, *expected, relative, 1e-3);
}

struct Score {
    int lines = 0;
    int amount = 0;
    int unit = 0;
    int ingredient = 0;
    int whole = 0;
    int amounts_given = 0; // for precision: how many were claimed, and how many of them are right
    int amounts_claimed = 0;
    int amounts_right = 0;
    int wrong_and_sure = 0;
};

Score score_of(bool held_out) {
    Score score;
    for (const ExpectedLine& expected : expected_lines()) {
        if (expected.is_held_out != held_out) {
            continue;
        }
        const IngredientLine line = as_read(expected.text);
        std::optional<double> grams;
        if (line.weight) {
            grams = in_grams(line.weight->likely);
        }
        const bool is_amount_right = is_near(line.number, expected.amount, 1e-5);
        const bool is_unit_right = line.unit == expected.unit;
        const bool is_name_right = line.key == expected.ingredient;
        const bool is_mass_right = is_near(grams, expected.grams, 0.02);
        const bool is_right =
            is_amount_right && is_unit_right && is_name_right && is_mass_right && line.role == expected.role;
        score.lines += 1;
        score.amount += is_amount_right;
        score.unit += is_unit_right;
        score.ingredient += is_name_right;
        score.whole += is_right;
        score.amounts_given += expected.amount.has_value();
        score.amounts_claimed += line.number.has_value();
        score.amounts_right += line.number.has_value() && expected.amount.has_value() && is_amount_right;
        score.wrong_and_sure += line.is_sure && !is_mass_right;
        if (!is_right) {
            MESSAGE(expected.text << " -> " << line.key << ", " << line.number.value_or(-1.0) << " "
                                  << line.unit << ", " << grams.value_or(-1.0) << " g, " << line.role);
        }
    }
    return score;
}

void print(const char* name, const Score& score) {
    MESSAGE(name << ": " << score.whole << " of " << score.lines << " lines right; amount " << score.amount
                 << ", unit " << score.unit << ", ingredient " << score.ingredient << "; amounts: precision "
                 << score.amounts_right << "/" << score.amounts_claimed << ", recall " << score.amounts_right
                 << "/" << score.amounts_given << "; wrong mass without a warning " << score.wrong_and_sure);
}

} // namespace

TEST_CASE("ingredient lines: amount and mass as by hand, the lines that rules were written with") {
    const Score score = score_of(false);
    print("known", score);
    CHECK(score.lines >= 100);
    CHECK(score.whole == score.lines);
    CHECK(score.wrong_and_sure == 0);
}

TEST_CASE("ingredient lines: amount and mass as by hand, the lines that were held out") {
    const Score score = score_of(true);
    print("held out", score);
    CHECK(score.lines >= 50);
    CHECK(score.whole >= 0.95 * score.lines);
    CHECK(score.wrong_and_sure == 0);
}

} // namespace leavenwright
