// A recipe in sentences, as a message to a friend has it: amounts with their names, wherever they stand.
#include "transcribe/ingredient_line.hpp"
#include "transcribe/kitchen_amount.hpp"
#include "transcribe/kitchen_words.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/recipe_text.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace leavenwright {
namespace {

constexpr std::size_t longest_item = 120; // bytes of one amount and its name

bool is_alphanumeric(char byte) {
    return (byte >= '0' && byte <= '9') || (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z') ||
           (static_cast<unsigned char>(byte) & 0x80U) != 0U;
}

bool is_space(char byte) {
    return byte == ' ' || byte == '\n' || byte == '\t' || byte == '\r';
}

// A line's end inside of a sentence: the next line goes on with a small letter.
bool goes_on(std::string_view text, std::size_t at) {
    constexpr std::size_t widest_gap = 40;
    const std::string_view ahead = text.substr(std::min(at, text.size()), widest_gap);
    const std::size_t next = ahead.find_first_not_of(" \t\r\n");
    return next != std::string_view::npos && ahead[next] >= 'a' && ahead[next] <= 'z';
}

// "lb", "ozs", "tbsp": letters before a full stop, few enough to be cut short.
bool ends_short_form(std::string_view text) {
    std::size_t letters = 0;
    while (letters < text.size() && is_alphanumeric(text[text.size() - 1 - letters])) {
        ++letters;
    }
    return letters > 0 && letters <= 4;
}

// Where the clause that begins at `begin` ends: at a mark of sentences, but not inside a number or behind a
// short form, or before "and", "plus", "then", but not of "a pint and a half".
std::size_t end_of_clause(std::string_view text, std::size_t begin) {
    const auto is_digit = [&](std::size_t at) {
        return at < text.size() && text[at] >= '0' && text[at] <= '9';
    };
    for (std::size_t at = begin; at < text.size(); ++at) {
        const bool is_in_number = at > begin && is_digit(at - 1) && is_digit(at + 1);
        const bool is_mark = std::string_view(",;:.!?()").find(text[at]) != std::string_view::npos;
        const bool is_short_form = text[at] == '.' && ends_short_form(text.substr(begin, at - begin)) &&
                                   goes_on(text, at + 1); // "1 lb. of flour"
        const std::string_view word = text.substr(std::min(at + 1, text.size()), 10);
        const bool is_joint =
            word.starts_with("and ") || word.starts_with("plus ") || word.starts_with("then ");
        const bool is_word = at > begin && is_space(text[at]) && is_joint && !word.starts_with("and a half");
        const bool is_break = text[at] == '\n' && !goes_on(text, at);
        if ((is_mark && !is_in_number && !is_short_form) || is_word || is_break) {
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

bool is_behind_comma(std::string_view text, std::size_t at) {
    const std::size_t last = at == 0 ? std::string_view::npos : text.find_last_not_of(" \t\r", at - 1);
    return last != std::string_view::npos && (text[last] == ',' || text[last] == ';');
}

// What the words before an amount do with it, where that is no mixing.
std::string role_of_lead(std::string_view lead) {
    constexpr auto acts =
        std::to_array<std::pair<std::string_view, std::string_view>>({{"brush", "brushing"},
                                                                      {"wash", "brushing"},
                                                                      {"glaze", "brushing"},
                                                                      {"baste", "brushing"},
                                                                      {"sprinkle", "topping"},
                                                                      {"strew", "topping"},
                                                                      {"frost", "topping"},
                                                                      {"dust", "dusting"},
                                                                      {"grease", "greasing"},
                                                                      {"fry", "bath"},
                                                                      {"spread", "filling"}});
    for (const LineToken& token : line_tokens(plain_line(lead.substr(0, longest_item)))) {
        for (const auto& [act, role] : acts) {
            if (token.is(act)) {
                return std::string(role);
            }
        }
    }
    return "dough";
}

// Where "the yolk of an egg" begins, before "an egg".
std::size_t begin_of_part(std::string_view clause, std::size_t at) {
    for (const std::string_view part : {"yolk of ", "yolks of ", "white of ", "whites of ", "rind of ",
                                        "juice of ", "zest of ", "peel of "}) {
        if (clause.substr(0, at).ends_with(part)) {
            return at - part.size();
        }
    }
    return at;
}

// The first amount with a name that the pantry knows in a clause; empty where there is none.
std::string_view item_of(std::string_view clause, const Pantry& pantry) {
    const bool is_likened = clause.find(" size ") != std::string_view::npos ||
                            clause.find("as large as") != std::string_view::npos ||
                            clause.find("as big as") != std::string_view::npos;
    if (is_likened) { // "butter the size of an egg" is no egg
        return clause.size() <= longest_item && is_ingredient_line(clause, pantry) ? clause
                                                                                   : std::string_view();
    }
    constexpr int most_tries = 8;
    int tries = 0;
    for (std::size_t at = 0; at < clause.size() && tries < most_tries; ++at) {
        const bool begins_word = !is_space(clause[at]) && (at == 0 || is_space(clause[at - 1]));
        if (!begins_word || !may_begin_amount(clause.substr(at, clause.substr(at).find_first_of(" -\n")))) {
            continue;
        }
        ++tries;
        const std::size_t begin = begin_of_part(clause, at);
        std::string_view item = clause.substr(begin, longest_item);
        if (begin + longest_item < clause.size()) {
            const std::size_t last = item.find_last_of(" \n");
            item = item.substr(0, last == std::string_view::npos ? 0 : last);
        }
        if (is_ingredient_line(item, pantry)) {
            return item;
        }
    }
    return {};
}

// An ingredient, or an amount of something that the pantry does not know.
bool is_own_item(std::string_view clause, const Pantry& pantry) {
    if (clause.size() > longest_item) {
        return false;
    }
    const auto amount = read_kitchen_amount(line_tokens(plain_line(clause)));
    return (amount && !amount->measure.name.empty()) || is_ingredient_line(clause, pantry);
}

} // namespace

std::vector<RecipeLine> ingredients_in_prose(const SourcedText& whole, const Pantry& pantry) {
    std::vector<RecipeLine> items;
    const std::string_view text = whole.text;
    for (std::size_t begin = 0; begin < text.size() && items.size() < most_recipe_lines;) {
        const std::size_t end = std::max(end_of_clause(text, begin), begin + 1);
        const std::string_view item = item_of(text.substr(begin, end - begin), pantry);
        if (!item.empty()) {
            const auto at = static_cast<std::size_t>(item.data() - text.data());
            items.push_back(
                {.place = whole.part(at, item.size()), .role = role_of_lead(text.substr(begin, at - begin))});
        }
        begin = end;
    }
    return items;
}

RunOnList read_run_on_list(const SourcedText& paragraph, const Pantry& pantry) {
    constexpr std::size_t fewest_items = 3;
    constexpr std::size_t longest_addition = 30;
    const std::string_view text = paragraph.text;
    RunOnList list;
    std::size_t counted = 0;
    for (std::size_t begin = 0; begin < text.size() && list.items.size() < most_recipe_lines;) {
        const std::size_t end = std::max(end_of_clause(text, begin), begin + 1);
        const std::string_view clause = text.substr(begin, end - begin);
        if (text[begin] == '\n' && !goes_on(text, begin) && !list.items.empty() &&
            !is_behind_comma(text, begin)) {
            return {}; // each line is an item of its own
        }
        std::string_view item = item_of(clause, pantry);
        list.length = begin = end;
        if (std::none_of(clause.begin(), clause.end(), is_alphanumeric)) {
            if (clause == "." || clause == "!") {
                break;
            }
            continue;
        }
        counted += item.empty() ? 0U : 1U;
        item = item.empty() ? clause : item;
        if (is_own_item(item, pantry)) {
            const std::size_t from = std::min(item.find_first_not_of(" \t\r\n"), item.size());
            const std::size_t at = static_cast<std::size_t>(item.data() - text.data()) + from;
            const std::size_t start = static_cast<std::size_t>(clause.data() - text.data());
            list.items.push_back({.place = paragraph.part(at, item.size() - from),
                                  .role = role_of_lead(text.substr(start, at - start))});
        } else if (!list.items.empty() && clause.size() <= longest_addition) { // "finely shred", "or lard"
            SourcedText& last = list.items.back().place;
            const auto first = static_cast<std::size_t>(last.text.data() - text.data());
            last = paragraph.part(first, end - first);
        }
    }
    return counted >= fewest_items ? list : RunOnList();
}

RecipeText read_prose_recipe(const SourceHandle& source, const Pantry& pantry) {
    RecipeText recipe;
    const std::string_view all = source->text();
    recipe.lines = ingredients_in_prose({.source = source, .span = {0, all.size()}, .text = all}, pantry);
    for (std::size_t number = 1; number <= source->line_count(); ++number) {
        const std::string_view text = source->line(number);
        if (recipe.directions.size() < most_recipe_lines) {
            recipe.directions.push_back(plain_line(text.substr(0, 4000)));
        }
    }
    return recipe;
}

} // namespace leavenwright
