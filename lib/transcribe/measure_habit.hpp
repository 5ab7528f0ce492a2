// Pints, quarts and gills of the kitchen that a recipe comes from. Private to the transcribe folder.
#pragma once

#include "transcribe/ingredient_line.hpp"
#include "transcribe/kitchen_amount.hpp"

#include <string_view>

namespace leavenwright {

/// By the list, a line for each item, and all words of the recipe: cups and sticks are American, caster sugar
/// and teacupfuls are British. Linear time.
MeasureHabit measure_habit(std::string_view list, std::string_view all);

/// Pints, quarts, gills and cups as that kitchen has them; doubtful, with a range that holds both, where the
/// recipe does not show whose they are.
void settle_measure(KitchenAmount& amount, MeasureHabit habit);

} // namespace leavenwright
