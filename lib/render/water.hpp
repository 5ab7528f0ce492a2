// Water temperatures as text for a terminal and as JSON for programs.
#pragma once

#include "ferment/water_temperature.hpp"
#include "render/weigh_out.hpp"

#include <string>
#include <vector>

namespace leavenwright {

struct WaterSheet {
    std::string name; // of the formula; may be empty
    WaterPlan plan;
    std::vector<std::string> notes;
};

std::string render_water_text(const WaterSheet& sheet, const TextStyle& style);

/// One JSON object; documented in cli/verbs/water.md.
std::string render_water_json(const WaterSheet& sheet);

} // namespace leavenwright
