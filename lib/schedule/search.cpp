#include "schedule/search.hpp"

#include "quantity/show.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace leavenwright {
namespace {

// The likely whole time with one setting changed, in hours; infinite where the dough is never ready,
// or not before its profile ends.
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
        if (!plan) {
            return std::numeric_limits<double>::infinity();
        }
        const Duration likely = compute_windows(plan->plan, ensemble_).stages.back().after_mixing.likely;
        const bool is_covered = !request.profile || request.profile->covers(likely);
        return is_covered ? in_hours(likely) : std::numeric_limits<double>::infinity();
    }

    double middle_of(double one, double other) const {
        return wish_.sought == Sought::inoculation ? std::sqrt(one * other) : (one + other) / 2.0;
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
                fmt::format("{} to {} % of the flour prefermented",
                            show_decimal(least_inoculation.in_percent(), 1),
                            show_decimal(wish.most.in_percent(), 1))};
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

constexpr int halvings = 12; // of the range: finer than any window

// The settings within the bounds that make the dough ready at all, and the hours they take.
struct Reach {
    double slow;
    double fast;
    double longest;
    double shortest;

    static std::optional<Reach> within(const Bounds& bounds, const Trial& time_with) {
        Reach reach{bounds.slow, bounds.fast, time_with(bounds.slow), time_with(bounds.fast)};
        const bool is_slow_ready = std::isfinite(reach.longest);
        const bool is_fast_ready = std::isfinite(reach.shortest);
        if (!is_slow_ready && !is_fast_ready) {
            return {};
        }
        if (!is_slow_ready) {
            draw_in(reach.slow, reach.longest, reach.fast, reach.shortest, time_with);
        } else if (!is_fast_ready) {
            draw_in(reach.fast, reach.shortest, reach.slow, reach.longest, time_with);
        }
        return reach;
    }

private:
    // Moves `end`, which is never ready, as little towards `ready` as makes it so.
    static void draw_in(double& end, double& time, double ready, double ready_time, const Trial& time_with) {
        double never = end;
        end = ready;
        time = ready_time;
        for (int i = 0; i < halvings; ++i) {
            const double middle = time_with.middle_of(end, never);
            const double middle_time = time_with(middle);
            if (std::isfinite(middle_time)) {
                end = middle;
                time = middle_time;
            } else {
                never = middle;
            }
        }
    }
};

// Hours differ by so much in the last bits when a text is read back.
constexpr double reading_slack = 1e-9;

// What to ask for instead. Both ends are rounded inward, so that they are accepted as they are shown.
std::string offer_of(const SearchRequest& wish, const Reach& reach) {
    constexpr int most_decimals = 3; // a few seconds
    for (int decimals = 1; decimals <= most_decimals; ++decimals) {
        const double steps = std::pow(10.0, decimals);
        const double least = std::ceil(reach.shortest * steps) / steps;
        const double most = std::floor(reach.longest * steps) / steps;
        if (least <= most) {
            const double nearest = in_hours(wish.available) < least ? least : most;
            const std::string command = wish.command.empty() ? "leavenwright proof FILE" : wish.command;
            return fmt::format("within these bounds it takes {} h to {} h; the nearest:\n{} --ready-in {}h",
                               show_decimal(least, decimals), show_decimal(most, decimals), command,
                               show_decimal(nearest, decimals));
        }
    }
    return fmt::format("it takes {} h, whatever is chosen within these bounds: search for another with --by",
                       show_decimal(reach.shortest, 1));
}

// Where no setting makes the dough ready, something else keeps it back.
std::string hint_for_never(const PlanRequest& request) {
    return request.profile ? "end the profile with a temperature that has no time, and it is held"
                           : "it takes longer than is looked at with all of them: a smaller rise, or a place "
                             "between 18 and 30 C (64 and 86 F)";
}

Answer answer_of(const SearchRequest& wish, double setting) {
    Answer answer{.sought = wish.sought, .inoculation = {}, .temperature = {}, .retard = {}, .sentence = {}};
    const std::string within = show_decimal(in_hours(wish.available), 1) + " h";
    if (wish.sought == Sought::inoculation) {
        answer.inoculation = PrefermentedFlour(setting);
        const std::string compared = wish.unfit ? show_percent(wish.unfit->value()) + " does not fit"
                                                : "instead of " + show_percent(wish.inoculation.value());
        answer.sentence = fmt::format("ready in {}: with {} % of the flour prefermented ({})", within,
                                      show_decimal(100.0 * setting, 1), compared);
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
    const auto reach = Reach::within(bounds, time_with);
    if (diagnostics.has_errors()) {
        return {};
    }
    const double available = in_hours(wish.available);
    const std::string refusal =
        fmt::format("nothing from {} makes it ready in {} h", bounds.text, show_decimal(available, 2));
    if (!reach) {
        diagnostics.error(Code::no_answer, wish.place, refusal, hint_for_never(request));
        return {};
    }
    if (wish.sought == Sought::retard && reach->shortest == reach->longest) {
        diagnostics.error(Code::no_answer, wish.place,
                          "the process has no retard, so that its time changes nothing",
                          "add 'retard: { for: 12 h, at: 4 C }' to the process, or say --by temperature");
        return {};
    }
    if (available < reach->shortest - reading_slack || available > reach->longest + reading_slack) {
        diagnostics.error(Code::no_answer, wish.place, refusal, offer_of(wish, *reach));
        return {};
    }
    double slow = reach->slow;
    double fast = reach->fast;
    for (int i = 0; i < halvings; ++i) {
        const double middle = time_with.middle_of(slow, fast);
        (time_with(middle) > available ? slow : fast) = middle;
    }
    return answer_of(wish, fast);
}

} // namespace leavenwright
