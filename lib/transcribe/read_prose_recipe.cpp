// A recipe in sentences, as a message to a friend has it: amounts with their names, wherever they stand.
#include "transcribe/ingredient_line.hpp"
#include "transcribe/kitchen_words.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/recipe_text.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace leavenwright {
namespace {

constexpr std::size_t longest_item = 120; // bytes of one amount and its name

// Where the clause that begins at `begin` ends: at a mark of sentences, but not inside a number, or before
// "and", "plus", "then".
std::size_t end_of_clause(std::string_view text, std::size_t begin) {
    const auto is_digit = [&](std::size_t at) {
        return at < text.size() && text[at] >= '0' && text[at] <= '9';
    };
    for (std::size_t at = begin; at < text.size(); ++at) {
        const bool is_in_number = at > begin && is_digit(at - 1) && is_digit(at + 1);
        const bool is_mark = std::string_view(",;:.!?()").find(text[at]) != std::string_view::npos;
        const std::string_view rest = text.substr(at, 6);
        const bool is_word = at > begin && (rest.starts_with(" and ") || rest.starts_with(" plus ") ||
                                            rest.starts_with(" then "));
        if ((is_mark && !is_in_number) || is_word) {
            return at;
        }
    }
    return text.size();
}

// "600g", "½", "two", "a", "half": a word that an amount may begin with.
bool may_begin_amount(std::string_view written) {
    std::string word(written);
    word.front() = word.front() >= 'A' && word.front() <= 'Z' ? static_cast<char>(word.front() - 'A' + 'a')
                                                              : word.front();
    const bool is_number = word.front() >= '0' && word.front() <= '9';
    const bool is_vulgar = word.starts_with("\xC2\xBC") || word.starts_with("\xC2\xBD") ||
                           word.starts_with("\xC2\xBE") || word.starts_with("\xE2\x85");
    return is_number || is_vulgar || word == "a" || word == "an" || number_named(word) > 0.0 ||
           fraction_named(word) > 0.0;
}

// The first amount with a name that the pantry knows in a clause; empty where there is none.
std::string_view item_of(std::string_view clause, const Pantry& pantry) {
    constexpr int most_tries = 8;
    int tries = 0;
    for (std::size_t at = 0; at < clause.size() && tries < most_tries; ++at) {
        const bool begins_word = clause[at] != ' ' && (at == 0 || clause[at - 1] == ' ');
        if (!begins_word || !may_begin_amount(clause.substr(at, clause.substr(at).find(' ')))) {
            continue;
        }
        ++tries;
        const std::string_view item = clause.substr(at);
        if (item.size() <= longest_item && is_ingredient_line(item, pantry)) {
            return item;
        }
    }
    return {};
}

} // namespace

std::vector<SourcedText> ingredients_in_prose(const SourcedText& line, const Pantry& pantry) {
    std::vector<SourcedText> items;
    const std::string_view text = line.text;
    for (std::size_t begin = 0; begin < text.size() && items.size() < most_recipe_lines;) {
        const std::size_t end = std::max(end_of_clause(text, begin), begin + 1);
        const std::string_view item = item_of(text.substr(begin, end - begin), pantry);
        if (!item.empty()) {
            items.push_back(line.part(static_cast<std::size_t>(item.data() - text.data()), item.size()));
        }
        begin = end;
    }
    return items;
}

RecipeText read_prose_recipe(const SourceHandle& source, const Pantry& pantry) {
    RecipeText recipe;
    for (std::size_t number = 1; number <= source->line_count(); ++number) {
        const std::string_view text = source->line(number);
        const SourcedText line{
            .source = source, .span = {source->line_start(number), text.size()}, .text = text};
        for (SourcedText& item : ingredients_in_prose(line, pantry)) {
            if (recipe.lines.size() < most_recipe_lines) {
                recipe.lines.push_back({.place = std::move(item), .role = "dough"});
            }
        }
        if (recipe.directions.size() < most_recipe_lines) {
            recipe.directions.push_back(plain_line(text.substr(0, 4000)));
        }
    }
    return recipe;
}

} // namespace leavenwright
