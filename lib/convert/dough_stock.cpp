#include "convert/dough_stock.hpp"

#include "formula/overall.hpp"

#include <algorithm>

namespace leavenwright {
namespace {

// A liquid worth the name; what is thicker gives up water only when asked.
constexpr double thin_liquid_water = 0.8;
// What is left of a line after exact arithmetic would have left nothing.
constexpr double dust = 1e-12;

Mass mass_in(const std::vector<Line>& lines, const Ingredient& ingredient) {
    Mass mass = kilograms(0.0);
    for (const Line& line : lines) {
        mass += line.ingredient == &ingredient ? line.mass : kilograms(0.0);
    }
    return mass;
}

WaterSource source_of(const Ingredient& ingredient, Mass mass, bool with_dry_milk, const Pantry& pantry) {
    WaterSource source{.ingredient = &ingredient,
                       .mass = mass,
                       .yield = ingredient.is_water() ? Fraction(1.0) : ingredient.composition.water,
                       .dry_milk = nullptr,
                       .dry_milk_per_mass = {}};
    const Ingredient* dry =
        with_dry_milk && !ingredient.dries_to.empty() ? pantry.find(ingredient.dries_to).ingredient : nullptr;
    if (dry != nullptr && dry->composition.water < ingredient.composition.water) {
        // Solids are restored by dry milk, which brings a little water of its own.
        const double water = ingredient.composition.water.value();
        const double dry_water = dry->composition.water.value();
        source.dry_milk = dry;
        source.dry_milk_per_mass = Fraction((1.0 - water) / (1.0 - dry_water));
        source.yield = Fraction(water - source.dry_milk_per_mass.value() * dry_water);
    }
    return source;
}

} // namespace

std::vector<WaterSource> water_sources(const std::vector<Line>& dough, const ConversionRequest& request,
                                       const Pantry& pantry) {
    std::vector<WaterSource> sources;
    const auto add = [&](const Ingredient& ingredient) {
        const bool is_known = std::any_of(sources.begin(), sources.end(), [&](const WaterSource& source) {
            return source.ingredient == &ingredient;
        });
        const Mass mass = mass_in(dough, ingredient);
        if (is_known || mass.value() <= 0.0) {
            return;
        }
        const WaterSource source = source_of(ingredient, mass, request.dry_milk, pantry);
        if (source.yield.value() > 0.0) {
            sources.push_back(source);
        }
    };
    const auto add_where = [&](auto&& condition) {
        for (const Line& line : dough) {
            if (condition(*line.ingredient)) {
                add(*line.ingredient);
            }
        }
    };
    add_where([](const Ingredient& ingredient) { return ingredient.is_water(); });
    if (!request.water_from.empty()) {
        for (const Ingredient* ingredient : request.water_from) {
            add(*ingredient);
        }
        return sources;
    }
    add_where([](const Ingredient& ingredient) { return !ingredient.dries_to.empty(); });
    add_where([](const Ingredient& ingredient) {
        return ingredient.ingredient_class == IngredientClass::liquid &&
               ingredient.composition.water.value() >= thin_liquid_water;
    });
    return sources;
}

Mass take_out(std::vector<Line>& lines, const Ingredient& ingredient, Mass mass) {
    while (mass.value() > 0.0) {
        Line* largest = nullptr;
        for (Line& line : lines) {
            if (line.ingredient == &ingredient && (largest == nullptr || line.mass > largest->mass)) {
                largest = &line;
            }
        }
        if (largest == nullptr || largest->mass.value() <= 0.0) {
            break;
        }
        const Mass whole = largest->mass;
        const Mass taken = std::min(mass, whole);
        largest->mass -= taken;
        mass -= taken;
        if (largest->mass.value() <= dust * whole.value()) {
            largest->mass = kilograms(0.0);
        }
    }
    std::erase_if(lines, [](const Line& line) { return line.mass.value() <= 0.0; });
    return mass;
}

void put_in(std::vector<Line>& lines, const Line& line) {
    const auto same = std::find_if(lines.begin(), lines.end(),
                                   [&](const Line& known) { return known.ingredient == line.ingredient; });
    if (same == lines.end()) {
        lines.push_back(line);
        return;
    }
    const double error_kg =
        same->uncertainty.value() * same->mass.value() + line.uncertainty.value() * line.mass.value();
    same->mass += line.mass;
    same->uncertainty = Fraction(same->mass.value() > 0.0 ? error_kg / same->mass.value() : 0.0);
}

std::vector<Line> flours_by_size(const std::vector<Line>& dough) {
    constexpr double tie = 1e-9; // of equal flours the formula's order holds, whatever the last digits say
    std::vector<Line> flours = add_up(dough, {}).flours();
    std::stable_sort(flours.begin(), flours.end(), [](const Line& left, const Line& right) {
        return left.mass > (1.0 + tie) * right.mass;
    });
    return flours;
}

} // namespace leavenwright
