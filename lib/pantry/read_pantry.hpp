// Ingredients from a document: the `ingredients` of a pantry file, or the `pantry` of a
// formula. The form is described in formulas/README.md.
#pragma once

#include "document/document.hpp"
#include "pantry/pantry.hpp"

#include <memory>

namespace leavenwright {

/// The map of ingredients at `node`; faults are recorded, and an ingredient with a fault is left out.
std::shared_ptr<const PantryShelf> read_ingredients(const Document& document, const Node& node,
                                                    Diagnostics& diagnostics);

/// `sources` and `ambiguous` are keys of the built-in file alone.
enum class PantryOrigin { built_in, user };

/// A whole pantry file: `pantry: 1`, `ingredients`, and what only the built-in one has.
struct PantryFile {
    std::shared_ptr<const PantryShelf> shelf;
    std::vector<std::pair<std::string, std::vector<std::string>>> ambiguous; // as written
    std::vector<std::pair<std::string, std::string>> sources;
};
PantryFile read_pantry_file(const Document& document, PantryOrigin origin, Diagnostics& diagnostics);

} // namespace leavenwright
