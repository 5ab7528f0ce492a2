// Sentences broken at a margin, as books and newspaper columns print them. Private to the transcribe folder.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace leavenwright {

/// Bytes of the paragraph that begins `text`, down to a blank line; at most `most`.
std::size_t paragraph_length(std::string_view text, std::size_t most);

/// Whether the lines of a paragraph are one text that was broken at its margin, and no list of items.
bool is_running_text(std::string_view paragraph);

/// Words that were cut at the margin in one piece: "but-\nter" is butter, "one-\nhalf" keeps its hyphen.
/// Other line ends stay.
std::string joined_at_margins(std::string_view text);

} // namespace leavenwright
