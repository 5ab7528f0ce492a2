// Lists of ingredients that stand among directions: the dough below the steps of its sponge, a glaze below
// the baking. Private to the transcribe folder.
#pragma once

#include "pantry/pantry.hpp"
#include "transcribe/recipe_text.hpp"

#include <cstddef>
#include <span>
#include <string>
#include <string_view>

namespace leavenwright {

/// Whether most lines from one (counted from 1) down to the next blank one are ingredients with a measure.
/// Linear in those lines.
bool is_list_block(const SourceText& source, std::size_t first_line, const Pantry& pantry);

/// What a list is for whose lead ends the line above it: filling behind "roll out and spread with:"; empty
/// where the line does not end so.
std::string_view role_of_lead(std::string_view line_above);

/// The line behind a list of items that begins at `first_line` or below blank lines, blank lines within it
/// included; 0 where it has no flour. Looks at a hundred lines at most.
std::size_t end_of_list_with_flour(const SourceText& source, std::size_t first_line, const Pantry& pantry);

/// The words before a colon, or in bold, that begin a line which says more: "**Dough**: all but the butter
/// goes in"; empty where none do.
std::string label_before_words(std::string_view line);

/// Whether sentences name the flour, the yeast and more of a dough, with their amounts.
bool is_recipe_in_sentences(const SourcedText& paragraph, const Pantry& pantry);

/// Bytes up to the title of another recipe with a flour of its own: a line in capitals below an empty one;
/// the whole length where none follows. Linear in the text.
std::size_t length_before_another(const SourcedText& text, const Pantry& pantry);

/// Whether lines hold the flour, the yeast and the salt of a dough, so that a further list of a dough is
/// another recipe.
class WholeDough {
public:
    explicit WholeDough(const Pantry& pantry) : pantry_(pantry) {}

    /// `lines` are those of the time before, and perhaps more. Each line is looked at once.
    bool is_in(std::span<const RecipeLine> lines);

private:
    const Pantry& pantry_;
    std::size_t seen_ = 0;
    bool has_flour_ = false;
    bool has_leaven_ = false;
    bool has_salt_ = false; // which a sponge has not
};

} // namespace leavenwright
