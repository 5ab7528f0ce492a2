// A recipe in sentences, as a message to a friend has it: amounts with their names, wherever they stand.
#include "transcribe/ingredient_line.hpp"
#include "transcribe/kitchen_amount.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/prose_items.hpp"
#include "transcribe/prose_names.hpp"
#include "transcribe/recipe_frame.hpp"
#include "transcribe/recipe_text.hpp"
#include "transcribe/recipe_words.hpp"
#include "transcribe/running_text.hpp"

#include <algorithm>

namespace leavenwright {
namespace {

constexpr std::size_t longest_paragraph = 4000; // bytes

// An ingredient, or an amount of something that the pantry does not know.
bool is_own_item(std::string_view clause, const Pantry& pantry) {
    constexpr std::size_t longest_item = 120;
    if (clause.size() > longest_item) {
        return false;
    }
    constexpr std::string_view article = "the "; // "the grated peel of two lemons"
    clause.remove_prefix(clause.starts_with(article) &&
                                 is_ingredient_line(clause.substr(article.size()), pantry)
                             ? article.size()
                             : 0U);
    const auto amount = read_kitchen_amount(line_tokens(plain_line(clause)));
    return (amount && !amount->measure.name.empty()) || is_ingredient_line(clause, pantry);
}

// A list names its items; sentences say what to do with them ("Warm one pint of milk, and stir into it").
bool is_list(const ProseItems& found, std::size_t clauses) {
    constexpr int fewest_items = 3;
    int counted = 0;
    for (const ProseItem& item : found.items) {
        if (item.clause < clauses) {
            counted += item.has_amount ? 1 : 0;
            if (item.is_behind_verb && is_in_dough(item.role)) {
                return false;
            }
        }
    }
    return counted >= fewest_items;
}

// "Nutrition", over "Calories: 318   Fat: 11 g"; "Tips"
bool is_beside_recipe(std::string_view paragraph) {
    paragraph.remove_prefix(std::min(paragraph.find_first_not_of(" \t\r\n"), paragraph.size()));
    const std::string_view first = paragraph.substr(0, paragraph.find('\n'));
    return frame_line(first).kind == FrameLine::Kind::nutrition || heading_text(first) == "tips" ||
           heading_text(first) == "tip";
}

// "A spoonful of the flour": the whole stands before it or behind.
bool is_counted_elsewhere(const ProseItem& part, const std::vector<ProseItem>& items) {
    return part.is_part && std::any_of(items.begin(), items.end(), [&](const ProseItem& whole) {
               return whole.has_amount && !whole.is_part && whole.ingredient != nullptr &&
                      is_same_kind(whole.ingredient, part.ingredient);
           });
}

} // namespace

std::vector<RecipeLine> ingredients_in_prose(const SourcedText& whole, const Pantry& pantry) {
    std::vector<ProseItem> items;
    for (std::size_t begin = 0; begin < whole.text.size() && items.size() < most_recipe_lines;) {
        const std::size_t length = paragraph_length(whole.text.substr(begin), longest_paragraph);
        const SourcedText paragraph = whole.part(begin, length);
        begin += length;
        if (is_beside_recipe(paragraph.text)) {
            continue;
        }
        const auto more = find_prose_items(paragraph, pantry).items;
        items.insert(items.end(), more.begin(), more.end());
    }
    std::vector<RecipeLine> lines;
    for (const ProseItem& item : items) {
        if (!is_counted_elsewhere(item, items)) {
            lines.push_back({.place = item.place,
                             .role = item.role,
                             .words = item.words,
                             .has_amount = item.has_amount && item.is_known,
                             .is_part = item.is_part});
        }
    }
    return lines;
}

RunOnList read_run_on_list(const SourcedText& paragraph, const Pantry& pantry) {
    constexpr std::size_t longest_addition = 30;
    const ProseItems found = find_prose_items(paragraph, pantry);
    const auto end = std::find_if(found.clauses.begin(), found.clauses.end(), [](const ProseClause& clause) {
        return clause.mark_behind == '.' || clause.mark_behind == '!';
    });
    RunOnList list;
    if (end == found.clauses.end()) {
        return list;
    }
    const auto clauses = static_cast<std::size_t>(end - found.clauses.begin()) + 1;
    if (!is_list(found, clauses)) {
        return list;
    }
    auto item = found.items.begin();
    for (std::size_t at = 0; at < clauses && list.items.size() < most_recipe_lines; ++at) {
        const ProseClause& clause = found.clauses[at];
        if (clause.mark_before == '\n' && at > 0) {
            return {}; // each line is an item of its own
        }
        bool is_named = false;
        for (; item != found.items.end() && item->clause == at; ++item) {
            is_named = true;
            if (is_counted_elsewhere(*item, found.items)) {
                continue;
            }
            list.items.push_back({.place = item->place, .role = item->role, .words = item->words});
        }
        const std::size_t begin = clause.words.front().begin;
        const std::string_view words = paragraph.text.substr(begin, clause.words.back().end - begin);
        const bool is_name_of_next =
            item != found.items.end() && item->place.text.data() < words.data() + words.size();
        is_named = is_named || is_name_of_next; // "molasses, one gill"
        if (!is_named && is_own_item(words, pantry)) {
            list.items.push_back({.place = paragraph.part(begin, words.size())});
        } else if (!is_named && !list.items.empty() && words.size() <= longest_addition) { // "finely shred"
            SourcedText& last = list.items.back().place;
            const auto first = static_cast<std::size_t>(last.text.data() - paragraph.text.data());
            last = paragraph.part(first, clause.words.back().end - first);
        }
        list.length = clause.end;
    }
    return list;
}

RecipeText read_prose_recipe(const SourceHandle& source, std::size_t length, const Pantry& pantry) {
    RecipeText recipe;
    const std::size_t begin = std::min(length_of_page_head(*source, pantry), length);
    const std::string_view all = source->text().substr(begin, length - begin);
    recipe.lines = ingredients_in_prose({.source = source, .span = {begin, all.size()}, .text = all}, pantry);
    for (std::size_t number = 1; number <= source->line_count() && source->line_start(number) < length;
         ++number) {
        const std::string_view text = source->line(number);
        if (recipe.directions.size() < most_recipe_lines) {
            recipe.directions.push_back(plain_line(text.substr(0, 4000)));
        }
    }
    return recipe;
}

bool names_amounts(const SourcedText& text, const Pantry& pantry) {
    constexpr std::ptrdiff_t fewest = 2;
    const std::vector<RecipeLine> lines = ingredients_in_prose(text, pantry);
    return std::count_if(lines.begin(), lines.end(),
                         [](const RecipeLine& line) { return line.has_amount; }) >= fewest;
}

} // namespace leavenwright
