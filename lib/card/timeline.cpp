#include "card/timeline.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace leavenwright {
namespace {

// Steps that nobody can do by the clock without knowing how long they take. The others are the
// baker's hands: without a time of their own they count as none.
bool is_rise(const Step& step) {
    constexpr auto rises = std::to_array<std::string_view>({"bulk", "proof", "retard"});
    return std::find(rises.begin(), rises.end(), step.verb) != rises.end();
}

Window plus(const Window& window, const DurationRange& time) {
    return {.earliest = window.earliest + time.least,
            .likely = window.likely + 0.5 * (time.least + time.most),
            .latest = window.latest + time.most};
}

Window before_mixing(const Window& length) {
    return {.earliest = -length.latest, .likely = -length.likely, .latest = -length.earliest};
}

constexpr Window nothing{};

// The steps of a stage made ahead; nothing where a time is missing from all of them.
std::optional<Window> length_of(const Stage& stage) {
    Window length = nothing;
    bool has_time = false;
    for (const Step& step : stage.process) {
        if (step.time) {
            length = plus(length, step.time->value);
            has_time = true;
        }
    }
    return has_time ? std::optional(length) : std::nullopt;
}

std::optional<TimedStep> time_stage(const Stage& stage, const DoughForecast& forecast) {
    std::optional<Window> length = length_of(stage);
    const bool has_window = forecast.levain && is_reached(forecast.levain->in_stage.latest);
    if (stage.kind == StageKind::levain && has_window) {
        length = forecast.levain->in_stage;
    }
    return length ? std::optional(TimedStep{.begins = before_mixing(*length), .ends = nothing})
                  : std::nullopt;
}

} // namespace

std::vector<const StageWindow*> windows_by_step(const std::vector<Step>& process,
                                                const DoughForecast& forecast) {
    std::vector<const StageWindow*> windows(process.size(), nullptr);
    if (!forecast.dough) {
        return windows;
    }
    auto next = forecast.dough->stages.begin();
    const auto end = forecast.dough->stages.end();
    for (std::size_t i = 0; i < process.size(); ++i) {
        const auto found = std::find_if(next, end, [&](const StageWindow& window) {
            return window.step ? *window.step == i : window.stage == process[i].verb;
        });
        if (found != end) {
            windows[i] = &*found;
            next = found + 1;
        }
    }
    return windows;
}

Timeline plan_timeline(const Formula& formula, const DoughForecast& forecast) {
    Timeline timeline;
    for (const Stage& stage : formula.stages) {
        timeline.stages.push_back(time_stage(stage, forecast));
    }
    const std::vector<const StageWindow*> windows = windows_by_step(formula.process, forecast);
    Window now = nothing;
    std::optional<Duration> baked;
    for (std::size_t i = 0; i < formula.process.size(); ++i) {
        const Step& step = formula.process[i];
        const Window begins = now;
        if (windows[i] != nullptr && is_reached(windows[i]->after_mixing.latest)) {
            now = windows[i]->after_mixing;
        } else if (step.time) {
            now = plus(now, step.time->value);
        } else if (is_rise(step)) {
            timeline.without_time.push_back(step.verb);
        }
        timeline.steps.push_back({.begins = begins, .ends = now});
        if (step.verb == "bake") {
            baked = now.likely;
        }
    }
    timeline.ready = baked.value_or(now.likely);
    return timeline;
}

} // namespace leavenwright
