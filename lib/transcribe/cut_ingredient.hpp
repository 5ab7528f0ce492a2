// Several ingredients on one line. Private to the transcribe folder.
#pragma once

#include "pantry/pantry.hpp"
#include "transcribe/split_line.hpp"

#include <vector>

namespace leavenwright {

/// Parts of a line that names several things and no amount: "poppy seeds, sesame seeds"; none where it does
/// not.
std::vector<std::vector<LineToken>> names_in_row(std::span<const LineToken> tokens, const Pantry& pantry);

/// "1 cake yeast dissolved in 1/4 cup water", "1 tsp salt, 1 tbsp sugar": the tokens of the second
/// ingredient, taken off the name of the first; empty where there is none.
std::vector<LineToken> cut_second(SplitLine& split, const Pantry& pantry);

/// "rosemary, flaky salt, 3 tbsp oil": an amount belongs to the name behind it, and what stands before has
/// none. Leaves the first of these in `tokens` and gives the others; empty where the line is no such list.
/// "salt, 2 tsp kosher" is one only within such a list.
std::vector<LineToken> cut_unmeasured(std::vector<LineToken>& tokens, bool is_in_list, const Pantry& pantry);

/// "1 tsp each cinnamon and nutmeg": the tokens of the next, "each" before them; the amount is the same.
std::vector<LineToken> cut_each(SplitLine& split);

/// "1 tbsp lard, and the same of butter", "1 cup sugar and as much butter": the tokens of the second; the
/// amount is the same.
std::vector<LineToken> cut_same(SplitLine& split);

/// "1/2 pint milk and water": cuts a mixture whose parts are not told in halves, each of which may be
/// anything up to the whole, and gives the name of the second; empty where the line is no mixture.
std::vector<LineToken> cut_mixture(SplitLine& split, const Pantry& pantry);

} // namespace leavenwright
