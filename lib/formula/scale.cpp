#include "formula/scale.hpp"

#include "formula/overall.hpp"
#include "quantity/number.hpp"
#include "quantity/show.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace leavenwright {
namespace {

Mass dough_for(const ToBaked& target) {
    return target.bread / (1.0 - target.loss.value());
}

double factor_for(const Formula& formula, const ScaleTarget& target) {
    const double dough_kg = formula.dough_mass().value();
    if (const auto* dough = std::get_if<ToDough>(&target)) {
        return dough->dough.value() / dough_kg;
    }
    if (const auto* pieces = std::get_if<ToPieces>(&target)) {
        return pieces->pieces * pieces->piece.value() / dough_kg;
    }
    if (const auto* flour = std::get_if<ToFlour>(&target)) {
        return flour->flour.value() / compute_overall(formula).total_flour.value();
    }
    if (const auto* baked = std::get_if<ToBaked>(&target)) {
        return dough_for(*baked).value() / dough_kg;
    }
    if (const auto* pans = std::get_if<ToPans>(&target)) {
        return pans->dough.value() / dough_kg;
    }
    return std::get<ByFactor>(target).factor;
}

// What the scaled formula makes, where the target is a promise of dough.
std::optional<Yield> yield_for(const ScaleTarget& target) {
    if (const auto* pieces = std::get_if<ToPieces>(&target)) {
        Yield yield{.text = {},
                    .pieces = pieces->pieces,
                    .noun = pieces->noun,
                    .dough = pieces->piece * pieces->pieces,
                    .piece = pieces->piece};
        yield.text = show_decimal(pieces->pieces, 6) + (pieces->noun.empty() ? "" : " " + pieces->noun) +
                     " x " + exact_decimal(pieces->piece.value(), 3) + " g";
        return yield;
    }
    if (const auto* dough = std::get_if<ToDough>(&target)) {
        return Yield{.text = dough->text, .pieces = {}, .noun = {}, .dough = dough->dough, .piece = {}};
    }
    return std::nullopt;
}

// The whole egg that the formula has most of, with its weight.
const Line* main_egg(const Overall& overall) {
    const Line* egg = nullptr;
    for (const Line& line : overall.lines) {
        const bool is_egg =
            line.ingredient->ingredient_class == IngredientClass::egg && mass_of_piece(*line.ingredient, "");
        if (is_egg && (egg == nullptr || line.mass > egg->mass)) {
            egg = &line;
        }
    }
    return egg;
}

double with_whole_eggs(const Formula& formula, double factor, std::vector<std::string>& notes) {
    const Overall overall = compute_overall(formula);
    const Line* egg = main_egg(overall);
    if (egg == nullptr) {
        notes.push_back("The formula has no eggs to keep whole.");
        return factor;
    }
    const Mass one = egg->piece.value() > 0.0 ? egg->piece : *mass_of_piece(*egg->ingredient, "");
    const double eggs = (egg->mass / one).value();
    const double wanted = eggs * factor;
    const double whole = std::max(1.0, std::round(wanted));
    const double kept = whole / eggs;
    if (std::abs(kept / factor - 1.0) < 1e-9) {
        notes.push_back("The eggs are whole as it is.");
        return factor;
    }
    notes.push_back(fmt::format("{} of {} would be {}; {} are whole, so everything is {} {} than asked.",
                                show_decimal(eggs, 2) + " x " + show_decimal(factor, 4), egg->name,
                                show_decimal(wanted, 2), show_decimal(whole, 0),
                                show_percent(std::abs(kept / factor - 1.0)),
                                kept < factor ? "less" : "more"));
    return kept;
}

} // namespace

ScaledFormula scale_formula(const Formula& formula, const ScaleTarget& target, bool whole_eggs) {
    ScaledFormula scaled{.formula = formula, .factor = factor_for(formula, target), .notes = formula.remarks};
    const double asked = scaled.factor;
    if (const auto* baked = std::get_if<ToBaked>(&target)) {
        scaled.notes.push_back(fmt::format(
            "{} g of bread at a loss of {} need {} g of dough.", show_decimal(in_grams(baked->bread), 1),
            show_percent(baked->loss.value()), show_decimal(in_grams(dough_for(*baked)), 1)));
    }
    if (const auto* pans = std::get_if<ToPans>(&target)) {
        scaled.notes.push_back(
            fmt::format("{} take {} g of dough.", pans->text, show_decimal(in_grams(pans->dough), 1)));
    }
    if (whole_eggs) {
        scaled.factor = with_whole_eggs(formula, asked, scaled.notes);
    }
    scaled.formula.scale(scaled.factor);
    scaled.formula.notation = Notation::dough;
    scaled.formula.makes = scaled.factor == asked ? yield_for(target) : std::nullopt;
    return scaled;
}

} // namespace leavenwright
