// The verbs: each runs with the options it was given and returns the exit status.
#pragma once

#include "options.hpp"

namespace leavenwright {

int run_convert(const Options& options);
int run_scale(const Options& options);
int run_proof(const Options& options);
int run_ripen(const Options& options);
int run_card(const Options& options);
int run_check(const Options& options);
int run_water(const Options& options);
int run_transcribe(const Options& options);
int run_pantry(const Options& options);
int run_explain(const Options& options);

/// The verb of the options.
int run_verb(const Options& options);

} // namespace leavenwright
