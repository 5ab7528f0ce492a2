// A levain stage of a formula as a build that ripens.
#pragma once

#include "culture/ripening.hpp"
#include "formula/formula.hpp"

#include <optional>

namespace leavenwright {

/// Nothing where the stage is no levain or has no culture in it. It stands where its own process
/// says (ripen: at), or at `place`.
std::optional<LevainBuild> build_of(const Stage& stage, const Pantry& pantry,
                                    const TemperatureProfile& place);

/// Share of bran and germ in flour, by its fibre: white flours have about 3 % of it, whole grain about
/// 11 %.
Fraction whole_grain_of(Fraction fibre);

} // namespace leavenwright
