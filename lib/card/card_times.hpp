// The part of the card that has to do with time: steps, windows, curve. Private to the card folder.
#pragma once

#include "card/card.hpp"

namespace leavenwright {

/// The mixing by the clock; nothing where no hour was asked for, or where no time leads to it,
/// which is then a diagnostic.
std::optional<ClockTime> mixing_time(const Timeline& timeline, const CardRequest& request,
                                     Diagnostics& diagnostics);

/// Fills the columns' hours, steps, windows and curve.
void write_times(Card& card, const Formula& formula, const Timeline& timeline, const CardRequest& request,
                 std::optional<ClockTime> mixing);

} // namespace leavenwright
