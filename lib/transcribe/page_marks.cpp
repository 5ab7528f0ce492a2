#include "transcribe/page_marks.hpp"

#include "transcribe/kitchen_amount.hpp"
#include "transcribe/line_markup.hpp"
#include "transcribe/line_tokens.hpp"

#include <algorithm>
#include <memory>
#include <string>
#include <vector>

namespace leavenwright {
namespace {

bool has_wiki_table(const SourceText& source) {
    bool is_open = false;
    for (std::size_t number = 1; number <= source.line_count(); ++number) {
        is_open = is_open || source.line(number).starts_with("{|");
        if (is_open && source.line(number).starts_with("|}")) {
            return true;
        }
    }
    return false;
}

// "! colspan="4" | Dough" is "! Dough".
std::string_view without_style(std::string_view cell) {
    const std::size_t bar = cell.find('|');
    const std::size_t equals = cell.find("=\"");
    return bar != std::string_view::npos && equals < bar ? cell.substr(bar + 1) : cell;
}

std::string plain_wiki_line(std::string_view line) {
    if (line.starts_with("|+")) { // a caption
        const std::string caption = without_markup(line.substr(2));
        return caption.find_first_of(' ', 1) == std::string::npos ? "'''" + caption + "'''" : std::string();
    }
    const bool is_mark = line.starts_with("{|") || line.starts_with("|-") || line.starts_with("|}");
    const bool is_navigation = line.starts_with("{{") && line.find("}} | ") != std::string_view::npos;
    if (is_mark || is_navigation || line.starts_with("__")) { // "__NOTOC__"
        return is_mark ? std::string(line) : std::string();
    }
    if (line.starts_with("# ")) {
        return "- " + without_markup(line.substr(2));
    }
    std::string plain = without_markup(line);
    if (plain.starts_with("! Total !!")) { // the last row, in bold
        plain.front() = '|';
    }
    const std::string_view text = plain;
    const bool is_cell = text.starts_with('!') || text.starts_with('|');
    const bool is_row =
        text.find("||") != std::string_view::npos || text.find("!!") != std::string_view::npos;
    return is_cell && !is_row ? plain.substr(0, 1) + std::string(without_style(text.substr(1))) : plain;
}

// "Flour______pounds__  20", and no form that somebody filled in.
bool has_line_for_leader(std::string_view line) {
    constexpr std::string_view leader = "____";
    const std::size_t at = line.find(leader);
    if (at == std::string_view::npos || at == 0 || line[at - 1] == ' ' || line[at - 1] == ':') {
        return false;
    }
    const std::size_t figure = line.find_first_of("0123456789\xC2\xE2", at);
    return figure != std::string_view::npos && line.find('_', figure) == std::string_view::npos;
}

// Dots in place of underscores: places in the text stay as they are.
SourceHandle with_leaders(const SourceText& source) {
    std::string text(source.text());
    for (std::size_t number = 1; number <= source.line_count(); ++number) {
        const std::string_view line = source.line(number);
        if (!has_line_for_leader(line)) {
            continue;
        }
        const std::size_t begin = source.line_start(number);
        for (std::size_t at = 0; at < line.size(); ++at) {
            const bool is_run = line[at] == '_' && ((at > 0 && line[at - 1] == '_') ||
                                                    (at + 1 < line.size() && line[at + 1] == '_'));
            text[begin + at] = is_run ? '.' : line[at];
        }
    }
    return std::make_shared<SourceText>(source.name(), std::move(text));
}

// Where the last column of a line begins, if it is the same amount in metric: "1/2 cup    warm water    125
// mL".
std::size_t begin_of_metric(std::string_view line) {
    constexpr std::size_t longest = 120;
    const std::size_t end = line.find_last_not_of(" \t\r");
    const std::size_t gap = line.size() <= longest ? line.rfind("  ", end) : std::string_view::npos;
    if (end == std::string_view::npos || gap == std::string_view::npos || gap + 2 > end) {
        return 0;
    }
    const std::size_t begin = gap + 2;
    const auto kitchen = read_kitchen_amount(line_tokens(plain_line(line.substr(0, gap))));
    const auto metric_tokens = line_tokens(plain_line(line.substr(begin, end + 1 - begin)));
    const auto metric = read_kitchen_amount(metric_tokens);
    const bool is_kitchen = kitchen && !kitchen->measure.is_metric && kitchen->measure.is_volume();
    const bool is_metric = metric && metric->measure.is_metric && metric->length == metric_tokens.size();
    return is_kitchen && is_metric ? begin : 0;
}

// Such columns in brackets, as another measure of the same: lines keep their lengths.
SourceHandle with_metric_in_brackets(const SourceText& source, const std::vector<std::size_t>& begins) {
    std::string text(source.text());
    for (std::size_t number = 1; number <= begins.size(); ++number) {
        const std::size_t begin = begins[number - 1];
        if (begin == 0) {
            continue;
        }
        const std::string_view line = source.line(number);
        const std::size_t end = line.find_last_not_of(" \t\r") + 1;
        const std::string cell = "(" + std::string(line.substr(begin, end - begin)) + ")";
        text.replace(source.line_start(number) + begin - 2, cell.size(), cell);
    }
    return std::make_shared<SourceText>(source.name(), std::move(text));
}

// None where fewer than a few lines have such a column.
std::vector<std::size_t> metric_columns(const SourceText& source) {
    constexpr std::ptrdiff_t fewest = 4;
    std::vector<std::size_t> begins;
    for (std::size_t number = 1; number <= source.line_count(); ++number) {
        begins.push_back(begin_of_metric(source.line(number)));
    }
    const bool is_column = std::ssize(begins) - std::count(begins.begin(), begins.end(), 0U) >= fewest;
    return is_column ? begins : std::vector<std::size_t>();
}

SourceHandle without_wiki_marks(const SourceText& source) {
    std::string text;
    for (std::size_t number = 1; number <= source.line_count(); ++number) {
        text += plain_wiki_line(source.line(number));
        text += '\n';
    }
    return std::make_shared<SourceText>(source.name(), std::move(text));
}

} // namespace

SourceHandle without_page_markup(const SourceHandle& source) {
    if (has_wiki_table(*source)) {
        return without_wiki_marks(*source);
    }
    if (const auto columns = metric_columns(*source); !columns.empty()) {
        return with_metric_in_brackets(*source, columns);
    }
    const bool may_have_leaders = source->text().find("____") != std::string_view::npos;
    return may_have_leaders ? with_leaders(*source) : source;
}

} // namespace leavenwright
