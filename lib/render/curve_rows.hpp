// The rise curve as a table: what a chart says, in figures. Private to the render folder.
#pragma once

#include "card/card.hpp"

#include <string>
#include <vector>

namespace leavenwright {

struct CurveRow {
    std::string time; // after mixing: "2 h"
    std::string rise; // likely
    std::string low;
    std::string high;
    std::string dough; // its temperature
    std::string surroundings;
};

/// About ten of the curve's points, the first and the last among them.
std::vector<CurveRow> curve_rows(const Card& card);

} // namespace leavenwright
