#include "ferment/ensemble.hpp"

#include "support/dough_figures.hpp"
#include "support/fermentation.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

constexpr double hour = 3600.0;

DoughPlan plan_with(std::vector<PlannedStage> stages) {
    DoughPlan plan;
    plan.mix = mix_of({.flour = 90.0, .water = 65.0, .levain = 20.0, .salt = 2.0});
    plan.composition = plain_dough(0.65);
    plan.stages = std::move(stages);
    return plan;
}

PlannedStage stage(const char* name, double celsius) {
    PlannedStage planned;
    planned.name = name;
    planned.surroundings = Temperature::celsius(celsius);
    planned.mass = kilograms(1.0);
    planned.form = DoughForm::tub(0.6);
    return planned;
}

PlannedStage rising(const char* name, double celsius, double rise) {
    PlannedStage planned = stage(name, celsius);
    planned.rise = Fraction(rise);
    return planned;
}

} // namespace

TEST_CASE("member_kinetics: the same for the same seed and number, another otherwise") {
    const Kinetics one = member_kinetics({.seed = 7}, 3);
    CHECK(one.yeast_per_h == member_kinetics({.seed = 7}, 3).yeast_per_h);
    CHECK(one.yeast_per_h != member_kinetics({.seed = 7}, 4).yeast_per_h);
    CHECK(one.yeast_per_h != member_kinetics({.seed = 8}, 3).yeast_per_h);
}

TEST_CASE("member_kinetics: a fifth and half of one yeast and lactobacillus, spread around the middle") {
    constexpr int members = 4000;
    int humilis = 0;
    int acid_tolerant = 0;
    int both = 0;
    double sum = 0.0;
    double squares = 0.0;
    for (int i = 0; i < members; ++i) {
        const Kinetics member = member_kinetics({}, i);
        humilis += member.culture_yeast == Yeast::humilis ? 1 : 0;
        const bool is_tolerant = member.culture_bacteria == Lactobacillus::acid_tolerant;
        acid_tolerant += is_tolerant ? 1 : 0;
        both += is_tolerant && member.culture_yeast == Yeast::humilis ? 1 : 0;
        const double deviation = std::log(member.yeast_per_h / Kinetics{}.yeast_per_h);
        sum += deviation;
        squares += deviation * deviation;
        REQUIRE(member.retention <= 0.97);
        REQUIRE(member.lag > 0.0);
    }
    // four standard errors
    CHECK(near(humilis, members / 5.0, 0.0, 4.0 * std::sqrt(members * 0.2 * 0.8)));
    CHECK(near(acid_tolerant, members / 2.0, 0.0, 4.0 * std::sqrt(members) / 2.0));
    CHECK(near(both, members / 10.0, 0.0, 4.0 * std::sqrt(members * 0.1 * 0.9))); // drawn apart
    const double sigma = std::hypot(0.20, 0.10);
    CHECK(near(sum / members, 0.0, 0.0, 4.0 * sigma / std::sqrt(members)));
    CHECK(near(std::sqrt(squares / members), sigma, 4.0 / std::sqrt(2.0 * members), 0.0));
}

TEST_CASE("member_kinetics: vigour is a factor of both growths") {
    const Kinetics usual = member_kinetics({}, 5);
    const Kinetics strong = member_kinetics({.vigour = 1.3}, 5);
    CHECK(near(strong.yeast_per_h, 1.3 * usual.yeast_per_h, 1e-12, 0.0));
    CHECK(near(strong.bacteria_per_h, 1.3 * usual.bacteria_per_h, 1e-12, 0.0));
    CHECK(strong.gas_per_cell == usual.gas_per_cell);
}

TEST_CASE("compute_windows: stage by stage, in order") {
    PlannedStage divide = stage("divide", 24.0);
    divide.lasts = seconds(hour / 2.0);
    divide.gas_kept = Fraction(0.5);
    const DoughPlan plan = plan_with({rising("bulk", 24.0, 0.5), divide, rising("proof", 24.0, 1.0)});
    const Windows windows = compute_windows(plan, {.members = 200});
    REQUIRE(windows.stages.size() == 3);
    CHECK(windows.members == 200);
    for (const StageWindow& one : windows.stages) {
        CAPTURE(one.stage);
        CHECK(one.in_stage.earliest <= one.in_stage.likely);
        CHECK(one.in_stage.likely <= one.in_stage.latest);
        CHECK(one.surroundings == Temperature::celsius(24.0));
        CHECK(one.dough > Temperature::celsius(23.9)); // its own heat
    }
    CHECK(windows.stages[0].after_mixing.likely == windows.stages[0].in_stage.likely);
    CHECK(windows.stages[1].by_clock);
    CHECK(near(windows.stages[1].in_stage.latest.value(), hour / 2.0, 1e-12, 0.0));
    CHECK(windows.stages[2].after_mixing.likely > windows.stages[1].after_mixing.likely);
    // the curve: from mixing to a third beyond the likely end
    CHECK(windows.curve.front().time.value() == 0.0);
    CHECK(near(windows.curve.back().time.value(),
               windows.stages.back().after_mixing.likely.value() * 4.0 / 3.0, 0.1, 0.0));
    for (const CurvePoint& point : windows.curve) {
        CHECK(point.rise_low <= point.rise_likely);
        CHECK(point.rise_likely <= point.rise_high);
    }
}

TEST_CASE("compute_windows: what is never ready is never, and the curve is there all the same") {
    DoughPlan hot = plan_with({rising("bulk", 50.0, 0.5)});
    hot.mixed_at = Temperature::celsius(50.0);
    const Windows windows = compute_windows(hot, {.members = least_members});
    CHECK_FALSE(is_reached(windows.stages.front().in_stage.likely));
    CHECK(windows.curve.size() > 10);
    CHECK(std::isfinite(windows.curve.back().rise_likely.value()));
}

TEST_CASE("compute_windows: a profile drives all stages") {
    DoughPlan plan = plan_with({rising("bulk", 40.0, 0.5)}); // the stage's own place is not used
    plan.profile = TemperatureProfile({{seconds(2.0 * hour), Temperature::celsius(24.0)},
                                       {seconds(10.0 * hour), Temperature::celsius(4.0)}},
                                      Temperature::celsius(22.0));
    const Windows windows = compute_windows(plan, {.members = 200});
    DoughPlan warm = plan;
    warm.profile = TemperatureProfile(Temperature::celsius(24.0));
    CHECK(windows.stages.front().in_stage.likely >
          compute_windows(warm, {.members = 200}).stages.front().in_stage.likely);
    CHECK(windows.stages.front().surroundings <= Temperature::celsius(22.0));
}

TEST_CASE("compute_windows: in a profile a fast culture has the warmth of its own time") {
    const auto end_of = [](std::vector<PlannedStage> stages) {
        DoughPlan plan = plan_with(std::move(stages));
        plan.profile = TemperatureProfile(
            {{hours(3.0), Temperature::celsius(26.0)}, {hours(6.0), Temperature::celsius(16.0)}},
            Temperature::celsius(24.0));
        return compute_windows(plan, Ensemble{}).stages.back().after_mixing;
    };
    // one stage, and the same in two, between which the dough is left alone
    const Window whole = end_of({rising("bulk", 24.0, 1.0)});
    const Window parted = end_of({rising("bulk", 24.0, 0.4), rising("proof", 24.0, 1.0)});
    CHECK(near(parted.earliest.value(), whole.earliest.value(), 0.02, 0.0));
    CHECK(near(parted.likely.value(), whole.likely.value(), 0.02, 0.0));
    CHECK(near(parted.latest.value(), whole.latest.value(), 0.02, 0.0));
}
