// A line of a printed table as cells, by wide gaps, bars, tabs and dotted leaders. Private to the
// transcribe folder.
#pragma once

#include "source/source_text.hpp"

#include <cstddef>
#include <string_view>
#include <vector>

namespace leavenwright {

struct TableCell {
    std::string_view text; // without the gaps and leaders around it
    std::size_t begin = 0; // column, in code points
    std::size_t end = 0;
};

/// Whether a line is a row or a head of a wiki's table: "| Salt || 18 g", "! Ingredient !! Weight".
bool is_wiki_row(std::string_view line);
/// The lines of a row in a wiki's table that has a cell a line, from the first: down to the rule below it; 0
/// where the first is no such cell. `mark` begins each: '!' of a head, '|' of other rows.
std::size_t stacked_lines(const SourceText& source, std::size_t first, char mark);
/// Their cells, in order; what stands before a bar ("style=... |") is left out.
std::vector<TableCell> stacked_cells(const SourceText& source, std::size_t first, std::size_t lines);
/// The cells of a line, in order; one that bars keep apart may be empty. Linear time.
std::vector<TableCell> table_cells(std::string_view line);
/// The cells of a line that tabs keep apart, empty ones too. Linear time.
std::vector<TableCell> tabbed_cells(std::string_view line);

/// Whether dots lead from a name to its amount: "Salt . . . . 1 t.", "Sugar..... 10 oz".
bool has_leader(std::string_view line);

} // namespace leavenwright
