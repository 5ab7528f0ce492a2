// What a line says that its ingredient is for, and which part of it is used. Private to the transcribe
// folder.
#pragma once

#include "transcribe/kitchen_amount.hpp"
#include "transcribe/line_tokens.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

/// "for brushing", "to grease the pan", "frying fat"; empty where nothing is said, or the dough is.
std::string purpose_in(const std::vector<LineToken>& tokens);

/// What a few words name as a layer on the dough or in it: "egg wash", "the almond filling"; empty where they
/// name none.
std::string_view purpose_of_layer(std::span<const LineToken> words);

/// Whether only some of it is for that: "save some for the tops", "half for the filling".
bool is_of_part(const std::vector<LineToken>& tokens);

/// What a counted share of it is for: "1 for the dough, 1 for brushing", "the rest for the pan"; empty where
/// none is counted.
std::string purpose_of_share(const std::vector<LineToken>& tokens);

/// Whether something beside the amount is for that: "(plus more for dusting)".
bool is_of_more(const std::vector<LineToken>& tokens);

/// Whether both of "1 yolk + 1 tbsp milk for brushing" are for it: an egg, or what goes by the spoon, with
/// something else. Of "2 eggs + 1 yolk for brushing" only the yolk is.
bool is_wash(const std::optional<KitchenAmount>& amount, const std::vector<LineToken>& first,
             const std::vector<LineToken>& second);

/// Turns "lemon, the zest of it" into "zest of lemon, ", where a comma parts the two.
void turn_part_behind(std::vector<LineToken>& name);

/// "flour, up to 7 cups", "flour maybe 1/4 cup more": widens `amount` and takes the words out of `tokens`.
void take_upper_end(KitchenAmount& amount, std::vector<LineToken>& tokens);

} // namespace leavenwright
