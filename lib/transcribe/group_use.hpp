// Lines below a heading, or in a list of their own, that do not go into the dough. Private to the transcribe
// folder.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "transcribe/ingredient_line.hpp"

#include <span>
#include <string>
#include <string_view>

namespace leavenwright {

/// Of the lines below a heading that does not say what they are for ("Water:"): where the first says it ("3 l
/// water for boiling"), it is taken for those of the dough too, with a warning each.
void set_apart_by_group(std::span<IngredientLine> group, Diagnostics& diagnostics);

/// Of the lines of a group or a column of which more than half were set apart: the rest is set apart too,
/// with a warning each, unless it has the flour or the yeast of a dough.
void set_apart_by_majority(std::span<IngredientLine> group, Diagnostics& diagnostics);

/// Lines below a heading that the directions name as a whole, to spread or to strew it: "Remonce". `title` is
/// folded; a group with yeast or much of all flour is a dough.
void set_apart_by_title(std::span<IngredientLine> group, std::string_view title,
                        std::span<const std::string> directions, Mass flour_of_all, Diagnostics& diagnostics);

/// What still is the dough's below a heading that names no part of one ("Onions"): doubtful, with a warning
/// for all of it. A group with yeast or much of all flour is a dough.
void doubt_by_title(std::span<IngredientLine> group, std::string_view title, Mass flour_of_all,
                    Diagnostics& diagnostics);

/// A list of all that sentences have said before, at their end: not counted again.
void set_apart_repeated_list(std::span<IngredientLine> lines, Diagnostics& diagnostics);

/// "Flour = 100 % = 4.7 kg", below the flours that it adds up: not counted again, with a warning.
void set_apart_repeated_flour(std::span<IngredientLine> lines, Diagnostics& diagnostics);

} // namespace leavenwright
