#include "ferment/dough_properties.hpp"

#include <algorithm>
#include <array>
#include <cassert>

namespace leavenwright {
namespace {

// a + b T + c T2, T in C
struct Quadratic {
    double a;
    double b;
    double c;

    constexpr double at(double t) const { return a + t * (b + t * c); }
};

struct Component {
    Quadratic specific_heat; // kJ/(kg K)
    Quadratic conductivity;  // W/(m K)
    Quadratic density;       // kg/m3
};

constexpr Component water{.specific_heat = {4.1762, -9.0864e-5, 5.4731e-6},
                          .conductivity = {0.57109, 1.7625e-3, -6.7036e-6},
                          .density = {997.18, 3.1439e-3, -3.7574e-3}};
constexpr Component protein{.specific_heat = {2.0082, 1.2089e-3, -1.3129e-6},
                            .conductivity = {0.17881, 1.1958e-3, -2.7178e-6},
                            .density = {1329.9, -0.51840, 0.0}};
// Some books print the conductivity's second figure ten times too large; oils have 0.17 W/(m K).
constexpr Component fat{.specific_heat = {1.9842, 1.4733e-3, -4.8008e-6},
                        .conductivity = {0.18071, -2.7604e-4, -1.7749e-7},
                        .density = {925.59, -0.41757, 0.0}};
constexpr Component carbohydrate{.specific_heat = {1.5488, 1.9625e-3, -5.9399e-6},
                                 .conductivity = {0.20141, 1.3874e-3, -4.3312e-6},
                                 .density = {1599.1, -0.31046, 0.0}};
constexpr Component fibre{.specific_heat = {1.8459, 1.8306e-3, -4.6509e-6},
                          .conductivity = {0.18331, 1.2497e-3, -3.1683e-6},
                          .density = {1311.5, -0.36589, 0.0}};
constexpr Component ash{.specific_heat = {1.0926, 1.8896e-3, -3.6817e-6},
                        .conductivity = {0.32962, 1.4011e-3, -2.9069e-6},
                        .density = {2423.8, -0.28063, 0.0}};

struct Part {
    const Component& component;
    double share;
};

} // namespace

ThermalProperties thermal_properties(const DoughComposition& composition, Temperature temperature,
                                     Fraction gas) {
    const std::array<Part, 6> parts{{{water, composition.water.value()},
                                     {protein, composition.protein.value()},
                                     {fat, composition.fat.value()},
                                     {carbohydrate, composition.carbohydrate.value()},
                                     {fibre, composition.fibre.value()},
                                     {ash, composition.ash.value() + composition.salt.value()}}};
    const double celsius = temperature.in_celsius();
    double sum = 0.0;
    double heat = 0.0;
    double volume = 0.0;
    double conduction = 0.0;
    for (const Part& part : parts) {
        const double t = &part.component == &water ? std::max(celsius, 0.0) : celsius;
        const double part_volume = part.share / part.component.density.at(t);
        sum += part.share;
        heat += part.share * part.component.specific_heat.at(t);
        volume += part_volume;
        conduction += part_volume * part.component.conductivity.at(t);
    }
    assert(sum > 0.0 && gas.value() >= 0.0 && gas.value() < 1.0);
    const double solid = 1.0 - gas.value();
    return {.specific_heat = 1000.0 * heat / sum,
            .conductivity = conduction / volume * solid / (1.0 + gas.value() / 2.0),
            .density = sum / volume * solid};
}

} // namespace leavenwright
