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
/// A whole number between bounds, from an option.
std::optional<int> read_count(const SourcedText& text, int least, int most, Diagnostics& diagnostics);
/// A percentage between bounds, from an option.
std::optional<double> read_share(const SourcedText& text, double least, double most,
                                 Diagnostics& diagnostics);

bool has_packaged_yeast(const Formula& formula);
bool has_levain(const Formula& formula);

} // namespace leavenwright
