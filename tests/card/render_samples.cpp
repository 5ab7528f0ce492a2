// Writes cards into a folder, for the outside checks: with windows and a curve of known figures, the
// same with the formula before and after, and one of a long list.
//
//     render_samples FOLDER
#include "convert/convert.hpp"
#include "formula/seed_levain.hpp"
#include "render/card.hpp"
#include "support/forecast.hpp"
#include "support/formulas.hpp"

#include <cstdio>
#include <fstream>
#include <string>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

void write(const std::string& path, const std::string& text) {
    std::ofstream file(path, std::ios::binary);
    file << text;
    if (!file.flush()) {
        throw std::runtime_error("cannot write " + path);
    }
}

void write_forms(const std::string& stem, const Card& card) {
    const std::vector<Card> cards{card};
    write(stem + ".txt", render_cards_text(cards, 80));
    write(stem + ".html", render_cards_html(cards, Paper::a4));
    write(stem + ".json", render_cards_json(cards, Paper::a4));
}

Card card_of(const Formula& formula, const DoughForecast& forecast, bool side_by_side) {
    const Conversion conversion = converted(formula, {});
    Formula seeded = conversion.after;
    Diagnostics diagnostics;
    seed_levains(seeded, {}, diagnostics);
    const std::string start = "2031-03-07 18:00";
    const auto source = std::make_shared<SourceText>("start", start);
    const SourcedText place{.source = source, .span = {0, start.size()}, .text = source->text()};
    CardRequest request{.scale = usual_scale(UnitSystem::metric),
                        .forecast = forecast,
                        .hour = CardHour{.of = CardHour::Of::mixing,
                                         .time = *read_clock_time(place, diagnostics),
                                         .place = place},
                        .side_by_side = side_by_side,
                        .version = "leavenwright of the tests"};
    return make_card(seeded, &conversion, request, diagnostics).value();
}

std::string long_formula() {
    std::string text = "formula: 1\nname: Regatta loaf of everything\ndough:\n  bread flour: 900 g\n"
                       "  water: 620 g\n  salt: 20 g\n  instant yeast: 7 g\n";
    for (int i = 1; i <= 60; ++i) {
        text += "  harbour seed number " + std::to_string(i) + ": " + std::to_string(10 + i) + " g\n";
    }
    text += "process: [mix, bulk, divide, shape, proof]\npantry:\n";
    for (int i = 1; i <= 60; ++i) {
        text += "  harbour seed number " + std::to_string(i) + ": { class: seed or grain }\n";
    }
    return text;
}

} // namespace

int main(int count, char** arguments) {
    if (count != 2) {
        std::fputs("render_samples FOLDER\n", stderr);
        return 2;
    }
    try {
        const std::string folder = arguments[1];
        const Formula loaf = formula_from(project_file("formulas/ferry-pier-tin-loaf.yaml"));
        write_forms(folder + "/forecast", card_of(loaf, made_up_forecast(), false));
        write_forms(folder + "/beside", card_of(loaf, made_up_forecast(), true));
        write_forms(folder + "/long", card_of(formula_from(long_formula()), made_up_forecast(), false));
    } catch (const std::exception& fault) {
        std::fprintf(stderr, "%s\n", fault.what());
        return 1;
    }
    return 0;
}
