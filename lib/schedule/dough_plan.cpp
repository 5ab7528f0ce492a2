#include "schedule/dough_plan.hpp"

#include "diagnostic/suggestion.hpp"
#include "ferment/report_times.hpp"
#include "formula/overall.hpp"
#include "quantity/show.hpp"
#include "schedule/dough_composition.hpp"
#include "schedule/dough_mix.hpp"
#include "schedule/rise_settings.hpp"
#include "source/unicode.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace leavenwright {
namespace {

bool name_has(const Formula& formula, std::initializer_list<std::string_view> words) {
    const std::string folded = fold_name(formula.name);
    return std::any_of(words.begin(), words.end(),
                       [&](std::string_view word) { return folded.find(word) != std::string::npos; });
}

bool is_mostly_rye(const Overall& overall) {
    Mass rye{};
    for (const Line& line : overall.flours()) {
        rye += line.ingredient->name.find("rye") != std::string_view::npos ? line.mass : Mass{};
    }
    return rye > 0.5 * overall.total_flour;
}

Duration middle_of(const Entered<DurationRange>& time) {
    return 0.5 * (time.value.least + time.value.most);
}

struct StageWords {
    std::string_view signs;
    std::string_view past;
};

StageWords words_of(std::string_view stage) {
    if (stage == "bulk") {
        return {"grown as set, domed, bubbles below the skin, wobbles",
                "it spreads and tears: shape at once, proof short"};
    }
    if (stage == "proof") {
        return {"light; a floured finger's dent comes back slowly",
                "the dent stays: bake at once, do not score deep"};
    }
    if (stage == "retard") {
        return {"firm and cold through, a little grown",
                "sourer and slacker by the hour; beyond two days the gluten gives way"};
    }
    if (stage == "temper") {
        return {"no longer cold to the hand, soft and puffy", "it goes on rising: bake it"};
    }
    return {}; // the clock ends it
}

constexpr Duration usual_retard = hours(12.0);
constexpr Duration least_cold = hours(2.0); // in which a dough goes on rising so that it matters
constexpr Duration usual_bench_rest = seconds(20.0 * 60.0); // common practice

class StagePlanner {
public:
    StagePlanner(const Formula& formula, const PlanRequest& request, const Overall& overall,
                 FormulaPlan& result)
        : formula_(formula), request_(request), overall_(overall), result_(result) {
        circumstances_.is_levain = result.has_levain;
        circumstances_.is_flat = name_has(formula, {"pizza", "flatbread", "focaccia", "pita", "naan"});
        circumstances_.is_rye = is_mostly_rye(overall);
        result.is_flat = circumstances_.is_flat;
        result.baked_rise = proof_rise(circumstances_);
        RiseCircumstances of_loaf = circumstances_;
        of_loaf.is_flat = false;
        constexpr double far_beyond = 1.8;
        constexpr double about_the_most = 2.3; // no dough holds more than 2.6
        result.most_rise = Fraction(std::min(far_beyond * proof_rise(of_loaf).value(), about_the_most));
        kept_ = request.gas_kept.value_or(gas_kept_by_shaping);
    }

    void plan() {
        std::vector<Step> steps = formula_.process;
        const auto ferments = [&](const Step& step) { // with a profile a retard is left out
            return step.verb == "bulk" || step.verb == "proof" ||
                   (step.verb == "retard" && !request_.profile);
        };
        if (std::none_of(steps.begin(), steps.end(), ferments)) {
            steps.clear();
            is_made_up_ = true;
            for (const std::string_view verb : {"bulk", "divide", "proof"}) {
                steps.push_back({.verb = std::string(verb), .time = {}, .at = {}, .to = {}, .note = {}});
            }
            say("the formula names no bulk, proof or retard: taken as bulk, divide, proof");
        }
        for (std::size_t i = 0; i < steps.size(); ++i) {
            add(steps, i);
        }
        if (request_.retard && !has_retard_) {
            say("the process has no retard, so that a time for it changes nothing");
        }
        result_.room = room_at_mixing();
        result_.plan.mixed_at = request_.mixed_at.value_or(mixed_by(formula_.process).value_or(result_.room));
        result_.is_pressed_last = next_gas_kept_ < Fraction(1.0);
    }

private:
    void add(const std::vector<Step>& steps, std::size_t i) {
        const Step& step = steps[i];
        step_ = is_made_up_ ? std::nullopt : std::optional(i);
        if (step.verb == "bulk" || step.verb == "proof" || step.verb == "retard") {
            is_cold(step) ? add_retard(step) : add_rising(step, cold_after(steps, i));
        } else if (is_bench_act(step)) {
            add_bench_act(steps, i);
        } else if (step.verb == "temper" && step.time) {
            add_by_clock(step);
        } else if (step.verb == "rest" && step.time) {
            add_rest(steps, i);
        }
    }

    // With a profile only that says what is cold.
    bool is_cold(const Step& step) const {
        return step.verb == "retard" || (!request_.profile && step.at && step.at->value < cold_below);
    }

    // How long the dough is cold next; none where it rises or is baked before.
    std::optional<Duration> cold_after(const std::vector<Step>& steps, std::size_t i) const {
        for (std::size_t next = i + 1; next < steps.size(); ++next) {
            const Step& step = steps[next];
            if (step.verb == "retard" || (step.at && step.at->value < cold_below)) {
                const Duration cold = request_.profile ? usual_retard : time_in_cold(step);
                return cold >= least_cold ? std::optional(cold) : std::nullopt;
            }
            if (step.verb == "proof" || step.verb == "bulk" || step.verb == "bake") {
                return {};
            }
        }
        return {};
    }

    Duration time_in_cold(const Step& step) const {
        const auto written = step.time ? std::optional(middle_of(*step.time)) : std::nullopt;
        return request_.retard.value_or(written.value_or(usual_retard));
    }

    static std::optional<Temperature> mixed_by(const std::vector<Step>& steps) {
        for (const Step& step : steps) {
            if ((step.verb == "mix" || step.verb == "knead") && step.to) {
                return step.to->value;
            }
        }
        return {};
    }

    // Where the dough stands first; one that goes straight into the cold is mixed in the room all the same.
    Temperature room_at_mixing() const {
        const Temperature first =
            request_.profile ? request_.profile->at(seconds(0.0)) : result_.plan.stages.front().surroundings;
        return first >= cold_below ? first : request_.at.value_or(usual_room);
    }

    PlannedStage stage(const Step& step, std::string name, Temperature at) {
        const StageWords words = words_of(name);
        PlannedStage planned;
        planned.name = std::move(name);
        planned.surroundings = at;
        planned.gas_kept = next_gas_kept_;
        next_gas_kept_ = Fraction(1.0);
        planned.mass = is_divided_ ? piece_mass() : overall_.total;
        planned.form = is_divided_ ? piece_form() : DoughForm::tub(0.6);
        planned.place.covered = true;
        planned.step = step_;
        planned.written = step.time ? step.time->text : std::string();
        planned.signs = words.signs;
        planned.past = words.past;
        return planned;
    }

    Temperature room(const Step& step) {
        return request_.at.value_or(step.at && step.at->value >= cold_below ? step.at->value : usual_room);
    }

    void add_rising(const Step& step, std::optional<Duration> cold_follows) {
        shape_before(step);
        PlannedStage planned = stage(step, step.verb, room(step));
        RiseCircumstances circumstances = circumstances_;
        circumstances.cold = cold_follows;
        const bool is_bulk = step.verb == "bulk";
        const Temperature warmth =
            request_.profile ? request_.profile->at(seconds(0.0)) : planned.surroundings;
        const auto asked = is_bulk ? request_.bulk_rise : request_.proof_rise;
        planned.rise = asked.value_or(is_bulk ? bulk_rise(circumstances, warmth) : proof_rise(circumstances));
        say(fmt::format("{} ends at a rise of {:.0f} % over the mixed dough ({})", planned.name,
                        planned.rise->in_percent(), asked ? "as asked" : "common practice"));
        result_.plan.stages.push_back(std::move(planned));
    }

    void add_retard(const Step& step) {
        if (request_.profile) {
            say("retard: left out, since the cold is in the profile; bulk and proof go on to their rise");
            return;
        }
        shape_before(step);
        const Temperature at = step.at ? step.at->value : usual_refrigerator;
        PlannedStage planned = stage(step, step.verb, at);
        const StageWords words = words_of("retard"); // whatever the step is called
        planned.signs = words.signs;
        planned.past = words.past;
        planned.lasts = time_in_cold(step);
        has_retard_ = true;
        if (!request_.retard && !step.time) {
            say(fmt::format("{}: {:.0f} h in the cold, since the formula gives no time for a levain",
                            step.verb, in_hours(usual_retard)));
        }
        result_.plan.stages.push_back(std::move(planned));
    }

    // A bulk is ended by its rise since the mixing: what rests before it is part of it. One before the last
    // mixing swells the flour.
    void add_rest(const std::vector<Step>& steps, std::size_t i) {
        const auto after = steps.begin() + static_cast<std::ptrdiff_t>(i);
        const bool goes_on_elsewhere = std::any_of(after, steps.end(), [](const Step& step) {
            return step.verb == "bulk" || step.verb == "mix" || step.verb == "knead";
        });
        const bool is_between_acts = is_divided_ && !is_cold(steps[i]);
        if (is_between_acts || !goes_on_elsewhere) {
            is_cold(steps[i]) ? add_retard(steps[i]) : add_by_clock(steps[i]);
        }
    }

    // A rest, and dough out of the refrigerator, which goes on fermenting while it warms.
    void add_by_clock(const Step& step) {
        const bool is_where_it_was = step.verb == "rest" && !step.at && !result_.plan.stages.empty();
        const bool is_between_acts = step.verb == "rest" && is_divided_ && !is_pressed_;
        PlannedStage planned = stage(step, is_between_acts ? bench_verb_ : step.verb,
                                     is_where_it_was ? place_of_bench() : room(step));
        planned.lasts = middle_of(*step.time);
        result_.plan.stages.push_back(std::move(planned));
    }

    // Pieces that proof were shaped, whether or not the process says so.
    void shape_before(const Step& step) {
        if (step.verb == "proof" && !is_pressed_ && !result_.plan.stages.empty()) {
            press_gas_out();
        }
    }

    // Out of the stage that comes next.
    void press_gas_out() {
        is_divided_ = true;
        is_pressed_ = true;
        if (result_.plan.stages.empty()) {
            return; // there is none yet
        }
        next_gas_kept_ = kept_;
        say(fmt::format("dividing and shaping leave {:.0f} % of the bubbles in ({})", kept_.in_percent(),
                        request_.gas_kept ? "as asked" : "common practice"));
    }

    static bool is_bench_act(const Step& step) {
        return step.verb == "divide" || step.verb == "preshape" || step.verb == "shape";
    }

    // What follows a bench act at the bench: acts, and rests between them.
    bool is_at_the_bench(const Step& step) const {
        return is_bench_act(step) || (step.verb == "rest" && !is_cold(step));
    }

    // Pieces rest as the process says, or 20 minutes; the last act at the bench presses gas out, once.
    void add_bench_act(const std::vector<Step>& steps, std::size_t i) {
        if (is_pressed_) {
            return;
        }
        const bool is_first = !is_divided_;
        bench_verb_ = is_first ? steps[i].verb : bench_verb_;
        is_divided_ = true;
        bool has_rest = false;
        bool is_last = true;
        for (std::size_t next = i + 1; next < steps.size() && is_at_the_bench(steps[next]); ++next) {
            has_rest = has_rest || steps[next].time;
            is_last = is_last && !is_bench_act(steps[next]);
        }
        const bool ferments_before = !result_.plan.stages.empty();
        if (is_first && !has_rest && ferments_before) {
            PlannedStage planned = stage(steps[i], steps[i].verb, place_of_bench());
            planned.lasts = usual_bench_rest;
            result_.plan.stages.push_back(std::move(planned));
        }
        if (is_last) {
            press_gas_out();
        }
    }

    // Where the dough stood last, but out of the refrigerator.
    Temperature place_of_bench() const {
        const PlannedStage& last = result_.plan.stages.back();
        return last.lasts && last.surroundings < cold_below ? request_.at.value_or(usual_room)
                                                            : last.surroundings;
    }

    double pieces() const {
        if (formula_.makes && formula_.makes->pieces) {
            return std::max(1.0, *formula_.makes->pieces);
        }
        return 1.0;
    }
    Mass piece_mass() const { return (1.0 / pieces()) * overall_.total; }
    DoughForm piece_form() const {
        if (name_has(formula_, {"baguette", "stick", "ficelle"})) {
            return DoughForm::log();
        }
        return name_has(formula_, {"focaccia", "tray", "sheet"}) ? DoughForm::slab() : DoughForm::ball();
    }

    void say(std::string line) { result_.settings.push_back(std::move(line)); }

    const Formula& formula_;
    const PlanRequest& request_;
    const Overall& overall_;
    FormulaPlan& result_;
    RiseCircumstances circumstances_;
    Fraction kept_;
    Fraction next_gas_kept_{1.0};
    std::optional<std::size_t> step_; // that is being added; none in a process that is made up
    std::string bench_verb_;          // of the first act at the bench, which its rests are part of
    bool is_made_up_ = false;
    bool is_divided_ = false;
    bool is_pressed_ = false;
    bool has_retard_ = false;
};

Temperature coldest_of(const std::vector<PlannedStage>& stages) {
    return std::min_element(stages.begin(), stages.end(),
                            [](const PlannedStage& one, const PlannedStage& other) {
                                return one.surroundings < other.surroundings;
                            })
        ->surroundings;
}

bool can_ferment(const DoughMix& mix, const SourcedText& place, Diagnostics& diagnostics) {
    if (mix.levain.value() <= 0.0 && mix.fresh_yeast.value() <= 0.0) {
        diagnostics.error(Code::nothing_ferments, place,
                          "nothing in this dough ferments: it has no levain and no packaged yeast",
                          "add one, or replace the yeast first: leavenwright convert");
    }
    if (mix.salt >= yeast_salt_limit) {
        diagnostics.error(
            Code::fermentation_stopped, place,
            fmt::format("salt is {} of the flour: no yeast works above {:.0f} % (Gänzle et al. 1998)",
                        show_percent(mix.salt.value()), yeast_salt_limit.in_percent()),
            "about 2 % is usual");
    }
    if (mix.sugar >= sugar_limit) {
        diagnostics.error(
            Code::fermentation_stopped, place,
            fmt::format("sugar is {} of the flour: the model ends at {:.0f} % (assumed; no source)",
                        show_percent(mix.sugar.value()), sugar_limit.in_percent()),
            "sweet doughs have up to about 25 %");
    }
    return !diagnostics.has_errors();
}

// How long the dough itself is warm, up to its likely end: a large one is so for hours in the cold.
Duration warm_time(const Windows& windows) {
    const Duration end = windows.stages.back().after_mixing.likely;
    Duration warm{};
    for (std::size_t i = 1; i < windows.curve.size() && windows.curve[i].time <= end; ++i) {
        const bool is_warm = windows.curve[i].dough > Temperature::celsius(5.0);
        warm += is_warm ? windows.curve[i].time - windows.curve[i - 1].time : Duration{};
    }
    return warm;
}

void add_cautions(const FormulaPlan& plan, Windows& windows) {
    if (plan.has_egg_or_milk && warm_time(windows) > hours(4.0)) {
        windows.cautions.push_back(fmt::format(
            "Egg or milk is warmer than 5 C (41 F) for about {:.0f} h. Food codes commonly allow 4 h (such "
            "as FDA Food Code 3-501.19, not checked here): keep part of the rise in the refrigerator, or "
            "use more levain, and go by your local code.",
            in_hours(warm_time(windows))));
    }
}

std::string risen_by(const RiseRange& rise) {
    if (rise.high.in_percent() < 1.0) {
        return "not risen yet";
    }
    const std::string low = fmt::format("{:.0f}", rise.low.in_percent());
    const std::string high = fmt::format("{:.0f}", rise.high.in_percent());
    return low == high ? fmt::format("risen by {} %", low) : fmt::format("risen by {} to {} %", low, high);
}

bool is_wait(std::string_view stage) {
    return stage == "retard" || stage == "temper" || stage == "rest" || stage == "proof" || stage == "bulk";
}

// The rise at the end of a last stage that the clock ends; nothing where the dough's rise ends it, or where
// it is at the bench.
const RiseRange* last_rise_by_clock(const FormulaPlan& plan, const Windows& windows) {
    const StageWindow& last = windows.stages.back();
    const bool is_told = last.by_clock && is_wait(last.stage) && is_reached(last.in_stage.latest);
    return is_told && !plan.is_pressed_last ? &last.rise_at_end : nullptr;
}

void tell_last_rise(const FormulaPlan& plan, Windows& windows) {
    const RiseRange* rise = last_rise_by_clock(plan, windows);
    if (rise == nullptr) {
        return;
    }
    StageWindow& last = windows.stages.back();
    const std::string reached = fmt::format(
        "{} at its end, likely {:.0f} %; {} is usually baked at {:.0f} %", risen_by(*rise),
        rise->likely.in_percent(), plan.is_flat ? "a flat dough" : "a loaf", plan.baked_rise.in_percent());
    last.past = last.signs.empty() ? "it goes on rising" : last.past;
    last.signs = reached + (last.signs.empty() ? "" : "; ") + last.signs;
}

// Stages that end by their rise and have it when they begin.
void report_stages_over(const Windows& windows, const PlanRequest& request, Diagnostics& diagnostics) {
    for (std::size_t i = 1; i < windows.stages.size(); ++i) {
        const StageWindow& stage = windows.stages[i];
        if (stage.by_clock || stage.in_stage.likely > seconds(60.0)) {
            continue;
        }
        const StageWindow& before = windows.stages[i - 1];
        const bool waited = before.by_clock && is_wait(before.stage);
        diagnostics.warning(Code::over_proofed, request.formula_place,
                            fmt::format("the {0} is likely over when it begins: at the end of the {1} the "
                                        "dough has {2}, and the {0} ends at {3:.0f} %",
                                        stage.stage, before.stage, risen_by(before.rise_at_end),
                                        stage.rise->in_percent()),
                            waited ? fmt::format("a shorter or colder {}, or bake after it", before.stage)
                                   : "end the bulk sooner (--bulk-rise) or the proof later (--proof-rise)");
    }
}

// A last stage by the clock that ends far beyond what is baked, or far below.
void report_last_rise(const FormulaPlan& plan, const Windows& windows, const PlanRequest& request,
                      Diagnostics& diagnostics) {
    constexpr double far_below = 0.4;
    const RiseRange* rise = last_rise_by_clock(plan, windows);
    if (rise == nullptr) {
        return;
    }
    const bool is_beyond = rise->likely > plan.most_rise;
    if (is_beyond || rise->high.value() < far_below * plan.baked_rise.value()) {
        diagnostics.warning(
            is_beyond ? Code::over_proofed : Code::under_proofed, request.formula_place,
            fmt::format("at the end of the {} the dough has {}; such a dough is usually baked at {:.0f} %",
                        windows.stages.back().stage, risen_by(*rise), plan.baked_rise.in_percent()),
            is_beyond ? "less time or a colder place, less bulk (--bulk-rise), or less yeast or levain"
                      : "more time in the room before or after, or more bulk (--bulk-rise)");
    }
}

void report_temperatures(const FormulaPlan& plan, const Windows& windows, const PlanRequest& request,
                         Diagnostics& diagnostics) {
    const bool is_warm =
        std::any_of(windows.stages.begin(), windows.stages.end(), [&](const StageWindow& stage) {
            return stage.dough >= many_cultures_stop ||
                   (is_reached(stage.in_stage.likely) && stage.surroundings >= many_cultures_stop);
        });
    if (is_warm && plan.has_levain) {
        warn_too_warm(request.place_of_surroundings(), "24 to 28 C (75 to 82 F) suits a levain dough",
                      diagnostics);
    }
    for (const StageWindow& stage : windows.stages) {
        if (!is_reached(stage.in_stage.likely)) {
            diagnostics.warning(Code::never_ready, request.place_of_surroundings(),
                                fmt::format("the {} is not likely to be ready within {:.0f} h at {} ({})",
                                            stage.stage, in_hours(plan.plan.longest),
                                            show_temperature(stage.surroundings, UnitSystem::metric),
                                            show_temperature(stage.surroundings, UnitSystem::us)),
                                "a place between 18 and 30 C (64 and 86 F), or a smaller rise");
            return;
        }
    }
    if (request.profile) {
        const StageWindow& last = windows.stages.back();
        check_profile_end(*request.profile, "the " + last.stage + " is likely ready",
                          last.after_mixing.likely, request.profile_place, diagnostics);
    }
}

} // namespace

std::optional<FormulaPlan> plan_of(const Formula& formula, const PlanRequest& request,
                                   Diagnostics& diagnostics) {
    const Overall overall = compute_overall(formula);
    FormulaPlan result;
    result.plan.mix = dough_mix(formula, overall, request.levain_times.value_or(1.0));
    if (!can_ferment(result.plan.mix, request.formula_place, diagnostics)) {
        return {};
    }
    result.plan.composition = dough_composition(overall.lines);
    result.plan.profile = request.profile;
    result.has_levain = result.plan.mix.levain.value() > 0.0;
    result.has_egg_or_milk = std::any_of(overall.lines.begin(), overall.lines.end(), [](const Line& line) {
        const IngredientClass kind = line.ingredient->ingredient_class;
        return kind == IngredientClass::egg ||
               (kind == IngredientClass::dairy && line.ingredient->composition.water.value() > 0.3);
    });
    StagePlanner(formula, request, overall, result).plan();
    if (request.profile) {
        check_not_frozen(request.profile->coldest(), request.profile_place, diagnostics);
    } else {
        const Temperature coldest = coldest_of(result.plan.stages);
        const bool is_asked = request.at && *request.at <= coldest; // and not a retard of the formula
        check_not_frozen(coldest, is_asked ? request.profile_place : request.formula_place, diagnostics);
    }
    return diagnostics.has_errors() ? std::nullopt : std::optional(std::move(result));
}

std::optional<Windows> windows_of(const Formula& formula, const PlanRequest& request,
                                  const Ensemble& ensemble, Diagnostics& diagnostics) {
    const auto planned = plan_of(formula, request, diagnostics);
    if (!planned) {
        return {};
    }
    Windows windows = compute_windows(planned->plan, ensemble);
    windows.settings = planned->settings;
    add_cautions(*planned, windows);
    tell_last_rise(*planned, windows);
    report_stages_over(windows, request, diagnostics);
    report_last_rise(*planned, windows, request, diagnostics);
    report_temperatures(*planned, windows, request, diagnostics);
    if (diagnostics.has_errors()) {
        return {};
    }
    return windows;
}

} // namespace leavenwright
