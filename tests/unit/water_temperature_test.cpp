#include "ferment/water_temperature.hpp"

#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

constexpr double roundings = 1e-9;

MixTemperatures cool_mix() {
    return {.flour = Temperature::celsius(18.0),
            .room = Temperature::celsius(21.0),
            .preferment = Temperature::celsius(24.0),
            .others = Temperature::celsius(5.0)};
}

MixWeights levain_dough() {
    return {.parts = {{MixPart::Kind::flour, "flour", grams(800.0), 1970.0},
                      {MixPart::Kind::preferment, "levain", grams(400.0), 3070.0},
                      {MixPart::Kind::other, "butter", grams(60.0), 2400.0}},
            .water = grams(470.0)};
}

// Everything that goes in, mixed: the mean by heat capacity.
double mixed_c(const MixTemperatures& mix, const MixWeights& weights, Temperature water) {
    double heat = weights.water.value() * water_specific_heat * water.in_celsius();
    double capacity = weights.water.value() * water_specific_heat;
    for (const MixPart& part : weights.parts) {
        heat += part.mass.value() * part.specific_heat * temperature_of(part.kind, mix).in_celsius();
        capacity += part.mass.value() * part.specific_heat;
    }
    return heat / capacity;
}

} // namespace

TEST_CASE("water_by_heat: everything mixed has the wanted temperature less the rise") {
    const Temperature dough = Temperature::celsius(25.0);
    const Temperature water = water_by_heat(dough, cool_mix(), levain_dough(), kelvins(2.0));
    CHECK(near(mixed_c(cool_mix(), levain_dough(), water), 23.0, roundings, 0.0));
    CHECK(near(rise_by_heat(dough, cool_mix(), levain_dough(), water).value(), 2.0, roundings, 0.0));
}

TEST_CASE("temperature_of: a preferment and other things have the room's where nothing is said") {
    const MixTemperatures mix{.flour = Temperature::celsius(18.0),
                              .room = Temperature::celsius(21.0),
                              .preferment = {},
                              .others = {}};
    CHECK(temperature_of(MixPart::Kind::flour, mix) == mix.flour);
    CHECK(temperature_of(MixPart::Kind::preferment, mix) == mix.room);
    CHECK(temperature_of(MixPart::Kind::other, mix) == mix.room);
    CHECK(temperature_of(MixPart::Kind::other, cool_mix()) == Temperature::celsius(5.0));
}

TEST_CASE("plan_water: each method finds its own friction in a logged mix") {
    WaterRequest request{.dough = Temperature::celsius(25.0),
                         .mix = cool_mix(),
                         .friction = {},
                         .logged = LoggedMix{.dough = Temperature::celsius(26.0),
                                             .water = Temperature::celsius(30.0),
                                             .mix = cool_mix()},
                         .weights = levain_dough()};
    const WaterPlan plan = plan_water(request);
    REQUIRE(plan.by_heat);
    CHECK(near(plan.by_factors.friction.value(), 4.0 * 26.0 - 18.0 - 21.0 - 24.0 - 30.0, roundings, 0.0));
    CHECK(near(plan.by_heat->friction.value(),
               26.0 - mixed_c(cool_mix(), levain_dough(), Temperature::celsius(30.0)), roundings, 0.0));
    // The same mix again, wanted as it was: the same water, by both.
    request.dough = Temperature::celsius(26.0);
    const WaterPlan again = plan_water(request);
    CHECK(near(again.by_factors.water.in_celsius(), 30.0, roundings, 0.0));
    CHECK(near(again.by_heat->water.in_celsius(), 30.0, roundings, 0.0));
}

TEST_CASE("plan_water: friction that is told is shared out over the factors for the rise") {
    const WaterPlan plan = plan_water({.dough = Temperature::celsius(25.0),
                                       .mix = cool_mix(),
                                       .friction = kelvins(8.0),
                                       .logged = {},
                                       .weights = levain_dough()});
    CHECK(plan.by_factors.friction.value() == 8.0);
    CHECK(plan.by_heat->friction.value() == 2.0);
}

TEST_CASE("plan_water: what water can do, what ice can, and what neither can") {
    using Verdict = WaterAnswer::Verdict;
    const auto verdict = [](double wanted_c) {
        WaterRequest request{.dough = Temperature::celsius(wanted_c),
                             .mix = cool_mix(),
                             .friction = {},
                             .logged = {},
                             .weights = {}};
        request.mix.preferment = std::nullopt;
        const WaterPlan plan = plan_water(request); // water = 3 x wanted - 39
        CHECK_FALSE(plan.by_heat);
        CHECK(plan.by_factors.ice.has_value() == (plan.by_factors.verdict == Verdict::ice));
        return plan.by_factors.verdict;
    };
    CHECK(verdict(33.1) == Verdict::too_hot);   // 60.3
    CHECK(verdict(32.0) == Verdict::hot);       // 57
    CHECK(verdict(25.0) == Verdict::tap);       // 36
    CHECK(verdict(17.0) == Verdict::ice);       // 12, from a tap of 15
    CHECK(verdict(5.0) == Verdict::ice);        // -24
    CHECK(verdict(-15.0) == Verdict::too_cold); // -84: colder than ice that melts
}

TEST_CASE("ice_for: ice from a freezer is worth more") {
    const Temperature water = Temperature::celsius(5.0);
    const Temperature tap = Temperature::celsius(15.0);
    const auto wet = ice_for(water, tap, Temperature::celsius(0.0));
    const auto frozen = ice_for(water, tap, Temperature::celsius(-18.0));
    REQUIRE(wet);
    REQUIRE(frozen);
    CHECK(frozen->instead < wet->instead);
    CHECK(wet->instead < wet->on_top);
    // 10 / (85 + 18 x 0.504) of the water
    CHECK(near(frozen->on_top.value(), 10.0 / (85.0 + 18.0 * 0.504), 1e-4, 0.0)); // melting is 80.0016 K
}
