// Ingredients in a printed table: names in the first column, weights, measures or batches in others, and
// directions in the last, perhaps. Private to the transcribe folder.
#pragma once

#include "pantry/pantry.hpp"
#include "transcribe/recipe_text.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

struct RecipeTable {
    std::vector<RecipeLine> lines;
    std::vector<std::string> directions; // the lines of their column
    std::vector<std::string> batches;    // "50 portions", "100 portions"; the first was taken
    std::size_t end_line = 0;            // the first line behind the table, from 1
};

/// The table that begins at a line (from 1), heads of groups in it included; nothing where none does. Linear
/// in the table.
std::optional<RecipeTable> read_table(const SourceHandle& source, std::size_t first_line);

struct LeaderRow {
    std::size_t begin = 0; // in bytes of the line
    std::size_t length = 0;
    std::string words; // with the amount first
};

/// "Salt . . . . . 1 t.": names with dots that lead to their amounts, one to a line or side by side; none
/// where the line is another. `unit` is the measure of the row above, for "do." below it; the row's own
/// takes its place.
std::vector<LeaderRow> leader_rows(std::string_view line, std::string& unit);

} // namespace leavenwright
