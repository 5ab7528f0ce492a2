// A number without a measure before it: pieces, or grams. Private to the transcribe folder.
#pragma once

#include "transcribe/ingredient_line.hpp"
#include "transcribe/split_line.hpp"

namespace leavenwright {

/// "1 yeast cake", "2 yeast packets": takes the piece that stands behind the name. The line has an amount.
void take_piece_of_name(SplitLine& split, const Ingredient& ingredient);

/// "400 water", "10 salt" among bakers: grams, of what nobody counts; "12 cardamom seeds" are counted. True
/// where that is doubtful. The line has an amount.
bool take_bare_grams(SplitLine& split, const Ingredient& ingredient, MeasureHabit::BareNumbers bare_numbers);

} // namespace leavenwright
