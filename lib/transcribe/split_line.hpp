// A line of a recipe taken apart: the amounts in it, the words that name something, and what it is said to be
// for. Private to the transcribe folder.
#pragma once

#include "transcribe/kitchen_amount.hpp"

#include <optional>
#include <string>
#include <vector>

namespace leavenwright {

struct OtherAmount {
    KitchenAmount amount;
    bool is_each = false; // of one piece: "1 (8 oz) package"
};

struct SplitLine {
    std::optional<KitchenAmount> amount;
    std::vector<OtherAmount> others; // the same amount in other measures
    std::vector<LineToken> name;
    std::vector<LineToken> aside;      // words in brackets
    bool is_name_behind = false;       // the name follows the amount
    bool is_of_parts = false;          // "500 g flour (400 white, 100 whole wheat)"
    bool has_other_in_bracket = false; // "raisins (soaked in 1/4 cup rum)"
    bool is_run_together = false;      // another item followed without a mark, and was cut off
    std::string purpose;               // "brushing"; empty where the line says nothing of the kind
    std::string part_purpose;          // of some of it: "3 eggs (save some for the tops)"
    std::string size_of;               // "egg", of butter the size of one
    double size_count = 1.0;           // "the size of two eggs"

    /// What stands behind "plus".
    std::optional<KitchenAmount> extra;
    std::string extra_purpose;
};

/// Linear in the line.
SplitLine split_line(std::string_view plain);
SplitLine split_tokens(std::vector<LineToken> tokens);

} // namespace leavenwright
