// The command line that was given, as text for a shell: what a diagnostic offers begins with it.
#pragma once

#include "option_table.hpp"
#include "options.hpp"

#include <string>

namespace leavenwright {

/// The verb, `path` as its formula, and the options that were given, less those that
/// `is_left_out` names: the diagnostic ends the line with its own.
std::string given_command(const Options& options, const std::string& path,
                          bool (*is_left_out)(const OptionRow& row));

} // namespace leavenwright
