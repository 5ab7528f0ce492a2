// What the heat model needs of ingredients: the pantry's composition as fractions of a dough.
#pragma once

#include "ferment/dough_properties.hpp"
#include "formula/formula.hpp"

#include <vector>

namespace leavenwright {

/// Of everything together. An ingredient whose composition the pantry does not have counts as the
/// mean of the others.
DoughComposition dough_composition(const std::vector<Line>& lines);

} // namespace leavenwright
