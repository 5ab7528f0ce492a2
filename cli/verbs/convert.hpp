#pragma once

#include "options.hpp"

namespace leavenwright {

/// leavenwright convert; returns the exit status.
int run_convert(const ConvertOptions& options);

} // namespace leavenwright
