// A document into a formula. The format is described in formulas/README.md.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "document/document.hpp"
#include "formula/formula.hpp"

#include <memory>
#include <optional>

namespace leavenwright {

/// Reads a formula whose ingredients are in `pantry` or in its own. Records every fault it
/// can see, with its place; returns nothing if there was an error. Linear in the document,
/// times the size of the pantry for each unknown name.
std::optional<Formula> read_formula(const Document& document, const Pantry& pantry, Diagnostics& diagnostics);

/// The same from text.
std::optional<Formula> read_formula(const SourceHandle& source, const Pantry& pantry,
                                    Diagnostics& diagnostics);

/// An ingredient by its name; records what is unknown or ambiguous. `remarks` takes a line
/// where the entry only stands in for the name.
const Ingredient* resolve_ingredient(const SourcedText& name, const Pantry& pantry, Diagnostics& diagnostics,
                                     std::vector<std::string>& remarks);

} // namespace leavenwright
