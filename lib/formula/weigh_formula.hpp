// A formula as a scale shows it: columns of rounded weights that add up to their totals, with
// percentages of the exact weights beside them. Renderers and the card print these texts.
#pragma once

#include "formula/overall.hpp"
#include "quantity/weigh.hpp"

#include <string>
#include <vector>

namespace leavenwright {

struct WeighedRow {
    std::string name;
    const Ingredient* ingredient = nullptr; // null for a stage that goes into the dough
    Mass mass;                              // rounded
    std::string shown;
    /// Of the total flour; in a preferment of its own flour.
    WrittenPercentage share;
};

/// A stage, or the dough.
struct WeighedColumn {
    std::string name;
    StageKind kind = StageKind::dough;
    std::vector<WeighedRow> rows;
    Mass total;
    std::string shown_total;
    WrittenPercentage share;   // of all rows
    std::optional<Mass> used;  // of a stage that is in part kept back
    std::string shown_used;    // empty where all of it is used
    std::string pieces;        // of the dough: "2"; empty where it is not divided
    std::optional<Mass> piece; // of each
    std::string shown_piece;
};

struct WeighedFormula {
    std::vector<WeighedColumn> stages;
    WeighedColumn dough;
    std::string as_weighed; // the hydration of the rounded weights, and what rounding did
};

WeighedFormula weigh_formula(const Formula& formula, const WeighingScale& scale);

} // namespace leavenwright
