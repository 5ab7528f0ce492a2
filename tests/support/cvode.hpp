// The equations of a dough solved by SUNDIALS CVODE: another method, by other hands.
#pragma once

#include "ferment/kinetics.hpp"
#include "ferment/temperature_history.hpp"

#include <span>
#include <vector>

namespace leavenwright::testing {

/// The states at ascending hours after mixing, of the mean temperature. Adams-Moulton of variable order with
/// functional iteration, begun anew where a place changes.
std::vector<MicrobeState> solve_by_cvode(const MicrobeEquations& equations, const TemperatureHistory& history,
                                         std::span<const double> hours, double relative_error);

} // namespace leavenwright::testing
