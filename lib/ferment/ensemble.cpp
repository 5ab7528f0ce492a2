#include "ferment/ensemble.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <numbers>
#include <thread>

namespace leavenwright {
namespace {

// SplitMix64 (Steele, Lea and Flood 2014): each member has its own sequence, so that members can be
// made in any order.
class MemberRandom {
public:
    MemberRandom(std::uint64_t seed, int number)
        : state_(seed * 0x9E3779B97F4A7C15ULL + static_cast<std::uint64_t>(number) * 0xD1B54A32D192ED03ULL) {}

    double uniform() {
        state_ += 0x9E3779B97F4A7C15ULL;
        std::uint64_t bits = state_;
        bits = (bits ^ (bits >> 30)) * 0xBF58476D1CE4E5B9ULL;
        bits = (bits ^ (bits >> 27)) * 0x94D049BB133111EBULL;
        bits ^= bits >> 31;
        return (static_cast<double>(bits >> 11) + 0.5) * 0x1.0p-53;
    }
    // Box and Muller
    double normal() {
        const double radius = std::sqrt(-2.0 * std::log(uniform()));
        return radius * std::cos(2.0 * std::numbers::pi * uniform());
    }
    double spread(double share) { return std::exp(share * normal()); }

private:
    std::uint64_t state_;
};

// Of cultures whose yeast is K. humilis; the others have S. cerevisiae, which Landis et al. 2021, eLife
// 10:e61644, found in 77 % of five hundred (from memory).
constexpr double humilis_share = 0.2;

constexpr double millimole_heat = 50.0; // J per mmol of CO2: half of the 100 kJ of a mole of glucose

// Simulated stages for the middle member's times, each with its heat.
class StageMaker {
public:
    StageMaker(const DoughPlan& plan, const Kinetics& middle) : plan_(plan), middle_(middle) {
        request_.longest_h = in_hours(plan.longest);
        warmth_ = plan.mixed_at;
    }

    SimulationRequest make() {
        for (const PlannedStage& planned : plan_.stages) {
            add(planned);
        }
        return request_;
    }
    double length() const { return now_; }

private:
    void add(const PlannedStage& planned) {
        request_.stages.push_back({});
        SimulatedStage& stage = request_.stages.back();
        stage.lasts_h = planned.lasts ? std::optional(in_hours(*planned.lasts)) : std::nullopt;
        stage.rise_target = planned.rise ? std::optional(planned.rise->value()) : std::nullopt;
        stage.ph_target = planned.ph;
        stage.gas_kept = planned.gas_kept.value();
        const double begins = std::isfinite(now_) ? now_ : last_finite_;
        if (plan_.profile) {
            stage.history_begins_h = begins;
        }
        // Its own heat, from the gas that it makes without it; then once more with it.
        const double heats_h = std::min(24.0, request_.longest_h);
        stage.history = history(planned, begins, hours(heats_h), {});
        stage.history = history(planned, begins, plan_.longest, heat_of(begins, heats_h));
        const Simulation run = simulate(middle_, plan_.mix, request_);
        const double took = run.ends.back().hours;
        now_ = begins + took;
        if (std::isfinite(took)) {
            last_finite_ = now_;
            warmth_ = Temperature::celsius(stage.history->temperatures().mean_c(took));
        }
    }

    std::shared_ptr<const RateSums> history(const PlannedStage& planned, double begins, Duration until,
                                            std::function<double(double)> heat) const {
        DoughHeat dough{.mass = planned.mass,
                        .form = planned.form,
                        .composition = plan_.composition,
                        .gas = Fraction(0.3), // half way from the mixed dough to one half as big again
                        .start = warmth_,
                        .surroundings = planned.place,
                        .environment = plan_.profile ? rest_of_profile(begins)
                                                     : TemperatureProfile(planned.surroundings),
                        .until = until,
                        .heat_of_fermentation = std::move(heat)};
        return std::make_shared<RateSums>(compute_temperature_history(dough));
    }

    TemperatureProfile rest_of_profile(double begins) const {
        std::vector<TemperatureProfile::Leg> rest;
        double leg_begins = 0.0;
        for (const TemperatureProfile::Leg& leg : plan_.profile->legs()) {
            const double leg_ends = leg_begins + in_hours(leg.time);
            if (leg_ends > begins + 1e-6) {
                rest.push_back({hours(leg_ends - std::max(leg_begins, begins)), leg.at});
            }
            leg_begins = leg_ends;
        }
        const Temperature last = plan_.profile->held().value_or(plan_.profile->at(plan_.profile->length()));
        return rest.empty() ? TemperatureProfile(last) : TemperatureProfile(std::move(rest), last);
    }

    std::function<double(double)> heat_of(double begins, double length) {
        constexpr double step = 0.5;
        constexpr double moment = 1e-3; // behind the hands that press gas out as the stage begins
        request_.sample_hours.clear();
        for (double hour = 0.0; hour <= length; hour += step) {
            request_.sample_hours.push_back(begins + std::max(hour, moment));
        }
        // The stage is run on past its end, so that the heat does not depend on where that is.
        SimulatedStage& stage = request_.stages.back();
        const SimulatedStage kept = stage;
        stage.lasts_h = length;
        stage.rise_target.reset();
        const Simulation run = simulate(middle_, plan_.mix, request_);
        stage = kept;
        request_.sample_hours.clear();
        std::vector<double> watts;
        for (std::size_t i = 1; i < run.samples.size(); ++i) {
            watts.push_back(std::max(0.0, run.samples[i].gas - run.samples[i - 1].gas) * millimole_heat /
                            (step * 3600.0));
        }
        return [watts = std::move(watts)](double hour) {
            const auto at = static_cast<std::size_t>(std::max(0.0, hour) / step);
            return watts.empty() ? 0.0 : watts[std::min(at, watts.size() - 1)];
        };
    }

    const DoughPlan& plan_;
    const Kinetics& middle_;
    SimulationRequest request_;
    Temperature warmth_ = Temperature::celsius(0.0);
    double now_ = 0.0;
    double last_finite_ = 0.0;
};

Kinetics middle_kinetics(const Ensemble& ensemble) {
    Kinetics middle;
    middle.culture_yeast = Yeast::cerevisiae; // which most have
    middle.yeast_per_h *= ensemble.vigour;
    middle.bacteria_per_h *= ensemble.vigour;
    return middle;
}

// Calls `work` with each number below `count`. The result does not depend on the number of threads as long as
// no call reads what another writes.
template <class Work>
void for_each_number(std::size_t count, unsigned wanted_threads, const Work& work) {
    const unsigned threads = std::max(1U, wanted_threads);
    const auto every = [&](unsigned first) {
        for (std::size_t number = first; number < count; number += threads) {
            work(number);
        }
    };
    std::vector<std::thread> helpers;
    for (unsigned first = 1; first < threads; ++first) {
        helpers.emplace_back(every, first);
    }
    every(0);
    for (std::thread& helper : helpers) {
        helper.join();
    }
}

std::vector<Simulation> run_members(const DoughPlan& plan, const Ensemble& ensemble,
                                    const SimulationRequest& request) {
    std::vector<Simulation> runs(static_cast<std::size_t>(ensemble.members));
    for_each_number(runs.size(), ensemble.threads, [&](std::size_t number) {
        runs[number] = simulate(member_kinetics(ensemble, static_cast<int>(number)), plan.mix, request);
    });
    return runs;
}

// The share of the values that lies below; the value next to it, without interpolation, so that a
// time that is never reached stays so.
double quantile(std::vector<double>& values, double share) {
    const auto at = static_cast<std::ptrdiff_t>(share * static_cast<double>(values.size() - 1) + 0.5);
    std::nth_element(values.begin(), values.begin() + at, values.end());
    return values[static_cast<std::size_t>(at)];
}

template <class Pick>
std::vector<double> values_of(const std::vector<Simulation>& runs, Pick pick) {
    std::vector<double> values;
    values.reserve(runs.size());
    for (const Simulation& run : runs) {
        values.push_back(pick(run));
    }
    return values;
}

struct Quantiles {
    double low;
    double middle;
    double high;
};

Quantiles quantiles_of(std::vector<double> values) {
    return {quantile(values, 0.1), quantile(values, 0.5), quantile(values, 0.9)};
}

template <class Pick>
Window window_of(const std::vector<Simulation>& runs, Pick pick) {
    const Quantiles ends = quantiles_of(values_of(runs, pick));
    return {hours(ends.low), hours(ends.middle), hours(ends.high)};
}

StageWindow stage_window(const DoughPlan& plan, const SimulationRequest& request,
                         const std::vector<Simulation>& runs, std::size_t number) {
    const PlannedStage& planned = plan.stages[number];
    const SimulatedStage& stage = request.stages[number];
    StageWindow window;
    window.stage = planned.name;
    window.step = planned.step;
    window.in_stage = window_of(runs, [&](const Simulation& run) { return run.ends[number].hours; });
    window.after_mixing = window_of(runs, [&](const Simulation& run) {
        double sum = 0.0;
        for (std::size_t i = 0; i <= number; ++i) {
            sum += run.ends[i].hours;
        }
        return sum;
    });
    const Quantiles rises =
        quantiles_of(values_of(runs, [&](const Simulation& run) { return run.ends[number].rise; }));
    window.rise_at_end = {Fraction(rises.low), Fraction(rises.middle), Fraction(rises.high)};
    window.by_clock = planned.lasts.has_value();
    window.rise = planned.rise;
    const double likely = in_hours(window.in_stage.likely);
    const double likely_end = in_hours(window.after_mixing.likely);
    window.surroundings = plan.profile && std::isfinite(likely_end) ? plan.profile->at(hours(likely_end))
                                                                    : planned.surroundings;
    const double asked = std::isfinite(likely) ? likely : request.longest_h;
    window.dough = Temperature::celsius(stage.history->temperatures().mean_c(asked));
    window.written = planned.written;
    window.signs = planned.signs;
    window.past = planned.past;
    return window;
}

// Where the likely dough stands at a time after mixing.
struct Standing {
    Temperature dough;
    Temperature surroundings;
};

Standing standing_at(const DoughPlan& plan, const SimulationRequest& request,
                     const std::vector<StageWindow>& stages, double hour) {
    std::size_t number = 0;
    double begins = 0.0;
    while (number + 1 < stages.size() && in_hours(stages[number].after_mixing.likely) <= hour) {
        begins = in_hours(stages[number].after_mixing.likely);
        ++number;
    }
    const SimulatedStage& stage = request.stages[number];
    const double in_history = hour - stage.history_begins_h.value_or(begins);
    return {Temperature::celsius(stage.history->temperatures().mean_c(in_history)),
            plan.profile ? plan.profile->at(hours(hour)) : plan.stages[number].surroundings};
}

std::vector<double> sample_hours(double length) {
    constexpr int points = 96;
    std::vector<double> hours_to_sample;
    for (int i = 0; i <= points; ++i) {
        hours_to_sample.push_back(length * i / points);
    }
    return hours_to_sample;
}

CurvePoint curve_point(const DoughPlan& plan, const SimulationRequest& request,
                       const std::vector<StageWindow>& stages, const std::vector<Simulation>& runs,
                       std::size_t number) {
    std::vector<double> rises;
    std::vector<double> phs;
    std::vector<double> acids;
    std::vector<double> dissolved;
    for (auto* values : {&rises, &phs, &acids, &dissolved}) {
        values->reserve(runs.size());
    }
    for (const Simulation& run : runs) { // once: the runs of a large ensemble do not fit a cache
        const SimulatedPoint& at = run.samples[number];
        rises.push_back(at.rise);
        phs.push_back(at.ph);
        acids.push_back(at.acid);
        dissolved.push_back(at.gas_dissolved);
    }
    const double hour = request.sample_hours[number];
    const Quantiles rise = quantiles_of(std::move(rises));
    const Standing standing = standing_at(plan, request, stages, hour);
    return {.time = hours(hour),
            .rise_low = Fraction(rise.low),
            .rise_likely = Fraction(rise.middle),
            .rise_high = Fraction(rise.high),
            .ph = quantile(phs, 0.5),
            .acid_mmol_per_kg = quantile(acids, 0.5),
            .gas_dissolved = Fraction(quantile(dissolved, 0.5)),
            .surroundings = standing.surroundings,
            .dough = standing.dough};
}

} // namespace

Kinetics member_kinetics(const Ensemble& ensemble, int number) {
    MemberRandom random(ensemble.seed, number);
    Kinetics member;
    member.culture_yeast = random.uniform() < humilis_share ? Yeast::humilis : Yeast::cerevisiae;
    member.culture_bacteria =
        random.uniform() < 0.5 ? Lactobacillus::sanfranciscensis : Lactobacillus::acid_tolerant;
    const double vigour = ensemble.vigour * random.spread(0.20);
    member.yeast_per_h *= vigour * random.spread(0.10);
    member.bacteria_per_h *= vigour * random.spread(0.10);
    const double gas = random.spread(0.20);
    member.gas_per_cell *= gas;
    member.gas_per_cell_h *= gas;
    member.ripe_yeast *= random.spread(0.25);
    member.ripe_bacteria *= random.spread(0.25);
    member.ripe_acid *= random.spread(0.12);
    member.lag = 0.3 * std::exp(0.6 * random.normal());
    member.acid_buffer *= random.spread(0.10);
    member.whole_acid_buffer *= random.spread(0.10);
    member.packaged_gas_per_cell_h *= random.spread(0.26);
    member.packaged_per_h *= random.spread(0.15);
    member.handling = random.spread(0.40);
    member.retention = std::min(0.97, member.retention * random.spread(0.05));
    return member;
}

Windows compute_windows(const DoughPlan& plan, const Ensemble& ensemble) {
    assert(!plan.stages.empty() && ensemble.members >= least_members);
    const Kinetics middle = middle_kinetics(ensemble);
    StageMaker maker(plan, middle);
    SimulationRequest request = maker.make();
    const double length = std::isfinite(maker.length()) ? maker.length() : request.longest_h;
    request.sample_hours = sample_hours(std::max(1.0, length * 4.0 / 3.0));
    const std::vector<Simulation> runs = run_members(plan, ensemble, request);

    Windows windows{.stages = {},
                    .curve = {},
                    .members = ensemble.members,
                    .seed = ensemble.seed,
                    .settings = {},
                    .cautions = {}};
    for (std::size_t i = 0; i < plan.stages.size(); ++i) {
        windows.stages.push_back(stage_window(plan, request, runs, i));
    }
    windows.curve.resize(request.sample_hours.size());
    for_each_number(windows.curve.size(), ensemble.threads, [&](std::size_t number) {
        windows.curve[number] = curve_point(plan, request, windows.stages, runs, number);
    });
    return windows;
}

} // namespace leavenwright
