// How dough stores and conducts heat, from what it is made of: the equations of Choi & Okos
// (1986) for the components of food, and mixing rules. For dough that is not frozen.
//
// Plain doubles with their units in the comments: this is the numerical side of `ferment`.
#pragma once

#include "quantity/quantity.hpp"

namespace leavenwright {

/// Mass fractions of a dough or an ingredient. They are scaled to add up to 1, since figures of
/// food tables are rounded.
struct DoughComposition {
    Fraction water;
    Fraction protein;
    Fraction fat;
    Fraction carbohydrate; // without fibre
    Fraction fibre;
    Fraction ash;  // minerals without the salt that was added
    Fraction salt; // counted as ash
};

struct ThermalProperties {
    double specific_heat; // J/(kg K)
    double conductivity;  // W/(m K)
    double density;       // kg/m3

    double diffusivity() const { return conductivity / (density * specific_heat); } // m2/s
};

/// Where dough begins to freeze. Two per cent salt on 65 % water alone lower the freezing point by
/// 2 K (ideal solution, 1.86 K kg/mol); sugars lower it further. Below it the equations here
/// do not hold.
constexpr Temperature dough_freezes_at() {
    return Temperature::celsius(-2.0);
}

/// Properties at one temperature, up to 150 C. Liquid water's equation holds from 0 C up and is
/// held at its value there below, down to where dough freezes.
/// `gas` is the share of the volume that is bubbles, which hold no heat: Maxwell-Eucken.
///
///     cp = sum x cp_i,   1/rho = sum x/rho_i,   k = rho sum x k_i/rho_i  (layers side by side)
///
/// Side by side is the upper bound of k.
/// Source: Choi Y, Okos MR (1986), in Food Engineering and Process Applications 1, 93-101, as
/// printed in Ibarz & Barbosa-Canovas, Unit Operations in Food Engineering.
ThermalProperties thermal_properties(const DoughComposition& composition, Temperature temperature,
                                     Fraction gas = Fraction(0.0));

} // namespace leavenwright
