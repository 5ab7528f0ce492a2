// What a line names, wherever in it the name stands. Private to the transcribe folder.
#pragma once

#include "transcribe/match_name.hpp"
#include "transcribe/split_line.hpp"

#include <string>
#include <string_view>

namespace leavenwright {

struct FoundName {
    NameMatch match;
    std::string instead_of; // the line's own word, where another was read for it
};

/// By the name, by name and brackets together ("yeast (instant)"), by the brackets alone ("maida (all-purpose
/// flour)"), and behind a miller's name ("Gull Mills flour").
FoundName find_name(const SplitLine& split, const Pantry& pantry);

/// Of a whole line as it was written.
NameMatch name_in(std::string_view line, const Pantry& pantry);

/// With the short words of cards written out ("br sug" is brown sugar); nothing where there are none.
NameMatch match_short_words(std::span<const LineToken> tokens, const Pantry& pantry);

} // namespace leavenwright
