// One line of a recipe's list of ingredients.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "pantry/pantry.hpp"
#include "source/source_text.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

/// What a line weighs, with the range that its measure leaves.
struct WeightRange {
    Mass likely;
    Mass least;
    Mass most;
};

/// What was understood of a line.
struct IngredientLine {
    std::string text; // the original words
    SourcedText place;
    std::string name;                       // as read
    std::string key;                        // the name in the formula; empty where nothing is known of it
    const Ingredient* ingredient = nullptr; // null where the pantry does not know it
    std::optional<double> number;
    std::string unit; // "cup", "g", "large", "packet", "%"; empty for a bare number
    std::optional<WeightRange> weight;
    std::string amount;         // as the formula file reads it; empty where none is known
    std::string role = "dough"; // or what it is for, or the stage that it belongs to
    bool is_sure = true;

    bool is_known() const { return ingredient != nullptr && !amount.empty(); }
    bool is_of(IngredientClass one) const {
        return ingredient != nullptr && ingredient->ingredient_class == one;
    }
};

/// Whether a role is part of the dough: its own list, or a stage.
bool is_in_dough(std::string_view role);

/// The flours of the dough and its stages that have a weight.
Mass flour_in_dough(std::span<const IngredientLine> lines);

/// What the measures of a recipe mean, as far as its own words show.
struct MeasureHabit {
    /// The US pint holds 473 ml, the imperial one 568 ml.
    enum class Pints { unknown, us, imperial };
    /// "500 strong white" beside "10 salt" is in grams, whether the recipe says so or not.
    enum class BareNumbers { pieces, likely_grams, grams };

    Pints pints = Pints::unknown;
    BareNumbers bare_numbers = BareNumbers::pieces;
    bool has_hyphen_fractions = false; // "1 1-2 cups": of a printer who had no others
    bool may_have_metric_cups = false; // 250 ml: British words, and cups
};

/// Reads a line, which may hold two amounts for two roles ("2 eggs plus one for brushing"). What is doubtful
/// is recorded as warnings. `words` says the same with the amount first, where it does not stand so at
/// `place`. Linear in the line.
std::vector<IngredientLine> read_ingredient_line(const SourcedText& place, const Pantry& pantry,
                                                 std::string_view role, Diagnostics& diagnostics,
                                                 MeasureHabit habit = {}, std::string_view words = {});

/// Whether what a line names is a flour. Linear in the line.
bool names_flour(std::string_view line, const Pantry& pantry);

/// Whether a line looks like an ingredient: an amount and a name that the pantry knows.
bool is_ingredient_line(std::string_view line, const Pantry& pantry);

} // namespace leavenwright
