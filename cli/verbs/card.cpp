#include "card/card.hpp"

#include "conversion_request.hpp"
#include "formula/seed_levain.hpp"
#include "pdf_helper.hpp"
#include "quantity/read_quantity.hpp"
#include "render/card.hpp"
#include "session.hpp"
#include "verbs/verbs.hpp"

#include <algorithm>

namespace leavenwright {
namespace {

bool has_packaged_yeast(const Formula& formula) {
    const auto is_yeast = [](const Line& line) { return line.ingredient->is_yeast(); };
    return std::any_of(formula.dough.begin(), formula.dough.end(), is_yeast) ||
           std::any_of(formula.stages.begin(), formula.stages.end(), [&](const Stage& stage) {
               return std::any_of(stage.lines.begin(), stage.lines.end(), is_yeast);
           });
}

// What the engine says of a dough: the one place where windows come onto a card.
DoughForecast forecast_of(const Formula& /*formula*/) {
    return {};
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

class CardMaker {
public:
    CardMaker(const Options& options, Session& session)
        : options_(options), session_(session), seed_(read_seed(session)) {
        request_.scale = session.scale();
        request_.hour = read_hour(session);
        request_.side_by_side = options.has("--side-by-side");
        request_.version = version_line();
    }

    std::optional<Card> make(const std::string& path) {
        const auto formula = session_.read_formula_file(path);
        if (!formula) {
            return std::nullopt;
        }
        if (options_.has("--as-written") || !has_packaged_yeast(*formula)) {
            return card_of(*formula, nullptr);
        }
        const ConversionRequest wish = read_conversion_request(options_, path, *formula->pantry, session_);
        const auto conversion =
            session_.diagnostics.has_errors() ? std::nullopt : convert(*formula, wish, session_.diagnostics);
        return conversion ? card_of(conversion->after, &*conversion) : std::nullopt;
    }

private:
    std::optional<Card> card_of(Formula formula, const Conversion* conversion) {
        if (session_.diagnostics.has_errors() || !seed_levains(formula, seed_, session_.diagnostics)) {
            return std::nullopt;
        }
        request_.forecast = forecast_of(formula);
        return make_card(formula, conversion, request_, session_.diagnostics);
    }

    const Options& options_;
    Session& session_;
    Seed seed_;
    CardRequest request_;
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
    return session.deliver(report_of(cards, session.format(), paper_of(options), session.diagnostics));
}

} // namespace leavenwright
