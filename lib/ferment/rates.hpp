// How fast the microbes of a dough work: relative rates against temperature, pH, salt, sugar and
// water. Each is a pure function; what is published about it stands in ferment/README.md.
#pragma once

#include "quantity/quantity.hpp"

#include <cstddef>
#include <initializer_list>
#include <vector>

namespace leavenwright {

/// What can raise a dough. A culture keeps one of the first two (both are common; which one is
/// rarely known), packaged yeast is the third.
enum class Yeast { humilis, cerevisiae, packaged };
/// What sours it: the lactobacillus of sourdoughs that are refreshed often, or one of those that go on
/// growing in an acid dough (*L. plantarum* and its like). Both are common too.
enum class Lactobacillus { sanfranciscensis, acid_tolerant };

/// A relative rate through published points: straight in the logarithm of the rate between them,
/// level beyond the coldest, none from the hottest on.
class RateCurve {
public:
    struct Point {
        double celsius;
        double rate; // relative to 1 at the optimum
    };
    /// Points in ascending order; the last has rate 0, and the piece before it is straight.
    explicit RateCurve(std::initializer_list<Point> points);

    double operator()(double celsius) const;

private:
    struct Piece {
        double from;
        double rate;
        double slope; // of the logarithm per degree; of the rate itself in the last piece
    };
    std::vector<Piece> pieces_;
    std::vector<std::size_t> piece_at_; // per whole degree above the coldest: where to begin to look
    double hottest_;
};

/// The cardinal temperature model with inflection, 0 outside (coldest, hottest), 1 at `best`:
///
///     (T - Tmax)(T - Tmin)^2 / {(Topt - Tmin)[(Topt - Tmin)(T - Topt) - (Topt - Tmax)(Topt + Tmin - 2T)]}
///
/// Temperatures in degrees Celsius. The curve has one peak only where best > (coldest + hottest) / 2.
/// Source: Rosso, Lobry and Flandrois 1993, J Theor Biol 162:447-463.
struct CardinalTemperature {
    double coldest;
    double best;
    double hottest;

    constexpr bool has_one_peak() const { return best > (coldest + hottest) / 2.0 && best < hottest; }
    double operator()(double at) const;
};

/// The cardinal pH model, 0 outside (lowest, highest), 1 at `best`:
///
///     (x - min)(x - max) / {(x - min)(x - max) - (x - opt)^2}
///
/// Source: Rosso et al. 1995, Appl Environ Microbiol 61:610-616.
struct CardinalPh {
    double lowest;
    double best;
    double highest;

    double operator()(double ph) const;
};

/// Growth against temperature in degrees Celsius, 1 at the optimum.
double growth_rate(Yeast yeast, double celsius);
/// Gas made by cells that stand still, against temperature in degrees Celsius, 1 at the optimum of growth.
double gas_rate(Yeast yeast, double celsius);
/// The lactobacilli of a culture.
double bacteria_rate(double celsius);
/// Their growth and acid against pH; none at the lowest and below.
double bacteria_lowest_ph(Lactobacillus bacteria);
double bacteria_ph_rate(Lactobacillus bacteria, double ph);

/// Where the yeast of many cultures stops: the end of the first yeast's curve.
inline constexpr Temperature many_cultures_stop = Temperature::celsius(35.5);

/// The most salt, of flour, in which each still grows.
inline constexpr BakersPercentage yeast_salt_limit = BakersPercentage::percent(8.0);
inline constexpr BakersPercentage bacteria_salt_limit = BakersPercentage::percent(4.0);
/// Sugar does not slow a dough up to the first, and stops it at the second.
inline constexpr BakersPercentage sugar_without_effect = BakersPercentage::percent(5.0);
inline constexpr BakersPercentage sugar_limit = BakersPercentage::percent(45.0);

/// Relative rates, 1 without, 0 from the limit on; weights of flour.
double yeast_salt_rate(BakersPercentage salt);
double bacteria_salt_rate(BakersPercentage salt);
double sugar_rate(BakersPercentage sugar);
/// A slack dough works faster than a stiff one, 1 at 65 % of water.
double water_rate(Hydration true_water);

/// Carbon dioxide that 1 kg of water holds dissolved under 1 bar of it, in mmol, at a temperature
/// in degrees Celsius:  kH = 34 exp(2400 (1/T - 1/298.15)).
/// Source: Sander 2015, Atmos Chem Phys 15:4399-4981 (from memory).
double dissolved_gas_limit(double celsius);
/// Litres that 1 mmol of gas takes under 1 atm.
double gas_litres(double celsius);

} // namespace leavenwright
