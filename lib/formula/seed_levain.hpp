// The build of a levain: how much of it comes out of the jar. A levain that a formula or a
// conversion gives as flour and water alone has to be started from something.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "formula/formula.hpp"

namespace leavenwright {

struct Seed {
    Fraction of_levain{0.2}; // its weight; with 100 % hydration all through that is 1 : 2 : 2
    Hydration jar_hydration{1.0};
    SourcedText place; // where the wish stands, for diagnostics; may be empty
};

/// Takes the seed's flour and water out of every levain that has no culture in it yet, kind by
/// kind, so that weight, hydration and blend of the levain stay. False where a levain is too stiff
/// for what the jar brings.
bool seed_levains(Formula& formula, const Seed& seed, Diagnostics& diagnostics);

} // namespace leavenwright
