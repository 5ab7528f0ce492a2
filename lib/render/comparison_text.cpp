#include "quantity/show.hpp"
#include "render/comparison.hpp"
#include "render/text_table.hpp"
#include "render/weigh_out.hpp"
#include "source/unicode.hpp"
#include "source/wrap_text.hpp"

#include <fmt/core.h>

#include <cmath>

namespace leavenwright {
namespace {

std::string in_grams_text(Mass mass) {
    return show_decimal(in_grams(mass), 2) + " g";
}

std::string difference_text(Mass before, Mass after) {
    const double grams_more = in_grams(after - before);
    return (grams_more > 0.005 ? "+" : "") + show_decimal(grams_more, 2) + " g";
}

void add_mass(TextTable& table, const ComparedMass& mass) {
    table.add_row({mass.name, in_grams_text(mass.before), in_grams_text(mass.after),
                   difference_text(mass.before, mass.after)});
}

} // namespace

std::string render_comparison_text(const Comparison& comparison, std::size_t columns) {
    std::string out = comparison.unchanged() ? "Nothing moved.\n" : "Something moved.\n";
    TextTable table(columns);
    table.add_row({"", "first", "second", "difference"});
    for (const ComparedRatio& ratio : comparison.hydrations) {
        const double points = (ratio.after - ratio.before) * 100.0;
        table.add_row(
            {ratio.name, show_percent(ratio.before), show_percent(ratio.after),
             (points > 0.005 ? "+" : "") + show_decimal(points, 2) + " %" + (ratio.moved ? " moved" : "")});
    }
    for (const ComparedMass& mass : comparison.masses) {
        table.add_row({mass.name, in_grams_text(mass.before), in_grams_text(mass.after),
                       difference_text(mass.before, mass.after) + (mass.moved ? " moved" : "")});
    }
    out += table.text();
    if (!comparison.yeast.empty()) {
        out += "packaged yeast, set apart with the water in it\n";
        TextTable yeast(columns);
        for (const ComparedMass& mass : comparison.yeast) {
            add_mass(yeast, mass);
        }
        out += yeast.text();
    }
    if (!comparison.unchanged() && comparison.scaled_by == 1.0 && comparison.masses.front().moved) {
        out += "The sizes differ: --any-size compares at the first's total flour.\n";
    }
    if (comparison.scaled_by != 1.0) {
        out += fmt::format("The second is shown x {}, at the total flour of the first.\n",
                           show_decimal(comparison.scaled_by, 5));
    }
    return out;
}

std::string render_overall_text(const Formula& formula, const Overall& overall, std::size_t columns) {
    std::string out = wrap_text(printable(formula.name, 400), "", "  ", columns);
    TextTable table(columns);
    const auto add = [&](const std::string& name, Mass mass) {
        table.add_row({name, in_grams_text(mass), show_percent(overall.percentage(mass).value())});
    };
    for (const Line& line : overall.lines) {
        add(line.name, line.mass);
    }
    table.add_rule(1);
    add("dough", overall.total);
    out += table.text();
    std::string hydration = fmt::format("hydration {} in added water, {} in true water",
                                        show_percent(overall.hydration_added().value()),
                                        show_percent(overall.hydration_true().value()));
    const double spread = overall.hydration_uncertainty().value();
    if (spread > noticeable_spread) {
        hydration += fmt::format("; cups, spoons and counts leave it {:.0f} to {:.0f} %",
                                 (overall.hydration_true().value() - spread) * 100.0,
                                 (overall.hydration_true().value() + spread) * 100.0);
    }
    out += wrap_text(hydration, "", "  ", columns);
    out += fmt::format("read as {}\n", formula.notation == Notation::dough ? "what is added at mixing (dough)"
                                                                           : "everything (overall)");
    for (const std::string& remark : formula.remarks) {
        out += wrap_text(printable(remark, 2000), "- ", "  ", columns);
    }
    return out;
}

} // namespace leavenwright
