// Two formulas side by side: what is unchanged and what moved. Packaged yeast is set
// apart: taking it out, with the water it carries, is what a conversion is for.
#pragma once

#include "formula/overall.hpp"

#include <string>
#include <vector>

namespace leavenwright {

struct ComparedMass {
    std::string name;
    Mass before;
    Mass after;
    bool moved = false;
};

struct ComparedRatio {
    std::string name;
    double before = 0.0;
    double after = 0.0;
    bool moved = false;
};

struct Comparison {
    std::vector<ComparedRatio> hydrations; // in added water, in true water
    std::vector<ComparedMass>
        masses; // total flour, each flour, waters, salt, sugar, fat, then every other ingredient
    std::vector<ComparedMass> yeast; // packaged yeast on either side; never counts as moved
    double scaled_by = 1.0;          // what the second was brought to the first's size by

    bool unchanged() const;
};

/// Compares the overall formulas. A mass has moved if it differs by more than `tolerance`, a
/// hydration if water or flour beneath it has. With `any_size` the second is first
/// brought to the first's total flour.
Comparison compare_formulas(const Formula& before, const Formula& after, Mass tolerance, bool any_size);

} // namespace leavenwright
