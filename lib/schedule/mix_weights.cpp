#include "schedule/mix_weights.hpp"

#include "formula/overall.hpp"
#include "schedule/dough_composition.hpp"

#include <utility>

namespace leavenwright {
namespace {

// Everyday temperature: specific heats of food change by 1 % from 5 to 25 C.
constexpr Temperature typical = Temperature::celsius(20.0);

} // namespace

MixPart mix_part(MixPart::Kind kind, std::string name, const std::vector<Line>& lines) {
    Mass mass{};
    for (const Line& line : lines) {
        mass += line.mass;
    }
    return {.kind = kind,
            .name = std::move(name),
            .mass = mass,
            .specific_heat = thermal_properties(dough_composition(lines), typical).specific_heat};
}

BowlMix bowl_mix(const Formula& formula) {
    BowlMix bowl;
    std::vector<Line> flours;
    std::vector<Line> others;
    for (const Line& line : formula.dough) {
        if (line.ingredient->is_water()) {
            bowl.weights.water += line.mass;
        } else {
            (line.ingredient->is_flour() ? flours : others).push_back(line);
        }
    }
    const auto add = [&](MixPart::Kind kind, const std::string& name, const std::vector<Line>& lines) {
        if (!lines.empty()) {
            bowl.weights.parts.push_back(mix_part(kind, name, lines));
        }
    };
    add(MixPart::Kind::flour, "flour", flours);
    for (const Stage& stage : formula.stages) {
        const std::vector<Line> contents = contents_of(stage, *formula.pantry);
        const bool ferments = is_preferment(stage.kind);
        add(ferments ? MixPart::Kind::preferment : MixPart::Kind::other, stage.name, contents);
        if (ferments && stage.mass() > bowl.largest_preferment) {
            bowl.largest_preferment = stage.mass();
            bowl.of_preferment = dough_composition(contents);
        }
        bowl.has_preferment = bowl.has_preferment || ferments;
    }
    add(MixPart::Kind::other, "other ingredients", others);
    return bowl;
}

} // namespace leavenwright
