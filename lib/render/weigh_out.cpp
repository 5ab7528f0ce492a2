#include "render/weigh_out.hpp"

#include "quantity/show.hpp"
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

std::vector<Mass> masses_of(const std::vector<Line>& lines) {
    std::vector<Mass> masses;
    for (const Line& line : lines) {
        masses.push_back(line.mass);
    }
    return masses;
}

void weigh_lines(std::vector<Line>& lines, const WeighingScale& scale, WeighedFormula& weighed) {
    const Weighing weighing = weigh(masses_of(lines), scale);
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
        const Mass error = abs(stage.used - used.front());
        if (error > weighed.largest_error) {
            weighed.largest_error = error;
            weighed.largest_name = stage.name;
        }
    }
    weigh_lines(weighed.formula.dough, scale, weighed);
    return weighed;
}

class WeighOutSheet {
public:
    WeighOutSheet(const Formula& formula, const TextStyle& style)
        : formula_(formula), overall_(compute_overall(formula)), style_(style) {}

    WeighOut write() {
        const WeighedFormula weighed = weigh_formula(formula_, style_.scale);
        for (std::size_t i = 0; i < weighed.formula.stages.size(); ++i) {
            write_stage(weighed.formula.stages[i], formula_.stages[i]);
        }
        write_dough(weighed.formula);
        return {.tables = std::move(out_), .as_weighed = as_weighed(weighed)};
    }

private:
    // Weights as printed, percentages of the exact ones.
    void write_stage(const Stage& printed, const Stage& exact) {
        const bool is_levain = printed.kind == StageKind::levain;
        out_ += "\n" + printable(printed.name, 60) +
                (is_levain ? ", ripe when the dough is mixed" : ", made ahead") + "\n";
        Mass flour = kilograms(0.0);
        for (const Line& line : exact.lines) {
            flour += line.ingredient->is_flour() ? line.mass : kilograms(0.0);
        }
        TextTable table(style_.columns);
        for (std::size_t i = 0; i < exact.lines.size(); ++i) {
            // A preferment's own percentages; a soaker's are of the total flour.
            const bool has_own = is_preferment(exact.kind) && flour.value() > 0.0;
            const double ratio = (exact.lines[i].mass / (has_own ? flour : overall_.total_flour)).value();
            table.add_row({printed.lines[i].name, show_weighed(printed.lines[i].mass, style_.scale),
                           show_percent(ratio)});
        }
        table.add_rule(1);
        table.add_row({"", show_sum(printed.mass(), masses_of(printed.lines), style_.scale), ""});
        if (printed.used < printed.mass()) {
            table.add_row({"into the dough", show_weighed(printed.used, style_.scale), ""});
        }
        out_ += table.text();
    }

    void write_dough(const Formula& weighed) {
        out_ += "\ndough\n";
        TextTable table(style_.columns);
        const std::vector<Line>& exact = formula_.dough;
        Mass total = kilograms(0.0);
        std::vector<Mass> parts;
        double percent = 0.0;
        // A stage that goes in whole has the decimals of what it is made of.
        const auto add = [&](const std::string& name, Mass printed, Mass mass,
                             const std::vector<Mass>& made_of) {
            const double ratio = overall_.percentage(mass).value();
            total += printed;
            parts.insert(parts.end(), made_of.begin(), made_of.end());
            percent += ratio;
            table.add_row({name, show_sum(printed, made_of, style_.scale), show_percent(ratio)});
        };
        for (std::size_t i = 0; i < weighed.stages.size(); ++i) {
            const Stage& stage = weighed.stages[i];
            const bool is_whole = stage.used == stage.mass();
            add(stage.name, stage.used, formula_.stages[i].used,
                is_whole ? masses_of(stage.lines) : std::vector<Mass>{stage.used});
        }
        for (std::size_t i = 0; i < weighed.dough.size(); ++i) {
            add(weighed.dough[i].name, weighed.dough[i].mass, exact[i].mass, {weighed.dough[i].mass});
        }
        table.add_rule(1);
        const auto& makes = formula_.makes;
        table.add_row({"", show_sum(total, parts, style_.scale), show_percent(percent)});
        if (makes && makes->pieces && *makes->pieces > 1.0) {
            const std::vector<Mass> piece{total / *makes->pieces};
            table.add_row({"each of " + show_decimal(*makes->pieces, 2),
                           show_weighed(weigh(piece, style_.scale).total, style_.scale), ""});
        }
        out_ += table.text();
    }

    std::string as_weighed(const WeighedFormula& weighed) const {
        const Overall overall = compute_overall(weighed.formula);
        if (overall.total_flour.value() <= 0.0) {
            return "As weighed: the scale shows nothing of so little flour.\n";
        }
        std::string text = fmt::format("As weighed: hydration {} in added water, {} in true water.",
                                       show_percent(overall.hydration_added().value()),
                                       show_percent(overall.hydration_true().value()));
        if (weighed.largest_error.value() > 1e-9) {
            text += fmt::format(" Rounding moved no weight by more than {} {} ({}).",
                                show_decimal(in_grams(weighed.largest_error), 3), "g",
                                printable(weighed.largest_name, 40));
        }
        return wrap_text(text, "", "", style_.columns);
    }
    const Formula& formula_;
    Overall overall_;
    const TextStyle& style_;
    std::string out_;
};

} // namespace

WeighOut render_weigh_out(const Formula& formula, const TextStyle& style) {
    return WeighOutSheet(formula, style).write();
}

} // namespace leavenwright
