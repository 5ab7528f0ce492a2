#include "schedule/dough_mix.hpp"

#include "schedule/levain_stage.hpp"

namespace leavenwright {
namespace {

// Fresh to dry yeast by weight: Hamelman, Bread (2004), "Yeast conversions, fresh to dry".
constexpr double active_dry_per_fresh = 0.4;
constexpr double instant_per_fresh = 0.33;

double as_fresh(const Ingredient& yeast) {
    if (yeast.composition.water.value() > 0.3) {
        return 1.0;
    }
    return 1.0 /
           (yeast.name.find("active") != std::string_view::npos ? active_dry_per_fresh : instant_per_fresh);
}

Mass levain_mass(const Formula& formula) {
    Mass mass{};
    for (const Stage& stage : formula.stages) {
        const bool has_culture = holds(stage.lines, IngredientClass::culture);
        if (stage.kind == StageKind::levain || (is_preferment(stage.kind) && has_culture)) {
            mass += stage.used;
        }
    }
    for (const Line& line : formula.dough) {
        if (line.ingredient->is_culture()) {
            mass += line.mass;
        }
    }
    return mass;
}

Mass fresh_yeast_mass(const Formula& formula, const Overall& overall) {
    Mass mass{};
    for (const Line& line : overall.lines) {
        if (line.ingredient->is_yeast()) {
            mass += as_fresh(*line.ingredient) * line.mass;
        }
    }
    // A yeasted preferment brings its yeast and what has grown in it: as many new cells as packaged
    // yeast makes in any dough, whatever the dose.
    for (const Stage& stage : formula.stages) {
        if (is_preferment(stage.kind) && holds(stage.lines, IngredientClass::yeast)) {
            mass += (Kinetics{}.packaged_new_cells / cells_per_gram_fresh_yeast) * stage.used;
        }
    }
    return mass;
}

Fraction whole_grain_share(const Overall& overall) {
    Mass fibre{};
    for (const Line& line : overall.flours()) {
        fibre += line.ingredient->composition.fibre * line.mass;
    }
    return whole_grain_of(Fraction::of(fibre, overall.total_flour));
}

} // namespace

DoughMix dough_mix(const Formula& formula, const Overall& overall, double levain_times) {
    return {.levain = Fraction(levain_times * levain_mass(formula) / overall.total),
            .fresh_yeast = Fraction::of(fresh_yeast_mass(formula, overall), overall.total),
            .salt = overall.percentage(overall.salt),
            .sugar = overall.percentage(overall.sugar),
            .true_water = overall.hydration_true(),
            .water = Fraction::of(overall.true_water, overall.total),
            .whole_grain = whole_grain_share(overall)};
}

} // namespace leavenwright
