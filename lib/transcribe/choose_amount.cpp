#include "transcribe/choose_amount.hpp"

#include <cmath>

namespace leavenwright {
namespace {

KitchenAmount times(KitchenAmount one, const KitchenAmount& count) {
    one.number *= count.number;
    one.least *= count.least;
    one.most *= count.most;
    return one;
}

int rank_of(const KitchenAmount& amount, const Ingredient* ingredient) {
    const bool is_weighable = ingredient == nullptr || weigh_amount(*ingredient, amount);
    const bool is_packet = (amount.measure.is_piece() && !amount.measure.name.empty() &&
                            ingredient != nullptr && ingredient->is_yeast()) ||
                           amount.how.starts_with("from a packet");
    return amount.measure.kind == Measure::Kind::mass ? 5
           : !is_weighable                            ? 0
           : is_packet                                ? 4 // its maker weighs it
           : amount.measure.is_piece()                ? 1
           : amount.measure.is_doubtful               ? 2
                                                      : 3;
}

enum class Share { of_one, of_all, unclear };

// "2 packets (7 g)": of one, if that is what the pantry's packet weighs.
Share share_of(const KitchenAmount& amount, const KitchenAmount& first, const Ingredient* ingredient) {
    if (!first.measure.is_piece() || first.measure.name.empty() || first.number <= 1.0 ||
        ingredient == nullptr) {
        return Share::of_all;
    }
    const auto pieces = weigh_amount(*ingredient, first);
    const auto stated = weigh_amount(*ingredient, amount);
    if (!pieces || !stated) {
        return Share::unclear;
    }
    const double ratio = stated->likely.value() / pieces->likely.value();
    const bool is_of_one = ratio * first.number > 0.5 && ratio * first.number < 1.5 && ratio < 0.8;
    return is_of_one ? Share::of_one : Share::of_all;
}

// Yeast in packets of 2 1/4 tsp: what the maker filled in, not what a spoon of it weighs.
std::string packet_way(const Ingredient& ingredient, const KitchenAmount& amount) {
    for (const MeasuredVolume& measured : ingredient.volumes) {
        const double packets = amount.number * (amount.measure.volume / measured.volume).value();
        const bool is_whole = std::abs(packets - std::round(packets)) < 1e-6 && packets > 0.5;
        if (is_whole && !amount.is_range && measured.how.starts_with("from a packet")) {
            return std::string(measured.how);
        }
    }
    return {};
}

} // namespace

void take_way_of_name(SplitLine& split, const Ingredient& ingredient) {
    KitchenAmount& amount = *split.amount;
    if (!amount.how.empty() || amount.measure.kind != Measure::Kind::volume) {
        return;
    }
    amount.how = packet_way(ingredient, amount);
    bool is_behind_name = false;
    for (const LineToken& token : split.name) {
        is_behind_name = is_behind_name || !token.is_word();
        if (!amount.how.empty()) {
            return;
        }
        if (!token.is_word() ||
            (is_behind_name && !token.is("mashed"))) { // nobody fills a cup before mashing
            continue;
        }
        if (const auto way = way_of_measuring(ingredient, token.folded)) {
            amount.how = *way > 0 ? token.folded : std::string();
            return;
        }
    }
}

ChosenAmount choose_amount(const SplitLine& split, const Ingredient* ingredient) {
    const KitchenAmount& first = *split.amount;
    ChosenAmount chosen{.amount = first};
    bool is_each = false;
    for (const OtherAmount& other : split.others) {
        if (rank_of(other.amount, ingredient) > rank_of(chosen.amount, ingredient)) {
            const Share share = other.is_each ? Share::of_one : share_of(other.amount, first, ingredient);
            chosen.amount = other.amount;
            chosen.is_share_unclear = chosen.is_share_unclear || share == Share::unclear;
            is_each = share == Share::of_one;
        }
    }
    if (is_each && first.measure.is_piece() && first.number != 1.0) {
        chosen.amount = times(chosen.amount, first);
    }
    return chosen;
}

std::optional<WeightRange> disagreeing_weight(const SplitLine& split, const Ingredient& ingredient,
                                              const KitchenAmount& chosen, const WeightRange& weight) {
    constexpr double rounding = 0.05; // 28 g for an ounce, 15 ml for a spoon
    std::vector<KitchenAmount> all{*split.amount};
    for (const OtherAmount& other : split.others) {
        const bool is_of_pieces = other.is_each && split.amount->measure.is_piece();
        all.push_back(is_of_pieces ? times(other.amount, *split.amount) : other.amount);
    }
    for (const KitchenAmount& other : all) {
        const auto second = weigh_amount(ingredient, other);
        const bool is_same = other.measure.name == chosen.measure.name;
        const bool agrees = !second || (second->least <= (1.0 + rounding) * weight.most &&
                                        (1.0 + rounding) * second->most >= weight.least);
        if (!is_same && !agrees) {
            return second;
        }
    }
    return std::nullopt;
}

} // namespace leavenwright
