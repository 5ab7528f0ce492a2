#include "transcribe/finishing.hpp"

#include "source/unicode.hpp"
#include "transcribe/line_tokens.hpp"

#include <algorithm>
#include <array>
#include <span>
#include <string_view>

namespace leavenwright {
namespace {

using Tokens = std::span<const LineToken>;

struct Act {
    std::string_view stem;
    std::string_view role;
};
constexpr auto acts = std::to_array<Act>({{"brush", "brushing"},
                                          {"glaz", "brushing"},
                                          {"sprinkl", "topping"},
                                          {"strew", "topping"},
                                          {"dust", "dusting"},
                                          {"spread", "filling"}});

std::string_view role_of(const LineToken& token) {
    for (const Act& act : acts) {
        if (token.is_word() && token.folded.starts_with(act.stem)) {
            return act.role;
        }
    }
    return {};
}

bool ends_sentence(const LineToken& token) {
    return token.is(".") || token.is(";") || token.is("!") || token.is("?") || token.is(":");
}

// "butter" and "butters", "egg" and "eggs"
bool names(const LineToken& token, std::string_view word) {
    return token.is_word() && (token.folded == word || token.folded == std::string(word) + "s");
}

// "Brush ... with melted butter": the act before "with", a few words before the name.
std::string_view finish_before(Tokens sentence, std::size_t at) {
    constexpr std::size_t widest = 7;
    bool is_with = false;
    for (std::size_t back = 1; back <= at && back <= 2 * widest; ++back) {
        const LineToken& token = sentence[at - back];
        if (!is_with && back > widest) {
            break;
        }
        is_with = is_with || token.is("with");
        if (const std::string_view role = role_of(token); is_with && !role.empty()) {
            return role;
        }
    }
    return {};
}

// The role that every mention of a word gives it; empty where one gives none, or there is no mention.
std::string_view finish_of(std::string_view word, const std::vector<std::vector<LineToken>>& sentences) {
    std::string_view role;
    for (const std::vector<LineToken>& sentence : sentences) {
        for (std::size_t at = 0; at < sentence.size(); ++at) {
            if (!names(sentence[at], word)) {
                continue;
            }
            const std::string_view found = finish_before(sentence, at);
            if (found.empty()) {
                return {};
            }
            role = found;
        }
    }
    return role;
}

std::vector<std::vector<LineToken>> sentences_of(const std::vector<std::string>& directions) {
    constexpr std::size_t most_tokens = 20000; // of all: each is compared with each line
    std::size_t tokens = 0;
    std::vector<std::vector<LineToken>> sentences(1);
    for (const std::string& paragraph : directions) {
        for (LineToken& token : line_tokens(paragraph)) {
            if (ends_sentence(token)) {
                sentences.emplace_back();
            } else {
                sentences.back().push_back(std::move(token));
            }
            if (++tokens > most_tokens) {
                return sentences;
            }
        }
        sentences.emplace_back();
    }
    return sentences;
}

// What a dough is made of is not put on it last; a fat, an egg, sugar or seeds may be.
bool may_finish(const Ingredient& ingredient) {
    const bool is_body = ingredient.is_flour() || ingredient.name == "water" || ingredient.name == "salt" ||
                         ingredient.ingredient_class == IngredientClass::yeast;
    return !is_body;
}

} // namespace

void find_finishes(std::vector<IngredientLine>& lines, const std::vector<std::string>& directions,
                   Diagnostics& diagnostics) {
    const auto sentences = sentences_of(directions);
    for (IngredientLine& line : lines) {
        if (line.role != "dough" || line.ingredient == nullptr || !may_finish(*line.ingredient)) {
            continue;
        }
        const std::string name = fold_name(line.key);
        const std::string_view word = std::string_view(name).substr(name.rfind(' ') + 1);
        const std::string_view role = finish_of(word, sentences);
        if (role.empty()) {
            continue;
        }
        const bool has_other = std::any_of(lines.begin(), lines.end(), [&](const IngredientLine& other) {
            return &other != &line && other.role == "dough" && other.ingredient != nullptr &&
                   other.ingredient != line.ingredient &&
                   other.ingredient->ingredient_class == line.ingredient->ingredient_class;
        });
        line.is_sure = false;
        line.role = has_other ? std::string(role) : line.role;
        diagnostics.warning(Code::ingredient_doubtful, line.place,
                            "the directions only use " + in_quotes(line.key) + " for " + std::string(role) +
                                (has_other ? ": it is kept apart" : "; it is counted in the dough"),
                            has_other ? "move it to the dough if some of it goes in"
                                      : "take it out of the formula if none of it goes in");
    }
}

} // namespace leavenwright
