// What a command line says about how a dough stands and rises; `proof`, `convert` and `card` read it
// alike.
#pragma once

#include "schedule/dough_plan.hpp"
#include "session.hpp"

namespace leavenwright {

/// Faults go to the session. `formula_place` is the place of what is reported about the whole.
PlanRequest read_plan_request(const Options& options, const SourcedText& formula_place, Session& session);
/// --members, --draw and --vigour, on as many threads as are worth it.
Ensemble read_ensemble(Session& session);

} // namespace leavenwright
