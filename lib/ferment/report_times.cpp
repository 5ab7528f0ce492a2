#include "ferment/report_times.hpp"

#include <fmt/core.h>

namespace leavenwright {

void warn_too_warm(const SourcedText& place, const std::string& what_suits, Diagnostics& diagnostics) {
    diagnostics.warning(
        Code::too_warm, place,
        "at 35.5 C (96 F) the yeast of many cultures stops (Gänzle et al. 1998; Brandt et al. 2004)",
        what_suits);
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
