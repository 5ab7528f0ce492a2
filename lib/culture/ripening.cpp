#include "culture/ripening.hpp"

#include "ferment/report_times.hpp"

#include <fmt/core.h>

#include <cmath>

namespace leavenwright {
namespace {

constexpr double ripe_acid = 41.0; // mmol/kg
constexpr double sour_ph = 3.85;
constexpr Fraction ripe_rise{0.8};

// White or whole wheat flour in round figures (USDA SR27: bread flour, whole wheat flour).
DoughComposition composition_of(const LevainBuild& build) {
    const double flour = 1.0 / (1.0 + build.hydration.value());
    const auto of_flour = [&](double white, double whole) {
        return Fraction(flour * std::lerp(white, whole, build.whole_grain.value()));
    };
    return {.water = Fraction(1.0 - flour + flour * 0.12),
            .protein = of_flour(0.12, 0.13),
            .fat = of_flour(0.017, 0.025),
            .carbohydrate = of_flour(0.70, 0.61),
            .fibre = of_flour(0.024, 0.107),
            .ash = of_flour(0.005, 0.016),
            .salt = Fraction(flour * build.salt.value())};
}

DoughMix mix_of(const LevainBuild& build) {
    const double flour_and_water = 1.0 + build.hydration.value();
    return {.levain = Fraction(build.seed.value() / (flour_and_water + build.seed.value())),
            .fresh_yeast = Fraction(0.0),
            .salt = build.salt,
            .sugar = BakersPercentage(0.0),
            .true_water = build.hydration,
            .water = Fraction(build.hydration.value() / flour_and_water),
            .whole_grain = build.whole_grain};
}

PlannedStage jar(const LevainBuild& build, std::string name, double ph, std::optional<Fraction> rise) {
    PlannedStage stage;
    stage.name = std::move(name);
    stage.surroundings = build.place.at(seconds(0.0));
    stage.rise = rise;
    stage.ph = ph;
    stage.mass = build.mass;
    stage.form = DoughForm::tub();
    stage.place.covered = true;
    stage.signs = "grown to twice and more, full of bubbles, smells fresh and sour";
    stage.past = "it falls and smells sharp: use it soon or feed it";
    return stage;
}

// Without its stages.
DoughPlan plan_of(const LevainBuild& build) {
    DoughPlan plan;
    plan.mix = mix_of(build);
    plan.composition = composition_of(build);
    plan.mixed_at = build.mixed_at.value_or(build.place.at(seconds(0.0)));
    plan.profile = build.place;
    plan.longest = hours(7.0 * 24.0);
    return plan;
}

void check(const LevainBuild& build, Diagnostics& diagnostics) {
    if (build.seed < least_seed || build.seed > most_seed) {
        diagnostics.error(Code::out_of_range, build.seed_place,
                          fmt::format("a seed is {:.0f} to {:.0f} % of the fresh flour",
                                      least_seed.in_percent(), most_seed.in_percent()),
                          "such as --seed 20%");
    }
    if (build.hydration < driest_levain || build.hydration > wettest_levain) {
        diagnostics.error(Code::out_of_range, build.hydration_place,
                          fmt::format("a levain has {:.0f} to {:.0f} % of water on its flour",
                                      driest_levain.in_percent(), wettest_levain.in_percent()),
                          "such as --levain-hydration 100%");
    }
    check_not_frozen(build.place.coldest(), build.temperature_place, diagnostics);
    if (build.salt >= bacteria_salt_limit) {
        diagnostics.error(
            Code::fermentation_stopped, build.salt_place,
            fmt::format("lactobacilli stop at {:.0f} % of salt on the flour (Brandt et al. 2004), and no "
                        "levain ripens without them",
                        bacteria_salt_limit.in_percent()),
            "most levains have no salt; up to 2 % slows one down");
    }
}

void report_warmth(const LevainBuild& build, const Windows& windows, Diagnostics& diagnostics) {
    const StageWindow& ripe = windows.stages.front();
    if (build.place.at(seconds(0.0)) >= many_cultures_stop) {
        warn_too_warm(build.temperature_place, "20 to 30 C (68 to 86 F) suits a levain", diagnostics);
    }
    if (!is_reached(ripe.in_stage.likely)) {
        diagnostics.warning(Code::never_ready, build.temperature_place,
                            "this levain is not likely to be ripe within a week at these temperatures",
                            std::string(build.salt.value() > 0.0 ? "less salt, or " : "") +
                                "a place between 18 and 30 C (64 and 86 F)");
    } else {
        check_profile_end(build.place, "the levain is likely ripe", ripe.in_stage.likely,
                          build.temperature_place, diagnostics);
    }
}

} // namespace

std::optional<Ripening> compute_ripening(const LevainBuild& build, const Ensemble& ensemble,
                                         Diagnostics& diagnostics) {
    check(build, diagnostics);
    if (diagnostics.has_errors()) {
        return {};
    }
    DoughPlan plan = plan_of(build);
    const double ripe_ph = MicrobeEquations(Kinetics{}, plan.mix).ph(ripe_acid);
    plan.stages = {jar(build, "ripe", ripe_ph, ripe_rise), jar(build, "past", sour_ph, {})};
    const Windows windows = compute_windows(plan, ensemble);
    report_warmth(build, windows, diagnostics);
    if (diagnostics.has_errors()) {
        return {};
    }
    return Ripening{.ripe = windows.stages.front(),
                    .ripe_for = windows.stages.back().in_stage.likely,
                    .curve = windows.curve,
                    .members = windows.members,
                    .seed = windows.seed};
}

Window compute_souring(const LevainBuild& build, const Ensemble& ensemble) {
    DoughPlan plan = plan_of(build);
    plan.stages = {jar(build, "sour", sour_ph, {})};
    return compute_windows(plan, ensemble).stages.front().in_stage;
}

} // namespace leavenwright
