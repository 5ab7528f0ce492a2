#include "transcribe/yeast_kind.hpp"

#include "quantity/show.hpp"
#include "transcribe/weigh_amount.hpp"

#include <algorithm>

namespace leavenwright {

bool is_liquid_yeast(std::string_view name, const std::optional<KitchenAmount>& amount) {
    constexpr Volume most_dry = litres(0.05); // common practice, no source
    const bool is_dry =
        name.find("dry") != std::string_view::npos || name.find("dried") != std::string_view::npos;
    const bool is_volume = amount && amount->measure.is_volume();
    const bool is_brewed = name.find("thick") != std::string_view::npos ||
                           name.find("lively") != std::string_view::npos ||
                           name.find("brisk") != std::string_view::npos;
    return name.ends_with("yeast") && !is_dry && is_volume &&
           (is_brewed || amount->number * amount->measure.volume > most_dry);
}

YeastKind choose_yeast_kind(const NameMatch& match, const std::optional<KitchenAmount>& amount,
                            const Pantry& pantry) {
    constexpr double least_fresh_g = 20.0; // what is weighed so is hardly dry, but for a bakery
    const std::string measure = amount ? amount->measure.name : std::string();
    const bool is_heavy = amount && amount->measure.kind == Measure::Kind::mass &&
                          in_grams(amount->number * amount->measure.mass) >= least_fresh_g;
    const bool is_cake = measure == "cake" || measure == "cube" || measure == "oz" || is_heavy;
    const auto find = [&](std::string_view kind) {
        return std::find(match.meanings.begin(), match.meanings.end(), kind);
    };
    auto choice = is_cake ? find("fresh yeast") : match.meanings.end();
    choice = choice == match.meanings.end() ? find("active dry yeast") : choice; // "2 oz dry yeast"
    choice = choice == match.meanings.end() ? match.meanings.begin() : choice;
    YeastKind kind{.key = std::string(*choice), .weights = {}};
    for (const std::string_view meaning : match.meanings) {
        const Ingredient* ingredient = pantry.find(meaning).ingredient;
        const auto weight =
            ingredient != nullptr && amount ? weigh_amount(*ingredient, *amount) : std::nullopt;
        kind.weights += (kind.weights.empty() ? "" : "; ") + std::string(meaning) +
                        (weight ? ": " + show_grams(weight->likely) : std::string(": not measured so"));
    }
    return kind;
}

} // namespace leavenwright
