#include "pdf/card_blocks.hpp"

#include "render/curve_chart.hpp"

#include <algorithm>

namespace leavenwright {
namespace {

// Sizes in points at size 1.
constexpr double title_size = 22.0;
constexpr double heading_size = 12.0;
constexpr double weight_size = 16.0;
constexpr double name_size = 13.0;
constexpr double step_size = 11.5;
constexpr double percent_size = 9.5;
constexpr double sum_size = 12.0;
constexpr double small_size = 8.5;
constexpr double box_size = 12.0;
constexpr double box_room = 20.0;
constexpr double row_padding = 3.5;
constexpr double chart_height = 178.0;
constexpr double soft = 0.28; // grey of what is said beside
constexpr double hairline = 0.6;

} // namespace

CardBlocks::CardBlocks(const Card& card, PdfDocument& pdf, double size, double width)
    : card_(card), pdf_(pdf), size_(size), width_(width) {
    measure_columns();
}

Block CardBlocks::text(const std::string& words, const Lettering& lettering, double gap, double text_width) {
    return {.height = pdf_.text_height(words, lettering, text_width),
            .gap = gap * size_,
            .stays_with_next = false,
            .draw = [this, words, lettering, text_width](Point at) {
                pdf_.draw_text(at, text_width, words, lettering);
            }};
}

Block CardBlocks::small(const std::string& words, double gap) {
    return text(words, {.size = small_size * size_}, gap, width_);
}

Block CardBlocks::title(std::string words, const std::string& beside) {
    const char first = words.empty() ? ' ' : words.front();
    if (first >= 'a' && first <= 'z') {
        words.front() = static_cast<char>(first - 'a' + 'A');
    }
    const std::string line = words + (beside.empty() ? "" : "  " + beside);
    const Lettering lettering{.size = heading_size * size_, .bold_bytes = words.size()};
    const double height = pdf_.text_height(line, lettering, width_);
    return {.height = height + 4.0 * size_,
            .gap = 11.0 * size_,
            .stays_with_next = true,
            .draw = [this, line, lettering, height](Point at) {
                pdf_.draw_text(at, width_, line, lettering);
                const double y = at.y + height + 1.5 * size_;
                pdf_.draw_line({{at.x, y}, {at.x + width_, y}}, {.width = 1.6});
            }};
}

void CardBlocks::draw_box(Point at, double height) {
    const double side = box_size * size_;
    const double y = at.y + (height - side) / 2.0;
    pdf_.draw_line(
        {{at.x + 1.0, y}, {at.x + side, y}, {at.x + side, y + side}, {at.x + 1.0, y + side}, {at.x + 1.0, y}},
        {.width = 1.0});
}

void CardBlocks::draw_hairline(Point at, double y) {
    pdf_.draw_line({{at.x, y}, {at.x + width_, y}}, {.width = hairline, .grey = 0.55});
}

void CardBlocks::measure_columns() {
    const auto widen = [&](double& width, const std::string& words, double size, bool bold) {
        width = std::max(width, pdf_.text_width(words, {.size = size * size_, .bold = bold}) + 1.0);
    };
    for (const CardColumn& column : card_.columns) {
        for (const CardRow& row : column.rows) {
            widen(weight_width_, row.weight, weight_size, true);
            widen(percent_width_, row.percent, percent_size, false);
        }
        widen(weight_width_, column.total.weight, sum_size, true);
        widen(percent_width_, column.total.percent, percent_size, false);
    }
    weight_width_ = std::min(weight_width_, width_ / 2.0);
    percent_width_ = std::min(percent_width_, width_ / 4.0);
}

Block CardBlocks::row(const CardRow& row) {
    const Lettering weight{.size = weight_size * size_, .bold = true, .align = Align::right};
    const Lettering name{.size = name_size * size_};
    const Lettering percent{.size = percent_size * size_, .align = Align::right, .grey = soft};
    const double name_x = box_room * size_ + weight_width_ + 8.0 * size_;
    const double name_width = width_ - name_x - percent_width_ - 4.0 * size_;
    const double weight_height = pdf_.text_height(row.weight, weight, weight_width_);
    const double name_height = pdf_.text_height(row.name, name, name_width);
    const double percent_height = pdf_.text_height(row.percent, percent, percent_width_);
    const double height = std::max(weight_height, name_height) + row_padding * size_;
    return {.height = height, .gap = 0.0, .stays_with_next = false, .draw = [=, this](Point at) {
                const auto middle = [&](double part) { return at.y + (height - part) / 2.0; };
                draw_box(at, height);
                pdf_.draw_text({at.x + box_room * size_, middle(weight_height)}, weight_width_, row.weight,
                               weight);
                pdf_.draw_text({at.x + name_x, middle(name_height)}, name_width, row.name, name);
                pdf_.draw_text({at.x + width_ - percent_width_, middle(percent_height)}, percent_width_,
                               row.percent, percent);
                draw_hairline(at, at.y + height);
            }};
}

Block CardBlocks::sum(const CardRow& row) {
    const Lettering weight{.size = sum_size * size_, .bold = true, .align = Align::right};
    const Lettering name{.size = sum_size * size_, .grey = soft};
    const Lettering percent{.size = percent_size * size_, .align = Align::right, .grey = soft};
    const double height = pdf_.text_height(row.weight, weight, weight_width_) + 1.5 * size_;
    const double name_x = box_room * size_ + weight_width_ + 8.0 * size_;
    return {.height = height, .gap = 1.0 * size_, .stays_with_next = false, .draw = [=, this](Point at) {
                pdf_.draw_text({at.x + box_room * size_, at.y}, weight_width_, row.weight, weight);
                pdf_.draw_text({at.x + name_x, at.y}, width_ - name_x, row.name, name);
                if (!row.percent.empty()) {
                    pdf_.draw_text({at.x + width_ - percent_width_, at.y + 2.0 * size_}, percent_width_,
                                   row.percent, percent);
                }
            }};
}

Block CardBlocks::step(const CardStep& step, double clock_width) {
    const Lettering clock{.size = step_size * size_, .bold = true};
    const std::string words = step.name + (step.detail.empty() ? "" : "  " + step.detail);
    const Lettering lettering{.size = step_size * size_, .bold_bytes = step.name.size()};
    const double text_x = box_room * size_ + clock_width;
    const double text_height = pdf_.text_height(words, lettering, width_ - text_x);
    const double height = std::max(text_height, box_size * size_) + (row_padding + 1.0) * size_;
    return {.height = height, .gap = 0.0, .stays_with_next = false, .draw = [=, this](Point at) {
                const double y = at.y + (height - text_height) / 2.0;
                draw_box(at, height);
                if (!step.clock.empty()) {
                    pdf_.draw_text({at.x + box_room * size_, y}, clock_width, step.clock, clock);
                }
                pdf_.draw_text({at.x + text_x, y}, width_ - text_x, words, lettering);
                draw_hairline(at, at.y + height);
            }};
}

std::vector<Block> CardBlocks::heading(double page_width) {
    const Lettering fact{.size = step_size * size_};
    std::vector<Block> blocks;
    blocks.push_back(text(card_.title, {.size = title_size * size_, .bold = true}, 0.0, page_width));
    const auto add = [&](const std::string& name, const std::string& words) {
        if (!words.empty()) {
            Lettering lettering = fact;
            lettering.bold_bytes = name.size();
            blocks.push_back(text(name + words, lettering, 1.0, page_width));
        }
    };
    add("makes ", card_.makes);
    add("mixed on ", card_.date);
    add("water for the mix: ", card_.water_temperature);
    if (!card_.levain.empty()) {
        blocks.push_back(text(card_.levain, {.size = percent_size * size_, .grey = soft}, 1.0, page_width));
    }
    return blocks;
}

std::vector<Block> CardBlocks::weigh_out() {
    std::vector<Block> blocks;
    for (const CardColumn& column : card_.columns) {
        blocks.push_back(title(column.name, column.when));
        for (const CardRow& each : column.rows) {
            blocks.push_back(row(each));
        }
        blocks.push_back(sum(column.total));
        for (const CardRow& each : column.below) {
            blocks.push_back(sum(each));
        }
    }
    blocks.push_back(small(card_.as_weighed, 5.0));
    return blocks;
}

Block CardBlocks::curve() {
    const double scale = 0.82 * size_;
    const CurveChart chart = draw_curve(card_, width_ / scale, chart_height / 0.82);
    return {.height = chart.height * scale,
            .gap = 2.0,
            .stays_with_next = false,
            .draw = [this, chart, scale](Point at) {
                const auto place = [&](const ChartPoint& point) {
                    return Point{at.x + point.x * scale, at.y + point.y * scale};
                };
                const auto places = [&](const std::vector<ChartPoint>& points) {
                    std::vector<Point> line;
                    std::transform(points.begin(), points.end(), std::back_inserter(line), place);
                    return line;
                };
                for (const ChartLine& line : chart.grid) {
                    pdf_.draw_line({place(line.from), place(line.to)}, {.width = 0.4, .grey = 0.7});
                }
                pdf_.fill(places(chart.band), 0.85);
                pdf_.draw_line(places(chart.likely), {.width = 2.0});
                pdf_.draw_line(places(chart.dough), {.width = 1.5});
                pdf_.draw_line(places(chart.surroundings), {.width = 1.1, .is_broken = true});
                for (const ChartLine& line : chart.axes) {
                    pdf_.draw_line({place(line.from), place(line.to)}, {.width = 0.8});
                }
                for (const ChartLabel& label : chart.labels) {
                    const Align align = label.anchor == Anchor::end      ? Align::right
                                        : label.anchor == Anchor::middle ? Align::middle
                                                                         : Align::left;
                    pdf_.draw_label(place(label.at), label.text,
                                    {.size = chart_text_size * scale, .align = align});
                }
            }};
}

void CardBlocks::add_steps(std::vector<Block>& blocks) {
    if (card_.steps.empty()) {
        return;
    }
    blocks.push_back(title("Steps", ""));
    double clock = 0.0;
    for (const CardStep& each : card_.steps) {
        const Lettering lettering{.size = step_size * size_, .bold = true};
        clock = std::max(clock, each.clock.empty() ? 0.0 : pdf_.text_width(each.clock, lettering) + 8.0);
    }
    for (const CardStep& each : card_.steps) {
        blocks.push_back(step(each, clock));
    }
}

void CardBlocks::add_windows(std::vector<Block>& blocks) {
    if (!card_.windows.empty()) {
        blocks.push_back(title("When it is ready", ""));
    }
    for (const CardWindow& window : card_.windows) {
        const std::string head = window.name + " " + window.likely;
        blocks.push_back(text(head + (window.range.empty() ? "" : " (" + window.range + ")"),
                              {.size = step_size * size_, .bold_bytes = head.size()}, 2.0, width_));
        for (const std::string& line : window.lines()) {
            blocks.back().stays_with_next = true;
            blocks.push_back(text(line, {.size = percent_size * size_}, 0.0, width_));
        }
    }
}

std::vector<Block> CardBlocks::work() {
    std::vector<Block> blocks;
    add_steps(blocks);
    add_windows(blocks);
    if (!card_.curve.empty()) {
        blocks.push_back(title("The rise", ""));
        blocks.push_back(curve());
    }
    for (const std::string& setting : card_.settings) {
        blocks.push_back(small(setting, 1.0));
    }
    if (!card_.notes.empty()) {
        blocks.push_back(title("Notes", ""));
    }
    for (const std::string& note : card_.notes) {
        blocks.push_back(small(note, 1.5));
    }
    return blocks;
}

Block CardBlocks::figure_row(const std::vector<std::string>& cells, double grey) {
    const Lettering left{.size = small_size * size_, .grey = grey};
    const Lettering right{.size = small_size * size_, .align = Align::right, .grey = grey};
    // Of the width: the name, before, after, difference; or the name and one figure.
    const std::vector<double> shares =
        cells.size() > 2 ? std::vector{0.41, 0.17, 0.17, 0.25} : std::vector{0.7, 0.3};
    const double first = shares.front() * width_;
    const double height = pdf_.text_height(cells.front(), left, first);
    return {.height = height + 1.0, .gap = 0.0, .stays_with_next = false, .draw = [=, this](Point at) {
                pdf_.draw_text(at, first, cells.front(), left);
                double x = at.x + first;
                for (std::size_t i = 1; i < cells.size(); ++i) {
                    pdf_.draw_text({x, at.y}, shares[i] * width_, cells[i], right);
                    x += shares[i] * width_;
                }
                draw_hairline(at, at.y + height + 0.5);
            }};
}

void CardBlocks::add_figures(std::vector<Block>& blocks, const std::string& heading,
                             const std::vector<CardFigure>& figures) {
    if (figures.empty()) {
        return;
    }
    blocks.push_back(title(heading, ""));
    const bool is_compared = !figures.front().before.empty();
    if (is_compared) {
        blocks.push_back(figure_row({" ", "before", "after", "difference"}, soft));
        blocks.back().stays_with_next = true;
    }
    for (const CardFigure& figure : figures) {
        blocks.push_back(is_compared
                             ? figure_row({figure.name, figure.before, figure.after, figure.difference}, 0.0)
                             : figure_row({figure.name, figure.after}, 0.0));
    }
}

std::vector<Block> CardBlocks::figures() {
    std::vector<Block> blocks;
    add_figures(blocks, "Side by side", card_.side_by_side);
    add_figures(blocks, "Balance", card_.balance);
    for (const std::string& reason : card_.reasons) {
        blocks.push_back(small(reason, 1.0));
    }
    return blocks;
}

std::vector<Block> CardBlocks::cautions() {
    std::vector<Block> blocks;
    blocks.push_back(title("Allergens", ""));
    blocks.push_back(small(std::string(eu_allergen_list) + ": " + joined_allergens(card_.eu_allergens), 0.0));
    blocks.push_back(small(std::string(us_allergen_list) + ": " + joined_allergens(card_.us_allergens), 2.0));
    blocks.push_back(title("Cautions", ""));
    for (const std::string& caution : card_.cautions) {
        blocks.push_back(small(caution, 2.0));
    }
    blocks.push_back(text(card_.version, {.size = small_size * size_, .grey = soft}, 6.0, width_));
    return blocks;
}

} // namespace leavenwright
