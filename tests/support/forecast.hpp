// What an engine may say of a dough, made up for tests of the card.
#pragma once

#include "card/timeline.hpp"

namespace leavenwright::testing {

/// Windows for a bulk of 4 h 30 min and a proof of 1 h 50 min, a curve over 8 h, and a levain of
/// 6 h.
DoughForecast made_up_forecast();

} // namespace leavenwright::testing
