#include "convert/describe_conversion.hpp"

#include "quantity/show.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace leavenwright {

std::string describe_levain(const Levain& levain) {
    const double on_dough = levain.on_dough_flour.value();
    return fmt::format(
        "Levain: {} of the flour is prefermented, at {} hydration. As weight that is {} of the "
        "total flour{}.",
        show_percent(levain.prefermented_flour.value()), show_percent(levain.hydration.value()),
        show_percent(levain.on_total_flour.value()),
        std::isfinite(on_dough) ? ", " + show_percent(on_dough) + " of the flour added at mixing"
                                : "; no flour is added at mixing");
}

namespace {

ShownBalanceRow shown_ratio(const std::string& name, double before, double after) {
    const double points = std::abs(after - before) < 1e-9 ? 0.0 : (after - before) * 100.0;
    return {.name = name,
            .before = show_percent(before),
            .after = show_percent(after),
            .difference = (points > 0.005 ? "+" : "") + show_decimal(points, 2) + " %"};
}

} // namespace

ShownBalance show_balance(std::span<const BalanceRow> rows, const Conversion& conversion,
                          const WeighingScale& scale) {
    const auto shown = [&](Mass mass) {
        const std::vector<Mass> one{mass};
        return show_weighed(weigh(one, scale).total, scale);
    };
    // The flours, which stand first, are rounded together: they add up to the row below them.
    const auto end_of_flours = std::find_if(
        rows.begin(), rows.end(), [](const BalanceRow& row) { return row.name == total_flour_row; });
    const auto flours = static_cast<std::size_t>(end_of_flours - rows.begin());
    const auto column_of = [&](auto mass_of) {
        std::vector<Mass> masses;
        for (const BalanceRow& row : rows.first(flours)) {
            masses.push_back(mass_of(row));
        }
        return masses;
    };
    const Weighing were = weigh(column_of([](const BalanceRow& row) { return row.before; }), scale);
    const Weighing are = weigh(column_of([](const BalanceRow& row) { return row.after; }), scale);
    const auto shown_of = [&](const Weighing& weighing, std::size_t at, Mass exact) {
        return at < flours                  ? show_weighed(weighing.masses[at], scale)
               : at == flours && flours > 0 ? show_sum(weighing.total, weighing.masses, scale)
                                            : shown(exact);
    };
    ShownBalance balance;
    for (const BalanceRow& row : rows) {
        const std::size_t at = balance.rows.size();
        std::string difference = show_difference(row.difference(), scale);
        if (!row.meant.empty()) {
            const std::size_t number = balance.reasons.size() + 1;
            difference += fmt::format(" ({})", number);
            balance.reasons.push_back(fmt::format("({}) {}: {}.", number, row.name, row.meant));
        }
        balance.rows.push_back(
            {row.name, shown_of(were, at, row.before), shown_of(are, at, row.after), std::move(difference)});
    }
    const Overall& before = conversion.overall_before;
    const Overall& after = conversion.overall_after;
    balance.rows.push_back(shown_ratio("hydration, added water", before.hydration_added().value(),
                                       after.hydration_added().value()));
    balance.rows.push_back(shown_ratio("hydration, true water", before.hydration_true().value(),
                                       after.hydration_true().value()));
    return balance;
}

std::string warm_dough_caution(const Overall& overall) {
    const bool has_risky = std::any_of(overall.lines.begin(), overall.lines.end(), [](const Line& line) {
        return line.ingredient->ingredient_class == IngredientClass::egg ||
               line.ingredient->ingredient_class == IngredientClass::dairy;
    });
    return has_risky ? "Egg or milk in a dough that stands warm for hours is a food-safety matter: keep the "
                       "rise cool or short, and go by your local code."
                     : "";
}

} // namespace leavenwright
