#include "transcribe/weigh_amount.hpp"

#include "quantity/number.hpp"
#include "quantity/show.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace leavenwright {
namespace {

struct LikenedSize {
    std::string_view thing;
    double least_g;
    double likely_g;
    double most_g;
};

// Butter by the size of things, as old cookbooks print their equivalents: an egg 2 oz, a walnut 1 oz; the
// spread is common practice, no source.
constexpr auto likened_sizes = std::to_array<LikenedSize>({
    {"egg", 40.0, 57.0, 65.0},
    {"walnut", 14.0, 28.0, 32.0},
    {"nutmeg", 5.0, 8.0, 12.0},
    {"hazelnut", 5.0, 7.0, 12.0},
    {"hickory", 8.0, 14.0, 20.0},
    {"lemon", 60.0, 85.0, 110.0},
    {"nut", 14.0, 28.0, 32.0},
});

struct FlourMeasure {
    std::string_view name;
    double one_g;
};

// Flour as British bakers bought it: a peck weighs a stone of 14 lb, a quartern is a quarter of it (from
// memory).
constexpr auto flour_measures = std::to_array<FlourMeasure>({{"quartern", 1587.573}, {"peck", 6350.293}});

std::optional<Mass> mass_of_flour_measure(const Ingredient& ingredient, std::string_view name) {
    const auto measure = std::find_if(flour_measures.begin(), flour_measures.end(),
                                      [&](const FlourMeasure& row) { return row.name == name; });
    return measure == flour_measures.end() || !ingredient.is_flour() ? std::nullopt
                                                                     : std::optional(grams(measure->one_g));
}

// Of one `measure`, by the figures for the way it was measured, if the pantry has them.
std::optional<Mass> mass_of_measure(const Ingredient& ingredient, const KitchenAmount& amount) {
    for (const MeasuredVolume& measured : ingredient.volumes) {
        if (!amount.how.empty() && measured.how == amount.how) {
            return measured.mass * (amount.measure.volume / measured.volume).value();
        }
    }
    return mass_of_volume(ingredient, amount.measure.volume);
}

// The word under which the pantry has such pieces: a packet is called a sachet or an envelope too.
std::optional<std::string> piece_word(const Ingredient& ingredient, const KitchenAmount& amount) {
    std::vector<std::string> words;
    if (amount.measure.name.empty()) {
        words = {amount.size, ""}; // a small one weighs what one does, where sizes are not known
    } else {
        words = {amount.measure.name};
        if (amount.measure.name == "packet" || amount.measure.name == "sachet" ||
            amount.measure.name == "envelope") {
            words.insert(words.end(), {"packet", "sachet", "envelope"});
        }
    }
    for (const std::string& word : words) {
        if (mass_of_piece(ingredient, word)) {
            return word;
        }
    }
    return std::nullopt;
}

// Fluid ounces are called ounces where liquids are measured.
constexpr double fluid_ounce_more = 1.043;

WeightRange range_of(Mass one, const KitchenAmount& amount, double uncertainty) {
    return {.likely = amount.number * one,
            .least = amount.least * amount.measure.least * (1.0 - uncertainty) * one,
            .most = amount.most * amount.measure.most * (1.0 + uncertainty) * one};
}

} // namespace

std::optional<std::size_t> way_of_measuring(const Ingredient& ingredient, std::string_view how) {
    const auto found = std::find_if(ingredient.volumes.begin(), ingredient.volumes.end(),
                                    [&](const MeasuredVolume& measured) { return measured.how == how; });
    return found == ingredient.volumes.end()
               ? std::nullopt
               : std::optional(static_cast<std::size_t>(found - ingredient.volumes.begin()));
}

std::optional<WeightRange> weigh_amount(const Ingredient& ingredient, const KitchenAmount& amount) {
    const double piece_spread = piece_uncertainty.value();
    if (amount.measure.kind == Measure::Kind::mass) {
        WeightRange weight = range_of(amount.measure.mass, amount, 0.0);
        const bool is_fluid =
            ingredient.ingredient_class == IngredientClass::liquid || ingredient.name.ends_with("milk");
        if (is_fluid && amount.measure.name == "oz") {
            weight.most = fluid_ounce_more * weight.most;
        }
        return weight;
    }
    if (amount.measure.is_volume()) {
        if (const auto piece = mass_of_piece(ingredient, amount.measure.name);
            piece && !amount.measure.name.empty()) {
            return range_of(*piece, amount, piece_spread);
        }
        const auto one = mass_of_measure(ingredient, amount);
        return one ? std::optional(range_of(*one, amount, ingredient.volume_uncertainty.value()))
                   : std::nullopt;
    }
    if (amount.measure.is_piece()) {
        if (const auto flour = mass_of_flour_measure(ingredient, amount.measure.name)) {
            return range_of(*flour, amount, 0.0);
        }
        const auto word = piece_word(ingredient, amount);
        const auto one = word ? mass_of_piece(ingredient, *word) : std::nullopt;
        return one ? std::optional(range_of(*one, amount, piece_spread)) : std::nullopt;
    }
    return std::nullopt;
}

std::optional<WeightRange> weigh_likened(std::string_view thing) {
    const auto size = std::find_if(likened_sizes.begin(), likened_sizes.end(),
                                   [&](const LikenedSize& row) { return thing.starts_with(row.thing); });
    return size == likened_sizes.end() ? std::nullopt
                                       : std::optional(WeightRange{.likely = grams(size->likely_g),
                                                                   .least = grams(size->least_g),
                                                                   .most = grams(size->most_g)});
}

std::string formula_amount(const Ingredient& ingredient, const KitchenAmount& amount,
                           const std::optional<WeightRange>& weight) {
    const bool is_plain = !mass_of_flour_measure(ingredient, amount.measure.name) && !amount.is_range &&
                          !amount.is_vague && amount.how.empty() && amount.measure.is_formula_unit;
    if (amount.measure.kind == Measure::Kind::percent) {
        return exact_decimal(amount.number, 0) + "%";
    }
    if (!weight) {
        return {};
    }
    if (!is_plain) {
        const double weight_g = in_grams(weight->likely);
        return show_decimal(weight_g, weight_g < 10.0 ? 2 : 1) + " g";
    }
    if (amount.measure.is_piece()) {
        const std::string word = piece_word(ingredient, amount).value_or("");
        return kitchen_number(amount.number) + (word.empty() ? "" : " " + word);
    }
    const bool is_weight = amount.measure.kind == Measure::Kind::mass;
    const std::string number = is_weight && amount.measure.name.ends_with("g")
                                   ? exact_decimal(without_dust(amount.number, 12), 0)
                                   : kitchen_number(amount.number);
    return number + " " + amount.measure.name;
}

std::string kitchen_number(double number) {
    const double whole = std::floor(number + 1e-9);
    for (const int below : {1, 2, 3, 4, 5, 6, 8, 16}) {
        const double above = (number - whole) * below;
        const double nearest = std::round(above);
        if (std::abs(above - nearest) > 1e-9 * below || number > 1e6) {
            continue;
        }
        const std::string whole_text = std::to_string(static_cast<long>(whole));
        if (nearest == 0.0) {
            return whole_text;
        }
        const std::string fraction = std::to_string(static_cast<int>(nearest)) + "/" + std::to_string(below);
        return whole == 0.0 ? fraction : whole_text + " " + fraction;
    }
    return exact_decimal(without_dust(number, 12), 0);
}

} // namespace leavenwright
