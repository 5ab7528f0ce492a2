#include "schedule/rise_settings.hpp"

#include <algorithm>
#include <cmath>

namespace leavenwright {
namespace {

constexpr double rye_share = 0.5; // of what wheat dough is let rise

} // namespace

Fraction bulk_rise(const RiseCircumstances& circumstances, Temperature dough) {
    const double whole = circumstances.is_rye ? rye_share : 1.0;
    double rise = circumstances.cold ? 0.5 : 1.0;
    if (circumstances.is_levain) {
        const double warm_rise = circumstances.cold ? 0.3 : 0.4;
        const double celsius = std::clamp(dough.in_celsius(), 20.0, 27.0);
        rise = celsius <= 24.0 ? std::lerp(0.75, 0.5, (celsius - 20.0) / 4.0)
                               : std::lerp(0.5, warm_rise, (celsius - 24.0) / 3.0);
    }
    if (circumstances.cold) {
        const double beyond_half_a_day = std::clamp((in_hours(*circumstances.cold) - 12.0) / 36.0, 0.0, 1.0);
        rise = std::lerp(rise, 0.2, beyond_half_a_day);
    }
    return Fraction(rise * whole);
}

Fraction proof_rise(const RiseCircumstances& circumstances) {
    const double whole = circumstances.is_rye ? rye_share : 1.0;
    if (circumstances.cold) {
        return Fraction(0.6 * whole);
    }
    const double loaf = circumstances.is_levain ? 1.1 : 1.8;
    return Fraction((circumstances.is_flat ? 0.7 : loaf) * whole);
}

} // namespace leavenwright
