#include "render/text_table.hpp"

#include "source/unicode.hpp"

#include <algorithm>

namespace leavenwright {
namespace {

constexpr std::size_t gap = 2;

std::string padding(std::size_t width) {
    return std::string(width, ' ');
}

} // namespace

TextTable::TextTable(std::size_t columns, std::string indent)
    : columns_(columns), indent_(std::move(indent)) {}

void TextTable::add_row(std::vector<std::string> cells) {
    rows_.push_back({.cells = std::move(cells), .is_rule = false, .rule_column = 0});
}

void TextTable::add_rule(std::size_t column) {
    rows_.push_back({.cells = {}, .is_rule = true, .rule_column = column});
}

std::string TextTable::text() const {
    std::vector<std::size_t> widths;
    for (const Row& row : rows_) {
        widths.resize(std::max(widths.size(), row.cells.size()), 0);
        for (std::size_t i = 0; i < row.cells.size(); ++i) {
            widths[i] = std::max(widths[i], display_width(row.cells[i]));
        }
    }
    if (widths.empty()) {
        return {};
    }
    std::size_t numbers = indent_.size();
    for (std::size_t i = 1; i < widths.size(); ++i) {
        widths[i] = std::max<std::size_t>(widths[i], 8);
        numbers += gap + widths[i];
    }
    const std::size_t room = columns_ > numbers + 10 ? columns_ - numbers : 10;
    widths[0] = std::clamp<std::size_t>(widths[0], std::min<std::size_t>(room, 28), room);
    std::string out;
    for (const Row& row : rows_) {
        std::string line = indent_;
        for (std::size_t i = 0; i < widths.size(); ++i) {
            std::string cell = i < row.cells.size() ? row.cells[i] : std::string();
            if (row.is_rule) {
                cell = i == row.rule_column ? std::string(std::min<std::size_t>(widths[i], 8), '-')
                                            : std::string();
            }
            cell = printable(cell, widths[i] > 0 && i == 0 && display_width(cell) > widths[i] ? widths[i] - 1
                                                                                              : widths[i]);
            const std::string fill = padding(widths[i] - std::min(widths[i], display_width(cell)));
            line += (i == 0 ? cell + fill : padding(gap) + fill + cell);
        }
        line.erase(line.find_last_not_of(' ') + 1);
        out += line + "\n";
    }
    return out;
}

} // namespace leavenwright
