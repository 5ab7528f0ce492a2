#include "ferment/kinetics.hpp"

#include <algorithm>
#include <cmath>

namespace leavenwright {
namespace {

// Lactobacilli go on making acid down to here: Brandt et al. 2004 give 3.6, a table of Nutrients
// 2019, 11:2954 reaches 3.55.
constexpr double last_acid_ph = 3.55;
// It fades out over the last of it, so that the equations stay smooth.
constexpr double fading_ph = 0.1;
// Dough keeps what it makes up to a rise of 1.2; from there on it leaks more and more and never
// passes 2.6, so that a risen pup loaf (3.55 times its volume) is about the most.
constexpr double tight_rise = 1.2;
constexpr double leaking_rise = 1.4;

double lag_at_start(double lag) {
    return 1.0 / std::expm1(lag);
}

double awake_share(double wakeness) {
    return 1.0 - 1.0 / (1.0 + wakeness); // 1 where it overflows
}

} // namespace

MicrobeEquations::MicrobeEquations(const Kinetics& kinetics, const DoughMix& mix)
    : kinetics_(kinetics), levain_(mix.levain.value()),
      packaged_start_(mix.fresh_yeast.value() * cells_per_gram_fresh_yeast),
      yeast_slowed_(yeast_salt_rate(mix.salt) * sugar_rate(mix.sugar) * water_rate(mix.true_water)),
      bacteria_slowed_(bacteria_salt_rate(mix.salt) * sugar_rate(mix.sugar) * water_rate(mix.true_water)),
      buffer_(std::lerp(kinetics.acid_buffer, kinetics.whole_acid_buffer, mix.whole_grain.value())),
      lag_start_(lag_at_start(kinetics.lag)), packaged_lag_start_(lag_at_start(kinetics.packaged_lag)),
      souring_corners_{acid_at(bacteria_lowest_ph(kinetics.culture_bacteria)),
                       acid_at(last_acid_ph + fading_ph)},
      water_(mix.water.value()), kg_per_litre_(mix.kg_per_litre) {
    std::sort(souring_corners_.begin(), souring_corners_.end());
}

MicrobeState MicrobeEquations::start() const {
    MicrobeState state{};
    state[yeast_state] = kinetics_.ripe_yeast * levain_;
    state[bacteria_state] = kinetics_.ripe_bacteria * levain_;
    state[acid_state] = kinetics_.ripe_acid * levain_;
    state[packaged_state] = packaged_start_;
    return state;
}

void MicrobeEquations::derivative(const double* state, double* change, double celsius) const {
    double cell_hours = 0.0;
    double packaged_cell_hours = 0.0;
    std::fill_n(change, MicrobeState().size(), 0.0);
    if (has_levain()) {
        const double growth = growth_rate(kinetics_.culture_yeast, celsius);
        const double awake = awake_share(lag_start_ * std::exp(state[lag_state]));
        const double yeast = state[yeast_state];
        const Souring sour = souring(state[bacteria_state], state[acid_state], awake);
        const double bacteria_speed = bacteria_rate(celsius);
        change[lag_state] = kinetics_.yeast_per_h * yeast_slowed_ * growth;
        change[yeast_state] = change[lag_state] * awake * yeast * (1.0 - yeast / kinetics_.yeast_cap);
        change[bacteria_state] = bacteria_speed * sour.bacteria;
        change[acid_state] = bacteria_speed * sour.acid;
        cell_hours = gas_rate(kinetics_.culture_yeast, celsius) * yeast;
    }
    if (has_packaged()) {
        const double awake = awake_share(packaged_lag_start_ * std::exp(state[packaged_lag_state]));
        const double cells = state[packaged_state];
        const double room = 1.0 - (cells - packaged_start_) / kinetics_.packaged_new_cells;
        change[packaged_lag_state] =
            kinetics_.packaged_per_h * yeast_slowed_ * growth_rate(Yeast::packaged, celsius);
        change[packaged_state] = change[packaged_lag_state] * awake * cells * room;
        packaged_cell_hours = gas_rate(Yeast::packaged, celsius) * cells *
                              (1.0 - packaged_asleep_after(state[packaged_lag_state]));
    }
    change[gas_state] = gas_made(change[yeast_state], cell_hours, packaged_cell_hours, change[acid_state]);
}

double MicrobeEquations::packaged_asleep_after(double lag) const {
    return kinetics_.packaged_asleep * std::exp(-lag / kinetics_.packaged_waking);
}

double MicrobeEquations::culture_awake(double yeast_hours) const {
    return awake_share(lag_start_ * std::exp(kinetics_.yeast_per_h * yeast_slowed_ * yeast_hours));
}

// With E = ln((1 + q0 e^s) / (1 + q0)), the integral of a over s, N is logistic in E:
// N = cap / (1 + (cap / N0 - 1) e^-E).
YeastStanding MicrobeEquations::culture_after(double yeast_hours) const {
    const double speed = kinetics_.yeast_per_h * yeast_slowed_;
    const double wakeness = lag_start_ * std::exp(speed * yeast_hours);
    const double room_at_start = kinetics_.yeast_cap / (kinetics_.ripe_yeast * levain_) - 1.0;
    const double cells = kinetics_.yeast_cap / (1.0 + room_at_start * (1.0 + lag_start_) / (1.0 + wakeness));
    const double awake = awake_share(wakeness);
    return {cells, awake, speed * awake * cells * (1.0 - cells / kinetics_.yeast_cap), 0.0};
}

// The same with B' = (most / new) b B (1 - B / most), most = B0 + new.
YeastStanding MicrobeEquations::packaged_after(double yeast_hours) const {
    const double speed = kinetics_.packaged_per_h * yeast_slowed_;
    const double wakeness = packaged_lag_start_ * std::exp(speed * yeast_hours);
    const double most = packaged_start_ + kinetics_.packaged_new_cells;
    const double rate = most / kinetics_.packaged_new_cells;
    const double cells = most / (1.0 + kinetics_.packaged_new_cells / packaged_start_ *
                                           std::pow((1.0 + packaged_lag_start_) / (1.0 + wakeness), rate));
    const double awake = awake_share(wakeness);
    return {cells, awake, speed * awake * rate * cells * (1.0 - cells / most),
            packaged_asleep_after(speed * yeast_hours)};
}

double MicrobeEquations::asleep_cell_hours(const YeastStanding& from, double cells_at_end, double yeast_hours,
                                           double gas_hours) const {
    const double decay = kinetics_.packaged_per_h * yeast_slowed_ * yeast_hours / kinetics_.packaged_waking;
    // The integrals from 0 to 1 of e^(-decay x), times x, times x^2, by parts or by their series.
    const bool is_short = decay < 1e-2;
    const double last = std::exp(-decay);
    const double plain = is_short ? 1.0 - decay * (1.0 / 2.0 - decay / 6.0) : (1.0 - last) / decay;
    const double first = is_short ? 1.0 / 2.0 - decay * (1.0 / 3.0 - decay / 8.0) : (plain - last) / decay;
    const double second =
        is_short ? 1.0 / 3.0 - decay * (1.0 / 4.0 - decay / 10.0) : (2.0 * first - last) / decay;
    // cells along a parabola
    const double slope = from.growth * yeast_hours;
    return gas_hours * from.asleep *
           (from.cells * plain + slope * first + (cells_at_end - from.cells - slope) * second);
}

Souring MicrobeEquations::souring(double bacteria, double acid, double awake) const {
    const double acidity = ph(acid);
    const double born = kinetics_.bacteria_per_h * bacteria_slowed_ *
                        bacteria_ph_rate(kinetics_.culture_bacteria, acidity) * awake * bacteria *
                        (1.0 - bacteria / kinetics_.bacteria_cap);
    const double fading = std::clamp((acidity - last_acid_ph) / fading_ph, 0.0, 1.0);
    return {born, kinetics_.acid_per_bacterium * born +
                      fading * kinetics_.acid_per_bacterium_h * bacteria_slowed_ * bacteria};
}

double MicrobeEquations::gas_made(double new_cells, double cell_hours, double packaged_cell_hours,
                                  double new_acid) const {
    return kinetics_.gas_per_cell * new_cells +
           yeast_slowed_ * (kinetics_.gas_per_cell_h * cell_hours +
                            kinetics_.packaged_gas_per_cell_h * packaged_cell_hours) +
           kinetics_.gas_per_acid * new_acid;
}

double MicrobeEquations::ph(double acid) const {
    return kinetics_.floor_ph + (kinetics_.flour_ph - kinetics_.floor_ph) * std::exp(-acid / buffer_);
}

double MicrobeEquations::acid_at(double ph) const {
    return -buffer_ * std::log((ph - kinetics_.floor_ph) / (kinetics_.flour_ph - kinetics_.floor_ph));
}

double MicrobeEquations::rise_of_bubbles(double free_gas, double litres_per_mmol) const {
    const double potential = kinetics_.retention * std::max(0.0, free_gas) * litres_per_mmol * kg_per_litre_;
    if (potential <= tight_rise) {
        return potential;
    }
    return tight_rise + leaking_rise * (1.0 - std::exp((tight_rise - potential) / leaking_rise));
}

} // namespace leavenwright
