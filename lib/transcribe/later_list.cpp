#include "transcribe/later_list.hpp"

#include "source/unicode.hpp"
#include "transcribe/ingredient_line.hpp"
#include "transcribe/kitchen_acts.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/list_item.hpp"
#include "transcribe/recipe_words.hpp"

#include <algorithm>
#include <initializer_list>

namespace leavenwright {
namespace {

bool names_any(std::string_view words, std::initializer_list<std::string_view> names) {
    constexpr std::size_t longest = 4000;
    const std::string folded = fold_name(words.substr(0, longest));
    return std::any_of(names.begin(), names.end(),
                       [&](std::string_view name) { return folded.find(name) != std::string::npos; });
}

// Yeast, or the culture that is used in its place, by any of its names.
bool names_leaven(std::string_view words) {
    return names_any(words, {"yeast", "levain", "leaven", "starter", "sourdough", "hefe", "levure", "lievito",
                             "levadura"});
}

// "BROWN BREAD.": capitals, and no word for a part of a recipe.
bool is_title_in_capitals(std::string_view line) {
    constexpr std::size_t shortest = 5;
    constexpr std::size_t longest = 60;
    const auto is_small = [](char byte) { return byte >= 'a' && byte <= 'z'; };
    const auto is_large = [](char byte) { return byte >= 'A' && byte <= 'Z'; };
    if (line.size() < shortest || line.size() > longest || line.ends_with(':') ||
        std::any_of(line.begin(), line.end(), is_small) ||
        std::count_if(line.begin(), line.end(), is_large) < static_cast<std::ptrdiff_t>(shortest)) {
        return false;
    }
    const std::string heading = heading_text(line);
    return !part_named(heading) && role_of_heading(heading).value_or("dough") == "dough";
}

bool names_flour_in_sentences(const SourcedText& paragraph, const Pantry& pantry) {
    const auto lines = ingredients_in_prose(paragraph, pantry);
    return std::any_of(lines.begin(), lines.end(), [&](const RecipeLine& line) {
        return line.has_amount && names_flour(line.place.text, pantry);
    });
}

} // namespace

bool is_recipe_in_sentences(const SourcedText& paragraph, const Pantry& pantry) {
    constexpr int fewest_amounts = 4;
    int amounts = 0;
    bool has_flour = false;
    for (const RecipeLine& line : ingredients_in_prose(paragraph, pantry)) {
        amounts += line.has_amount ? 1 : 0;
        has_flour = has_flour || (line.has_amount && names_flour(line.place.text, pantry));
    }
    return amounts >= fewest_amounts && has_flour &&
           names_any(paragraph.text, {"yeast", "leaven", "starter"});
}

std::string_view role_of_lead(std::string_view line_above) {
    constexpr std::size_t enough = 80; // of its end
    const std::string plain =
        plain_line(line_above.substr(line_above.size() - std::min(line_above.size(), enough)));
    const std::string_view text = plain;
    if (!(text.ends_with(':') || text.ends_with(" with"))) {
        return {};
    }
    const std::size_t stop = text.rfind(". ");
    std::string_view role;
    for (const LineToken& token : line_tokens(text.substr(stop == std::string_view::npos ? 0 : stop + 2))) {
        const AsideAct act = aside_act(token.folded);
        if (!act.role.empty() && !act.is_participle) {
            role = act.role;
        } else if (is_mixing_verb(token.folded)) { // "coat your hands and mix in:"
            role = {};
        }
    }
    return role;
}

std::size_t length_before_another(const SourcedText& text, const Pantry& pantry) {
    constexpr int most_tries = 12; // each reads a piece of the text
    int tries = 0;
    bool is_below_blank = false;
    for (std::size_t begin = 0; begin < text.text.size() && tries < most_tries;) {
        const std::size_t end = std::min(text.text.find('\n', begin), text.text.size());
        const std::string_view line = text.text.substr(begin, end - begin);
        const std::size_t first = line.find_first_not_of(" \t\r");
        if (is_below_blank && first != std::string_view::npos &&
            is_title_in_capitals(line.substr(first, line.find_last_not_of(" \t\r") + 1 - first))) {
            constexpr std::size_t enough = 1500; // bytes of its list
            ++tries;
            const std::size_t next = std::min(end + 1, text.text.size());
            if (names_flour_in_sentences(text.part(next, std::min(enough, text.text.size() - next)),
                                         pantry)) {
                return begin;
            }
        }
        is_below_blank = first == std::string_view::npos;
        begin = end + 1;
    }
    return text.text.size();
}

bool is_list_block(const SourceText& source, std::size_t first_line, const Pantry& pantry) {
    constexpr std::size_t fewest_items = 2;
    constexpr std::size_t longest_item = 90;
    std::size_t items = 0;
    std::size_t others = 0;
    for (std::size_t number = first_line; number <= source.line_count(); ++number) {
        const std::string_view line = source.line(number);
        if (is_blank(line)) {
            break;
        }
        const bool is_item = line.size() <= longest_item && !is_sentence(line) && !line.ends_with('.') &&
                             (is_ingredient_line(line, pantry) || has_measure(line));
        (is_item ? items : others) += 1;
        if (items > fewest_items && others < fewest_items) { // whatever is done with them below
            return true;
        }
    }
    return items >= fewest_items && others < items;
}

std::size_t end_of_list_with_flour(const SourceText& source, std::size_t first_line, const Pantry& pantry) {
    constexpr std::size_t most_lines = 100;
    constexpr std::size_t longest = 120;
    bool has_flour = false;
    std::size_t end = 0;
    const std::size_t last = std::min(source.line_count(), first_line + most_lines);
    for (std::size_t number = first_line; number <= last; ++number) {
        const std::string_view line = source.line(number);
        if (is_blank(line) || is_rule(line)) {
            continue;
        }
        const std::string_view item = first_cell(line).substr(0, longest);
        if (is_ended_by_colon(line) ||
            !(is_item(item, pantry) || has_measure(item) || names_ingredient(item, pantry))) {
            break;
        }
        has_flour = has_flour || names_flour(item, pantry);
        end = number + 1;
    }
    return has_flour ? end : 0;
}

std::string label_before_words(std::string_view line) {
    constexpr std::size_t longest_label = 40;
    std::size_t end = std::string_view::npos;
    if (line.starts_with("**")) {
        end = line.find("**", 2);
    } else {
        end = line.find(':');
    }
    if (end == std::string_view::npos || end > longest_label || has_digit(line)) {
        return {};
    }
    return heading_text(line.substr(0, end));
}

bool WholeDough::is_in(std::span<const RecipeLine> lines) {
    for (; seen_ < lines.size(); ++seen_) {
        const RecipeLine& line = lines[seen_];
        if (line.role == "dough" || line.role == role_of_total) {
            const std::string_view words = line.said();
            has_flour_ = has_flour_ || names_flour(words, pantry_);
            has_leaven_ = has_leaven_ || names_leaven(words);
            has_salt_ = has_salt_ || names_any(words, {"salt", "salz", "sel", "sale", "sal"});
        }
    }
    return has_flour_ && has_leaven_ && has_salt_;
}

} // namespace leavenwright
