// One culture in one dough through its stages: integrates the equations of kinetics.hpp in every
// zone of the dough, and finds when each stage has the rise that ends it.
#pragma once

#include "ferment/kinetics.hpp"
#include "ferment/rate_sums.hpp"

#include <limits>
#include <memory>
#include <optional>
#include <vector>

namespace leavenwright {

/// A stage as the engine sees it. Hours, and rises as V/V0 - 1.
struct SimulatedStage {
    std::shared_ptr<const RateSums> history;
    /// The history's own beginning in hours after mixing where a profile drives it, from which on it holds;
    /// until then that of the stage before does. Otherwise it begins with the stage.
    std::optional<double> history_begins_h;
    std::optional<double> lasts_h;     // ends by the clock
    std::optional<double> rise_target; // or by its rise
    std::optional<double> ph_target;   // and by its acid: a levain is ripe at both
    double gas_kept = 1.0;             // of the bubbles, when the stage begins: dividing, shaping
};

struct SimulatedEnd {
    double hours; // from the beginning of the stage; infinite where it is not reached
    double rise;
    double ph;
};

/// The state of the whole dough at one time.
struct SimulatedPoint {
    double rise;
    double ph;
    double acid;          // mmol/kg
    double gas;           // mmol/kg
    double gas_dissolved; // share of the gas
};

struct SimulationRequest {
    std::vector<SimulatedStage> stages;
    double longest_h = 96.0;          // that one stage is looked at
    std::vector<double> sample_hours; // ascending, after mixing; the last stage goes on for them
};

struct Simulation {
    std::vector<SimulatedEnd> ends;      // per stage; those after one never reached are infinite
    std::vector<SimulatedPoint> samples; // per sample hour
};

/// The yeasts in closed form; lactobacilli and acid by Runge and Kutta's fourth order, whose
/// steps are laid in the history, in the lactobacilli's hours at their best temperature. Zones
/// ferment apart and share one rise.
Simulation simulate(const Kinetics& kinetics, const DoughMix& mix, const SimulationRequest& request);

} // namespace leavenwright
