// What of a formula meets in the bowl, as the balance of heat weighs it.
#pragma once

#include "ferment/dough_properties.hpp"
#include "ferment/water_temperature.hpp"
#include "formula/formula.hpp"

#include <string>
#include <vector>

namespace leavenwright {

/// With its specific heat at an everyday temperature, by composition.
MixPart mix_part(MixPart::Kind kind, std::string name, const std::vector<Line>& lines);

struct BowlMix {
    MixWeights weights; // its water is the plain water added at mixing, which may be none
    bool has_preferment = false;
    Mass largest_preferment; // levain or another; nothing without one
    DoughComposition of_preferment;
};

BowlMix bowl_mix(const Formula& formula);

} // namespace leavenwright
