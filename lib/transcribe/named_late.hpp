// Lines of one flat list that go on or into the risen dough: a glaze, a filling, the sugar of boiling water.
// Private to the transcribe folder.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "transcribe/call_index.hpp"

#include <cstddef>
#include <vector>

namespace leavenwright {

// `late` is the first sentence behind the making of the dough, as end_of_making() tells.

/// Takes lines out of the dough that the directions name only behind the making of the dough, in what is
/// brushed, poured or spread over it, with a warning each. Of lines that go by one word (butter, and butter
/// again) the last, as many as such sentences, and none above the flour, the yeast and the salt. One line of
/// which a share is kept for it is doubtful.
void set_apart_named_late(std::vector<IngredientLine>& lines, const CallIndex& index, std::size_t late,
                          Diagnostics& diagnostics);

/// Of two lines of eggs the last, one egg, and what stands beside it in its line, where the risen dough is
/// brushed with egg, or filled with what an egg is mixed into, and no line says so.
void set_apart_egg_wash(std::vector<IngredientLine>& lines, const CallIndex& index, std::size_t late,
                        Diagnostics& diagnostics);

/// Doubts fillings and toppings by their heading that the directions work into the dough, which has none of
/// them by that call.
void doubt_worked_in(std::vector<IngredientLine>& lines, const CallIndex& index, Diagnostics& diagnostics);

/// Takes fat out of the dough that nothing is done with but to grease a bowl.
void set_apart_greasing(std::vector<IngredientLine>& lines, const CallIndex& index, Diagnostics& diagnostics);

/// Lines behind one that is apart ("60 g oil for the tray", then "olives, 100 g"), which no direction mixes
/// in: doubtful.
void doubt_behind_apart(std::vector<IngredientLine>& lines, const CallIndex& index, std::size_t late,
                        Diagnostics& diagnostics);

} // namespace leavenwright
