// Doughs and sours of tests, and what the engine makes of them at one temperature.
#pragma once

#include "culture/ripening.hpp"
#include "ferment/simulate.hpp"

#include <initializer_list>
#include <vector>

namespace leavenwright::testing {

/// A dough by weight, as sources give it.
struct DoughParts {
    double flour = 100.0; // beside that of the levain
    double water = 65.0;
    double levain = 0.0;
    double levain_hydration = 1.0;
    double salt = 0.0;
    double fresh_yeast = 0.0;

    double total() const { return flour + water + levain + salt + fresh_yeast; }
};
DoughMix mix_of(const DoughParts& parts);

/// One temperature for good, in steps as long as a simulation's or finer.
std::shared_ptr<const RateSums> held_at(double celsius, double step_h = RateSums::usual_step_h);

/// The dough at these hours, held at one temperature.
std::vector<SimulatedPoint> points_at(const Kinetics& kinetics, const DoughMix& mix, double celsius,
                                      std::initializer_list<double> hours);

/// Every state of the equations after some hours at one temperature, by Runge and Kutta's fourth order in
/// steps of a hundredth of an hour: independent of simulate().
MicrobeState state_after(const Kinetics& kinetics, const DoughMix& mix, double celsius, double hours);

/// A levain of seed, flour and water at one temperature; throws where the build is refused.
Ripening ripening_of(const LevainBuild& build);
/// Its likely ripe hour.
double ripe_hours(const LevainBuild& build);
/// The likely hour at which it is taken as a sour.
double sour_hours(const LevainBuild& build);

} // namespace leavenwright::testing
