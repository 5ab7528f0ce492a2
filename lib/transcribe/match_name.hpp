// What the words of a line name, by the pantry. Private to the transcribe folder.
#pragma once

#include "pantry/pantry.hpp"
#include "transcribe/line_tokens.hpp"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

struct NameMatch {
    const Ingredient* ingredient = nullptr;
    std::string key;                            // the name that the formula is given
    std::string name;                           // as read, without preparation and clauses
    std::span<const std::string_view> meanings; // of a name that stands for several things
    std::string alternative;                    // what stood behind "or", if it is something else
    bool is_culture = false;

    /// Whether the pantry knows the name, for one thing or for several.
    bool is_found() const { return ingredient != nullptr || !meanings.empty(); }
};

/// Looks for the longest name of the pantry among the words before the first clause ("for", "until"), words
/// of preparation left over at most. "flour, bread" is tried as "bread flour".
NameMatch match_name(std::span<const LineToken> tokens, const Pantry& pantry);

} // namespace leavenwright
