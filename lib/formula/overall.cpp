#include "formula/overall.hpp"

#include <algorithm>
#include <cmath>

namespace leavenwright {

std::vector<Line> Overall::flours() const {
    std::vector<Line> result;
    std::copy_if(lines.begin(), lines.end(), std::back_inserter(result),
                 [](const Line& line) { return line.ingredient->is_flour(); });
    return result;
}

Mass Overall::mass_of(const Ingredient& ingredient) const {
    for (const Line& line : lines) {
        if (line.ingredient == &ingredient) {
            return line.mass;
        }
    }
    return kilograms(0.0);
}

Hydration Overall::hydration_uncertainty() const {
    const double flour = flour_uncertainty.value() / total_flour.value();
    const double water = true_water.value() > 0.0 ? water_uncertainty.value() / true_water.value() : 0.0;
    return Hydration(hydration_true().value() * std::hypot(flour, water));
}

std::vector<Line> contents_of(const Stage& stage, const Pantry& pantry) {
    std::vector<Line> contents;
    contents.reserve(stage.lines.size());
    Mass fresh_flour = kilograms(0.0);
    for (const Line& line : stage.lines) {
        if (line.ingredient->is_flour()) {
            fresh_flour += line.mass;
        }
    }
    const double share = stage.fraction_used().value();
    for (const Line& line : stage.lines) {
        if (!line.ingredient->is_culture()) {
            contents.push_back(line);
            contents.back().mass *= share;
            continue;
        }
        // The culture is fed with the levain's own flours.
        const Mass used = line.mass * share;
        const Mass flour = used / (1.0 + stage.culture_hydration.value());
        for (const Line& own : stage.lines) {
            if (own.ingredient->is_flour()) {
                contents.push_back(own);
                contents.back().mass = Fraction::of(own.mass, fresh_flour) * flour;
            }
        }
        contents.push_back({.name = "water",
                            .ingredient = pantry.find("water").ingredient,
                            .mass = used - flour,
                            .uncertainty = line.uncertainty});
    }
    return contents;
}

Overall add_up(const std::vector<Line>& lines, const std::vector<const Ingredient*>& count_as_water) {
    Overall overall;
    overall.lines.reserve(lines.size());
    double flour_variance = 0.0;
    double water_variance = 0.0;
    for (const Line& line : lines) {
        const Ingredient& ingredient = *line.ingredient;
        const auto same = std::find_if(overall.lines.begin(), overall.lines.end(),
                                       [&](const Line& known) { return known.ingredient == &ingredient; });
        if (same == overall.lines.end()) {
            overall.lines.push_back(line);
        } else {
            same->mass += line.mass;
        }
        overall.total += line.mass;
        const double error_kg = line.uncertainty.value() * line.mass.value();
        if (ingredient.is_flour()) {
            overall.total_flour += line.mass;
            flour_variance += error_kg * error_kg;
            continue;
        }
        const bool is_counted =
            std::find(count_as_water.begin(), count_as_water.end(), &ingredient) != count_as_water.end();
        const Fraction water = ingredient.is_water() ? Fraction(1.0) : ingredient.composition.water;
        if (ingredient.is_water() || is_counted) {
            overall.added_water += line.mass;
        }
        overall.true_water += water * line.mass;
        water_variance += error_kg * error_kg * water.value() * water.value();
        if (!ingredient.is_yeast()) { // what its cells are made of does nothing in a dough
            overall.sugar += ingredient.composition.sugars * line.mass;
            overall.fat += ingredient.composition.fat * line.mass;
        }
        if (ingredient.ingredient_class == IngredientClass::salt) {
            overall.salt += line.mass;
        }
    }
    overall.flour_uncertainty = kilograms(std::sqrt(flour_variance));
    overall.water_uncertainty = kilograms(std::sqrt(water_variance));
    return overall;
}

Overall compute_overall(const Formula& formula) {
    std::vector<Line> lines = formula.dough;
    for (const Stage& stage : formula.stages) {
        const std::vector<Line> contents = contents_of(stage, *formula.pantry);
        lines.insert(lines.end(), contents.begin(), contents.end());
    }
    return add_up(lines, formula.count_as_water);
}

} // namespace leavenwright
