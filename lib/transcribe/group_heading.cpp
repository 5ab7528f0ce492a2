#include "transcribe/group_heading.hpp"

#include "source/unicode.hpp"
#include "transcribe/find_name.hpp"
#include "transcribe/ingredient_line.hpp"
#include "transcribe/later_list.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/list_item.hpp"

#include <algorithm>

namespace leavenwright {
namespace {

// "A crumb I like. Here is what I did:" is about what was done.
std::string last_sentence(const std::string& title) {
    std::size_t begin = 0;
    for (const std::string_view stop : {". ", "! ", "? "}) {
        const std::size_t at = title.rfind(stop);
        begin = at == std::string::npos ? begin : std::max(begin, at + stop.size());
    }
    return title.substr(begin);
}

class HeadingReader {
public:
    HeadingReader(const SourcedText& line, const LineCursor& cursor, const HeadingPlace& place,
                  const Pantry& pantry)
        : text_(line.text), cursor_(cursor), place_(place), pantry_(pantry) {}

    std::optional<GroupHeading> read(const std::string& folded) {
        const bool is_marked = is_marked_as_heading();
        const std::string label = is_marked ? std::string() : label_before_words(text_);
        const bool is_label = role_of_heading(label) && is_item(cursor_.next_words(), pantry_);
        std::string title = is_label ? label : title_behind_time(text_, without_brackets(folded));
        if (has_digit(title) && (cursor_.heading_level() > 0 || text_.starts_with("**")) &&
            !has_measure(text_)) {
            title = without_figures(title); // "## Levain, 8 am"
        }
        title = before_clock(before_comma(behind_day(title)));
        const bool is_bare = may_be_bare(title);
        if (is_next_day(title) && (is_marked || is_bare) && is_stage_open()) {
            return GroupHeading{.role = "dough", .title = title};
        }
        constexpr std::size_t longest = 60;
        if (!(is_marked || is_label || is_bare || is_one_word(title)) || title.size() > longest ||
            has_digit(title)) {
            return std::nullopt;
        }
        const bool is_amid = place_.part == RecipePart::ingredients;
        const bool may_be_made =
            (is_marked || is_bare) && (place_.part == RecipePart::ingredients || place_.has_name);
        const std::string_view made = may_be_made ? role_of_made(title) : std::string_view();
        auto role = made.empty() ? role_of_heading(last_sentence(title)) : std::optional(std::string(made));
        const bool says_role = role.has_value();
        if (!role && is_marked) {
            role = role_in_brackets(folded); // "Posypka (crumbs):"
        }
        if (!role && is_amid && title == "pan") { // over the butter and the oil of it
            role = "greasing";
        }
        if (!role && ((is_marked && is_amid) || (is_bare && is_levain_list())) && names_levain(title)) {
            role = "levain";
        }
        const bool is_below_name = // "Onion mixture:", above the dough
            place_.part == RecipePart::heading && place_.has_name && is_ended_by_colon(text_);
        if (!role && is_marked && (is_amid || is_below_name)) {
            role = role_of_group(title);
        }
        if (!role && is_bare && is_amid &&
            (begins_group(title, cursor_.next_line(), pantry_) || is_made_of(title))) {
            role = "dough"; // "Fruit", "Dry ingredients"
        }
        if (role == "dough" && place_.part == RecipePart::heading && !is_marked && !place_.has_name) {
            return std::nullopt; // "White bread" above its ingredients
        }
        if (!role && is_amid && is_ended_by_colon(text_) && joins_items(title)) {
            return GroupHeading{.role = std::nullopt, .title = title};
        }
        const bool is_title = place_.part == RecipePart::heading &&
                              (text_.starts_with('#') || is_underlined()) && !place_.has_name &&
                              !place_.has_parts;
        if (!role || is_title || is_of_another(*role) || is_stage_above(*role)) {
            return std::nullopt;
        }
        return GroupHeading{.role = role, .title = title, .says_role = says_role, .says_more = is_label};
    }

private:
    bool is_marked_as_heading() const {
        const auto is_between = [&](std::string_view begin, std::string_view end) {
            return text_.starts_with(begin) && text_.ends_with(end);
        };
        return text_.starts_with('#') || text_.starts_with(';') || // of a wiki
               is_ended_by_colon(text_) || text_.ends_with(" -") || text_.ends_with("--") ||
               is_between("**", "**") || is_between("'''", "'''") || is_between("_", "._") ||
               is_between("_", ":_") || is_underlined() || is_over_inner_list();
    }

    // "Soaker" over "------"
    bool is_underlined() const { return !text_.starts_with('#') && cursor_.heading_level() > 0; }

    // "* Sponge" over "  * 75 g flour"; "Dry" over items that are set in
    bool is_over_inner_list() const {
        const std::string_view below = cursor_.next_line();
        const std::size_t indent = below.find_first_not_of(" \t");
        const bool may_be =
            without_bullet(text_).size() < text_.size() || place_.part == RecipePart::ingredients;
        return may_be && !has_digit(text_) && indent != std::string_view::npos && indent > cursor_.indent() &&
               is_item(below.substr(indent), pantry_) &&
               (role_of_heading(heading_text(text_)) || !names_ingredient(text_, pantry_));
    }

    // A few words below an empty line, and items below them.
    bool may_be_bare(std::string_view title) const {
        constexpr std::size_t longest = 30;
        const bool is_over_items = // "Milk for glazing"
            is_item(cursor_.next_line(), pantry_) && !names_flour(cursor_.next_line(), pantry_);
        if (!place_.is_below_blank || title.size() >= longest || is_reference() ||
            (is_item_for_purpose(text_, pantry_) && !is_over_items)) {
            return false;
        }
        switch (place_.part) {
        case RecipePart::ingredients:
            return true;
        case RecipePart::directions:
            return begins_list(first_cell(cursor_.next_words()), pantry_);
        case RecipePart::heading:
            break;
        }
        const bool is_stage = place_.has_name && !stage_named(title).empty(); // an empty line may follow
        return is_ingredient_line(is_stage ? cursor_.next_words() : cursor_.next_line(), pantry_);
    }

    // "all of the sponge" or "- the biga" over "- 300 g flour"; "- Final dough" may be a heading
    bool is_reference() const {
        const auto tokens = line_tokens(plain_line(text_));
        return std::any_of(tokens.begin(), tokens.end(), [&](const LineToken& token) {
            return token.is_any({"all", "above"}) ||
                   (token.is_any({"from", "the", "your", "whole", "rest", "half"}) &&
                    is_bullet_amid_bullets());
        });
    }

    // "Sponge" or "- Sponge" over "- 300 g flour", where the sponge was read: an item
    bool is_stage_above(std::string_view role) const {
        const bool is_first = place_.role == "dough" && !place_.lines.empty() && // below "Dough:"
                              place_.lines.back().role == role;
        const bool may_be_item =
            is_bullet_amid_bullets() || (!is_marked_as_heading() && (is_first || !place_.is_below_blank));
        return is_in_dough(role) && role != "dough" && may_be_item &&
               ((place_.is_dough_begun && !place_.is_below_blank) || // its list may follow
                std::any_of(place_.lines.begin(), place_.lines.end(),
                            [&](const RecipeLine& line) { return line.role == role; }));
    }

    bool is_bullet_amid_bullets() const {
        const std::string_view below = cursor_.next_line();
        const std::size_t begin = below.find_first_not_of(" \t");
        return begin == cursor_.indent() && text_.front() == below[begin] &&
               without_bullet(text_).size() < text_.size() &&
               without_bullet(below.substr(begin)).size() < below.size() - begin;
    }

    // "Dough" over its items
    bool is_one_word(std::string_view title) const {
        constexpr std::size_t most_words = 4;
        const bool is_short =
            count_words(title) == 1 || (title.starts_with("for ") && count_words(title) <= most_words);
        return place_.part != RecipePart::directions && is_short && role_of_heading(title) &&
               (is_ingredient_line(cursor_.next_line(), pantry_) || is_over_table() ||
                !stage_named(heading_text(cursor_.next_line())).empty() ||
                (!stage_named(title).empty() && has_measure(cursor_.next_line()) && // "200 g at 100 %"
                 begins_with_number(cursor_.next_line())));
    }

    // "Levain" over "Ingredient | Weight"
    bool is_over_table() const {
        const std::string_view below = cursor_.next_line();
        constexpr std::size_t longest = 40; // bytes; no name of a column
        const std::size_t end = below.find_first_of("|\t", 1);
        if (end == std::string_view::npos || end > longest) {
            return false;
        }
        const std::size_t begin = below.front() == '|' ? 1 : 0;
        const std::string first = heading_text(below.substr(begin, end - begin));
        return first.starts_with("ingredient") || first.starts_with("item") || first.starts_with("material");
    }

    static std::optional<std::string> role_in_brackets(std::string_view folded) {
        const std::size_t begin = folded.find('(');
        const std::size_t end = folded.find(')', begin == std::string_view::npos ? folded.size() : begin);
        const std::string_view aside =
            end == std::string_view::npos ? std::string_view() : folded.substr(begin + 1, end - begin - 1);
        const bool is_name = count_words(aside) == 1 && !has_digit(folded); // "(in a pot)" is a place
        return is_name ? role_of_heading(aside) : std::nullopt;
    }

    // "For the garlic butter:" is made apart from the dough, under its own name; "Wet:" and "Raisin
    // dispenser:" are parts of it.
    std::optional<std::string> role_of_group(const std::string& title) const {
        if (title.empty() || !is_ingredient_line(cursor_.next_words(), pantry_)) {
            return std::nullopt;
        }
        const bool is_mixed = title.find("yeast") != std::string::npos || // "For the yeast mixture"
                              title.find("mixture") != std::string::npos || title.ends_with(" wet") ||
                              title.ends_with(" dry");
        const std::string_view what = behind_for_the(title);
        const bool is_one = title.starts_with("for a ") || title.starts_with("for an "); // "for a margherita"
        const bool is_group = is_one ? place_.has_whole_dough : !text_.starts_with('#');
        return !what.empty() && is_group && !is_mixed ? std::string(what)
               : is_behind_stage(title)               ? std::string("dough")
                                                      : place_.role;
    }

    // "## Next morning" behind "## Sponge", "Everything else:"; "### Autolyse" is a part of what is above it.
    bool is_behind_stage(std::string_view title) const {
        const std::size_t level = cursor_.heading_level();
        const bool is_part = place_.role_level > 0 && level > place_.role_level;
        const bool is_of_rest = level > 0 ? !is_part : names_rest(title);
        return is_of_rest && is_stage_open();
    }

    bool is_stage_open() const { return place_.role != "dough" && is_in_dough(place_.role); }

    // "Chocolate", behind the dough and over what is made with it
    bool is_made_of(std::string_view title) const {
        const NameMatch match = count_words(title) == 1 ? name_in(title, pantry_) : NameMatch();
        const bool is_flavour =
            match.ingredient != nullptr && match.ingredient->ingredient_class == IngredientClass::other;
        return is_flavour && has_measure(cursor_.next_line()) && begins_with_number(cursor_.next_line()) &&
               std::any_of(place_.lines.begin(), place_.lines.end(),
                           [&](const RecipeLine& line) { return names_flour(line.said(), pantry_); });
    }

    // Behind other parts, or over its seed; "Sourdough" may be what is baked.
    bool is_levain_list() const {
        const std::string below = fold_name(cursor_.next_line().substr(0, 80)); // bytes
        return !place_.lines.empty() || (place_.has_name && (below.find("starter") != std::string::npos ||
                                                             below.find("culture") != std::string::npos));
    }

    static bool names_levain(std::string_view title) { // more words name a bread, as a title may
        return title == "sourdough" || title == "the sourdough" || title == "for the sourdough";
    }

    // "Poolish, 12 hours at room temperature", "For the sponge, the evening before"
    std::string before_comma(const std::string& title) const {
        constexpr std::size_t most_words = 4;
        const std::string first = title.substr(0, title.find(','));
        const bool is_role = first.size() < title.size() && count_words(first) <= most_words &&
                             !is_sentence(text_) && !is_reference() && !is_bullet_amid_bullets() &&
                             (role_of_heading(first) || names_levain(first));
        return is_role ? first : title;
    }

    // "LEVAIN 9:00 pm Fri"
    std::string before_clock(const std::string& title) const {
        const std::size_t digit = title.find_first_of("0123456789");
        if (digit == std::string::npos || digit < 2 || title[digit - 1] != ' ' || has_measure(text_)) {
            return title;
        }
        const std::string first = title.substr(0, digit - 1);
        const std::string_view clock = std::string_view(title).substr(digit);
        const auto has = [](std::string_view text, std::string_view mark) {
            return text.find(mark) != std::string_view::npos;
        };
        const std::string_view hour = clock.substr(0, 4); // "9am", "10pm"
        const bool is_clock = has(clock, " am") || has(clock, " pm") || has(hour, "am") || has(hour, "pm") ||
                              has(clock.substr(0, 3), ":");
        return is_clock && (!stage_named(first).empty() || role_of_heading(first) == "dough") ? first : title;
    }

    // "Day 1: soaker"
    static std::string behind_day(const std::string& title) {
        const std::size_t mark = title.find_first_of(":,-");
        std::string day = title.substr(0, mark);
        for (const std::string_view part : {" morning", " afternoon", " evening", " night"}) {
            day.resize(day.size() - (day.ends_with(part) ? part.size() : 0U));
        }
        const bool is_day = mark != std::string::npos && is_day_alone(day);
        const std::size_t begin = is_day ? title.find_first_not_of(": ,-", mark) : std::string::npos;
        return begin == std::string::npos ? title : title.substr(begin);
    }

    static bool is_day_alone(std::string_view title) {
        constexpr std::string_view day = "day ";
        return title.starts_with(day) && title.size() == day.size() + 1 && title.back() >= '1' &&
               title.back() <= '9';
    }

    // "Day 2"
    static bool is_next_day(std::string_view title) {
        return (is_day_alone(title) && title.back() > '1') || title == "tomorrow" ||
               title == "the next day" || title == "next day" || title == "next morning" ||
               title == "the next morning";
    }

    // "Also:", between items of one list
    static bool joins_items(std::string_view title) {
        return title == "also" || title == "and" || title == "plus" || title == "and also" ||
               title == "you also need";
    }

    // A list below directions is of a topping, say, or of what the dough still lacks; another dough there is
    // another recipe.
    bool is_of_another(std::string_view role) const {
        return place_.part == RecipePart::directions &&
               ((role == "dough" && place_.has_whole_dough) ||
                !begins_list(first_cell(cursor_.next_words()), pantry_));
    }

    std::string_view text_;
    const LineCursor& cursor_;
    const HeadingPlace& place_;
    const Pantry& pantry_;
};

} // namespace

std::optional<GroupHeading> read_group_heading(const SourcedText& line, const std::string& folded,
                                               const LineCursor& cursor, const HeadingPlace& place,
                                               const Pantry& pantry) {
    return HeadingReader(line, cursor, place, pantry).read(folded);
}

} // namespace leavenwright
