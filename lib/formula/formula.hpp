// A formula as values: stages of ingredients with masses, process steps, and what the
// dough is for. Everything in it is valid and has its size; text and places are left behind in
// the reader.
#pragma once

#include "pantry/pantry.hpp"
#include "quantity/quantity.hpp"
#include "quantity/read_quantity.hpp"

#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

enum class StageKind { dough, poolish, biga, sponge, old_dough, preferment, levain, soaker, scald };

std::string_view name_of(StageKind kind);
/// Whether the stage ferments; soakers, scalds and the dough's own list do not.
bool is_preferment(StageKind kind);

struct Line {
    std::string name; // as the writer calls it
    const Ingredient* ingredient = nullptr;
    Mass mass;
    Fraction uncertainty; // of a reading by volume or count; 0 for weights and percentages
    Mass piece{};         // of one, where it was counted
};

/// Whether any of the lines is of that class.
bool holds(const std::vector<Line>& lines, IngredientClass ingredient_class);

/// A value with the words that it was written in.
template <class Value>
struct Entered {
    Value value;
    std::string text;
};

struct Step {
    std::string verb;
    std::optional<Entered<DurationRange>> time;
    std::optional<Entered<Temperature>> at; // of the place
    std::optional<Entered<Temperature>> to; // of the dough
    std::string note;
};

struct Stage {
    std::string name;
    StageKind kind = StageKind::dough;
    std::vector<Line> lines;
    Hydration culture_hydration; // of the culture in it, if any
    Mass used;                   // what goes into the dough; the rest is kept back
    std::vector<Step> process;

    Mass mass() const;
    /// used / mass
    /// None of it where a scale shows nothing of it.
    Fraction fraction_used() const {
        return mass().value() > 0.0 ? Fraction::of(used, mass()) : Fraction(0.0);
    }
};

/// What the formula says it makes.
struct Yield {
    std::string text;             // as written
    std::optional<double> pieces; // number
    std::string noun;             // "loaves"; may be empty
    std::optional<Mass> dough;    // promised dough weight of all pieces
    std::optional<Mass> piece;    // of each, where it was given
};

/// A formula may make this much less dough than it promises, relative, without a warning.
inline constexpr double makes_short_slack = 0.005;

enum class Notation { dough, overall };

struct Formula {
    std::string name;
    std::string note;
    Notation notation = Notation::dough;
    std::optional<Yield> makes;
    std::vector<Line> dough;   // added at mixing, beside the stages
    std::vector<Stage> stages; // preferments, then soakers
    std::vector<Step> process;
    std::vector<const Ingredient*> count_as_water;
    std::vector<std::string> remarks; // of the reading: stand-ins that were used

    std::shared_ptr<const Pantry> pantry;
    std::shared_ptr<const PantryShelf> own_ingredients; // null without a pantry of its own

    const Stage* find_stage(std::string_view stage_name) const;
    /// Whether the dough or a stage has packaged yeast in it.
    bool has_packaged_yeast() const;
    /// Whether a stage is a levain.
    bool has_levain() const;
    /// What the whole dough weighs: the lines and the used part of each stage.
    Mass dough_mass() const;
    /// Every mass times `factor`, the promise of `makes` left as it is.
    void scale(double factor);
};

/// The ingredient that stands for the seed of a levain.
const Ingredient& culture_ingredient();
/// Whether a name means the culture: culture, starter, seed, mother.
bool is_culture_name(std::string_view name);

} // namespace leavenwright
