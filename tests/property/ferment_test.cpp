// Laws of fermentation: what must hold whatever the constants are.
#include "ferment/ensemble.hpp"
#include "property/random_formula.hpp"
#include "schedule/search.hpp"
#include "support/dough_figures.hpp"
#include "support/fermentation.hpp"
#include "support/formulas.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <functional>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

constexpr std::uint64_t first_seed = 18930;
constexpr int cases = 200;
constexpr double hour = 3600.0;
constexpr double infinite = std::numeric_limits<double>::infinity();
// Times are found to a second, from states good to 1e-5.
constexpr double noise_h = 5.0 / 3600.0;

struct RandomDough {
    DoughParts parts;
    Kinetics kinetics;
    double celsius;
};

RandomDough random_dough(std::uint64_t seed) {
    Dice dice(seed);
    RandomDough dough{.parts = {}, .kinetics = {}, .celsius = dice.between(14.0, 33.0)};
    dough.parts.water = dice.between(50.0, 100.0);
    dough.parts.levain = dice.between(2.0, 40.0);
    dough.parts.levain_hydration = dice.between(0.5, 1.5);
    dough.parts.salt = dice.between(0.0, 2.5);
    dough.parts.fresh_yeast = dice.chance(0.3) ? dice.between(0.05, 2.0) : 0.0;
    dough.kinetics = member_kinetics(Ensemble{}, static_cast<int>(dice.below(1000)));
    return dough;
}

double hours_to_rise(const Kinetics& kinetics, const DoughMix& mix, double celsius, double rise = 0.5) {
    SimulationRequest request;
    request.longest_h = 240.0;
    request.stages.push_back({.history = held_at(celsius),
                              .history_begins_h = {},
                              .lasts_h = {},
                              .rise_target = rise,
                              .ph_target = {}});
    return simulate(kinetics, mix, request).ends.front().hours;
}

void for_random_doughs(const std::function<void(const RandomDough&, Dice&)>& law) {
    MESSAGE("seeds ", first_seed, " to ", first_seed + cases - 1);
    for (std::uint64_t seed = first_seed; seed < first_seed + cases; ++seed) {
        CAPTURE(seed);
        const RandomDough dough = random_dough(seed);
        Dice dice(seed + 1000000);
        law(dough, dice);
    }
}

PlannedStage stage_of(const char* name, double celsius, Mass mass, DoughForm form) {
    PlannedStage stage;
    stage.name = name;
    stage.surroundings = Temperature::celsius(celsius);
    stage.mass = mass;
    stage.form = form;
    stage.place.covered = true;
    return stage;
}

DoughPlan bulk_plan(Mass mass = kilograms(1.0), DoughForm form = DoughForm::tub(0.6)) {
    DoughPlan plan;
    plan.mix = mix_of({.flour = 90.0, .water = 65.0, .levain = 20.0, .salt = 2.0});
    plan.composition = plain_dough(0.65);
    plan.stages = {stage_of("bulk", 24.0, mass, form)};
    plan.stages.front().rise = Fraction(0.5);
    return plan;
}

TemperatureProfile cut(double celsius, std::initializer_list<double> hours_of_pieces) {
    std::vector<TemperatureProfile::Leg> legs;
    for (const double piece : hours_of_pieces) {
        legs.push_back({seconds(piece * hour), Temperature::celsius(celsius)});
    }
    return TemperatureProfile(std::move(legs), Temperature::celsius(celsius));
}

// Every number of the windows, for comparison to the last bit.
std::vector<double> numbers_of(const Windows& windows) {
    std::vector<double> numbers;
    for (const StageWindow& stage : windows.stages) {
        for (const Window& window : {stage.in_stage, stage.after_mixing}) {
            numbers.insert(numbers.end(),
                           {window.earliest.value(), window.likely.value(), window.latest.value()});
        }
        numbers.push_back(stage.dough.in_kelvins());
    }
    for (const CurvePoint& point : windows.curve) {
        numbers.insert(numbers.end(), {point.time.value(), point.rise_low.value(), point.rise_likely.value(),
                                       point.rise_high.value(), point.ph, point.acid_mmol_per_kg,
                                       point.gas_dissolved.value(), point.dough.in_kelvins()});
    }
    return numbers;
}

} // namespace

TEST_CASE("more levain is never slower, and twice as much never halves the time") {
    for_random_doughs([](const RandomDough& dough, Dice& dice) {
        // the rest of the dough stays: more levain by weight would thin out the packaged yeast
        const DoughMix mix = mix_of(dough.parts);
        const auto time_with = [&](double times) {
            DoughMix other = mix;
            other.levain = Fraction(times * mix.levain.value());
            return hours_to_rise(dough.kinetics, other, dough.celsius);
        };
        const double with_less = time_with(1.0);
        CHECK(time_with(dice.between(1.01, 2.5)) <= with_less + noise_h);
        if (std::isfinite(with_less)) {
            CHECK(time_with(2.0) > 0.5 * with_less);
        }
    });
}

TEST_CASE("more packaged yeast is never slower") {
    for_random_doughs([](const RandomDough& dough, Dice& dice) {
        DoughParts more = dough.parts;
        more.fresh_yeast += dice.between(0.01, 1.0);
        CHECK(hours_to_rise(dough.kinetics, mix_of(more), dough.celsius) <=
              hours_to_rise(dough.kinetics, mix_of(dough.parts), dough.celsius) + noise_h);
    });
}

TEST_CASE("salt never speeds a dough up") {
    for_random_doughs([](const RandomDough& dough, Dice& dice) {
        DoughMix saltier = mix_of(dough.parts);
        const double without = hours_to_rise(dough.kinetics, saltier, dough.celsius);
        saltier.salt = BakersPercentage(saltier.salt.value() + dice.between(0.001, 0.03));
        CHECK(hours_to_rise(dough.kinetics, saltier, dough.celsius) >= without - noise_h);
    });
}

TEST_CASE("the best temperature is that of the yeast") {
    const auto best_celsius = [](const Kinetics& kinetics, const DoughMix& mix) {
        double best = 10.0;
        double shortest = infinite;
        for (double celsius = 10.0; celsius <= 45.0; celsius += 0.25) {
            const double time = hours_to_rise(kinetics, mix, celsius);
            best = time < shortest ? celsius : best;
            shortest = std::min(shortest, time);
        }
        return best;
    };
    for (const double levain : {5.0, 20.0, 40.0}) {
        const DoughMix dough = mix_of({.flour = 100.0, .water = 65.0, .levain = levain, .salt = 2.0});
        Kinetics humilis;
        humilis.culture_yeast = Yeast::humilis;
        const double best = best_celsius(humilis, dough);
        CAPTURE(levain);
        CAPTURE(best);
        CHECK(best >= 26.0);
        CHECK(best <= 29.0);
    }
    const DoughMix yeasted = mix_of({.flour = 100.0, .water = 65.0, .salt = 2.0, .fresh_yeast = 1.0});
    CHECK(best_celsius(Kinetics{}, yeasted) >= 30.0);
}

TEST_CASE("a longer retard never lowers acid") {
    for_random_doughs([](const RandomDough& dough, Dice& dice) {
        const double warm = dice.between(1.0, 6.0);
        const double cold = dice.between(1.0, 8.0);
        const double retard = dice.between(0.0, 48.0);
        const auto acid_after = [&](double retard_h) {
            SimulationRequest request;
            const auto add = [&](double celsius, double time) {
                request.stages.push_back({.history = held_at(celsius),
                                          .history_begins_h = {},
                                          .lasts_h = time,
                                          .rise_target = {},
                                          .ph_target = {}});
            };
            add(dough.celsius, warm);
            add(cold, retard_h);
            add(22.0, 2.0);
            request.sample_hours = {warm + retard_h + 2.0};
            return simulate(dough.kinetics, mix_of(dough.parts), request).samples.front().acid;
        };
        // 1e-5 is the relative error of the states
        CHECK(acid_after(retard + dice.between(0.1, 24.0)) >= acid_after(retard) * (1.0 - 2e-5));
    });
}

TEST_CASE("one temperature cut in pieces gives the same answer") {
    DoughPlan whole = bulk_plan();
    whole.profile = TemperatureProfile(Temperature::celsius(24.0));
    const auto expected = numbers_of(compute_windows(whole, {.members = least_members}));
    for (const auto& pieces : {cut(24.0, {1.0}), cut(24.0, {0.3, 0.7, 2.0, 1.5}), cut(24.0, {3.0, 40.0})}) {
        DoughPlan in_pieces = whole;
        in_pieces.profile = pieces;
        const auto actual = numbers_of(compute_windows(in_pieces, {.members = least_members}));
        REQUIRE(actual.size() == expected.size());
        for (std::size_t i = 0; i < actual.size(); ++i) {
            CHECK(near(actual[i], expected[i], 1e-6, 1e-9));
        }
    }
}

TEST_CASE("a stage cut in pieces gives the same dough") {
    for_random_doughs([](const RandomDough& dough, Dice& dice) {
        SimulationRequest whole;
        whole.sample_hours = {12.0};
        const auto stage = [&](double time) {
            return SimulatedStage{.history = held_at(dough.celsius, 0.03),
                                  .history_begins_h = {},
                                  .lasts_h = time,
                                  .rise_target = {},
                                  .ph_target = {}};
        };
        SimulationRequest in_pieces = whole;
        whole.stages = {stage(12.0)};
        const double first = dice.between(0.1, 11.9);
        in_pieces.stages = {stage(first), stage(12.0 - first)};
        const SimulatedPoint expected = simulate(dough.kinetics, mix_of(dough.parts), whole).samples.front();
        const SimulatedPoint actual =
            simulate(dough.kinetics, mix_of(dough.parts), in_pieces).samples.front();
        CHECK(near(actual.acid, expected.acid, 1e-6, 0.0));
        CHECK(near(actual.gas, expected.gas, 1e-6, 0.0));
        CHECK(near(actual.rise, expected.rise, 1e-6, 1e-6));
    });
}

TEST_CASE("windows are the same to the last bit on any number of threads") {
    const DoughPlan plan = bulk_plan();
    const auto expected = numbers_of(compute_windows(plan, {.members = 150, .threads = 1}));
    for (const unsigned threads : {2U, 3U, 7U, 200U}) {
        CAPTURE(threads);
        CHECK(numbers_of(compute_windows(plan, {.members = 150, .threads = threads})) == expected);
    }
}

TEST_CASE("a ball of 250 g and a tub of 5 kg go differently into the cold") {
    const auto in_the_cold = [](Mass mass, DoughForm form) {
        DoughPlan plan = bulk_plan(mass, form);
        plan.mixed_at = Temperature::celsius(26.0);
        plan.stages.front().surroundings = Temperature::celsius(4.0);
        plan.stages.front().rise.reset();
        plan.stages.front().lasts = seconds(12.0 * hour);
        return compute_windows(plan, {.members = least_members}).curve[72]; // 12 of 16 h
    };
    const CurvePoint ball = in_the_cold(grams(250.0), DoughForm::ball());
    const CurvePoint tub = in_the_cold(kilograms(5.0), DoughForm::tub());
    CHECK(near(in_hours(ball.time), 12.0, 1e-9, 0.0));
    CHECK(tub.rise_likely.value() > ball.rise_likely.value() + 0.1);
    CHECK(tub.acid_mmol_per_kg > 1.2 * ball.acid_mmol_per_kg);
    CHECK(tub.dough > ball.dough + kelvins(1.0));
}

TEST_CASE("bulk windows of an uncalibrated culture are not narrower than a quarter either way") {
    for (const double celsius : {18.0, 22.0, 26.0, 30.0}) {
        DoughPlan plan = bulk_plan();
        plan.mixed_at = Temperature::celsius(celsius);
        plan.stages.front().surroundings = plan.mixed_at;
        const Window window = compute_windows(plan, {}).stages.front().in_stage;
        CAPTURE(celsius);
        CHECK(in_hours(window.latest) - in_hours(window.earliest) >= 0.5 * in_hours(window.likely));
        CHECK(window.earliest < window.likely);
        CHECK(window.likely < window.latest);
    }
}

TEST_CASE("what a search answers takes the time that was asked for") {
    const Formula loaf =
        loaf_of_practice("process:\n  - bulk\n  - shape\n  - retard: { for: 10 h, at: 4 C }\n  - proof\n");
    const Ensemble ensemble{.members = 200};
    PlanRequest request;
    request.bulk_rise = Fraction(0.5); // with its default it depends on the temperature sought
    Diagnostics diagnostics;
    const auto likely = [&](const PlanRequest& settled) {
        const Windows windows = windows_of(loaf, settled, ensemble, diagnostics).value();
        return in_hours(windows.stages.back().after_mixing.likely);
    };
    const SearchRequest wish{.sought = Sought::inoculation,
                             .available = seconds(18.0 * hour),
                             .inoculation = PrefermentedFlour(0.1),
                             .unfit = {},
                             .place = {},
                             .command = {}};
    for (const Sought sought : {Sought::inoculation, Sought::temperature, Sought::retard}) {
        SearchRequest one = wish;
        one.sought = sought;
        if (sought == Sought::retard) {
            one.available = seconds(30.0 * hour);
        }
        const Answer answer = search(loaf, request, one, ensemble, diagnostics).value();
        PlanRequest settled = request;
        if (answer.inoculation) {
            settled.levain_times = answer.inoculation->value() / wish.inoculation.value();
        }
        settled.at = answer.temperature;
        settled.retard = answer.retard;
        CAPTURE(static_cast<int>(sought));
        CHECK(near(likely(settled), in_hours(one.available), 0.01, 0.0)); // twelve halvings of the bounds
    }
}

TEST_CASE("both ends of the times that a search names are accepted when they are asked for") {
    const std::array processes{
        "process:\n  - bulk\n  - shape\n  - retard: { for: 10 h, at: 4 C }\n  - proof\n",
        "process:\n  - bulk: { at: 21 C }\n  - retard\n  - shape\n  - proof: { at: 27 C }\n"};
    for (std::uint64_t seed = 0; seed < 4; ++seed) {
        const Formula loaf = loaf_of_practice(processes[seed % processes.size()]);
        const Ensemble ensemble{.members = least_members, .seed = first_seed + seed};
        for (const Sought sought : {Sought::inoculation, Sought::temperature, Sought::retard}) {
            SearchRequest wish{.sought = sought,
                               .available = hours(0.1),
                               .inoculation = PrefermentedFlour(0.1),
                               .unfit = {},
                               .place = {},
                               .command = {}};
            Diagnostics refused;
            CHECK_FALSE(search(loaf, {}, wish, ensemble, refused));
            const std::string hint = refused.in_order().front().hint;
            CAPTURE(hint);
            double least = 0.0;
            double most = 0.0;
            REQUIRE(std::sscanf(hint.c_str(), "within these bounds it takes %lf h to %lf h", &least, &most) ==
                    2);
            CHECK(least < most);
            for (const double end : {least, most}) {
                wish.available = hours(end);
                Diagnostics diagnostics;
                CHECK(search(loaf, {}, wish, ensemble, diagnostics));
                CHECK(diagnostics.empty());
            }
        }
    }
}
