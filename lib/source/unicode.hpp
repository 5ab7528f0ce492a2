// What we need of Unicode: validity, display width, and the folded form in which
// names are compared. A thin layer over utf8proc.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace leavenwright {

enum class TextFault { not_utf8, control_character };

struct TextFaultPlace {
    TextFault fault;
    std::size_t offset;
    unsigned char byte;
};

/// The first byte of `text` that is not UTF-8, or is a control character other than
/// tab, line feed and carriage return; nothing if there is none. Linear time.
std::optional<TextFaultPlace> find_text_fault(std::string_view text);

/// Columns that `text` (one line) takes in a terminal: wide characters two, combining
/// marks none.
std::size_t display_width(std::string_view text);

/// The longest beginning of `text` that is at most `columns` wide, cut between characters.
std::string_view fit_width(std::string_view text, std::size_t columns);

/// Bytes of the character that begins `text`; 1 where it is not UTF-8, 0 where empty.
std::size_t character_length(std::string_view text);

/// A name as names are compared: lower case, without accents, hyphens as spaces,
/// apostrophes dropped, runs of spaces collapsed, trimmed.
std::string fold_name(std::string_view name);

/// Tabs, line ends and runs of spaces as one space each, none at the ends.
std::string on_one_line(std::string_view text);

/// `text` fit to be shown inside a message or a table: control characters become
/// U+FFFD, and what is past `most` columns becomes an ellipsis.
std::string printable(std::string_view text, std::size_t most);

} // namespace leavenwright
