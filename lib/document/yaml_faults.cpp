#include "document/yaml_faults.hpp"

#include "source/unicode.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <iterator>
#include <vector>

namespace leavenwright {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

struct Advice {
    std::string_view raw; // part of yaml-cpp's message
    std::string_view message;
    std::string_view hint;
};

constexpr Advice advices[] = {
    {"end of map not found", "this does not belong to the keys above it",
     "begin the line as far in as its neighbours; a text that is not over at the end of its line, or that "
     "goes on behind a quotation mark, needs quotation marks around all of it"},
    {"end of map flow not found", "the brace '{' of this map is not closed, or a comma is missing",
     "put a comma between two entries and '}' at the end"},
    {"end of sequence flow not found", "the bracket '[' of this list is not closed, or a comma is missing",
     "put a comma between two entries and ']' at the end"},
    {"end of sequence not found", "this does not belong to the list above it",
     "begin each line of a list with '- ', all as far in as each other"},
    {"illegal map value", "a second colon stands on this line",
     "put the value on a line of its own, or in quotation marks"},
    {"the referenced anchor is not defined", "YAML aliases are not read", "write the value here in full"},
    {"illegal EOF in scalar", "a quotation mark opens and never closes", "close it, or leave both out"},
    {"block sequence entries", "a list begins where none can stand",
     "put the list on the lines below its key"},
};

// A carriage return that ends no line: an old way to end lines, which YAML reads otherwise than
// people do.
bool report_lone_return(const SourceHandle& source, Diagnostics& diagnostics) {
    const std::string_view text = source->text();
    for (std::size_t at = text.find('\r'); at != std::string_view::npos; at = text.find('\r', at + 1)) {
        if (at + 1 >= text.size() || text[at + 1] != '\n') {
            diagnostics.error(Code::control_character,
                              {.source = source, .span = {at, 1}, .text = text.substr(at, 1)},
                              "a carriage return stands here that ends no line",
                              "save the file with Unix or Windows line ends");
            return true;
        }
    }
    return false;
}

// yaml-cpp drops byte order marks wherever they stand, and its places with them.
bool report_stray_mark(const SourceHandle& source, Diagnostics& diagnostics) {
    const std::size_t at = source->text().find(byte_order_mark, 1);
    if (at == std::string_view::npos) {
        return false;
    }
    diagnostics.error(Code::control_character,
                      {.source = source, .span = {at, byte_order_mark.size()}, .text = byte_order_mark},
                      "a byte order mark stands inside the text",
                      "delete it: it is a character that does not show");
    return true;
}

// The first of each line.
bool report_bytes(const SourceHandle& source, Diagnostics& diagnostics) {
    constexpr int most = 20;
    const std::string_view text = source->text();
    int count = 0;
    for (std::size_t begin = 0; begin < text.size() && count < most;) {
        const auto fault = find_text_fault(text.substr(begin));
        if (!fault) {
            break;
        }
        ++count;
        const std::size_t offset = begin + fault->offset;
        const SourcedText place{.source = source, .span = {offset, 1}, .text = text.substr(offset, 1)};
        if (fault->fault == TextFault::not_utf8) {
            diagnostics.error(Code::text_not_utf8, place,
                              fmt::format("the byte 0x{:02X} is not UTF-8 text", fault->byte),
                              "open the file in an editor and save it as UTF-8");
        } else {
            diagnostics.error(Code::control_character, place,
                              fmt::format("a control character (byte 0x{:02X}) stands here", fault->byte),
                              "delete it; is this file a text?");
        }
        const std::size_t end = text.find('\n', offset);
        begin = end == std::string_view::npos ? text.size() : end + 1;
    }
    return count > 0;
}

// A colon with its value stuck to it: "bread flour:500 g".
std::optional<SourcedText> glued_colon(const SourceHandle& source, std::size_t number) {
    const std::string_view line = source->line(number);
    const std::string_view text = line.substr(0, line.find('#'));
    const std::size_t colon = text.find(':');
    const bool is_plain = text.find_first_of("\"'{[") == std::string_view::npos;
    const bool is_glued = colon != std::string_view::npos && colon + 1 < text.size() &&
                          text[colon + 1] != ' ' && text[colon + 1] != '/' && text[colon + 1] != '\r';
    if (!is_plain || !is_glued || text.find(": ") != std::string_view::npos) {
        return std::nullopt;
    }
    return SourcedText{
        .source = source, .span = {source->line_start(number) + colon, 1}, .text = line.substr(colon, 1)};
}

// Lines of a text that a "|" or ">" behind a key opens, which holds whatever it likes.
class BlockText {
public:
    bool holds(std::string_view line) {
        const std::size_t indent = line.find_first_not_of(' ');
        if (indent == std::string_view::npos || line[indent] == '\r') {
            return is_open_;
        }
        is_open_ = is_open_ && indent > indent_;
        if (is_open_) {
            return true;
        }
        const std::size_t last = line.find_last_not_of(" \r");
        const std::size_t mark = line.find_last_not_of("+-0123456789 \r", last);
        const bool is_mark =
            mark != std::string_view::npos && mark > 1 && (line[mark] == '|' || line[mark] == '>');
        const std::size_t colon = is_mark ? line.find_last_not_of(' ', mark - 1) : std::string_view::npos;
        is_open_ = colon != std::string_view::npos && line[colon] == ':';
        indent_ = indent;
        return false;
    }

private:
    bool is_open_ = false;
    std::size_t indent_ = 0; // of its key
};

bool is_empty(std::string_view line) {
    const std::size_t begin = line.find_first_not_of(" \t\r");
    return begin == std::string_view::npos || line[begin] == '#';
}

// A name with no colon behind it, and what to write: "water 300 g", "dough", "bread flour; 500 g".
std::optional<std::string> with_colon(std::string_view line) {
    constexpr std::string_view wide_colon = "\xEF\xBC\x9A";
    std::string_view text = line.substr(0, line.find(" #"));
    text.remove_prefix(std::min(text.find_first_not_of(' '), text.size()));
    text = text.substr(0, text.find_last_not_of(" \r") + 1);
    if (text.empty() || text.find(':') != std::string_view::npos ||
        std::string_view("-{}[]\"'#").find(text.front()) != std::string_view::npos) {
        return std::nullopt;
    }
    const std::size_t wide = text.find(wide_colon);
    const std::size_t mark = std::min({text.find(';'), text.find('='), wide});
    const std::size_t number = text.find_first_of("0123456789");
    const std::size_t end = std::min(mark, number);
    std::string_view name = text.substr(0, end);
    name = name.substr(0, name.find_last_not_of(" ;=") + 1);
    if (name.empty()) {
        return std::nullopt;
    }
    constexpr auto keys_of_text =
        std::to_array<std::string_view>({"name", "note", "kind", "class", "source"});
    for (const std::string_view key : keys_of_text) { // "name Pier loaf"
        if (end == std::string_view::npos && name.starts_with(std::string(key) + " ")) {
            return std::string(key) + ":" + std::string(name.substr(key.size()));
        }
    }
    std::string_view value = end == std::string_view::npos ? std::string_view() : text.substr(end);
    value.remove_prefix(mark < number && end == wide ? wide_colon.size() : 0U);
    value.remove_prefix(std::min(value.find_first_not_of(" ;="), value.size()));
    return std::string(name) + ":" + (value.empty() ? "" : " " + std::string(value));
}

// Whether nothing but blank lines and comments stands between two lines.
bool is_last_before(const SourceHandle& source, std::size_t number, std::size_t at) {
    for (std::size_t between = number + 1; between < at; ++between) {
        if (!is_empty(source->line(between))) {
            return false;
        }
    }
    return true;
}

// The parser stops at its first fault, at the line of a slip or one below. Slips of a hand that can be seen
// in a line alone are reported wherever they stand, where one of them stopped it. Whether one did.
bool report_slips(const SourceHandle& source, std::size_t offset, Diagnostics& diagnostics) {
    constexpr std::size_t most = 20;
    const std::size_t at = source->position(offset).line;
    struct Slip {
        SourcedText place;
        std::string_view message;
        std::string hint;
    };
    std::vector<Slip> slips;
    bool is_cause = false;
    BlockText block;
    for (std::size_t number = 1; number <= source->line_count() && slips.size() < most; ++number) {
        const SourcedText line = whole_line(source, source->line_start(number));
        if (block.holds(line.text) || is_empty(line.text)) {
            continue;
        }
        const std::string_view indent =
            line.text.substr(0, std::min(line.text.find_first_not_of(" \t"), line.text.size()));
        const bool is_near = number == at || (number < at && is_last_before(source, number, at));
        const std::size_t slips_before = slips.size();
        if (indent.find('\t') != std::string_view::npos) {
            slips.push_back({line, "this line is set in with a tab", "use spaces"});
        } else if (const auto glued = glued_colon(source, number)) {
            slips.push_back({*glued, "a space is missing behind this colon",
                             "write the name, a colon, a space, the value"});
        } else if (const auto mended = is_near ? with_colon(line.text) : std::nullopt) {
            slips.push_back({line, "a colon is missing behind the name on this line", "write: " + *mended});
        }
        is_cause = is_cause || (is_near && slips.size() > slips_before);
    }
    for (const Slip& slip : is_cause ? slips : std::vector<Slip>()) {
        diagnostics.error(Code::yaml_syntax, slip.place, std::string(slip.message), slip.hint);
    }
    return is_cause;
}

// "   water: 300 g" below "  bread flour: 500 g": set in further than a key whose value is on its line.
bool report_indent(const SourceHandle& source, std::size_t offset, Diagnostics& diagnostics) {
    const std::size_t at = source->position(offset).line;
    const std::string_view line = source->line(at);
    const std::size_t colon = line.find(": ");
    std::size_t above = at;
    while (above > 1 && is_empty(source->line(--above))) {
    }
    const bool is_one =
        colon != std::string_view::npos && line.find(": ", colon + 1) == std::string_view::npos;
    const std::size_t own = line.find_first_not_of(' ');
    const std::size_t wanted =
        std::min(source->line(above).find_first_not_of(' '), source->line(above).size());
    if (!is_one || above == at || own <= wanted) {
        return false;
    }
    diagnostics.error(Code::yaml_syntax, whole_line(source, source->line_start(at)),
                      "this line is set in further than the one above it",
                      wanted == 0 ? std::string("begin it at the margin, as that one does")
                                  : fmt::format("set it in by {} spaces, as that one is", wanted));
    return true;
}

} // namespace

SourcedText whole_line(const SourceHandle& source, std::size_t offset) {
    const SourcePosition position = source->position(offset);
    const std::string_view line = source->line(position.line);
    return {.source = source, .span = {source->line_start(position.line), line.size()}, .text = line};
}

void report_syntax(std::string_view message, const SourceHandle& source, std::size_t offset,
                   const std::optional<SourcedText>& bracket, Diagnostics& diagnostics) {
    const SourcedText line = whole_line(source, offset);
    const std::size_t column = std::min(offset, line.span.offset + line.span.length) - line.span.offset;
    const SourcedText place = column < line.text.size() ? line.part(column, line.text.size()) : line;
    const bool is_second_colon = message.find("illegal map value") != std::string_view::npos ||
                                 message.find("end of map not found") != std::string_view::npos;
    if (report_slips(source, offset, diagnostics) ||
        (is_second_colon && report_indent(source, offset, diagnostics))) {
        return;
    }
    for (const Advice& advice : advices) {
        if (message.find(advice.raw) != std::string_view::npos) {
            const bool is_open = bracket && advice.raw.find("flow") != std::string_view::npos;
            diagnostics.error(Code::yaml_syntax, is_open ? *bracket : place, std::string(advice.message),
                              std::string(advice.hint));
            return;
        }
    }
    diagnostics.error(Code::yaml_syntax, place, "this is not well-formed YAML: " + printable(message, 120),
                      "text that begins with a sign such as @ ` % & * ! or holds ': ' needs quotation marks");
}

bool report_hidden_bytes(const SourceHandle& source, Diagnostics& diagnostics) {
    return report_bytes(source, diagnostics) || report_stray_mark(source, diagnostics) ||
           report_lone_return(source, diagnostics);
}

} // namespace leavenwright
