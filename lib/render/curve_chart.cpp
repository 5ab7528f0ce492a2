#include "render/curve_chart.hpp"

#include "quantity/show.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace leavenwright {
namespace {

constexpr double left_margin = 46.0;
constexpr double right_margin = 62.0;
constexpr double top_margin = 18.0;
constexpr double bottom_margin = 34.0;
constexpr double between_panels = 24.0;
constexpr double temperature_share = 0.3; // of the height for both panels
constexpr double label_distance = chart_text_size + 1.0;

// A step of 1, 2 or 5 times a power of ten that gives at most `most` steps over `span`.
double tick_step(double span, double most) {
    const double power = std::pow(10.0, std::floor(std::log10(std::max(span, 1e-6) / most)));
    for (const double step : {1.0, 2.0, 5.0}) {
        if (span <= most * step * power) {
            return step * power;
        }
    }
    return 10.0 * power;
}

// Values of one axis onto a stretch of the plane.
struct Scale {
    double from_value = 0.0;
    double to_value = 1.0;
    double from = 0.0;
    double to = 1.0;

    double operator()(double value) const {
        return from + (value - from_value) / (to_value - from_value) * (to - from);
    }
};

class CurveDrawing {
public:
    CurveDrawing(const Card& card, double width, double height) : card_(card) {
        chart_.width = width;
        chart_.height = height;
        const double room = height - top_margin - bottom_margin - between_panels;
        const double middle = top_margin + room * (1.0 - temperature_share);
        const double right = width - right_margin;
        hours_ = {0.0, std::max(card.curve.back().hours, 0.5), left_margin, right};
        rise_ = {0.0, highest(&CardCurvePoint::rise_high), middle, top_margin};
        const auto [low, high] = temperature_range();
        degrees_ = {low, high, height - bottom_margin, middle + between_panels};
    }

    CurveChart draw() {
        draw_hours();
        draw_panel(rise_, 4.0, "rise, % of the mixed dough");
        draw_panel(degrees_, 3.0, "temperature, " + card_.temperature_unit);
        draw_band();
        chart_.likely = line(&CardCurvePoint::rise_likely, rise_);
        chart_.dough = line(&CardCurvePoint::dough, degrees_);
        chart_.surroundings = line(&CardCurvePoint::surroundings, degrees_);
        name_lines();
        return std::move(chart_);
    }

private:
    double highest(double CardCurvePoint::*value) const {
        double most = 10.0;
        for (const CardCurvePoint& point : card_.curve) {
            most = std::max(most, point.*value);
        }
        return most * 1.05;
    }

    std::pair<double, double> temperature_range() const {
        double low = card_.curve.front().dough;
        double high = low;
        for (const CardCurvePoint& point : card_.curve) {
            low = std::min({low, point.dough, point.surroundings});
            high = std::max({high, point.dough, point.surroundings});
        }
        const double step = tick_step(std::max(high - low, 4.0), 3.0);
        low = std::floor((low - 0.5) / step) * step;
        return {low, std::max(std::ceil((high + 0.5) / step) * step, low + step)};
    }

    void draw_hours() {
        const double bottom = degrees_.from;
        const double step = tick_step(hours_.to_value, 8.0);
        for (double hour = 0.0; hour <= hours_.to_value + 1e-9; hour += step) {
            const double x = hours_(hour);
            chart_.grid.push_back({{x, rise_.to}, {x, rise_.from}});
            chart_.grid.push_back({{x, degrees_.to}, {x, bottom}});
            chart_.labels.push_back(
                {{x, bottom + label_distance + 2.0}, Anchor::middle, show_decimal(hour, 2)});
        }
        chart_.labels.push_back({{(hours_.from + hours_.to) / 2.0, bottom + 2.0 * label_distance + 4.0},
                                 Anchor::middle,
                                 "hours after mixing"});
    }

    void draw_panel(const Scale& scale, double most, const std::string& title) {
        const double step = tick_step(scale.to_value - scale.from_value, most);
        for (double value = scale.from_value; value <= scale.to_value + 1e-9; value += step) {
            const double y = scale(value);
            chart_.grid.push_back({{hours_.from, y}, {hours_.to, y}});
            chart_.labels.push_back(
                {{hours_.from - 5.0, y + chart_text_size / 3.0}, Anchor::end, show_decimal(value, 1)});
        }
        chart_.axes.push_back({{hours_.from, scale.to}, {hours_.from, scale.from}});
        chart_.axes.push_back({{hours_.from, scale.from}, {hours_.to, scale.from}});
        chart_.labels.push_back({{hours_.from + 4.0, scale.to - 5.0}, Anchor::start, title});
    }

    std::vector<ChartPoint> line(double CardCurvePoint::*value, const Scale& scale) const {
        std::vector<ChartPoint> points;
        for (const CardCurvePoint& point : card_.curve) {
            points.push_back({hours_(point.hours), scale(point.*value)});
        }
        return points;
    }

    void draw_band() {
        chart_.band = line(&CardCurvePoint::rise_high, rise_);
        const std::vector<ChartPoint> low = line(&CardCurvePoint::rise_low, rise_);
        chart_.band.insert(chart_.band.end(), low.rbegin(), low.rend());
    }

    // At the ends of the lines, from the upper down, none over another.
    void name_ends(std::vector<ChartLabel> names) {
        std::stable_sort(names.begin(), names.end(), [](const ChartLabel& left, const ChartLabel& right) {
            return left.at.y < right.at.y;
        });
        for (std::size_t i = 0; i < names.size(); ++i) {
            if (i > 0) {
                names[i].at.y = std::max(names[i].at.y, names[i - 1].at.y + label_distance);
            }
            chart_.labels.push_back(names[i]);
        }
    }

    void name_lines() {
        const double x = hours_.to + 4.0;
        const auto end = [&](double y, const std::string& text) {
            return ChartLabel{{x, y + chart_text_size / 3.0}, Anchor::start, text};
        };
        const CardCurvePoint& last = card_.curve.back();
        name_ends({end(rise_(last.rise_high), "9 of 10"), end(rise_(last.rise_likely), "likely"),
                   end(rise_(last.rise_low), "1 of 10")});
        name_ends({end(degrees_(last.dough), "dough"), end(degrees_(last.surroundings), "around it")});
    }

    const Card& card_;
    CurveChart chart_;
    Scale hours_;
    Scale rise_;
    Scale degrees_;
};

} // namespace

CurveChart draw_curve(const Card& card, double width, double height) {
    return card.curve.empty() ? CurveChart{} : CurveDrawing(card, width, height).draw();
}

} // namespace leavenwright
