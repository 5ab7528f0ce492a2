#include "ferment/simulate.hpp"

#include "support/fermentation.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

const DoughMix dough = mix_of({.flour = 90.0, .water = 65.0, .levain = 20.0, .salt = 2.0});

SimulatedStage stage_at(double celsius) {
    return {.history = held_at(celsius),
            .history_begins_h = {},
            .lasts_h = {},
            .rise_target = {},
            .ph_target = {}};
}

SimulatedStage for_hours(double celsius, double hours) {
    SimulatedStage stage = stage_at(celsius);
    stage.lasts_h = hours;
    return stage;
}

SimulatedStage to_rise(double celsius, double rise) {
    SimulatedStage stage = stage_at(celsius);
    stage.rise_target = rise;
    return stage;
}

Simulation run(SimulationRequest request) {
    return simulate(Kinetics{}, dough, request);
}

} // namespace

TEST_CASE("simulate: a stage by the clock ends by the clock") {
    const Simulation result = run({.stages = {for_hours(24.0, 2.5)}, .sample_hours = {}});
    REQUIRE(result.ends.size() == 1);
    CHECK(result.ends.front().hours == 2.5);
}

TEST_CASE("simulate: a stage by its rise ends at its rise") {
    const Simulation result = run({.stages = {to_rise(24.0, 0.5), to_rise(24.0, 1.0)}, .sample_hours = {}});
    // a second of time is less than 1e-4 of rise
    CHECK(near(result.ends[0].rise, 0.5, 0.0, 1e-4));
    CHECK(near(result.ends[1].rise, 1.0, 0.0, 1e-4));
    CHECK(result.ends[0].hours > 0.0);
    CHECK(result.ends[1].hours > 0.0);
}

TEST_CASE("simulate: a stage that is ready when it begins takes no time") {
    const Simulation result =
        run({.stages = {for_hours(24.0, 10.0), to_rise(24.0, 0.2)}, .sample_hours = {}});
    CHECK(result.ends[1].hours == 0.0);
}

TEST_CASE("simulate: rise and acid, both must be there") {
    SimulatedStage both = to_rise(24.0, 0.5);
    both.ph_target = 4.0;
    SimulatedStage acid = stage_at(24.0);
    acid.ph_target = 4.0;
    const double by_rise = run({.stages = {to_rise(24.0, 0.5)}, .sample_hours = {}}).ends.front().hours;
    const double by_acid = run({.stages = {acid}, .sample_hours = {}}).ends.front().hours;
    const double by_both = run({.stages = {both}, .sample_hours = {}}).ends.front().hours;
    CHECK(near(by_both, std::max(by_rise, by_acid), 0.0, 2.0 / 3600.0));
}

TEST_CASE("simulate: what is never reached, and all after it, is infinite") {
    const Simulation result = run({.stages = {to_rise(24.0, 0.1), to_rise(24.0, 5.0), for_hours(24.0, 1.0)},
                                   .longest_h = 48.0,
                                   .sample_hours = {1.0, 30.0}});
    REQUIRE(result.ends.size() == 3);
    CHECK(std::isfinite(result.ends[0].hours));
    CHECK(std::isinf(result.ends[1].hours));
    CHECK(std::isinf(result.ends[2].hours));
    CHECK(result.samples.size() == 2);
}

TEST_CASE("simulate: samples come at their hours, and beyond the last stage") {
    const Simulation long_run =
        run({.stages = {for_hours(24.0, 20.0)}, .sample_hours = {0.0, 1.0, 5.0, 12.0}});
    const Simulation short_run =
        run({.stages = {for_hours(24.0, 2.0)}, .sample_hours = {0.0, 1.0, 5.0, 12.0}});
    REQUIRE(long_run.samples.size() == 4);
    REQUIRE(short_run.samples.size() == 4);
    CHECK(long_run.samples[0].rise == 0.0);
    CHECK(long_run.samples[0].gas_dissolved == 1.0);
    for (std::size_t i = 0; i < 4; ++i) {
        CHECK(near(long_run.samples[i].rise, short_run.samples[i].rise, 1e-4, 1e-6));
        CHECK(near(long_run.samples[i].acid, short_run.samples[i].acid, 1e-4, 0.0));
    }
    CHECK(long_run.samples[3].rise > long_run.samples[2].rise);
    CHECK(long_run.samples[3].gas_dissolved < 1.0);
}

TEST_CASE("simulate: hands press bubbles out, not what is dissolved") {
    SimulatedStage pressed = for_hours(24.0, 0.0);
    pressed.gas_kept = 0.4;
    const Simulation result = run({.stages = {to_rise(24.0, 0.5), pressed}, .sample_hours = {}});
    CHECK(near(result.ends[1].rise, 0.4 * 0.5, 1e-3, 0.0));
    pressed.gas_kept = 0.0;
    const Simulation flat =
        run({.stages = {to_rise(24.0, 0.5), pressed, to_rise(24.0, 0.01)}, .sample_hours = {}});
    CHECK(flat.ends[1].rise == 0.0);
    CHECK(flat.ends[2].hours < 0.5); // the water is still full
}

TEST_CASE("simulate: equal zones are one dough, and a stage without zones has them all alike") {
    TemperatureHistory zones(5, seconds(3600.0));
    const std::array warmth{24.0, 24.0, 24.0, 24.0, 24.0};
    const std::array slopes{0.0, 0.0, 0.0, 0.0, 0.0};
    zones.add(0.0, warmth, slopes);
    zones.add(1.0, warmth, slopes);
    SimulatedStage zoned = to_rise(24.0, 0.5);
    zoned.history = std::make_shared<RateSums>(zones);
    const double one = run({.stages = {to_rise(24.0, 0.5)}, .sample_hours = {}}).ends.front().hours;
    const double five = run({.stages = {zoned}, .sample_hours = {}}).ends.front().hours;
    CHECK(near(five, one, 0.0, 2.0 / 3600.0));
    const Simulation mixed = run({.stages = {zoned, to_rise(24.0, 1.0)}, .sample_hours = {}});
    const Simulation plain = run({.stages = {to_rise(24.0, 0.5), to_rise(24.0, 1.0)}, .sample_hours = {}});
    CHECK(near(mixed.ends[1].hours, plain.ends[1].hours, 0.0, 4.0 / 3600.0));
}

TEST_CASE("simulate: a warm middle goes first") {
    TemperatureHistory zones(5, seconds(3600.0));
    const std::array warmth{28.0, 26.0, 24.0, 22.0, 20.0};
    const std::array slopes{0.0, 0.0, 0.0, 0.0, 0.0};
    zones.add(0.0, warmth, slopes);
    zones.add(1.0, warmth, slopes);
    SimulatedStage zoned = to_rise(24.0, 0.5);
    zoned.history = std::make_shared<RateSums>(zones);
    const double time = run({.stages = {zoned}, .sample_hours = {}}).ends.front().hours;
    CHECK(time > run({.stages = {to_rise(28.0, 0.5)}, .sample_hours = {}}).ends.front().hours);
    CHECK(time < run({.stages = {to_rise(20.0, 0.5)}, .sample_hours = {}}).ends.front().hours);
}

TEST_CASE("simulate: a place that changes is met on time") {
    // 3 h at 24 C, then 4 C: the answer of a step that runs over the change would show it
    TemperatureHistory history(1, seconds(3600.0));
    const std::array warm{24.0};
    const std::array cold{4.0};
    const std::array level{0.0};
    const std::array falling{-200.0};
    history.add(0.0, warm, level);
    history.add(3.0, warm, level);
    history.add(3.0, warm, falling);
    history.add(3.1, cold, falling);
    history.add(3.1, cold, level);
    history.add(20.0, cold, level);
    const auto acid_in_steps = [&](double step_h) {
        SimulatedStage stage = for_hours(24.0, 20.0);
        stage.history = std::make_shared<RateSums>(history, step_h);
        return run({.stages = {stage}, .sample_hours = {20.0}}).samples.front().acid;
    };
    CHECK(near(acid_in_steps(RateSums::usual_step_h), acid_in_steps(0.01), 1e-5, 0.0));
}

TEST_CASE("simulate: as the equations in small steps, to where acid ends and where bacteria have stopped") {
    for (const double celsius : {8.0, 26.0, 30.0, 39.5, 42.0}) {
        for (const Yeast yeast : {Yeast::humilis, Yeast::cerevisiae}) {
            Kinetics kinetics;
            kinetics.culture_yeast = yeast;
            const DoughMix mix =
                mix_of({.flour = 70.0, .water = 65.0, .levain = 60.0, .salt = 0.5, .fresh_yeast = 0.3});
            const MicrobeEquations equations(kinetics, mix);
            for (const double hours : {3.0, 9.0, 30.0}) {
                CAPTURE(celsius);
                CAPTURE(hours);
                const MicrobeState expected = state_after(kinetics, mix, celsius, hours);
                const SimulatedPoint actual = points_at(kinetics, mix, celsius, {hours}).front();
                CHECK(near(actual.acid, expected[acid_state], 1e-5, 0.0));
                CHECK(near(actual.gas, expected[gas_state], 1e-5, 0.0));
            }
        }
    }
}

TEST_CASE("simulate: years in the cold end, and in the warm they end in numbers") {
    const Simulation cold = run({.stages = {for_hours(4.0, 30000.0)}, .sample_hours = {}});
    CHECK(cold.ends.front().hours == 30000.0);
    const Simulation warm = run({.stages = {for_hours(28.0, 3000.0)}, .sample_hours = {}});
    CHECK(std::isfinite(warm.ends.front().ph));
    CHECK(warm.ends.front().rise > 2.0);
}

TEST_CASE("simulate: a history that begins later holds its first temperature until then") {
    SimulatedStage stage = for_hours(24.0, 12.0);
    TemperatureHistory history(1, seconds(3600.0));
    const std::array warm{26.0};
    const std::array level{0.0};
    history.add(0.0, warm, level);
    history.add(20.0, warm, level);
    stage.history = std::make_shared<RateSums>(history);
    stage.history_begins_h = 9.0;
    const double late = run({.stages = {stage}, .sample_hours = {}}).ends.front().rise;
    stage.history_begins_h = 0.0;
    CHECK(near(late, run({.stages = {stage}, .sample_hours = {}}).ends.front().rise, 1e-4, 0.0));
}

TEST_CASE("simulate: a dough on its way to where its bacteria stop") {
    TemperatureHistory history(1, seconds(3600.0));
    for (int hour = 0; hour <= 10; ++hour) {
        const std::array warmth{45.0 - 20.0 * std::exp(-hour / 2.0)};
        const std::array slope{10.0 * std::exp(-hour / 2.0)};
        history.add(hour, warmth, slope);
    }
    SimulatedStage stage = for_hours(24.0, 10.0);
    stage.history = std::make_shared<RateSums>(history);
    CHECK(std::isfinite(run({.stages = {stage}, .sample_hours = {}}).ends.front().rise));
}
