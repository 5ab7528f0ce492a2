// The overall formula: all stages added up, with what they hold of flour, water, salt,
// sugar and fat.
#pragma once

#include "formula/formula.hpp"

#include <vector>

namespace leavenwright {

/// Sums over a whole formula, or over a part of one. Masses.
struct Overall {
    std::vector<Line> lines; // one per ingredient, in order of first mention; culture as flour and water

    Mass total_flour;
    Mass added_water; // plain water and what the formula counts as water, whole
    Mass true_water;  // plain water and the water inside everything but flour, by composition
    Mass salt;        // ingredients of class salt
    Mass sugar;       // sugars of everything but flour and yeast, by composition
    Mass fat;         // fat of everything but flour and yeast, by composition
    Mass total;

    Mass flour_uncertainty; // of readings by volume and count, as independent errors
    Mass water_uncertainty; // of the true water

    Hydration hydration_added() const { return Hydration::of(added_water, total_flour); }
    Hydration hydration_true() const { return Hydration::of(true_water, total_flour); }
    /// Half the width of the range that uncertain readings leave to the true hydration; 0 if none.
    Hydration hydration_uncertainty() const;
    BakersPercentage percentage(Mass part) const { return BakersPercentage::of(part, total_flour); }

    /// The flours among the lines.
    std::vector<Line> flours() const;
    Mass mass_of(const Ingredient& ingredient) const;
};

/// The whole formula, stages in the share that goes into the dough.
Overall compute_overall(const Formula& formula);

/// What a stage is made of, culture as flour and water, in the share that is used.
std::vector<Line> contents_of(const Stage& stage, const Pantry& pantry);

/// Sums over any lines.
Overall add_up(const std::vector<Line>& lines, const std::vector<const Ingredient*>& count_as_water);

} // namespace leavenwright
