// The same equations solved by SUNDIALS CVODE, through a day with a night in the refrigerator.
#include "ferment/dough_heat.hpp"
#include "ferment/ensemble.hpp"
#include "ferment/simulate.hpp"
#include "support/cvode.hpp"
#include "support/dough_figures.hpp"
#include "support/fermentation.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

constexpr double hour = 3600.0;

TemperatureHistory day_with_a_retard() {
    const DoughHeat ball{.mass = grams(850.0),
                         .form = DoughForm::ball(),
                         .composition = plain_dough(0.65),
                         .gas = Fraction(0.3),
                         .start = Temperature::celsius(25.0),
                         .surroundings = {.air = Surroundings::Air::still, .covered = true},
                         .environment =
                             TemperatureProfile({{seconds(3.0 * hour), Temperature::celsius(24.0)},
                                                 {seconds(14.0 * hour), Temperature::celsius(4.0)}},
                                                Temperature::celsius(27.0)),
                         .until = seconds(24.0 * hour),
                         .heat_of_fermentation = {}};
    const HeatNumerics one_zone{.shells = 20, .zones = 1};
    return compute_temperature_history(ball, one_zone);
}

double compare(const Kinetics& kinetics, const DoughMix& mix) {
    const TemperatureHistory history = day_with_a_retard();
    SimulationRequest request;
    for (int half_hours = 1; half_hours <= 48; ++half_hours) {
        request.sample_hours.push_back(half_hours / 2.0);
    }
    request.stages.push_back({.history = std::make_shared<RateSums>(history, 0.01),
                              .history_begins_h = 0.0,
                              .lasts_h = 24.0,
                              .rise_target = {},
                              .ph_target = {}});
    const Simulation ours = simulate(kinetics, mix, request);
    const MicrobeEquations equations(kinetics, mix);
    const auto theirs = solve_by_cvode(equations, history, request.sample_hours, 1e-11);
    double worst = 0.0;
    const auto compare_one = [&](double actual, double expected) {
        worst = std::max(worst, expected == 0.0 ? std::abs(actual) : std::abs(actual / expected - 1.0));
    };
    for (std::size_t i = 0; i < theirs.size(); ++i) {
        const double celsius = history.mean_c(request.sample_hours[i]);
        compare_one(ours.samples[i].acid, theirs[i][acid_state]);
        compare_one(ours.samples[i].gas, theirs[i][gas_state]);
        compare_one(ours.samples[i].ph, equations.ph(theirs[i][acid_state]));
        // a rise is the small difference of gas made and gas dissolved: of the volume, not of itself
        compare_one(1.0 + ours.samples[i].rise, 1.0 + equations.rise(theirs[i][gas_state], celsius));
    }
    return worst;
}

} // namespace

TEST_CASE("CVODE: levain, packaged yeast, both, and members of an ensemble agree to 1e-6") {
    const DoughParts levain{.flour = 90.0, .water = 65.0, .levain = 20.0, .salt = 2.0};
    const DoughParts yeast{.flour = 100.0, .water = 65.0, .salt = 2.0, .fresh_yeast = 1.0};
    const DoughParts both{.flour = 90.0, .water = 65.0, .levain = 20.0, .salt = 2.0, .fresh_yeast = 0.2};
    for (const DoughParts& parts : {levain, yeast, both}) {
        CAPTURE(parts.levain);
        CAPTURE(parts.fresh_yeast);
        for (int member = -1; member < 4; ++member) { // the middle culture first
            const Kinetics kinetics = member < 0 ? Kinetics{} : member_kinetics(Ensemble{}, member);
            const double worst = compare(kinetics, mix_of(parts));
            CAPTURE(member);
            CAPTURE(worst);
            CHECK(worst < 1e-6);
        }
    }
}
