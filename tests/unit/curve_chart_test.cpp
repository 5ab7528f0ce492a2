#include "render/curve_chart.hpp"
#include "render/curve_rows.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace leavenwright;

namespace {

Card card_of(std::vector<CardCurvePoint> points) {
    Card card;
    card.curve = std::move(points);
    card.temperature_unit = "°C";
    return card;
}

CardCurvePoint point(double hours, double rise) {
    return {.hours = hours,
            .rise_low = rise * 0.8,
            .rise_likely = rise,
            .rise_high = rise * 1.2,
            .dough = 24.0,
            .surroundings = 23.0};
}

bool has_label(const CurveChart& chart, std::string_view text) {
    for (const ChartLabel& label : chart.labels) {
        if (label.text == text) {
            return true;
        }
    }
    return false;
}

} // namespace

TEST_CASE("draw_curve: lines stay in the frame, the likely rise within its band") {
    const CurveChart chart =
        draw_curve(card_of({point(0, 0), point(2, 20), point(4, 90), point(8, 140)}), 380, 250);
    REQUIRE(chart.likely.size() == 4);
    REQUIRE(chart.band.size() == 8);
    for (std::size_t i = 0; i < 4; ++i) {
        CHECK(chart.likely[i].x >= 0.0);
        CHECK(chart.likely[i].x <= 380.0);
        CHECK(chart.likely[i].y <= chart.band[7 - i].y); // y goes down: the low end is below
        CHECK(chart.likely[i].y >= chart.band[i].y);
        CHECK(chart.dough[i].y > chart.likely[i].y); // its panel is the lower one
        CHECK(chart.dough[i].y < chart.surroundings[i].y);
        CHECK(chart.surroundings[i].y < 250.0);
    }
}

TEST_CASE("draw_curve: axes have units, lines have names, no name stands over another") {
    const CurveChart chart = draw_curve(card_of({point(0, 0), point(6, 0.5)}), 380, 250);
    for (const char* text : {"hours after mixing", "rise, % of the mixed dough", "temperature, °C", "likely",
                             "1 of 10", "9 of 10", "dough", "around it"}) {
        CHECK_MESSAGE(has_label(chart, text), text);
    }
    for (std::size_t i = 0; i < chart.labels.size(); ++i) {
        for (std::size_t j = i + 1; j < chart.labels.size(); ++j) {
            const ChartLabel& left = chart.labels[i];
            const ChartLabel& right = chart.labels[j];
            const bool is_same_column = left.at.x == right.at.x && left.anchor == right.anchor;
            if (is_same_column) {
                CHECK_MESSAGE(std::abs(left.at.y - right.at.y) >= chart_text_size, left.text, " over ",
                              right.text);
            }
        }
    }
}

TEST_CASE("draw_curve: one point, and a dough that does not move") {
    const CurveChart chart = draw_curve(card_of({point(0, 0)}), 380, 250);
    REQUIRE(chart.likely.size() == 1);
    CHECK(std::isfinite(chart.likely.front().y));
    CHECK(draw_curve(card_of({}), 380, 250).labels.empty());
}

TEST_CASE("curve_rows: first and last point, ten at most") {
    std::vector<CardCurvePoint> points;
    for (int i = 0; i <= 48; ++i) {
        points.push_back(point(i / 6.0, i));
    }
    const std::vector<CurveRow> rows = curve_rows(card_of(points));
    REQUIRE(rows.size() == 10);
    CHECK(rows.front().time == "0 h");
    CHECK(rows.back().time == "8 h");
    CHECK(rows.back().rise == "48 %");
    CHECK(rows.back().dough == "24 °C");
    CHECK(curve_rows(card_of({point(0, 0)})).size() == 1);
}
