#include "render/text_table.hpp"

#include "source/unicode.hpp"

#include <algorithm>

namespace leavenwright {
namespace {

constexpr std::size_t gap = 2;

constexpr std::size_t rule_width = 8;

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
    out.reserve(rows_.size() * (columns_ + 1));
    for (const Row& row : rows_) {
        append_row(out, row, widths);
    }
    return out;
}

void TextTable::append_row(std::string& out, const Row& row, const std::vector<std::size_t>& widths) const {
    out += indent_;
    for (std::size_t i = 0; i < widths.size(); ++i) {
        if (i > 0) {
            out.append(gap, ' ');
        }
        if (row.is_rule) {
            const std::size_t dashes = i == row.rule_column ? std::min(widths[i], rule_width) : 0;
            out.append(widths[i] - dashes, ' ').append(dashes, '-');
            continue;
        }
        const std::string_view whole =
            i < row.cells.size() ? std::string_view(row.cells[i]) : std::string_view();
        const bool is_cut = display_width(whole) > widths[i];
        const std::string cell = printable(whole, is_cut ? widths[i] - 1 : widths[i]);
        const std::size_t fill = widths[i] - std::min(widths[i], display_width(cell));
        if (i == 0) {
            out.append(cell).append(fill, ' ');
        } else {
            out.append(fill, ' ').append(cell);
        }
    }
    out.erase(out.find_last_not_of(' ') + 1);
    out += '\n';
}

} // namespace leavenwright
