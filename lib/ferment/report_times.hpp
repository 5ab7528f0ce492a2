// What is said where a place does not suit what ferments in it; of doughs and levains alike.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "ferment/dough_properties.hpp"
#include "ferment/temperature_profile.hpp"
#include "quantity/quantity.hpp"

#include <string>

namespace leavenwright {

/// `what_suits` is the hint: the temperatures of a dough or of a levain.
void warn_too_warm(const SourcedText& place, const std::string& what_suits, Diagnostics& diagnostics);

/// Reports a place in which dough freezes: the equations end there.
void check_not_frozen(Temperature coldest, const SourcedText& place, Diagnostics& diagnostics);

/// Reports a profile that ends before `likely`, if it does. `what` is "the proof is likely ready".
void check_profile_end(const TemperatureProfile& profile, const std::string& what, Duration likely,
                       const SourcedText& place, Diagnostics& diagnostics);

} // namespace leavenwright
