#include "support/forecast.hpp"

#include <cmath>

namespace leavenwright::testing {
namespace {

constexpr double hour_s = 3600.0;

Window window(double earliest_h, double likely_h, double latest_h) {
    return {.earliest = seconds(earliest_h * hour_s),
            .likely = seconds(likely_h * hour_s),
            .latest = seconds(latest_h * hour_s)};
}

StageWindow stage(const std::string& name, const Window& in_stage, const Window& after_mixing) {
    StageWindow stage;
    stage.stage = name;
    stage.in_stage = in_stage;
    stage.after_mixing = after_mixing;
    stage.rise = Fraction(0.5);
    stage.surroundings = Temperature::celsius(24.0);
    stage.dough = Temperature::celsius(24.3);
    return stage;
}

Fraction rise_at(double hours, double half_h) {
    return Fraction(1.4 / (1.0 + std::exp(-1.1 * (hours - half_h))) - 1.4 / (1.0 + std::exp(1.1 * half_h)));
}

std::vector<CurvePoint> curve() {
    std::vector<CurvePoint> points;
    for (int minutes = 0; minutes <= 480; minutes += 5) {
        const double hours = minutes / 60.0;
        CurvePoint point;
        point.time = seconds(hours * hour_s);
        point.rise_low = rise_at(hours, 6.4);
        point.rise_likely = rise_at(hours, 5.0);
        point.rise_high = rise_at(hours, 3.9);
        point.ph = 5.8 - 0.2 * hours;
        point.surroundings = Temperature::celsius(hours < 4.5 ? 24.0 : 26.0);
        point.dough = Temperature::celsius(24.0 + std::exp(-hours) + (hours < 4.5 ? 0.0 : 1.6));
        points.push_back(point);
    }
    return points;
}

} // namespace

DoughForecast made_up_forecast() {
    Windows dough;
    dough.stages.push_back(stage("bulk", window(3.5, 4.5, 6.1), window(3.5, 4.5, 6.1)));
    dough.stages.back().signs = "risen by half, domed, with bubbles at the sides";
    dough.stages.back().past = "it turns slack and tears when it is shaped";
    dough.stages.push_back(stage("proof", window(1.3, 1.8333, 2.5), window(4.9, 6.3333, 8.3)));
    dough.stages.back().signs = "a dent fills slowly and not quite";
    dough.curve = curve();
    dough.members = 200;
    dough.settings = {"Bulk to a rise of 50 %, proof to 90 %; no calibration of your own."};
    dough.cautions = {"Times are estimates: go by the signs."};
    StageWindow levain = stage("levain", window(4.8, 6.0, 7.9), window(4.8, 6.0, 7.9));
    levain.signs = "doubled, domed, a spoonful floats";
    const Temperature room = Temperature::celsius(24.0);
    return {.dough = std::move(dough),
            .levain = std::move(levain),
            .water = plan_water({.dough = room,
                                 .mix = {.flour = room, .room = room, .preferment = room, .others = {}},
                                 .friction = kelvins(6.0),
                                 .logged = {},
                                 .weights = {}})};
}

} // namespace leavenwright::testing
