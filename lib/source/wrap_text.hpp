// Prose broken into lines for a terminal.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace leavenwright {

/// `text` in lines of at most `columns` display columns, each ended by a line feed; the first begins
/// with `first`, the others with `next`. A word longer than a line is broken. Line feeds in `text`
/// are kept.
std::string wrap_text(std::string_view text, std::string_view first, std::string_view next,
                      std::size_t columns);

} // namespace leavenwright
