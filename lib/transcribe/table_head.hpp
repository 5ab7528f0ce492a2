// The head of a printed table: what its columns hold. Private to the transcribe folder.
#pragma once

#include "source/source_text.hpp"
#include "transcribe/table_cells.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace leavenwright {

struct TableColumn {
    enum class Kind { name, weight, measure, batch, ignored, directions };

    Kind kind = Kind::name;
    std::string unit;  // of its numbers: "lb", "oz", "g", "cup"; empty where each cell says its own
    std::string role;  // "sponge", of a column with its amounts; "total" of one that adds them up
    std::string batch; // what is made of it: "50 portions"; empty where the table has one batch
    std::size_t begin = 0;
    std::size_t end = 0;

    bool is_amount() const { return kind == Kind::weight || kind == Kind::measure || kind == Kind::batch; }
};

struct TableHead {
    std::vector<TableColumn> columns; // in order; the first holds the names
    std::vector<std::string> batches; // all that the head names; the first is the one to take
    std::string title;                // "POOLISH" over the names; empty where it says what they are
    std::size_t end_line = 0;         // the first line behind the head
    bool is_barred = false;           // columns go by their bars, not by their places
    bool is_tabbed = false;           // by their tabs
    bool has_stage_cells = false;     // a cell before each name says which stage it is of

    /// Whether a cell goes to a column by its number, not by where it stands.
    bool is_stacked = false; // a cell a line, as in a wiki
    bool is_counted() const { return is_barred || is_tabbed; }
    /// Whether its columns are stages of one dough.
    bool has_roles() const;
    /// The column that a cell stands in.
    std::size_t column_of(const TableCell& cell, std::size_t index) const;
};

/// The head that begins at a line (from 1); nothing where none does.
std::optional<TableHead> read_table_head(const SourceText& source, std::size_t first_line);

/// Whether words say for how many an amount is: "50 portions", "one loaf", "for 100 men".
bool is_batch_label(std::string_view text);

/// "1.5-lb loaf          2-lb loaf", "1 pound    1 1/2 pounds": the labels over two columns or more; none
/// where a cell is no label.
std::vector<std::string> batch_heads(std::string_view line);

/// "SMALL LOAF (1 LB)", "For 2 loaves:", over a list: how much it makes, folded; empty where a line says
/// anything else.
std::string batch_heading(std::string_view line);

/// "LIGHT RYE (2 lb. loaf)": such words in brackets, behind others.
bool names_batch_in_brackets(std::string_view text);

} // namespace leavenwright
