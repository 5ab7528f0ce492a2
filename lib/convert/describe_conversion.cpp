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
        "total flour, {} of the flour added at mixing.",
        show_percent(levain.prefermented_flour.value()), show_percent(levain.hydration.value()),
        show_percent(levain.on_total_flour.value()),
        std::isfinite(on_dough) ? show_percent(on_dough) : "all");
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
    ShownBalance balance;
    for (const BalanceRow& row : rows) {
        std::string difference = show_difference(row.difference(), scale);
        if (!row.meant.empty()) {
            const std::size_t number = balance.reasons.size() + 1;
            difference += fmt::format(" ({})", number);
            balance.reasons.push_back(fmt::format("({}) {}: {}.", number, row.name, row.meant));
        }
        balance.rows.push_back({row.name, shown(row.before), shown(row.after), std::move(difference)});
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
