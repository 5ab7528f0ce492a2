#include "render/curve_rows.hpp"

#include "quantity/show.hpp"

#include <algorithm>

namespace leavenwright {

std::vector<CurveRow> curve_rows(const Card& card) {
    constexpr std::size_t rows_wanted = 10;
    std::vector<CurveRow> rows;
    const std::size_t count = card.curve.size();
    const std::size_t wanted = std::min(rows_wanted, count);
    for (std::size_t i = 0; i < wanted; ++i) {
        const CardCurvePoint& point = card.curve[wanted == 1 ? 0 : i * (count - 1) / (wanted - 1)];
        const auto degrees = [&](double value) {
            return show_decimal(value, 1) + " " + card.temperature_unit;
        };
        rows.push_back({.time = show_decimal(point.hours, 2) + " h",
                        .rise = show_decimal(point.rise_likely, 0) + " %",
                        .low = show_decimal(point.rise_low, 0) + " %",
                        .high = show_decimal(point.rise_high, 0) + " %",
                        .dough = degrees(point.dough),
                        .surroundings = degrees(point.surroundings)});
    }
    return rows;
}

} // namespace leavenwright
