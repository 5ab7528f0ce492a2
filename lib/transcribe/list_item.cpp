#include "transcribe/list_item.hpp"

#include "transcribe/ingredient_line.hpp"
#include "transcribe/kitchen_acts.hpp"
#include "transcribe/line_purpose.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/recipe_text.hpp"
#include "transcribe/recipe_words.hpp"

#include <algorithm>
#include <string>

namespace leavenwright {

bool is_item(std::string_view text, const Pantry& pantry) {
    constexpr std::size_t longest_item = 70;
    return text.size() < longest_item && is_ingredient_line(text, pantry) && !is_sentence(text) &&
           !text.ends_with('.');
}

bool names_ingredient(std::string_view text, const Pantry& pantry) {
    return is_ingredient_line("1 cup " + plain_line(text), pantry);
}

bool begins_list(std::string_view text, const Pantry& pantry) {
    constexpr std::size_t longest = 60;
    return is_item(text, pantry) ||
           (text.size() <= longest && !is_sentence(text) && !stage_named(heading_text(text)).empty());
}

bool begins_group(std::string_view title, std::string_view next_line, const Pantry& pantry) {
    constexpr std::size_t most_words = 4;
    return count_words(title) <= most_words && is_ingredient_line(next_line, pantry) &&
           !names_ingredient(title, pantry);
}

bool is_item_apart(std::string_view text, const Pantry& pantry) {
    constexpr std::size_t longest = 120;
    const std::size_t colon = text.find(':');
    if (text.size() > longest || colon == std::string_view::npos || text.ends_with('.')) {
        return false;
    }
    const auto role = role_of_heading(heading_text(text.substr(0, colon)));
    return role && !is_in_dough(*role) && *role != role_of_total &&
           is_ingredient_line(text.substr(colon + 1), pantry);
}

bool is_item_for_purpose(std::string_view text, const Pantry& pantry) {
    constexpr std::size_t longest = 60;
    const std::size_t at = text.find(" for ");
    if (text.size() > longest || at == std::string_view::npos ||
        !names_ingredient(text.substr(0, at), pantry)) {
        return false;
    }
    const std::string purpose = purpose_in(line_tokens(plain_line(text.substr(at))));
    return purpose == "greasing" || purpose == "dusting" || // "Custard cream for filling" heads its items
           (purpose == "brushing" && text.ends_with("ing"));
}

std::string_view first_cell(std::string_view line) {
    line.remove_prefix(std::min(line.find_first_not_of(" \t"), line.size()));
    return line.substr(0, std::min(line.find("   "), line.find('\t')));
}

bool names_several(const SourcedText& line, const Pantry& pantry) {
    constexpr std::size_t shortest = 60;
    constexpr std::size_t longest = 2000; // what is longer is no ingredient
    constexpr std::ptrdiff_t fewest = 3;
    if (line.text.size() < shortest || line.text.size() > longest) {
        return false;
    }
    const auto lines = ingredients_in_prose(line, pantry);
    return std::count_if(lines.begin(), lines.end(),
                         [](const RecipeLine& item) { return item.has_amount; }) >= fewest;
}

bool has_typed_rings(const SourceText& source) {
    constexpr int fewest = 3;
    constexpr std::size_t most_lines = 400;
    int rings = 0;
    for (std::size_t number = 1; number <= std::min(source.line_count(), most_lines); ++number) {
        std::string_view line = source.line(number);
        line.remove_prefix(std::min(line.find_first_not_of(" \t"), line.size()));
        rings += line.starts_with("o ") ? 1 : 0;
    }
    return rings >= fewest;
}

bool has_list_beside_quote(const SourceText& source, const Pantry& pantry) {
    constexpr std::size_t enough = 4;
    constexpr std::size_t most_lines = 400;
    const std::size_t last = std::min(source.line_count(), most_lines);
    bool is_quoted = false;
    for (std::size_t number = 1; number <= last; ++number) {
        const std::string_view line = source.line(number);
        if (line.starts_with('>')) {
            is_quoted = true;
            const bool is_asked = line.find('?') != std::string_view::npos;
            if (!is_asked && is_item(line.substr(1), pantry)) { // a part of the recipe, perhaps
                return false;
            }
        }
    }
    std::size_t items = 0;
    for (std::size_t number = 1; is_quoted && items < enough && number <= last; ++number) {
        const std::string_view line = source.line(number);
        items += !line.starts_with('>') && is_item(line, pantry) ? 1U : 0U;
    }
    return items >= enough;
}

std::vector<SourcedText> between_bullets(const SourcedText& line, const Pantry& pantry) {
    constexpr std::string_view bullet = " \xE2\x80\xA2 ";
    constexpr std::size_t longest = 2000;
    constexpr std::size_t longest_heading = 40;
    if (line.text.size() > longest || line.text.find(bullet) == std::string_view::npos) {
        return {line};
    }
    const std::size_t colon = line.text.find(": ");
    const bool has_label = colon < longest_heading && colon < line.text.find(bullet);
    const bool has_heading = has_label && role_of_heading(heading_text(line.text.substr(0, colon)));
    std::vector<SourcedText> pieces;
    std::size_t begin = 0;
    if (has_heading) {
        pieces.push_back(line.part(0, colon + 1));
        begin = colon + 2;
    }
    while (begin < line.text.size()) {
        const std::size_t end = std::min(line.text.find(bullet, begin), line.text.size());
        pieces.push_back(line.part(begin, end - begin));
        const std::string_view piece = pieces.back().text;
        const bool is_of_food = piece.find("kcal") != std::string_view::npos || // "2 g fat" of a slice
                                piece.find(" cal") != std::string_view::npos ||
                                piece.find("protein") != std::string_view::npos;
        if (is_of_food || !(is_item(piece, pantry) || names_ingredient(piece, pantry))) {
            return {line};
        }
        begin = end + bullet.size();
    }
    return pieces;
}

// "2 tsp stollen spice", "sunflower 0.30 kg"
static bool is_unknown_item(std::string_view text) {
    constexpr std::size_t longest = 40;
    constexpr std::size_t most_words = 5;
    if (text.size() >= longest || count_words(text) > most_words ||
        text.find_first_of("()") != std::string_view::npos) {
        return false;
    }
    const std::size_t digit = text.find_first_of("0123456789");
    const bool is_behind = digit != std::string_view::npos && digit > 1 && text[digit - 1] == ' ' &&
                           is_amount_alone(text.substr(digit));
    return is_behind || (begins_with_number(text) && has_measure(text) && !is_amount_alone(text));
}

// "poolish all"
static bool names_stage(std::string_view text) {
    constexpr std::size_t most_words = 3;
    return count_words(text) <= most_words && !stage_named(heading_text(text)).empty();
}

std::size_t measured_amounts(std::string_view text) {
    constexpr std::size_t longest = 600;
    const auto tokens = line_tokens(plain_line(text.substr(0, longest)));
    std::size_t count = 0;
    for (std::size_t at = 0; at + 1 < tokens.size(); ++at) {
        const bool is_amount =
            tokens[at].is_number() && measure_named(tokens[at + 1].text, tokens[at + 1].folded);
        count += is_amount ? 1U : 0U;
    }
    return count;
}

// What a row of a stage ends in.
constexpr std::string_view waits = "overnight|covered|warm|room temperature|room temp|all night|until bubbly";

std::string_view before_sentence(std::string_view text) {
    constexpr std::string_view stop = ". ";
    for (std::size_t at = text.find(stop); at != std::string_view::npos; at = text.find(stop, at + 1)) {
        const std::size_t begin = text.rfind(' ', at) + 1; // 0 where no space stands before it
        const std::string_view word = text.substr(begin, at - begin);
        const bool is_begun =
            at + stop.size() < text.size() && text[at + stop.size()] >= 'A' && text[at + stop.size()] <= 'Z';
        constexpr std::size_t longest_short_form = 3; // "2 tsp. Salt", "1 pkg. Yeast"
        if (is_begun && word.size() > longest_short_form && !measure_named(word, word) &&
            measured_amounts(text.substr(at + stop.size())) == 0) {
            return text.substr(0, at);
        }
    }
    return text;
}

std::vector<SourcedText> items_in_row(const SourcedText& row, const Pantry& pantry) {
    constexpr std::string_view remark = " - ";
    const std::string_view text = row.text.substr(0, row.text.find(remark));
    std::vector<SourcedText> items;
    const bool has_stops = text.find("; ") != std::string_view::npos;
    std::size_t amounts = 0; // of what the pantry knows
    std::size_t unknown = 0;
    for (std::size_t begin = 0; begin < text.size();) {
        std::size_t end = text.size();
        std::size_t next = end;
        for (const std::string_view mark : {", ", "; ", " + ", " / ", " with ", " and "}) {
            const bool is_within = has_stops && mark == ", "; // "300 g cheese, grated; 4 eggs"
            const std::size_t at = is_within ? std::string_view::npos : text.find(mark, begin);
            if (at < end && ((mark != " and " && mark != " with ") ||
                             begins_with_number(text.substr(at + mark.size())))) {
                end = at;
                next = at + mark.size();
            }
        }
        const bool is_stopped = next == text.size() && text.ends_with('.');
        std::size_t length = end - begin - (is_stopped ? 1U : 0U);
        for (const std::string_view done : {" cooked", " soaked", " mixed", " scalded", " boiled"}) {
            const bool is_done =
                text.substr(end).starts_with(" with ") && // "50 g oats cooked with 100 g water"
                text.substr(begin, length).ends_with(done);
            length -= is_done ? done.size() : 0U;
        }
        const SourcedText item = row.part(begin, length);
        const bool is_amount = is_item(item.text, pantry);                // "zest of 1 lemon", too
        const bool is_unknown = !is_amount && is_unknown_item(item.text); // "2 tsp stollen spice"
        const bool is_remark =                                            // "ready at 1 pm"
            next == text.size() && items.size() > 1 && !is_amount && !is_unknown && !has_measure(item.text) &&
            (has_digit(item.text) || is_sentence(item.text) ||
             item.text.find(" it ") != std::string_view::npos || is_one_of(waits, item.text));
        if (is_remark && !names_ingredient(item.text, pantry) && !names_stage(item.text)) {
            break;
        }
        if (!is_amount && !is_unknown &&
            (items.empty() || !(names_ingredient(item.text, pantry) || names_stage(item.text)))) {
            return {};
        }
        amounts += is_amount ? 1U : 0U;
        unknown += is_unknown ? 1U : 0U;
        items.push_back(item);
        begin = next;
    }
    return amounts > 0 && amounts >= unknown ? items : std::vector<SourcedText>();
}

bool is_ended_by_colon(std::string_view text) {
    const std::size_t end = text.find_last_not_of(" *_|\t");
    return end != std::string_view::npos && text[end] == ':';
}

} // namespace leavenwright
