// The options of `water` as a request: temperatures that are given, and weights of a formula or of
// options.
#pragma once

#include "ferment/water_temperature.hpp"
#include "session.hpp"

#include <optional>
#include <string>
#include <vector>

namespace leavenwright {

struct ReadWaterRequest {
    WaterRequest request;
    std::vector<std::string> notes; // of what was taken for granted
};

/// What holds where no option says it.
struct MixDefaults {
    Temperature dough;
    Temperature room;
};

/// With `defaults` the formula gives the weights and no temperature is missing; without, the options
/// have to say what the formula does not. `formula` may be null; the scale is what notes are written for.
/// Records every fault; nothing where there is one.
std::optional<ReadWaterRequest> read_water_request(const Options& options, const Formula* formula,
                                                   const WeighingScale& scale, Session& session,
                                                   const std::optional<MixDefaults>& defaults = {});

} // namespace leavenwright
