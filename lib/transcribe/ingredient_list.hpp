// The lines of a recipe's list as they are gathered, with the column that may stand beside them.
// Private to the transcribe folder.
#pragma once

#include "pantry/pantry.hpp"
#include "transcribe/line_cursor.hpp"
#include "transcribe/read_table.hpp"
#include "transcribe/recipe_text.hpp"
#include "transcribe/right_column.hpp"

#include <cstddef>
#include <span>
#include <string>

namespace leavenwright {

class IngredientList {
public:
    /// Gathers into `recipe`; items stand where `cursor` is. Both outlive it.
    IngredientList(RecipeText& recipe, const LineCursor& cursor, const Pantry& pantry)
        : recipe_(recipe), cursor_(cursor), pantry_(pantry), right_column_(pantry) {}

    /// What the lines that follow are for.
    const std::string& role() const { return role_; }
    /// Of the heading that says the role, as LineCursor counts; 0 where none of a markup does.
    std::size_t role_level() const { return role_level_; }
    void set_role(std::string role);
    /// Whether a heading of the dough stands above, and nothing with an amount since.
    bool is_dough_begun() const;
    /// Below a heading: one that says no role begins a group of its own.
    void begin_below_heading(std::string role, bool says_role, std::string title);
    /// Below a label of the whole list.
    void begin_part();

    /// An item; behind one that ends in "or" it is part of that.
    void push(const SourcedText& line, std::string words = {});
    /// A line whose role is "dough" is for what the list is for.
    void add(RecipeLine line);
    /// Rows side by side on a line: the first goes into the list, the others wait as its right column.
    void push_rows(const SourcedText& line, std::span<const LeaderRow> rows);

    /// What stands in the left column of a line; what stands beside it waits.
    SourcedText left_of(const SourcedText& line);
    /// "  6 c  Flour; up to 7", and below it "       -if the day is damp": set in deeper, and no item.
    bool take_continuation(const SourcedText& line);
    /// The same in the left of two columns: "1/2 cup squash, steamed    1/4 yeast cake", below it "and
    /// sifted".
    bool take_left_continuation(const SourcedText& line);
    /// The end of a list: a right column goes behind the left one, unless it says the same for another batch.
    void flush_columns();

private:
    bool is_alternative_open() const;
    bool ends_open_item(std::string_view text) const;

    RecipeText& recipe_;
    const LineCursor& cursor_;
    const Pantry& pantry_;
    RightColumn right_column_;
    std::string role_ = "dough";
    std::size_t role_level_ = 0;
    std::size_t dough_begin_ = std::string::npos; // the first line below a heading of the dough
    std::size_t item_number_ = 0;                 // of the line whose item was pushed last
    std::size_t item_indent_ = 0;                 // of its first line
    std::size_t columns_begin_ = 0;               // the left column's first line
    std::size_t groups_ = 0;                      // below headings that say no role
    std::size_t group_ = 0;
    std::string title_; // of the group
};

} // namespace leavenwright
