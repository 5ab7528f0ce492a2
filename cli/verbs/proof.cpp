#include "conversion_request.hpp"
#include "convert/convert.hpp"
#include "formula/overall.hpp"
#include "formula/read_formula.hpp"
#include "given_command.hpp"
#include "plan_request.hpp"
#include "quantity/read_quantity.hpp"
#include "quantity/show.hpp"
#include "render/windows.hpp"
#include "schedule/search.hpp"
#include "session.hpp"
#include "verbs/verbs.hpp"

#include <algorithm>

namespace leavenwright {
namespace {

PrefermentedFlour prefermented_in(const Formula& formula) {
    Mass flour{};
    for (const Stage& stage : formula.stages) {
        if (stage.kind == StageKind::levain) {
            flour += add_up(contents_of(stage, *formula.pantry), {}).total_flour;
        }
    }
    return PrefermentedFlour::of(flour, compute_overall(formula).total_flour);
}

std::string raised_by(const Formula& formula, const std::optional<Answer>& answer) {
    const PrefermentedFlour share =
        answer && answer->inoculation ? *answer->inoculation : prefermented_in(formula);
    const std::string levain =
        formula.has_levain() ? "a levain with " + show_decimal(share.in_percent(), 1) + " % of the flour"
                             : "";
    const std::string yeast = formula.has_packaged_yeast() ? "packaged yeast" : "";
    return levain + (levain.empty() || yeast.empty() ? "" : " and ") + yeast;
}

class Proofer {
public:
    Proofer(const Options& options, Session& session) : options_(options), session_(session) {}

    std::optional<ProofReport> report(const Formula& formula, const SourceHandle& source) {
        const std::string& path = options_.arguments.front();
        const PlanRequest request = read_plan_request(options_, beginning_of(source), session_);
        const Ensemble ensemble = read_ensemble(session_);
        ConversionRequest wish = read_conversion_request(options_, path, *formula.pantry, session_);
        auto sought = read_search(path);
        const bool converts =
            formula.has_packaged_yeast() && !formula.has_levain() && !options_.has("--as-written");
        if (session_.diagnostics.has_errors() || (sought && converts && !make_room(formula, wish, *sought))) {
            return {};
        }
        const auto conversion = converts ? convert(formula, wish, session_.diagnostics) : std::nullopt;
        if (converts && !conversion) {
            return {};
        }
        const Formula& dough = conversion ? conversion->after : formula;
        PlanRequest settled = request;
        std::optional<Answer> answer;
        if (sought) {
            answer = answer_for(dough, request, *sought, ensemble);
            if (!answer) {
                return {};
            }
            settle(settled, *answer, sought->inoculation);
        }
        auto windows = windows_of(dough, settled, ensemble, session_.diagnostics);
        if (!windows) {
            return {};
        }
        std::optional<Windows> written;
        if (conversion) {
            written = written_windows(*conversion, request, ensemble, *windows);
        }
        return ProofReport{.name = dough.name,
                           .raised_by = raised_by(dough, answer),
                           .windows = *std::move(windows),
                           .as_written = std::move(written),
                           .answer = std::move(answer)};
    }

private:
    // The dough with its packaged yeast, by the same reckoning.
    static std::optional<Windows> written_windows(const Conversion& conversion, PlanRequest request,
                                                  const Ensemble& ensemble, Windows& windows) {
        request.profile.reset(); // it is for the levain's times
        Diagnostics aside;
        show_written_times(conversion.before, windows);
        return windows_of(conversion.before, request, ensemble, aside);
    }

    // The original's times beside the levain's; stages follow the steps in their order.
    static void show_written_times(const Formula& before, Windows& windows) {
        auto stage = windows.stages.begin();
        for (const Step& step : before.process) {
            if (stage == windows.stages.end()) {
                return;
            }
            if (step.verb == stage->stage) {
                stage->written = step.time ? step.time->text : std::string();
                ++stage;
            }
        }
    }

    static void settle(PlanRequest& request, const Answer& answer, PrefermentedFlour had) {
        if (answer.inoculation) {
            request.levain_times = answer.inoculation->value() / had.value();
        }
        if (answer.temperature) {
            request.at = answer.temperature;
        }
        if (answer.retard) {
            request.retard = answer.retard;
        }
    }

    std::optional<SearchRequest> read_search(const std::string& path) {
        const auto time_text = session_.option_text("--ready-in");
        const auto by_text = session_.option_text("--by");
        if (!time_text && !by_text) {
            return {};
        }
        if (!time_text) {
            session_.diagnostics.error(Code::value_missing, *by_text, "--by needs the time there is",
                                       "such as --ready-in 10h");
            return {};
        }
        const auto time = read_duration(*time_text, session_.diagnostics);
        if (!time) {
            return {};
        }
        SearchRequest search;
        search.place = *time_text;
        search.available = 0.5 * (time->least + time->most);
        const std::string by = options_.value("--by").value_or("inoculation");
        refuse_given(by, by_text.value_or(*time_text));
        search.sought = by == "temperature" ? Sought::temperature
                        : by == "retard"    ? Sought::retard
                                            : Sought::inoculation;
        search.units = session_.scale().units;
        search.command =
            given_command(options_, path, [](const OptionRow& row) { return row.name == "--ready-in"; });
        return search;
    }

    // A search for the inoculation begins at one that fits, whatever was asked for; false where
    // there is none within its bounds.
    bool make_room(const Formula& formula, ConversionRequest& wish, SearchRequest& search) {
        const LargestFit fit = largest_fit(formula, wish);
        const PrefermentedFlour largest = fit.offered_share();
        if (search.sought != Sought::inoculation || largest.value() <= 0.0) {
            return true; // the conversion says what does not fit
        }
        if (largest < least_inoculation) {
            session_.diagnostics.error(
                Code::no_answer, search.place,
                "the dough has room for " + show_percent(largest.value()) +
                    " of the flour prefermented; the search begins at " +
                    show_percent(least_inoculation.value()),
                "a stiffer levain takes less water, such as with --levain-hydration 50%");
            return false;
        }
        search.most = std::min(most_inoculation, largest);
        if (fit.asked > std::max(fit.prefermented_flour, largest)) {
            search.unfit = fit.asked;
            wish.inoculation = search.most;
        }
        return true;
    }

    std::optional<Answer> answer_for(const Formula& dough, const PlanRequest& request, SearchRequest& wish,
                                     const Ensemble& ensemble) {
        wish.inoculation = prefermented_in(dough);
        if (wish.sought == Sought::inoculation && wish.inoculation.value() <= 0.0) {
            session_.diagnostics.error(Code::no_answer, wish.place,
                                       "there is no levain whose share could change",
                                       "search for another: --by temperature, or --by retard");
            return {};
        }
        return search(dough, request, wish, ensemble, session_.diagnostics);
    }

    // What is searched for cannot be given too.
    void refuse_given(const std::string& by, const SourcedText& place) {
        const auto refuse = [&](std::string_view option) {
            if (options_.has(option)) {
                session_.diagnostics.error(Code::out_of_range, place,
                                           std::string(option) + " leaves no " + by + " to search for",
                                           "leave " + std::string(option) + " out, or search for another");
            }
        };
        if (by == "temperature") {
            refuse("--at");
            refuse("--profile");
        } else if (by == "retard") {
            refuse("--retard");
            refuse("--profile");
        }
    }

    const Options& options_;
    Session& session_;
};

std::string shown(const ProofReport& report, const std::string& format, const WeighingScale& scale) {
    if (format == "json") {
        return render_proof_json(report);
    }
    if (format == "csv") {
        return render_curve_csv(report.windows.curve);
    }
    return render_proof_text(report, {.columns = report_columns, .scale = scale});
}

} // namespace

int run_proof(const Options& options) {
    Session session(options);
    const WeighingScale scale = session.scale();
    const SourceHandle source = session.read_formula_text(options.arguments.front());
    const auto formula = source ? read_formula(source, session.pantry, session.diagnostics) : std::nullopt;
    if (!formula) {
        return session.finish();
    }
    const auto report = Proofer(options, session).report(*formula, source);
    return report ? session.deliver(shown(*report, session.format(), scale)) : session.finish();
}

} // namespace leavenwright
