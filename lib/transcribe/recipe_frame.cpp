#include "transcribe/recipe_frame.hpp"

#include "source/unicode.hpp"
#include "transcribe/find_name.hpp"
#include "transcribe/kitchen_words.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/recipe_words.hpp"
#include "transcribe/word_set.hpp"

#include <algorithm>
#include <array>
#include <initializer_list>
#include <optional>
#include <utility>
#include <vector>

namespace leavenwright {
namespace {

using Kind = FrameLine::Kind;
constexpr std::size_t longest_label = 40; // bytes

bool is_digit(char byte) {
    return byte >= '0' && byte <= '9';
}

constexpr auto labels = std::to_array<std::pair<Kind, std::string_view>>({
    {Kind::title, "title|recipe title|recipe name|recipe|name of recipe|product"},
    {Kind::yield, "yield|yields|recipe yield|makes|serves|servings|number of servings|serving size|portions|"
                  "quantity|batch size"},
    {Kind::notes, "note|notes|tip|tips|storage|to store|variation|variations|serving suggestion|"
                  "serving suggestions"},
    {Kind::mail, "from|to|cc|subject|newsgroups|message id|path|organization|reply to|in reply to"},
    {Kind::other, // of mails and posts
     "date|references|lines|sender|sent|thread|posted|posted by|submitted by|shared by|contributed "
     "by|entered by|"
     "author|by|recipe by|source|origin|adapted from|published|updated|last "
     "updated|url|link|permalink|slug|id|"
     "layout|draft"},
    {Kind::other, // what the recipe is filed under
     "category|categories|keyword|keywords|tag|tags|cuisine|course|type of dish|difficulty|level|"
     "skill "
     "level|rating|diet|cost|serving|hydration|description|summary|image|photo|picture|language|equipment|"
     "tools"},
    {Kind::other, // its times and its oven
     "prep|prep time|preparation time|working time|cook|cook time|cooking time|bake time|baking time|rise "
     "time|"
     "rising time|rest time|resting time|proof time|proving time|chill time|total|total time|time|times|"
     "active time|hands on time|ready in|oven|oven temp|oven temperature|baking temperature|temperature|"
     "water temperature|temperature of water|dough temperature|desired dough temperature|final dough "
     "temperature|"
     "temperature of dough|room temperature"},
});

// Whole lines of pages and of programs that keep recipes.
constexpr std::string_view buttons =
    "jump to recipe|print recipe|print|pin|pin recipe|share|save|save recipe|rate|rate this recipe|"
    "leave a review|leave a comment|skip to content|us customary metric|cook mode";
constexpr auto remarks_of_files =
    std::to_array<std::string_view>({"exported from", "exported by", "posted by", "typed by", "formatted by",
                                     "converted by", "printed from", "from the kitchen of"});

// The second row are ingredients as well, where no table of nutrition is.
constexpr auto nutrients = std::to_array<std::string_view>(
    {"calories|calories from fat|total calories|kcal|energy|total fat|saturated fat|trans fat|saturates|"
     "of which saturates|cholesterol|sodium|carbohydrate|carbohydrates|total carbohydrate|"
     "total carbohydrates|dietary fiber|dietary fibre|total sugars|of which sugars|vitamin a|vitamin c",
     "fat|sugar|sugars|salt|fiber|fibre|protein|calcium|iron|potassium|carbs"});
constexpr auto nutrition_heads = std::to_array<std::string_view>(
    {"nutrition", "nutritional", "per serving", "each serving", "per portion", "per slice", "amount per "});

// Signs and pictures that begin a line: the two- and three-byte ones hold fractions, which begin no label.
std::string_view without_pictures(std::string_view line) {
    while (!line.empty() && static_cast<unsigned char>(line.front()) >= 0xE2U) {
        line.remove_prefix(std::min(character_length(line.substr(0, 4)), line.size()));
        line.remove_prefix(std::min(line.find_first_not_of(' '), line.size()));
    }
    return line;
}

// Up to a bar or the next column.
std::string first_cell(std::string_view text) {
    const std::size_t begin = std::min(text.find_first_not_of(" \t*_:="), text.size());
    text.remove_prefix(begin);
    const std::size_t end = std::min({text.find('|'), text.find("  "), text.find('\t')});
    std::string cell = plain_line(text.substr(0, end));
    const bool is_quoted =
        cell.size() > 1 && (cell.front() == '"' || cell.front() == '\'') && cell.back() == cell.front();
    return is_quoted ? cell.substr(1, cell.size() - 2) : cell;
}

Kind kind_of_label(std::string_view label) {
    static const WordRows words = [] {
        std::vector<std::string_view> rows;
        for (const auto& [kind, of_kind] : labels) {
            rows.push_back(of_kind);
        }
        return WordRows(rows);
    }();
    const auto row = words.row_of(label);
    return row ? labels[*row].first : Kind::none;
}

FrameLine labelled(std::string_view line, std::string_view separators) {
    const std::size_t colon = line.substr(0, longest_label).find_first_of(separators);
    if (colon == std::string_view::npos || colon == 0) {
        return {};
    }
    const std::string label = fold_name(plain_line(line.substr(0, colon)));
    FrameLine frame{.kind = kind_of_label(label), .value = {}};
    const std::string_view behind = line.substr(colon + 1);
    const std::size_t first = behind.find_first_not_of(" *_");
    if (label == "preparation" && first != std::string_view::npos && is_digit(behind[first])) {
        return {.kind = Kind::other, .value = {}}; // its time
    }
    if (label == "date" && has_measure(behind)) { // the fruit
        return {};
    }
    if (frame.kind == Kind::title || frame.kind == Kind::yield) {
        frame.value = first_cell(behind);
    }
    const bool is_number =
        !frame.value.empty() && frame.value.find_first_not_of("0123456789") == std::string::npos;
    if (frame.kind == Kind::none || (label == "serving size" && !is_number)) { // of one: "1 slice"
        frame.kind = frame.kind == Kind::none ? Kind::none : Kind::other;
    } else if ((frame.kind == Kind::title || frame.kind == Kind::yield) && frame.value.empty()) {
        frame.kind = Kind::none; // "Recipe:" alone
    }
    return frame;
}

// "Difficulty  3/5", "Servings    12" in the box beside a wiki's page
FrameLine labelled_by_gap(std::string_view line) {
    const std::size_t gap = line.substr(0, longest_label).find("  ");
    if (gap == std::string_view::npos || gap == 0) {
        return {};
    }
    const Kind kind = kind_of_label(fold_name(plain_line(line.substr(0, gap))));
    const std::string value = first_cell(line.substr(gap));
    const bool is_measured = // "Level  2 cups flour", "Level  teaspoon salt"
        has_measure(line.substr(gap)) || has_measure("1 " + value);
    const bool is_box = (kind == Kind::other || (kind == Kind::yield && has_digit(value))) && !is_measured;
    return is_box && !value.empty() ? FrameLine{.kind = kind, .value = kind == Kind::yield ? value : ""}
                                    : FrameLine();
}

// "[[Cookbook]] | [[Bread]]", "[[Category:Bread]]", "![the loaf](loaf.jpg)"
bool is_navigation(std::string_view line) {
    for (const std::string_view begin : {"[[Category:", "[[File:", "[[Image:", "![", "{{"}) {
        if (line.starts_with(begin) && (line.ends_with(']') || line.ends_with(')') || line.ends_with('}'))) {
            return true;
        }
    }
    if (line.starts_with("__") && line.ends_with("__") && line.find(' ') == std::string_view::npos) {
        return true; // "__NOTOC__"
    }
    return line.starts_with('[') &&
           (line.find("] | [") != std::string_view::npos || line.find(") | [") != std::string_view::npos);
}

// "1x 2x 3x": by how much a page makes more.
bool is_scale(std::string_view line) {
    const std::size_t once = line.find("1x "); // "US customary | Metric   1x 2x 3x"
    const std::string_view row = line.substr(once == std::string_view::npos ? 0 : once);
    return std::count(row.begin(), row.end(), 'x') > 1 &&
           row.find_first_not_of("0123456789x /\xC2\xBD") == std::string_view::npos;
}

// "Total dough weight 815 g": the sum of the list.
bool is_total(std::string_view folded) {
    if (!folded.starts_with("total ")) {
        return folded == "total" || folded == "totals";
    }
    const std::string_view rest = folded.substr(std::string_view("total ").size());
    const std::string_view what = rest.substr(0, rest.find_first_of(" :"));
    static const WordSet summed("dough|weight|flour|water|liquid|yield|mass|formula|time|percent|percentage");
    const bool is_heading = (what == "dough" || what == "formula") && !has_digit(rest); // over its rows
    return is_digit(rest.front()) || (!is_heading && summed.has(what));
}

bool is_of_file(std::string_view folded) {
    const auto begins = [&](std::string_view remark) { return folded.starts_with(remark); };
    static const WordSet words(buttons);
    return words.has(folded) || std::any_of(remarks_of_files.begin(), remarks_of_files.end(), begins);
}

bool is_number_of_nutrition(std::string_view behind) {
    const std::size_t at = behind.find_first_not_of(" :(<");
    return at == std::string_view::npos || is_digit(behind[at]);
}

// The row of the nutrient whose number `folded` begins with.
std::optional<std::size_t> nutrient_row(std::string_view folded) {
    static const WordRows known(nutrients);
    const std::size_t number = folded.find_first_of("0123456789:(<");
    std::string_view words = folded.substr(0, number);
    words = words.substr(0, words.find_last_not_of(' ') + 1);
    return number != std::string_view::npos && is_number_of_nutrition(folded.substr(number))
               ? known.row_of(words)
               : std::nullopt;
}

std::string beginning_of(std::string_view line) {
    constexpr std::size_t enough = 60;
    return fold_name(plain_line(line.substr(0, enough)));
}

// Below a head of nutrition: "Total Fat 3 g", "Sugar 2 g".
bool is_nutrition(std::string_view line) {
    return nutrient_row(beginning_of(line)).has_value();
}

bool ends_notes(std::string_view line) {
    const std::size_t end = line.find_last_not_of(" *_|\t");
    return line.starts_with('#') || (end != std::string_view::npos && line[end] == ':') ||
           part_named(heading_text(line));
}

// "0  1½": shillings and pence in their columns.
bool is_money(std::string_view text) {
    for (std::size_t at = 0; at < text.size(); ++at) {
        const bool is_fraction = static_cast<unsigned char>(text[at]) == 0xC2U && at + 1 < text.size();
        if (!is_fraction && !is_digit(text[at]) && text[at] != ' ' && text[at] != '\r') {
            return false;
        }
        at += is_fraction ? 1U : 0U;
    }
    return true;
}

// The number of a page at one end of a line, far from a title in capitals, or alone.
bool is_page_head(std::string_view line) {
    constexpr std::string_view gap = "     ";
    constexpr std::size_t most_digits = 3;
    const auto is_page = [&](std::string_view words) {
        return !words.empty() && words.size() <= most_digits &&
               std::all_of(words.begin(), words.end(), is_digit);
    };
    const auto is_title = [](std::string_view words) {
        return std::none_of(words.begin(), words.end(),
                            [](char byte) { return (byte >= 'a' && byte <= 'z') || is_digit(byte); });
    };
    const std::size_t begin = std::min(line.find_first_not_of(" \t"), line.size());
    const std::string_view text = line.substr(begin, line.find_last_not_of(" \t\r") + 1 - begin);
    const std::size_t first = text.find(gap);
    if (first == std::string_view::npos) {
        return is_page(text);
    }
    const std::string_view left = text.substr(0, first);
    const std::string_view right = text.substr(text.find_last_of(' ') + 1);
    return (is_page(left) && is_title(text.substr(first))) || (is_page(right) && is_title(left));
}

} // namespace

FrameLine FrameReader::read(std::string_view line, bool is_below_blank, bool is_item) {
    const std::string_view words = without_bullet(line);
    const bool is_advice = words.starts_with("for a ") || words.starts_with("For a ") ||
                           words.starts_with("if ") || words.starts_with("If ");
    const bool is_of_notes = before_ == Kind::notes && (!is_item || is_advice) && !ends_notes(line);
    const bool goes_on =
        !is_below_blank && (is_of_notes || (before_ == Kind::nutrition && is_nutrition(line)));
    if (goes_on) {
        return {.kind = before_, .value = {}};
    }
    FrameLine frame = frame_line(line);
    before_ = frame.kind;
    is_mail_ = is_mail_ || frame.kind == Kind::mail;
    return frame;
}

bool FrameReader::is_signature_mark(std::string_view line, std::size_t lines_below) const {
    constexpr std::size_t most_lines = 8;
    return is_mail_ && lines_below <= most_lines && (line == "--" || line == "-- " || line == "--\r");
}

bool may_be_title(std::string_view line) {
    constexpr std::size_t longest_title = 60;
    return line.size() < longest_title && line.find_first_not_of(" \t\r") != std::string_view::npos &&
           !is_rule(line) && !is_sentence(line) && frame_line(line).kind == Kind::none;
}

FrameLine frame_line(std::string_view whole) {
    const std::string_view line = without_pictures(without_bullet(whole));
    if (line.empty() || is_navigation(line)) {
        return {.kind = line.empty() ? Kind::none : Kind::other, .value = {}};
    }
    FrameLine frame = labelled(line, ":");
    if (frame.kind == Kind::none && line.find('\t') != std::string_view::npos) { // of a page's box
        frame = labelled(line, "\t");
        frame.kind = frame.kind == Kind::title ? Kind::none : frame.kind; // the head of a table
    }
    if (frame.kind == Kind::none) {
        frame = labelled_by_gap(line);
    }
    if (frame.kind != Kind::none) {
        return frame;
    }
    const std::string folded = beginning_of(line);
    const bool is_figure = folded.starts_with("per ") && folded.find("calorie") != std::string::npos;
    const bool is_head =
        is_figure || std::any_of(nutrition_heads.begin(), nutrition_heads.end(),
                                 [&](std::string_view head) { return folded.starts_with(head); });
    const bool is_bare_notes =
        line.size() < longest_label && kind_of_label(heading_text(line)) == Kind::notes;
    const bool is_temperature = has_digit(folded) && (folded.starts_with("temperature of ") ||
                                                      folded.starts_with("dough temperature"));
    frame.kind = is_temperature || is_of_file(folded) || is_scale(line) || is_total(folded) ? Kind::other
                 : is_head || nutrient_row(folded) == 0U                                    ? Kind::nutrition
                 : is_bare_notes                                                            ? Kind::notes
                                                                                            : Kind::none;
    return frame;
}

bool is_in_drawn_box(std::string_view line) {
    const std::size_t begin = std::min(line.find_first_not_of(" \t"), line.size());
    const std::size_t last = line.find_last_not_of(" \t\r");
    return begin < line.size() && begin < last && line[begin] == '|' && line.find('|', begin + 1) == last;
}

std::string_view without_page_marks(std::string_view line) {
    const std::size_t last = line.find_last_not_of(" \t\r");
    if (last == std::string_view::npos) {
        return line;
    }
    if (is_in_drawn_box(line)) {
        return line.substr(0, last);
    }
    const std::size_t edit = line[last] == ']' ? line.rfind("[edit") : std::string_view::npos;
    if (edit != std::string_view::npos) {
        return line.substr(0, edit);
    }
    const std::size_t begin = line.find_first_not_of(" \t");
    const bool has_amount = is_digit(line[begin]) || static_cast<unsigned char>(line[begin]) == 0xC2U ||
                            line.substr(begin).starts_with("A ");
    const std::size_t leader = has_amount ? line.rfind(" .. ") : std::string_view::npos;
    const std::size_t first = leader == std::string_view::npos ? leader : line.find(" .. ");
    if (first < leader && is_money(line.substr(leader + 3))) {
        return line.substr(0, first);
    }
    const bool is_sum =
        line.substr(begin, last - begin).find("  ") != std::string_view::npos && is_money(line);
    return is_sum && begin > longest_label ? line.substr(0, 0) : line;
}

std::size_t length_of_page_head(const SourceText& source, const Pantry& pantry) {
    constexpr std::size_t most_blank_lines = 20;
    for (std::size_t number = 1; number <= std::min(source.line_count(), most_blank_lines); ++number) {
        const std::string_view line = source.line(number);
        if (!is_blank(line)) {
            return is_page_head(line) && name_in(line, pantry).ingredient == nullptr
                       ? source.line_start(number) + line.size()
                       : 0;
        }
    }
    return 0;
}

bool is_worded_rule(std::string_view line) {
    constexpr std::string_view marks = "-=*~_+ ";
    const std::size_t begin = line.find_first_not_of(marks);
    if (begin == std::string_view::npos) {
        return false;
    }
    const std::size_t end = line.find_last_not_of(marks) + 1;
    const auto is_drawn = [](std::string_view part) {
        return part.size() - static_cast<std::size_t>(std::count(part.begin(), part.end(), ' ')) >= 3;
    };
    return is_drawn(line.substr(0, begin)) && is_drawn(line.substr(end));
}

bool is_column_head(std::string_view line) {
    static const WordSet amounts("amount|measure|quantity|qty|unit|units|amt");
    static const WordSet others(
        "ingredient|ingredients|item|items|preparation|method|notes|and|of|weight|volume");
    if (line.size() > 120) {
        return false;
    }
    bool is_amount = false;
    bool is_ingredient = false;
    for (const LineToken& token : line_tokens(plain_line(line))) {
        if (token.is_number()) {
            return false;
        }
        if (token.is_word() && !amounts.has(token.folded) && !others.has(token.folded)) {
            return false;
        }
        is_amount = is_amount || amounts.has(token.folded);
        is_ingredient =
            is_ingredient || token.folded.starts_with("ingredient") || token.folded.starts_with("item");
    }
    return is_amount && is_ingredient;
}

std::string bold_name(std::string_view line) {
    constexpr std::size_t longest_name = 60;
    const std::size_t begin = line.find("'''");
    const std::size_t end =
        begin == std::string_view::npos ? begin : line.substr(0, begin + longest_name).find("'''", begin + 3);
    return end == std::string_view::npos ? std::string()
                                         : plain_line(line.substr(begin + 3, end - begin - 3));
}

bool names_pack(std::string_view line) {
    const auto tokens = line.size() <= 120 ? line_tokens(plain_line(line)) : std::vector<LineToken>();
    if (tokens.size() < 3 || !tokens.back().is_word() || !(tokens.end() - 3)->is_number()) {
        return false;
    }
    static const WordSet packs("bag|bags|sack|box|can|cans|jar|carton|package|packet|bottle|case|tin|pouch");
    const LineToken& unit = *(tokens.end() - 2);
    const auto measure = measure_named(unit.text, unit.folded);
    const bool is_weight = measure && (measure->kind == Measure::Kind::mass || measure->is_volume());
    return is_weight && packs.has(tokens.back().folded);
}

FrontMatter read_front_matter(const SourceText& source) {
    constexpr std::size_t most_lines = 60;
    std::size_t number = 1;
    const auto trimmed = [&] {
        const std::string_view line = source.line(number);
        const std::size_t end = line.find_last_not_of(" \t\r");
        return line.substr(0, end == std::string_view::npos ? 0 : end + 1);
    };
    while (number < source.line_count() && number < most_lines &&
           (trimmed().empty() || trimmed().starts_with("__"))) { // "__NOTOC__"
        ++number;
    }
    std::string_view first = trimmed();
    first.remove_prefix(first.starts_with("\xEF\xBB\xBF") ? 3U : 0U);
    const bool is_wiki = first.starts_with("{{") && first.find("}}") == std::string_view::npos;
    if (!is_wiki && first != "---" && first != "+++") {
        return {};
    }
    FrontMatter front;
    bool has_label = is_wiki;
    const std::size_t last = std::min(source.line_count(), number + most_lines);
    for (++number; number <= last; ++number) {
        const std::string_view line = trimmed();
        if (line == first || (is_wiki && line.ends_with("}}"))) {
            front.line_count = number;
            return has_label ? std::move(front) : FrontMatter();
        }
        const bool goes_on = line.empty() || line.front() == ' ' || line.front() == '-' ||
                             line.front() == '[' || line.front() == '#';
        const std::string_view words = line.substr(std::min(line.find_first_not_of("| "), line.size()));
        const bool is_key = words.find_first_of(":=") != std::string_view::npos;
        const std::string key = heading_text(words.substr(0, words.find_first_of(":=")));
        if ((!goes_on && !is_wiki && !is_key) || part_named(key)) {
            return {};
        }
        FrameLine frame = labelled(words, ":=");
        if (key == "name") {
            frame = {.kind = Kind::title, .value = first_cell(words.substr(words.find_first_of(":=") + 1))};
        }
        has_label = has_label || frame.kind != Kind::none;
        if (frame.kind == Kind::title && front.title.empty()) {
            front.title = frame.value;
        } else if (frame.kind == Kind::yield && front.yield.empty()) {
            front.yield = frame.value;
        }
    }
    return {};
}

} // namespace leavenwright
