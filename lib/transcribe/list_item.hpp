// Whether a line is an item of a list of ingredients, or stands over some. Private to the transcribe folder.
#pragma once

#include "pantry/pantry.hpp"

#include <string_view>

namespace leavenwright {

/// An ingredient with its amount, short, and no sentence.
bool is_item(std::string_view text, const Pantry& pantry);

/// An item, or a part of the recipe made before: "all of the sponge".
bool begins_list(std::string_view text, const Pantry& pantry);

/// A few words over an ingredient that are no ingredient themselves: "Fruit", "Dry ingredients".
bool begins_group(std::string_view title, std::string_view next_line, const Pantry& pantry);

/// "Glaze: 1 egg, 2 tbsp milk", among directions.
bool is_item_apart(std::string_view text, const Pantry& pantry);

bool is_ended_by_colon(std::string_view text);

} // namespace leavenwright
