// A table of texts in columns, for a terminal. Widths are display columns. Private to the
// render folder.
#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace leavenwright {

class TextTable {
public:
    /// The first column is set left and takes what the others leave of `columns`; the
    /// others are set right.
    explicit TextTable(std::size_t columns, std::string indent = "  ");

    void add_row(std::vector<std::string> cells);
    /// A rule under the numbers of a column that is summed below it.
    void add_rule(std::size_t column);

    std::string text() const;

private:
    struct Row {
        std::vector<std::string> cells;
        bool is_rule = false;
        std::size_t rule_column = 0;
    };
    void append_row(std::string& out, const Row& row, const std::vector<std::size_t>& widths) const;

    std::size_t columns_;
    std::string indent_;
    std::vector<Row> rows_;
};

} // namespace leavenwright
