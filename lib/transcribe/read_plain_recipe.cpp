// Plain text and Markdown: which lines are ingredients, which are directions.
#include "source/unicode.hpp"
#include "transcribe/ingredient_line.hpp"
#include "transcribe/kitchen_words.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/recipe_text.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace leavenwright {
namespace {

enum class Part { heading, ingredients, directions };

bool is_word_of(std::string_view text, std::initializer_list<std::string_view> words) {
    return std::find(words.begin(), words.end(), text) != words.end();
}

// A heading without its marks, folded; the text of other lines comes back too.
std::string heading_text(std::string_view line) {
    std::string text = fold_name(plain_line(line));
    text.erase(0, std::min(text.find_first_not_of("#= "), text.size()));
    while (!text.empty() && (text.back() == ':' || text.back() == '#' || text.back() == '=' ||
                             text.back() == ' ' || text.back() == '.')) {
        text.pop_back();
    }
    return text;
}

std::optional<Part> part_named(std::string_view heading) {
    if (is_word_of(heading, {"ingredients", "you need", "you will need", "what you need", "zutaten",
                             "ingredienti", "ingredientes", "shopping list"})) {
        return Part::ingredients;
    }
    if (is_word_of(heading,
                   {"directions", "method", "instructions", "preparation", "steps", "procedure", "to make",
                    "how to make it", "process", "zubereitung", "what to do", "making", "the method"})) {
        return Part::directions;
    }
    return std::nullopt;
}

// "fruit (soak the night before)": the words outside.
std::string without_brackets(std::string_view heading) {
    std::string text(heading.substr(0, heading.find('(')));
    text.erase(text.find_last_not_of(' ') + 1);
    return text;
}

bool is_rule(std::string_view line) {
    return !line.empty() && line.find_first_not_of("-=*_ |:+") == std::string_view::npos;
}

class PlainReader {
public:
    PlainReader(const SourceHandle& source, const Pantry& pantry) : source_(source), pantry_(pantry) {}

    RecipeText read() {
        for (std::size_t number = 1; number <= source_->line_count(); ++number) {
            const std::string_view line = source_->line(number);
            const std::size_t begin = line.find_first_not_of(" \t");
            if (begin == std::string_view::npos) {
                blank_before_ = true;
                continue;
            }
            const std::size_t end = line.find_last_not_of(" \t\r");
            const SourcedText whole{
                .source = source_, .span = {source_->line_start(number), line.size()}, .text = line};
            next_line_ = number < source_->line_count() ? source_->line(number + 1) : std::string_view();
            const bool is_table_head = line.find('|') != std::string_view::npos && is_rule(next_line_) &&
                                       next_line_.find('|') != std::string_view::npos;
            if (!is_rule(line) && !is_table_head) {
                take(whole.part(begin, end - begin + 1));
            }
            blank_before_ = false;
        }
        return std::move(recipe_);
    }

private:
    void take(const SourcedText& line) {
        const std::string heading = heading_text(line.text);
        if (const auto part = part_named(heading)) {
            part_ = *part;
            has_heading_ = true;
            role_ = "dough";
            return;
        }
        if (take_yield(line.text, heading) || take_heading(line, heading)) {
            return;
        }
        if (part_ == Part::directions) {
            take_direction(line);
        } else if (part_ == Part::heading) {
            take_before(line);
        } else {
            take_ingredient(line);
        }
    }

    bool is_ended_by_colon(std::string_view text) const {
        const std::size_t end = text.find_last_not_of(" *_");
        return end != std::string_view::npos && text[end] == ':';
    }

    // "For the filling:", "## Dough", "**Glaze**"; lines among ingredients that name a group.
    bool take_heading(const SourcedText& line, const std::string& heading) {
        const bool is_marked = line.text.starts_with('#') || is_ended_by_colon(line.text) ||
                               (line.text.starts_with("**") && line.text.ends_with("**"));
        const std::string title = without_brackets(heading);
        const bool is_bare = blank_before_ && title.size() < 30 &&
                             (part_ == Part::ingredients ||
                              (part_ == Part::heading && is_ingredient_line(next_line_, pantry_)));
        if (!(is_marked || is_bare) || title.size() > 60 ||
            title.find_first_of("0123456789") != std::string::npos) {
            return false;
        }
        auto role = role_of_heading(title);
        if (!role && is_bare && part_ == Part::ingredients && begins_group(title)) {
            role = "dough"; // "Fruit", "Dry ingredients"
        }
        if (role == "dough" && part_ == Part::heading && !is_marked && recipe_.name.empty()) {
            return false; // "White bread" above its ingredients
        }
        const bool is_title =
            part_ == Part::heading && line.text.starts_with('#') && recipe_.name.empty() && !has_heading_;
        if (!role || is_title || part_ == Part::directions) {
            return false;
        }
        part_ = Part::ingredients;
        role_ = *role;
        return true;
    }

    // A few words over ingredients that are no ingredient themselves.
    bool begins_group(const std::string& title) const {
        const auto words = std::count(title.begin(), title.end(), ' ') + 1;
        return words <= 4 && is_ingredient_line(next_line_, pantry_) &&
               !is_ingredient_line("1 cup " + title, pantry_);
    }

    bool take_yield(std::string_view line, std::string_view heading) {
        for (const std::string_view word :
             {"makes ", "yield: ", "yields ", "yield ", "serves: ", "servings: ", "makes: ", "yields: "}) {
            if (heading.starts_with(word) && part_ != Part::directions && heading.size() < 80) {
                const std::string text = plain_line(line);
                recipe_.yield = text.substr(std::min(word.size(), text.size()));
                return true;
            }
        }
        return false;
    }

    void take_before(const SourcedText& line) {
        if (is_ingredient_line(line.text, pantry_) && !is_sentence(line.text)) {
            part_ = Part::ingredients;
            take_ingredient(line);
        } else if (recipe_.name.empty() && line.text.size() <= 120) {
            std::string name = plain_line(line.text);
            name.erase(0, std::min(name.find_first_not_of("# "), name.size()));
            recipe_.name = name;
        }
    }

    // Prose: long, and ended by a full stop or begun by what a cook does.
    bool is_sentence(std::string_view text) const {
        const std::string plain = plain_line(text);
        const auto words = static_cast<std::size_t>(std::count(plain.begin(), plain.end(), ' ')) + 1;
        const std::string first = fold_name(plain.substr(0, plain.find(' ')));
        const bool is_command = is_word_of(
            first, {"mix",      "combine", "stir",     "add",    "knead", "bake",  "preheat", "heat",
                    "dissolve", "beat",    "whisk",    "place",  "put",   "let",   "cover",   "turn",
                    "shape",    "roll",    "divide",   "in",     "when",  "scald", "sift",    "cream",
                    "pour",     "punch",   "brush",    "allow",  "set",   "make",  "melt",    "soften",
                    "sprinkle", "mash",    "cook",     "boil",   "work",  "leave", "rub",     "warm",
                    "proof",    "remove",  "transfer", "grease", "form",  "cut",   "then"});
        return (is_command && words >= 3) || words > 22 || (words > 9 && plain.ends_with('.'));
    }

    void take_ingredient(const SourcedText& line) {
        if (!has_heading_ && is_sentence(line.text)) {
            part_ = Part::directions;
            take_direction(line);
            return;
        }
        if (is_sentence(line.text) && !is_ingredient_line(line.text, pantry_) && line.text.size() > 60) {
            take_direction(line); // directions without a heading of their own
            return;
        }
        if (recipe_.lines.size() < most_recipe_lines) {
            recipe_.lines.push_back({.place = line, .role = role_});
        }
    }

    void take_direction(const SourcedText& line) {
        const std::string text = plain_line(line.text.substr(0, 4000));
        if (!blank_before_ && !recipe_.directions.empty() && recipe_.directions.back().size() < 4000 &&
            !line.text.starts_with('-') && !line.text.starts_with('*')) {
            recipe_.directions.back() += " " + text;
        } else if (recipe_.directions.size() < most_recipe_lines) {
            recipe_.directions.push_back(text);
        }
    }

    SourceHandle source_;
    const Pantry& pantry_;
    RecipeText recipe_;
    Part part_ = Part::heading;
    std::string role_ = "dough";
    std::string_view next_line_;
    bool has_heading_ = false;
    bool blank_before_ = true;
};

} // namespace

std::optional<std::string> role_of_heading(std::string_view heading) {
    std::string text(heading);
    for (const std::string_view lead :
         {"for the ", "for ", "the ", "ingredients for the ", "ingredients for "}) {
        if (text.starts_with(lead)) {
            text.erase(0, lead.size());
        }
    }
    if (is_word_of(text, {"poolish", "biga", "sponge", "preferment", "soaker", "scald", "tangzhong", "levain",
                          "old dough"})) {
        return text == "tangzhong" ? "scald" : text;
    }
    std::string_view rest = text;
    while (!rest.empty()) {
        const std::string_view word = rest.substr(0, rest.find(' '));
        const bool is_dough =
            is_word_of(word, {"dough", "bread", "loaf", "loaves", "rolls", "buns", "final", "main",
                              "ingredients", "base", "crust", "batter", "bagels", "pizza"});
        if (is_dough) {
            return "dough";
        }
        if (const std::string_view purpose = purpose_named(word);
            !purpose.empty() && word != "tin" && word != "pan") {
            return std::string(purpose);
        }
        rest.remove_prefix(std::min(word.size() + 1, rest.size()));
    }
    return std::nullopt;
}

RecipeText read_plain_recipe(const SourceHandle& source, const Pantry& pantry) {
    return PlainReader(source, pantry).read();
}

} // namespace leavenwright
