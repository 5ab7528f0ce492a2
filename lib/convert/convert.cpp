#include "convert/convert.hpp"

#include "convert/dough_stock.hpp"
#include "quantity/number.hpp"
#include "source/unicode.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace leavenwright {
namespace {

// Relative to the flour: rounding in sums of doubles, far below what any scale shows.
constexpr double fit_slack = 1e-9;
// Beyond this a levain is no levain; where bisection for the wettest one ends.
constexpr double wettest_levain = 10.0;
// Less than this holds no water worth the name (salt, sugar, oil).
constexpr double driest_source = 0.05;
// Water of fresh yeast, on flour, from which a baker feels the difference (our judgement).
constexpr double worth_a_note = 0.005;
// A share that is offered is rounded down to this many steps of 100 %.
constexpr double offered_steps = 1000.0;

bool keeps(const ConversionRequest& request, const Stage& stage) {
    return std::any_of(request.keep.begin(), request.keep.end(),
                       [&](const std::string& name) { return fold_name(name) == fold_name(stage.name); });
}

// The dough with everything in it that the conversion may touch.
struct OpenDough {
    std::vector<Line> lines;   // without packaged yeast
    std::vector<Stage> stages; // that stay
    std::vector<Removed> removed;
    std::vector<std::string> dissolved;
    Mass total_flour;
    Mass flour; // of `lines`: what the levain can take
};

OpenDough open_dough(const Formula& formula, const ConversionRequest& request) {
    OpenDough dough;
    dough.lines = formula.dough;
    for (const Stage& stage : formula.stages) {
        if (!is_preferment(stage.kind) || keeps(request, stage)) {
            dough.stages.push_back(stage);
            continue;
        }
        for (const Line& line : contents_of(stage, *formula.pantry)) {
            put_in(dough.lines, line);
        }
        dough.dissolved.push_back(stage.name);
    }
    for (const Line& line : dough.lines) {
        if (line.ingredient->is_yeast()) {
            dough.removed.push_back({.name = line.name,
                                     .mass = line.mass,
                                     .water = line.ingredient->composition.water * line.mass});
        }
    }
    std::erase_if(dough.lines, [](const Line& line) { return line.ingredient->is_yeast(); });
    dough.total_flour = compute_overall(formula).total_flour;
    dough.flour = add_up(dough.lines, {}).total_flour;
    return dough;
}

// p from any basis. With K the flour in stages that stay, flour added at mixing is F - K - pF.
double prefermented_share(const Inoculation& inoculation, Hydration hydration, const OpenDough& dough) {
    const double levain_per_flour = 1.0 + hydration.value();
    if (const auto* share = std::get_if<PrefermentedFlour>(&inoculation)) {
        return share->value();
    }
    if (const auto* share = std::get_if<LevainOnTotalFlour>(&inoculation)) {
        return share->value() / levain_per_flour;
    }
    const double share = std::get<LevainOnDoughFlour>(inoculation).value();
    return share * (dough.flour / dough.total_flour).value() / (levain_per_flour + share);
}

// The inoculation on the request's own basis that has this prefermented share.
double on_same_basis(const Inoculation& inoculation, double share, Hydration hydration,
                     const OpenDough& dough) {
    const double levain = (1.0 + hydration.value()) * share;
    if (std::holds_alternative<PrefermentedFlour>(inoculation)) {
        return share;
    }
    if (std::holds_alternative<LevainOnTotalFlour>(inoculation)) {
        return levain;
    }
    const double left = (dough.flour / dough.total_flour).value() - share;
    return left > 0.0 ? levain / left : std::numeric_limits<double>::infinity();
}

std::string_view option_of(const Inoculation& inoculation) {
    if (std::holds_alternative<PrefermentedFlour>(inoculation)) {
        return "--prefermented-flour";
    }
    return std::holds_alternative<LevainOnTotalFlour>(inoculation) ? "--levain-on-total-flour"
                                                                   : "--levain-on-dough-flour";
}

Mass water_available(const std::vector<WaterSource>& sources) {
    Mass water = kilograms(0.0);
    for (const WaterSource& source : sources) {
        water += source.water();
    }
    return water;
}

LargestFit fit_of(const OpenDough& dough, const ConversionRequest& request, Mass water) {
    const double flour_kg = dough.total_flour.value();
    const double hydration = request.levain_hydration.value();
    const double by_flour = dough.flour.value() / flour_kg;
    const double by_water = hydration > 0.0 ? water.value() / (hydration * flour_kg) : by_flour;
    LargestFit fit{.prefermented_flour = PrefermentedFlour(std::min(by_flour, by_water)),
                   .levain_hydration = Hydration(0.0)};
    const double share = prefermented_share(request.inoculation, request.levain_hydration, dough);
    // The other two bases hold the levain's weight, so its flour moves with its hydration.
    if (std::holds_alternative<PrefermentedFlour>(request.inoculation)) {
        const bool fits = share <= by_flour * (1.0 + fit_slack);
        fit.levain_hydration = Hydration(fits ? water.value() / (share * flour_kg) : 0.0);
        return fit;
    }
    // At a fixed weight a wetter levain holds more water and less flour, so the wettest is
    // bounded by water alone, and has to fit the flour there.
    double low = 0.0;
    double high = wettest_levain;
    for (int i = 0; i < 200; ++i) {
        const double middle = (low + high) / 2.0;
        const double p = prefermented_share(request.inoculation, Hydration(middle), dough);
        (middle * p * flour_kg <= water.value() ? low : high) = middle;
    }
    if (low > wettest_levain * (1.0 - fit_slack)) { // water does not bound it at all
        low = std::numeric_limits<double>::infinity();
        fit.levain_hydration = Hydration(low);
        return fit;
    }
    const double at_wettest = prefermented_share(request.inoculation, Hydration(low), dough);
    fit.levain_hydration = Hydration(at_wettest <= by_flour * (1.0 + fit_slack) ? low : 0.0);
    return fit;
}

std::string percent(double ratio) {
    return fmt::format("{:.6g}", ratio * 100.0);
}

double rounded_down(double ratio) {
    return std::floor(ratio * offered_steps + 1e-6) / offered_steps;
}

class Converter {
public:
    Converter(const Formula& formula, const ConversionRequest& request, Diagnostics& diagnostics)
        : formula_(formula), request_(request), diagnostics_(diagnostics) {}

    std::optional<Conversion> run() {
        if (!check_request()) {
            return std::nullopt;
        }
        dough_ = open_dough(formula_, request_);
        share_ = prefermented_share(request_.inoculation, request_.levain_hydration, dough_);
        const std::vector<WaterSource> sources = water_sources(dough_.lines, request_, *formula_.pantry);
        if (!check_fit(sources)) {
            return std::nullopt;
        }
        result_.before = formula_;
        note_reading();
        take_flour();
        take_water(sources);
        if (diagnostics_.has_errors()) {
            return std::nullopt;
        }
        build_after();
        weigh_up();
        return std::move(result_);
    }

private:
    bool check_request() {
        const std::size_t errors_before = diagnostics_.error_count();
        for (std::size_t i = 0; i < request_.keep.size(); ++i) {
            const std::string& name = request_.keep[i];
            const SourcedText place =
                i < request_.keep_places.size() ? request_.keep_places[i] : SourcedText{};
            const Stage* stage = formula_.find_stage(name);
            if (stage == nullptr) {
                diagnostics_.error(Code::stage_unknown, place, "the formula has no stage " + in_quotes(name),
                                   stage_names());
            } else if (stage->kind == StageKind::levain) {
                diagnostics_.error(Code::keep_refused, place,
                                   in_quotes(name) + " is a levain already; the new levain takes its place",
                                   "leave --keep out; its flour and water are counted");
            }
        }
        const Overall overall = compute_overall(formula_);
        for (const Ingredient* ingredient : request_.water_from) {
            const bool is_there = overall.mass_of(*ingredient).value() > 0.0;
            const bool is_wet = ingredient->composition.water.value() >= driest_source;
            if (!is_there || !is_wet) {
                diagnostics_.error(Code::water_source_unfit, request_.water_from_place,
                                   in_quotes(ingredient->name) +
                                       (is_there ? " holds no water to give up" : " is not in the formula"),
                                   wet_names(overall));
            }
        }
        return diagnostics_.error_count() == errors_before;
    }

    static std::string wet_names(const Overall& overall) {
        std::string names;
        for (const Line& line : overall.lines) {
            const bool is_wet = !line.ingredient->is_flour() && !line.ingredient->is_yeast() &&
                                line.ingredient->composition.water.value() >= driest_source;
            if (is_wet && !line.ingredient->is_water()) {
                names += (names.empty() ? "what the dough has: " : ", ") + line.name;
            }
        }
        return names.empty() ? "the dough has nothing beside plain water that could; leave --water-from out"
                             : names;
    }

    std::string stage_names() const {
        std::string names;
        for (const Stage& stage : formula_.stages) {
            names += (names.empty() ? "its stages: " : ", ") + stage.name;
        }
        return names.empty() ? "it has no stages; leave --keep out" : names;
    }

    bool check_fit(const std::vector<WaterSource>& sources) {
        const Mass flour_needed = share_ * dough_.total_flour;
        const Mass water_needed = request_.levain_hydration * flour_needed;
        const Mass slack = fit_slack * dough_.total_flour;
        const Mass water = water_available(sources);
        const Mass flour_short = flour_needed - dough_.flour;
        const Mass water_short = water_needed - water;
        if (flour_short <= slack && water_short <= slack) {
            return true;
        }
        std::string message = "the levain does not fit: ";
        if (flour_short > slack) {
            message += fmt::format("{:.4g} g of flour", in_grams(flour_short));
        }
        if (water_short > slack) {
            message +=
                fmt::format("{}{:.4g} g of water", flour_short > slack ? " and " : "", in_grams(water_short));
        }
        message += fmt::format(" short (it holds {:.4g} g of flour and {:.4g} g of water; the dough can give "
                               "up {:.4g} g and {:.4g} g)",
                               in_grams(flour_needed), in_grams(water_needed), in_grams(dough_.flour),
                               in_grams(water));
        diagnostics_.error(Code::levain_does_not_fit, request_.inoculation_place, message,
                           offer(fit_of(dough_, request_, water)));
        return false;
    }

    std::string offer(const LargestFit& fit) const {
        const Hydration hydration = request_.levain_hydration;
        const double largest =
            on_same_basis(request_.inoculation, fit.prefermented_flour.value(), hydration, dough_);
        const double share = std::isfinite(largest) ? rounded_down(largest) : 10.0;
        const double wettest =
            std::isfinite(fit.levain_hydration.value()) ? rounded_down(fit.levain_hydration.value()) : 0.0;
        const double asked = on_same_basis(request_.inoculation, share_, hydration, dough_);
        const std::string command = request_.command.empty() ? "leavenwright convert FILE" : request_.command;
        std::string text;
        if (share > 0.0) {
            text = fmt::format(
                "at {} % levain hydration the most that fits is {} %:\n{} {} {}% --levain-hydration {}%",
                percent(hydration.value()), percent(share), command, option_of(request_.inoculation),
                percent(share), percent(hydration.value()));
        }
        if (wettest > 0.0 && std::isfinite(asked)) {
            text += fmt::format(
                "{}at {} % the wettest levain that fits has {} %:\n{} {} {}% --levain-hydration {}%",
                text.empty() ? "" : "\n", percent(asked), percent(wettest), command,
                option_of(request_.inoculation), percent(asked), percent(wettest));
        }
        if (request_.water_from.empty()) {
            for (const Line& line : dough_.lines) {
                const bool is_wet =
                    line.ingredient->composition.water.value() > 0.15 && !line.ingredient->is_flour();
                const bool is_asked = line.ingredient->ingredient_class == IngredientClass::egg ||
                                      (line.ingredient->ingredient_class == IngredientClass::dairy &&
                                       line.ingredient->dries_to.empty());
                if (is_wet && is_asked) {
                    text += fmt::format(
                        "{}{} holds water too; it is touched only when asked: --water-from \"{}\"",
                        text.empty() ? "" : "\n", in_quotes(line.name), line.ingredient->name);
                    break;
                }
            }
        }
        return text.empty() ? "no levain fits into this dough: it has no water to give up" : text;
    }

    void note(std::string text) { result_.notes.push_back(std::move(text)); }

    void note_reading() {
        for (const std::string& remark : formula_.remarks) {
            note(remark);
        }
        if (formula_.notation == Notation::overall) {
            note("Read as an overall formula: it lists everything, and the stages are taken out of it.");
        }
        for (const std::string& stage : dough_.dissolved) {
            note("The " + stage + " is dissolved: what was in it is part of the dough again.");
        }
        if (dough_.removed.empty()) {
            note("There is no packaged yeast in the dough to take out.");
        }
        for (const Line& line : dough_.lines) {
            const std::string_view name = line.ingredient->name;
            if (name == "baking powder" || name == "baking soda") {
                note(in_quotes(line.name) + " is no yeast; it stays.");
            }
        }
        for (const Stage& stage : dough_.stages) {
            for (const Line& line : stage.lines) {
                if (line.ingredient->is_yeast()) {
                    note(fmt::format("The {} is kept, and with it its {:.3g} g of {}.", stage.name,
                                     in_grams(line.mass), line.name));
                }
            }
        }
    }

    // Names in the levain as the formula writes them.
    std::string name_in_dough(const Ingredient& ingredient, const std::string& otherwise) const {
        for (const Line& line : dough_.lines) {
            if (line.ingredient == &ingredient) {
                return line.name;
            }
        }
        return otherwise;
    }

    void take_flour() {
        const Mass wanted = share_ * dough_.total_flour;
        if (request_.levain_flour.empty()) {
            take_largest_flours(wanted);
            return;
        }
        Mass short_of = kilograms(0.0);
        for (const LevainFlour& flour : request_.levain_flour) {
            const Mass mass = flour.share * wanted;
            const Mass missing = leavenwright::take_out(dough_.lines, *flour.ingredient, mass);
            put_in(result_.levain.lines, {.name = name_in_dough(*flour.ingredient, flour.name),
                                          .ingredient = flour.ingredient,
                                          .mass = mass,
                                          .uncertainty = {}});
            if (missing.value() > fit_slack * wanted.value()) {
                short_of += missing;
                moved_.push_back(fmt::format("{:.4g} g more {}", in_grams(missing), flour.name));
            }
        }
        if (short_of.value() > 0.0) {
            move_blend(short_of);
        }
    }

    // The blend does not move: the levain takes the main flour, then the next.
    void take_largest_flours(Mass wanted) {
        for (const Line& flour : flours_by_size(dough_.lines)) {
            const Mass taken = wanted - leavenwright::take_out(dough_.lines, *flour.ingredient, wanted);
            if (taken.value() > fit_slack * dough_.total_flour.value()) {
                put_in(
                    result_.levain.lines,
                    {.name = flour.name, .ingredient = flour.ingredient, .mass = taken, .uncertainty = {}});
            }
            wanted -= taken;
        }
        if (result_.levain.lines.size() > 1) {
            note("The main flour does not suffice for the levain, so it holds others of the dough's flours "
                 "too.");
        }
    }

    void move_blend(Mass short_of) {
        std::string less;
        for (const Line& flour : flours_by_size(dough_.lines)) {
            const Mass taken = short_of - leavenwright::take_out(dough_.lines, *flour.ingredient, short_of);
            short_of -= taken;
            if (taken.value() > 0.0) {
                less +=
                    fmt::format("{}{:.4g} g less {}", less.empty() ? "" : ", ", in_grams(taken), flour.name);
            }
        }
        std::string more;
        for (const std::string& text : moved_) {
            more += (more.empty() ? "" : ", ") + text;
        }
        blend_ = more + ", " + less;
        if (request_.keep_blend) {
            diagnostics_.error(
                Code::blend_moved, request_.levain_flour_place, "the blend of flours would move: " + blend_,
                "choose flours for the levain that the dough has enough of, or leave --keep-blend out");
        }
        note("The blend of flours moved: " + blend_ + ".");
    }

    void take_water(const std::vector<WaterSource>& sources) {
        Mass wanted = request_.levain_hydration * (share_ * dough_.total_flour);
        const std::string name = name_in_dough(*formula_.pantry->find("water").ingredient, "water");
        if (wanted.value() > 0.0) {
            result_.levain.lines.push_back({.name = name,
                                            .ingredient = formula_.pantry->find("water").ingredient,
                                            .mass = wanted,
                                            .uncertainty = {}});
        }
        for (const WaterSource& source : sources) {
            const Mass water = std::min(wanted, source.water());
            if (water.value() <= 0.0) {
                continue;
            }
            const Mass mass = water / source.yield.value();
            leavenwright::take_out(dough_.lines, *source.ingredient, mass);
            wanted -= water;
            if (source.ingredient->is_water()) {
                continue;
            }
            const std::string liquid(source.ingredient->name);
            std::string text =
                fmt::format("{:.4g} g of {} gave up its water for the levain", in_grams(mass), liquid);
            if (source.dry_milk != nullptr) {
                const Mass dry = source.dry_milk_per_mass * mass;
                put_in(dough_.lines, {.name = std::string(source.dry_milk->name),
                                      .ingredient = source.dry_milk,
                                      .mass = dry,
                                      .uncertainty = {}});
                text += fmt::format("; {:.4g} g of {} restores what else was in it", in_grams(dry),
                                    source.dry_milk->name);
                meant_solids_ = "dry milk restores that of the " + liquid + " to within a few percent";
            } else {
                meant_solids_ = "went with the " + liquid + " that gave up its water";
                loses_solids_ = true;
                if (!source.ingredient->dries_to.empty()) {
                    text += "; --dry-milk puts its solids back as dry milk";
                }
            }
            note(text + ".");
        }
    }

    // The amounts that were computed, as decimals again.
    void clear_dust() {
        for (std::vector<Line>* lines : {&dough_.lines, &result_.levain.lines}) {
            for (Line& line : *lines) {
                line.mass = kilograms(without_dust(line.mass.value()));
            }
        }
    }

    void build_after() {
        clear_dust();
        Formula& after = result_.after;
        after = formula_;
        after.notation = Notation::dough;
        after.remarks.clear();
        after.dough = std::move(dough_.lines);
        after.stages = std::move(dough_.stages);
        Stage levain{.name = levain_name(),
                     .kind = StageKind::levain,
                     .lines = result_.levain.lines,
                     .culture_hydration = request_.levain_hydration,
                     .used = {},
                     .process = {}};
        levain.used = levain.mass();
        after.stages.insert(after.stages.begin(), std::move(levain));
        bool has_times = false;
        for (Step& step : after.process) {
            const bool ferments =
                step.verb == "bulk" || step.verb == "proof" || step.verb == "retard" || step.verb == "rest";
            if (ferments && step.time) {
                const std::string time = step.time->text + " with packaged yeast";
                step.note += (step.note.empty() ? "" : "; ") + time;
                step.time.reset();
                has_times = true;
            }
        }
        if (has_times) {
            note("The rising times of the formula are for packaged yeast: a levain dough is judged by its "
                 "rise, and takes longer.");
        }
        note_cautions();
    }

    std::string levain_name() const {
        const auto is_levain = [](const auto& item) { return fold_name(item.name) == "levain"; };
        const Formula& after = result_.after;
        const bool is_taken = std::any_of(after.stages.begin(), after.stages.end(), is_levain) ||
                              std::any_of(after.dough.begin(), after.dough.end(), is_levain);
        return is_taken ? "new levain" : "levain";
    }

    void note_cautions() {
        const Overall overall = compute_overall(formula_);
        const bool has_risky = std::any_of(overall.lines.begin(), overall.lines.end(), [](const Line& line) {
            return line.ingredient->ingredient_class == IngredientClass::egg ||
                   line.ingredient->ingredient_class == IngredientClass::dairy;
        });
        if (has_risky) {
            note("Egg or milk in a dough that stands warm for hours is a food-safety matter: keep the rise "
                 "cool or short, "
                 "and go by your local code.");
        }
    }

    void weigh_up() {
        result_.removed = dough_.removed;
        Levain& levain = result_.levain;
        const Overall contents = add_up(levain.lines, {});
        result_.overall_before = compute_overall(result_.before);
        result_.overall_after = compute_overall(result_.after);
        levain.flour = contents.total_flour;
        levain.water = contents.added_water;
        levain.hydration = request_.levain_hydration;
        levain.prefermented_flour = PrefermentedFlour(share_);
        // From the shares, not from the rounded sums: 0.5 stays 0.5.
        const double on_total = (1.0 + levain.hydration.value()) * share_;
        const double left = (dough_.flour / dough_.total_flour).value() - share_;
        levain.on_total_flour = LevainOnTotalFlour(on_total);
        levain.on_dough_flour =
            LevainOnDoughFlour(left > fit_slack ? on_total / left : std::numeric_limits<double>::infinity());
        balance();
    }

    void balance() {
        const Overall& before = result_.overall_before;
        const Overall& after = result_.overall_after;
        Mass yeast_water = kilograms(0.0);
        for (const Removed& removed : result_.removed) {
            yeast_water += removed.water;
        }
        if (yeast_water.value() > worth_a_note * before.total_flour.value()) {
            note(fmt::format("The yeast carried {:.2g} g of water, which went with it: add as much if the "
                             "dough feels stiff.",
                             in_grams(yeast_water)));
        }
        const auto add = [&](std::string name, Mass was, Mass is, const std::string& meant) {
            const bool moved = std::abs((is - was).value()) > fit_slack * before.total.value();
            result_.balance.push_back({.name = std::move(name),
                                       .before = was,
                                       .after = is,
                                       .meant = moved ? meant : std::string()});
        };
        std::vector<Line> flours = before.flours();
        for (const Line& flour : after.flours()) {
            const bool is_new = before.mass_of(*flour.ingredient).value() == 0.0;
            if (is_new) {
                flours.push_back(flour);
            }
        }
        for (const Line& flour : flours) {
            add(flour.name, before.mass_of(*flour.ingredient), after.mass_of(*flour.ingredient),
                "the blend moved");
        }
        const std::string yeast_text = yeast_water.value() > 0.0 ? "in the yeast taken out" : "";
        add("total flour", before.total_flour, after.total_flour, "");
        add("added water", before.added_water, after.added_water,
            "water that another liquid gave up counts as added in the levain");
        add("true water", before.true_water, after.true_water, yeast_text);
        add("salt", before.salt, after.salt, "");
        add("sugar", before.sugar, after.sugar, meant_solids_);
        add("fat", before.fat, after.fat, meant_solids_);
        add("dough", before.total, after.total,
            loses_solids_ ? "the yeast taken out, and what else was in the liquid that gave up its water"
                          : "the yeast taken out");
    }

    const Formula& formula_;
    const ConversionRequest& request_;
    Diagnostics& diagnostics_;
    OpenDough dough_;
    double share_ = 0.0;
    std::vector<std::string> moved_;
    std::string blend_;
    std::string meant_solids_; // why sugar and fat moved
    bool loses_solids_ = false;
    Conversion result_;
};

// What everything is to be scaled by, so that a promise of dough that was kept before the
// yeast went is kept after.
double factor_to_promise(const Formula& before, const Formula& after) {
    if (!before.makes || !before.makes->dough) {
        return 1.0;
    }
    constexpr double met = 1e-9;
    const double promised = before.makes->dough->value();
    const double has = after.dough_mass().value();
    const bool was_kept = before.dough_mass().value() >= promised * (1.0 - met);
    const bool is_kept = has >= promised * (1.0 - met);
    return was_kept && !is_kept ? promised / has : 1.0;
}

} // namespace

std::optional<Conversion> convert(const Formula& formula, const ConversionRequest& request,
                                  Diagnostics& diagnostics) {
    auto conversion = Converter(formula, request, diagnostics).run();
    const double factor = conversion ? factor_to_promise(formula, conversion->after) : 1.0;
    if (factor == 1.0) {
        return conversion;
    }
    Formula scaled = formula;
    scaled.scale(factor);
    conversion = Converter(scaled, request, diagnostics).run();
    if (conversion) {
        conversion->scaled_by = factor;
        conversion->notes.push_back(
            fmt::format("Everything is scaled by {:.5f}, so that the dough weighs the {:.6g} g that the "
                        "formula promises without the yeast.",
                        factor, in_grams(*formula.makes->dough)));
    }
    return conversion;
}

LargestFit largest_fit(const Formula& formula, const ConversionRequest& request) {
    const OpenDough dough = open_dough(formula, request);
    return fit_of(dough, request, water_available(water_sources(dough.lines, request, *formula.pantry)));
}

} // namespace leavenwright
