// What the directions do with an ingredient last: brushed, sprinkled or spread on, and nothing else. Private
// to the transcribe folder.
#pragma once

#include "transcribe/ingredient_line.hpp"

#include <string>
#include <vector>

namespace leavenwright {

/// Looks for lines of the dough that every sentence which names them only puts on it ("brush with melted
/// butter"). Where another of their kind goes into the dough they are given that role, and that is said;
/// otherwise they stay, doubtfully.
void find_finishes(std::vector<IngredientLine>& lines, const std::vector<std::string>& directions,
                   Diagnostics& diagnostics);

} // namespace leavenwright
