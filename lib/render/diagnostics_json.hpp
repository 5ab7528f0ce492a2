// Diagnostics for editors and other programs.
#pragma once

#include "diagnostic/diagnostic.hpp"

#include <string>

namespace leavenwright {

/// One JSON object: `schema`, `errors`, `warnings`, and `diagnostics`, a list of `file`, `line`,
/// `column` (code points, from 1), `offset` and `length` (bytes), `severity`, `code`, `message`,
/// `hint` and `notes`, in the order of the text form.
std::string render_diagnostics_json(const Diagnostics& diagnostics);

} // namespace leavenwright
