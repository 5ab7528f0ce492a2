// The fermentation engine: simulate() against a bare odeint loop over the same equations and against CVODE
// at equal accuracy; windows of ensembles; the whole command.
//
//     bench_fermentation COMMAND FORMULA
#include "support/fermentation.hpp"
#include "ferment/dough_heat.hpp"
#include "ferment/ensemble.hpp"
#include "ferment/simulate.hpp"
#include "process_runs.hpp"
#include "support/cvode.hpp"
#include "support/dough_figures.hpp"

// The stepper's own header leaves out what it needs; the first two come before it.
// clang-format off
#include <boost/numeric/odeint/util/unwrap_reference.hpp>
#include <boost/numeric/odeint/util/bind.hpp>
#include <boost/numeric/odeint/stepper/runge_kutta_dopri5.hpp>
#include <boost/numeric/odeint/stepper/controlled_runge_kutta.hpp>
#include <boost/numeric/odeint/stepper/dense_output_runge_kutta.hpp>
#include <boost/numeric/odeint/stepper/generation.hpp>
// clang-format on
#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <ctime>
#include <functional>
#include <string>
#include <vector>

namespace {

using namespace leavenwright;
using namespace leavenwright::testing;

double seconds_of(clockid_t clock) {
    timespec now{};
    clock_gettime(clock, &now);
    return static_cast<double>(now.tv_sec) + static_cast<double>(now.tv_nsec) * 1e-9;
}

// Microseconds of processor time of one call of each, in turns: the median of many rounds.
std::vector<double> microseconds_in_turns(const std::vector<std::function<void()>>& contestants) {
    constexpr int rounds = 41;
    constexpr int calls = 50;
    std::vector<std::vector<double>> times(contestants.size());
    for (int round = 0; round < rounds; ++round) {
        for (std::size_t i = 0; i < contestants.size(); ++i) {
            const double begin = seconds_of(CLOCK_PROCESS_CPUTIME_ID);
            for (int call = 0; call < calls; ++call) {
                contestants[i]();
            }
            times[i].push_back((seconds_of(CLOCK_PROCESS_CPUTIME_ID) - begin) / calls * 1e6);
        }
    }
    std::vector<double> medians;
    for (auto& of_one : times) {
        medians.push_back(median(std::move(of_one)));
    }
    return medians;
}

constexpr double hour = 3600.0;

DoughHeat ball() {
    return {.mass = grams(850.0),
            .form = DoughForm::ball(),
            .composition = plain_dough(0.65),
            .gas = Fraction(0.3),
            .start = Temperature::celsius(25.0),
            .surroundings = {.air = Surroundings::Air::still, .covered = true},
            .environment = TemperatureProfile({{seconds(3.0 * hour), Temperature::celsius(24.0)},
                                               {seconds(14.0 * hour), Temperature::celsius(4.0)}},
                                              Temperature::celsius(27.0)),
            .until = seconds(24.0 * hour),
            .heat_of_fermentation = {}};
}

// A day with a night in the refrigerator; one zone.
struct Day {
    TemperatureHistory history = compute_temperature_history(ball(), HeatNumerics{.shells = 20, .zones = 1});
    DoughMix mix = mix_of({.flour = 90.0, .water = 65.0, .levain = 20.0, .salt = 2.0});
    MicrobeEquations equations{Kinetics{}, mix};
};

SimulationRequest request_of(const Day& day, double step_h) {
    SimulationRequest request;
    request.stages.push_back({.history = std::make_shared<RateSums>(day.history, step_h),
                              .history_begins_h = 0.0,
                              .lasts_h = 24.0,
                              .rise_target = {},
                              .ph_target = {}});
    return request;
}

// What somebody would write who knows the equations and where the places change.
MicrobeState bare_odeint(const Day& day, double relative_error) {
    namespace odeint = boost::numeric::odeint;
    MicrobeState state = day.equations.start();
    const auto system = [&](const MicrobeState& at, MicrobeState& change, double time) {
        day.equations.derivative(at.data(), change.data(), day.history.mean_c(time));
    };
    double now = 0.0;
    for (const double end : {3.0, 17.0, 24.0}) {
        auto stepper = odeint::make_dense_output(relative_error * 1e-3, relative_error,
                                                 odeint::runge_kutta_dopri5<MicrobeState>());
        stepper.initialize(state, now, 0.25);
        while (stepper.current_time() < end) {
            stepper.do_step(system);
        }
        stepper.calc_state(end, state);
        now = end;
    }
    return state;
}

// What simulate() tells of the state at the end: acid and gas.
MicrobeState simulated(const Day& day, SimulationRequest request) {
    request.sample_hours = {24.0};
    const SimulatedPoint last = simulate(Kinetics{}, day.mix, request).samples.front();
    MicrobeState state{};
    state[acid_state] = last.acid;
    state[gas_state] = last.gas;
    return state;
}

double error_of(const MicrobeState& state, const MicrobeState& exact) {
    double worst = 0.0;
    for (const MicrobeIndex index : {acid_state, gas_state}) {
        worst = std::max(worst, std::abs(state[index] / exact[index] - 1.0));
    }
    return worst;
}

// The loosest tolerance with which another solver is at least as good.
template <class Solve>
double loosest_as_good(const Solve& solve, double error, const MicrobeState& exact) {
    double tolerance = 1e-3;
    while (error_of(solve(tolerance), exact) > error && tolerance > 1e-12) {
        tolerance /= 2.0;
    }
    return tolerance;
}

void bench_simulate() {
    const Day day;
    const std::array end{24.0};
    const auto cvode = [&](double tolerance) {
        return solve_by_cvode(day.equations, day.history, end, tolerance).front();
    };
    const auto odeint = [&](double tolerance) { return bare_odeint(day, tolerance); };
    const MicrobeState exact = cvode(1e-12);
    fmt::print("24 h with a retard, one zone: microseconds, ratio to simulate(), error at the end\n");
    double sum = 0.0; // so that nothing is left out
    for (const double step_h : {1.0, RateSums::usual_step_h, 0.25}) {
        const SimulationRequest request = request_of(day, step_h);
        const double own_error = error_of(simulated(day, request), exact);
        const double of_cvode = loosest_as_good(cvode, own_error, exact);
        const double of_odeint = loosest_as_good(odeint, own_error, exact);
        const std::vector<double> times = microseconds_in_turns({
            [&] { sum += simulate(Kinetics{}, day.mix, request).ends.front().rise; },
            [&] { sum += odeint(of_odeint)[gas_state]; },
            [&] { sum += cvode(of_cvode)[gas_state]; },
        });
        fmt::print("  steps of {} h at the best temperature{}\n", step_h,
                   step_h == RateSums::usual_step_h ? ", as everywhere" : "");
        fmt::print("    simulate()    {:7.1f}  ratio {:5.2f}  {:.1e}\n", times[0], 1.0, own_error);
        fmt::print("    bare odeint, {:.0e} {:7.1f}  ratio {:5.2f}  {:.1e}\n", of_odeint, times[1],
                   times[1] / times[0], error_of(odeint(of_odeint), exact));
        fmt::print("    CVODE, {:.0e} {:7.1f}  ratio {:5.2f}  {:.1e}\n", of_cvode, times[2],
                   times[2] / times[0], error_of(cvode(of_cvode), exact));
        fmt::print("    simulate() is {:.2f} of bare odeint, 1/{:.0f} of CVODE\n", times[0] / times[1],
                   times[2] / times[0]);
    }
    const std::vector<double> times = microseconds_in_turns(
        {[&] {
             sum += compute_temperature_history(ball(), HeatNumerics{.shells = 20, .zones = 1}).mean_c(1.0);
         },
         [&] { sum += RateSums(day.history).step_hours().back(); }});
    fmt::print("  once for all members: the heat {:.1f}, the sums of the rates {:.1f}{}\n", times[0],
               times[1], std::isfinite(sum) ? "" : "?");
}

DoughPlan plan_of_loaf(Mass mass) {
    DoughPlan plan;
    plan.mix = mix_of({.flour = 90.0, .water = 65.0, .levain = 20.0, .salt = 2.0});
    plan.composition = plain_dough(0.65);
    const auto add = [&](const char* name, double celsius) -> PlannedStage& {
        PlannedStage stage;
        stage.name = name;
        stage.surroundings = Temperature::celsius(celsius);
        stage.mass = mass;
        stage.form = DoughForm::tub(0.6);
        stage.place.covered = true;
        plan.stages.push_back(std::move(stage));
        return plan.stages.back();
    };
    add("bulk", 24.0).rise = Fraction(0.4);
    PlannedStage& divide = add("divide", 24.0);
    divide.lasts = seconds(hour / 3.0);
    divide.gas_kept = Fraction(0.5);
    add("retard", 4.0).lasts = seconds(12.0 * hour);
    add("proof", 24.0).rise = Fraction(1.0);
    return plan;
}

void bench_windows() {
    fmt::print("windows of bulk, divide, retard, proof: seconds, wall clock and processor\n");
    for (const bool has_zones : {false, true}) {
        const DoughPlan plan = plan_of_loaf(has_zones ? kilograms(1.7) : grams(20.0));
        for (const int members : {1000, 10000}) {
            for (const unsigned threads : {1U, 2U}) {
                std::vector<double> walls;
                std::vector<double> processor;
                for (int round = 0; round < 5; ++round) {
                    const double wall = seconds_of(CLOCK_MONOTONIC);
                    const double used = seconds_of(CLOCK_PROCESS_CPUTIME_ID);
                    compute_windows(plan, {.members = members, .threads = threads});
                    walls.push_back(seconds_of(CLOCK_MONOTONIC) - wall);
                    processor.push_back(seconds_of(CLOCK_PROCESS_CPUTIME_ID) - used);
                }
                fmt::print("  {}, {:>5} members, {} thread{}: {:.3f} {:.3f}\n",
                           has_zones ? "5 zones" : "1 zone ", members, threads, threads > 1 ? "s" : " ",
                           *std::min_element(walls.begin(), walls.end()), median(processor));
            }
        }
    }
}

// In turns, so that the machine's moods fall on all alike.
void bench_command(const std::string& command, const std::string& formula) {
    fmt::print("whole process, 1,000 members, zones: seconds of processor time, and against `proof`\n");
    const std::vector<std::vector<std::string>> contestants{
        {command, "proof", formula},
        {command, "proof", formula, "--as-written"},
        {command, "card", formula},
        {command, "card", formula, "--format", "html"},
    };
    std::vector<std::vector<double>> seconds(contestants.size());
    for (int round = 0; round < 15; ++round) {
        for (std::size_t i = 0; i < contestants.size(); ++i) {
            seconds[i].push_back(run_once(contestants[i]).milliseconds / 1e3);
        }
    }
    const std::vector<std::string> names{"proof, and as written", "as written alone", "card text",
                                         "card html"};
    for (std::size_t i = 0; i < names.size(); ++i) {
        fmt::print("  {:<22} {:.3f}  ratio {:.2f}\n", names[i], median(seconds[i]),
                   median(seconds[i]) / median(seconds[0]));
    }
}

} // namespace

int main(int count, char** words) {
    if (count != 3) {
        return 2;
    }
    bench_simulate();
    bench_windows();
    bench_command(words[1], words[2]);
    return 0;
}
