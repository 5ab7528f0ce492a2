#include "ferment/simulate.hpp"

// The stepper's own header leaves out what it needs; the first two come before it.
// clang-format off
#include <boost/numeric/odeint/util/unwrap_reference.hpp>
#include <boost/numeric/odeint/util/bind.hpp>
#include <boost/numeric/odeint/stepper/runge_kutta_dopri5.hpp>
#include <boost/numeric/odeint/stepper/controlled_runge_kutta.hpp>
#include <boost/numeric/odeint/stepper/dense_output_runge_kutta.hpp>
#include <boost/numeric/odeint/stepper/generation.hpp>
// clang-format on

#include <algorithm>
#include <cmath>

namespace leavenwright {
namespace {

namespace odeint = boost::numeric::odeint;
constexpr std::size_t states = std::tuple_size_v<MicrobeState>;
constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double rounding_h = 1e-12; // of times that are sums

template <std::size_t Zones>
class Simulator {
public:
    Simulator(const Kinetics& kinetics, const DoughMix& mix, const SimulationRequest& request)
        : equations_(kinetics, mix), handling_(kinetics.handling), request_(request) {
        const MicrobeState start = equations_.start();
        for (std::size_t zone = 0; zone < Zones; ++zone) {
            std::copy(start.begin(), start.end(),
                      state_.begin() + static_cast<std::ptrdiff_t>(zone * states));
        }
        result_.samples.reserve(request.sample_hours.size());
    }

    Simulation run() {
        for (const SimulatedStage& stage : request_.stages) {
            begin(stage);
            const double end = std::isfinite(now_) ? run_to_end() : infinite;
            const SimulatedPoint last = point(state_, now_);
            result_.ends.push_back({end, last.rise, last.ph});
            if (!std::isfinite(end)) {
                result_.ends.resize(request_.stages.size(), {infinite, 0.0, 0.0});
                break;
            }
        }
        sample_the_rest();
        return std::move(result_);
    }

private:
    using State = std::array<double, states * Zones>;

    void begin(const SimulatedStage& stage) {
        stage_ = &stage;
        stage_begins_ = now_;
        history_begins_ = stage.history_begins_h.value_or(now_);
        const auto warmth = zone_temperatures(now_);
        for (std::size_t zone = 0; zone < Zones; ++zone) {
            double& gas = state_[zone * states + gas_state];
            const double limit = equations_.dissolved_limit(warmth[zone]);
            gas = gas > limit ? limit + (gas - limit) * std::pow(stage.gas_kept, handling_) : gas;
        }
    }

    // A stage of pieces so small that they have one temperature has it in every zone.
    std::array<double, Zones> zone_temperatures(double time) const {
        std::array<double, Zones> warmth{};
        if (stage_->history->zone_count() == Zones) {
            stage_->history->temperatures_c(time - history_begins_, warmth);
        } else {
            warmth.fill(stage_->history->mean_c(time - history_begins_));
        }
        return warmth;
    }

    void operate(const State& state, State& change, double time) const {
        const auto warmth = zone_temperatures(time);
        for (std::size_t zone = 0; zone < Zones; ++zone) {
            equations_.derivative(state.data() + zone * states, change.data() + zone * states, warmth[zone]);
        }
    }

    SimulatedPoint point(const State& state, double time) const {
        const auto warmth = zone_temperatures(time);
        SimulatedPoint sum{};
        double held = 0.0;
        double dissolved = 0.0;
        for (std::size_t zone = 0; zone < Zones; ++zone) {
            const double* of_zone = state.data() + zone * states;
            const double gas = of_zone[gas_state];
            const double limit = equations_.dissolved_limit(warmth[zone]);
            sum.rise += equations_.rise_of_bubbles(gas - limit, warmth[zone]) / Zones;
            sum.acid += of_zone[acid_state] / Zones;
            held += gas;
            dissolved += std::min(gas, limit);
        }
        sum.gas = held / Zones;
        sum.ph = equations_.ph(sum.acid);
        sum.gas_dissolved = held > 0.0 ? dissolved / held : 1.0;
        return sum;
    }

    bool is_ready(const State& state, double time) const {
        const SimulatedPoint at = point(state, time);
        return (!stage_->rise_target || at.rise >= *stage_->rise_target) &&
               (!stage_->ph_target || at.ph <= *stage_->ph_target);
    }

    // The next time up to `end` at which the slopes of the temperature jump.
    double next_break(double end) const {
        for (const double hour : stage_->history->breaks_hours()) {
            if (history_begins_ + hour > now_ + 1e-9) {
                return std::min(end, history_begins_ + hour);
            }
        }
        return end;
    }

    double run_to_end() {
        const bool by_clock = stage_->lasts_h.has_value();
        const double end = stage_begins_ + stage_->lasts_h.value_or(request_.longest_h);
        if (!by_clock && is_ready(state_, now_)) {
            return 0.0;
        }
        while (now_ < end - rounding_h) {
            if (run_piece(next_break(end), !by_clock)) {
                return now_ - stage_begins_;
            }
        }
        return by_clock ? end - stage_begins_ : infinite;
    }

    // Integrates to `end`, or to readiness where it is looked for; true where it was found.
    bool run_piece(double end, bool looks_for_ready) {
        auto stepper = odeint::make_dense_output(request_.relative_error * 1e-3, request_.relative_error,
                                                 odeint::runge_kutta_dopri5<State>());
        const auto system = [this](const State& state, State& change, double time) {
            operate(state, change, time);
        };
        stepper.initialize(state_, now_, std::min(0.25, end - now_));
        while (true) {
            // Not a step beyond: it would straddle the jump of the slopes, and be cut many times.
            if (stepper.current_time() + stepper.current_time_step() > end) {
                const State last = stepper.current_state();
                stepper.initialize(last, stepper.current_time(), end - stepper.current_time());
            }
            const auto [from, step_end] = stepper.do_step(system);
            const double to = std::min(step_end, end);
            State at;
            stepper.calc_state(to, at);
            if (looks_for_ready && is_ready(at, to)) {
                const double ready = find_ready(stepper, from, to);
                take_samples(stepper, ready);
                stepper.calc_state(ready, state_);
                now_ = ready;
                return true;
            }
            take_samples(stepper, to);
            if (step_end >= end - rounding_h) {
                state_ = at;
                now_ = end;
                return false;
            }
        }
    }

    // Bisection on the dense output, to a second.
    template <class Stepper>
    double find_ready(const Stepper& stepper, double low, double high) const {
        constexpr double a_second = 1.0 / 3600.0;
        while (high - low > a_second) {
            const double middle = (low + high) / 2.0;
            State at;
            stepper.calc_state(middle, at);
            (is_ready(at, middle) ? high : low) = middle;
        }
        return high;
    }

    template <class Stepper>
    void take_samples(const Stepper& stepper, double up_to) {
        while (result_.samples.size() < request_.sample_hours.size() &&
               request_.sample_hours[result_.samples.size()] <= up_to) {
            const double hour = request_.sample_hours[result_.samples.size()];
            State at;
            stepper.calc_state(hour, at);
            result_.samples.push_back(point(at, hour));
        }
    }

    void sample_the_rest() {
        while (!request_.sample_hours.empty() && result_.samples.size() < request_.sample_hours.size()) {
            run_piece(next_break(request_.sample_hours.back()), false);
        }
    }

    MicrobeEquations equations_;
    double handling_;
    const SimulationRequest& request_;
    Simulation result_;
    State state_{};
    const SimulatedStage* stage_ = nullptr;
    double now_ = 0.0;
    double stage_begins_ = 0.0;
    double history_begins_ = 0.0;
};

} // namespace

Simulation simulate(const Kinetics& kinetics, const DoughMix& mix, const SimulationRequest& request) {
    constexpr std::size_t zones = 5;
    const bool has_zones =
        std::any_of(request.stages.begin(), request.stages.end(),
                    [](const SimulatedStage& stage) { return stage.history->zone_count() == zones; });
    return has_zones ? Simulator<zones>(kinetics, mix, request).run()
                     : Simulator<1>(kinetics, mix, request).run();
}

} // namespace leavenwright
