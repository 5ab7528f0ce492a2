#include "quantity/weigh.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace leavenwright {
namespace {

// Sums of doubles may fall a hair short of the half or the whole that they stand for.
constexpr double hair = 1e-9;
// Salt and yeast are small weights: a gram more or less of them is tasted.
constexpr double small_weight_steps = 25.0;

// Divisors of the scale's step, for the three ranges of step_for.
constexpr std::array<double, 3> divisors{1.0, 10.0, 100.0};

struct Share {
    std::size_t index;
    double remainder;
};

void weigh_range(std::span<const Mass> masses, const WeighingScale& scale, double divisor, Mass& rest,
                 Weighing& weighing) {
    const Mass step = scale.step / divisor;
    std::vector<Share> shares;
    double sum = 0.0;
    double whole = 0.0;
    for (std::size_t i = 0; i < masses.size(); ++i) {
        if (scale.step_for(masses[i]) != step) {
            continue;
        }
        const double steps = masses[i].value() / step.value();
        const double down = std::floor(steps + hair);
        sum += steps;
        whole += down;
        shares.push_back({i, steps - down});
        weighing.masses[i] = kilograms(down * scale.step.value() / divisor);
    }
    std::stable_sort(shares.begin(), shares.end(),
                     [](const Share& left, const Share& right) { return left.remainder > right.remainder; });
    // What the finer ranges were rounded by is made good here, so that the total is right.
    const double residual = rest.value() / step.value();
    const double missing = std::floor(sum + residual + 0.5 + hair) - whole;
    for (std::size_t i = 0; i < shares.size() && static_cast<double>(i) < missing - 0.5; ++i) {
        const std::size_t index = shares[i].index;
        const double down = std::round(weighing.masses[index].value() / step.value());
        weighing.masses[index] = kilograms((down + 1.0) * scale.step.value() / divisor);
    }
    for (const Share& share : shares) {
        rest += masses[share.index] - weighing.masses[share.index];
    }
}

} // namespace

Mass WeighingScale::step_for(Mass mass) const {
    if (mass >= small_weight_steps * step) {
        return step / divisors[0];
    }
    return step / (mass >= 0.5 * step ? divisors[1] : divisors[2]);
}

WeighingScale usual_scale(UnitSystem units) {
    return {.units = units, .step = units == UnitSystem::us ? 0.1 * ounce() : grams(1.0)};
}

Weighing weigh(std::span<const Mass> masses, const WeighingScale& scale) {
    Weighing weighing{
        .masses = std::vector<Mass>(masses.size()), .total = kilograms(0.0), .largest_error = kilograms(0.0)};
    Mass rest = kilograms(0.0);
    for (auto divisor = divisors.rbegin(); divisor != divisors.rend(); ++divisor) { // the finest first
        weigh_range(masses, scale, *divisor, rest, weighing);
    }
    for (std::size_t i = 0; i < masses.size(); ++i) {
        weighing.total += weighing.masses[i];
        weighing.largest_error = std::max(weighing.largest_error, abs(weighing.masses[i] - masses[i]));
    }
    return weighing;
}

} // namespace leavenwright
