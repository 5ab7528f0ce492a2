// When each step of a formula begins and ends, counted from the mixing. Times come from the
// windows of the engine, else from the formula's own; what has neither is named, not guessed.
#pragma once

#include "ferment/water_temperature.hpp"
#include "ferment/windows.hpp"
#include "formula/formula.hpp"

#include <optional>
#include <string>
#include <vector>

namespace leavenwright {

/// What the engine says about a dough, as far as it was asked.
struct DoughForecast {
    std::optional<Windows> dough;
    std::optional<StageWindow> levain; // its ripening
    std::optional<WaterPlan> water;    // for the mix
};

struct TimedStep {
    Window begins;
    Window ends;
};

struct Timeline {
    std::vector<std::optional<TimedStep>> stages; // of formula.stages; nothing where no time is known
    std::vector<TimedStep> steps;                 // of formula.process
    std::vector<std::string> without_time;        // rises whose length nobody knows

    /// When the bread comes out: the end of the last bake, else of the last step.
    Duration ready;
};

Timeline plan_timeline(const Formula& formula, const DoughForecast& forecast);

/// The window of each step of the process, in the order of the steps; null where there is none.
std::vector<const StageWindow*> windows_by_step(const std::vector<Step>& process,
                                                const DoughForecast& forecast);

} // namespace leavenwright
