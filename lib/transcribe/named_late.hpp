// Lines of one flat list that go on or into the risen dough: a glaze, a filling, the sugar of boiling water.
// Private to the transcribe folder.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "transcribe/direction_words.hpp"

#include <span>
#include <vector>

namespace leavenwright {

/// Takes lines out of the dough that the directions name only where the dough is mixed already, in what is
/// brushed, poured or spread over it, with a warning each. Of lines that go by one word (butter, and butter
/// again) the last ones, as many as such sentences, and never those above the flour and the yeast. Linear in
/// the directions for each line.
void set_apart_named_late(std::vector<IngredientLine>& lines, std::span<const DirectionWord> words,
                          Diagnostics& diagnostics);

} // namespace leavenwright
