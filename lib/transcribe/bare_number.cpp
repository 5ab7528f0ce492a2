#include "transcribe/bare_number.hpp"

#include <algorithm>
#include <span>

namespace leavenwright {
namespace {

bool is_bare(const KitchenAmount& amount) {
    return amount.measure.is_piece() && amount.measure.name.empty() && amount.size.empty();
}

// "cardamom seeds", "saffron threads"
bool names_pieces(std::span<const LineToken> name) {
    return std::any_of(name.begin(), name.end(), [](const LineToken& token) {
        return token.is_any({"seeds", "threads", "strands", "pods", "leaves", "sprigs", "berries", "sticks"});
    });
}

} // namespace

void take_piece_of_name(SplitLine& split, const Ingredient& ingredient) {
    KitchenAmount& amount = *split.amount;
    const bool has_piece = !amount.measure.is_piece() || !amount.measure.name.empty();
    if (has_piece || mass_of_piece(ingredient, amount.size)) { // "1 small yeast cake" is a cake
        return;
    }
    for (const LineToken& token : split.name) {
        const std::string_view last = // "yeast-cake" is one word
            std::string_view(token.folded).substr(token.folded.rfind(' ') + 1);
        const auto piece = measure_named(last, last);
        if (piece && piece->is_piece() && mass_of_piece(ingredient, piece->name)) {
            amount.measure = *piece;
            return;
        }
    }
}

bool take_bare_grams(SplitLine& split, const Ingredient& ingredient, MeasureHabit::BareNumbers bare_numbers) {
    KitchenAmount& amount = *split.amount;
    using BareNumbers = MeasureHabit::BareNumbers;
    constexpr double least_grams = 5.0;
    constexpr double most_pieces = 20.0; // of eggs, say
    if (!is_bare(amount)) {
        return false;
    }
    const bool is_in_grams = bare_numbers != BareNumbers::pieces;
    const bool has_pieces = mass_of_piece(ingredient, "").has_value();
    const bool may_be_packets = ingredient.is_yeast() || amount.number < least_grams;
    if ((has_pieces && amount.number < most_pieces) || ((has_pieces || may_be_packets) && !is_in_grams)) {
        return false;
    }
    if (ingredient.ingredient_class == IngredientClass::other && split.is_name_behind &&
        amount.number <= most_pieces && names_pieces(split.name)) {
        return false;
    }
    amount.measure = *measure_named("g", "g");
    return bare_numbers != BareNumbers::grams;
}

} // namespace leavenwright
