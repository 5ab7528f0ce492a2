#include "ferment/rates.hpp"

#include <algorithm>

namespace leavenwright {
namespace {

// Half and a quarter of the best rate at 20 and 14 C, and at 32 and 34 C, none at 35.5 C: Gänzle,
// rec.food.sourdough FAQ Q37 and Q39; best at 27 to 28 C: Gänzle et al. 1998, Brandt et al. 2004. The
// cold end is from memory of the table in Q37, 20 %.
constexpr RateCurve<15> humilis_growth{
    {2, 4, 8, 10, 14, 18, 20, 24, 26, 28, 30, 32, 34, 35, 35.5},
    {0.013, 0.02, 0.05, 0.08, 0.21, 0.40, 0.52, 0.84, 0.97, 1.0, 0.80, 0.50, 0.20, 0.02, 0.0}};

// Half and a quarter of the best rate at 20 and 15 C, and at 37 and 39 C, none at 41 C, best at 32
// to 33 C: the same sources.
constexpr RateCurve<14> bacteria_growth{
    {2, 4, 8, 10, 15, 20, 24, 28, 31, 32.5, 34, 37, 39, 41},
    {0.03, 0.04, 0.075, 0.105, 0.23, 0.44, 0.64, 0.87, 0.98, 1.0, 0.93, 0.5, 0.25, 0.0}};

// Best at 32.3 C and none at 45.4 C: Salvadó et al. 2011, Appl Environ Microbiol 77:2292-2302; the
// coldest is the lower part of the 1.3 to 4.3 C of the genus.
constexpr CardinalTemperature cerevisiae_growth{1.3, 32.3, 45.4};

// Packaged yeast makes a tenth more gas per degree between 20 and 30 C, best at 32 to 40 C (a
// baking trade magazine's "The science of fermentation"); colder it is slowed more (common practice: a
// dough that doubles in an hour and a half in the room takes a night in the refrigerator).
constexpr RateCurve<11> packaged_gas{{0, 4, 10, 15, 20, 25, 30, 34, 38, 43, 52},
                                     {0.018, 0.035, 0.10, 0.19, 0.33, 0.53, 0.83, 1.08, 1.15, 0.85, 0.0}};

constexpr CardinalPh bacteria_ph{3.8, 5.25, 6.7};

double power_to_limit(BakersPercentage amount, BakersPercentage limit, double exponent) {
    const double share = std::clamp(amount.value() / limit.value(), 0.0, 1.0);
    return 1.0 - std::pow(share, exponent);
}

} // namespace

double CardinalTemperature::operator()(double at) const {
    if (at <= coldest || at >= hottest) {
        return 0.0;
    }
    const double rise = at - coldest;
    const double span = best - coldest;
    return (at - hottest) * rise * rise /
           (span * (span * (at - best) - (best - hottest) * (best + coldest - 2.0 * at)));
}

double CardinalPh::operator()(double ph) const {
    if (ph <= lowest || ph >= highest) {
        return 0.0;
    }
    const double inside = (ph - lowest) * (ph - highest);
    return inside / (inside - (ph - best) * (ph - best));
}

double growth_rate(Yeast yeast, double celsius) {
    return yeast == Yeast::humilis ? humilis_growth(celsius) : cerevisiae_growth(celsius);
}

double gas_rate(Yeast yeast, double celsius) {
    return yeast == Yeast::humilis ? humilis_growth(celsius) : packaged_gas(celsius);
}

double bacteria_rate(double celsius) {
    return bacteria_growth(celsius);
}

double bacteria_ph_rate(double ph) {
    return bacteria_ph(ph);
}

double yeast_salt_rate(BakersPercentage salt) {
    return power_to_limit(salt, yeast_salt_limit, 1.5);
}

double bacteria_salt_rate(BakersPercentage salt) {
    return power_to_limit(salt, bacteria_salt_limit, 1.5);
}

double sugar_rate(BakersPercentage sugar) {
    const double over = sugar.value() - sugar_without_effect.value();
    return std::clamp(1.0 - over / (sugar_limit.value() - sugar_without_effect.value()), 0.0, 1.0);
}

double water_rate(Hydration true_water) {
    return std::clamp(1.0 + 0.2 * (true_water.value() - 0.65), 0.9, 1.15);
}

double dissolved_gas_limit(double celsius) {
    return 34.0 * std::exp(2400.0 * (1.0 / (celsius + 273.15) - 1.0 / 298.15));
}

double gas_litres(double celsius) {
    constexpr double litre_atmospheres = 8.205736e-5; // per mmol and K
    return litre_atmospheres * (celsius + 273.15);
}

} // namespace leavenwright
