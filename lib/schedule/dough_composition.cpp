#include "schedule/dough_composition.hpp"

#include <algorithm>

namespace leavenwright {

DoughComposition dough_composition(const std::vector<Line>& lines) {
    Mass water{}, protein{}, fat{}, carbohydrate{}, fibre{}, ash{}, sum{};
    for (const Line& line : lines) {
        const Ingredient& ingredient = *line.ingredient;
        if (!ingredient.has_composition) {
            continue;
        }
        const Composition& parts = ingredient.composition; // its carbohydrate includes fibre
        const Fraction digestible(std::max(parts.carbohydrate.value() - parts.fibre.value(), 0.0));
        sum += line.mass;
        water += parts.water * line.mass;
        protein += parts.protein * line.mass;
        fat += parts.fat * line.mass;
        carbohydrate += digestible * line.mass;
        fibre += parts.fibre * line.mass;
        ash += parts.ash * line.mass;
    }
    if (!(sum.value() > 0.0)) { // dry matter of no known kind
        sum = carbohydrate = kilograms(1.0);
    }
    return {.water = Fraction::of(water, sum),
            .protein = Fraction::of(protein, sum),
            .fat = Fraction::of(fat, sum),
            .carbohydrate = Fraction::of(carbohydrate, sum),
            .fibre = Fraction::of(fibre, sum),
            .ash = Fraction::of(ash, sum),
            .salt = {}}; // ash of the salt in the pantry's figures
}

} // namespace leavenwright
