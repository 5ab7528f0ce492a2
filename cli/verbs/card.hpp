// The text card that other verbs may end in.
#pragma once

#include "convert/convert.hpp"
#include "session.hpp"

#include <string>

namespace leavenwright {

/// The card of a formula, with the seed that is usual; `conversion` is where it comes from, or null.
/// Empty where the session's diagnostics say why.
std::string text_card(const Formula& formula, const Conversion* conversion, const Options& options,
                      Session& session);

} // namespace leavenwright
