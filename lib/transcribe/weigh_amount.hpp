// What an amount of an ingredient weighs, and how the formula file says it. Private to the transcribe folder.
#pragma once

#include "transcribe/ingredient_line.hpp"
#include "transcribe/kitchen_amount.hpp"

namespace leavenwright {

/// Nothing where the pantry has no weight for the measure, and for a percentage.
std::optional<WeightRange> weigh_amount(const Ingredient& ingredient, const KitchenAmount& amount);

/// What has the size of an egg or a walnut; nothing for other things.
std::optional<WeightRange> weigh_likened(std::string_view thing);

/// Which of the ingredient's volumes was measured `how`: "sliced", "mashed"; nothing where none was. The
/// first is taken where a recipe says nothing.
std::optional<std::size_t> way_of_measuring(const Ingredient& ingredient, std::string_view how);

/// The amount as the formula file reads it; in grams where it has no other words for it.
std::string formula_amount(const Ingredient& ingredient, const KitchenAmount& amount,
                           const std::optional<WeightRange>& weight);

/// A mixed number where it is one of a kitchen's: "2 1/3".
std::string kitchen_number(double number);

} // namespace leavenwright
