#include "verbs/card.hpp"

#include "card/card.hpp"
#include "conversion_request.hpp"
#include "exit_status.hpp"
#include "files.hpp"
#include "formula/read_formula.hpp"
#include "formula/seed_levain.hpp"
#include "option_table.hpp"
#include "pdf_helper.hpp"
#include "plan_request.hpp"
#include "quantity/read_quantity.hpp"
#include "render/card.hpp"
#include "schedule/levain_stage.hpp"
#include "session.hpp"
#include "verbs/verbs.hpp"
#include "water_options.hpp"

#include <unistd.h>

#include <algorithm>

namespace leavenwright {
namespace {

// What the engine says of a dough: the one place where windows come onto a card. A dough that it has
// no answer for gets a card without them, and a warning.
DoughForecast forecast_of(const Formula& formula, const PlanRequest& request, const Ensemble& ensemble,
                          Diagnostics& diagnostics) {
    DoughForecast forecast;
    Diagnostics aside;
    forecast.dough = windows_of(formula, request, ensemble, aside);
    for (const Stage& stage : formula.stages) {
        const auto build =
            build_of(stage, *formula.pantry, TemperatureProfile(request.at.value_or(usual_room)));
        const auto ripening = build ? compute_ripening(*build, ensemble, aside) : std::nullopt;
        if (ripening && is_reached(ripening->ripe.in_stage.latest)) {
            forecast.levain = ripening->ripe;
        }
    }
    for (const Diagnostic& item : aside.in_order()) {
        if (item.source && item.code != Code::nothing_ferments) {
            diagnostics.warning(item.code, {.source = item.source, .span = item.span, .text = {}},
                                item.message, item.hint);
        }
    }
    return forecast;
}

// Whether an option of those that belong to it was given.
bool asks(const Options& options, bool (*belongs)(const OptionRow&)) {
    return std::any_of(option_table.begin(), option_table.end(), [&](const OptionRow& row) {
        return row.verb == options.verb && belongs(row) && options.has(row.name);
    });
}

// As warm as the engine takes dough and room to be. A dough without plain water has no answer, and
// asks for none unless an option speaks of the mix.
std::optional<WaterPlan> water_of(const Formula& formula, const PlanRequest& request,
                                  const WeighingScale& scale, const Options& options, Session& session) {
    const bool has_water = std::any_of(formula.dough.begin(), formula.dough.end(),
                                       [](const Line& line) { return line.ingredient->is_water(); });
    if (!has_water && !asks(options, belongs_to_mix)) {
        return std::nullopt;
    }
    Diagnostics aside; // the windows have reported it
    const auto planned = plan_of(formula, request, aside);
    if (!planned) {
        return std::nullopt;
    }
    const auto read = read_water_request(options, &formula, scale, session,
                                         MixDefaults{.dough = planned->plan.mixed_at, .room = planned->room});
    return read ? std::optional(plan_water(read->request)) : std::nullopt;
}

std::optional<CardHour> read_hour(Session& session) {
    const auto start = session.option_text("--start");
    const auto text = start ? start : session.option_text("--ready");
    const auto time = text ? read_clock_time(*text, session.diagnostics) : std::nullopt;
    if (!time) {
        return std::nullopt;
    }
    return CardHour{.of = start ? CardHour::Of::mixing : CardHour::Of::ready, .time = *time, .place = *text};
}

Seed read_seed(Session& session) {
    Seed seed;
    if (const auto text = session.option_text("--seed")) {
        seed.place = *text;
        if (const auto share = read_percentage(*text, session.diagnostics)) {
            seed.of_levain = Fraction(share->value());
        }
    }
    if (const auto text = session.option_text("--jar-hydration")) {
        seed.place = seed.place.source ? seed.place : *text;
        if (const auto hydration = read_percentage(*text, session.diagnostics)) {
            seed.jar_hydration = Hydration(hydration->value());
        }
    }
    return seed;
}

Paper paper_of(const Options& options) {
    const bool is_us = options.value("--units") == "us";
    return options.value("--paper").value_or(is_us ? "letter" : "a4") == "letter" ? Paper::letter : Paper::a4;
}

std::string version_line() {
    return "leavenwright " LEAVENWRIGHT_VERSION ", figures " LEAVENWRIGHT_FIGURES;
}

// Seeds the levains, asks the engine, and fills the card.
std::optional<Card> bake_card(Formula formula, const Conversion* conversion, const Seed& seed,
                              CardRequest request, const PlanRequest& plan, const Ensemble& ensemble,
                              const Options& options, Session& session) {
    if (!seed_levains(formula, seed, session.diagnostics)) {
        return std::nullopt;
    }
    request.forecast = forecast_of(formula, plan, ensemble, session.diagnostics);
    const std::size_t faults = session.diagnostics.error_count();
    request.forecast.water = water_of(formula, plan, request.scale, options, session);
    request.version = version_line();
    return session.diagnostics.error_count() > faults
               ? std::nullopt
               : make_card(formula, conversion, request, session.diagnostics);
}

class CardMaker {
public:
    CardMaker(const Options& options, Session& session)
        : options_(options), session_(session), seed_(read_seed(session)) {
        request_.scale = session.scale();
        request_.hour = read_hour(session);
        ensemble_ = read_ensemble(session);
        request_.side_by_side = options.has("--side-by-side");
    }

    std::optional<Card> make(const std::string& path) {
        const std::size_t faults = session_.diagnostics.error_count(); // of the formulas before
        const SourceHandle source = session_.read_formula_text(path);
        auto formula = source ? read_formula(source, session_.pantry, session_.diagnostics) : std::nullopt;
        // Options are read against the formula's own pantry, and reported even where it has faults.
        const Pantry& pantry = formula ? *formula->pantry : session_.pantry;
        const ConversionRequest wish = read_conversion_request(options_, path, pantry, session_);
        const PlanRequest plan =
            read_plan_request(options_, source ? beginning_of(source) : text_from(path, path), session_);
        if (!formula || session_.diagnostics.error_count() > faults) {
            return std::nullopt;
        }
        if (options_.has("--as-written") || !formula->has_packaged_yeast()) {
            if (asks(options_, belongs_to_conversion)) {
                formula->remarks.emplace_back(
                    "There is no packaged yeast in the formula: it is as written, and "
                    "the wishes for a conversion are left aside.");
            }
            return bake_card(*std::move(formula), nullptr, seed_, request_, plan, ensemble_, options_,
                             session_);
        }
        const auto conversion = convert(*formula, wish, session_.diagnostics);
        return conversion ? bake_card(conversion->after, &*conversion, seed_, request_, plan, ensemble_,
                                      options_, session_)
                          : std::nullopt;
    }

private:
    const Options& options_;
    Session& session_;
    Seed seed_;
    CardRequest request_;
    Ensemble ensemble_;
};

// Empty where a diagnostic says why.
std::string report_of(const std::vector<Card>& cards, const std::string& format, Paper paper,
                      Diagnostics& diagnostics) {
    if (format == "html") {
        return render_cards_html(cards, paper);
    }
    if (format == "json") {
        return render_cards_json(cards, paper);
    }
    if (format == "pdf") {
        return pdf_of_cards(render_cards_json(cards, paper), diagnostics).value_or("");
    }
    return render_cards_text(cards, report_columns);
}

} // namespace

std::string text_card(const Formula& formula, const Conversion* conversion, const Options& options,
                      Session& session) {
    CardRequest request;
    request.scale = session.scale();
    PlanRequest plan;
    plan.formula_place = text_from("formula", formula.name);
    const auto card = bake_card(formula, conversion, {}, request, plan, {}, options, session);
    return card ? render_cards_text({&*card, 1}, report_columns) : std::string();
}

int run_card(const Options& options) {
    Session session(options);
    CardMaker maker(options, session);
    std::vector<Card> cards;
    for (const std::string& path : options.arguments) {
        if (auto card = maker.make(path)) {
            cards.push_back(*std::move(card));
        }
    }
    if (session.diagnostics.has_errors()) {
        return session.finish();
    }
    const std::string format = session.format();
    if (format == "pdf" && !options.has("--output") && ::isatty(STDOUT_FILENO) == 1) {
        write_error("leavenwright: a PDF is not for the terminal\nName a file: -o card.pdf\n");
        return exit_wrong_usage;
    }
    return session.deliver(report_of(cards, format, paper_of(options), session.diagnostics));
}

} // namespace leavenwright
