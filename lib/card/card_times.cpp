#include "card/card_times.hpp"

#include "source/unicode.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <string_view>

namespace leavenwright {
namespace {

constexpr std::size_t longest_step_note = 300;
constexpr std::size_t longest_sign = 400;
// More points than a chart on a page can show.
constexpr std::size_t most_curve_points = 49;

double in_unit(Temperature temperature, UnitSystem units) {
    const double degrees = units == UnitSystem::us ? temperature.in_fahrenheit() : temperature.in_celsius();
    return std::round(degrees * 10.0) / 10.0;
}

std::string_view unit_of(UnitSystem units) {
    return units == UnitSystem::us ? "°F" : "°C";
}

void append(std::string& text, std::string_view between, std::string_view more) {
    if (!more.empty()) {
        text += text.empty() ? std::string(more) : std::string(between) + std::string(more);
    }
}

std::string detail_of(const Step& step) {
    std::string detail = step.time ? step.time->text : "";
    append(detail, " ", step.at ? "at " + step.at->text : "");
    append(detail, ", ", step.to ? "dough to " + step.to->text : "");
    append(detail, "; ", printable(on_one_line(step.note), longest_step_note));
    return detail;
}

std::string clock_range(ClockTime base, const Window& window) {
    const ClockTime likely = later(base, window.likely);
    const ClockTime earliest = later(base, window.earliest);
    const ClockTime latest = later(base, window.latest);
    return earliest == latest
               ? show_clock(likely)
               : fmt::format("{} ({} to {})", show_clock(likely), show_clock(earliest), show_clock(latest));
}

std::string with_full_stop(const std::string& words) {
    const std::string text = printable(words, longest_sign);
    return text.empty() || text.back() == '.' ? text : text + ".";
}

std::string sentence(const std::string& words) {
    std::string text = with_full_stop(words);
    if (!text.empty() && text.front() >= 'a' && text.front() <= 'z') {
        text.front() = static_cast<char>(text.front() - 'a' + 'A');
    }
    return text;
}

CardWindow window_of(const StageWindow& stage, std::optional<ClockTime> begin_of_clock,
                     const Window& by_clock) {
    CardWindow window{.name = stage.stage,
                      .likely = "not within the time looked at",
                      .range = {},
                      .clock = {},
                      .signs = sentence(stage.signs),
                      .past = with_full_stop(stage.past)};
    const Window& in_stage = stage.in_stage;
    if (!is_reached(in_stage.likely)) {
        return window;
    }
    window.likely = show_length(in_stage.likely);
    if (!stage.by_clock) {
        window.range = show_length(in_stage.earliest) + " to " +
                       (is_reached(in_stage.latest) ? show_length(in_stage.latest) : "much later");
    }
    if (begin_of_clock && is_reached(by_clock.latest)) {
        window.clock = clock_range(*begin_of_clock, by_clock);
    }
    return window;
}

void write_windows(Card& card, const Formula& formula, const DoughForecast& forecast,
                   std::optional<ClockTime> mixing) {
    if (forecast.levain) {
        const Window at_mixing{};
        card.windows.push_back(window_of(*forecast.levain, mixing, at_mixing));
    }
    for (const StageWindow* stage : windows_by_step(formula.process, forecast)) {
        // What the clock ends and nothing shows is a step, not something to look for.
        if (stage != nullptr && !(stage->by_clock && stage->signs.empty())) {
            card.windows.push_back(window_of(*stage, mixing, stage->after_mixing));
        }
    }
}

void write_curve(Card& card, const Windows& windows, UnitSystem units) {
    const std::size_t count = windows.curve.size();
    const std::size_t stride = (count + most_curve_points - 1) / most_curve_points;
    const auto percent = [](Fraction rise) { return std::round(rise.in_percent()); };
    for (std::size_t i = 0; i < count; i += stride) {
        const CurvePoint& point = windows.curve[i];
        card.curve.push_back({.hours = std::round(point.time.value() / 36.0) / 100.0,
                              .rise_low = percent(point.rise_low),
                              .rise_likely = percent(point.rise_likely),
                              .rise_high = percent(point.rise_high),
                              .dough = in_unit(point.dough, units),
                              .surroundings = in_unit(point.surroundings, units)});
    }
    card.temperature_unit = unit_of(units);
    card.settings = windows.settings;
}

// What is done with a stage made ahead, behind what it is.
void write_stage_steps(Card& card, const Formula& formula) {
    for (std::size_t i = 0; i < formula.stages.size(); ++i) {
        for (const Step& step : formula.stages[i].process) {
            const std::string detail = detail_of(step);
            append(card.columns[i].when, "; ", step.verb + (detail.empty() ? "" : " " + detail));
        }
    }
}

void write_stage_hours(Card& card, const Timeline& timeline, ClockTime mixing) {
    for (std::size_t i = 0; i < timeline.stages.size(); ++i) {
        if (timeline.stages[i]) {
            card.columns[i].when =
                "begin " + clock_range(mixing, timeline.stages[i]->begins) + ", " + card.columns[i].when;
        }
    }
}

} // namespace

std::optional<ClockTime> mixing_time(const Timeline& timeline, const CardRequest& request,
                                     Diagnostics& diagnostics) {
    if (!request.hour) {
        return std::nullopt;
    }
    if (!timeline.without_time.empty()) {
        std::string steps;
        for (const std::string& step : timeline.without_time) {
            append(steps, ", ", step);
        }
        diagnostics.error(Code::timeline_unknown, request.hour->place,
                          "how long this dough takes is not known: there is no time for " + steps,
                          "leave the hour out, and judge the dough by its rise");
        return std::nullopt;
    }
    const bool is_ready = request.hour->of == CardHour::Of::ready;
    return is_ready ? later(request.hour->time, -timeline.ready) : request.hour->time;
}

void write_times(Card& card, const Formula& formula, const Timeline& timeline, const CardRequest& request,
                 std::optional<ClockTime> mixing) {
    write_stage_steps(card, formula);
    if (mixing) {
        card.date = show_day(*mixing);
        write_stage_hours(card, timeline, *mixing);
    }
    for (std::size_t i = 0; i < formula.process.size(); ++i) {
        card.steps.push_back(
            {.name = formula.process[i].verb,
             .clock = mixing ? show_clock(later(*mixing, timeline.steps[i].begins.likely)) : std::string(),
             .detail = detail_of(formula.process[i])});
    }
    if (mixing && !formula.process.empty()) {
        card.steps.push_back({.name = "done",
                              .clock = show_clock(later(*mixing, timeline.steps.back().ends.likely)),
                              .detail = {}});
    }
    write_windows(card, formula, request.forecast, mixing);
    if (request.forecast.dough) {
        write_curve(card, *request.forecast.dough, request.scale.units);
    }
}

} // namespace leavenwright
