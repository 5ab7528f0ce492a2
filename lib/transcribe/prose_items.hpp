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

/// Of one paragraph. Parts of what was named before are left out, and so is what stands behind "or". `named`
/// is what the paragraphs before name, and takes what this one adds. Linear in the text.
ProseItems find_prose_items(const SourcedText& paragraph, const Pantry& pantry,
                            std::vector<const Ingredient*>& named);

} // namespace leavenwright
