#include "convert/compare.hpp"

#include "source/unicode.hpp"

#include <algorithm>
#include <cmath>

namespace leavenwright {
namespace {

// Sums of doubles differ in their last digits; a tolerance of 0 means exact to that.
constexpr double dust = 1e-12;

struct Sides {
    Overall whole;
    std::vector<Line> yeast;
};

// The overall formula without packaged yeast; the first formula says what counts as water.
Sides sides_of(const Formula& formula, const std::vector<const Ingredient*>& count_as_water) {
    Sides sides{.whole = compute_overall(formula), .yeast = {}};
    std::vector<Line> rest;
    for (const Line& line : sides.whole.lines) {
        (line.ingredient->is_yeast() ? sides.yeast : rest).push_back(line);
    }
    sides.whole = add_up(rest, count_as_water);
    return sides;
}

// Formulas with ingredients of their own have each their own pantry, and each its spelling of a national
// flour.
bool is_same(const Ingredient& left, const Ingredient& right) {
    const std::string name = fold_name(left.name);
    return name == fold_name(right.name) ||
           (left.is_flour() && !left.stand_in.empty() && left.stand_in == right.stand_in &&
            std::any_of(right.also.begin(), right.also.end(),
                        [&](std::string_view spelling) { return fold_name(spelling) == name; }));
}

// The mass of `wanted`, a line of `own`, among the lines of another formula: of the very ingredient, or of
// one of its name that `own` does not have itself.
Mass mass_like(const std::vector<Line>& lines, const Line& wanted, const std::vector<Line>& own) {
    const auto has = [](const std::vector<Line>& list, const Ingredient* ingredient) {
        return std::find_if(list.begin(), list.end(),
                            [&](const Line& line) { return line.ingredient == ingredient; });
    };
    auto found = has(lines, wanted.ingredient);
    if (found == lines.end()) {
        found = std::find_if(lines.begin(), lines.end(), [&](const Line& line) {
            return is_same(*line.ingredient, *wanted.ingredient) && has(own, line.ingredient) == own.end();
        });
    }
    return found == lines.end() ? kilograms(0.0) : found->mass;
}

// The ingredients of these names in another formula's pantry.
std::vector<const Ingredient*> same_ingredients(const std::vector<const Ingredient*>& wanted,
                                                const Formula& other) {
    std::vector<const Ingredient*> found;
    for (const Ingredient* ingredient : wanted) {
        found.push_back(other.pantry->find(ingredient->name).ingredient);
    }
    return found;
}

class Comparer {
public:
    Comparer(const Formula& before, const Formula& after, Mass tolerance)
        : before_(sides_of(before, before.count_as_water)),
          after_(sides_of(after, same_ingredients(before.count_as_water, after))), tolerance_(tolerance) {}

    Comparison run() {
        const Overall& before = before_.whole;
        const Overall& after = after_.whole;
        const bool flour = add("total flour", before.total_flour, after.total_flour);
        for_each_line([](const Line& line) { return line.ingredient->is_flour(); });
        const bool added = add("added water", before.added_water, after.added_water);
        const bool water = add("true water", before.true_water, after.true_water);
        add("salt", before.salt, after.salt);
        add("sugar", before.sugar, after.sugar);
        add("fat", before.fat, after.fat);
        for_each_line([](const Line& line) {
            return !line.ingredient->is_flour() && !line.ingredient->is_water() &&
                   line.ingredient->ingredient_class != IngredientClass::salt;
        });
        add("dough", before.total, after.total);
        result_.hydrations = {
            {"hydration, added water", before.hydration_added().value(), after.hydration_added().value(),
             flour || added},
            {"hydration, true water", before.hydration_true().value(), after.hydration_true().value(),
             flour || water},
        };
        compare_yeast();
        return std::move(result_);
    }

private:
    bool add(const std::string& name, Mass before, Mass after) {
        const double difference = std::abs((after - before).value());
        const bool moved = difference > tolerance_.value() + dust * std::max(before, after).value();
        result_.masses.push_back({name, before, after, moved});
        return moved;
    }

    template <class Condition>
    void for_each_line(Condition condition) {
        for (const Line& line : before_.whole.lines) {
            if (condition(line)) {
                add(line.name, line.mass, mass_like(after_.whole.lines, line, before_.whole.lines));
            }
        }
        for (const Line& line : after_.whole.lines) {
            if (condition(line) && mass_like(before_.whole.lines, line, after_.whole.lines).value() == 0.0) {
                add(line.name, kilograms(0.0), line.mass);
            }
        }
    }

    void compare_yeast() {
        for (const Line& line : before_.yeast) {
            result_.yeast.push_back(
                {line.name, line.mass, mass_like(after_.yeast, line, before_.yeast), false});
        }
        for (const Line& line : after_.yeast) {
            if (mass_like(before_.yeast, line, after_.yeast).value() == 0.0) {
                result_.yeast.push_back({line.name, kilograms(0.0), line.mass, false});
            }
        }
    }

    Sides before_;
    Sides after_;
    Mass tolerance_;
    Comparison result_;
};

} // namespace

bool Comparison::unchanged() const {
    return std::none_of(masses.begin(), masses.end(), [](const ComparedMass& mass) { return mass.moved; });
}

Comparison compare_formulas(const Formula& before, const Formula& after, Mass tolerance, bool any_size) {
    Formula other = after;
    double factor = 1.0;
    if (any_size) {
        factor = compute_overall(before).total_flour.value() / compute_overall(after).total_flour.value();
        other.scale(factor);
    }
    Comparison comparison = Comparer(before, other, tolerance).run();
    comparison.scaled_by = factor;
    return comparison;
}

} // namespace leavenwright
