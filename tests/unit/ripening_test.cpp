#include "culture/ripening.hpp"

#include "diagnostic/codes.hpp"
#include "support/fermentation.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

LevainBuild build_at(double celsius, double seed = 0.2) {
    LevainBuild build;
    build.seed = SeedShare(seed);
    build.place = TemperatureProfile(Temperature::celsius(celsius));
    return build;
}

std::string codes_of_build(const LevainBuild& build) {
    Diagnostics diagnostics;
    compute_ripening(build, {.members = least_members}, diagnostics);
    std::string codes;
    for (const Diagnostic& item : diagnostics.in_order()) {
        codes += (codes.empty() ? "" : " ") + std::string(name_of(item.code));
    }
    return codes;
}

} // namespace

TEST_CASE("compute_ripening: warmth and seed make it quicker, salt slower") {
    const double usual = ripe_hours(build_at(22.0));
    CHECK(ripe_hours(build_at(26.0)) < usual);
    CHECK(ripe_hours(build_at(18.0)) > usual);
    CHECK(ripe_hours(build_at(22.0, 1.0)) < usual);
    CHECK(ripe_hours(build_at(22.0, 0.05)) > usual);
    LevainBuild salted = build_at(22.0);
    salted.salt = BakersPercentage::percent(1.0);
    CHECK(ripe_hours(salted) > usual);
}

TEST_CASE("compute_ripening: a window, and a time for which it is ripe") {
    const Ripening ripening = ripening_of(build_at(24.0));
    CHECK(ripening.ripe.in_stage.earliest < ripening.ripe.in_stage.likely);
    CHECK(ripening.ripe.in_stage.likely < ripening.ripe.in_stage.latest);
    CHECK(ripening.ripe_for.value() > 0.0);
    CHECK(ripening.members == Ensemble{}.members);
    CHECK(ripening.seed == Ensemble{}.seed);
    CHECK_FALSE(ripening.ripe.signs.empty());
}

TEST_CASE("compute_ripening: every fault of a build in one run") {
    LevainBuild build = build_at(24.0, 20.0);
    build.hydration = Hydration(9.0);
    build.salt = BakersPercentage::percent(5.0);
    CHECK(codes_of_build(build) == "fermentation-stopped out-of-range out-of-range");
    build = build_at(24.0, 0.001);
    CHECK(codes_of_build(build) == "out-of-range");
}

TEST_CASE("compute_ripening: too hot, too cold, a profile that ends too early") {
    CHECK(codes_of_build(build_at(40.0)).find("too-warm") != std::string::npos);
    CHECK(codes_of_build(build_at(0.0)).find("never-ready") != std::string::npos);
    LevainBuild brief = build_at(24.0);
    brief.place = TemperatureProfile({{seconds(3600.0), Temperature::celsius(24.0)}});
    CHECK(codes_of_build(brief) == "profile-short");
    CHECK(codes_of_build(build_at(24.0)).empty());
}

TEST_CASE("compute_ripening: whole grain is ripe by its acid, as white flour is, and longer") {
    LevainBuild whole = build_at(24.0);
    whole.whole_grain = Fraction(1.0);
    const Ripening of_whole = ripening_of(whole);
    const Ripening of_white = ripening_of(build_at(24.0));
    CHECK(of_whole.ripe.in_stage.likely <= of_white.ripe.in_stage.likely);
    CHECK(of_whole.ripe_for > of_white.ripe_for); // its bran holds pH up
}

TEST_CASE("compute_souring: a sour is taken later than a levain, and by its acid alone") {
    const Ripening usual = ripening_of(build_at(24.0));
    const Window sour = compute_souring(build_at(24.0), Ensemble{});
    CHECK(sour.earliest < sour.likely);
    CHECK(sour.likely < sour.latest);
    CHECK(sour.likely > usual.ripe.in_stage.likely);
    // too warm for one of the yeasts, right for lactobacilli
    LevainBuild warm = build_at(36.0, 1.0);
    Diagnostics diagnostics;
    const auto ripening = compute_ripening(warm, Ensemble{}, diagnostics);
    REQUIRE(ripening);
    CHECK(compute_souring(warm, Ensemble{}).latest < ripening->ripe.in_stage.latest);
}
