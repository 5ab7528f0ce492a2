// From written amounts to masses. Every mass is known up to the total flour F, as
//
//     mass = fixed + share F
//
// so one linear equation gives F: from the flours' own weights, or, where they are all
// percentages, from the flour weight or the dough weight that the formula states.
#include "formula/overall.hpp"
#include "formula/size_stage.hpp"
#include "formula/written_formula.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace leavenwright {
namespace {

constexpr double size_slack = 1e-9;         // relative, between two statements of one size
constexpr double makes_excess_slack = 0.05; // and this much more, for what sticks to the bowl
constexpr double overdrawn_slack = 1e-9;    // relative, of the ingredient

class Solver {
public:
    Solver(WrittenFormula written, Diagnostics& diagnostics)
        : written_(std::move(written)), diagnostics_(diagnostics) {}

    std::optional<Formula> solve() {
        const std::size_t errors_before = diagnostics_.error_count();
        StageSizer sizer(written_.lines, diagnostics_);
        for (WrittenStage& stage : written_.stages) {
            sized_.push_back(sizer.size(stage));
        }
        if (diagnostics_.error_count() != errors_before) {
            check_overall();
            return std::nullopt;
        }
        const auto flour = total_flour();
        if (!flour) {
            return std::nullopt;
        }
        fill(*flour);
        if (diagnostics_.error_count() == errors_before) {
            check_size();
            check_makes();
        }
        if (diagnostics_.error_count() != errors_before) {
            return std::nullopt;
        }
        return std::move(written_.formula);
    }

    void check() {
        StageSizer sizer(written_.lines, diagnostics_);
        for (WrittenStage& stage : written_.stages) {
            const bool has_flour =
                std::any_of(stage.lines.begin(), stage.lines.end(),
                            [](const WrittenLine& line) { return line.ingredient->is_flour(); });
            // a stage without a flour may have the dough's only one
            if (stage.is_whole && (has_flour || written_.are_lines_whole || !stage.prefermented_flour)) {
                sizer.size(stage);
            }
        }
        check_overall();
    }

private:
    // An overall formula lists everything: it adds up, or not, whatever its stages are.
    void check_overall() {
        if (written_.formula.notation == Notation::overall && written_.are_lines_whole) {
            total_flour();
        }
    }

    // What a stage brings per unit that is used. Constant where the stage scales as one.
    std::optional<double> flour_per_mass(std::size_t i) {
        const SizedStage& stage = sized_[i];
        const bool is_fixed = stage.mass.share == 0.0;
        const bool is_share = stage.mass.fixed_kg == 0.0 && stage.flour.fixed_kg == 0.0;
        if (is_fixed || is_share) {
            return is_fixed ? stage.flour.fixed_kg / stage.mass.fixed_kg
                            : stage.flour.share / stage.mass.share;
        }
        diagnostics_.error(Code::stage_size_missing, written_.stages[i].place,
                           in_quotes(written_.stages[i].name) +
                               " mixes weights and percentages, and only a part of it is used",
                           "write the stage in weights alone");
        return std::nullopt;
    }

    std::optional<double> total_flour() {
        Affine flour;
        Affine mass;
        for (const WrittenLine& line : written_.lines) {
            const Affine amount = amount_of(line);
            mass += amount;
            if (line.ingredient->is_flour()) {
                flour += amount;
            }
        }
        if (written_.formula.notation == Notation::dough) {
            for (std::size_t i = 0; i < sized_.size(); ++i) {
                const bool is_whole = !written_.stages[i].use || written_.stages[i].use->is_all;
                if (is_whole) {
                    flour += sized_[i].flour;
                } else if (const auto ratio = flour_per_mass(i)) {
                    flour += *ratio * sized_[i].used;
                } else {
                    return std::nullopt;
                }
                mass += sized_[i].used;
            }
        }
        return solve_flour(flour, mass);
    }

    std::optional<double> solve_flour(Affine flour, Affine mass) {
        if (flour.fixed_kg == 0.0 && flour.share == 0.0) {
            diagnostics_.error(Code::flour_missing, written_.lines_place, "the formula has no flour",
                               "list the flours with their amounts: bread flour: 500 g");
            return std::nullopt;
        }
        const bool is_all_percent = std::abs(flour.fixed_kg) < 1e-12;
        if (!is_all_percent) {
            if (flour.share >= 1.0 || flour.fixed_kg < 0.0) {
                report_flour_sum(diagnostics_, written_.lines_place, flour.share, FlourSum::beside_weights);
                return std::nullopt;
            }
            const double kg = flour.fixed_kg / (1.0 - flour.share);
            const bool contradicts =
                written_.flour_weight && std::abs(written_.flour_weight->value() - kg) > size_slack * kg;
            if (contradicts) {
                diagnostics_.error(
                    Code::size_given_twice, written_.flour_weight_place,
                    fmt::format("the flours of the formula weigh {:.6g} g already", kg * 1000.0),
                    "take 'flour weight' out, or write the flours as percentages");
                return std::nullopt;
            }
            return kg;
        }
        if (std::abs(flour.share - 1.0) > percent_sum_slack) {
            const bool counts_stages =
                written_.formula.notation == Notation::dough && !written_.stages.empty();
            report_flour_sum(diagnostics_, written_.lines_place, flour.share,
                             counts_stages ? FlourSum::with_stages : FlourSum::of_one_list);
            return std::nullopt;
        }
        if (written_.flour_weight) {
            return written_.flour_weight->value();
        }
        if (written_.formula.makes && written_.formula.makes->dough) {
            const double kg = (written_.formula.makes->dough->value() - mass.fixed_kg) / mass.share;
            if (kg > 0.0) {
                return kg;
            }
        }
        const bool has_promise = written_.formula.makes && written_.formula.makes->dough;
        diagnostics_.error(Code::formula_size_missing, written_.lines_place,
                           has_promise
                               ? "the amounts given by weight are more than the dough that 'makes' promises"
                               : "the formula is in percentages; nothing says how much dough it is for",
                           has_promise ? "check 'makes', or write those amounts as percentages"
                                       : "add 'makes: 2 x 850 g' or 'flour weight: 1 kg'");
        return std::nullopt;
    }

    static Line solved(const WrittenLine& line, double basis_kg) {
        return {.name = line.name,
                .ingredient = line.ingredient,
                .mass = line.is_percentage ? kilograms(line.ratio * basis_kg) : line.mass,
                .uncertainty = line.uncertainty,
                .piece = line.piece};
    }

    void fill(double flour_kg) {
        Formula& formula = written_.formula;
        for (const WrittenLine& line : written_.lines) {
            formula.dough.push_back(solved(line, flour_kg));
        }
        for (std::size_t i = 0; i < sized_.size(); ++i) {
            WrittenStage& written = written_.stages[i];
            const double basis_kg =
                is_preferment(written.kind) ? sized_[i].fresh_flour.at(flour_kg) : flour_kg;
            if (basis_kg <= 0.0) {
                diagnostics_.error(Code::stage_overdrawn, written.place,
                                   in_quotes(written.name) + " has more culture than its size allows",
                                   "give it less culture, or more flour");
                return;
            }
            Stage stage{.name = written.name,
                        .kind = written.kind,
                        .lines = {},
                        .culture_hydration = written.culture_hydration.value_or(Hydration(1.0)),
                        .used = kilograms(0.0),
                        .process = written.process};
            for (const WrittenLine& line : written.lines) {
                stage.lines.push_back(solved(line, basis_kg));
            }
            const bool is_part = written.use && !written.use->is_all;
            stage.used = is_part ? kilograms(sized_[i].used.at(flour_kg)) : stage.mass();
            check_use(stage, written);
            formula.stages.push_back(std::move(stage));
        }
        if (formula.notation == Notation::overall) {
            for (std::size_t i = 0; i < formula.stages.size(); ++i) {
                take_out(formula.stages[i], written_.stages[i]);
            }
            std::erase_if(formula.dough, [](const Line& line) { return line.mass.value() == 0.0; });
        }
    }

    void check_use(Stage& stage, const WrittenStage& written) {
        const double excess = stage.used.value() / stage.mass().value() - 1.0;
        if (excess > size_slack) {
            diagnostics_.error(Code::stage_overdrawn, written.use->place,
                               fmt::format("{} makes {:.6g} g; the dough takes {:.6g} g",
                                           in_quotes(stage.name), in_grams(stage.mass()),
                                           in_grams(stage.used)),
                               "take less, or make more of it");
        } else if (std::abs(excess) <= size_slack) {
            stage.used = stage.mass();
        }
    }

    // Out of the overall formula, for the `overall` notation.
    void take_out(const Stage& stage, const WrittenStage& written) {
        for (const Line& line : add_up(contents_of(stage, *written_.formula.pantry), {}).lines) {
            Mass missing = line.mass;
            Mass available = kilograms(0.0);
            for (Line& from : written_.formula.dough) {
                if (from.ingredient != line.ingredient) {
                    continue;
                }
                available += from.mass;
                const Mass taken = std::min(missing, from.mass);
                from.mass -= taken;
                missing -= taken;
                const bool is_dust = from.mass.value() <= overdrawn_slack * line.mass.value();
                from.mass = is_dust ? kilograms(0.0) : from.mass;
            }
            if (missing.value() > overdrawn_slack * line.mass.value()) {
                diagnostics_.error(
                    Code::stage_overdrawn, written.place,
                    fmt::format("{} holds {:.6g} g of {}; the overall formula has {:.6g} g left for it",
                                in_quotes(stage.name), in_grams(line.mass), in_quotes(line.name),
                                in_grams(available)),
                    "'overall' lists everything, the stages included: give it more, or write 'dough' for "
                    "what is added at mixing");
            }
        }
    }

    void check_size() {
        const Mass mass = written_.formula.dough_mass();
        if (!(mass <= largest_dough())) {
            diagnostics_.error(Code::amount_too_large, written_.lines_place,
                               fmt::format("the dough would weigh {:.6g} kg", mass.value()),
                               "check the amounts and their units");
        }
    }

    void check_makes() {
        const auto& makes = written_.formula.makes;
        if (!makes || !makes->dough) {
            return;
        }
        const double promised_kg = makes->dough->value();
        const double weighed_kg = written_.formula.dough_mass().value();
        const double excess = weighed_kg / promised_kg - 1.0;
        if (excess < -makes_short_slack || excess > makes_excess_slack) {
            diagnostics_.warning(Code::makes_mismatch, written_.makes_place,
                                 fmt::format("the formula makes {:.0f} g of dough, not {:.0f} g",
                                             weighed_kg * 1000.0, promised_kg * 1000.0),
                                 "change 'makes', or the amounts");
        }
    }

    WrittenFormula written_;
    Diagnostics& diagnostics_;
    std::vector<SizedStage> sized_;
};

} // namespace

void check_amounts(WrittenFormula written, Diagnostics& diagnostics) {
    Solver(std::move(written), diagnostics).check();
}

std::optional<Formula> solve_amounts(WrittenFormula written, Diagnostics& diagnostics) {
    return Solver(std::move(written), diagnostics).solve();
}

} // namespace leavenwright
