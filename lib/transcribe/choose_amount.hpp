// Which of a line's amounts is taken, and whether the others say the same. Private to the transcribe folder.
#pragma once

#include "transcribe/split_line.hpp"
#include "transcribe/weigh_amount.hpp"

namespace leavenwright {

struct ChosenAmount {
    KitchenAmount amount;
    bool is_share_unclear = false; // "2 packets (8 g)" of what the pantry has no packet of
};

/// "1 cup sliced almonds": takes the way of measuring from the name where the pantry has a figure for it. The
/// line has an amount.
void take_way_of_name(SplitLine& split, const Ingredient& ingredient);

/// A weight rather than a volume, a volume rather than a count; of one piece, times their number.
/// `ingredient` may be null. The line has an amount.
ChosenAmount choose_amount(const SplitLine& split, const Ingredient* ingredient);

/// The weight of another amount of the line that is not what was chosen; nothing where all agree.
std::optional<WeightRange> disagreeing_weight(const SplitLine& split, const Ingredient& ingredient,
                                              const KitchenAmount& chosen, const WeightRange& weight);

} // namespace leavenwright
