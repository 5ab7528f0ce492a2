#include "quantity/show.hpp"

#include <fmt/core.h>

#include <cmath>

namespace leavenwright {
namespace {

constexpr double ounce_kg = 0.45359237 / 16.0;

int decimals_of(double step) {
    int decimals = 0;
    while (decimals < 6 && std::abs(step - std::round(step)) > 1e-6 * step) {
        step *= 10.0;
        ++decimals;
    }
    return decimals;
}

double in_units(Mass mass, UnitSystem units) {
    return units == UnitSystem::us ? mass.value() / ounce_kg : in_grams(mass);
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
    return fmt::format("{:.{}f} {}", in_units(mass, scale.units), decimals, unit_name(scale.units));
}

std::string show_difference(Mass mass, const WeighingScale& scale) {
    // Less than half of the finest step that is shown.
    if (std::abs(mass.value()) < scale.step.value() / 200.0) {
        return fmt::format("0 {}", unit_name(scale.units));
    }
    const int decimals = decimals_of(in_units(scale.step_for(abs(mass)), scale.units));
    return fmt::format("{:+.{}f} {}", in_units(mass, scale.units), decimals, unit_name(scale.units));
}

std::string show_percent(double ratio) {
    const double percent = ratio * 100.0;
    return show_decimal(percent, std::abs(percent) < 0.1 ? 3 : 2) + " %";
}

} // namespace leavenwright
