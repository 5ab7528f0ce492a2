// Yeast of a kind that the words of a line leave open. Private to the transcribe folder.
#pragma once

#include "pantry/pantry.hpp"
#include "transcribe/kitchen_amount.hpp"
#include "transcribe/match_name.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace leavenwright {

/// Yeast by the cup or the gill is the liquid yeast of old kitchens, whose strength nobody knows.
bool is_liquid_yeast(std::string_view name, const std::optional<KitchenAmount>& amount);

struct YeastKind {
    std::string key;     // the pantry's name of what is taken
    std::string weights; // what each of the meanings would weigh, to be printed
};

/// Which of a match's meanings is taken: what the amount is measured in says most. The match has meanings.
YeastKind choose_yeast_kind(const NameMatch& match, const std::optional<KitchenAmount>& amount,
                            const Pantry& pantry);

} // namespace leavenwright
