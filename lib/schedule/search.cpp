#include "schedule/search.hpp"

#include "quantity/show.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace leavenwright {
namespace {

// The likely whole time with one setting changed; infinite where the dough is never ready.
class Trial {
public:
    Trial(const Formula& formula, const PlanRequest& request, const SearchRequest& wish,
          const Ensemble& ensemble, Diagnostics& diagnostics)
        : formula_(formula), request_(request), wish_(wish), ensemble_(ensemble), diagnostics_(diagnostics) {
        ensemble_.members = std::min(ensemble.members, 1000);
    }

    double operator()(double setting) const {
        PlanRequest request = request_;
        if (wish_.sought == Sought::inoculation) {
            request.levain_times = setting / wish_.inoculation.value();
        } else if (wish_.sought == Sought::temperature) {
            request.at = Temperature::celsius(setting);
        } else {
            request.retard = hours(setting);
        }
        const auto plan = plan_of(formula_, request, diagnostics_);
        return plan ? in_hours(compute_windows(plan->plan, ensemble_).stages.back().after_mixing.likely)
                    : std::numeric_limits<double>::infinity();
    }

private:
    const Formula& formula_;
    const PlanRequest& request_;
    const SearchRequest& wish_;
    Ensemble ensemble_;
    Diagnostics& diagnostics_;
};

struct Bounds {
    double slow; // the setting with the longest time
    double fast;
    std::string text;
};

Bounds bounds_of(const SearchRequest& wish) {
    switch (wish.sought) {
    case Sought::inoculation:
        return {least_inoculation.value(), wish.most.value(),
                fmt::format("{:.0f} to {:.0f} % of the flour prefermented", least_inoculation.in_percent(),
                            wish.most.in_percent())};
    case Sought::temperature:
        return {coolest_search.in_celsius(), warmest_search.in_celsius(),
                fmt::format("{:.0f} to {:.0f} C ({:.0f} to {:.0f} F)", coolest_search.in_celsius(),
                            warmest_search.in_celsius(), coolest_search.in_fahrenheit(),
                            warmest_search.in_fahrenheit())};
    case Sought::retard:
        break;
    }
    return {in_hours(longest_retard), 0.0,
            fmt::format("0 to {:.0f} h in the refrigerator", in_hours(longest_retard))};
}

std::string time_shown(double time) {
    return std::isfinite(time) ? show_decimal(time, 1) + " h" : std::string("longer than is looked at");
}

Answer answer_of(const SearchRequest& wish, double setting) {
    Answer answer{.sought = wish.sought, .inoculation = {}, .temperature = {}, .retard = {}, .sentence = {}};
    const std::string within = show_decimal(in_hours(wish.available), 1) + " h";
    if (wish.sought == Sought::inoculation) {
        answer.inoculation = PrefermentedFlour(setting);
        answer.sentence =
            fmt::format("ready in {}: with {} % of the flour prefermented (instead of {})", within,
                        show_decimal(100.0 * setting, 1), show_percent(wish.inoculation.value()));
    } else if (wish.sought == Sought::temperature) {
        answer.temperature = Temperature::celsius(setting);
        answer.sentence =
            fmt::format("ready in {}: at {}", within, show_temperature(*answer.temperature, wish.units));
    } else {
        answer.retard = hours(setting);
        answer.sentence =
            fmt::format("ready in {}: with {} h in the refrigerator", within, show_decimal(setting, 1));
    }
    return answer;
}

} // namespace

std::optional<Answer> search(const Formula& formula, const PlanRequest& request, const SearchRequest& wish,
                             const Ensemble& ensemble, Diagnostics& diagnostics) {
    const Trial time_with(formula, request, wish, ensemble, diagnostics);
    const Bounds bounds = bounds_of(wish);
    const double available = in_hours(wish.available);
    const double longest = time_with(bounds.slow);
    const double shortest = time_with(bounds.fast);
    if (diagnostics.has_errors()) {
        return {};
    }
    if (std::isfinite(shortest) && shortest == longest) {
        diagnostics.error(Code::no_answer, wish.place,
                          "the process has no retard, so that its time changes nothing",
                          "add 'retard: { for: 12 h, at: 4 C }' to the process, or say --by temperature");
        return {};
    }
    if (available < shortest || available > longest) {
        diagnostics.error(
            Code::no_answer, wish.place,
            fmt::format("nothing from {} makes it ready in {:.1f} h", bounds.text, available),
            fmt::format("within these bounds it takes {} to {}", time_shown(shortest), time_shown(longest)));
        return {};
    }
    double slow = bounds.slow;
    double fast = bounds.fast;
    constexpr int halvings = 12; // of the range: finer than any window
    for (int i = 0; i < halvings; ++i) {
        const double middle =
            wish.sought == Sought::inoculation ? std::sqrt(slow * fast) : (slow + fast) / 2.0;
        (time_with(middle) > available ? slow : fast) = middle;
    }
    return answer_of(wish, fast);
}

} // namespace leavenwright
