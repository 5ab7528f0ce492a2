#include "quantity/show.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace leavenwright {
namespace {

int decimals_of(double step) {
    int decimals = 0;
    while (decimals < 6 && std::abs(step - std::round(step)) > 1e-6 * step) {
        step *= 10.0;
        ++decimals;
    }
    return decimals;
}

double in_units(Mass mass, UnitSystem units) {
    return units == UnitSystem::us ? (mass / ounce()).value() : in_grams(mass);
}

std::string_view unit_name(UnitSystem units) {
    return units == UnitSystem::us ? "oz" : "g";
}

} // namespace

std::string show_decimal(double value, int decimals) {
    std::string text = fmt::format("{:.{}f}", value, decimals);
    if (text.find('.') != std::string::npos) {
        text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.') {
            text.pop_back();
        }
    }
    return text == "-0" ? "0" : text;
}

std::string show_weighed(Mass mass, const WeighingScale& scale) {
    if (mass.value() == 0.0) {
        return fmt::format("0 {}", unit_name(scale.units));
    }
    const int decimals = decimals_of(in_units(scale.step_for(mass), scale.units));
    return show_decimal(in_units(mass, scale.units), decimals) + " " + std::string(unit_name(scale.units));
}

std::string show_grams(Mass mass) {
    const double g = in_grams(mass);
    return show_decimal(g, std::abs(g) < 10.0 ? 2 : 1) + " g";
}

std::string show_sum(Mass sum, std::span<const Mass> parts, const WeighingScale& scale) {
    Mass finest = scale.step;
    for (const Mass& part : parts) {
        finest = part.value() > 0.0 ? std::min(finest, scale.step_for(part)) : finest;
    }
    return show_decimal(in_units(sum, scale.units), decimals_of(in_units(finest, scale.units))) + " " +
           std::string(unit_name(scale.units));
}

std::string show_difference(Mass mass, const WeighingScale& scale) {
    // Less than half of the finest step that is shown.
    if (std::abs(mass.value()) < scale.step.value() / 200.0) {
        return fmt::format("0 {}", unit_name(scale.units));
    }
    const int decimals = decimals_of(in_units(scale.step_for(abs(mass)), scale.units));
    return (mass.value() > 0.0 ? "+" : "") + show_decimal(in_units(mass, scale.units), decimals) + " " +
           std::string(unit_name(scale.units));
}

std::string show_percent(double ratio) {
    const double percent = ratio * 100.0;
    return show_decimal(percent, std::abs(percent) < 0.1 ? 3 : 2) + " %";
}

std::string show_temperature(Temperature temperature, UnitSystem units) {
    return units == UnitSystem::us ? show_decimal(temperature.in_fahrenheit(), 1) + " F"
                                   : show_decimal(temperature.in_celsius(), 1) + " C";
}

std::string show_temperature_difference(TemperatureDifference difference, UnitSystem units) {
    return units == UnitSystem::us ? show_decimal(difference.value() * 9.0 / 5.0, 1) + " F"
                                   : show_decimal(difference.value(), 1) + " C";
}

} // namespace leavenwright
