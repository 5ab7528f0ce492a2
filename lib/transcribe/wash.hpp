// What is brushed on a dough, where a line does not say so. Private to the transcribe folder.
#pragma once

#include "transcribe/ingredient_line.hpp"

#include <span>

namespace leavenwright {

/// Whether the ingredients of one line are an egg, or its white or yolk, and a little water, milk or cream,
/// both in the dough so far: "1 egg, beaten with 1 tbsp milk".
bool is_wash_without_a_word(std::span<const IngredientLine> lines);

} // namespace leavenwright
