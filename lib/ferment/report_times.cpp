#include "ferment/report_times.hpp"

#include "quantity/show.hpp"

#include <fmt/core.h>

namespace leavenwright {

void warn_too_warm(const SourcedText& place, const std::string& what_suits, Diagnostics& diagnostics) {
    diagnostics.warning(
        Code::too_warm, place,
        "at 35.5 C (96 F) the yeast of many cultures stops (Gänzle et al. 1998; Brandt et al. 2004)",
        what_suits);
}

void check_not_frozen(Temperature coldest, const SourcedText& place, Diagnostics& diagnostics) {
    if (coldest >= dough_freezes_at()) {
        return;
    }
    diagnostics.error(Code::temperature_out_of_range, place,
                      fmt::format("at {} ({}) the dough freezes: the reckoning ends at {} ({}), where 2 % of "
                                  "salt begins to freeze (ideal solution)",
                                  show_temperature(coldest, UnitSystem::metric),
                                  show_temperature(coldest, UnitSystem::us),
                                  show_temperature(dough_freezes_at(), UnitSystem::metric),
                                  show_temperature(dough_freezes_at(), UnitSystem::us)),
                      "leave the frozen time out, or take a refrigerator of 2 to 8 C (36 to 46 F)");
}

void check_profile_end(const TemperatureProfile& profile, const std::string& what, Duration likely,
                       const SourcedText& place, Diagnostics& diagnostics) {
    if (profile.covers(likely)) {
        return;
    }
    diagnostics.error(Code::profile_short, place,
                      fmt::format("these temperatures end after {:.1f} h; {} after {:.1f} h",
                                  in_hours(profile.length()), what, in_hours(likely)),
                      "end with a temperature that has no time, and it is held: \"..., 24C\"");
}

} // namespace leavenwright
