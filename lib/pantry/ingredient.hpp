// What the pantry knows of one ingredient. Values are views: of the table built into
// the program, or of the Pantry that read them.
#pragma once

#include "quantity/quantity.hpp"

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

namespace leavenwright {

enum class IngredientClass : std::uint8_t {
    flour,
    liquid,
    salt,
    sweetener,
    fat,
    egg,
    dairy,
    yeast,
    seed_or_grain,
    other,
    culture, // seed of a levain: flour and water in a ratio that the stage knows
};

std::string_view name_of(IngredientClass ingredient_class);
/// Null where the text names no class that a pantry file may use.
std::optional<IngredientClass> ingredient_class_named(std::string_view name);

/// Mass fractions of the ingredient as it is weighed; carbohydrate includes fibre.
struct Composition {
    Fraction water;
    Fraction protein;
    Fraction fat;
    Fraction carbohydrate;
    Fraction fibre;
    Fraction ash;
    Fraction sugars;
    Fraction sodium;
};

struct MeasuredVolume {
    std::string_view how;     // "sifted"; empty where the source does not say
    std::string_view measure; // "1 cup"
    Volume volume;
    Mass mass;
    std::string_view source;
};

struct PieceWeight {
    std::string_view word; // "large"; "each" is what a bare number counts
    Mass mass;
    std::string_view source;
};

/// A name of something that this entry only stands in for.
struct NearestName {
    std::string_view name;
    std::string_view why;
};

struct Ingredient {
    std::string_view name;
    IngredientClass ingredient_class = IngredientClass::other;
    std::span<const std::string_view> also;
    std::span<const NearestName> nearest_for;
    std::string_view stand_in; // why its figures are a neighbour's; empty where they are its own
    Composition composition;
    bool has_composition = false;
    std::string_view source;
    std::span<const MeasuredVolume> volumes; // the first is used
    Fraction volume_uncertainty;
    std::span<const PieceWeight> pieces;
    std::span<const std::string_view> eu_allergens;
    std::span<const std::string_view> us_allergens;
    std::string_view dries_to; // for milks: the dry milk that restores its solids

    bool is_flour() const { return ingredient_class == IngredientClass::flour; }
    bool is_yeast() const { return ingredient_class == IngredientClass::yeast; }
    bool is_culture() const { return ingredient_class == IngredientClass::culture; }
    /// Whether it holds enough water for it to be counted or taken out: at least 5 %, which leaves
    /// out salt, sugar and oil; never flour, yeast or culture.
    bool can_give_water() const {
        constexpr Fraction least{0.05};
        return is_water() || (!is_flour() && !is_yeast() && !is_culture() && composition.water >= least);
    }
    /// Plain water, whatever it was called.
    bool is_water() const { return name == "water"; }
};

/// Mass of a measured volume of `ingredient`; nothing where the pantry has no weight for one.
std::optional<Mass> mass_of_volume(const Ingredient& ingredient, Volume volume);
/// Mass of one piece; `word` as written, empty for a bare number. Words of the ingredient's own
/// name may stand beside it ("eggs large").
std::optional<Mass> mass_of_piece(const Ingredient& ingredient, std::string_view word);

/// How far one piece may be from another of the same size (common practice, no source: the
/// weight classes of eggs are 12 % wide).
inline constexpr Fraction piece_uncertainty{0.06};

} // namespace leavenwright
