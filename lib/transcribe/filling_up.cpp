#include "transcribe/filling_up.hpp"

#include "transcribe/kitchen_amount.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/weigh_amount.hpp"

#include <algorithm>
#include <iterator>

namespace leavenwright {

std::optional<FillingUp> read_filling_up(std::string_view words, const WeightRange& first,
                                         const Pantry& pantry) {
    const auto tokens = line_tokens(words);
    const auto is_to_make = [](const LineToken& one, const LineToken& other) {
        return one.is("to") && other.is_any({"make", "fill"});
    };
    const auto make = std::adjacent_find(tokens.begin(), tokens.end(), is_to_make);
    if (make == tokens.end()) {
        return std::nullopt;
    }
    const auto lead = std::find_if(std::reverse_iterator(make), tokens.rend(), [](const LineToken& token) {
        return token.is_any({"enough", "sufficient", "with", "plus", "+", "and"});
    });
    const auto whole = read_kitchen_amount({make + 2, tokens.end()});
    if (lead == tokens.rend() || !whole || whole->measure.kind != Measure::Kind::volume) {
        return std::nullopt;
    }
    NameMatch match = match_name({lead.base(), make}, pantry);
    const auto sum = match.ingredient != nullptr && match.ingredient->can_give_water()
                         ? weigh_amount(*match.ingredient, *whole)
                         : std::nullopt;
    if (!sum || !(sum->likely > first.likely)) {
        return std::nullopt;
    }
    const Mass nothing{};
    const WeightRange left{.likely = sum->likely - first.likely,
                           .least = std::max(sum->least - first.most, nothing),
                           .most = sum->most - first.least};
    return FillingUp{.match = std::move(match), .weight = left};
}

} // namespace leavenwright
