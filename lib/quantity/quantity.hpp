// The typed numbers of the trade: masses, volumes, times, temperatures as points and as
// differences, and ratios that say what they are a share of. SI inside; other units
// exist only where text is read (units.hpp) and shown (show.hpp).
#pragma once

#include <boost/units/cmath.hpp>
#include <boost/units/quantity.hpp>
#include <boost/units/systems/si/mass.hpp>
#include <boost/units/systems/si/temperature.hpp>
#include <boost/units/systems/si/time.hpp>
#include <boost/units/systems/si/volume.hpp>

#include <compare>

namespace leavenwright {

using Mass = boost::units::quantity<boost::units::si::mass>;                         // kg
using Volume = boost::units::quantity<boost::units::si::volume>;                     // m3
using Duration = boost::units::quantity<boost::units::si::time>;                     // s
using TemperatureDifference = boost::units::quantity<boost::units::si::temperature>; // K

constexpr Mass kilograms(double kg) {
    return Mass::from_value(kg);
}
constexpr Mass grams(double g) {
    return Mass::from_value(g / 1000.0);
}
/// The avoirdupois pound, exact (international yard and pound agreement, 1959), and its ounce.
constexpr Mass pound() {
    return kilograms(0.45359237);
}
constexpr Mass ounce() {
    return kilograms(0.45359237 / 16.0);
}
/// The most that one amount, and a whole dough, may weigh: beyond any bakery, and far from where
/// sums could not be written back.
constexpr Mass largest_amount() {
    return kilograms(1e6);
}
constexpr Mass largest_dough() {
    return kilograms(5e5);
}
constexpr Volume cubic_metres(double m3) {
    return Volume::from_value(m3);
}
constexpr Volume litres(double l) {
    return Volume::from_value(l / 1000.0);
}
constexpr Duration seconds(double s) {
    return Duration::from_value(s);
}
constexpr Duration hours(double h) {
    return seconds(h * 3600.0);
}
constexpr TemperatureDifference kelvins(double k) {
    return TemperatureDifference::from_value(k);
}

constexpr double in_kilograms(Mass mass) {
    return mass.value();
}
constexpr double in_grams(Mass mass) {
    return mass.value() * 1000.0;
}

constexpr double in_hours(Duration time) {
    return time.value() / 3600.0;
}

/// A point on the temperature scale. Points do not add; their difference is a
/// TemperatureDifference.
class Temperature {
public:
    static constexpr Temperature celsius(double degrees) { return Temperature(degrees + ice_point_k); }
    static constexpr Temperature fahrenheit(double degrees) { return celsius((degrees - 32.0) * 5.0 / 9.0); }

    constexpr double in_kelvins() const { return kelvin_; }
    constexpr double in_celsius() const { return kelvin_ - ice_point_k; }
    constexpr double in_fahrenheit() const { return in_celsius() * 9.0 / 5.0 + 32.0; }

    friend constexpr auto operator<=>(Temperature, Temperature) = default;
    friend constexpr TemperatureDifference operator-(Temperature left, Temperature right) {
        return kelvins(left.kelvin_ - right.kelvin_);
    }
    friend constexpr Temperature operator+(Temperature point, TemperatureDifference step) {
        return Temperature(point.kelvin_ + step.value());
    }

private:
    static constexpr double ice_point_k = 273.15;
    constexpr explicit Temperature(double kelvin) : kelvin_(kelvin) {}
    double kelvin_;
};

/// A ratio of masses that knows its basis; ratios on different bases do not mix, and none
/// turns into a bare number by itself.
template <class Basis>
class Ratio {
public:
    constexpr Ratio() = default;
    constexpr explicit Ratio(double value) : value_(value) {}
    static constexpr Ratio percent(double percent) { return Ratio(percent / 100.0); }
    static constexpr Ratio of(Mass part, Mass whole) { return Ratio(part.value() / whole.value()); }

    constexpr double value() const { return value_; }
    constexpr double in_percent() const { return value_ * 100.0; }
    friend constexpr auto operator<=>(Ratio, Ratio) = default;
    friend constexpr Mass operator*(Ratio ratio, Mass whole) { return ratio.value_ * whole; }

private:
    double value_ = 0.0;
};

/// weight / total flour: the baker's percentage
using BakersPercentage = Ratio<struct WeightOnTotalFlour>;
/// water / flour of the same dough or levain
using Hydration = Ratio<struct WaterOnFlour>;
/// levain flour / total flour
using PrefermentedFlour = Ratio<struct LevainFlourOnTotalFlour>;
/// levain weight / total flour
using LevainOnTotalFlour = Ratio<struct LevainWeightOnTotalFlour>;
/// levain weight / flour added at mixing
using LevainOnDoughFlour = Ratio<struct LevainWeightOnDoughFlour>;
/// part / whole of one thing: a mass fraction
using Fraction = Ratio<struct PartOfWhole>;

} // namespace leavenwright
