#include "ferment/kinetics.hpp"

#include <algorithm>
#include <cmath>

namespace leavenwright {
namespace {

// Lactobacilli go on making acid down to here: Brandt et al. 2004 give 3.6, a table of Nutrients
// 2019, 11:2954 reaches 3.55.
constexpr double last_acid_ph = 3.55;
// Dough keeps what it makes up to a rise of 1.2; from there on it leaks more and more and never
// passes 2.6, so that a risen pup loaf (3.55 times its volume) is about the most.
constexpr double tight_rise = 1.2;
constexpr double leaking_rise = 1.4;

double lag_at_start(double lag) {
    return 1.0 / std::expm1(lag);
}

} // namespace

MicrobeEquations::MicrobeEquations(const Kinetics& kinetics, const DoughMix& mix)
    : kinetics_(kinetics), levain_(mix.levain.value()),
      packaged_start_(mix.fresh_yeast.value() * cells_per_gram_fresh_yeast),
      yeast_slowed_(yeast_salt_rate(mix.salt) * sugar_rate(mix.sugar) * water_rate(mix.true_water)),
      bacteria_slowed_(bacteria_salt_rate(mix.salt) * sugar_rate(mix.sugar) * water_rate(mix.true_water)),
      buffer_(std::lerp(kinetics.acid_buffer, kinetics.whole_acid_buffer, mix.whole_grain.value())),
      lag_start_(lag_at_start(kinetics.lag)), packaged_lag_start_(lag_at_start(kinetics.packaged_lag)),
      water_(mix.water.value()), kg_per_litre_(mix.kg_per_litre) {}

MicrobeState MicrobeEquations::start() const {
    MicrobeState state{};
    state[yeast_state] = kinetics_.ripe_yeast * levain_;
    state[bacteria_state] = kinetics_.ripe_bacteria * levain_;
    state[acid_state] = kinetics_.ripe_acid * levain_;
    state[packaged_state] = packaged_start_;
    return state;
}

void MicrobeEquations::derivative(const double* state, double* change, double celsius) const {
    double gas = 0.0;
    std::fill_n(change, MicrobeState().size(), 0.0);
    if (levain_ > 0.0) {
        const double growth = growth_rate(kinetics_.culture_yeast, celsius);
        const double fermenting =
            kinetics_.culture_yeast == Yeast::humilis ? growth : gas_rate(kinetics_.culture_yeast, celsius);
        const double awake = lag_start_ * std::exp(state[lag_state]);
        const double active = awake / (1.0 + awake);
        const double yeast = state[yeast_state];
        const double bacteria = state[bacteria_state];
        const double acidity = ph(state[acid_state]);
        const double bacteria_speed = bacteria_slowed_ * bacteria_rate(celsius);
        const double speed = kinetics_.yeast_per_h * yeast_slowed_ * growth;
        change[lag_state] = speed;
        change[yeast_state] = speed * active * yeast * (1.0 - yeast / kinetics_.yeast_cap);
        change[bacteria_state] = kinetics_.bacteria_per_h * bacteria_speed * bacteria_ph_rate(acidity) *
                                 active * bacteria * (1.0 - bacteria / kinetics_.bacteria_cap);
        change[acid_state] = kinetics_.acid_per_bacterium * change[bacteria_state];
        if (acidity > last_acid_ph) {
            // fades out over the last 0.1 of pH, so that the equations stay smooth
            const double fade = std::min(1.0, (acidity - last_acid_ph) / 0.1);
            change[acid_state] += fade * kinetics_.acid_per_bacterium_h * bacteria_speed * bacteria;
        }
        gas += kinetics_.gas_per_cell * change[yeast_state] +
               kinetics_.gas_per_cell_h * yeast_slowed_ * fermenting * yeast +
               kinetics_.gas_per_acid * change[acid_state];
    }
    if (packaged_start_ > 0.0) {
        const double growth =
            kinetics_.packaged_per_h * yeast_slowed_ * growth_rate(Yeast::packaged, celsius);
        const double awake = packaged_lag_start_ * std::exp(state[packaged_lag_state]);
        const double cells = state[packaged_state];
        const double room = 1.0 - (cells - packaged_start_) / kinetics_.packaged_new_cells;
        change[packaged_lag_state] = growth;
        change[packaged_state] = growth * awake / (1.0 + awake) * cells * room;
        gas += kinetics_.packaged_gas_per_cell_h * yeast_slowed_ * gas_rate(Yeast::packaged, celsius) * cells;
    }
    change[gas_state] = gas;
}

double MicrobeEquations::ph(double acid) const {
    return kinetics_.floor_ph + (kinetics_.flour_ph - kinetics_.floor_ph) * std::exp(-acid / buffer_);
}

double MicrobeEquations::dissolved_limit(double celsius) const {
    return water_ * dissolved_gas_limit(celsius);
}

double MicrobeEquations::rise_of_bubbles(double free_gas, double celsius) const {
    const double potential =
        kinetics_.retention * std::max(0.0, free_gas) * gas_litres(celsius) * kg_per_litre_;
    if (potential <= tight_rise) {
        return potential;
    }
    return tight_rise + leaking_rise * (1.0 - std::exp((tight_rise - potential) / leaking_rise));
}

} // namespace leavenwright
