// Dough of flour, water and salt as the heat model sees it.
#pragma once

#include "ferment/dough_properties.hpp"

namespace leavenwright::testing {

/// Flour of 11.9 % water, 12.0 protein, 1.7 fat, 70.1 carbohydrate, 2.4 fibre, 0.5 ash, with water at
/// `hydration` of its weight and 2 % salt.
inline DoughComposition plain_dough(double hydration, double salt = 0.02) {
    const double sum = 11.9 + 12.0 + 1.7 + 70.1 + 2.4 + 0.5;
    const double whole = 1.0 + hydration + salt;
    return {.water = Fraction((11.9 / sum + hydration) / whole),
            .protein = Fraction(12.0 / sum / whole),
            .fat = Fraction(1.7 / sum / whole),
            .carbohydrate = Fraction(70.1 / sum / whole),
            .fibre = Fraction(2.4 / sum / whole),
            .ash = Fraction(0.5 / sum / whole),
            .salt = Fraction(salt / whole)};
}

} // namespace leavenwright::testing
