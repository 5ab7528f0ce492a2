#pragma once

#include "options.hpp"

namespace leavenwright {

/// leavenwright pantry; returns the exit status.
int run_pantry(const PantryOptions& options);

} // namespace leavenwright
