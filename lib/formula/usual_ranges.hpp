// What is usual in a dough. Outside of it there is a warning, never a refusal: the baker
// may mean it, and may set the ranges.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "formula/formula.hpp"

#include <optional>

namespace leavenwright {

/// Ratios, ends included.
struct UsualRange {
    double least = 0.0;
    double most = 0.0;
};

/// The defaults: common practice and textbooks (Hamelman, Bread; Suas, Advanced Bread and
/// Pastry), from memory. Salt 1.8 to 2.2 % of the flour is usual in lean bread, below 1 or
/// above 3 % unusual in any; doughs run from bagels (about 50 %) to rustic loaves (about
/// 80 %) in water; liquid levains have 100 to 125 %, stiff ones 45 to 65 %.
struct UsualRanges {
    UsualRange salt{0.01, 0.03};               // of the total flour
    UsualRange hydration{0.50, 0.90};          // true water on total flour
    UsualRange prefermented_flour{0.10, 0.50}; // where anything is prefermented
    UsualRange levain_hydration{0.45, 1.25};
};

/// "1% to 3%"; records what is wrong with it.
std::optional<UsualRange> read_usual_range(const SourcedText& text, Diagnostics& diagnostics);

/// Warns at `place` of what is unusual.
void warn_of_unusual(const Formula& formula, const UsualRanges& ranges, const SourcedText& place,
                     Diagnostics& diagnostics);

} // namespace leavenwright
