#include "ferment/rates.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>

namespace leavenwright {
namespace {

// Half and a quarter of the best rate at 20 and 14 C, and at 32 and 34 C, none at 35.5 C: Gänzle,
// rec.food.sourdough FAQ Q37 and Q39; best at 27 to 28 C: Gänzle et al. 1998, Brandt et al. 2004. The
// cold end is from memory of the table in Q37, 20 %.
const RateCurve& humilis_growth() {
    static const RateCurve curve{
        {2, 0.013}, {4, 0.02},  {8, 0.05},  {10, 0.08}, {14, 0.21},
        {18, 0.40}, {20, 0.52}, {24, 0.84}, {26, 0.97}, {28, 1.0},
        {30, 0.80}, {32, 0.50}, {34, 0.20}, {35, 0.02}, {many_cultures_stop.in_celsius(), 0.0}};
    return curve;
}

// Half and a quarter of the best rate at 20 and 15 C, and at 37 and 39 C, none at 41 C, best at 32
// to 33 C: the same sources.
const RateCurve& bacteria_growth() {
    static const RateCurve curve{{2, 0.03},  {4, 0.04},  {8, 0.075}, {10, 0.105}, {15, 0.23},
                                 {20, 0.44}, {24, 0.64}, {28, 0.87}, {31, 0.98},  {32.5, 1.0},
                                 {34, 0.93}, {37, 0.5},  {39, 0.25}, {41, 0.0}};
    return curve;
}

// Best at 32.3 C and none at 45.4 C: Salvadó et al. 2011, Appl Environ Microbiol 77:2292-2302; the
// coldest is the lower part of the 1.3 to 4.3 C of the genus.
constexpr CardinalTemperature cerevisiae_growth{1.3, 32.3, 45.4};

// Packaged yeast makes a tenth more gas per degree between 20 and 30 C, best at 32 to 40 C (a
// baking trade magazine's "The science of fermentation"); colder it is slowed more (common practice: a dough
// for two hours in the room, cooled in balls, takes one to two days at 4 C to double, a shaped loaf a night
// at 9 C).
const RateCurve& packaged_gas() {
    static const RateCurve curve{{0, 0.018}, {4, 0.035}, {10, 0.095}, {15, 0.19}, {20, 0.33}, {25, 0.53},
                                 {30, 0.83}, {34, 1.08}, {38, 1.15},  {43, 0.85}, {52, 0.0}};
    return curve;
}

// L. sanfranciscensis from pH 3.8 to 6.7, best at 5.0 to 5.5: Gänzle et al. 1998, Brandt et al. 2004. The
// counts in a table of Nutrients 2019, 11:2954, went on rising between pH 4.26 and 3.55; the lowest of such
// lactobacilli is set to it.
constexpr CardinalPh sanfranciscensis_ph{3.8, 5.25, 6.7};
constexpr CardinalPh acid_tolerant_ph{3.5, 5.25, 6.7};

const CardinalPh& ph_of(Lactobacillus bacteria) {
    return bacteria == Lactobacillus::sanfranciscensis ? sanfranciscensis_ph : acid_tolerant_ph;
}

double power_to_limit(BakersPercentage amount, BakersPercentage limit, double exponent) {
    const double share = std::clamp(amount.value() / limit.value(), 0.0, 1.0);
    return 1.0 - std::pow(share, exponent);
}

} // namespace

RateCurve::RateCurve(std::initializer_list<Point> points) : hottest_(std::prev(points.end())->celsius) {
    for (const Point* point = points.begin(); point + 1 != points.end(); ++point) {
        const Point& next = point[1];
        const double span = next.celsius - point->celsius;
        const bool is_last = point + 2 == points.end(); // a logarithm cannot reach 0
        const double slope = is_last ? -point->rate / span : std::log(next.rate / point->rate) / span;
        pieces_.push_back({point->celsius, point->rate, slope});
        while (points.begin()->celsius + static_cast<double>(piece_at_.size()) < next.celsius) {
            piece_at_.push_back(pieces_.size() - 1);
        }
    }
}

double RateCurve::operator()(double celsius) const {
    if (celsius >= hottest_) {
        return 0.0;
    }
    const double above_coldest = celsius - pieces_.front().from;
    if (!(above_coldest > 0.0)) {
        return pieces_.front().rate;
    }
    std::size_t at = piece_at_[static_cast<std::size_t>(above_coldest)];
    while (at + 1 < pieces_.size() && pieces_[at + 1].from <= celsius) {
        ++at;
    }
    const Piece& piece = pieces_[at];
    const double over = celsius - piece.from;
    return at + 1 == pieces_.size() ? piece.rate + piece.slope * over
                                    : piece.rate * std::exp(piece.slope * over);
}

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
    return yeast == Yeast::humilis ? humilis_growth()(celsius) : cerevisiae_growth(celsius);
}

double gas_rate(Yeast yeast, double celsius) {
    return yeast == Yeast::humilis ? humilis_growth()(celsius) : packaged_gas()(celsius);
}

double bacteria_rate(double celsius) {
    return bacteria_growth()(celsius);
}

double bacteria_lowest_ph(Lactobacillus bacteria) {
    return ph_of(bacteria).lowest;
}

double bacteria_ph_rate(Lactobacillus bacteria, double ph) {
    return ph_of(bacteria)(ph);
}

double yeast_salt_rate(BakersPercentage salt) {
    return power_to_limit(salt, yeast_salt_limit, 1.5);
}

double bacteria_salt_rate(BakersPercentage salt) {
    return power_to_limit(salt, bacteria_salt_limit, 1.4);
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
