#include "transcribe/ingredient_list.hpp"

#include "transcribe/line_continuation.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/recipe_words.hpp"

#include <algorithm>
#include <utility>

namespace leavenwright {

void IngredientList::begin_below_heading(std::string role, bool says_role, std::string title) {
    role_level_ = says_role ? cursor_.heading_level() : role_level_;
    dough_begin_ = says_role && role == "dough" ? recipe_.lines.size() : std::string::npos;
    role_ = std::move(role);
    groups_ += says_role ? 0U : 1U;
    group_ = says_role ? 0U : groups_;
    title_ = says_role ? std::string() : std::move(title);
}

void IngredientList::set_role(std::string role) {
    role_ = std::move(role);
    role_level_ = 0;
    dough_begin_ = std::string::npos;
}

bool IngredientList::is_dough_begun() const {
    return dough_begin_ <= recipe_.lines.size() &&
           std::none_of(recipe_.lines.begin() + static_cast<std::ptrdiff_t>(dough_begin_),
                        recipe_.lines.end(), [](const RecipeLine& line) { return has_digit(line.said()); });
}

void IngredientList::begin_part() {
    set_role("dough");
    group_ = 0;
    title_.clear();
}

// "1/4 cup sugar or", above "1/3 cup molasses"
bool IngredientList::is_alternative_open() const {
    constexpr std::size_t longest = 150; // what goes on longer is no ingredient
    return !recipe_.lines.empty() && item_number_ + 1 == cursor_.number() &&
           recipe_.lines.back().said().size() < longest &&
           plain_line(recipe_.lines.back().said()).ends_with(" or");
}

void IngredientList::push(const SourcedText& line, std::string words) {
    if (is_alternative_open()) {
        RecipeLine& above = recipe_.lines.back();
        above.words = above.said_with(words.empty() ? line.text : std::string_view(words));
        return;
    }
    if (recipe_.lines.size() < most_recipe_lines) {
        recipe_.lines.push_back(
            {.place = line, .role = role_, .words = std::move(words), .group = group_, .title = title_});
        item_number_ = cursor_.number();
        item_indent_ = cursor_.indent();
    }
}

void IngredientList::add(RecipeLine line) {
    if (recipe_.lines.size() < most_recipe_lines) {
        line.role = line.role == "dough" ? role_ : line.role;
        if (!line.title.empty()) {
            const bool goes_on = !recipe_.lines.empty() && recipe_.lines.back().title == line.title;
            groups_ += goes_on ? 0U : 1U;
            line.group = groups_;
        }
        recipe_.lines.push_back(std::move(line));
    }
}

void IngredientList::push_rows(const SourcedText& line, std::span<const LeaderRow> rows) {
    push(line.part(rows.front().begin, rows.front().length), rows.front().words);
    for (const LeaderRow& row : rows.subspan(1)) {
        right_column_.push({.place = line.part(row.begin, row.length), .role = role_, .words = row.words});
    }
}

SourcedText IngredientList::left_of(const SourcedText& line) {
    columns_begin_ = right_column_.is_empty() ? recipe_.lines.size() : columns_begin_;
    return right_column_.left_of(line, cursor_.indent(), role_);
}

bool IngredientList::take_continuation(const SourcedText& line) {
    const bool is_below_item =
        !recipe_.lines.empty() && right_column_.is_empty() && item_number_ + 1 == cursor_.number();
    if (!is_below_item || cursor_.indent() < item_indent_ + 2 ||
        !(is_continuation(recipe_.lines.back().place.text, line.text, pantry_) ||
          ends_open_item(line.text))) {
        return false;
    }
    recipe_.lines.back().place = joined(recipe_.lines.back().place, line);
    item_number_ = cursor_.number();
    return true;
}

bool IngredientList::take_left_continuation(const SourcedText& line) {
    const bool is_below_item = !right_column_.is_empty() && recipe_.lines.size() > columns_begin_ &&
                               item_number_ + 1 == cursor_.number();
    if (!is_below_item || cursor_.indent() < item_indent_ + 2 ||
        !is_continuation(recipe_.lines.back().said(), line.text, pantry_)) {
        return false;
    }
    RecipeLine& above = recipe_.lines.back();
    above.words = above.said_with(line.text);
    item_number_ = cursor_.number();
    return true;
}

// A list whose items end in full stops, but for the last: "1 cake yeast softened over" and "night in water."
bool IngredientList::ends_open_item(std::string_view text) const {
    constexpr std::size_t fewest_items = 3;
    const auto& lines = recipe_.lines;
    const bool is_open = lines.size() >= fewest_items && !lines.back().place.text.ends_with('.') &&
                         std::all_of(lines.end() - fewest_items, lines.end() - 1,
                                     [](const RecipeLine& item) { return item.place.text.ends_with('.'); });
    return is_open && text.ends_with('.') && !text.empty() && text.front() >= 'a' && text.front() <= 'z';
}

void IngredientList::flush_columns() {
    if (right_column_.is_empty()) {
        return;
    }
    const auto begin = recipe_.lines.begin() + static_cast<std::ptrdiff_t>(columns_begin_);
    if (right_column_.mirrors({begin, recipe_.lines.end()})) {
        right_column_.take();
        if (recipe_.batches.empty()) {
            recipe_.batches = {"the left column", "the right column"};
        }
        return;
    }
    ++groups_;
    for (RecipeLine& line : right_column_.take()) {
        line.group = groups_;
        line.is_column = true;
        if (recipe_.lines.size() < most_recipe_lines) {
            recipe_.lines.push_back(std::move(line));
        }
    }
}

} // namespace leavenwright
