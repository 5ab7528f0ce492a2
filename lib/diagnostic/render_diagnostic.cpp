#include "diagnostic/render_diagnostic.hpp"

#include "source/unicode.hpp"
#include "source/wrap_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <vector>

namespace leavenwright {
namespace {

constexpr std::size_t tab_columns = 4;

struct Paint {
    std::string_view error = "";
    std::string_view warning = "";
    std::string_view faint = "";
    std::string_view off = "";
};

Paint paint_for(bool color) {
    if (!color) {
        return {};
    }
    return {.error = "\x1b[1;31m", .warning = "\x1b[1;33m", .faint = "\x1b[2m", .off = "\x1b[0m"};
}

std::string with_tabs_expanded(std::string_view text) {
    std::string result;
    for (const char byte : text) {
        if (byte == '\t') {
            result.append(tab_columns, ' ');
        } else {
            result.push_back(byte);
        }
    }
    return printable(result, std::string::npos / 2);
}

// The part of a long line around the mark, so that the excerpt fits the terminal.
struct Excerpt {
    std::string text;
    std::size_t mark_column = 0;
    std::size_t mark_width = 1;
};

Excerpt excerpt_of(const SourceText& source, SourceSpan span, std::size_t line, std::size_t room) {
    const std::string_view whole = source.line(line);
    const std::size_t begin = std::min(span.offset - source.line_start(line), whole.size());
    const std::size_t length = std::min(span.length, whole.size() - begin);
    constexpr std::size_t context = 240; // bytes either side are plenty for 80 columns
    const std::size_t from = begin > context ? begin - context : 0;
    std::string before = with_tabs_expanded(whole.substr(from, begin - from));
    const std::string marked =
        with_tabs_expanded(whole.substr(begin, std::min<std::size_t>(length, context)));
    const std::string after =
        with_tabs_expanded(whole.substr(begin + std::min<std::size_t>(length, context), context));
    std::size_t before_width = display_width(before);
    const std::size_t most_before = room * 2 / 3;
    const bool is_cut = from > 0 || before_width > most_before;
    while (before_width > most_before) {
        before.erase(0, character_length(before));
        before_width = display_width(before);
    }
    const std::string lead = is_cut ? "\xE2\x80\xA6" : "";
    Excerpt excerpt;
    excerpt.mark_column = display_width(lead) + before_width;
    excerpt.text = printable(lead + before + marked + after, room);
    const std::size_t left = room > excerpt.mark_column ? room - excerpt.mark_column : 1;
    excerpt.mark_width = std::clamp<std::size_t>(display_width(marked), 1, left);
    return excerpt;
}

void append_excerpt(std::string& out, const Diagnostic& item, const DiagnosticStyle& style,
                    const Paint& paint, std::size_t line, std::string_view margin) {
    const std::size_t room = style.columns > margin.size() + 3 ? style.columns - margin.size() - 3 : 20;
    const Excerpt excerpt = excerpt_of(*item.source, item.span, line, room);
    if (excerpt.text.empty()) {
        return;
    }
    const std::string_view mark_paint = item.severity == Severity::error ? paint.error : paint.warning;
    fmt::format_to(std::back_inserter(out), "{}{} |{} {}\n", paint.faint, line, paint.off, excerpt.text);
    fmt::format_to(std::back_inserter(out), "{}{} |{} {}{}{}{}\n", paint.faint, margin, paint.off,
                   std::string(excerpt.mark_column, ' '), mark_paint, std::string(excerpt.mark_width, '^'),
                   paint.off);
}

// A command stays on one line, however long, so that it can be copied.
void append_hint(std::string& out, std::string_view hint, std::string_view advice, std::string_view indent,
                 std::size_t columns) {
    std::string_view begin = advice;
    while (!hint.empty()) {
        const std::size_t end = std::min(hint.find('\n'), hint.size());
        const std::string line = printable(hint.substr(0, end), 2000);
        if (line.starts_with("leavenwright ")) {
            out += std::string(begin) + line + "\n";
        } else {
            out += wrap_text(line, begin, indent, columns);
        }
        begin = indent;
        hint.remove_prefix(std::min(end + 1, hint.size()));
    }
}

void append_diagnostic(std::string& out, const Diagnostic& item, const DiagnosticStyle& style,
                       const Paint& paint) {
    const bool is_error = item.severity == Severity::error;
    std::string place = "leavenwright: ";
    std::string margin;
    std::size_t line = 0;
    if (item.source) {
        const SourcePosition position = item.source->position(item.span.offset);
        line = position.line;
        margin.assign(std::to_string(line).size(), ' ');
        place = fmt::format("{}:{}:{}: ", printable(item.source->name(), 200), line, position.column);
    }
    const std::string head = fmt::format("{}{}{}{}: ", place, is_error ? paint.error : paint.warning,
                                         is_error ? "error" : "warning", paint.off);
    // The first line stays whole, however long: editors and scripts read it.
    out += head + printable(item.message, 4000) + " [" + std::string(name_of(item.code)) + "]\n";
    if (item.source) {
        append_excerpt(out, item, style, paint, line, margin);
    }
    const std::string advice = margin + " = ";
    const std::string indent(advice.size(), ' ');
    if (!item.hint.empty()) {
        append_hint(out, item.hint, advice, indent, style.columns);
    }
    for (const Diagnostic::Note& note : item.notes) {
        const std::size_t note_line = item.source ? item.source->position(note.span.offset).line : 0;
        out +=
            wrap_text(fmt::format("{} on line {}", note.message, note_line), advice, indent, style.columns);
    }
}

} // namespace

std::string render_diagnostics(const Diagnostics& diagnostics, const DiagnosticStyle& style) {
    if (diagnostics.empty()) {
        return {};
    }
    const Paint paint = paint_for(style.color);
    const std::vector<Diagnostic> items = diagnostics.in_order();
    const std::size_t shown = std::min(items.size(), style.most);
    std::string out;
    for (std::size_t i = 0; i < shown; ++i) {
        append_diagnostic(out, items[i], style, paint);
        out += '\n';
    }
    if (items.size() > shown) {
        fmt::format_to(std::back_inserter(out), "... and {} more\n", items.size() - shown);
    }
    const auto is_error = [](const Diagnostic& item) { return item.severity == Severity::error; };
    const auto errors = static_cast<std::size_t>(std::count_if(items.begin(), items.end(), is_error));
    out += counted(errors, "error") + ", " + counted(items.size() - errors, "warning") + "\n";
    return out;
}

} // namespace leavenwright
