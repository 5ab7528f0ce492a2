// Diagnostics as a person reads them: place, excerpt with a mark under it, advice.
#pragma once

#include "diagnostic/diagnostic.hpp"

#include <string>

namespace leavenwright {

struct DiagnosticStyle {
    bool color = false;
    std::size_t columns = 80;
    std::size_t most = 50; // findings shown; the rest are counted
};

/// All findings in order, then a line that counts them; empty if there are none.
///
///     tin-loaf.yaml:6:16: error: unknown unit 'gg' [unit-unknown]
///     6 |   bread flour: 900 gg
///       |                    ^^
///       = did you mean 'g'?
std::string render_diagnostics(const Diagnostics& diagnostics, const DiagnosticStyle& style);

} // namespace leavenwright
