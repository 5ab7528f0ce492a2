// Process steps and what a formula makes, from a document. Private to the formula folder.
#pragma once

#include "document/document.hpp"
#include "formula/formula.hpp"

namespace leavenwright {

/// The list of steps at `node`, the value of `key`.
std::vector<Step> read_process(const Document& document, const Node& key, const Node& node,
                               Diagnostics& diagnostics);

/// "2 x 850 g", "1700 g", "12 rolls".
std::optional<Yield> read_yield(const SourcedText& place, Diagnostics& diagnostics);

} // namespace leavenwright
