#include "transcribe/table_cells.hpp"

#include <algorithm>

namespace leavenwright {
namespace {

constexpr std::size_t most_cells = 24;
constexpr std::size_t fewest_dots = 3;  // of a leader
constexpr std::size_t wiki_column = 40; // between the columns of a wiki, which are counted

bool is_gap(char byte) {
    return byte == ' ' || byte == '\t' || byte == '\r';
}

std::size_t code_points(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char byte) {
        return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U;
    }));
}

bool is_digit(char byte) {
    return byte >= '0' && byte <= '9';
}

// Bytes of the separator that begins `text`: a bar, a tab, two blanks, or a leader; 0 where a word begins.
std::size_t separator(std::string_view text) {
    std::size_t length = 0;
    std::size_t dots = 0;
    bool is_wide = false;
    while (length < text.size() && (is_gap(text[length]) || text[length] == '.')) {
        const bool is_decimal = text[length] == '.' && dots == 0 && length > 0 && length + 1 < text.size() &&
                                is_digit(text[length + 1]);
        if (is_decimal) { // "   .95"
            break;
        }
        is_wide = is_wide || text[length] == '\t' ||
                  (is_gap(text[length]) && length > 0 && is_gap(text[length - 1]));
        dots += text[length] == '.' ? 1U : 0U;
        ++length;
    }
    const bool is_spaced_leader = dots > 1 && is_wide; // " . .  " before an amount
    if (dots >= fewest_dots || is_spaced_leader) {
        return length;
    }
    if (dots > 0) { // "oz.   ": the full stop is of the word before it
        return 0;
    }
    return is_wide ? length : 0;
}

std::vector<TableCell> wiki_cells(std::string_view line) {
    std::vector<TableCell> cells;
    for (std::size_t begin = 1; begin <= line.size() && cells.size() < most_cells;) {
        const std::size_t end = std::min({line.find("||", begin), line.find("!!", begin), line.size()});
        std::string_view text = line.substr(begin, end - begin);
        text.remove_prefix(std::min(text.find_first_not_of(" \t\r"), text.size()));
        text = text.substr(0, text.find_last_not_of(" \t\r") + 1);
        const std::size_t column = cells.size() * wiki_column;
        cells.push_back({.text = text, .begin = column, .end = column + code_points(text)});
        begin = end + 2;
    }
    return cells;
}

} // namespace

bool has_leader(std::string_view line) {
    std::size_t dots = 0;
    for (const char byte : line) {
        if (byte == '.') {
            ++dots;
        } else if (!is_gap(byte)) {
            dots = 0;
        }
        if (dots >= fewest_dots) {
            return true;
        }
    }
    return false;
}

// Whether bars behind the first stand in pairs.
static bool has_double_bars_only(std::string_view line) {
    for (std::size_t at = 1; at < line.size(); ++at) {
        if (line[at] != '|') {
            continue;
        }
        if (at + 1 >= line.size() || line[at + 1] != '|') {
            return false;
        }
        ++at;
    }
    return true;
}

bool is_wiki_row(std::string_view line) {
    const std::size_t last = line.find_last_not_of(" \t\r");
    return (line.starts_with('|') || line.starts_with('!')) && last != std::string_view::npos &&
           (line[last] != '|' || has_double_bars_only(line.substr(0, last + 1))) && // the last may be empty
           (line.find("||") != std::string_view::npos || line.find("!!") != std::string_view::npos);
}

std::size_t stacked_lines(const SourceText& source, std::size_t first, char mark) {
    std::size_t number = first;
    while (number <= source.line_count() && number < first + most_cells) {
        const std::string_view line = source.line(number);
        if (!line.starts_with(mark) || line.starts_with("|-") || line.starts_with("|}")) {
            break;
        }
        ++number;
    }
    return number - first;
}

std::vector<TableCell> stacked_cells(const SourceText& source, std::size_t first, std::size_t lines) {
    std::vector<TableCell> cells;
    for (std::size_t number = first; number < first + lines && cells.size() < most_cells; ++number) {
        const std::string_view line = source.line(number);
        for (TableCell cell : is_wiki_row(line)
                                  ? wiki_cells(line)
                                  : std::vector<TableCell>{{.text = line.substr(1), .begin = 0, .end = 0}}) {
            const std::size_t bar = cell.text.rfind('|');
            const bool is_style = bar != std::string_view::npos &&
                                  cell.text.substr(0, bar).find("[[") == std::string_view::npos;
            cell.text.remove_prefix(is_style ? bar + 1 : 0U);
            cell.text.remove_prefix(std::min(cell.text.find_first_not_of(" \t\r"), cell.text.size()));
            cell.text = cell.text.substr(0, cell.text.find_last_not_of(" \t\r") + 1);
            cell.begin = cells.size() * wiki_column;
            cell.end = cell.begin + code_points(cell.text);
            cells.push_back(cell);
        }
    }
    return cells;
}

std::vector<TableCell> table_cells(std::string_view line) {
    if (is_wiki_row(line)) {
        return wiki_cells(line);
    }
    std::vector<TableCell> cells;
    const bool is_barred = line.find('|') != std::string_view::npos;
    std::size_t at = 0;
    std::size_t column = 0;
    const auto skip = [&](std::size_t length) {
        column += code_points(line.substr(at, length));
        at += length;
    };
    const auto gap_at = [&](std::size_t begin) {
        std::size_t length = 0;
        while (begin + length < line.size() && is_gap(line[begin + length])) {
            ++length;
        }
        return length;
    };
    if (is_barred) {
        skip(gap_at(0));
        skip(at < line.size() && line[at] == '|' ? 1U : 0U);
    }
    while (at < line.size() && cells.size() < most_cells) {
        skip(std::max(gap_at(at), separator(line.substr(at))));
        const std::size_t begin = at;
        const std::size_t begin_column = column;
        std::size_t end = at;
        while (end < line.size() && line[end] != '|' && separator(line.substr(end)) == 0) {
            ++end;
        }
        const std::string_view whole = line.substr(begin, end - begin);
        const std::string_view text = whole.substr(0, whole.find_last_not_of(" \t\r") + 1);
        skip(end - begin);
        if (!text.empty() || (is_barred && at < line.size())) {
            cells.push_back({.text = text, .begin = begin_column, .end = begin_column + code_points(text)});
        }
        if (at < line.size() && line[at] != '|') {
            skip(separator(line.substr(at)));
        }
        if (at < line.size() && line[at] == '|') {
            skip(1);
        }
    }
    return cells;
}

std::vector<TableCell> tabbed_cells(std::string_view line) {
    std::vector<TableCell> cells;
    std::size_t column = 0;
    for (std::size_t begin = 0; begin <= line.size() && cells.size() < most_cells;) {
        const std::size_t end = std::min(line.find('\t', begin), line.size());
        std::string_view text = line.substr(begin, end - begin);
        text.remove_prefix(std::min(text.find_first_not_of(" \r"), text.size()));
        text = text.substr(0, text.find_last_not_of(" \r") + 1);
        cells.push_back({.text = text, .begin = column, .end = column + code_points(text)});
        column += code_points(line.substr(begin, end - begin)) + 1;
        begin = end + 1;
    }
    return cells;
}

} // namespace leavenwright
