// What to weigh: the stages and the dough of a formula as columns that add up.
#pragma once

#include "formula/overall.hpp"
#include "quantity/weigh.hpp"

#include <string>

namespace leavenwright {

struct TextStyle {
    std::size_t columns = 80;
    WeighingScale scale;
};

/// Half a point of hydration: less than anybody can feel, so no range is shown for it.
inline constexpr double noticeable_spread = 5e-3;

struct WeighOut {
    std::string tables;     // stages made ahead, then what goes into the bowl
    std::string as_weighed; // the hydration of the printed weights, and what rounding did
};

WeighOut render_weigh_out(const Formula& formula, const TextStyle& style);

} // namespace leavenwright
