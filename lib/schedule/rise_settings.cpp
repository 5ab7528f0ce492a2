#include "schedule/rise_settings.hpp"

#include <algorithm>
#include <cmath>

namespace leavenwright {
namespace {

constexpr double rye_share = 0.5; // of what wheat dough is let rise

} // namespace

Fraction bulk_rise(const RiseCircumstances& circumstances, Temperature dough) {
    const double whole = circumstances.is_rye ? rye_share : 1.0;
    if (!circumstances.is_levain) {
        return Fraction((circumstances.goes_cold ? 0.5 : 1.0) * whole);
    }
    const double warm_rise = circumstances.goes_cold ? 0.3 : 0.4;
    const double celsius = std::clamp(dough.in_celsius(), 20.0, 27.0);
    const double rise = celsius <= 24.0 ? std::lerp(0.75, 0.5, (celsius - 20.0) / 4.0)
                                        : std::lerp(0.5, warm_rise, (celsius - 24.0) / 3.0);
    return Fraction(rise * whole);
}

Fraction proof_rise(const RiseCircumstances& circumstances) {
    const double whole = circumstances.is_rye ? rye_share : 1.0;
    if (circumstances.goes_cold) {
        return Fraction(0.6 * whole);
    }
    const double loaf = circumstances.is_levain ? 1.0 : 1.2;
    return Fraction((circumstances.is_flat ? 0.7 : loaf) * whole);
}

} // namespace leavenwright
