// Amounts with their names in the words of a clause. Private to the transcribe folder.
#pragma once

#include "transcribe/prose_names.hpp"

namespace leavenwright {

/// The item whose amount begins at a word: "two-thirds of a cup of molasses", and of "graham flour, five
/// cups" the amount behind its name. Nothing where none begins.
std::optional<FoundItem> measured_item(const ProseNames& names, std::size_t at);

/// Whether two things may be meant by one word: "the sugar" of a list with brown sugar.
bool is_same_kind(const Ingredient* one, const Ingredient* other);

} // namespace leavenwright
