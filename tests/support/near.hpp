// Comparison of numbers with both tolerances stated.
#pragma once

#include <algorithm>
#include <cmath>

namespace leavenwright::testing {

/// |actual - expected| <= max(absolute, relative * |expected|)
inline bool near(double actual, double expected, double relative, double absolute) {
    return std::abs(actual - expected) <= std::max(absolute, relative * std::abs(expected));
}

} // namespace leavenwright::testing
