// A schema.org Recipe in JSON-LD, or an object with a list of ingredients; the only reader of JSON.
#include "transcribe/recipe_text.hpp"

#include "transcribe/recipe_words.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>

namespace leavenwright {
namespace {

using Json = nlohmann::json;
constexpr int deepest = 32;

bool is_recipe_type(const Json& type) {
    if (type.is_string()) {
        const std::string& text = type.get_ref<const std::string&>();
        return text == "Recipe" || text.ends_with("/Recipe");
    }
    return type.is_array() &&
           std::any_of(type.begin(), type.end(), [](const Json& item) { return is_recipe_type(item); });
}

bool is_typed_recipe(const Json& json) {
    const auto type = json.find("@type");
    return type != json.end() && is_recipe_type(*type);
}

// Without a type, as collections keep them: {"name": ..., "ingredients": [...]}.
bool has_ingredients(const Json& json) {
    const auto list = json.find("ingredients");
    return list != json.end() && list->is_array() && !list->empty();
}

template <class IsRecipe>
const Json* find_recipe(const Json& json, int depth, IsRecipe is_recipe) {
    if (depth > deepest || !json.is_structured()) {
        return nullptr;
    }
    if (json.is_object() && is_recipe(json)) {
        return &json;
    }
    for (const auto& item : json) {
        if (const Json* found = find_recipe(item, depth + 1, is_recipe)) {
            return found;
        }
    }
    return nullptr;
}

// Depth is checked before parsing: the parser keeps open brackets in memory only, but trees are freed by
// recursion.
bool is_too_deep(std::string_view text) {
    int depth = 0;
    bool is_quoted = false;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const char byte = text[at];
        if (is_quoted) {
            at += byte == '\\' ? 1U : 0U;
            is_quoted = byte != '"';
        } else if (byte == '"') {
            is_quoted = true;
        } else if (byte == '{' || byte == '[') {
            if (++depth > 100) {
                return true;
            }
        } else if (byte == '}' || byte == ']') {
            --depth;
        }
    }
    return false;
}

// Texts of markup often hold HTML: "2&frac14; tsp", "<p>Mix.</p>".
std::string plain_text(const Json& json) {
    std::string text = json.get<std::string>();
    constexpr std::size_t longest = 8000;
    text.resize(std::min(text.size(), longest));
    const bool is_html = text.find_first_of("&<") != std::string::npos;
    return is_html ? read_page(text).text : text;
}

class JsonRecipeReader {
public:
    JsonRecipeReader(const SourceHandle& source, const Json& json) : source_(source), json_(json) {}

    RecipeText read() {
        recipe_.name = text_of("name");
        recipe_.name = recipe_.name.empty() ? text_of("title") : recipe_.name;
        recipe_.yield = yield();
        for (const char* key : {"recipeIngredient", "ingredients"}) {
            if (const auto list = json_.find(key); list != json_.end() && recipe_.lines.empty()) {
                take_lines(*list);
            }
        }
        for (const char* key : {"recipeInstructions", "instructions", "directions", "steps"}) {
            if (const auto steps = json_.find(key); steps != json_.end() && recipe_.directions.empty()) {
                take_steps(*steps, 0);
            }
        }
        return std::move(recipe_);
    }

private:
    std::string text_of(const char* key) const {
        const auto found = json_.find(key);
        return found != json_.end() && found->is_string() ? plain_text(*found) : std::string();
    }

    std::string yield() const {
        const auto found = json_.find("recipeYield");
        if (found == json_.end()) {
            return {};
        }
        if (found->is_array()) { // the longest says what is made, not only how many
            std::string best;
            for (const auto& item : *found) {
                const std::string text = item.is_string() ? item.get<std::string>() : std::string();
                best = text.size() > best.size() ? text : best;
            }
            return best;
        }
        return found->is_string()   ? found->get<std::string>()
               : found->is_number() ? found->dump()
                                    : std::string();
    }

    void take_lines(const Json& list) {
        if (list.is_string()) {
            take_line(plain_text(list));
        } else if (list.is_array()) {
            for (const auto& item : list) {
                if (item.is_string()) {
                    take_line(plain_text(item));
                } else if (item.is_object()) {
                    take_line(joined_parts(item));
                }
            }
        }
    }

    // "For the glaze:", "DOUGH"
    static bool is_heading(std::string_view line) {
        constexpr std::size_t longest = 40;
        const bool is_capital =
            std::none_of(line.begin(), line.end(), [](char byte) { return byte >= 'a' && byte <= 'z'; });
        return line.size() <= longest && !has_digit(line) && (line.ends_with(':') || is_capital);
    }

    // {"amount": 500, "unit": "g", "name": "rye flour"}
    static std::string joined_parts(const Json& item) {
        std::string text;
        for (const auto& keys : {std::array{"quantity", "amount"}, std::array{"unit", "measure"},
                                 std::array{"name", "ingredient"}}) {
            for (const char* key : keys) {
                if (const auto part = item.find(key); part != item.end()) {
                    const std::string words = part->is_string()   ? plain_text(*part)
                                              : part->is_number() ? part->dump()
                                                                  : std::string();
                    text += (text.empty() || words.empty() ? "" : " ") + words;
                    break;
                }
            }
        }
        return text;
    }

    // Lines of one text stand for themselves; headings end with a colon.
    void take_line(const std::string& text) {
        std::string_view rest = text;
        while (!rest.empty() && recipe_.lines.size() < most_recipe_lines) {
            const std::size_t end = std::min(rest.find('\n'), rest.size());
            std::string_view line = rest.substr(0, end);
            line.remove_prefix(std::min(line.find_first_not_of(" \t\r"), line.size()));
            const auto role = is_heading(line) ? role_of_heading(heading_text(line)) : std::nullopt;
            if (role) {
                role_ = *role;
            } else if (!line.empty()) {
                recipe_.lines.push_back({.place = place_of(line), .role = role_});
            }
            rest.remove_prefix(std::min(end + 1, rest.size()));
        }
    }

    // Where the words stand in the source, if they stand there as they are.
    SourcedText place_of(std::string_view words) {
        const auto copy = std::make_shared<SourceText>(source_->name(), std::string(words));
        constexpr int most_misses = 3; // each costs a search of the whole text
        const std::size_t found =
            misses_ < most_misses ? source_->text().find(words, from_) : std::string_view::npos;
        if (found == std::string_view::npos) {
            ++misses_;
            return {.source = copy, .span = {0, words.size()}, .text = copy->text()};
        }
        from_ = found + words.size();
        return {.source = source_,
                .span = {found, words.size()},
                .text = source_->text().substr(found, words.size())};
    }

    // Text, a list of texts, HowToStep with its text, HowToSection with its list.
    void take_steps(const Json& steps, int depth) {
        if (depth > deepest || recipe_.directions.size() >= most_recipe_lines) {
            return;
        }
        if (steps.is_string()) {
            recipe_.directions.push_back(plain_text(steps));
        } else if (steps.is_array()) {
            for (const auto& step : steps) {
                take_steps(step, depth + 1);
            }
        } else if (steps.is_object()) {
            for (const char* key : {"itemListElement", "text"}) {
                if (const auto found = steps.find(key); found != steps.end()) {
                    take_steps(*found, depth + 1);
                    return;
                }
            }
        }
    }

    SourceHandle source_;
    const Json& json_;
    RecipeText recipe_;
    std::string role_ = "dough";
    std::size_t from_ = 0;
    int misses_ = 0;
};

} // namespace

std::optional<RecipeText> read_json_recipe(const SourceHandle& source, std::string_view json,
                                           Diagnostics& diagnostics) {
    const SourcedText beginning{.source = source, .span = {0, 0}, .text = {}};
    if (json.starts_with("\xEF\xBB\xBF")) {
        json.remove_prefix(3);
    }
    const Json tree =
        is_too_deep(json) ? Json(Json::value_t::discarded) : Json::parse(json, nullptr, false, true);
    if (tree.is_discarded()) {
        diagnostics.warning(Code::markup_unreadable, beginning,
                            "the recipe markup (JSON-LD) is not well-formed JSON",
                            "copy the list of ingredients into a text file, and transcribe that");
        return std::nullopt;
    }
    const Json* typed = find_recipe(tree, 0, is_typed_recipe);
    const Json* recipe = typed != nullptr ? typed : find_recipe(tree, 0, has_ingredients);
    return recipe != nullptr ? std::optional(JsonRecipeReader(source, *recipe).read()) : std::nullopt;
}

} // namespace leavenwright
