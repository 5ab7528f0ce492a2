// Marks that a whole page is written with. Private to the transcribe folder.
#pragma once

#include "source/source_text.hpp"

namespace leavenwright {

/// A page without them: a page with a table of a wiki ("{|" to "|}") without the marks inside its lines,
/// where links are their words, a cell over several columns is its text and a numbered step begins with a
/// hyphen; leaders of underscores as leaders of dots; a column with the same amounts
/// in metric in brackets. Any other text as it is. Lines keep their numbers.
/// Linear time.
SourceHandle without_page_markup(const SourceHandle& source);

} // namespace leavenwright
