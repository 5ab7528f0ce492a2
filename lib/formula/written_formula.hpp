// A formula as it was written, between reading and solving: names resolved, amounts still
// percentages or masses, sizes not yet known. Private to the formula folder.
#pragma once

#include "formula/formula.hpp"

namespace leavenwright {

struct WrittenLine {
    std::string name;
    const Ingredient* ingredient = nullptr;
    SourcedText place; // of the amount
    bool is_percentage = false;
    double ratio = 0.0; // of its basis, where it is a percentage
    Mass mass;          // where it is not
    Fraction uncertainty;
    Mass piece{}; // of one, where it was counted
};

/// "poolish: 335 g" in a dough.
struct WrittenUse {
    SourcedText place;
    bool is_all = false;
    WrittenLine amount;
};

struct WrittenStage {
    std::string name;
    SourcedText place;
    StageKind kind = StageKind::dough;
    std::vector<WrittenLine> lines;
    std::optional<Entered<double>> prefermented_flour; // ratio to the total flour
    std::optional<Entered<Mass>> weight;
    SourcedText size_place; // of whichever of the two
    std::optional<Hydration> culture_hydration;
    std::optional<WrittenUse> use;
    std::vector<Step> process;
    bool is_whole = true; // read without a fault
};

struct WrittenFormula {
    Formula formula; // name, note, makes, process, pantry; its dough and stages are filled by solving
    SourcedText place;
    std::vector<WrittenLine> lines; // of dough or overall
    SourcedText lines_place;
    bool are_lines_whole = true; // read without a fault
    std::vector<WrittenStage> stages;
    std::optional<Mass> flour_weight;
    SourcedText flour_weight_place;
    SourcedText makes_place;
};

/// Gives every line its mass and fills the formula. Records what does not add up.
std::optional<Formula> solve_amounts(WrittenFormula written, Diagnostics& diagnostics);

/// What does not add up in the parts that were read without a fault, where others were not.
void check_amounts(WrittenFormula written, Diagnostics& diagnostics);

} // namespace leavenwright
