// Growth, acid and gas of a dough as equations, and the constants they take. What each constant
// is, its spread and its source stand in ferment/README.md, in the order of `Kinetics`.
//
//     ds/dt = k g(T)                      lag: a = q/(1+q), q = q0 e^s, q0 = 1/(e^h0 - 1)
//     dN/dt = k g(T) a N (1 - N/cap)      yeast of the culture
//     dL/dt = m l(T) p(pH) a L (1 - L/cap)   its lactobacilli
//     dA/dt = yA dL/dt + mA l(T) L        acid; none below pH 3.55
//     dB/dt = kB g(T) b B (1 - (B - B0)/new)  packaged yeast: so many new cells, whatever the dose
//     dC/dt = yC dN/dt + mC c(T) N + mB c(T) (1 - z e^(-s/w)) B + r dA/dt    carbon dioxide
//     pH = floor + (start - floor) exp(-A / buffer)
//     V/V0 = 1 + rise(C - dissolved)
//
// k, m, kB and the gas are slowed by salt, sugar and stiffness. Baranyi and Roberts 1994 for the lag.
#pragma once

#include "ferment/rates.hpp"

#include <array>

namespace leavenwright {

/// The constants of one culture. Cells per g of dough, acid and gas in mmol per kg of dough.
struct Kinetics {
    Yeast culture_yeast = Yeast::humilis;
    Lactobacillus culture_bacteria = Lactobacillus::sanfranciscensis;
    double yeast_per_h = 0.52;
    double bacteria_per_h = 0.60;
    double yeast_cap = 2.8e7;
    double bacteria_cap = 6.0e9;
    double ripe_yeast = 2.2e7; // in a ripe levain
    double ripe_bacteria = 2.0e9;
    double ripe_acid = 70.0;
    double lag = 0.3;
    double acid_per_bacterium = 1.3e-8;
    double acid_per_bacterium_h = 8.0e-10;
    double acid_buffer = 30.0;       // white flour
    double whole_acid_buffer = 45.0; // whole grain
    double flour_ph = 6.0;
    double floor_ph = 3.45;
    double gas_per_cell = 3.7e-6;
    double gas_per_cell_h = 5.4e-7;
    double gas_per_acid = 0.8;
    double packaged_gas_per_cell_h = 6.5e-7;
    double packaged_asleep = 0.8; // share that makes no gas yet when the dough is mixed
    double packaged_waking = 0.5; // in s: e times fewer of them
    double packaged_per_h = 0.6;
    double packaged_lag = 2.5;
    double packaged_new_cells = 4.2e7;
    double retention = 0.9;
    double handling = 1.0; // how hard hands press: a share of gas kept is raised to this power
};

/// Cells in a gram of fresh yeast (textbook figure, from memory).
inline constexpr double cells_per_gram_fresh_yeast = 1.0e10;

/// What of a dough matters to its microbes.
struct DoughMix {
    Fraction levain;      // ripe levain / dough
    Fraction fresh_yeast; // packaged yeast counted as fresh / dough
    BakersPercentage salt;
    BakersPercentage sugar;
    Hydration true_water;
    Fraction water;             // true water / dough
    Fraction whole_grain;       // of the flour
    double kg_per_litre = 1.13; // of the mixed dough, with the air of mixing
};

/// A yeast after some hours at its best temperature: its lag and its growth depend on nothing else.
struct YeastStanding {
    double cells;
    double awake;  // share that grows
    double growth; // cells per hour at the best temperature
    double asleep; // share that makes no gas yet
};

/// What lactobacilli do, per hour at their best temperature.
struct Souring {
    double bacteria;
    double acid;
};

/// s, N, L, A, C, the packaged yeast's s and B: one zone of a dough.
using MicrobeState = std::array<double, 7>;
enum MicrobeIndex {
    lag_state,
    yeast_state,
    bacteria_state,
    acid_state,
    gas_state,
    packaged_lag_state,
    packaged_state
};

/// The equations for one dough and one culture; temperatures in degrees Celsius, times in hours.
class MicrobeEquations {
public:
    MicrobeEquations(const Kinetics& kinetics, const DoughMix& mix);

    MicrobeState start() const;
    /// The equations as they stand above. simulate() solves them in parts, by the four below.
    void derivative(const double* state, double* change, double celsius) const;

    bool has_levain() const { return levain_ > 0.0; }
    bool has_packaged() const { return packaged_start_ > 0.0; }
    Yeast culture_yeast() const { return kinetics_.culture_yeast; }
    /// The equations of s and N, and of B, in closed form: hours at the yeast's best temperature
    /// since the mixing.
    double culture_awake(double yeast_hours) const;
    YeastStanding culture_after(double yeast_hours) const;
    YeastStanding packaged_after(double yeast_hours) const;
    /// The hours that packaged cells stand asleep, of so many hours of growth and of gas at their best
    /// temperatures, which pass together: the integral of z e^(-s/w) B.
    double asleep_cell_hours(const YeastStanding& from, double cells_at_end, double yeast_hours,
                             double gas_hours) const;
    Souring souring(double bacteria, double acid, double awake) const;
    /// Gas of new cells, of cells that stood some hours at their best temperature, and of new acid.
    double gas_made(double new_cells, double cell_hours, double packaged_cell_hours, double new_acid) const;
    /// The amounts of acid, ascending, at which the slopes of souring() jump, but for the end of all acid.
    const std::array<double, 2>& souring_corners() const { return souring_corners_; }

    double ph(double acid) const;
    /// V/V0 - 1 of dough that holds `gas`, at a temperature.
    double rise(double gas, double celsius) const {
        return rise_of_bubbles(gas - dissolved_limit(celsius), gas_litres(celsius));
    }
    /// The same of gas beyond what is dissolved, and the litres that a mmol of it takes; none where
    /// it is negative.
    double rise_of_bubbles(double free_gas, double litres_per_mmol) const;
    /// CO2 that the dough's water holds, in mmol/kg.
    double dissolved_limit(double celsius) const { return water_ * dissolved_gas_limit(celsius); }
    /// Of the dough.
    double water() const { return water_; }

private:
    double acid_at(double ph) const;
    double packaged_asleep_after(double lag) const;

    Kinetics kinetics_;
    double levain_;
    double packaged_start_;
    double yeast_slowed_;
    double bacteria_slowed_;
    double buffer_;
    double lag_start_;
    double packaged_lag_start_;
    std::array<double, 2> souring_corners_; // ascending
    double water_;
    double kg_per_litre_;
};

} // namespace leavenwright
