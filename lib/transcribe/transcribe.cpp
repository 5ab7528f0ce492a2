#include "transcribe/transcribe.hpp"

#include "formula/overall.hpp"
#include "quantity/show.hpp"
#include "source/unicode.hpp"
#include "transcribe/group_use.hpp"
#include "transcribe/later_list.hpp"
#include "transcribe/measure_habit.hpp"
#include "transcribe/prose_names.hpp"
#include "transcribe/recipe_text.hpp"
#include "transcribe/recipe_words.hpp"
#include "transcribe/stage_row.hpp"
#include "transcribe/used_apart.hpp"
#include "transcribe/write_transcription.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <initializer_list>
#include <set>
#include <span>

namespace leavenwright {
namespace {

// "key:" at the beginning of a line, as YAML has it: lower case, not set in.
bool begins_with_key(std::string_view line, std::string_view key) {
    return line.starts_with(key) &&
           line.substr(key.size()).find_first_not_of(' ') != std::string_view::npos &&
           line[line.find_first_not_of(' ', key.size())] == ':';
}

// Begins with a tag, and is no Markdown with tags in it.
bool is_page(std::string_view text) {
    constexpr std::string_view blanks = " \t\r\n\xEF\xBB\xBF";
    const auto skip_blanks = [&] {
        text.remove_prefix(std::min(text.find_first_not_of(blanks), text.size()));
    };
    skip_blanks();
    while (text.starts_with("<!--")) {
        const std::size_t end = text.find("-->");
        text.remove_prefix(end == std::string_view::npos ? text.size() : end + 3);
        skip_blanks();
    }
    const bool has_heading =
        text.find("\n# ") != std::string_view::npos || text.find("\n## ") != std::string_view::npos;
    return text.starts_with('<') && (text.starts_with("<!") || !has_heading);
}

bool is_json(std::string_view text) {
    const std::size_t begin = text.find_first_not_of(" \t\r\n\xEF\xBB\xBF");
    return begin != std::string_view::npos && (text[begin] == '{' || text[begin] == '[') &&
           (text.find("\"@type\"") != std::string_view::npos ||
            text.find("\"ingredients\"") != std::string_view::npos);
}

class Transcriber {
public:
    Transcriber(const SourceHandle& source, const Pantry& pantry, Diagnostics& diagnostics)
        : source_(source), pantry_(pantry), diagnostics_(diagnostics) {}

    std::optional<Transcription> run() {
        if (report_hidden()) {
            return std::nullopt;
        }
        RecipeText recipe = read();
        const bool is_prose = (recipe.sentences_end || !names_flour(recipe)) && take_prose(recipe);
        result_.name = recipe.name.empty() ? "Untitled recipe" : printable(recipe.name, 120);
        const MeasureHabit habit = habit_of(recipe);
        settle_total(recipe);
        std::vector<Group> groups;
        for (const RecipeLine& line : recipe.lines) {
            if (groups.empty() || line.group != groups.back().number) {
                end_group(groups);
                groups.push_back({.number = line.group,
                                  .title = line.title,
                                  .is_column = line.is_column,
                                  .begin = result_.lines.size()});
            }
            if (auto row = read_stage_row(line, recipe.lines)) {
                result_.lines.push_back(*std::move(row));
                continue;
            }
            for (IngredientLine& read :
                 read_ingredient_line(line.place, pantry_, line.role, diagnostics_, habit, line.words)) {
                read.is_sure = read.is_sure && !is_prose;
                result_.lines.push_back(std::move(read));
            }
        }
        end_group(groups);
        set_apart_repeated_flour(result_.lines, diagnostics_);
        if (is_prose) {
            set_apart_repeated_list(result_.lines, diagnostics_);
        } else {
            set_apart_by_directions(result_.lines, recipe.directions, diagnostics_);
            for (const Group& group : groups) {
                if (group.number > 0) {
                    set_apart_by_title(lines_of(group), group.title, recipe.directions,
                                       flour_in_dough(result_.lines), diagnostics_);
                    set_apart_by_majority(lines_of(group), diagnostics_);
                    doubt_by_title(lines_of(group), group.title, flour_in_dough(result_.lines), diagnostics_);
                }
            }
        }
        if (recipe.behind_list) {
            const std::size_t length = length_before_another(*recipe.behind_list, pantry_);
            recipe.is_list_left = recipe.is_list_left || length < recipe.behind_list->text.size();
            recipe.behind_list = recipe.behind_list->part(0, length);
            add_from_sentences(recipe, habit);
        }
        if (result_.lines.empty()) {
            diagnostics_.error(
                Code::recipe_without_ingredients, beginning(), "no list of ingredients was found",
                "write each ingredient on a line of its own, with its amount: 500 g bread flour");
            return std::nullopt;
        }
        report_batches(recipe);
        part_percentages();
        compare_stage_rows();
        count();
        report_missing();
        measure_hydration();
        const auto steps = read_directions(recipe.directions);
        if (steps.empty()) {
            report_directions(recipe.directions);
        }
        result_.formula = write_transcription(result_, recipe, steps);
        return std::move(result_);
    }

private:
    SourcedText beginning() const { return {.source = source_, .span = {0, 0}, .text = {}}; }

    bool report_hidden() {
        const auto fault = find_text_fault(source_->text());
        if (!fault) {
            return false;
        }
        const SourcedText place{.source = source_, .span = {fault->offset, 1}, .text = {}};
        if (fault->fault == TextFault::not_utf8) {
            diagnostics_.error(Code::text_not_utf8, place, "the text is not UTF-8", "save it as UTF-8");
        } else {
            diagnostics_.error(Code::control_character, place, "a control character stands here",
                               "take it out");
        }
        return true;
    }

    // Lines below a heading that says no role, or in a column.
    struct Group {
        std::size_t number = 0; // 0 for lines that are in none
        std::string title;      // folded
        bool is_column = false;
        std::size_t begin = 0;
        std::size_t end = 0;
    };

    std::span<IngredientLine> lines_of(const Group& group) {
        return std::span(result_.lines).subspan(group.begin, group.end - group.begin);
    }

    void end_group(std::vector<Group>& groups) {
        if (groups.empty()) {
            return;
        }
        Group& last = groups.back();
        last.end = result_.lines.size();
        if (last.number > 0 && !last.is_column) {
            set_apart_by_group(lines_of(last), diagnostics_);
        }
    }

    // A whole formula beside its parts: they are counted where they make it up, it is where they do not.
    void settle_total(RecipeText& recipe) {
        const auto has = [&](std::string_view role) {
            return std::any_of(recipe.lines.begin(), recipe.lines.end(),
                               [&](const RecipeLine& line) { return line.role == role; });
        };
        if (!has(role_of_total)) {
            return;
        }
        const bool is_in_parts = has("dough");
        bool has_other = is_in_parts;
        for (RecipeLine& line : recipe.lines) {
            const bool is_stage = is_in_dough(line.role) && line.role != "dough";
            has_other = has_other || is_stage;
            if (line.role == role_of_total && !is_in_parts) {
                line.role = "dough";
            } else if (is_stage && !is_in_parts) {
                line.role = role_of_total;
            }
        }
        if (has_other) {
            diagnostics_.warning(Code::recipe_batches, recipe.lines.front().place,
                                 is_in_parts
                                     ? "the whole formula stands beside its parts: the parts are counted"
                                     : "parts stand beside the whole formula: the whole is counted",
                                 "look whether the weights of both agree");
        }
    }

    // By the recipe's own words: those of a page around it are somebody else's.
    static MeasureHabit habit_of(const RecipeText& recipe) {
        std::string words;
        for (const RecipeLine& line : recipe.lines) {
            words.append(line.said()).append("\n");
        }
        const std::size_t lines_end = words.size();
        for (const std::string& paragraph : recipe.directions) {
            words.append(paragraph).append("\n");
        }
        return measure_habit(std::string_view(words).substr(0, lines_end), words);
    }

    // Ingredients that only the sentences behind a list name.
    void add_from_sentences(const RecipeText& recipe, MeasureHabit habit) {
        const std::size_t listed = result_.lines.size();
        const auto has = [&](auto&& is_one) {
            return std::any_of(result_.lines.begin(), result_.lines.end(), [&](const auto& line) {
                return line.is_known() && is_one(*line.ingredient) && line.weight &&
                       (is_in_dough(line.role) || line.role == role_of_total);
            });
        };
        const auto is_flour = [](const Ingredient& one) { return one.is_flour(); };
        const bool has_flour = has(is_flour);
        const bool has_liquid = has(is_fluid);
        const bool has_salt =
            std::any_of(result_.lines.begin(), result_.lines.end(),
                        [](const IngredientLine& line) { return line.key.ends_with("salt"); });
        for (const RecipeLine& item : ingredients_in_prose(*recipe.behind_list, pantry_)) {
            Diagnostics found;
            for (IngredientLine& line :
                 read_ingredient_line(item.place, pantry_, item.role, found, habit, item.words)) {
                const bool is_apart = !is_in_dough(line.role) && !item.has_amount;
                const bool is_measured_apart = !is_in_dough(line.role) && item.has_amount && !item.is_part &&
                                               !is_weight_listed(line, listed);
                const bool is_missing = // "enough flour for a thin batter", where the list has none
                    is_in_dough(line.role) && line.ingredient != nullptr &&
                    ((!has_flour && is_flour(*line.ingredient)) ||
                     (!has_salt && item.has_amount && !item.is_part &&
                      line.key == "salt") || // "add 10 g salt"
                     (!has_liquid && !item.is_part && is_fluid(*line.ingredient)));
                const bool is_unlisted = // "soften the yeast in 1/4 cup of water", where the list has none
                    is_in_dough(line.role) && item.has_amount && !item.is_part && line.is_known() &&
                    line.weight && is_of_solution(item.place) && !is_kind_listed(line, listed);
                const bool is_wanted =
                    line.ingredient != nullptr &&
                    (is_apart || is_measured_apart || is_missing || is_unlisted || !recipe.is_list_whole);
                // butter for the pan, sugar for the glaze are more than those of a list in sentences
                const bool is_more =
                    !is_in_dough(line.role) && !item.is_part && (is_measured_apart || !recipe.is_list_whole);
                if (line.weight && is_missing) { // "300 g water", behind "enough water to mix"
                    drop_open(line.key, listed);
                }
                if (!is_wanted || is_rest_of_listed(item.place, line, listed) ||
                    is_listed(line, item, {.lines = listed, .is_apart = is_more})) {
                    continue;
                }
                if (!is_apart &&
                    !(is_measured_apart && recipe.is_list_whole)) { // a pan's flour changes no dough
                    diagnostics_.warning(Code::ingredients_in_prose, line.place,
                                         in_quotes(line.key) + " stands in a sentence behind the list",
                                         "look whether it belongs to the dough");
                    line.is_sure = false;
                }
                result_.lines.push_back(std::move(line));
            }
        }
    }

    // "The last 20 g of water"
    bool is_rest_of_listed(const SourcedText& place, const IngredientLine& line, std::size_t listed) const {
        const auto lines = std::span(result_.lines).first(listed);
        const bool is_in_list = std::any_of(lines.begin(), lines.end(), [&](const IngredientLine& other) {
            return other.key == line.key && other.weight && line.weight &&
                   other.weight->likely > line.weight->likely;
        });
        if (!is_in_list) {
            return false;
        }
        constexpr std::size_t near = 20;
        const std::size_t begin = place.span.offset - std::min(place.span.offset, near);
        const std::string before =
            heading_text(place.source->text().substr(begin, place.span.offset - begin));
        return before.ends_with(" last") || before.ends_with(" remaining") || before.ends_with(" reserved");
    }

    // Lines without a weight among those that sentences gave.
    void drop_open(std::string_view key, std::size_t listed) {
        const auto begin = result_.lines.begin() + static_cast<std::ptrdiff_t>(listed);
        result_.lines.erase(std::remove_if(begin, result_.lines.end(),
                                           [&](const IngredientLine& line) {
                                               return line.key == key && !line.weight &&
                                                      is_in_dough(line.role);
                                           }),
                            result_.lines.end());
    }

    // "Soften the yeast in 2 tablespoons of water": words of its sentence.
    static bool is_of_solution(const SourcedText& place) {
        constexpr std::size_t far = 300; // bytes of a sentence on either side
        const std::string_view all = place.source->text();
        const std::size_t near = place.span.offset - std::min(place.span.offset, far);
        const std::size_t blank = all.rfind("\n\n", place.span.offset);
        const std::size_t from = blank == std::string_view::npos ? near : std::max(near, blank);
        const std::size_t stop = all.find_last_of(".!?", place.span.offset);
        const std::size_t begin = stop == std::string_view::npos || stop < from ? from : stop + 1;
        const std::size_t behind = place.span.offset + place.span.length;
        const std::size_t end = std::min({all.find_first_of(".!?", behind), behind + far, all.size()});
        const auto tokens = line_tokens(plain_line(all.substr(begin, end - begin)));
        const auto has = [&](std::initializer_list<std::string_view> words) {
            return std::any_of(tokens.begin(), tokens.end(),
                               [&](const LineToken& token) { return token.is_any(words); });
        };
        return has({"yeast"}) && has({"dissolve", "dissolved", "soften", "softened"}) &&
               !has({"if", "or", "may", "can", "instead", "extra", "another", "boil", "dip", "brush",
                     "drain"});
    }

    // Whether the list has it, or another thing of its kind, which may be what is meant.
    bool is_kind_listed(const IngredientLine& line, std::size_t listed) const {
        const auto lines = std::span(result_.lines).first(listed);
        return std::any_of(lines.begin(), lines.end(), [&](const IngredientLine& other) {
            const bool may_be = other.ingredient == nullptr && other.key.empty(); // something unknown
            return other.key == line.key || may_be || is_same_kind(other.ingredient, line.ingredient) ||
                   (other.ingredient != nullptr &&
                    other.ingredient->ingredient_class == line.ingredient->ingredient_class);
        });
    }

    // Whether the list has just that much of it: "brush with 2 tablespoons of butter" is that butter.
    bool is_weight_listed(const IngredientLine& line, std::size_t listed) const {
        constexpr double tolerance = 0.05;
        const auto lines = std::span(result_.lines).first(listed);
        return std::any_of(lines.begin(), lines.end(), [&](const IngredientLine& other) {
            return other.ingredient == line.ingredient && other.weight && line.weight &&
                   std::abs((other.weight->likely / line.weight->likely).value() - 1.0) < tolerance;
        });
    }

    struct Listed {
        std::size_t lines = 0; // of the list; what follows was found in sentences
        bool is_apart = false; // only what is kept apart is compared
    };

    // "sift six quarts of flour", where the list has five: no part of those.
    static bool is_more_than(const IngredientLine& line, const IngredientLine& other) {
        constexpr double tolerance = 1.05;
        return line.weight && other.weight && line.weight->likely > tolerance * other.weight->likely;
    }

    static bool is_other_weight(const IngredientLine& line, const IngredientLine& other) {
        constexpr double tolerance = 0.01;
        return line.weight && other.weight &&
               std::abs((line.weight->likely / other.weight->likely).value() - 1.0) > tolerance;
    }

    // Whether `name` stands in `text` as whole words.
    static bool holds_words(std::string_view text, std::string_view name) {
        const std::string words = " " + fold_name(text) + " ";
        return !name.empty() && words.find(" " + fold_name(name) + " ") != std::string::npos;
    }

    // Whether the list, or a sentence before, has it; what has no amount may go by another word for it.
    bool is_listed(const IngredientLine& line, const RecipeLine& item, const Listed& listed) const {
        // "flour" on the board may be any of the list's
        const bool is_apart = !is_in_dough(line.role) && !item.is_part;
        const bool is_loose =
            is_apart ? line.name == "flour" || line.name == "sugar" : item.is_part || !item.has_amount;
        const auto first = std::span(result_.lines).first(listed.lines);
        const bool is_open = line.weight && line.is_known() && line.ingredient->is_flour() &&
                             std::any_of(first.begin(), first.end(), [&](const IngredientLine& other) {
                                 return other.key == line.key && !other.weight;
                             });
        for (std::size_t at = 0; at < result_.lines.size(); ++at) {
            const IngredientLine& other = result_.lines[at];
            if (listed.is_apart && is_in_dough(other.role)) {
                continue;
            }
            // "flour" in the list, "three cups of flour" and then "about two cups more" in the sentences
            const bool fills_in = is_open && (at < listed.lines || is_other_weight(line, other));
            if (fills_in && other.key == line.key) {
                continue;
            }
            const bool is_within = // "scatter with basil", of "a few basil leaves"
                is_apart && !item.has_amount && at < listed.lines && holds_words(other.text, line.text);
            if (is_within) {
                return true;
            }
            const bool is_same = other.key == line.key && (listed.is_apart || !is_more_than(line, other));
            if (is_same ||
                (at < listed.lines && is_loose && is_same_kind(other.ingredient, line.ingredient))) {
                return true;
            }
        }
        return false;
    }

    // Down to another recipe behind them.
    std::size_t length_of_sentences(const RecipeText& recipe) const {
        const std::string_view all = source_->text();
        if (!recipe.sentences_end) {
            return all.size();
        }
        const std::size_t begin = *recipe.sentences_end;
        return begin +
               length_before_another(
                   {.source = source_, .span = {begin, all.size() - begin}, .text = all.substr(begin)},
                   pantry_);
    }

    // Lines with an amount of something that the pantry knows.
    std::ptrdiff_t amounts_of(const RecipeText& recipe) const {
        return std::count_if(recipe.lines.begin(), recipe.lines.end(), [&](const RecipeLine& line) {
            return line.has_amount && is_ingredient_line(line.said(), pantry_);
        });
    }

    // Whether an item for the dough is a flour.
    bool names_flour(const RecipeText& recipe) const {
        return std::any_of(recipe.lines.begin(), recipe.lines.end(), [&](const RecipeLine& line) {
            return (is_in_dough(line.role) || line.role == role_of_total) &&
                   leavenwright::names_flour(line.said(), pantry_);
        });
    }

    // Whether a text without a list, or with one that is of something else ("For the top, rub together"), has
    // amounts in its sentences.
    bool take_prose(RecipeText& recipe) {
        if (is_page(source_->text()) || is_json(source_->text())) {
            return false;
        }
        const std::size_t length = length_of_sentences(recipe);
        RecipeText prose = read_prose_recipe(source_, length, pantry_);
        prose.is_list_left = length < source_->text().size();
        const bool has_more = amounts_of(prose) > amounts_of(recipe); // than a list without a flour
        if (prose.lines.empty() ||
            (!recipe.lines.empty() && !(names_flour(prose) && (recipe.sentences_end || has_more)))) {
            return false;
        }
        diagnostics_.warning(Code::ingredients_in_prose, prose.lines.front().place,
                             "there is no list of ingredients: " + counted(prose.lines.size(), "amount") +
                                 " were gathered from the sentences",
                             "look whether one is missing, or belongs elsewhere");
        constexpr std::size_t longest_title = 60;
        prose.name = recipe.name.size() <= longest_title ? recipe.name : std::string();
        recipe = std::move(prose);
        return true;
    }

    RecipeText read() {
        const std::string_view text = source_->text();
        if (is_json(text)) {
            return read_json_recipe(source_, text, diagnostics_).value_or(RecipeText());
        }
        if (!is_page(text)) {
            return read_plain_recipe(source_, pantry_);
        }
        const PageText page = read_page(text);
        if (page.is_tangled) {
            diagnostics_.warning(Code::markup_unreadable, beginning(), "the page nests deeper than pages do",
                                 "copy the list of ingredients into a text file, and transcribe that");
        }
        // What a reader sees. Places are those of that text.
        RecipeText recipe = read_plain_recipe(
            std::make_shared<SourceText>(source_->name() + " (its text)", page.text), pantry_);
        for (const std::string& json : page.json) {
            if (auto marked_up = read_json_recipe(source_, json, diagnostics_)) {
                take_headings(*marked_up, recipe.lines);
                return *std::move(marked_up);
            }
        }
        if (recipe.is_list_whole) { // the sentences of a page are about many things
            recipe.behind_list.reset();
        }
        return recipe;
    }

    // The markup of a page lists its items without the headings that the page shows over them: where it shows
    // the same items, they have its roles.
    static void take_headings(RecipeText& recipe, std::span<const RecipeLine> shown) {
        const auto letters_of = [](const RecipeLine& line) {
            std::string letters = fold_name(plain_line(line.said()));
            std::erase_if(letters, [](char byte) { return byte == ' ' || byte == ','; });
            return letters;
        };
        std::vector<const RecipeLine*> same(recipe.lines.size(), nullptr);
        std::size_t next = 0;
        std::size_t found = 0;
        for (std::size_t at = 0; at < recipe.lines.size(); ++at) {
            const std::string letters = letters_of(recipe.lines[at]);
            const auto rest = shown.subspan(next);
            const auto match = std::find_if(rest.begin(), rest.end(), [&](const RecipeLine& line) {
                return letters_of(line) == letters;
            });
            if (match != rest.end()) {
                same[at] = &*match;
                next += static_cast<std::size_t>(match - rest.begin()) + 1;
                ++found;
            }
        }
        const bool has_own = std::any_of(recipe.lines.begin(), recipe.lines.end(),
                                         [](const RecipeLine& line) { return line.role != "dough"; });
        if (has_own || 5 * found < 4 * recipe.lines.size()) { // another list, perhaps
            return;
        }
        for (std::size_t at = 0; at < recipe.lines.size(); ++at) {
            if (same[at] != nullptr) {
                recipe.lines[at].role = same[at]->role;
                recipe.lines[at].group = same[at]->group;
                recipe.lines[at].title = same[at]->title;
            }
        }
    }

    void report_batches(const RecipeText& recipe) {
        if (recipe.is_list_left) {
            diagnostics_.warning(
                Code::recipe_batches, recipe.lines.empty() ? beginning() : recipe.lines.front().place,
                "another list with amounts stands behind the first dough: it is not read",
                "keep one recipe to a file; what belongs to this one goes into the first list");
        }
        if (recipe.batches.size() < 2) {
            return;
        }
        std::string others;
        for (std::size_t at = 1; at < std::min<std::size_t>(recipe.batches.size(), 6); ++at) {
            others += (at > 1 ? ", " : "") + in_quotes(printable(recipe.batches[at], 40));
        }
        diagnostics_.warning(
            Code::recipe_batches, recipe.lines.empty() ? beginning() : recipe.lines.front().place,
            "the list has amounts for several batches: " + in_quotes(printable(recipe.batches.front(), 40)) +
                " is read, " + others + " not",
            "to read another, take out the amounts before it");
    }

    void count() {
        for (const IngredientLine& line : result_.lines) {
            const bool is_apart = line.role != "dough" && line.ingredient != nullptr;
            std::size_t& counter = line.is_sure                  ? result_.sure
                                   : line.is_known() || is_apart ? result_.doubtful
                                                                 : result_.unread;
            ++counter;
        }
    }

    void report_missing() {
        const auto has = [&](auto is_wanted) {
            return std::any_of(result_.lines.begin(), result_.lines.end(), [&](const IngredientLine& line) {
                return line.ingredient != nullptr && is_wanted(*line.ingredient);
            });
        };
        if (!has([](const Ingredient& ingredient) { return ingredient.is_flour(); })) {
            diagnostics_.warning(Code::flour_missing, beginning(), "no flour is listed",
                                 "add it to the formula: bread flour: 500 g");
        }
        is_liquid_listed_ = has([](const Ingredient& ingredient) { return ingredient.can_give_water(); });
        if (!is_liquid_listed_) {
            diagnostics_.warning(Code::water_missing, beginning(), "no water or other liquid is listed",
                                 "add it to the formula: water: 325 g");
        }
    }

    // Directions with a number in them say a time or an oven: in another language, perhaps.
    void report_directions(const std::vector<std::string>& directions) {
        const bool has_number = std::any_of(directions.begin(), directions.end(),
                                            [](const std::string& text) { return has_digit(text); });
        if (has_number) {
            diagnostics_.warning(Code::directions_unread, beginning(),
                                 "no step could be read from the directions",
                                 "write them into the formula: process: [ bulk: { for: 2 h, at: 24 C } ]");
        }
    }

    // A percentage weighs nothing by itself: it cannot be added to a weight of the same ingredient.
    void part_percentages() {
        std::set<std::pair<std::string_view, std::string_view>> weighed;
        for (const IngredientLine& line : result_.lines) {
            if (line.is_known() && line.unit != "%") {
                weighed.emplace(line.key, line.role);
            }
        }
        for (IngredientLine& line : result_.lines) {
            if (line.is_known() && line.unit == "%" && is_in_dough(line.role) &&
                weighed.contains({line.key, line.role})) {
                diagnostics_.warning(Code::amount_doubtful, line.place,
                                     in_quotes(line.text) +
                                         " is a percentage, and another line weighs the same ingredient",
                                     "write in the formula how much it is in all");
                line.amount.clear();
                line.is_sure = false;
            }
        }
    }

    // "150 g of the sponge", which weighs 220 g by its own rows: the rest stays in the jar, perhaps.
    void compare_stage_rows() {
        constexpr double tolerance = 0.05;
        for (IngredientLine& row : result_.lines) {
            Mass whole{};
            bool is_known = row.role == role_of_stage_row && row.weight.has_value();
            for (const IngredientLine& line : result_.lines) {
                if (line.role == row.name && is_known) {
                    is_known = line.weight.has_value();
                    whole += is_known ? line.weight->likely : Mass{};
                }
            }
            if (is_known && std::abs((row.weight->likely / whole).value() - 1.0) > tolerance) {
                row.is_sure = false;
                diagnostics_.warning(Code::amounts_disagree, row.place,
                                     "the " + row.name + " weighs " + show_grams(whole) +
                                         " by its own rows, and " + show_grams(row.weight->likely) +
                                         " here: all of it is counted",
                                     "write the rows of the stage for what goes into the dough");
            }
        }
    }

    void measure_hydration() {
        std::vector<Line> lines;
        for (const IngredientLine& line : result_.lines) {
            if (line.is_known() && line.weight && is_in_dough(line.role)) {
                const WeightRange& weight = *line.weight;
                const double half_width = (weight.most - weight.least).value() / 2.0 / weight.likely.value();
                lines.push_back({.name = line.key,
                                 .ingredient = line.ingredient,
                                 .mass = weight.likely,
                                 .uncertainty = Fraction(half_width),
                                 .piece = {}});
            }
        }
        const Overall overall = add_up(lines, {});
        if (!(overall.total_flour.value() > 0.0)) {
            return;
        }
        warn_of_unlikely(overall);
        const double likely = overall.hydration_true().value();
        const double half_width = overall.hydration_uncertainty().value();
        result_.hydration = ReadHydration{likely, std::max(likely - half_width, 0.0), likely + half_width};
    }

    // Dry yeast as the three times of fresh that does its work (common practice, no source).
    Mass fresh_yeast() const {
        constexpr double fresh_for_dry = 3.0;
        Mass sum{};
        for (const IngredientLine& line : result_.lines) {
            if (line.is_known() && line.ingredient->is_yeast() && line.weight && is_in_dough(line.role)) {
                const bool is_fresh = line.ingredient == pantry_.find("fresh yeast").ingredient;
                sum += (is_fresh ? 1.0 : fresh_for_dry) * line.weight->likely;
            }
        }
        return sum;
    }

    // A dough that hardly anybody makes was hardly read right. Wider than what `check` calls usual (common
    // practice, no source): batters and crackers are read too.
    void warn_of_unlikely(const Overall& overall) {
        constexpr double driest = 0.30;
        constexpr double wettest = 1.80;
        constexpr double saltiest = 0.05;
        constexpr double most_yeast = 0.20;
        const std::string hint =
            "look whether an amount is missing, stands twice, or belongs to another part";
        const double water = overall.hydration_true().value();
        const double salt = overall.percentage(overall.salt).value();
        if (is_liquid_listed_ && (water < driest || water > wettest)) {
            diagnostics_.warning(Code::hydration_unusual, beginning(),
                                 "as it is read, the dough has " + show_percent(water) + " of water", hint);
        }
        if (const double yeast = fresh_yeast() / overall.total_flour; yeast > most_yeast) {
            diagnostics_.warning(Code::yeast_unusual, beginning(),
                                 "as it is read, the dough has as much yeast as " + show_percent(yeast) +
                                     " of fresh yeast",
                                 hint);
        }
        if (salt > saltiest) {
            diagnostics_.warning(Code::salt_unusual, beginning(),
                                 "as it is read, the dough has " + show_percent(salt) + " of salt", hint);
        }
    }

    SourceHandle source_;
    const Pantry& pantry_;
    Diagnostics& diagnostics_;
    Transcription result_;
    bool is_liquid_listed_ = false;
};

} // namespace

bool is_recipe_text(const SourceText& source, const Pantry& pantry) {
    const std::string_view text = source.text();
    const bool is_named_formula = source.name().ends_with(".yaml") || source.name().ends_with(".yml");
    if (is_named_formula || find_text_fault(text)) {
        return false;
    }
    if (is_page(text) || is_json(text)) {
        return true;
    }
    std::size_t keys = 0;
    bool has_ingredient = false;
    constexpr std::size_t most_lines = 400;
    for (std::size_t number = 1; number <= std::min(source.line_count(), most_lines); ++number) {
        const std::string_view line = source.line(number);
        if (begins_with_key(line, "formula")) {
            return false;
        }
        for (const std::string_view key :
             {"name", "makes", "dough", "overall", "preferments", "soakers", "process", "pantry"}) {
            keys += begins_with_key(line, key) ? 1U : 0U;
        }
        has_ingredient = has_ingredient || is_ingredient_line(line, pantry) ||
                         names_amounts({.source = nullptr, .span = {}, .text = line}, pantry);
    }
    return has_ingredient && keys < 2;
}

std::optional<Transcription> transcribe(const SourceHandle& source, const Pantry& pantry,
                                        Diagnostics& diagnostics) {
    return Transcriber(source, pantry, diagnostics).run();
}

std::string summary_of(const Transcription& transcription) {
    return counted(transcription.lines.size(), "line") + ": " + std::to_string(transcription.sure) +
           " read surely, " + std::to_string(transcription.doubtful) + " doubtfully, " +
           std::to_string(transcription.unread) + " not at all";
}

} // namespace leavenwright
