#include "card/card.hpp"

#include "card/card_times.hpp"
#include "card/mix_water.hpp"
#include "convert/describe_conversion.hpp"
#include "formula/weigh_formula.hpp"
#include "quantity/show.hpp"
#include "source/unicode.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <string_view>

namespace leavenwright {
namespace {

// In display columns: a page has room for no more, whatever stands in a formula.
constexpr std::size_t longest_title = 160;
constexpr std::size_t longest_name = 60;
constexpr std::size_t longest_note = 600;

class CardWriter {
public:
    CardWriter(const Formula& formula, const Conversion* conversion, const CardRequest& request)
        : formula_(formula), conversion_(conversion), request_(request), overall_(compute_overall(formula)) {}

    Card write() {
        write_heading();
        write_columns();
        if (request_.side_by_side && conversion_ != nullptr) {
            write_side_by_side();
        }
        write_balance();
        write_allergens();
        write_cautions();
        write_notes();
        return std::move(card_);
    }

private:
    void write_heading() {
        card_.title = printable(formula_.name, longest_title);
        if (conversion_ != nullptr) {
            card_.title += ", raised by a levain";
            card_.levain = describe_levain(conversion_->levain);
        }
        card_.makes = formula_.makes ? printable(formula_.makes->text, longest_name) : "";
        if (request_.forecast.water) {
            card_.water_temperature = describe_mix_water(*request_.forecast.water, request_.scale);
        }
        card_.version = request_.version;
    }

    static CardRow row_of(const WeighedRow& row) {
        const bool is_culture = row.ingredient != nullptr && row.ingredient->is_culture();
        return {.name = printable(row.name, longest_name) + (is_culture ? ", from the jar" : ""),
                .mass = row.mass,
                .weight = row.shown,
                .percent = show_percent(row.share.value())};
    }

    static CardColumn column_of(const WeighedColumn& weighed, const std::string& when) {
        CardColumn column{.name = printable(weighed.name, longest_name),
                          .when = when,
                          .rows = {},
                          .total = {"in all", weighed.total, weighed.shown_total, ""},
                          .below = {}};
        for (const WeighedRow& row : weighed.rows) {
            column.rows.push_back(row_of(row));
        }
        return column;
    }

    void write_columns() {
        const WeighedFormula weighed = weigh_formula(formula_, request_.scale);
        for (const WeighedColumn& stage : weighed.stages) {
            const bool is_levain = stage.kind == StageKind::levain;
            CardColumn column = column_of(stage, is_levain ? "ripe when the dough is mixed" : "made ahead");
            if (stage.used) {
                const Mass rest = stage.total - *stage.used;
                column.below.push_back({"into the dough", *stage.used, stage.shown_used, ""});
                column.below.push_back({is_levain ? "back to the jar" : "kept back", rest,
                                        show_weighed(rest, request_.scale), ""});
            }
            card_.columns.push_back(std::move(column));
        }
        CardColumn dough = column_of(weighed.dough, "");
        dough.total.percent = show_percent(weighed.dough.share.value());
        if (weighed.dough.piece) {
            dough.below.push_back(
                {"each of " + weighed.dough.pieces, *weighed.dough.piece, weighed.dough.shown_piece, ""});
        }
        card_.columns.push_back(std::move(dough));
        card_.as_weighed = weighed.as_weighed;
    }

    std::string shown(Mass mass) const {
        const std::vector<Mass> one{mass};
        return show_weighed(weigh(one, request_.scale).total, request_.scale);
    }

    // Every ingredient of all stages, before and after.
    void write_side_by_side() {
        const Overall& before = conversion_->overall_before;
        for (const Line& line : before.lines) {
            const Mass after = overall_.mass_of(*line.ingredient);
            card_.side_by_side.push_back({.name = printable(line.name, longest_name),
                                          .before = shown(line.mass),
                                          .after = shown(after),
                                          .difference = show_difference(after - line.mass, request_.scale)});
        }
        for (const Line& line : overall_.lines) {
            if (before.mass_of(*line.ingredient).value() == 0.0) {
                card_.side_by_side.push_back({.name = printable(line.name, longest_name),
                                              .before = shown(kilograms(0.0)),
                                              .after = shown(line.mass),
                                              .difference = show_difference(line.mass, request_.scale)});
            }
        }
    }

    void write_balance() {
        if (conversion_ == nullptr) {
            write_figures();
            return;
        }
        constexpr auto quantities =
            std::to_array<std::string_view>({"total flour", "added water", "true water", "salt", "dough"});
        std::vector<BalanceRow> rows;
        for (const BalanceRow& row : conversion_->balance) {
            if (std::find(quantities.begin(), quantities.end(), row.name) != quantities.end()) {
                rows.push_back(row);
            }
        }
        const ShownBalance balance = show_balance(rows, *conversion_, request_.scale);
        for (const ShownBalanceRow& row : balance.rows) {
            card_.balance.push_back({row.name, row.before, row.after, row.difference});
        }
        card_.reasons = balance.reasons;
    }

    // Nothing was moved: what the dough holds.
    void write_figures() {
        const auto add = [&](const std::string& name, const std::string& figure) {
            card_.balance.push_back({.name = name, .before = {}, .after = figure, .difference = {}});
        };
        add("total flour", shown(overall_.total_flour));
        add("added water", shown(overall_.added_water));
        add("true water", shown(overall_.true_water));
        add("salt", shown(overall_.salt));
        add("dough", shown(overall_.total));
        add("hydration, added water", show_percent(overall_.hydration_added().value()));
        add("hydration, true water", show_percent(overall_.hydration_true().value()));
    }

    void write_allergens() {
        const auto collect = [](std::vector<std::string>& list, std::span<const std::string_view> names) {
            for (const std::string_view name : names) {
                if (std::find(list.begin(), list.end(), name) == list.end()) {
                    list.emplace_back(name);
                }
            }
        };
        for (const Line& line : overall_.lines) {
            collect(card_.eu_allergens, line.ingredient->eu_allergens);
            collect(card_.us_allergens, line.ingredient->us_allergens);
        }
        std::sort(card_.eu_allergens.begin(), card_.eu_allergens.end());
        std::sort(card_.us_allergens.begin(), card_.us_allergens.end());
    }

    void write_cautions() {
        card_.cautions.emplace_back("Raw flour and raw dough are not for eating.");
        if (formula_.has_levain()) {
            card_.cautions.emplace_back("A culture with mould, or with pink or orange streaks, is thrown "
                                        "away whole; a jar that ferments is never shut tight.");
        }
        // The engine's has the hours; the general one stands in for it.
        if (request_.forecast.dough && !request_.forecast.dough->cautions.empty()) {
            const auto& cautions = request_.forecast.dough->cautions;
            card_.cautions.insert(card_.cautions.end(), cautions.begin(), cautions.end());
        } else if (std::string caution = warm_dough_caution(overall_); !caution.empty()) {
            card_.cautions.push_back(std::move(caution));
        }
        card_.cautions.emplace_back(
            "Allergens are of the dough and by the nature of an ingredient: what is brushed on, filled in or "
            "put on top adds its own, and the label on the bag says more. Nothing here promises that a food "
            "is safe; your local code rules.");
    }

    void write_notes() {
        if (conversion_ != nullptr) {
            for (const std::string& note : conversion_->notes) {
                if (note != warm_dough_caution(overall_)) { // among the cautions

                    card_.notes.push_back(printable(on_one_line(note), longest_note));
                }
            }
        }
        for (const std::string& remark : formula_.remarks) {
            card_.notes.push_back(printable(on_one_line(remark), longest_note));
        }
        if (!formula_.note.empty()) {
            card_.notes.push_back(printable(on_one_line(formula_.note), longest_note));
        }
    }

    const Formula& formula_;
    const Conversion* conversion_;
    const CardRequest& request_;
    Overall overall_;
    Card card_;
};

} // namespace

std::vector<std::string> CardWindow::lines() const {
    std::vector<std::string> lines;
    const auto add = [&](const std::string& before, const std::string& text) {
        if (!text.empty()) {
            lines.push_back(before + text);
        }
    };
    add("by the clock ", clock);
    add("", signs);
    add("past it: ", past);
    return lines;
}

std::string joined_allergens(const std::vector<std::string>& allergens) {
    std::string text;
    for (const std::string& allergen : allergens) {
        text += (text.empty() ? "" : ", ") + allergen;
    }
    return text.empty() ? "none" : text;
}

std::optional<Card> make_card(const Formula& formula, const Conversion* conversion,
                              const CardRequest& request, Diagnostics& diagnostics) {
    const Timeline timeline = plan_timeline(formula, request.forecast);
    const auto mixing = mixing_time(timeline, request, diagnostics);
    if (request.hour && !mixing) {
        return std::nullopt;
    }
    Card card = CardWriter(formula, conversion, request).write();
    write_times(card, formula, timeline, request, mixing);
    return card;
}

} // namespace leavenwright
