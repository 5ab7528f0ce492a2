#include "plan_request.hpp"

#include "quantity/number.hpp"
#include "quantity/show.hpp"

#include <algorithm>
#include <cmath>
#include <thread>

namespace leavenwright {
namespace {

// Fewer are done before a second thread has begun.
constexpr int worth_a_thread = 2000;
constexpr int largest_seed = 1000000000;

std::optional<Temperature> read_place(const SourcedText& text, Diagnostics& diagnostics) {
    const auto temperature = read_temperature(text, diagnostics);
    if (temperature && (*temperature < coldest_place() || *temperature > hottest_place())) {
        diagnostics.error(Code::temperature_out_of_range, text,
                          in_quotes(text.text) + " is no place for dough to stand",
                          "between -40 and 60 C, or -40 and 140 F; baking is no part of this");
        return {};
    }
    return temperature;
}

std::optional<double> read_share(const SourcedText& text, double least, double most,
                                 Diagnostics& diagnostics) {
    const auto share = read_percentage(text, diagnostics);
    if (share && (share->value() < least || share->value() > most)) {
        diagnostics.error(Code::out_of_range, text, in_quotes(text.text) + " is out of range",
                          "from " + show_percent(least) + " to " + show_percent(most));
        return {};
    }
    return share ? std::optional(share->value()) : std::nullopt;
}

std::optional<int> read_count(const SourcedText& text, int least, int most, Diagnostics& diagnostics) {
    const auto number = read_number(text, diagnostics);
    if (!number) {
        return {};
    }
    const bool is_whole = number->length == text.text.size() && number->value == std::floor(number->value);
    if (!is_whole || number->value < least || number->value > most) {
        diagnostics.error(Code::out_of_range, text, in_quotes(text.text) + " is no whole number in range",
                          "from " + std::to_string(least) + " to " + std::to_string(most));
        return {};
    }
    return static_cast<int>(number->value);
}

} // namespace

PlanRequest read_plan_request(const Options& options, const SourcedText& formula_place, Session& session) {
    PlanRequest request;
    Diagnostics& diagnostics = session.diagnostics;
    request.formula_place = formula_place;
    if (const auto text = session.option_text("--at")) {
        request.profile_place = *text;
        request.at = read_place(*text, diagnostics);
    }
    if (const auto text = session.option_text("--profile")) {
        request.profile_place = *text;
        request.profile = read_profile(*text, diagnostics);
        if (options.has("--at")) {
            diagnostics.error(Code::out_of_range, *text, "--at and --profile both say where the dough stands",
                              "leave one out");
        }
    }
    if (const auto text = session.option_text("--mixed-at")) {
        request.mixed_at = read_place(*text, diagnostics);
    }
    const auto share = [&](std::string_view option, double least, double most) -> std::optional<Fraction> {
        const auto text = session.option_text(option);
        const auto value = text ? read_share(*text, least, most, diagnostics) : std::nullopt;
        return value ? std::optional(Fraction(*value)) : std::nullopt;
    };
    request.bulk_rise = share("--bulk-rise", 0.05, 2.0);
    request.proof_rise = share("--proof-rise", 0.05, 2.0);
    request.gas_kept = share("--gas-kept", 0.0, 1.0);
    if (const auto text = session.option_text("--retard")) {
        const auto time = read_duration(*text, diagnostics);
        request.retard = time ? std::optional(0.5 * (time->least + time->most)) : std::nullopt;
        if (request.retard > longest_profile()) {
            diagnostics.error(Code::out_of_range, *text, in_quotes(text->text) + " is out of range",
                              "a retard of 30 d at the most");
        }
        if (request.profile) {
            diagnostics.error(
                Code::out_of_range, *text, "--retard has no meaning beside --profile",
                "write the cold into the profile, as in --profile \"3h at 24C, 12h at 4C, 24C\"");
        }
    }
    return request;
}

Ensemble read_ensemble(Session& session) {
    Ensemble ensemble;
    if (const auto text = session.option_text("--members")) {
        ensemble.members =
            read_count(*text, least_members, most_members, session.diagnostics).value_or(ensemble.members);
    }
    if (const auto text = session.option_text("--draw")) {
        ensemble.seed = static_cast<std::uint64_t>(read_count(*text, 0, largest_seed, session.diagnostics)
                                                       .value_or(static_cast<int>(ensemble.seed)));
    }
    if (const auto text = session.option_text("--vigour")) {
        ensemble.vigour = read_share(*text, 0.25, 4.0, session.diagnostics).value_or(1.0);
    }
    ensemble.threads =
        ensemble.members < worth_a_thread ? 1 : std::max(1U, std::thread::hardware_concurrency());
    return ensemble;
}

} // namespace leavenwright
