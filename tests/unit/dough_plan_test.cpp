#include "schedule/dough_plan.hpp"

#include "diagnostic/codes.hpp"
#include "schedule/rise_settings.hpp"
#include "support/formulas.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

std::string lean(const std::string& yeast, const std::string& process, const std::string& name = "Loaf") {
    return "formula: 1\nname: " + name +
           "\nmakes: 2 x 850 g\ndough:\n  bread flour: 1000 g\n  water: 680 g\n  salt: 20 g\n" + yeast +
           process;
}

const std::string bulk_and_proof = "process:\n  - mix: { to: 25 C }\n  - bulk: { for: 1 h, at: 24 C }\n"
                                   "  - divide\n  - proof: { for: 50 min, at: 26 C }\n";

FormulaPlan planned(const std::string& text, const PlanRequest& request = {}) {
    Diagnostics diagnostics;
    const auto plan = plan_of(formula_from(text), request, diagnostics);
    REQUIRE(plan);
    return *plan;
}

std::string codes_of_plan(const std::string& text) {
    Diagnostics diagnostics;
    CHECK_FALSE(plan_of(formula_from(text), {}, diagnostics));
    std::string codes;
    for (const Diagnostic& item : diagnostics.in_order()) {
        codes += (codes.empty() ? "" : " ") + std::string(name_of(item.code));
    }
    return codes;
}

std::string names_of(const FormulaPlan& plan) {
    std::string names;
    for (const PlannedStage& stage : plan.plan.stages) {
        names += (names.empty() ? "" : " ") + stage.name;
    }
    return names;
}

} // namespace

TEST_CASE("plan_of: every yeast counts as fresh") {
    const auto fresh_share = [](const std::string& yeast) {
        return planned(lean("  " + yeast + "\n", bulk_and_proof)).plan.mix.fresh_yeast.value();
    };
    const double fresh = fresh_share("fresh yeast: 20 g");
    // Hamelman, Bread (2004): 0.4 of active dry, 0.33 of instant; the totals differ by the weights
    CHECK(near(fresh, 20.0 / 1720.0, 1e-9, 0.0));
    CHECK(near(fresh_share("active dry yeast: 8 g"), 20.0 / 1708.0, 1e-9, 0.0));
    CHECK(near(fresh_share("instant yeast: 6.6 g"), 20.0 / 1706.6, 1e-9, 0.0));
}

TEST_CASE("plan_of: levain, salt and water by weight") {
    const FormulaPlan plan = planned("formula: 1\nname: Loaf\nmakes: 1 x 1720 g\ndough:\n"
                                     "  bread flour: 900 g\n  water: 600 g\n  salt: 20 g\n  levain: 200 g\n"
                                     "preferments:\n  levain:\n    kind: levain\n    bread flour: 80 g\n"
                                     "    water: 80 g\n    culture: 40 g\n    culture hydration: 100%\n" +
                                     bulk_and_proof);
    CHECK(plan.has_levain);
    CHECK(near(plan.plan.mix.levain.value(), 200.0 / 1720.0, 1e-9, 0.0));
    CHECK(near(plan.plan.mix.salt.in_percent(), 2.0, 1e-9, 0.0));
    CHECK(near(plan.plan.mix.true_water.value(), 0.7, 1e-3, 0.0)); // salt holds a little
    CHECK(plan.plan.mix.fresh_yeast.value() == 0.0);
}

TEST_CASE("plan_of: stages of the process, with their places") {
    const FormulaPlan plan = planned(lean("  instant yeast: 7 g\n", bulk_and_proof));
    CHECK(names_of(plan) == "bulk divide proof");
    CHECK(plan.plan.mixed_at == Temperature::celsius(25.0));
    CHECK(plan.plan.stages[0].surroundings == Temperature::celsius(24.0));
    CHECK(plan.plan.stages[2].surroundings == Temperature::celsius(26.0));
    CHECK(plan.plan.stages[0].rise == bulk_rise({.is_levain = false}, Temperature::celsius(24.0)));
    CHECK(plan.plan.stages[1].lasts);
    CHECK(plan.plan.stages[1].gas_kept == Fraction(1.0));
    CHECK(plan.plan.stages[2].gas_kept == gas_kept_by_shaping); // shaped after the rest
    // whole in bulk, in pieces after it
    CHECK(near(plan.plan.stages[0].mass.value(), 2.0 * plan.plan.stages[2].mass.value(), 1e-9, 0.0));
    CHECK(plan.plan.stages[2].form.kind == DoughForm::Kind::ball);
}

TEST_CASE("plan_of: without bulk and proof the usual three are taken, and it is said") {
    const FormulaPlan plan = planned(lean("  instant yeast: 7 g\n", ""));
    CHECK(names_of(plan) == "bulk divide proof");
    CHECK(plan.settings.front().find("names no bulk") != std::string::npos);
    CHECK(plan.plan.stages[0].surroundings == usual_room);
}

TEST_CASE("plan_of: a cold stage is a retard, whatever it is called") {
    const std::string cold = "process:\n  - bulk: { for: 1 h, at: 24 C }\n  - shape\n"
                             "  - proof: { for: 14 h, at: 4 C }\n  - bake\n";
    const FormulaPlan plan = planned(lean("  instant yeast: 7 g\n", cold));
    CHECK(names_of(plan) == "bulk shape proof");
    CHECK(plan.plan.stages[2].lasts->value() == 14.0 * 3600.0);
    // what goes cold is let rise less
    CHECK(plan.plan.stages[0].rise < bulk_rise({.is_levain = false}, Temperature::celsius(24.0)));
    PlanRequest shorter;
    shorter.retard = seconds(8.0 * 3600.0);
    CHECK(planned(lean("  instant yeast: 7 g\n", cold), shorter).plan.stages[2].lasts->value() ==
          8.0 * 3600.0);
    PlanRequest by_profile;
    by_profile.profile = TemperatureProfile(Temperature::celsius(22.0));
    CHECK(names_of(planned(lean("  instant yeast: 7 g\n", cold), by_profile)) == "bulk shape proof");
}

TEST_CASE("plan_of: pieces that proof were shaped, whether or not the process says so") {
    const FormulaPlan plan = planned(lean("  instant yeast: 7 g\n", "process: [ bulk, proof, bake ]\n"));
    REQUIRE(names_of(plan) == "bulk proof");
    CHECK(plan.plan.stages[0].gas_kept == Fraction(1.0));
    CHECK(plan.plan.stages[1].gas_kept == gas_kept_by_shaping);
    CHECK(plan.plan.stages[1].mass < plan.plan.stages[0].mass); // a piece of several
    // nothing is pressed out of a dough that only proofs
    const FormulaPlan only = planned(lean("  instant yeast: 7 g\n", "process: [ proof, bake ]\n"));
    CHECK(only.plan.stages[0].gas_kept == Fraction(1.0));
}

TEST_CASE("plan_of: what is asked for goes before the formula") {
    PlanRequest request;
    request.at = Temperature::celsius(21.0);
    request.mixed_at = Temperature::celsius(27.0);
    request.bulk_rise = Fraction(0.33);
    request.proof_rise = Fraction(0.77);
    request.gas_kept = Fraction(0.9);
    const FormulaPlan plan = planned(lean("  instant yeast: 7 g\n", bulk_and_proof), request);
    CHECK(plan.plan.stages[0].surroundings == Temperature::celsius(21.0));
    CHECK(plan.plan.stages[2].surroundings == Temperature::celsius(21.0));
    CHECK(plan.plan.mixed_at == Temperature::celsius(27.0));
    CHECK(plan.plan.stages[0].rise == Fraction(0.33));
    CHECK(plan.plan.stages[2].rise == Fraction(0.77));
    CHECK(plan.plan.stages[2].gas_kept == Fraction(0.9));
}

TEST_CASE("plan_of: forms by what it is called") {
    const auto form = [](const std::string& name) {
        return planned(lean("  instant yeast: 7 g\n", bulk_and_proof, name)).plan.stages[2].form.kind;
    };
    CHECK(form("Harbour baguette") == DoughForm::Kind::log);
    CHECK(form("Tray focaccia") == DoughForm::Kind::slab);
    CHECK(form("Round loaf") == DoughForm::Kind::ball);
}

TEST_CASE("plan_of: nothing that ferments, and salt that stops all") {
    CHECK(codes_of_plan(lean("", bulk_and_proof)) == "nothing-ferments");
    const std::string salty = "formula: 1\nname: Loaf\nmakes: 2 x 850 g\ndough:\n  bread flour: 1000 g\n"
                              "  water: 680 g\n  salt: 300 g\n  instant yeast: 7 g\n";
    CHECK(codes_of_plan(salty).find("fermentation-stopped") != std::string::npos);
}

TEST_CASE("windows_of: says when a profile ends too early and when a dough is never ready") {
    Diagnostics diagnostics;
    PlanRequest request;
    request.profile = TemperatureProfile({{seconds(600.0), Temperature::celsius(24.0)}});
    const Formula formula = formula_from(lean("  instant yeast: 7 g\n", bulk_and_proof));
    CHECK_FALSE(windows_of(formula, request, {.members = least_members}, diagnostics));
    REQUIRE(diagnostics.has_errors());
    CHECK(name_of(diagnostics.in_order().front().code) == "profile-short");

    Diagnostics warned;
    PlanRequest hot;
    hot.at = Temperature::celsius(60.0);
    hot.mixed_at = Temperature::celsius(60.0);
    CHECK(windows_of(formula, hot, {.members = least_members}, warned));
    REQUIRE_FALSE(warned.in_order().empty());
    CHECK(name_of(warned.in_order().front().code) == "never-ready");
}

TEST_CASE("windows_of: eggs and milk that stand warm for long bring a caution") {
    const std::string milk = "  milk: 100 g\n";
    const auto cautions = [&](const std::string& extra, double levain_like_yeast) {
        Diagnostics diagnostics;
        const Formula formula = formula_from(
            lean(extra + "  fresh yeast: " + std::to_string(levain_like_yeast) + " g\n", bulk_and_proof));
        return windows_of(formula, {}, {.members = least_members}, diagnostics).value().cautions.size();
    };
    CHECK(cautions(milk, 0.5) == cautions("", 0.5) + 1); // slow: hours in the warm
    CHECK(cautions(milk, 30.0) == cautions("", 30.0));   // quick
}

TEST_CASE("rise settings: less in the warm, less before the cold, less of rye and of flat breads") {
    const Temperature cool = Temperature::celsius(18.0);
    const Temperature middle = Temperature::celsius(24.0);
    const Temperature warm = Temperature::celsius(28.0);
    CHECK(bulk_rise({}, cool) == Fraction(0.75));
    CHECK(bulk_rise({}, middle) == Fraction(0.5));
    CHECK(bulk_rise({}, warm) == Fraction(0.4));
    CHECK(bulk_rise({.cold = hours(12.0)}, warm) == Fraction(0.3));
    CHECK(bulk_rise({.cold = hours(30.0)}, middle) == Fraction(0.35)); // half way to 20 %
    CHECK(bulk_rise({.cold = hours(72.0)}, cool) == Fraction(0.2));
    CHECK(bulk_rise({.is_levain = false, .cold = hours(8.0)}, middle) == Fraction(0.5));
    CHECK(bulk_rise({.is_rye = true}, middle) == Fraction(0.25));
    CHECK(bulk_rise({.is_levain = false}, middle) == Fraction(1.0));
    CHECK(proof_rise({}) == Fraction(1.1));
    CHECK(proof_rise({.is_flat = true}) == Fraction(0.7));
    CHECK(proof_rise({.cold = hours(12.0)}) == Fraction(0.6));
    CHECK(proof_rise({.is_levain = false}) == Fraction(1.8));
}

TEST_CASE("plan_of: rests by the clock where no bulk takes them in") {
    const auto stages = [](const std::string& steps) {
        return planned(lean("  instant yeast: 3 g\n", "process:\n" + steps));
    };
    const FormulaPlan rested = stages("  - mix: { to: 25 C }\n  - rest: { for: 1 h, at: 26 C }\n  - shape\n"
                                      "  - proof: { for: 4 h, at: 30 C }\n");
    CHECK(names_of(rested) == "rest shape proof");
    CHECK(rested.plan.stages[0].lasts == hours(1.0));
    // one before the last mixing swells the flour, one in bulk is part of it
    CHECK(names_of(stages("  - mix\n  - rest: { for: 30 min }\n  - knead\n  - rest: { for: 10 min }\n"
                          "  - bulk: { for: 3 h }\n  - divide\n  - rest: { for: 25 min }\n  - shape\n"
                          "  - rest: { for: 10 min }\n  - proof: { for: 1 h }\n")) ==
          "bulk divide rest proof");
    const FormulaPlan cold = stages("  - mix\n  - divide\n  - shape\n  - rest: { for: 3 h, at: 24 C }\n"
                                    "  - retard: { for: 2 d, at: 4 C }\n  - temper: { for: 2 h }\n");
    CHECK(names_of(cold) == "rest retard temper");
    CHECK(cold.plan.stages[0].lasts == hours(3.0));
    CHECK(cold.plan.stages[1].lasts == hours(48.0));
    CHECK(
        names_of(stages("  - mix\n  - rest: { for: 12 h, at: 4 C }\n  - shape\n  - proof: { for: 2 h }\n")) ==
        "rest shape proof");
}

TEST_CASE("plan_of: hands press gas out at the last act of the bench, behind its rests") {
    const FormulaPlan plan =
        planned(lean("  instant yeast: 3 g\n",
                     "process:\n  - bulk: { for: 2 h, at: 22 C }\n  - divide\n  - preshape\n"
                     "  - rest: { for: 30 min }\n  - shape\n  - proof: { for: 1 h, at: 26 C }\n"));
    CHECK(names_of(plan) == "bulk divide proof");
    CHECK(plan.plan.stages[1].lasts == hours(0.5));
    CHECK(plan.plan.stages[1].surroundings == Temperature::celsius(22.0));
    CHECK(plan.plan.stages[1].gas_kept == Fraction(1.0));
    CHECK(plan.plan.stages[2].gas_kept == gas_kept_by_shaping);
    CHECK(plan.plan.stages[1].step == 3U);
    CHECK(plan.plan.stages[2].step == 5U);
    CHECK_FALSE(plan.is_pressed_last);
    // rolled out flat behind its rest: nobody bakes what it has risen to
    CHECK(planned(lean("  instant yeast: 3 g\n",
                       "process:\n  - bulk\n  - divide\n  - rest: { for: 15 min }\n  - shape\n  - bake\n"))
              .is_pressed_last);
}

TEST_CASE("plan_of: a profile leaves retards out, and then the dough rises at least once") {
    PlanRequest request;
    request.profile = TemperatureProfile(
        std::vector<TemperatureProfile::Leg>{{.time = hours(24.0), .at = Temperature::celsius(4.0)}},
        Temperature::celsius(24.0));
    CHECK(names_of(planned(
              lean("  instant yeast: 3 g\n", "process:\n  - mix\n  - retard: { for: 24 h }\n  - bake\n"),
              request)) == "bulk divide proof");
    CHECK(names_of(planned(
              lean("  instant yeast: 3 g\n",
                   "process:\n  - mix\n  - divide\n  - retard: { for: 1 d }\n  - temper: { for: 2 h }\n"),
              request)) == "bulk divide proof");
}
