// Times as a baker reads them: hours of the clock without a time zone, and lengths of time
// to five minutes.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "quantity/quantity.hpp"

#include <chrono>
#include <optional>
#include <string>

namespace leavenwright {

/// What the clock on the wall shows.
using ClockTime = std::chrono::local_time<std::chrono::minutes>;

/// "2031-03-07 18:00"; a T may stand between day and hour.
std::optional<ClockTime> read_clock_time(const SourcedText& place, Diagnostics& diagnostics);

/// `time` later by `length`, to five minutes.
ClockTime later(ClockTime time, Duration length);

/// "Friday 7 March 2031"
std::string show_day(ClockTime time);
/// "Fri 18:00"
std::string show_clock(ClockTime time);
/// "3 h 40 min", to five minutes; "15 min"
std::string show_length(Duration length);

} // namespace leavenwright
