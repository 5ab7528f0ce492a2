#include "formula/weigh_formula.hpp"

#include "quantity/show.hpp"
#include "source/unicode.hpp"

#include <fmt/core.h>

namespace leavenwright {
namespace {

std::vector<Mass> masses_of(const std::vector<Line>& lines) {
    std::vector<Mass> masses;
    for (const Line& line : lines) {
        masses.push_back(line.mass);
    }
    return masses;
}

// A copy of the formula whose weights are those that the scale shows, column by column.
class RoundedFormula {
public:
    RoundedFormula(const Formula& formula, const WeighingScale& scale) : formula_(formula), scale_(scale) {
        for (Stage& stage : formula_.stages) {
            const bool is_whole = stage.used == stage.mass();
            round(stage.lines);
            const std::vector<Mass> used{stage.used};
            stage.used = is_whole ? stage.mass() : weigh(used, scale_).total;
            note_error(stage.name, abs(stage.used - used.front()));
        }
        round(formula_.dough);
    }

    const Formula& formula() const { return formula_; }

    std::string as_weighed() const {
        const Overall overall = compute_overall(formula_);
        if (!(overall.total_flour.value() > 0.0)) {
            return "As weighed: the scale shows nothing of so little flour.";
        }
        std::string text = fmt::format("As weighed: hydration {} in added water, {} in true water.",
                                       show_percent(overall.hydration_added().value()),
                                       show_percent(overall.hydration_true().value()));
        if (largest_error_.value() > 1e-9) {
            text += fmt::format(" Rounding moved no weight by more than {} g ({}).",
                                show_decimal(in_grams(largest_error_), 3), printable(largest_name_, 40));
        }
        return text;
    }

private:
    void round(std::vector<Line>& lines) {
        const Weighing weighing = weigh(masses_of(lines), scale_);
        for (std::size_t i = 0; i < lines.size(); ++i) {
            note_error(lines[i].name, abs(weighing.masses[i] - lines[i].mass));
            lines[i].mass = weighing.masses[i];
        }
    }

    void note_error(const std::string& name, Mass error) {
        if (error > largest_error_) {
            largest_error_ = error;
            largest_name_ = name;
        }
    }

    Formula formula_;
    WeighingScale scale_;
    Mass largest_error_ = kilograms(0.0);
    std::string largest_name_;
};

class ColumnWriter {
public:
    ColumnWriter(const Formula& exact, const Formula& rounded, const WeighingScale& scale)
        : exact_(exact), rounded_(rounded), total_flour_(compute_overall(exact).total_flour), scale_(scale) {}

    WeighedColumn stage(std::size_t index) const {
        const Stage& exact = exact_.stages[index];
        const Stage& rounded = rounded_.stages[index];
        const Mass flour = add_up(exact.lines, {}).total_flour;
        // A preferment's own percentages; a soaker's are of the total flour.
        const bool has_own = is_preferment(exact.kind) && flour.value() > 0.0;
        WeighedColumn column = empty_column(rounded.name, rounded.kind);
        for (std::size_t i = 0; i < exact.lines.size(); ++i) {
            const Mass mass = rounded.lines[i].mass;
            add(column, {.name = rounded.lines[i].name,
                         .ingredient = rounded.lines[i].ingredient,
                         .mass = mass,
                         .shown = show_weighed(mass, scale_),
                         .share = share_of(exact.lines[i].mass, has_own ? flour : total_flour_)});
        }
        column.shown_total = show_sum(column.total, masses_of(rounded.lines), scale_);
        if (rounded.used < rounded.mass()) {
            column.used = rounded.used;
            column.shown_used = show_weighed(rounded.used, scale_);
        }
        return column;
    }

    WeighedColumn dough() const {
        WeighedColumn column = empty_column("dough", StageKind::dough);
        std::vector<Mass> parts;
        // A stage that goes in whole has the decimals of what it is made of.
        const auto add_row = [&](const std::string& name, const Ingredient* ingredient, Mass rounded,
                                 Mass exact, const std::vector<Mass>& made_of) {
            parts.insert(parts.end(), made_of.begin(), made_of.end());
            add(column, {.name = name,
                         .ingredient = ingredient,
                         .mass = rounded,
                         .shown = show_sum(rounded, made_of, scale_),
                         .share = share_of(exact, total_flour_)});
        };
        for (std::size_t i = 0; i < rounded_.stages.size(); ++i) {
            const Stage& stage = rounded_.stages[i];
            const bool is_whole = stage.used == stage.mass();
            add_row(stage.name, nullptr, stage.used, exact_.stages[i].used,
                    is_whole ? masses_of(stage.lines) : std::vector<Mass>{stage.used});
        }
        for (std::size_t i = 0; i < rounded_.dough.size(); ++i) {
            const Line& line = rounded_.dough[i];
            add_row(line.name, line.ingredient, line.mass, exact_.dough[i].mass, {line.mass});
        }
        column.shown_total = show_sum(column.total, parts, scale_);
        divide(column);
        return column;
    }

private:
    static WeighedColumn empty_column(const std::string& name, StageKind kind) {
        WeighedColumn column;
        column.name = name;
        column.kind = kind;
        column.total = kilograms(0.0);
        return column;
    }

    static WrittenPercentage share_of(Mass part, Mass whole) { return WrittenPercentage::of(part, whole); }

    static void add(WeighedColumn& column, WeighedRow row) {
        column.total += row.mass;
        column.share = WrittenPercentage(column.share.value() + row.share.value());
        column.rows.push_back(std::move(row));
    }

    void divide(WeighedColumn& dough) const {
        const auto& makes = exact_.makes;
        if (makes && makes->pieces && *makes->pieces > 1.0) {
            const std::vector<Mass> piece{dough.total / *makes->pieces};
            dough.pieces = show_decimal(*makes->pieces, 2);
            dough.piece = weigh(piece, scale_).total;
            dough.shown_piece = show_weighed(*dough.piece, scale_);
        }
    }

    const Formula& exact_;
    const Formula& rounded_;
    Mass total_flour_;
    const WeighingScale& scale_;
};

} // namespace

WeighedFormula weigh_formula(const Formula& formula, const WeighingScale& scale) {
    const RoundedFormula rounded(formula, scale);
    const ColumnWriter columns(formula, rounded.formula(), scale);
    WeighedFormula weighed;
    for (std::size_t i = 0; i < formula.stages.size(); ++i) {
        weighed.stages.push_back(columns.stage(i));
    }
    weighed.dough = columns.dough();
    weighed.as_weighed = rounded.as_weighed();
    return weighed;
}

} // namespace leavenwright
