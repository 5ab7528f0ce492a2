#include "formula/formula.hpp"

#include "quantity/number.hpp"
#include "source/unicode.hpp"

#include <algorithm>
#include <array>
#include <numeric>

namespace leavenwright {

std::string_view name_of(StageKind kind) {
    switch (kind) {
    case StageKind::dough:
        return "dough";
    case StageKind::poolish:
        return "poolish";
    case StageKind::biga:
        return "biga";
    case StageKind::sponge:
        return "sponge";
    case StageKind::old_dough:
        return "old dough";
    case StageKind::preferment:
        return "preferment";
    case StageKind::levain:
        return "levain";
    case StageKind::soaker:
        return "soaker";
    case StageKind::scald:
        return "scald";
    }
    return "";
}

bool is_preferment(StageKind kind) {
    return kind != StageKind::dough && kind != StageKind::soaker && kind != StageKind::scald;
}

namespace {

Mass sum_of(const std::vector<Line>& lines) {
    return std::accumulate(lines.begin(), lines.end(), kilograms(0.0),
                           [](Mass sum, const Line& line) { return sum + line.mass; });
}

} // namespace

Mass Stage::mass() const {
    return sum_of(lines);
}

bool holds(const std::vector<Line>& lines, IngredientClass ingredient_class) {
    return std::any_of(lines.begin(), lines.end(), [ingredient_class](const Line& line) {
        return line.ingredient->ingredient_class == ingredient_class;
    });
}

bool Formula::has_packaged_yeast() const {
    return holds(dough, IngredientClass::yeast) ||
           std::any_of(stages.begin(), stages.end(),
                       [](const Stage& stage) { return holds(stage.lines, IngredientClass::yeast); });
}

bool Formula::has_levain() const {
    return std::any_of(stages.begin(), stages.end(),
                       [](const Stage& stage) { return stage.kind == StageKind::levain; });
}

const Stage* Formula::find_stage(std::string_view stage_name) const {
    const std::string folded = fold_name(stage_name);
    for (const Stage& stage : stages) {
        if (fold_name(stage.name) == folded) {
            return &stage;
        }
    }
    return nullptr;
}

Mass Formula::dough_mass() const {
    Mass mass = sum_of(dough);
    for (const Stage& stage : stages) {
        mass += stage.used;
    }
    return mass;
}

void Formula::scale(double factor) {
    for (Line& line : dough) {
        line.mass = kilograms(without_dust(line.mass.value() * factor));
    }
    for (Stage& stage : stages) {
        const bool is_whole = stage.used == stage.mass(); // which rounding must not undo
        for (Line& line : stage.lines) {
            line.mass = kilograms(without_dust(line.mass.value() * factor));
        }
        stage.used = is_whole ? stage.mass() : stage.used * factor;
    }
}

const Ingredient& culture_ingredient() {
    static constexpr Ingredient culture{.name = "culture",
                                        .ingredient_class = IngredientClass::culture,
                                        .also = {},
                                        .nearest_for = {},
                                        .stand_in = {},
                                        .composition = {},
                                        .has_composition = false,
                                        .source = {},
                                        .volumes = {},
                                        .volume_uncertainty = {},
                                        .pieces = {},
                                        .eu_allergens = {},
                                        .us_allergens = {},
                                        .dries_to = {}};
    return culture;
}

bool is_culture_name(std::string_view name) {
    constexpr auto names = std::to_array<std::string_view>({"culture",
                                                            "ripe culture",
                                                            "levain culture",
                                                            "sourdough culture",
                                                            "seed",
                                                            "seed culture",
                                                            "starter",
                                                            "ripe starter",
                                                            "sourdough starter",
                                                            "active sourdough starter",
                                                            "active starter",
                                                            "mother",
                                                            "mother culture",
                                                            "levain",
                                                            "ripe levain",
                                                            "sourdough",
                                                            "sour",
                                                            "sauerteig",
                                                            "anstellgut",
                                                            "lievito madre",
                                                            "pasta madre",
                                                            "masa madre"});
    return std::find(names.begin(), names.end(), fold_name(name)) != names.end();
}

} // namespace leavenwright
