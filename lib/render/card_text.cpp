#include "render/card.hpp"
#include "render/curve_rows.hpp"
#include "render/text_table.hpp"
#include "source/unicode.hpp"
#include "source/wrap_text.hpp"

#include <fmt/core.h>

#include <algorithm>

namespace leavenwright {
namespace {

constexpr std::string_view box = "[ ] ";

class TextCard {
public:
    TextCard(const Card& card, std::size_t columns) : card_(card), columns_(columns) {}

    std::string text() {
        write_heading();
        for (const CardColumn& column : card_.columns) {
            write_column(column);
        }
        paragraph(card_.as_weighed);
        write_steps();
        write_windows();
        write_curve();
        write_figures("side by side", card_.side_by_side);
        write_figures("balance", card_.balance);
        for (const std::string& reason : card_.reasons) {
            out_ += wrap_text(reason, "  ", "      ", columns_);
        }
        write_allergens();
        write_list("cautions", card_.cautions);
        write_list("notes", card_.notes);
        out_ += "\n" + card_.version + "\n";
        return std::move(out_);
    }

private:
    void write_heading() {
        out_ += wrap_text(card_.title, "", "  ", columns_);
        if (!card_.makes.empty()) {
            out_ += wrap_text("makes " + card_.makes, "", "  ", columns_);
        }
        if (!card_.date.empty()) {
            out_ += "mixed on " + card_.date + "\n";
        }
        if (!card_.water_temperature.empty()) {
            out_ += wrap_text("water for the mix: " + card_.water_temperature, "", "  ", columns_);
        }
        if (!card_.levain.empty()) {
            out_ += wrap_text(card_.levain, "", "", columns_);
        }
    }

    void paragraph(const std::string& text) { out_ += "\n" + wrap_text(text, "", "", columns_); }

    void write_column(const CardColumn& column) {
        out_ += "\n" +
                wrap_text(column.name + (column.when.empty() ? "" : ", " + column.when), "", "  ", columns_);
        TextTable table(columns_);
        for (const CardRow& row : column.rows) {
            table.add_row({std::string(box) + row.name, row.weight, row.percent});
        }
        table.add_rule(1);
        const std::string indent(box.size(), ' ');
        table.add_row({indent + column.total.name, column.total.weight, column.total.percent});
        for (const CardRow& row : column.below) {
            table.add_row({indent + row.name, row.weight, row.percent});
        }
        out_ += table.text();
    }

    void write_steps() {
        if (card_.steps.empty()) {
            return;
        }
        out_ += "\nsteps\n";
        std::size_t clock = 0;
        for (const CardStep& step : card_.steps) {
            clock = std::max(clock, display_width(step.clock));
        }
        for (const CardStep& step : card_.steps) {
            std::string first = "  " + std::string(box);
            if (clock > 0) {
                first += step.clock + std::string(clock - display_width(step.clock) + 2, ' ');
            }
            const std::string next(display_width(first), ' ');
            out_ +=
                wrap_text(step.name + (step.detail.empty() ? "" : ": " + step.detail), first, next, columns_);
        }
    }

    void write_windows() {
        if (card_.windows.empty()) {
            return;
        }
        out_ += "\nwhen it is ready\n";
        for (const CardWindow& window : card_.windows) {
            std::string text = window.name + ": " + window.likely;
            text += window.range.empty() ? "" : ", from " + window.range;
            text += window.clock.empty() ? "" : "; by the clock " + window.clock;
            text += window.signs.empty() ? "." : ". " + window.signs;
            text += window.past.empty() ? "" : " Past it: " + window.past;
            out_ += wrap_text(text, "  ", "    ", columns_);
        }
    }

    void write_curve() {
        if (card_.curve.empty()) {
            return;
        }
        out_ += "\nrise after mixing, its middle and what 8 of 10 doughs keep to\n";
        TextTable table(columns_);
        table.add_row({"", "rise", "from", "to", "dough", "around it"});
        for (const CurveRow& row : curve_rows(card_)) {
            table.add_row({row.time, row.rise, row.low, row.high, row.dough, row.surroundings});
        }
        out_ += table.text();
        for (const std::string& setting : card_.settings) {
            out_ += wrap_text(setting, "  ", "    ", columns_);
        }
    }

    void write_figures(std::string_view heading, const std::vector<CardFigure>& figures) {
        if (figures.empty()) {
            return;
        }
        out_ += "\n" + std::string(heading) + "\n";
        TextTable table(columns_);
        const bool is_compared = !figures.front().before.empty();
        if (is_compared) {
            table.add_row({"", "before", "after", "difference"});
        }
        for (const CardFigure& figure : figures) {
            table.add_row(is_compared
                              ? std::vector{figure.name, figure.before, figure.after, figure.difference}
                              : std::vector{figure.name, figure.after});
        }
        out_ += table.text();
    }

    void write_allergens() {
        out_ += "\nallergens\n";
        out_ += wrap_text(std::string(eu_allergen_list) + ": " + joined_allergens(card_.eu_allergens), "  ",
                          "    ", columns_);
        out_ += wrap_text(std::string(us_allergen_list) + ": " + joined_allergens(card_.us_allergens), "  ",
                          "    ", columns_);
    }

    void write_list(std::string_view heading, const std::vector<std::string>& items) {
        if (items.empty()) {
            return;
        }
        out_ += "\n" + std::string(heading) + "\n";
        for (const std::string& item : items) {
            out_ += wrap_text(item, "- ", "  ", columns_);
        }
    }

    const Card& card_;
    std::size_t columns_;
    std::string out_;
};

} // namespace

std::string render_cards_text(std::span<const Card> cards, std::size_t columns) {
    std::string out;
    for (const Card& card : cards) {
        out +=
            (out.empty() ? "" : "\n" + std::string(columns, '=') + "\n\n") + TextCard(card, columns).text();
    }
    return out;
}

} // namespace leavenwright
