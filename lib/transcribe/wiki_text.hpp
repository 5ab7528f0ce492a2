// Pages in a wiki's own markup. Private to the transcribe folder.
#pragma once

#include "source/source_text.hpp"

namespace leavenwright {

/// A page with a table of a wiki ("{|" to "|}") without the marks inside its lines: links are their words, a
/// cell over several columns is its text, a numbered step begins with a hyphen. Any other text as it is.
/// Lines keep their numbers. Linear time.
SourceHandle without_wiki_marks(const SourceHandle& source);

} // namespace leavenwright
