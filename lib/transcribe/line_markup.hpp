// Marks of Markdown, wikis and HTML inside of a line. Private to the transcribe folder.
#pragma once

#include <string>
#include <string_view>

namespace leavenwright {

/// `line` with the words of its links alone ("[[Sugar|cane sugar]]" is cane sugar), without pictures and the
/// quotes that a wiki draws letters bold with, and with characters for HTML's names of them. Linear time.
std::string without_markup(std::string_view line);

/// "{qty: 500, unit: g, item: flour}" of a page's data as "500 g flour"; any other line as it is.
std::string without_map(std::string_view line);

} // namespace leavenwright
