#include "ferment/simulate.hpp"

#include <boost/math/tools/toms748_solve.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>

namespace leavenwright {
namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();
constexpr double rounding_h = 1e-9; // of times that are sums of many hours

// The cubic through two values with their slopes, over a span taken as 1.
struct Cubic {
    double from;
    double to;
    double from_slope;
    double to_slope;

    double at(double share) const {
        const double rest = 1.0 - share;
        return from + share * share * (3.0 - 2.0 * share) * (to - from) +
               share * rest * (rest * from_slope - share * to_slope);
    }
    double integral_to(double share) const {
        const double square = share * share;
        const double cube = square * share;
        const double fourth = square * square;
        return from * share + (to - from) * (cube - fourth / 2.0) +
               from_slope * (square / 2.0 - 2.0 / 3.0 * cube + fourth / 4.0) +
               to_slope * (fourth / 4.0 - cube / 3.0);
    }
    // Where an ascending one that is nearly straight has a value between its ends.
    double share_at(double value) const {
        double share = (value - from) / (to - from);
        for (int i = 0; i < 4; ++i) {
            share = std::clamp(share + (value - at(share)) / (to - from), 0.0, 1.0);
        }
        return share;
    }
};

double quotient_or_zero(double part, double whole) {
    return whole > 0.0 ? part / whole : 0.0;
}

struct Contents {
    double bacteria;
    double acid;
    double gas;
};

// One zone of the dough at one time.
struct ZoneState {
    RatePoint warmth;
    Contents contents;
    RateValues hours; // at the best temperature, since the mixing
    YeastStanding culture;
    YeastStanding packaged;
    Souring souring;

    double pace(RateIndex of, RateIndex against) const {
        return quotient_or_zero(warmth.rates[of], warmth.rates[against]);
    }
};

RateIndex culture_growth(const MicrobeEquations& equations) {
    return equations.culture_yeast() == Yeast::humilis ? humilis_growth : cerevisiae_growth;
}

RateIndex culture_gas(const MicrobeEquations& equations) {
    return equations.culture_yeast() == Yeast::humilis ? humilis_growth : packaged_gas;
}

// The yeasts follow from their hours.
void stand_yeasts(const MicrobeEquations& equations, ZoneState& zone) {
    if (equations.has_levain()) {
        zone.culture = equations.culture_after(zone.hours[culture_growth(equations)]);
    }
    if (equations.has_packaged()) {
        zone.packaged = equations.packaged_after(zone.hours[cerevisiae_growth]);
    }
}

// A zone between two moments. The yeasts depend on their hours alone; the lactobacilli, on their own
// hours and on how awake the yeast's lag leaves them; the gas of standing cells is their
// integral over the hours of gas.
class ZoneStep {
public:
    ZoneStep(const MicrobeEquations& equations, const ZoneState& from) : equations_(equations), from_(from) {}

    ZoneState to(const RatePoint& end) const {
        ZoneState state = moved_to(end);
        stand_yeasts(equations_, state);
        if (equations_.has_levain()) {
            sour(state);
        }
        const Gains all{state.culture.cells - from_.culture.cells, state.contents.acid - from_.contents.acid};
        state.contents.gas += gas_until(end, state, all);
        return state;
    }

    // At a moment before the end.
    Contents within(const ZoneState& end, const RatePoint& moment) const {
        Contents contents = from_.contents;
        Gains gains{0.0, 0.0};
        if (equations_.has_levain()) {
            const double share = share_at(moment, end, bacteria_growth);
            contents.bacteria = along(end, &Contents::bacteria, &Souring::bacteria).at(share);
            contents.acid = along(end, &Contents::acid, &Souring::acid).at(share);
            const Cubic cells =
                cells_over(culture_growth(equations_), &ZoneState::culture, culture_growth(equations_), end);
            gains = {cells.at(share_at(moment, end, culture_growth(equations_))) - cells.from,
                     contents.acid - from_.contents.acid};
        }
        contents.gas += gas_until(moment, end, gains);
        return contents;
    }

    ZoneState moved_to(const RatePoint& moment) const {
        ZoneState state = from_;
        state.warmth = moment;
        for (std::size_t i = 0; i < state.hours.size(); ++i) {
            state.hours[i] += moment.sums[i] - from_.warmth.sums[i];
        }
        return state;
    }

private:
    struct Gains {
        double cells;
        double acid;
    };

    double hours_to(const RatePoint& moment, RateIndex of) const {
        return moment.sums[of] - from_.warmth.sums[of];
    }
    double share_at(const RatePoint& moment, const ZoneState& end, RateIndex of) const {
        return quotient_or_zero(hours_to(moment, of), hours_to(end.warmth, of));
    }

    // What the lactobacilli change, over their hours.
    Cubic along(const ZoneState& end, double Contents::*what, double Souring::*change) const {
        const double span = hours_to(end.warmth, bacteria_growth);
        return {from_.contents.*what, end.contents.*what, span * from_.souring.*change,
                span * end.souring.*change};
    }

    // Bacteria and acid at the end. The slopes of souring() jump at its corners: once one is crossed, the
    // step is run again in parts that end there.
    void sour(ZoneState& end) const {
        run_souring(end, 0.0, 1.0);
        const Cubic acid = along(end, &Contents::acid, &Souring::acid);
        const auto is_crossed = [&](double corner) { return acid.from < corner && corner < acid.to; };
        const auto& corners = equations_.souring_corners();
        if (std::none_of(corners.begin(), corners.end(), is_crossed)) {
            return;
        }
        end.contents = from_.contents;
        end.souring = from_.souring;
        double begins = 0.0;
        for (const double corner : corners) {
            if (is_crossed(corner)) {
                const double ends = acid.share_at(corner);
                run_souring(end, begins, ends);
                begins = ends;
            }
        }
        run_souring(end, begins, 1.0);
    }

    // Runge and Kutta's fourth order from one share of the step to another.
    void run_souring(ZoneState& state, double begins, double ends) const {
        const double span = hours_to(state.warmth, bacteria_growth) * (ends - begins);
        const double awake = awake_at(state, (begins + ends) / 2.0);
        const double awake_at_end = ends == 1.0 ? state.culture.awake : awake_at(state, ends);
        const auto change_at = [&](const Souring& slope, double ahead, double share_awake) {
            return equations_.souring(state.contents.bacteria + ahead * slope.bacteria,
                                      state.contents.acid + ahead * slope.acid, share_awake);
        };
        const Souring first = state.souring;
        const Souring second = change_at(first, span / 2.0, awake);
        const Souring third = change_at(second, span / 2.0, awake);
        const Souring fourth = change_at(third, span, awake_at_end);
        state.contents.bacteria +=
            span / 6.0 * (first.bacteria + 2.0 * (second.bacteria + third.bacteria) + fourth.bacteria);
        state.contents.acid += span / 6.0 * (first.acid + 2.0 * (second.acid + third.acid) + fourth.acid);
        state.souring = equations_.souring(state.contents.bacteria, state.contents.acid, awake_at_end);
    }

    double awake_at(const ZoneState& end, double share) const {
        const RateIndex yeast = culture_growth(equations_);
        const double span = hours_to(end.warmth, bacteria_growth);
        const Cubic yeast_hours{from_.hours[yeast], end.hours[yeast],
                                span * from_.pace(yeast, bacteria_growth),
                                span * end.pace(yeast, bacteria_growth)};
        // where bacteria have stopped and yeast has not, the slopes mean nothing
        return equations_.culture_awake(
            std::max(yeast_hours.from, std::min(yeast_hours.to, yeast_hours.at(share))));
    }

    Cubic cells_over(RateIndex hours, YeastStanding ZoneState::*yeast, RateIndex growth,
                     const ZoneState& end) const {
        const double span = hours_to(end.warmth, hours);
        return {(from_.*yeast).cells, (end.*yeast).cells,
                span * from_.pace(growth, hours) * (from_.*yeast).growth,
                span * end.pace(growth, hours) * (end.*yeast).growth};
    }

    double gas_until(const RatePoint& moment, const ZoneState& end, const Gains& gains) const {
        const auto cell_hours = [&](YeastStanding ZoneState::*yeast, RateIndex growth, RateIndex gas) {
            return hours_to(end.warmth, gas) *
                   cells_over(gas, yeast, growth, end).integral_to(share_at(moment, end, gas));
        };
        double of_culture = 0.0;
        double of_packaged = 0.0;
        if (equations_.has_levain()) {
            of_culture = cell_hours(&ZoneState::culture, culture_growth(equations_), culture_gas(equations_));
        }
        if (equations_.has_packaged()) {
            const double cells = cells_over(cerevisiae_growth, &ZoneState::packaged, cerevisiae_growth, end)
                                     .at(share_at(moment, end, cerevisiae_growth));
            of_packaged =
                cell_hours(&ZoneState::packaged, cerevisiae_growth, packaged_gas) -
                equations_.asleep_cell_hours(from_.packaged, cells, hours_to(moment, cerevisiae_growth),
                                             hours_to(moment, packaged_gas));
        }
        return equations_.gas_made(gains.cells, of_culture, of_packaged, gains.acid);
    }

    const MicrobeEquations& equations_;
    const ZoneState& from_;
};

template <std::size_t Zones>
class Simulator {
public:
    Simulator(const Kinetics& kinetics, const DoughMix& mix, const SimulationRequest& request)
        : equations_(kinetics, mix), handling_(kinetics.handling), request_(request) {
        const MicrobeState start = equations_.start();
        for (ZoneState& zone : state_) {
            zone = {};
            zone.contents = {start[bacteria_state], start[acid_state], 0.0};
        }
        result_.samples.reserve(request.sample_hours.size());
    }

    Simulation run() {
        for (const SimulatedStage& stage : request_.stages) {
            begin(stage);
            const double end = std::isfinite(now_) ? run_to_end() : infinite;
            const SimulatedPoint last = point(state_);
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
    using State = std::array<ZoneState, Zones>;
    using Warmth = std::array<RatePoint, Zones>;

    void begin(const SimulatedStage& stage) {
        stage_ = &stage;
        stage_begins_ = now_;
        follow_history();
        for (ZoneState& zone : state_) {
            double& gas = zone.contents.gas;
            const double limit = dissolved_limit(zone.warmth);
            gas = gas > limit ? limit + (gas - limit) * std::pow(stage.gas_kept, handling_) : gas;
        }
    }

    // The temperatures of the stage. In a profile its history begins when the middle culture comes to it: a
    // faster one has those of the stage before until then.
    void follow_history() {
        const SimulatedStage* from = stage_;
        while (from != request_.stages.data() && from->history_begins_h.value_or(now_) > now_ + rounding_h) {
            --from;
        }
        history_ = from->history.get();
        history_begins_ = from->history_begins_h.value_or(now_);
        history_ends_ = from == stage_ ? infinite : (from + 1)->history_begins_h.value_or(infinite);
        next_step_ = 0;
        const Warmth warmth = warmth_at(now_);
        for (std::size_t number = 0; number < Zones; ++number) {
            state_[number].warmth = warmth[number];
            stand(state_[number]);
        }
    }

    // Completes what follows from the rest.
    void stand(ZoneState& zone) const {
        stand_yeasts(equations_, zone);
        if (equations_.has_levain()) {
            zone.souring = equations_.souring(zone.contents.bacteria, zone.contents.acid, zone.culture.awake);
        }
    }

    double dissolved_limit(const RatePoint& warmth) const {
        return equations_.water() * warmth.dissolved_limit;
    }

    // A stage of pieces so small that they have one temperature has it in every zone.
    Warmth warmth_at(double time) const {
        Warmth warmth;
        const std::size_t zones = history_->zone_count();
        history_->at(time - history_begins_, std::span(warmth).first(zones));
        std::fill(warmth.begin() + static_cast<std::ptrdiff_t>(zones), warmth.end(), warmth.front());
        return warmth;
    }

    SimulatedPoint point(const Warmth& warmth, const std::array<Contents, Zones>& contents) const {
        SimulatedPoint sum{};
        double held = 0.0;
        double dissolved = 0.0;
        for (std::size_t zone = 0; zone < Zones; ++zone) {
            const double limit = dissolved_limit(warmth[zone]);
            const double gas = contents[zone].gas;
            sum.rise += equations_.rise_of_bubbles(gas - limit, warmth[zone].gas_litres) / Zones;
            sum.acid += contents[zone].acid / Zones;
            held += gas;
            dissolved += std::min(gas, limit);
        }
        sum.gas = held / Zones;
        sum.ph = equations_.ph(sum.acid);
        sum.gas_dissolved = held > 0.0 ? dissolved / held : 1.0;
        return sum;
    }

    SimulatedPoint point(const State& state) const {
        Warmth warmth;
        std::array<Contents, Zones> contents;
        for (std::size_t zone = 0; zone < Zones; ++zone) {
            warmth[zone] = state[zone].warmth;
            contents[zone] = state[zone].contents;
        }
        return point(warmth, contents);
    }

    // At least 0 where the stage may end: the least that its rise and its acid are beyond what ends it.
    double readiness(const SimulatedPoint& at) const {
        double least = infinite;
        if (stage_->ph_target) {
            least = *stage_->ph_target - at.ph;
        }
        return stage_->rise_target ? std::min(least, at.rise - *stage_->rise_target) : least;
    }

    double run_to_end() {
        const bool by_clock = stage_->lasts_h.has_value();
        const double end = stage_begins_ + stage_->lasts_h.value_or(request_.longest_h);
        if (!by_clock && readiness(point(state_)) >= 0.0) {
            return 0.0;
        }
        while (now_ < end - rounding_h) {
            if (run_step(end, !by_clock)) {
                return now_ - stage_begins_;
            }
        }
        return by_clock ? end - stage_begins_ : infinite;
    }

    // The end of the next step: as laid in the history, or to `end`.
    struct StepEnd {
        double time;
        Warmth warmth;
    };
    StepEnd next_step(double end) {
        const std::span<const double> laid = history_->step_hours();
        const double in_history = now_ - history_begins_;
        while (next_step_ < laid.size() && laid[next_step_] <= in_history + rounding_h) {
            ++next_step_;
        }
        const bool is_before = in_history < -rounding_h; // the first temperature holds
        const bool is_laid = !is_before && next_step_ < laid.size();
        const double in_history_end = is_laid ? laid[next_step_] : history_->step_end(in_history);
        const double time = history_begins_ + (is_before ? std::min(0.0, in_history_end) : in_history_end);
        if (!is_laid || time > end) {
            const double ends = std::min(time, end);
            return {ends, warmth_at(ends)};
        }
        StepEnd step{time, {}};
        const std::span<const RatePoint> zones = history_->at_step(next_step_);
        for (std::size_t zone = 0; zone < Zones; ++zone) {
            step.warmth[zone] = zones[zones.size() == Zones ? zone : 0];
        }
        return step;
    }

    // One step, at most to `end`, or to readiness where it is looked for; true where it was found.
    bool run_step(double end, bool looks_for_ready) {
        const StepEnd step = next_step(std::min(end, history_ends_));
        State to;
        for (std::size_t zone = 0; zone < Zones; ++zone) {
            to[zone] = ZoneStep(equations_, state_[zone]).to(step.warmth[zone]);
        }
        const bool is_found = looks_for_ready && readiness(point(to)) >= 0.0;
        const double until = is_found ? find_ready(to, step.time) : step.time;
        take_samples(to, until);
        if (is_found) {
            end_at(to, until);
        } else {
            state_ = to;
        }
        now_ = until;
        if (!is_found && now_ >= history_ends_) {
            follow_history();
        }
        return is_found;
    }

    // The dough at a time within the step to `to`.
    SimulatedPoint point_within(const State& to, double time) const {
        const Warmth warmth = warmth_at(time);
        std::array<Contents, Zones> contents;
        for (std::size_t zone = 0; zone < Zones; ++zone) {
            contents[zone] = ZoneStep(equations_, state_[zone]).within(to[zone], warmth[zone]);
        }
        return point(warmth, contents);
    }

    void end_at(const State& to, double time) {
        const Warmth warmth = warmth_at(time);
        for (std::size_t zone = 0; zone < Zones; ++zone) {
            const ZoneStep step(equations_, state_[zone]);
            ZoneState ended = step.moved_to(warmth[zone]);
            ended.contents = step.within(to[zone], warmth[zone]);
            stand(ended);
            state_[zone] = ended;
        }
    }

    // To a second.
    double find_ready(const State& to, double end) const {
        const auto is_close = [](double low, double high) { return high - low < 1.0 / 3600.0; };
        const auto at_time = [&](double time) { return readiness(point_within(to, time)); };
        std::uintmax_t most_tries = 60;
        return boost::math::tools::toms748_solve(at_time, now_, end, readiness(point(state_)),
                                                 readiness(point(to)), is_close, most_tries)
            .second;
    }

    void take_samples(const State& to, double up_to) {
        while (result_.samples.size() < request_.sample_hours.size() &&
               request_.sample_hours[result_.samples.size()] <= up_to) {
            result_.samples.push_back(point_within(to, request_.sample_hours[result_.samples.size()]));
        }
    }

    void sample_the_rest() {
        while (result_.samples.size() < request_.sample_hours.size()) {
            run_step(request_.sample_hours.back(), false);
        }
    }

    MicrobeEquations equations_;
    double handling_;
    const SimulationRequest& request_;
    Simulation result_;
    State state_;
    const SimulatedStage* stage_ = nullptr;
    const RateSums* history_ = nullptr;
    std::size_t next_step_ = 0;
    double now_ = 0.0;
    double stage_begins_ = 0.0;
    double history_begins_ = 0.0;
    double history_ends_ = infinite; // where that of the next stage begins
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
