// What can be taken out of a dough: flours kind by kind, and water out of water and out
// of other liquids. Private to the convert folder.
#pragma once

#include "convert/request.hpp"
#include "formula/formula.hpp"

#include <string>
#include <vector>

namespace leavenwright {

/// A liquid that can give up water.
struct WaterSource {
    const Ingredient* ingredient = nullptr;
    Mass mass;                            // of it in the dough
    Fraction yield;                       // water given up per mass of it that is taken out
    const Ingredient* dry_milk = nullptr; // that restores its solids
    Fraction dry_milk_per_mass;

    Mass water() const { return yield * mass; }
};

/// The sources in the order in which they are used: plain water first.
std::vector<WaterSource> water_sources(const std::vector<Line>& dough, const ConversionRequest& request,
                                       const Pantry& pantry);

/// Takes `mass` of an ingredient out of the lines, the largest line first; what is left of
/// `mass` when the lines have no more is returned.
Mass take_out(std::vector<Line>& lines, const Ingredient& ingredient, Mass mass);

/// Adds to the line of the same ingredient, or a new one behind it.
void put_in(std::vector<Line>& lines, const Line& line);

/// The dough's flours, one line per kind, the largest first.
std::vector<Line> flours_by_size(const std::vector<Line>& dough);

} // namespace leavenwright
