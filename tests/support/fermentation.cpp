#include "support/fermentation.hpp"

#include <cmath>
#include <stdexcept>

namespace leavenwright::testing {

DoughMix mix_of(const DoughParts& parts) {
    const double levain_flour = parts.levain / (1.0 + parts.levain_hydration);
    const double flour = parts.flour + levain_flour;
    const double water = parts.water + parts.levain - levain_flour;
    return {.levain = Fraction(parts.levain / parts.total()),
            .fresh_yeast = Fraction(parts.fresh_yeast / parts.total()),
            .salt = BakersPercentage(parts.salt / flour),
            .sugar = BakersPercentage(0.0),
            .true_water = Hydration(water / flour),
            .water = Fraction(water / parts.total()),
            .whole_grain = Fraction(0.0)};
}

std::shared_ptr<const RateSums> held_at(double celsius, double step_h) {
    return std::make_shared<RateSums>(TemperatureHistory::constant(Temperature::celsius(celsius)), step_h);
}

std::vector<SimulatedPoint> points_at(const Kinetics& kinetics, const DoughMix& mix, double celsius,
                                      std::initializer_list<double> hours) {
    SimulationRequest request;
    request.stages.push_back({.history = held_at(celsius),
                              .history_begins_h = {},
                              .lasts_h = std::data(hours)[hours.size() - 1],
                              .rise_target = {},
                              .ph_target = {}});
    request.sample_hours = hours;
    return simulate(kinetics, mix, request).samples;
}

MicrobeState state_after(const Kinetics& kinetics, const DoughMix& mix, double celsius, double hours) {
    const MicrobeEquations equations(kinetics, mix);
    MicrobeState state = equations.start();
    const auto count = static_cast<int>(std::ceil(hours * 100.0));
    const double step = count > 0 ? hours / count : 0.0;
    const auto slope_at = [&](const MicrobeState& slope, double ahead) {
        MicrobeState moved = state;
        for (std::size_t i = 0; i < moved.size(); ++i) {
            moved[i] += ahead * slope[i];
        }
        MicrobeState change{};
        equations.derivative(moved.data(), change.data(), celsius);
        return change;
    };
    for (int i = 0; i < count; ++i) {
        const MicrobeState first = slope_at(MicrobeState{}, 0.0);
        const MicrobeState second = slope_at(first, step / 2.0);
        const MicrobeState third = slope_at(second, step / 2.0);
        const MicrobeState fourth = slope_at(third, step);
        for (std::size_t k = 0; k < state.size(); ++k) {
            state[k] += step / 6.0 * (first[k] + 2.0 * second[k] + 2.0 * third[k] + fourth[k]);
        }
    }
    return state;
}

Ripening ripening_of(const LevainBuild& build) {
    Diagnostics diagnostics;
    const auto ripening = compute_ripening(build, Ensemble{}, diagnostics);
    if (!ripening) {
        throw std::runtime_error("this levain build is refused");
    }
    return *ripening;
}

double ripe_hours(const LevainBuild& build) {
    return ripening_of(build).ripe.in_stage.likely.value() / 3600.0;
}

double sour_hours(const LevainBuild& build) {
    return in_hours(compute_souring(build, Ensemble{}).likely);
}

} // namespace leavenwright::testing
