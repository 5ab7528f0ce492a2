// The temperature inside a dough, computed from where it stands: conduction in the dough, air and
// radiation at its surface, and the heat of its own fermentation.
//
// Solved once for a dough and its places; the result is shared by whatever runs on it. That
// numerical side is in plain doubles: hours since the start, C, and SI.
#pragma once

#include "ferment/dough_properties.hpp"
#include "ferment/temperature_history.hpp"
#include "ferment/temperature_profile.hpp"
#include "quantity/quantity.hpp"

#include <functional>

namespace leavenwright {

/// What the dough looks like. Its size follows from its mass.
struct DoughForm {
    enum class Kind {
        ball, // sphere
        tub,  // cylinder that loses heat all around: dough in a bowl, a tub, a jar; a flat piece
        log,  // cylinder without its ends: a baguette
        slab, // sheet without its edges: a tray
    };
    Kind kind = Kind::ball;
    /// tub: height / diameter; log: length / diameter; slab: thickness / side of its square.
    double aspect = 1.0;

    static constexpr DoughForm ball() { return {Kind::ball, 1.0}; }
    static constexpr DoughForm tub(double aspect = 1.0) { return {Kind::tub, aspect}; }
    static constexpr DoughForm log(double aspect = 6.0) { return {Kind::log, aspect}; }
    static constexpr DoughForm slab(double aspect = 0.1) { return {Kind::slab, aspect}; }
};

/// What the dough stands in. The whole surface is taken to give heat alike.
struct Surroundings {
    enum class Air { still, moving };
    Air air = Air::still;
    bool covered = false; // by a lid, a cloth, a bag

    /// W/(m2 K), radiation included. Still: 9.37, a cold store's walls (refrigeration tables, wall
    /// surface conductance). Moving, by a fan: 20, of 15 to 30 in proofers and retarders (common
    /// practice). A cover halves it (common practice).
    double coefficient() const;
};

/// How finely it is computed. The defaults keep within 0.02 K of the exact series.
struct HeatNumerics {
    int shells = 20; // of equal mass
    int zones = 5;   // of equal mass, in the result; a divisor of `shells`
    Duration step = seconds(300.0);
};

struct DoughHeat {
    Mass mass;
    DoughForm form;
    DoughComposition composition;
    Fraction gas; // of the volume, at a typical moment
    Temperature start = Temperature::celsius(20.0);
    Surroundings surroundings;
    TemperatureProfile environment;
    Duration until;
    /// Heat of fermentation in W/kg at a time in hours; none where it is empty.
    std::function<double(double)> heat_of_fermentation;
};

/// A dough as a body in which temperature depends on one coordinate: V(r) ~ r^(exponent + 1).
/// Slab 0, log 1, ball 2. For a tub both are chosen so that surface / volume and the slowest
/// cooling in this air are those of the finite cylinder; its mean is then within 2 % of the product
/// solution, within 1 % unless it is flat.
struct OneDimensionalBody {
    double exponent;
    double radius; // m; of a slab half its thickness

    double surface_per_volume() const { return (exponent + 1.0) / radius; } // 1/m
};
OneDimensionalBody body_of(const DoughForm& form, Mass mass, const ThermalProperties& properties,
                           double coefficient);

/// h V / (A k): where it is small, a dough has one temperature.
double biot_number(const OneDimensionalBody& body, const ThermalProperties& properties, double coefficient);
inline constexpr double lumped_below_biot = 0.1;

/// Zones from the middle outwards; one where the Biot number is below 0.1, with the resistance of
/// the dough itself still in series with the air's.
///
///     rho cp dT/dt = r^-m d/dr (k r^m dT/dr) + rho q,    -k dT/dr = h (T - T_air) at the surface
///
/// Finite volumes in shells of equal mass, Crank-Nicolson; each change of place begins with two
/// backward-Euler half steps, which damp what the jump would set ringing (Rannacher 1984).
/// Properties are those halfway between the coldest and the hottest temperature met.
TemperatureHistory compute_temperature_history(const DoughHeat& dough, const HeatNumerics& numerics = {});

} // namespace leavenwright
