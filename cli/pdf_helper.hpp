// The PDF of cards, by way of the program leavenwright-pdf, which is only started when one is asked
// for.
#pragma once

#include "diagnostic/diagnostic.hpp"

#include <optional>
#include <string>

namespace leavenwright {

/// The PDF of the cards' JSON. The program is looked for beside the command and in
/// ../libexec/leavenwright; LEAVENWRIGHT_PDF in the environment names another.
std::optional<std::string> pdf_of_cards(const std::string& json, Diagnostics& diagnostics);

} // namespace leavenwright
