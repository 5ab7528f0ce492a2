#include "card/card.hpp"
#include "formula/seed_levain.hpp"
#include "support/forecast.hpp"
#include "support/formulas.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <memory>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

SourcedText option(const std::string& words) {
    const auto source = std::make_shared<SourceText>("--start", words);
    return {.source = source, .span = {0, words.size()}, .text = source->text()};
}

CardHour hour(CardHour::Of of, const std::string& words) {
    Diagnostics diagnostics;
    return {.of = of, .time = read_clock_time(option(words), diagnostics).value(), .place = option(words)};
}

Formula tin_loaf() {
    return formula_from(project_file("formulas/ferry-pier-tin-loaf.yaml"));
}

CardRequest request_of(const DoughForecast& forecast = {}) {
    CardRequest request;
    request.scale = usual_scale(UnitSystem::metric);
    request.forecast = forecast;
    request.version = "version";
    return request;
}

Card card_of(const CardRequest& request) {
    const Conversion conversion = converted(tin_loaf(), {});
    Formula formula = conversion.after;
    Diagnostics diagnostics;
    REQUIRE(seed_levains(formula, {}, diagnostics));
    return make_card(formula, &conversion, request, diagnostics).value();
}

const Formula& with_levain() {
    static const Formula formula =
        formula_from("formula: 1\n"
                     "name: Mole loaf\n"
                     "dough: { bread flour: 800 g, water: 500 g, salt: 18 g, egg: 50 g }\n"
                     "preferments:\n"
                     "  levain:\n"
                     "    bread flour: 100 g\n"
                     "    water: 100 g\n"
                     "    process: [ ripen: { for: 8 to 10 h, at: 22 C } ]\n"
                     "process:\n"
                     "  - mix\n"
                     "  - bulk: { for: 4 to 5 h, at: 24 C }\n"
                     "  - shape\n"
                     "  - proof: { for: 2 h, at: 24 C }\n"
                     "  - bake: { for: 40 min, at: 230 C }\n"
                     "  - cool: { for: 1 h }\n");
    return formula;
}

} // namespace

TEST_CASE("card: the levain comes first, with what is taken from the jar, the dough last") {
    const Card card = card_of(request_of());
    REQUIRE(card.columns.size() == 2);
    const CardColumn& levain = card.columns.front();
    CHECK(levain.name == "levain");
    REQUIRE(levain.rows.size() == 3);
    CHECK(levain.rows[0].name == "culture, from the jar");
    CHECK(levain.rows[0].weight == "80 g");
    CHECK(levain.rows[1].weight == "160 g");
    CHECK(levain.total.weight == "400 g");
    const CardColumn& dough = card.columns.back();
    CHECK(dough.rows.front().name == "levain");
    CHECK(dough.rows.front().weight == "400 g");
    CHECK(dough.rows.front().percent == "40 %");
    CHECK(dough.below.front().name == "each of 2");
}

TEST_CASE("card: each column adds up to its total") {
    for (const CardColumn& column : card_of(request_of()).columns) {
        Mass sum = kilograms(0.0);
        for (const CardRow& row : column.rows) {
            sum += row.mass;
        }
        // Sums of a few decimals of a gram: only the last digits of doubles differ.
        CHECK(near(in_grams(sum), in_grams(column.total.mass), 1e-12, 1e-9));
    }
}

TEST_CASE("card: both lists of allergens, each name once") {
    Diagnostics diagnostics;
    const Card card = make_card(with_levain(), nullptr, request_of(), diagnostics).value();
    CHECK(card.eu_allergens == std::vector<std::string>{"cereals containing gluten (wheat)", "eggs"});
    CHECK(card.us_allergens == std::vector<std::string>{"eggs", "wheat"});
}

TEST_CASE("card: the cautions are those of the dough") {
    const auto count = [](const Card& card, std::string_view words) {
        return std::count_if(card.cautions.begin(), card.cautions.end(), [&](const std::string& caution) {
            return caution.find(words) != std::string::npos;
        });
    };
    Diagnostics diagnostics;
    const Formula lean =
        formula_from("formula: 1\nname: Lean\ndough: { bread flour: 500 g, water: 325 g }\n");
    const Card card = make_card(lean, nullptr, request_of(), diagnostics).value();
    CHECK(count(card, "Raw flour") == 1);
    CHECK(count(card, "Egg or milk") == 0);
    CHECK(count(card, "mould") == 0);
    const Card rich = card_of(request_of());
    CHECK(count(rich, "Egg or milk") == 1);
    CHECK(count(rich, "mould") == 1);
    for (const std::string& note : rich.notes) {
        CHECK(note.find("Egg or milk") == std::string::npos); // not said twice
    }
}

TEST_CASE("card: a note of several lines stands on one") {
    const Formula noted = formula_from("formula: 1\nname: Noted\nnote: |\n  First line.\n  Second line.\n"
                                       "dough: { bread flour: 500 g, water: 325 g }\n");
    Diagnostics diagnostics;
    const Card card = make_card(noted, nullptr, request_of(), diagnostics).value();
    REQUIRE(card.notes.size() == 1);
    CHECK(card.notes.front() == "First line. Second line.");
}

TEST_CASE("card: the balance has what moved and why; a formula as written has its figures") {
    const Card card = card_of(request_of());
    CHECK(card.is_converted());
    CHECK(card.balance.size() == 7);
    CHECK(card.balance.front().name == "total flour");
    CHECK(card.balance.front().difference == "0 g");
    CHECK(card.reasons.size() == 2);
    Diagnostics diagnostics;
    const Card written = make_card(tin_loaf(), nullptr, request_of(), diagnostics).value();
    CHECK_FALSE(written.is_converted());
    CHECK(written.balance.front().after == "1000 g");
}

TEST_CASE("card: the formula before and after only where it is asked for") {
    CardRequest request = request_of();
    CHECK(card_of(request).side_by_side.empty());
    request.side_by_side = true;
    const Card card = card_of(request);
    CHECK(card.side_by_side.back().name == "instant yeast");
    CHECK(card.side_by_side.back().before == "7 g");
    CHECK(card.side_by_side.back().after == "0 g");
}

TEST_CASE("card: the water for the mix is told both ways, with what it was reckoned from") {
    CardRequest request = request_of();
    const Temperature room = Temperature::celsius(24.0);
    WaterRequest mix{
        .dough = Temperature::celsius(25.0),
        .mix = {.flour = Temperature::celsius(20.0), .room = room, .preferment = {}, .others = {}},
        .friction = kelvins(6.0),
        .logged = {},
        .weights = {}};
    request.forecast.water = plan_water(mix);
    CHECK(card_of(request).water_temperature ==
          "by factors 25 C; for a dough of 25 C (flour 20 C, room 24 C, friction 6 C)");
    // 75 - 30 - 24 - 12 = 9 of the tap's 15 C: ice takes up (15 - 9) x 4.19 kJ of (334.9 + 9 x 4.19) + 25.1.
    mix.mix.flour = Temperature::celsius(30.0);
    mix.friction = kelvins(12.0);
    mix.weights =
        MixWeights{.parts = {{MixPart::Kind::flour, "flour", grams(1000.0), 1970.0}}, .water = grams(1000.0)};
    request.forecast.water = plan_water(mix);
    CHECK(card_of(request).water_temperature.starts_with(
        "by factors 9 C, or 63 g of it as ice, the rest from the tap at 15 C; by heat "));
    mix.friction.reset();
    mix.dough = Temperature::celsius(44.0);
    mix.mix.flour = Temperature::celsius(4.0);
    request.forecast.water = plan_water(mix);
    CHECK(card_of(request).water_temperature.starts_with("by factors too hot to use: warm the flour; "));
}

TEST_CASE("card: without an engine's word there are no windows, no curve and no hours") {
    const Card card = card_of(request_of());
    CHECK(card.windows.empty());
    CHECK(card.curve.empty());
    CHECK(card.water_temperature.empty());
    CHECK(card.date.empty());
    CHECK(card.steps.front().clock.empty());
}

TEST_CASE("card: windows give the hours of a converted dough") {
    CardRequest request = request_of(made_up_forecast());
    request.hour = hour(CardHour::Of::mixing, "2031-03-07 18:00");
    const Card card = card_of(request);
    CHECK(card.date == "Friday 7 March 2031");
    REQUIRE(card.steps.size() == 7);
    CHECK(card.steps[2].name == "divide");
    CHECK(card.steps[2].clock == "Fri 22:30");
    CHECK(card.steps[5].clock == "Sat 00:20");
    CHECK(card.steps[6].name == "done");
    CHECK(card.steps[6].clock == "Sat 01:00");
    CHECK(card.columns.front().when.starts_with("begin Fri 12:00 (Fri 10:05 to Fri 13:10)"));
    REQUIRE(card.windows.size() == 3);
    CHECK(card.windows[1].name == "bulk");
    CHECK(card.windows[1].likely == "4 h 30 min");
    CHECK(card.windows[1].range == "3 h 30 min to 6 h 5 min");
    CHECK(card.windows[1].clock == "Fri 22:30 (Fri 21:30 to Sat 00:05)");
    CHECK(card.windows[1].signs == "Risen by half, domed, with bubbles at the sides.");
}

TEST_CASE("card: a dough that may never get there has no late end") {
    DoughForecast forecast = made_up_forecast();
    forecast.dough->stages.front().in_stage.latest = never();
    forecast.dough->stages.front().after_mixing.latest = never();
    CHECK(card_of(request_of(forecast)).windows[1].range == "3 h 30 min to much later");
    CardRequest request = request_of(forecast);
    request.hour = hour(CardHour::Of::mixing, "2031-03-07 18:00");
    const Conversion conversion = converted(tin_loaf(), {});
    Diagnostics diagnostics;
    CHECK_FALSE(make_card(conversion.after, &conversion, request, diagnostics));
    CHECK(diagnostics.in_order().front().code == Code::timeline_unknown);
}

TEST_CASE("card: the curve has the rise in percent, temperatures in the units asked for") {
    CardRequest request = request_of(made_up_forecast());
    const Card metric = card_of(request);
    CHECK(metric.curve.size() == 49);
    CHECK(metric.temperature_unit == "°C");
    CHECK(near(metric.curve.front().dough, 25.0, 0.0, 0.05)); // rounded to a tenth
    CHECK(near(metric.curve.back().hours, 8.0, 0.0, 0.005));
    request.scale = usual_scale(UnitSystem::us);
    const Card us = card_of(request);
    CHECK(us.temperature_unit == "°F");
    CHECK(near(us.curve.front().dough, 77.0, 0.0, 0.05));
}

TEST_CASE("card: the formula's own times lead back from the hour at which the bread is ready") {
    CardRequest request = request_of();
    request.hour = hour(CardHour::Of::ready, "2031-03-08 07:30");
    Diagnostics diagnostics;
    const Card card = make_card(with_levain(), nullptr, request, diagnostics).value();
    // 4 h 30 min of bulk, 2 h of proof, 40 min in the oven; the cooling comes after.
    CHECK(card.steps.front().clock == "Sat 00:20");
    CHECK(card.steps[4].clock == "Sat 06:50");
    CHECK(card.steps[5].name == "cool");
    CHECK(card.steps[5].clock == "Sat 07:30");
    CHECK(card.columns.front().when ==
          "begin Fri 15:20 (Fri 14:20 to Fri 16:20), ripe when the dough is mixed; "
          "ripen 8 to 10 h at 22 C");
}

TEST_CASE("card: long texts are cut, control characters shown as such") {
    Formula formula = with_levain();
    formula.name = std::string(10000, 'x');
    formula.note = "bell \a rings";
    Diagnostics diagnostics;
    const Card card = make_card(formula, nullptr, request_of(), diagnostics).value();
    CHECK(card.title.size() < 200);
    CHECK(card.notes.back() == "bell \xEF\xBF\xBD rings");
}

TEST_CASE("seed_levains: weight, hydration and blend stay") {
    ConversionRequest wish;
    wish.levain_hydration = Hydration(0.6);
    const Conversion conversion = converted(tin_loaf(), wish);
    Formula seeded = conversion.after;
    Diagnostics diagnostics;
    REQUIRE(seed_levains(seeded, {.of_levain = Fraction(0.3), .jar_hydration = Hydration(1.0), .place = {}},
                         diagnostics));
    const Overall after = compute_overall(seeded);
    for (const Line& line : conversion.overall_after.lines) {
        // Masses are decimals of a microgram again after the seed went in.
        CHECK(near(in_grams(after.mass_of(*line.ingredient)), in_grams(line.mass), 1e-9, 1e-6));
    }
    CHECK(near(in_grams(seeded.stages.front().lines.front().mass), 0.3 * in_grams(conversion.levain.mass()),
               1e-9, 1e-6));
}

TEST_CASE("seed_levains: a seed that brings too much water is refused") {
    ConversionRequest wish;
    wish.levain_hydration = Hydration(0.5);
    Formula formula = converted(tin_loaf(), wish).after;
    Diagnostics diagnostics;
    const Seed seed{.of_levain = Fraction(0.9), .jar_hydration = Hydration(1.25), .place = option("90%")};
    CHECK_FALSE(seed_levains(formula, seed, diagnostics));
    CHECK(diagnostics.in_order().front().code == Code::seed_unfit);
}

TEST_CASE("seed_levains: a levain with culture in it stays as it is") {
    Formula formula = formula_from(project_file("formulas/quayside-half-levain.yaml"));
    const Formula before = formula;
    Diagnostics diagnostics;
    REQUIRE(seed_levains(formula, {}, diagnostics));
    CHECK(formula.stages.front().lines.size() == before.stages.front().lines.size());
}

TEST_CASE("card: stages that the clock ends and nothing shows are no windows; others are found behind them") {
    DoughForecast forecast = made_up_forecast();
    StageWindow divide = forecast.dough->stages.front();
    divide.stage = "divide";
    divide.by_clock = true;
    divide.signs.clear();
    StageWindow fold = divide;
    fold.stage = "fold"; // which the process does not have
    forecast.dough->stages.insert(forecast.dough->stages.begin() + 1, {fold, divide});
    const Card card = card_of(request_of(forecast));
    REQUIRE(card.windows.size() == 3);
    CHECK(card.windows[1].name == "bulk");
    CHECK(card.windows[2].name == "proof");
}
