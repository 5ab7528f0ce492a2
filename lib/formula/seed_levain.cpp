#include "formula/seed_levain.hpp"

#include "formula/overall.hpp"
#include "quantity/number.hpp"
#include "quantity/show.hpp"

#include <algorithm>

namespace leavenwright {
namespace {

void shrink(std::vector<Line>& lines, bool (Ingredient::*is_kind)() const, double factor) {
    for (Line& line : lines) {
        if ((line.ingredient->*is_kind)()) {
            line.mass = kilograms(without_dust(line.mass.value() * factor));
        }
    }
}

// 0 where there is nothing to keep.
double kept(Mass whole, Mass part) {
    return whole.value() > 0.0 ? std::max(0.0, ((whole - part) / whole).value()) : 0.0;
}

bool seed_levain(Stage& stage, const Seed& seed, Diagnostics& diagnostics) {
    const Overall contents = add_up(stage.lines, {});
    const Mass culture = kilograms(without_dust((seed.of_levain * stage.mass()).value()));
    const Mass flour = culture / (1.0 + seed.jar_hydration.value());
    const Mass water = culture - flour;
    constexpr double slack = 1.0 + 1e-9;
    if (flour > slack * contents.total_flour || water > slack * contents.added_water) {
        diagnostics.error(Code::seed_unfit, seed.place,
                          "a seed of " + show_percent(seed.of_levain.value()) + " of the levain, at " +
                              show_percent(seed.jar_hydration.value()) +
                              " hydration, brings more than the whole levain holds",
                          "take less with --seed, or say how wet the jar is with --jar-hydration; the levain "
                          "has " +
                              show_percent(contents.hydration_added().value()) + " hydration");
        return false;
    }
    shrink(stage.lines, &Ingredient::is_flour, kept(contents.total_flour, flour));
    shrink(stage.lines, &Ingredient::is_water, kept(contents.added_water, water));
    stage.culture_hydration = seed.jar_hydration;
    stage.lines.insert(
        stage.lines.begin(),
        Line{.name = "culture", .ingredient = &culture_ingredient(), .mass = culture, .uncertainty = {}});
    return true;
}

} // namespace

bool seed_levains(Formula& formula, const Seed& seed, Diagnostics& diagnostics) {
    bool fits = true;
    for (Stage& stage : formula.stages) {
        if (stage.kind != StageKind::levain || holds(stage.lines, IngredientClass::culture)) {
            continue;
        }
        const bool is_whole = stage.used == stage.mass(); // which rounding must not undo
        fits = seed_levain(stage, seed, diagnostics) && fits;
        stage.used = is_whole ? stage.mass() : stage.used;
    }
    return fits;
}

} // namespace leavenwright
