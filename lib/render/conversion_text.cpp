#include "quantity/show.hpp"
#include "render/conversion.hpp"
#include "render/text_table.hpp"
#include "source/unicode.hpp"
#include "source/wrap_text.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace leavenwright {
namespace {

// The formula with every weight as the scale shows it, column by column.
struct WeighedFormula {
    Formula formula;
    Mass largest_error = kilograms(0.0);
    std::string largest_name;
};

void weigh_lines(std::vector<Line>& lines, const WeighingScale& scale, WeighedFormula& weighed) {
    std::vector<Mass> masses;
    for (const Line& line : lines) {
        masses.push_back(line.mass);
    }
    const Weighing weighing = weigh(masses, scale);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const Mass error = abs(weighing.masses[i] - lines[i].mass);
        if (error > weighed.largest_error) {
            weighed.largest_error = error;
            weighed.largest_name = lines[i].name;
        }
        lines[i].mass = weighing.masses[i];
    }
}

WeighedFormula weigh_formula(const Formula& formula, const WeighingScale& scale) {
    WeighedFormula weighed{.formula = formula, .largest_error = kilograms(0.0), .largest_name = {}};
    for (Stage& stage : weighed.formula.stages) {
        const bool is_whole = stage.used == stage.mass();
        weigh_lines(stage.lines, scale, weighed);
        const std::vector<Mass> used{stage.used};
        stage.used = is_whole ? stage.mass() : weigh(used, scale).total;
    }
    weigh_lines(weighed.formula.dough, scale, weighed);
    return weighed;
}

class ConversionSheet {
public:
    ConversionSheet(const Conversion& conversion, const TextStyle& style)
        : conversion_(conversion), style_(style) {}

    std::string text() {
        const WeighedFormula weighed = weigh_formula(conversion_.after, style_.scale);
        write_heading();
        for (const Stage& stage : weighed.formula.stages) {
            write_stage(stage);
        }
        write_dough(weighed.formula);
        write_removed();
        write_printed_hydration(weighed);
        write_balance();
        write_notes();
        return std::move(out_);
    }

private:
    void write_heading() {
        const Levain& levain = conversion_.levain;
        out_ += wrap_text(printable(conversion_.after.name, 400) + ", raised by a levain", "", "  ",
                          style_.columns);
        if (conversion_.after.makes) {
            out_ += "makes " + printable(conversion_.after.makes->text, 70) + "\n";
        }
        out_ += wrap_text(fmt::format("Levain: {} of the flour is prefermented, at {} hydration. As weight "
                                      "that is {} of the total flour, {} of "
                                      "the flour added at mixing.",
                                      show_percent(levain.prefermented_flour.value()),
                                      show_percent(levain.hydration.value()),
                                      show_percent(levain.on_total_flour.value()),
                                      std::isfinite(levain.on_dough_flour.value())
                                          ? show_percent(levain.on_dough_flour.value())
                                          : "all"),
                          "", "", style_.columns);
    }

    void write_stage(const Stage& stage) {
        const bool is_levain = stage.kind == StageKind::levain;
        out_ += "\n" + printable(stage.name, 60) +
                (is_levain ? ", ripe when the dough is mixed" : ", made ahead") + "\n";
        Mass flour = kilograms(0.0);
        for (const Line& line : stage.lines) {
            flour += line.ingredient->is_flour() ? line.mass : kilograms(0.0);
        }
        TextTable table(style_.columns);
        for (const Line& line : stage.lines) {
            // A preferment's own percentages; a soaker's are of the total flour.
            const double ratio = is_preferment(stage.kind) && flour.value() > 0.0
                                     ? line.mass.value() / flour.value()
                                     : line.mass.value() / conversion_.overall_after.total_flour.value();
            table.add_row({line.name, show_weighed(line.mass, style_.scale), show_percent(ratio)});
        }
        table.add_rule(1);
        table.add_row({"", show_weighed(stage.mass(), style_.scale), ""});
        if (stage.used < stage.mass()) {
            table.add_row({"into the dough", show_weighed(stage.used, style_.scale), ""});
        }
        out_ += table.text();
    }

    void write_dough(const Formula& weighed) {
        const Overall& overall = conversion_.overall_after;
        out_ += "\ndough\n";
        TextTable table(style_.columns);
        const std::vector<Line>& exact = conversion_.after.dough;
        Mass total = kilograms(0.0);
        double percent = 0.0;
        const auto add = [&](const std::string& name, Mass printed, Mass mass) {
            const double ratio = overall.percentage(mass).value();
            total += printed;
            percent += ratio;
            table.add_row({name, show_weighed(printed, style_.scale), show_percent(ratio)});
        };
        for (std::size_t i = 0; i < weighed.stages.size(); ++i) {
            add(weighed.stages[i].name, weighed.stages[i].used, conversion_.after.stages[i].used);
        }
        for (std::size_t i = 0; i < weighed.dough.size(); ++i) {
            add(weighed.dough[i].name, weighed.dough[i].mass, exact[i].mass);
        }
        table.add_rule(1);
        const auto& makes = conversion_.after.makes;
        table.add_row({"", show_weighed(total, style_.scale), show_percent(percent)});
        if (makes && makes->pieces && *makes->pieces > 1.0) {
            const std::vector<Mass> piece{total / *makes->pieces};
            table.add_row({"each of " + show_decimal(*makes->pieces, 2),
                           show_weighed(weigh(piece, style_.scale).total, style_.scale), ""});
        }
        out_ += table.text();
    }

    void write_removed() {
        if (conversion_.removed.empty()) {
            return;
        }
        out_ += "\ntaken out\n";
        TextTable table(style_.columns);
        for (const Removed& removed : conversion_.removed) {
            const std::vector<Mass> mass{removed.mass};
            table.add_row({removed.name, show_weighed(weigh(mass, style_.scale).total, style_.scale)});
        }
        out_ += table.text();
    }

    void write_printed_hydration(const WeighedFormula& weighed) {
        const Overall overall = compute_overall(weighed.formula);
        std::string text = fmt::format("As weighed: hydration {} in added water, {} in true water.",
                                       show_percent(overall.hydration_added().value()),
                                       show_percent(overall.hydration_true().value()));
        if (weighed.largest_error.value() > 1e-9) {
            text += fmt::format(" Rounding moved no weight by more than {} {} ({}).",
                                show_decimal(in_grams(weighed.largest_error), 3), "g",
                                printable(weighed.largest_name, 40));
        }
        out_ += "\n" + wrap_text(text, "", "", style_.columns);
        const double spread = conversion_.overall_before.hydration_uncertainty().value();
        if (spread > 5e-4) {
            const double middle = conversion_.overall_before.hydration_true().value();
            out_ += wrap_text(fmt::format("Cups, spoons and counts leave the true hydration between {:.0f} "
                                          "and {:.0f} %: weigh once to know.",
                                          (middle - spread) * 100.0, (middle + spread) * 100.0),
                              "", "", style_.columns);
        }
    }

    void write_balance() {
        out_ += "\nbalance\n";
        TextTable table(style_.columns);
        table.add_row({"", "before", "after", "difference"});
        const auto shown = [&](Mass mass) {
            const std::vector<Mass> one{mass};
            return show_weighed(weigh(one, style_.scale).total, style_.scale);
        };
        std::size_t meant = 0;
        std::vector<std::string> reasons;
        for (const BalanceRow& row : conversion_.balance) {
            std::string difference = show_difference(row.difference(), style_.scale);
            if (!row.meant.empty()) {
                difference += fmt::format(" ({})", ++meant);
                reasons.push_back(fmt::format("({}) {}: {}.", meant, row.name, row.meant));
            }
            table.add_row({row.name, shown(row.before), shown(row.after), difference});
        }
        const auto add_ratio = [&](const std::string& name, double before, double after) {
            const double points = std::abs(after - before) < 1e-9 ? 0.0 : (after - before) * 100.0;
            table.add_row({name, show_percent(before), show_percent(after), show_decimal(points, 2) + " %"});
        };
        const Overall& before = conversion_.overall_before;
        const Overall& after = conversion_.overall_after;
        add_ratio("hydration, added water", before.hydration_added().value(),
                  after.hydration_added().value());
        add_ratio("hydration, true water", before.hydration_true().value(), after.hydration_true().value());
        out_ += table.text();
        for (const std::string& reason : reasons) {
            out_ += wrap_text(printable(reason, 1000), "  ", "      ", style_.columns);
        }
    }

    void write_notes() {
        if (conversion_.notes.empty()) {
            return;
        }
        out_ += "\nnotes\n";
        for (const std::string& note : conversion_.notes) {
            out_ += wrap_text(printable(note, 2000), "- ", "  ", style_.columns);
        }
    }

    const Conversion& conversion_;
    const TextStyle& style_;
    std::string out_;
};

} // namespace

std::string render_conversion_text(const Conversion& conversion, const TextStyle& style) {
    return ConversionSheet(conversion, style).text();
}

} // namespace leavenwright
