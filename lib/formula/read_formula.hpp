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

} // namespace leavenwright
