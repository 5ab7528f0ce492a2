// What of a formula matters to the microbes in its dough.
#pragma once

#include "ferment/kinetics.hpp"
#include "formula/overall.hpp"

namespace leavenwright {

/// `levain_times` is how many times the formula's levain is in it, of the same flour and water.
DoughMix dough_mix(const Formula& formula, const Overall& overall, double levain_times);

} // namespace leavenwright
