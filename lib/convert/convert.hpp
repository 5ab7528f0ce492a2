// The conversion: packaged yeast out, a levain in, flour, water and salt where they were.
//
// With total flour F, prefermented share p and levain hydration h, the levain holds
// p F of flour and h p F of water; both come out of the dough. It fits if the dough has
// that much of either: h p <= W / F for the water W that can be given up.
#pragma once

#include "convert/request.hpp"
#include "formula/overall.hpp"

#include <string>
#include <vector>

namespace leavenwright {

struct Removed {
    std::string name;
    Mass mass;
    Mass water; // that it carries
};

struct Levain {
    std::vector<Line> lines;
    Mass flour;
    Mass water;
    Hydration hydration;
    PrefermentedFlour prefermented_flour;
    LevainOnTotalFlour on_total_flour;
    LevainOnDoughFlour on_dough_flour;

    Mass mass() const { return flour + water; }
};

/// The row behind those of the flours.
inline constexpr std::string_view total_flour_row = "total flour";

/// A quantity before and after; `meant` says why it moved where it was meant to.
struct BalanceRow {
    std::string name;
    Mass before;
    Mass after;
    std::string meant;

    Mass difference() const { return after - before; }
};

struct Conversion {
    Formula before; // at the size of the result
    Formula after;
    Overall overall_before;
    Overall overall_after;
    Levain levain;
    std::vector<Removed> removed;
    std::vector<BalanceRow> balance; // flours, total flour, both waters, salt, sugar, fat, dough
    std::vector<std::string> notes;
    double scaled_by = 1.0; // to meet the dough weight that the formula promises
};

/// What a request names that the formula has not, for one that cannot be carried out for other faults.
void check_names(const Formula& formula, const ConversionRequest& request, Diagnostics& diagnostics);

/// Converts. What does not fit is reported with the largest that does and a command that works;
/// then nothing is returned. The formula is not changed.
std::optional<Conversion> convert(const Formula& formula, const ConversionRequest& request,
                                  Diagnostics& diagnostics);

/// What a formula has room for, whatever the request's own inoculation.
struct LargestFit {
    PrefermentedFlour prefermented_flour; // at the request's levain hydration
    Hydration levain_hydration;           // at the request's inoculation; 0 where its flour does not
                                          // fit, infinite where water is no bound
    PrefermentedFlour asked;              // the request's own inoculation, on this basis

    /// The share rounded down to a tenth of a percent, as it is offered and typed.
    PrefermentedFlour offered_share() const;
};
LargestFit largest_fit(const Formula& formula, const ConversionRequest& request);

} // namespace leavenwright
