#include "convert/convert.hpp"

#include "convert/balance.hpp"
#include "convert/describe_conversion.hpp"
#include "convert/dough_stock.hpp"
#include "convert/levain_fit.hpp"
#include "quantity/number.hpp"
#include "quantity/show.hpp"
#include "source/unicode.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <limits>

namespace leavenwright {
namespace {

// Water of fresh yeast, on flour, from which a baker feels the difference (our judgement).
constexpr double worth_a_note = 0.005;

class Converter {
public:
    Converter(const Formula& formula, const ConversionRequest& request, Diagnostics& diagnostics)
        : formula_(formula), request_(request), diagnostics_(diagnostics) {}

    std::optional<Conversion> run() {
        dough_ = open_dough(formula_, request_);
        if (!check_request(formula_, dough_.lines, request_, diagnostics_)) {
            return std::nullopt;
        }
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
    bool check_fit(const std::vector<WaterSource>& sources) {
        const Fit fit = fit_levain(dough_, request_, share_, water_available(sources));
        if (!fit.fits) {
            diagnostics_.error(Code::levain_does_not_fit, request_.inoculation_place, fit.message, fit.offer);
        }
        return fit.fits;
    }

    void note(std::string text) { result_.notes.push_back(std::move(text)); }

    void note_reading() {
        for (const std::string& remark : formula_.remarks) {
            note(remark);
        }
        for (const std::string& remark : request_.remarks) {
            note(remark);
        }
        if (formula_.notation == Notation::overall) {
            note("Read as an overall formula: it lists everything, and the stages are taken out of it.");
        }
        for (const std::string& stage : dough_.dissolved) {
            note(in_quotes(stage) + " is dissolved: what was in it is part of the dough again.");
        }
        const bool has_kept_yeast =
            std::any_of(dough_.stages.begin(), dough_.stages.end(),
                        [](const Stage& stage) { return holds(stage.lines, IngredientClass::yeast); });
        if (dough_.removed.empty() && !has_kept_yeast) {
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
                    note(in_quotes(stage.name) + " is kept, and with it " +
                         show_grams(stage.fraction_used() * line.mass) + " of " + line.name + ".");
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

    // "acqua" for somebody who writes so, but never "boiling water".
    std::string plain_water_name() const {
        const Line* largest = nullptr;
        for (const Line& line : dough_.lines) {
            const bool is_one_word = line.ingredient->is_water() &&
                                     line.name.find(' ') == std::string::npos &&
                                     fold_name(line.name) != "ice";
            if (is_one_word && (largest == nullptr || line.mass > largest->mass)) {
                largest = &line;
            }
        }
        return largest == nullptr ? "water" : largest->name;
    }

    void take_flour() {
        // Main flour and next: by size before the levain takes its part.
        const std::vector<Line> by_size = flours_by_size(dough_.lines);
        const Mass wanted = share_ * dough_.total_flour;
        if (request_.levain_flour.empty()) {
            take_largest_flours(wanted, by_size);
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
                moved_.push_back(show_grams(missing) + " more " + flour.name);
            }
        }
        if (short_of.value() > 0.0) {
            move_blend(short_of, by_size);
        }
    }

    // The blend does not move: the levain takes the main flour, then the next.
    void take_largest_flours(Mass wanted, const std::vector<Line>& by_size) {
        for (const Line& flour : by_size) {
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

    void move_blend(Mass short_of, const std::vector<Line>& by_size) {
        std::string less;
        for (const Line& flour : by_size) {
            const Mass taken = short_of - leavenwright::take_out(dough_.lines, *flour.ingredient, short_of);
            short_of -= taken;
            if (taken.value() > 0.0) {
                less += (less.empty() ? "" : ", ") + show_grams(taken) + " less " + flour.name;
            }
        }
        std::string more;
        for (const std::string& text : moved_) {
            more += (more.empty() ? "" : ", ") + text;
        }
        const std::string blend = more + ", " + less;
        if (request_.keep_blend) {
            diagnostics_.error(
                Code::blend_moved, request_.levain_flour_place, "the blend of flours would move: " + blend,
                "choose flours for the levain that the dough has enough of, or leave --keep-blend out" +
                    offer_within_blend());
        }
        note("The blend of flours moved: " + blend + ".");
    }

    // The fit that --keep-blend allows is bounded by the flour that runs short first.
    std::string offer_within_blend() const {
        const OpenDough dough = open_dough(formula_, request_);
        const Mass water = water_available(water_sources(dough.lines, request_, *formula_.pantry));
        const std::string offer = offer_of(dough, request_, share_, largest_fit_of(dough, request_, water));
        return offer.empty() ? "" : "\n" + offer;
    }

    void take_water(const std::vector<WaterSource>& sources) {
        Mass wanted = request_.levain_hydration * (share_ * dough_.total_flour);
        const std::string name = plain_water_name();
        if (wanted.value() > 0.0) {
            result_.levain.lines.push_back({.name = name,
                                            .ingredient = formula_.pantry->find("water").ingredient,
                                            .mass = wanted,
                                            .uncertainty = {}});
        }
        for (const WaterSource& source : sources) {
            const Mass dust = fit_slack * dough_.total_flour;
            if (wanted <= dust) {
                break;
            }
            const bool is_all = wanted + dust >= source.water();
            const Mass water = is_all ? source.water() : wanted;
            const Mass mass = is_all ? source.mass : water / source.yield.value();
            leavenwright::take_out(dough_.lines, *source.ingredient, mass);
            wanted -= water;
            if (source.ingredient->is_water()) {
                continue;
            }
            const std::string liquid(source.ingredient->name);
            std::string text = show_grams(mass) + " of " + liquid + " gave up its water for the levain";
            if (source.dry_milk != nullptr) {
                const Mass dry = source.dry_milk_per_mass * mass;
                put_in(dough_.lines, {.name = std::string(source.dry_milk->name),
                                      .ingredient = source.dry_milk,
                                      .mass = dry,
                                      .uncertainty = {}});
                text += "; " + show_grams(dry) + " of " + std::string(source.dry_milk->name) +
                        " restores what else was in it";
                add_solids("what dry milk does not restore of the " + liquid);
            } else {
                add_solids("went with the " + liquid + " that gave up its water");
                moves_.loses_solids = true;
                const std::string_view dried = source.ingredient->dries_to;
                if (!dried.empty()) {
                    text += request_.dry_milk
                                ? "; the pantry has no " + in_quotes(dried) + " to put its solids back with"
                                : "; --dry-milk puts its solids back as dry milk";
                }
            }
            note(text + ".");
        }
    }

    void add_solids(const std::string& reason) {
        moves_.solids += (moves_.solids.empty() ? "" : "; ") + reason;
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
            // A retard and a rest go by the clock, whatever raises the dough.
            const bool goes_by_rise = step.verb == "bulk" || step.verb == "proof";
            if (goes_by_rise && step.time) {
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
        const Formula& after = result_.after;
        const auto is_taken = [&](const std::string& name) {
            const auto has_it = [&](const auto& item) { return fold_name(item.name) == name; };
            return std::any_of(after.stages.begin(), after.stages.end(), has_it) ||
                   std::any_of(after.dough.begin(), after.dough.end(), has_it);
        };
        std::string name = "levain";
        while (is_taken(name)) {
            name = "new " + name;
        }
        return name;
    }

    void note_cautions() {
        if (std::string caution = warm_dough_caution(compute_overall(formula_)); !caution.empty()) {
            note(std::move(caution));
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
        levain.prefermented_flour = share_;
        // From the shares, not from the rounded sums: 0.5 stays 0.5.
        const double on_total = (1.0 + levain.hydration.value()) * share_.value();
        const double left = (dough_.flour / dough_.total_flour).value() - share_.value();
        levain.on_total_flour = LevainOnTotalFlour(on_total);
        levain.on_dough_flour =
            LevainOnDoughFlour(left > fit_slack ? on_total / left : std::numeric_limits<double>::infinity());
        balance();
    }

    void balance() {
        Mass yeast_water = kilograms(0.0);
        for (const Removed& removed : result_.removed) {
            yeast_water += removed.water;
        }
        if (yeast_water.value() > worth_a_note * result_.overall_before.total_flour.value()) {
            note("The yeast carried " + show_grams(yeast_water) +
                 " of water, which went with it: add as much if the dough feels stiff.");
        }
        moves_.yeast_carries_water = yeast_water.value() > 0.0;
        result_.balance = balance_of(result_.overall_before, result_.overall_after, moves_);
        prove(result_.overall_before, result_.overall_after, yeast_water);
    }

    const Formula& formula_;
    const ConversionRequest& request_;
    Diagnostics& diagnostics_;
    OpenDough dough_;
    PrefermentedFlour share_;
    std::vector<std::string> moved_;
    MeantMoves moves_;
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
    const double had = before.dough_mass().value();
    const double has = after.dough_mass().value();
    // A formula that was a little short, within what no warning is given for, kept its promise.
    const bool was_kept = had >= promised * (1.0 - makes_short_slack);
    return was_kept && has < promised * (1.0 - met) ? promised / has : 1.0;
}

} // namespace

void check_names(const Formula& formula, const ConversionRequest& request, Diagnostics& diagnostics) {
    check_request(formula, open_dough(formula, request).lines, request, diagnostics);
}

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
        conversion->notes.push_back(fmt::format("Everything is scaled by {:.5f}, so that the dough weighs "
                                                "the {} that the formula promises without the yeast.",
                                                factor, show_grams(conversion->after.dough_mass())));
    }
    return conversion;
}

LargestFit largest_fit(const Formula& formula, const ConversionRequest& request) {
    const OpenDough dough = open_dough(formula, request);
    return largest_fit_of(dough, request,
                          water_available(water_sources(dough.lines, request, *formula.pantry)));
}

} // namespace leavenwright
