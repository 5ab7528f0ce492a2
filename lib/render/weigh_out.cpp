#include "render/weigh_out.hpp"

#include "formula/weigh_formula.hpp"
#include "quantity/show.hpp"
#include "render/text_table.hpp"
#include "source/unicode.hpp"
#include "source/wrap_text.hpp"

namespace leavenwright {
namespace {

std::string stage_text(const WeighedColumn& column, const TextStyle& style) {
    TextTable table(style.columns);
    for (const WeighedRow& row : column.rows) {
        table.add_row({row.name, row.shown, show_percent(row.share.value())});
    }
    table.add_rule(1);
    table.add_row({"", column.shown_total, ""});
    if (column.used) {
        table.add_row({"into the dough", column.shown_used, ""});
    }
    const bool is_levain = column.kind == StageKind::levain;
    return "\n" + printable(column.name, 60) +
           (is_levain ? ", ripe when the dough is mixed" : ", made ahead") + "\n" + table.text();
}

std::string dough_text(const WeighedColumn& column, const TextStyle& style) {
    TextTable table(style.columns);
    for (const WeighedRow& row : column.rows) {
        table.add_row({row.name, row.shown, show_percent(row.share.value())});
    }
    table.add_rule(1);
    table.add_row({"", column.shown_total, show_percent(column.share.value())});
    if (column.piece) {
        table.add_row({"each of " + column.pieces, column.shown_piece, ""});
    }
    return "\ndough\n" + table.text();
}

} // namespace

WeighOut render_weigh_out(const Formula& formula, const TextStyle& style) {
    const WeighedFormula weighed = weigh_formula(formula, style.scale);
    std::string tables;
    for (const WeighedColumn& stage : weighed.stages) {
        tables += stage_text(stage, style);
    }
    return {.tables = tables + dough_text(weighed.dough, style),
            .as_weighed = wrap_text(weighed.as_weighed, "", "", style.columns)};
}

} // namespace leavenwright
