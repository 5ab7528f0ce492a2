#include "pdf/read_card.hpp"

#include <nlohmann/json.hpp>

namespace leavenwright {
namespace {

using Json = nlohmann::json;
using Texts = std::vector<std::string>;

std::string text_of(const Json& json, const char* key) {
    return json.at(key).get<std::string>();
}

CardRow row_of(const Json& json) {
    return {.name = text_of(json, "name"),
            .mass = grams(json.at("weight_g").get<double>()),
            .weight = text_of(json, "weight"),
            .percent = text_of(json, "percent")};
}

CardColumn column_of(const Json& json) {
    CardColumn column{.name = text_of(json, "name"),
                      .when = text_of(json, "when"),
                      .rows = {},
                      .total = row_of(json.at("total")),
                      .below = {}};
    for (const Json& row : json.at("rows")) {
        column.rows.push_back(row_of(row));
    }
    for (const Json& row : json.at("below")) {
        column.below.push_back(row_of(row));
    }
    return column;
}

CardWindow window_of(const Json& json) {
    return {.name = text_of(json, "name"),
            .likely = text_of(json, "likely"),
            .range = text_of(json, "range"),
            .clock = text_of(json, "clock"),
            .signs = text_of(json, "signs"),
            .past = text_of(json, "past")};
}

CardCurvePoint point_of(const Json& json) {
    return {.hours = json.at("hours").get<double>(),
            .rise_low = json.at("rise_low").get<double>(),
            .rise_likely = json.at("rise_likely").get<double>(),
            .rise_high = json.at("rise_high").get<double>(),
            .dough = json.at("dough").get<double>(),
            .surroundings = json.at("surroundings").get<double>()};
}

std::vector<CardFigure> figures_of(const Json& json) {
    std::vector<CardFigure> figures;
    for (const Json& figure : json) {
        figures.push_back({.name = text_of(figure, "name"),
                           .before = text_of(figure, "before"),
                           .after = text_of(figure, "after"),
                           .difference = text_of(figure, "difference")});
    }
    return figures;
}

void read_times(const Json& json, Card& card) {
    for (const Json& step : json.at("steps")) {
        card.steps.push_back({text_of(step, "name"), text_of(step, "clock"), text_of(step, "detail")});
    }
    for (const Json& window : json.at("windows")) {
        card.windows.push_back(window_of(window));
    }
    for (const Json& point : json.at("curve")) {
        card.curve.push_back(point_of(point));
    }
    card.temperature_unit = text_of(json, "temperature_unit");
    card.settings = json.at("settings").get<Texts>();
}

Card card_of(const Json& json) {
    Card card;
    card.title = text_of(json, "title");
    card.makes = text_of(json, "makes");
    card.date = text_of(json, "date");
    card.levain = text_of(json, "levain");
    card.water_temperature = text_of(json, "water_temperature");
    for (const Json& column : json.at("columns")) {
        card.columns.push_back(column_of(column));
    }
    card.as_weighed = text_of(json, "as_weighed");
    read_times(json, card);
    card.side_by_side = figures_of(json.at("side_by_side"));
    card.balance = figures_of(json.at("balance"));
    card.reasons = json.at("reasons").get<Texts>();
    card.eu_allergens = json.at("eu_allergens").get<Texts>();
    card.us_allergens = json.at("us_allergens").get<Texts>();
    card.cautions = json.at("cautions").get<Texts>();
    card.notes = json.at("notes").get<Texts>();
    card.version = text_of(json, "version");
    return card;
}

} // namespace

CardFile read_cards(const std::string& json) {
    const Json file = Json::parse(json);
    CardFile read;
    read.paper = file.at("paper") == "letter" ? Paper::letter : Paper::a4;
    for (const Json& card : file.at("cards")) {
        read.cards.push_back(card_of(card));
    }
    return read;
}

} // namespace leavenwright
