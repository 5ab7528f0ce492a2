#include "transcribe/stage_row.hpp"

#include "transcribe/line_tokens.hpp"
#include "transcribe/recipe_words.hpp"
#include "transcribe/split_line.hpp"

#include <algorithm>
#include <array>

namespace leavenwright {
namespace {

// Words that say which stage, and how much of it, beside its name.
constexpr auto filler_words = std::to_array<std::string_view>(
    {"all",   "of",     "the",       "above",  "from",   "whole",   "entire",   "quantity", "risen",
     "ripe",  "active", "overnight", "cooled", "cooked", "your",    "made",     "cold",     "prepared",
     "dough", "rye",    "recipe",    "batch",  "full",   "starter", "mixture",  "bubbly",   "fermented",
     "cool",  "it",     "tutta",     "tutto",  "ganze",  "gesamte", "gesamter", "toute",    "toda"});

std::string words_of(const SplitLine& split) {
    std::string text;
    for (const LineToken& token : split.name) {
        if (token.is_number()) {
            return {};
        }
        if (token.is_word()) {
            text += (text.empty() ? "" : " ") + token.folded;
        } else if (token.is(",")) { // "poolish, at room temperature"
            break;
        }
    }
    return text;
}

bool says_no_more(std::string_view words, std::string_view stage) {
    while (!words.empty()) {
        const std::string_view word = words.substr(0, words.find(' '));
        const bool is_known =
            std::find(filler_words.begin(), filler_words.end(), word) != filler_words.end() ||
            stage_named(word) == stage || stage.find(word) != std::string_view::npos;
        if (!is_known) {
            return false;
        }
        words.remove_prefix(std::min(word.size() + 1, words.size()));
    }
    return true;
}

} // namespace

std::optional<IngredientLine> read_stage_row(const RecipeLine& line, std::span<const RecipeLine> all) {
    constexpr std::size_t longest = 120;
    const std::string_view words = line.said();
    if (line.role != "dough" || words.size() > longest || words.find('\n') != std::string_view::npos) {
        return std::nullopt;
    }
    const SplitLine split = split_line(plain_line(words));
    const std::string name = words_of(split);
    const std::string_view stage = stage_named(name);
    const bool is_stage_there = std::any_of(all.begin(), all.end(), [&](const RecipeLine& other) {
        return !stage.empty() && other.role == stage;
    });
    if (!is_stage_there || !says_no_more(name, stage)) {
        return std::nullopt;
    }
    IngredientLine row;
    row.text = without_bullet(line.place.text);
    row.place = line.place;
    row.name = stage;
    row.role = role_of_stage_row;
    if (split.amount) {
        row.number = split.amount->number;
        row.unit = split.amount->measure.name;
        if (split.amount->measure.kind == Measure::Kind::mass) {
            const Mass one = split.amount->measure.mass;
            row.weight =
                WeightRange{split.amount->number * one, split.amount->least * one, split.amount->most * one};
        }
    }
    return row;
}

} // namespace leavenwright
