// Ingredients where sentences name them: amounts in figures and in words, things without an amount, and what
// is only strewn, brushed, greased or eaten with. Private to the transcribe folder.
#pragma once

#include "pantry/pantry.hpp"
#include "source/source_text.hpp"
#include "transcribe/prose_clauses.hpp"

#include <string>
#include <vector>

namespace leavenwright {

struct ProseItem {
    SourcedText place;
    std::string role;
    const Ingredient* ingredient = nullptr; // where the pantry knows it
    std::string words = {};                 // what it says, where its measure stands with the item before it
    std::size_t clause = 0;
    bool has_amount = false;
    bool is_known = true;        // to the pantry
    bool is_part = false;        // "a little of the milk": of what stands elsewhere
    bool is_behind_verb = false; // "stir in two cups of flour"
};

struct ProseItems {
    std::vector<ProseClause> clauses;
    std::vector<ProseItem> items;
};

/// Of one paragraph; what stands behind "or" is left out. Linear in the text.
ProseItems find_prose_items(const SourcedText& paragraph, const Pantry& pantry);

} // namespace leavenwright
