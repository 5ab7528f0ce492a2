// Headings over groups of a recipe's items: "For the filling:", "## Dough", "Fruit". Private to the
// transcribe folder.
#pragma once

#include "pantry/pantry.hpp"
#include "transcribe/line_cursor.hpp"
#include "transcribe/recipe_text.hpp"
#include "transcribe/recipe_words.hpp"

#include <optional>
#include <span>
#include <string>

namespace leavenwright {

/// What is known of a text where a line may be a heading.
struct HeadingPlace {
    RecipePart part = RecipePart::heading;
    bool is_below_blank = false;
    bool has_parts = false;                 // "Ingredients" or the like stood above
    bool has_name = false;                  // the recipe's title was read
    bool has_whole_dough = false;           // flour, yeast and salt of a dough stand above
    std::string role;                       // of the items above
    std::size_t role_level = 0;             // of the heading that said it; 0 where none of a markup did
    std::span<const RecipeLine> lines = {}; // those above
    bool is_dough_begun = false;            // right below its heading
};

struct GroupHeading {
    std::optional<std::string> role; // of the items below; none where they go on with those above: "Also:"
    std::string title;               // folded
    bool says_role = false;          // the role is the heading's own, not that of the items above
    bool says_more = false;          // its line is a direction too: "**Dough**: all but the butter goes in"
};

/// The heading that a line is; nothing where it is none. `folded` is heading_text of the line, and the cursor
/// stands at it.
std::optional<GroupHeading> read_group_heading(const SourcedText& line, const std::string& folded,
                                               const LineCursor& cursor, const HeadingPlace& place,
                                               const Pantry& pantry);

} // namespace leavenwright
