// A row of the dough that is one of its stages: "Poolish  1.801", "all of the sponge". Private to the
// transcribe folder.
#pragma once

#include "transcribe/ingredient_line.hpp"
#include "transcribe/recipe_text.hpp"

#include <optional>
#include <span>

namespace leavenwright {

/// The role of such a row: what it weighs is weighed in the rows of the stage.
inline constexpr std::string_view role_of_stage_row = "stage";

/// The row as read; nothing where the line is another, or the recipe has no rows of that stage. Linear in the
/// line.
std::optional<IngredientLine> read_stage_row(const RecipeLine& line, std::span<const RecipeLine> all);

} // namespace leavenwright
