// Amounts with their names in the words of a clause. Private to the transcribe folder.
#pragma once

#include "transcribe/prose_names.hpp"

namespace leavenwright {

/// The item whose amount begins at a word: "two-thirds of a cup of molasses", and of "graham flour, five
/// cups" the amount behind its name. Nothing where none begins.
std::optional<FoundItem> measured_item(const ProseNames& names, std::size_t at);

/// Behind the last word of an amount that begins at a word, with no name behind it; 0 where it is none.
std::size_t end_of_bare_amount(const ProseNames& names, std::size_t at);

} // namespace leavenwright
