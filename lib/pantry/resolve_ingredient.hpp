// A name to its ingredient, with what to say where there is none.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "pantry/pantry.hpp"

#include <string>
#include <vector>

namespace leavenwright {

/// An ingredient by its name; records what is unknown or ambiguous. `remarks` takes a line
/// where the entry only stands in for the name.
const Ingredient* resolve_ingredient(const SourcedText& name, const Pantry& pantry, Diagnostics& diagnostics,
                                     std::vector<std::string>& remarks);

} // namespace leavenwright
