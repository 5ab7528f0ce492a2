// The conversion that a command line asks for; `convert` and `card` read it alike.
#pragma once

#include "convert/request.hpp"
#include "session.hpp"

#include <string>

namespace leavenwright {

/// Reads the options against the formula's own pantry; faults go to the session. `path` is the
/// formula's, for the command line that a diagnostic offers.
ConversionRequest read_conversion_request(const Options& options, const std::string& path,
                                          const Pantry& pantry, Session& session);

} // namespace leavenwright
