// A scaled formula as text for a terminal and as JSON for programs.
#pragma once

#include "formula/scale.hpp"
#include "render/weigh_out.hpp"

#include <string>

namespace leavenwright {

std::string render_scaled_text(const ScaledFormula& scaled, const TextStyle& style);

/// One JSON object, masses in grams, numbers unrounded; documented in cli/verbs/scale.md.
std::string render_scaled_json(const ScaledFormula& scaled);

} // namespace leavenwright
