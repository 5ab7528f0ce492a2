#include "transcribe/recipe_words.hpp"

#include "source/unicode.hpp"
#include "transcribe/kitchen_amount.hpp"
#include "transcribe/kitchen_number.hpp"
#include "transcribe/kitchen_words.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/recipe_text.hpp"

#include <algorithm>
#include <array>

namespace leavenwright {
namespace {

bool is_word_of(std::string_view text, std::initializer_list<std::string_view> words) {
    return std::find(words.begin(), words.end(), text) != words.end();
}

// The number of a recipe in its book, with the marks behind it: "1718. ", "1722.--".
std::size_t length_of_number(std::string_view text) {
    constexpr std::size_t most_digits = 4;
    const std::size_t digits = text.find_first_not_of("0123456789");
    if (digits == 0 || digits > most_digits) {
        return 0;
    }
    for (const std::string_view mark : {".--", ".\xE2\x80\x94", ". "}) {
        if (text.substr(digits).starts_with(mark)) {
            return digits + mark.size();
        }
    }
    return 0;
}

} // namespace

std::string heading_text(std::string_view line) {
    std::string text = fold_name(plain_line(line));
    text.erase(0, std::min(text.find_first_not_of("#=; "), text.size()));
    std::erase(text, '"'); // 'For the "streusel":'
    while (!text.empty() && (text.back() == ':' || text.back() == '#' || text.back() == '=' ||
                             text.back() == ' ' || text.back() == '.' || text.back() == '-')) {
        text.pop_back();
    }
    return text;
}

std::optional<RecipePart> part_named(std::string_view heading) {
    if (is_word_of(heading, {"ingredients", "ingredient list", "you need", "you will need", "what you need",
                             "zutaten", "ingredienti", "ingredientes", "shopping list"})) {
        return RecipePart::ingredients;
    }
    if (is_word_of(heading,
                   {"directions", "method", "instructions", "preparation", "steps", "procedure", "to make",
                    "how to make it", "process", "zubereitung", "anleitung", "preparacion", "elaboracion",
                    "instrucciones", "procedimento", "preparazione", "istruzioni", "recette", "what to do",
                    "making", "the method", "how", "how to", "what you do", "to bake", "mode", "to prepare",
                    // what it is made with, which is no ingredient
                    "equipment", "utensils", "kochgeschirr", "utensilien", "zubehor", "ustensiles",
                    "materiel", "attrezzatura", "utensili", "utensilios"})) {
        return RecipePart::directions;
    }
    constexpr std::size_t most_words = 5;
    if (heading.starts_with("how ") && (heading.ends_with(" it") || heading.ends_with(" them")) &&
        count_words(heading) <= most_words) {
        return RecipePart::directions;
    }
    return std::nullopt;
}

std::optional<PartLabel> part_label(std::string_view line) {
    constexpr std::size_t longest_label = 24;
    const std::size_t number = length_of_number(line);
    const std::size_t end = line.substr(0, longest_label).find_first_of(".:-\xE2", number);
    if (end == std::string_view::npos) {
        return std::nullopt;
    }
    const auto part = part_named(heading_text(line.substr(number, end - number)));
    std::size_t begin = end;
    for (const std::string_view mark : {".", ":", " ", "-", "\xE2\x80\x94", "\xE2\x80\x93", "-", " ", "*"}) {
        begin += line.substr(begin).starts_with(mark) ? mark.size() : 0U;
    }
    return part && begin < line.size() ? std::optional(PartLabel{*part, begin}) : std::nullopt;
}

std::string_view numbered_title(std::string_view line) {
    const std::string_view title = line.substr(length_of_number(line));
    const bool has_small =
        std::any_of(title.begin(), title.end(), [](char byte) { return byte >= 'a' && byte <= 'z'; });
    return title.size() < line.size() && !has_small && count_words(title) > 0 ? title : std::string_view();
}

std::string title_behind_time(std::string_view line, std::string heading) {
    const std::string plain = has_digit(heading) ? plain_line(line) : std::string();
    const std::size_t dash = plain.rfind(" - ");
    return dash == std::string::npos || has_digit(plain.substr(dash)) ? heading
                                                                      : heading_text(plain.substr(dash + 3));
}

std::size_t length_of_yield_word(std::string_view heading) {
    constexpr std::size_t longest = 80;
    if (heading.size() >= longest) {
        return 0;
    }
    for (const std::string_view word : {"makes ", "serves ", "yield: ", "yields ", "yield ",
                                        "serves: ", "servings: ", "makes: ", "yields: ", "quantity: "}) {
        if (heading.starts_with(word)) {
            return word.size();
        }
    }
    return 0;
}

bool has_word_of(std::string_view text, std::span<const std::string_view> words) {
    while (!text.empty()) {
        const std::string_view word = text.substr(0, text.find(' '));
        if (std::find(words.begin(), words.end(), word) != words.end()) {
            return true;
        }
        text.remove_prefix(std::min(word.size() + 1, text.size()));
    }
    return false;
}

std::string_view role_of_made(std::string_view heading) {
    for (const std::string_view lead : {"for the ", "for ", "the "}) {
        heading.remove_prefix(heading.starts_with(lead) ? lead.size() : 0U);
    }
    constexpr std::string_view tail = " ingredients";
    heading.remove_suffix(heading.ends_with(tail) ? tail.size() : 0U);
    if (is_word_of(heading, {"custard", "pastry cream", "vanilla cream", "vanilla custard", "almond cream",
                             "creme patissiere", "frangipane", "swirl", "cinnamon swirl", "cinnamon sugar",
                             "cinnamon butter", "meat mixture", "cheese mixture", "apple mixture", "inside",
                             "for inside", "middle", "center", "centre"})) {
        return "filling";
    }
    if (is_word_of(heading, {"posypka",
                             "to dip",
                             "to top",
                             "garlic butter",
                             "herb butter",
                             "honey butter",
                             "ganache",
                             "craquelin",
                             "pizza sauce",
                             "marinara",
                             "pesto",
                             "to coat",
                             "dip",
                             "dipping",
                             "decor",
                             "to finish",
                             "to assemble",
                             "before baking",
                             "after baking",
                             "cream cheese icing",
                             "cream cheese frosting"})) {
        return "topping";
    }
    if (is_word_of(heading, {"lye", "lye solution", "soda bath"})) {
        return "bath";
    }
    return is_word_of(heading, {"butter block", "lamination butter", "layers", "layering"}) ? "layers" : "";
}

bool names_rest(std::string_view heading) {
    constexpr auto words =
        std::to_array<std::string_view>({"rest", "remaining", "remainder", "else", "later", "morning", "next",
                                         "second", "finally", "afterwards", "then", "tomorrow"});
    return has_word_of(heading, words);
}

std::string without_figures(std::string_view heading) {
    std::string text;
    while (!heading.empty()) {
        std::string_view word = heading.substr(0, heading.find(' '));
        heading.remove_prefix(std::min(word.size() + 1, heading.size()));
        word = word.substr(0, word.find_last_not_of(".,:;)-") + 1);
        const bool is_beside = is_word_of(word, {"day", "step", "stage", "part", "phase", "at", "am", "pm",
                                                 "h", "hours", "hour", "o'clock", "from", "g", "and"});
        if (!word.empty() && !has_digit(word) && !is_beside) {
            text += (text.empty() ? "" : " ") + std::string(word);
        }
    }
    return text;
}

std::string without_brackets(std::string_view heading) {
    std::string text(heading.substr(0, heading.find('(')));
    text.erase(text.find_last_not_of(' ') + 1);
    return text;
}

bool is_blank(std::string_view text) {
    return text.find_first_not_of(" \t\r\n") == std::string_view::npos;
}

std::size_t count_words(std::string_view text) {
    std::size_t words = 0;
    for (std::size_t at = 0; at < text.size(); ++at) {
        words += text[at] != ' ' && (at == 0 || text[at - 1] == ' ') ? 1U : 0U;
    }
    return words;
}

bool has_digit(std::string_view text) {
    return text.find_first_of("0123456789") != std::string_view::npos;
}

bool begins_with_number(std::string_view text) {
    constexpr std::size_t longest = 120;
    const auto tokens = line_tokens(plain_line(text.substr(0, longest)));
    return !tokens.empty() && read_kitchen_number(tokens);
}

bool is_rule(std::string_view line) {
    return line.starts_with("{|") || line.starts_with("|}") || // around a table of a wiki
           (!line.empty() && line.find_first_not_of("-=*_ |:+") == std::string_view::npos);
}

bool has_measure(std::string_view text) {
    constexpr std::size_t longest = 300;
    const auto amount =
        text.size() < longest ? read_kitchen_amount(line_tokens(plain_line(text))) : std::nullopt;
    return amount && !amount->measure.name.empty();
}

bool begins_with_time(std::string_view text) {
    constexpr std::size_t enough = 40;
    const auto tokens = line_tokens(plain_line(text.substr(0, enough)));
    return tokens.size() > 1 && tokens[0].is_number() &&
           (is_word_of(tokens[1].folded,
                       {"h", "hr", "hrs", "hour", "hours", "min", "mins", "minute", "minutes", "days"}) ||
            tokens[1].text == "\xC2\xB0"); // "170° 50 min"
}

bool begins_with_clock(std::string_view text) {
    const auto is_digit = [&](std::size_t at) {
        return at < text.size() && text[at] >= '0' && text[at] <= '9';
    };
    const std::size_t mark = std::min(text.find_first_not_of("0123456789"), text.size());
    const bool is_hour = (mark == 1 || mark == 2) && mark < text.size() && text[mark] == ':';
    return is_hour && is_digit(mark + 1) && is_digit(mark + 2) && !is_digit(mark + 3) &&
           mark + 3 < text.size();
}

bool is_amount_alone(std::string_view text) {
    constexpr std::size_t longest = 80;
    if (text.size() > longest) {
        return false;
    }
    const auto tokens = line_tokens(plain_line(text));
    const auto amount = read_kitchen_amount(tokens);
    if (!amount) {
        return false;
    }
    std::size_t at = amount->length;
    at += at < tokens.size() && tokens[at].is(".") ? 1U : 0U;
    const auto close = std::find_if(tokens.begin() + static_cast<std::ptrdiff_t>(at), tokens.end(),
                                    [](const LineToken& token) { return token.is(")"); });
    const bool has_bracket = at < tokens.size() && tokens[at].is("(") && close + 1 == tokens.end();
    return has_bracket || (at == tokens.size() && !amount->measure.name.empty());
}

// Whether a sentence ends before the end of a text; "tbsp. sugar" and "2 oz. salt" are no end.
bool ends_within(std::string_view text) {
    constexpr std::size_t longest_short_word = 4; // "tbsp.", "pkg."
    for (std::size_t stop = text.find(". "); stop != std::string_view::npos;
         stop = text.find(". ", stop + 1)) {
        const std::size_t space = text.substr(0, stop).rfind(' ');
        const std::size_t begin = space == std::string_view::npos ? 0 : space + 1;
        const std::string_view word = text.substr(begin, stop - begin);
        if (word.size() > longest_short_word && !has_digit(word) &&
            (word.ends_with('s') || !measure_named(word, fold_name(word)))) {
            return true;
        }
    }
    return false;
}

// Folded; the words before `end`.
static std::string last_word_before(std::string_view text, std::size_t end) {
    const std::string before = heading_text(text.substr(0, end));
    return before.substr(before.rfind(' ') + 1);
}

bool is_sentence(std::string_view text) {
    const std::string plain = plain_line(text);
    const std::size_t words = count_words(plain);
    const std::string first = fold_name(plain.substr(0, plain.find_first_of(" ,./")));
    const bool is_command = is_word_of(
        first,
        {"mix",       "combine", "stir",   "add",    "knead",  "bake",     "preheat",  "heat",    "dissolve",
         "beat",      "whisk",   "place",  "put",    "let",    "cover",    "turn",     "shape",   "roll",
         "divide",    "in",      "when",   "scald",  "sift",   "cream",    "pour",     "punch",   "brush",
         "allow",     "set",     "make",   "melt",   "soften", "sprinkle", "mash",     "cook",    "boil",
         "work",      "leave",   "rub",    "warm",   "proof",  "remove",   "transfer", "grease",  "form",
         "cut",       "then",    "sieve",  "bind",   "bring",  "fold",     "drain",    "start",   "weigh",
         "take",      "soak",    "steep",  "strain", "blend",  "whip",     "line",     "after",   "while",
         "meanwhile", "next",    "first",  "now",    "once",   "fry",      "drop",     "prepare", "gradually",
         "carefully", "using",   "return", "repeat", "cool",   "do",       "tip",      "press",   "flatten",
         "stretch",   "keep",    "serve",  "spread", "store"});
    // "Crumble the yeast", but "Peel of 1 lemon", "Break flour 100 g"
    const std::string second =
        first.size() < plain.size() ? fold_name(plain.substr(first.size() + 1, 12)) : std::string();
    const bool may_command = is_word_of(
        first, {"crumble", "break", "deflate", "peel", "grate", "slice", "rinse", "arrange", "score", "slash",
                "measure", "discard", "chill", "freeze", "thaw", "toss", "continue", "refrigerate"});
    const bool is_stage = // "Bulk 1pm - 5:30pm, folds at 30/60", "Preshape 5:30"
        is_word_of(first,
                   {"bulk", "preshape", "pre-shape", "autolyse", "retard", "fridge", "proof", "shape"}) &&
        !second.empty() && second.front() >= '0' && second.front() <= '9';
    const bool is_pointed = is_word_of(second.substr(0, second.find(' ')),
                                       {"the", "it", "them", "into", "off", "up", "each", "your", "this",
                                        "all", "any", "over", "down", "until", "for"});
    // "Warm water: 300 g"; "Warm 300 ml of milk" is an order
    const std::size_t digit = plain.find_first_of("0123456789");
    const std::size_t behind = text.find_first_not_of(' ', first.size());
    const bool is_cell = // "Cream | 180 g | 36 %"
        behind != std::string_view::npos && (text[behind] == '|' || text[behind] == '\t');
    const bool is_item =
        is_cell || (is_word_of(first, {"warm", "cool", "cream", "chill"}) && digit != std::string::npos &&
                    is_amount_alone(plain.substr(digit)) &&
                    !is_word_of(last_word_before(plain, digit), {"to", "for", "at", "about", "until"}));
    const bool is_long = words > 22 || (words > 9 && (plain.ends_with('.') || ends_within(plain)));
    return is_stage || (!is_item && (is_command || (may_command && is_pointed)) && words >= 3) ||
           (is_long && !has_measure(text));
}

bool is_numbered_step(std::string_view text) {
    constexpr std::size_t most_digits = 2;
    text.remove_prefix(text.starts_with('(') ? 1U : 0U);
    const std::size_t digits = std::min(text.find_first_not_of("0123456789"), text.size());
    const std::string_view mark = text.substr(digits, 2);
    return digits > 0 && digits <= most_digits && (mark == ". " || mark == ") ") &&
           is_sentence(text.substr(digits + mark.size()));
}

bool is_step_without_mark(std::string_view text) {
    constexpr std::size_t most_digits = 2;
    const std::size_t digits = std::min(text.find_first_not_of("0123456789"), text.size());
    if (digits == 0 || digits > most_digits || !text.substr(digits).starts_with(' ')) {
        return false;
    }
    const std::string_view words = text.substr(digits + 1);
    const std::size_t space = words.find(' ');
    const bool is_pointed =
        space != std::string_view::npos && // "1 Cream cheese package" is an item
        is_word_of(fold_name(words.substr(space + 1, words.find(' ', space + 1) - space - 1)),
                   {"the", "all", "your", "into", "in", "a", "it", "together"});
    return is_pointed && words.front() >= 'A' && words.front() <= 'Z' && is_sentence(words);
}

std::string_view stage_named(std::string_view heading) {
    struct StageWord {
        std::string_view word; // folded
        std::string_view stage;
    };
    constexpr auto stages = std::to_array<StageWord>({
        {"poolish", "poolish"},
        {"biga", "biga"},
        {"sponge", "sponge"},
        {"ferment", "preferment"},
        {"preferment", "preferment"},
        {"pre ferment", "preferment"},
        {"pre dough", "preferment"},
        {"predough", "preferment"},
        {"starter dough", "preferment"},
        {"sour", "preferment"},
        {"mother dough", "preferment"},
        {"pate fermentee", "old dough"},
        {"old dough", "old dough"},
        {"levain", "levain"},
        {"leaven", "levain"},
        {"starter", "preferment"},
        {"soaker", "soaker"},
        {"scald", "scald"},
        {"tangzhong", "scald"},
        {"water roux", "scald"},
        {"porridge", "scald"},
        {"yudane", "scald"},
        {"flour paste", "scald"},
        {"vorteig", "preferment"},
        {"sauerteig", "levain"},
        {"lievito madre", "levain"},
        {"masa madre", "levain"},
        {"quellstuck", "soaker"},
        {"bruhstuck", "scald"},
        {"kochstuck", "scald"},
    });
    const std::string text = " " + std::string(heading) + " ";
    for (const std::string_view baked : {" bread ", " loaf ", " loaves ", " rolls ", " buns ", " cake ",
                                         " cream ", " milk ", " final ", " main "}) {
        if (text.find(baked) != std::string::npos) {
            return {};
        }
    }
    const auto named = std::find_if(stages.begin(), stages.end(), [&](const StageWord& stage) {
        return text.find(" " + std::string(stage.word) + " ") != std::string::npos;
    });
    const bool is_loose = named != stages.end() && named->word == "ferment" && // "slow ferment dough"
                          !text.ends_with(" ferment ");
    return named == stages.end() || is_loose ? std::string_view() : named->stage;
}

// "Streusel coffee cake" is what is baked, "filling for the cake" is not.
static bool names_baked(std::string_view text) {
    const std::string_view last = text.substr(text.rfind(' ') + 1);
    return text.find(" for ") == std::string_view::npos && last.size() < text.size() &&
           is_word_of(last, {"bread", "breads", "loaf", "loaves", "roll", "rolls", "bun", "buns", "cake",
                             "cakes", "bagels", "pizza", "pretzels", "doughnuts", "braid", "twist"});
}

std::string_view behind_for_the(std::string_view heading) {
    for (const std::string_view lead :
         {"for the ", "fur den ", "fur die ", "fur das ", "pour la ", "pour le ", "per il ", "per la ",
          "per l ", "para la ", "para el ", "for a ", "for an "}) {
        if (heading.starts_with(lead)) {
            return heading.substr(lead.size());
        }
    }
    return {};
}

static bool is_place_to_grease(std::string_view word) {
    return is_word_of(word,
                      {"pan", "pans", "tin", "tins", "tray", "trays", "baking tray", "baking sheet", "bowl",
                       "skillet", "griddle", "teglia", "form", "blech", "moule", "plaque", "molde"});
}

std::optional<std::string> role_of_heading(std::string_view heading) {
    const bool is_for = heading.starts_with("for ") || !behind_for_the(heading).empty();
    for (const std::string_view lead :
         {"ingredients for the ", "ingredients for ", "for the ", "for ", "the "}) {
        heading.remove_prefix(heading.starts_with(lead) ? lead.size() : 0U);
    }
    const std::string_view behind = behind_for_the(heading);
    if (is_for && is_place_to_grease(behind.empty() ? heading : behind)) { // "For the pan"
        return "greasing";
    }
    const std::string text(behind.empty() ? heading : behind);
    if (is_word_of(text, {"total", "total formula", "overall formula", "overall", "whole formula",
                          "total dough", "formula", "overall dough"})) {
        return std::string(role_of_total);
    }
    if (text == "per pizza" || text == "each pizza" || text == "on each pizza") {
        return "topping";
    }
    if (text.starts_with("sprinkle in") || // yeast, into water
        text.starts_with("wash hands") || text.starts_with("wash your")) {
        return std::nullopt;
    }
    if (text.ends_with("for crosses") || text.ends_with("for the crosses")) { // "Flour paste for crosses"
        return "topping";
    }
    if (text == "crumbs") { // of flour, sugar and butter, on a cake
        return "topping";
    }
    if (text.ends_with(" feed") || text.ends_with(" feeding")) { // what a culture is kept with
        return "feeding";
    }
    if (const std::string_view stage = stage_named(text); !stage.empty()) {
        return std::string(stage);
    }
    if (names_baked(text)) {
        return "dough";
    }
    std::string_view rest = text;
    while (!rest.empty()) {
        const std::string_view word = rest.substr(0, rest.find(' '));
        const bool is_dough = is_word_of(
            word, {"dough",       "bread",       "loaf",    "loaves",    "rolls",    "buns",      "final",
                   "main",        "ingredients", "base",    "crust",     "batter",   "bagels",    "pizza",
                   "pretzels",    "doughnuts",   "donuts",  "muffins",   "crumpets", "baguettes", "naan",
                   "pitas",       "flatbreads",  "brioche", "challah",   "focaccia", "knots",     "twists",
                   "breadsticks", "croissants",  "teig",    "hauptteig", "impasto",  "pate",      "masa"});
        const std::string_view last = std::string_view(text).substr(text.rfind(' ') + 1);
        const std::string_view of_last = last == word ? std::string_view() : purpose_named(last);
        if (is_dough && !of_last.empty()) { // "Pizza topping"
            return std::string(of_last);
        }
        if (is_dough) {
            return "dough";
        }
        if (is_word_of(word, {"cook", "cooking", "steam", "steaming", "poach", "poaching", "simmer"})) {
            return "bath";
        }
        // "Rings" are baked, no place to grease
        const std::string_view purpose = purpose_named(word);
        const bool is_place = (purpose == "greasing" || purpose == "dusting") && !word.ends_with("ing");
        if (!purpose.empty() && !is_place) {
            return std::string(purpose);
        }
        rest.remove_prefix(std::min(word.size() + 1, rest.size()));
    }
    return std::nullopt;
}

} // namespace leavenwright
