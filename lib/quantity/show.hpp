// Typed quantities as text for people. Rounding for show happens here and in weigh.hpp.
#pragma once

#include "quantity/quantity.hpp"
#include "quantity/weigh.hpp"

#include <span>
#include <string>

namespace leavenwright {

/// A weight that was rounded by the scale, without trailing zeros: "400 g", "6.5 g", "14.1 oz".
std::string show_weighed(Mass mass, const WeighingScale& scale);

/// Grams for a sentence, with decimals only where they matter: "75 g", "7.25 g".
std::string show_grams(Mass mass);

/// A weight that is the sum of `parts`, with the decimals of the finest of them.
std::string show_sum(Mass sum, std::span<const Mass> parts, const WeighingScale& scale);

/// A difference of weights: "0 g", "+12 g", "-7.2 g".
std::string show_difference(Mass mass, const WeighingScale& scale);

/// A ratio in percent with up to two decimals, three below 0.1 %: "66 %", "2.04 %".
std::string show_percent(double ratio);

/// To a tenth of a degree: "24.5 C", "76.1 F".
std::string show_temperature(Temperature temperature, UnitSystem units);
std::string show_temperature_difference(TemperatureDifference difference, UnitSystem units);

/// A decimal without trailing zeros.
std::string show_decimal(double value, int decimals);

} // namespace leavenwright
