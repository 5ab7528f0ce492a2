// The water for the mix in one line of a card. Private to the card folder.
#pragma once

#include "ferment/water_temperature.hpp"
#include "quantity/weigh.hpp"

#include <string>

namespace leavenwright {

/// "by factors 28.6 C; by heat 28 C; for a dough of 25 C (flour 20 C, room 22 C, no friction
/// counted)"; with the ice where the tap is too warm.
std::string describe_mix_water(const WaterPlan& plan, const WeighingScale& scale);

} // namespace leavenwright
