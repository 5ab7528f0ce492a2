#include "convert/levain_fit.hpp"

#include "diagnostic/suggestion.hpp"
#include "quantity/show.hpp"
#include "source/unicode.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace leavenwright {
namespace {

// A share that is offered is rounded down to this many steps of 100 %.
constexpr double offered_steps = 1000.0;

bool keeps(const ConversionRequest& request, const Stage& stage) {
    return std::any_of(request.keep.begin(), request.keep.end(),
                       [&](const std::string& name) { return fold_name(name) == fold_name(stage.name); });
}

// The inoculation on the request's own basis that has this prefermented share.
double on_same_basis(const Inoculation& inoculation, PrefermentedFlour prefermented, Hydration hydration,
                     const OpenDough& dough) {
    const double share = prefermented.value();
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

std::string percent(double ratio) {
    return fmt::format("{:.6g}", ratio * 100.0);
}

double rounded_down(double ratio) {
    return std::floor(ratio * offered_steps + 1e-6) / offered_steps;
}

// The liquids that give up water unasked, as the beginning of a list.
std::string usual_sources(const OpenDough& dough) {
    std::string names;
    for (const WaterSource& source : water_sources(dough.lines, {}, Pantry())) {
        names += source.ingredient->is_water() ? "" : std::string(source.ingredient->name) + ", ";
    }
    return names;
}

// A liquid that holds water but is touched only when asked, as a hint; empty if there is none.
std::string untouched_liquid(const OpenDough& dough, const ConversionRequest& request) {
    constexpr double worth_asking = 0.15; // water in it
    if (!request.water_from.empty()) {
        return {};
    }
    for (const Line& line : dough.lines) {
        const Ingredient& ingredient = *line.ingredient;
        const bool is_asked =
            ingredient.ingredient_class == IngredientClass::egg ||
            (ingredient.ingredient_class == IngredientClass::dairy && ingredient.dries_to.empty());
        if (is_asked && ingredient.composition.water.value() > worth_asking) {
            return fmt::format("{} holds water too; it is touched only when asked: --water-from \"{}{}\"",
                               in_quotes(line.name), usual_sources(dough), ingredient.name);
        }
    }
    return {};
}

// The levain's flours that the dough has none of, where the blend has to stay.
std::string absent_flours(const OpenDough& dough, const ConversionRequest& request) {
    const Overall flours = add_up(dough.lines, {});
    std::vector<std::string_view> absent;
    for (const LevainFlour& flour : request.levain_flour) {
        if (request.keep_blend && !(flours.mass_of(*flour.ingredient).value() > 0.0)) {
            absent.push_back(flour.name);
        }
    }
    return listed(absent);
}

} // namespace

PrefermentedFlour LargestFit::offered_share() const {
    return PrefermentedFlour(rounded_down(prefermented_flour.value()));
}

std::string offer_of(const OpenDough& dough, const ConversionRequest& request, PrefermentedFlour share_asked,
                     const LargestFit& fit) {
    const Hydration hydration = request.levain_hydration;
    const double largest = on_same_basis(request.inoculation, fit.prefermented_flour, hydration, dough);
    const double share = std::isfinite(largest) ? rounded_down(largest) : 10.0;
    const double wettest =
        std::isfinite(fit.levain_hydration.value()) ? rounded_down(fit.levain_hydration.value()) : 0.0;
    const double asked = on_same_basis(request.inoculation, share_asked, hydration, dough);
    const std::string command = request.command.empty() ? "leavenwright convert FILE" : request.command;
    std::string text;
    if (share > 0.0) {
        text = fmt::format(
            "at {} % levain hydration the most that fits is {} %:\n{} {} {}% --levain-hydration {}%",
            percent(hydration.value()), percent(share), command, option_of(request.inoculation),
            percent(share), percent(hydration.value()));
    }
    if (wettest > 0.0 && std::isfinite(asked)) {
        text +=
            fmt::format("{}at {} % the wettest levain that fits has {} %:\n{} {} {}% --levain-hydration {}%",
                        text.empty() ? "" : "\n", percent(asked), percent(wettest), command,
                        option_of(request.inoculation), percent(asked), percent(wettest));
    }
    const std::string absent = absent_flours(dough, request);
    if (text.empty() && !absent.empty() && dough.flour.value() > 0.0) { // which more water does not mend
        return "no levain of these flours fits: the dough has no " + absent + " to give up";
    }
    const std::string wet = untouched_liquid(dough, request);
    text += wet.empty() || text.empty() ? wet : "\n" + wet;
    if (!text.empty()) {
        return text;
    }
    if (!(dough.flour.value() > 0.0)) {
        return "no levain fits: all the flour is in stages that are kept; leave --keep out";
    }
    return "no levain fits into this dough: it has no water to give up";
}

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

PrefermentedFlour prefermented_share(const Inoculation& inoculation, Hydration hydration,
                                     const OpenDough& dough) {
    const double levain_per_flour = 1.0 + hydration.value();
    if (const auto* share = std::get_if<PrefermentedFlour>(&inoculation)) {
        return *share;
    }
    if (const auto* share = std::get_if<LevainOnTotalFlour>(&inoculation)) {
        return PrefermentedFlour(share->value() / levain_per_flour);
    }
    const double share = std::get<LevainOnDoughFlour>(inoculation).value();
    return PrefermentedFlour(share * (dough.flour / dough.total_flour).value() / (levain_per_flour + share));
}

Mass water_available(const std::vector<WaterSource>& sources) {
    Mass water = kilograms(0.0);
    for (const WaterSource& source : sources) {
        water += source.water();
    }
    return water;
}

// The share that the flours allow: all of the dough's, or with --keep-blend what the kind that
// runs short first allows.
double flour_bound(const OpenDough& dough, const ConversionRequest& request) {
    double bound = (dough.flour / dough.total_flour).value();
    if (!request.keep_blend) {
        return bound;
    }
    const Overall flours = add_up(dough.lines, {});
    for (const LevainFlour& flour : request.levain_flour) {
        const double available = (flours.mass_of(*flour.ingredient) / dough.total_flour).value();
        bound = std::min(bound, available / flour.share.value());
    }
    return bound;
}

LargestFit largest_fit_of(const OpenDough& dough, const ConversionRequest& request, Mass water) {
    const double flour_kg = dough.total_flour.value();
    const double hydration = request.levain_hydration.value();
    const double by_flour = flour_bound(dough, request);
    const double by_water = hydration > 0.0 ? water.value() / (hydration * flour_kg) : by_flour;
    LargestFit fit{.prefermented_flour = PrefermentedFlour(std::min(by_flour, by_water)),
                   .levain_hydration = Hydration(0.0),
                   .asked = prefermented_share(request.inoculation, request.levain_hydration, dough)};
    const double share = fit.asked.value();
    // The other two bases hold the levain's weight, so its flour moves with its hydration.
    if (std::holds_alternative<PrefermentedFlour>(request.inoculation)) {
        const bool fits = share <= by_flour * (1.0 + fit_slack);
        fit.levain_hydration = Hydration(fits ? water.value() / (share * flour_kg) : 0.0);
        return fit;
    }
    // At a fixed weight a wetter levain holds more water and less flour, so the wettest is
    // bounded by water alone, and has to fit the flour there. With w = W / F, the asked share s
    // and D the dough's flour on F: h = w / (s - w), or on dough flour h = w (1 + s) / (s D - w).
    const double wet = water.value() / flour_kg;
    const bool is_on_total = std::holds_alternative<LevainOnTotalFlour>(request.inoculation);
    const double asked = is_on_total ? std::get<LevainOnTotalFlour>(request.inoculation).value()
                                     : std::get<LevainOnDoughFlour>(request.inoculation).value();
    const double room = is_on_total ? asked - wet : asked * (dough.flour.value() / flour_kg) - wet;
    const double wettest = (is_on_total ? wet : wet * (1.0 + asked)) / room;
    if (room <= 0.0) { // water does not bound it at all
        fit.levain_hydration = Hydration(std::numeric_limits<double>::infinity());
        return fit;
    }
    const double at_wettest = prefermented_share(request.inoculation, Hydration(wettest), dough).value();
    fit.levain_hydration = Hydration(at_wettest <= by_flour * (1.0 + fit_slack) ? wettest : 0.0);
    return fit;
}

Fit fit_levain(const OpenDough& dough, const ConversionRequest& request, PrefermentedFlour share,
               Mass water) {
    const Mass flour_needed = share * dough.total_flour;
    const Mass water_needed = request.levain_hydration * flour_needed;
    const Mass slack = fit_slack * dough.total_flour;
    const Mass flour_short = flour_needed - dough.flour;
    const Mass water_short = water_needed - water;
    if (flour_short <= slack && water_short <= slack) {
        return {};
    }
    std::string message = "the levain does not fit: ";
    if (flour_short > slack) {
        message += show_grams(flour_short) + " of flour";
    }
    if (water_short > slack) {
        message += (flour_short > slack ? " and " : "") + show_grams(water_short) + " of water";
    }
    message += fmt::format(" short (it holds {} of flour and {} of water; the dough can give up {} and {})",
                           show_grams(flour_needed), show_grams(water_needed), show_grams(dough.flour),
                           show_grams(water));
    return {.fits = false,
            .message = std::move(message),
            .offer = offer_of(dough, request, share, largest_fit_of(dough, request, water))};
}

} // namespace leavenwright
