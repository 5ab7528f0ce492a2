// What can be wrong with a text before and while the parser reads it, in words for people.
// Private to the document folder.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "source/source_text.hpp"

#include <optional>
#include <string_view>

namespace leavenwright {

/// The line that holds a byte.
SourcedText whole_line(const SourceHandle& source, std::size_t offset);

/// The first byte that a formula may not hold: not UTF-8, control characters, byte order marks
/// inside, carriage returns that end no line. Returns whether there was one.
bool report_hidden_bytes(const SourceHandle& source, Diagnostics& diagnostics);

/// The parser's message at a byte, as advice; `bracket` is the brace or bracket that was open there.
void report_syntax(std::string_view message, const SourceHandle& source, std::size_t offset,
                   const std::optional<SourcedText>& bracket, Diagnostics& diagnostics);

} // namespace leavenwright
