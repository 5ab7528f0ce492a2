// A formula as a formula file, in the `dough` notation and in grams. Reading it gives the
// same values, to the last bit.
#pragma once

#include "formula/formula.hpp"

#include <string>
#include <string_view>

namespace leavenwright {

/// `heading` goes to the top as comments, a line each.
std::string write_formula(const Formula& formula, std::string_view heading);

} // namespace leavenwright
