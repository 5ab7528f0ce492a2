#include "transcribe/wash.hpp"

#include "pantry/ingredient.hpp"

#include <string_view>

namespace leavenwright {

bool is_wash_without_a_word(std::span<const IngredientLine> lines) {
    // Common practice, no source: a dough of one egg has more liquid than two tablespoons.
    constexpr double most_eggs = 1.0;
    constexpr Mass most_liquid = kilograms(0.032);
    if (lines.size() != 2) {
        return false;
    }
    const IngredientLine& egg = lines[0];
    const IngredientLine& liquid = lines[1];
    if (egg.ingredient == nullptr || liquid.ingredient == nullptr || egg.role != "dough" ||
        liquid.role != "dough" || !liquid.weight || !egg.number || *egg.number > most_eggs ||
        !(egg.text.find("with") != std::string::npos || egg.text.find('+') != std::string::npos)) {
        return false;
    }
    const std::string_view name = liquid.key;
    const bool is_thin = liquid.ingredient->is_water() || name.ends_with("milk") || name.ends_with("cream");
    return egg.ingredient->ingredient_class == IngredientClass::egg && is_thin &&
           liquid.weight->likely <= most_liquid;
}

} // namespace leavenwright
