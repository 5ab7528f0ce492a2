// What a command line says about how a dough stands and rises; `proof`, `convert` and `card` read it
// alike.
#pragma once

#include "schedule/dough_plan.hpp"
#include "session.hpp"

#include <string>

namespace leavenwright {

/// Faults go to the session. `path` names the formula in what is reported about the whole.
PlanRequest read_plan_request(const Options& options, const std::string& path, Session& session);
/// --members, --draw and --vigour, on as many threads as are worth it.
Ensemble read_ensemble(Session& session);

} // namespace leavenwright
