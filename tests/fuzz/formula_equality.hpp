// Whether two formulas hold the same values, to the last bit. What a formula file does not keep is
// left out: the notation, the uncertainty of a measure, remarks of the reading.
#pragma once

#include "formula/formula.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace leavenwright::testing {

/// Names the first thing that differs; empty where nothing does.
inline std::string first_difference(const std::vector<Line>& left, const std::vector<Line>& right,
                                    const std::string& where) {
    if (left.size() != right.size()) {
        return where + ": number of lines";
    }
    for (std::size_t i = 0; i < left.size(); ++i) {
        if (left[i].name != right[i].name || left[i].ingredient->name != right[i].ingredient->name) {
            return where + ": ingredient " + left[i].name;
        }
        if (left[i].mass != right[i].mass) {
            return where + ": mass of " + left[i].name;
        }
    }
    return {};
}

inline bool same_point(const std::optional<Entered<Temperature>>& left,
                       const std::optional<Entered<Temperature>>& right) {
    return left.has_value() == right.has_value() && (!left || left->value == right->value);
}

inline std::string first_difference(const std::vector<Step>& left, const std::vector<Step>& right,
                                    const std::string& where) {
    if (left.size() != right.size()) {
        return where + ": number of steps";
    }
    for (std::size_t i = 0; i < left.size(); ++i) {
        const bool same_time = left[i].time.has_value() == right[i].time.has_value() &&
                               (!left[i].time || (left[i].time->value.least == right[i].time->value.least &&
                                                  left[i].time->value.most == right[i].time->value.most));
        if (left[i].verb != right[i].verb || left[i].note != right[i].note || !same_time ||
            !same_point(left[i].at, right[i].at) || !same_point(left[i].to, right[i].to)) {
            return where + ": step " + left[i].verb;
        }
    }
    return {};
}

inline std::string first_difference(const Ingredient& left, const Ingredient& right) {
    const auto parts_of = [](const Composition& c) {
        return std::vector<double>{c.water.value(),        c.protein.value(), c.fat.value(),
                                   c.carbohydrate.value(), c.fibre.value(),   c.ash.value(),
                                   c.sugars.value(),       c.sodium.value()};
    };
    const std::string name(left.name);
    if (left.name != right.name || left.ingredient_class != right.ingredient_class ||
        left.stand_in != right.stand_in || left.source != right.source || left.dries_to != right.dries_to) {
        return "own ingredient " + name;
    }
    if (left.has_composition != right.has_composition ||
        parts_of(left.composition) != parts_of(right.composition)) {
        return "composition of own ingredient " + name;
    }
    if (left.volume_uncertainty != right.volume_uncertainty || left.volumes.size() != right.volumes.size() ||
        left.pieces.size() != right.pieces.size() || left.also.size() != right.also.size() ||
        left.nearest_for.size() != right.nearest_for.size() ||
        left.eu_allergens.size() != right.eu_allergens.size() ||
        left.us_allergens.size() != right.us_allergens.size()) {
        return "measures or names of own ingredient " + name;
    }
    for (std::size_t i = 0; i < left.volumes.size(); ++i) {
        if (left.volumes[i].volume != right.volumes[i].volume ||
            left.volumes[i].mass != right.volumes[i].mass) {
            return "volume of own ingredient " + name;
        }
    }
    for (std::size_t i = 0; i < left.pieces.size(); ++i) {
        if (left.pieces[i].word != right.pieces[i].word || left.pieces[i].mass != right.pieces[i].mass) {
            return "piece of own ingredient " + name;
        }
    }
    return {};
}

inline bool has_culture(const Stage& stage) {
    for (const Line& line : stage.lines) {
        if (line.ingredient->is_culture()) {
            return true;
        }
    }
    return false;
}

inline std::string first_difference(const Stage& left, const Stage& right) {
    const std::string where = "stage " + left.name;
    if (left.name != right.name || left.kind != right.kind) {
        return where + ": name or kind";
    }
    if (left.used != right.used) {
        return where + ": mass used";
    }
    if (has_culture(left) && left.culture_hydration != right.culture_hydration) {
        return where + ": hydration of the culture";
    }
    std::string difference = first_difference(left.lines, right.lines, where);
    return difference.empty() ? first_difference(left.process, right.process, where) : difference;
}

inline std::string first_difference(const Formula& left, const Formula& right) {
    if (left.name != right.name || left.note != right.note) {
        return "name or note";
    }
    if (left.makes.has_value() != right.makes.has_value()) {
        return "makes";
    }
    if (left.makes && (left.makes->text != right.makes->text || left.makes->pieces != right.makes->pieces ||
                       left.makes->noun != right.makes->noun || left.makes->dough != right.makes->dough)) {
        return "makes";
    }
    std::string difference = first_difference(left.dough, right.dough, "dough");
    if (!difference.empty()) {
        return difference;
    }
    if (left.stages.size() != right.stages.size()) {
        return "number of stages";
    }
    for (std::size_t i = 0; i < left.stages.size(); ++i) {
        difference = first_difference(left.stages[i], right.stages[i]);
        if (!difference.empty()) {
            return difference;
        }
    }
    difference = first_difference(left.process, right.process, "process");
    if (!difference.empty()) {
        return difference;
    }
    if (left.count_as_water.size() != right.count_as_water.size()) {
        return "count as water";
    }
    for (std::size_t i = 0; i < left.count_as_water.size(); ++i) {
        if (left.count_as_water[i]->name != right.count_as_water[i]->name) {
            return "count as water";
        }
    }
    static const PantryShelf nothing;
    const auto& own_left = (left.own_ingredients ? *left.own_ingredients : nothing).ingredients();
    const auto& own_right = (right.own_ingredients ? *right.own_ingredients : nothing).ingredients();
    if (own_left.size() != own_right.size()) {
        return "number of own ingredients";
    }
    for (std::size_t i = 0; i < own_left.size(); ++i) {
        difference = first_difference(own_left[i], own_right[i]);
        if (!difference.empty()) {
            return difference;
        }
    }
    return {};
}

} // namespace leavenwright::testing
