// Lines of a list that were broken at the margin. Private to the transcribe folder.
#pragma once

#include "pantry/pantry.hpp"
#include "source/source_text.hpp"

#include <string_view>

namespace leavenwright {

/// Whether `text`, set in below `item`, goes on with it: "-if the day is damp", "-- slightly beaten", "cut
/// into pieces", "or margarine", and the name below an amount. Linear time.
bool is_continuation(std::string_view item, std::string_view text, const Pantry& pantry);

/// From the beginning of `item` to the end of `line`, which stands below it.
SourcedText joined(const SourcedText& item, const SourcedText& line);

} // namespace leavenwright
