// A conversion as text for a terminal and as JSON for programs.
#pragma once

#include "convert/convert.hpp"
#include "render/weigh_out.hpp"

#include <string>

namespace leavenwright {

/// The sheet to work from: what to weigh for the levain, the soakers and the dough, what was
/// taken out, and the balance.
std::string render_conversion_text(const Conversion& conversion, const TextStyle& style);

/// One JSON object, numbers unrounded, masses in grams; documented in cli/verbs/convert.md.
std::string render_conversion_json(const Conversion& conversion);

} // namespace leavenwright
