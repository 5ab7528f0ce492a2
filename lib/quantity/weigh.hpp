// Weights as a scale shows them: rounded so that the column adds up to its total.
#pragma once

#include "quantity/quantity.hpp"

#include <span>
#include <vector>

namespace leavenwright {

enum class UnitSystem { metric, us };

/// What the scale shows: `step` from 25 steps up, a tenth of it below that, a hundredth
/// below half a step.
struct WeighingScale {
    UnitSystem units = UnitSystem::metric;
    Mass step = grams(1.0);

    /// The step that a weight is rounded to.
    Mass step_for(Mass mass) const;
};

/// A scale that shows whole grams, or tenths of an ounce.
WeighingScale usual_scale(UnitSystem units);

struct Weighing {
    std::vector<Mass> masses; // in the order given
    Mass total;               // their sum
    Mass largest_error;       // of one of them
};

/// Rounds each mass to its step by largest remainder, finest steps first; each range makes good what
/// the finer ones were rounded by, so that the total is right to half a step. Masses are 0 or more.
Weighing weigh(std::span<const Mass> masses, const WeighingScale& scale);

} // namespace leavenwright
