// What `check` found, as text for a terminal and as JSON for programs.
#pragma once

#include "convert/compare.hpp"
#include "formula/overall.hpp"

#include <string>

namespace leavenwright {

/// Two formulas: hydration first, then what moved, then what did not.
std::string render_comparison_text(const Comparison& comparison, std::size_t columns);
/// `unchanged`, `differences` (list of `quantity`, `before`, `after`, `unit`) and more; documented in
/// cli/verbs/check.md.
std::string render_comparison_json(const Comparison& comparison);

/// One formula in figures.
std::string render_overall_text(const Formula& formula, const Overall& overall, std::size_t columns);
std::string render_overall_json(const Formula& formula, const Overall& overall, const Diagnostics& findings);

} // namespace leavenwright
