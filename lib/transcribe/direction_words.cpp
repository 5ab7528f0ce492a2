#include "transcribe/direction_words.hpp"

#include "source/unicode.hpp"

#include <array>
#include <utility>

namespace leavenwright {
namespace {

// Beginnings of what a cook does with things that are not mixed in.
constexpr auto acts_apart = std::to_array<std::pair<std::string_view, std::string_view>>({
    {"brush", "brushing"},
    {"gild", "brushing"},
    {"glaz", "brushing"},
    {"paint", "brushing"},
    {"baste", "brushing"},
    {"sprinkl", "topping"},
    {"strew", "topping"},
    {"scatter", "topping"},
    {"garnish", "topping"},
    {"decorat", "topping"},
    {"drizzl", "topping"},
    {"shake", "dusting"},
    {"dust", "dusting"},
    {"fill", "filling"},
    {"spread", "filling"},
    {"lay", "topping"},
});

// Any other act mixes, as far as is known.
constexpr auto acts_of_dough = std::to_array<std::string_view>(
    {"mix",        "add",  "stir",  "beat",    "knead",  "combine", "blend", "whisk",
     "dissolve",   "fold", "work",  "crumble", "put",    "pour",    "rub",   "cream",
     "cut",        "sift", "scald", "soak",    "melt",   "grate",   "heat",  "soften",
     "incorporat", "chop", "proof", "make",    "prepar", "pick",    "remov"});

std::string_view role_of_act(std::string_view word) {
    for (const auto& [stem, role] : acts_apart) {
        if (word.starts_with(stem)) {
            return role;
        }
    }
    return {};
}

using Kind = DirectionWord::Kind;

DirectionWord direction_word(std::string text) {
    const std::string_view role = role_of_act(text);
    const bool is_done = text.ends_with("ed") || text == "beaten"; // "brush with melted lard"
    const Kind kind = !role.empty()                                      ? Kind::apart
                      : !is_done && begins_with_any(text, acts_of_dough) ? Kind::mix
                                                                         : Kind::other;
    return {.text = std::move(text), .kind = kind, .role = role};
}

// "Top with sauce and cheese", "coat with", "wash with"; "the top" is no act.
void take_acts_with(std::vector<DirectionWord>& words) {
    for (std::size_t at = 0; at + 1 < words.size(); ++at) {
        if (words[at + 1].text != "with") {
            continue;
        }
        if (words[at].is_any({"top", "coat"})) {
            words[at].kind = Kind::apart;
            words[at].role = "topping";
        } else if (words[at].text == "wash") {
            words[at].kind = Kind::apart;
            words[at].role = "brushing";
        }
    }
}

// Words of names that many things go by.
constexpr auto common_words = std::to_array<std::string_view>(
    {"flour",  "sugar", "salt",   "butter", "oil",    "milk",  "water", "powder", "yeast", "cream",
     "ground", "dry",   "dried",  "egg",    "fat",    "white", "brown", "whole",  "sweet", "seed",
     "bread",  "fresh", "coarse", "sea",    "fine",   "juice", "black", "green",  "red",   "light",
     "dark",   "hot",   "olive",  "corn",   "baking", "of",    "the",   "all"});

// "melted butter" is called butter.
bool is_of_cooking(std::string_view word) {
    constexpr auto words =
        std::to_array<std::string_view>({"melted", "softened", "soft", "warm", "cold", "chopped", "grated",
                                         "beaten", "boiling", "lukewarm", "hot", "tepid", "very"});
    return std::find(words.begin(), words.end(), word) != words.end();
}

bool is_baked(std::string_view word) {
    return begins_with_any(
        word, std::to_array<std::string_view>({"bun", "rolls", "bread", "loaf", "loaves", "cake"}));
}

} // namespace

std::vector<DirectionWord> direction_words(std::span<const std::string> directions) {
    constexpr std::size_t most_words = 20000;
    std::vector<DirectionWord> words;
    for (const std::string& paragraph : directions) {
        std::string word;
        for (const char byte : fold_name(paragraph) + " .") {
            const bool is_part = (byte >= 'a' && byte <= 'z') || (byte >= '0' && byte <= '9') ||
                                 static_cast<unsigned char>(byte) >= 0x80U;
            if (is_part) {
                word += byte;
                continue;
            }
            if (!word.empty() && words.size() < most_words) {
                words.push_back(direction_word(std::exchange(word, {})));
            }
            const bool is_end = byte == '.' || byte == ';' || byte == '!';
            if (is_end && !words.empty() && words.back().kind != Kind::end) {
                words.push_back({.text = {}, .kind = Kind::end, .role = {}});
            }
        }
    }
    take_acts_with(words);
    return words;
}

std::vector<std::span<const DirectionWord>> sentences_of(std::span<const DirectionWord> words) {
    std::vector<std::span<const DirectionWord>> sentences;
    for (auto begin = words.begin(); begin != words.end();) {
        const auto end = std::find_if(begin, words.end(),
                                      [](const DirectionWord& word) { return word.kind == Kind::end; });
        if (begin != end) {
            sentences.emplace_back(begin, end);
        }
        begin = end == words.end() ? end : end + 1;
    }
    return sentences;
}

bool mixes_all(std::span<const DirectionWord> words) {
    return std::any_of(words.begin(), words.end(), [](const DirectionWord& word) {
        return word.text.starts_with("ingredient") || word.text == "everything";
    });
}

bool is_common_word(std::string_view word) {
    return std::find(common_words.begin(), common_words.end(), word) != common_words.end();
}

std::vector<std::string> calls_of(const IngredientLine& line) {
    const bool is_egg_part = line.key == "egg white" || line.key == "egg yolk";
    std::vector<std::string> calls;
    std::string name = fold_name(line.name.empty() ? line.key : line.name);
    if (name.size() > 40 || line.key == "egg" || is_egg_part) {
        return name.size() > 40 ? calls : std::vector<std::string>{line.key.substr(is_egg_part ? 4 : 0)};
    }
    for (std::size_t begin = 0; begin < name.size();) {
        const std::size_t end = std::min(name.find(' ', begin), name.size());
        std::string word = name.substr(begin, end - begin);
        word.resize(word.size() - (word.size() > 3 && word.ends_with('s') ? 1U : 0U));
        if (word.size() > 2 && !is_of_cooking(word) && !is_common_word(word)) {
            calls.push_back(std::move(word));
        }
        begin = end + 1;
    }
    const std::string first = name.substr(0, name.find(' '));
    if (line.key == "cornmeal") { // by either spelling
        calls.assign({"cornmeal", "corn meal"});
    }
    if (calls.empty() && std::count(name.begin(), name.end(), ' ') == 1 &&
        !is_of_cooking(first)) { // "brown sugar"
        calls.push_back(std::move(name));
    }
    return calls;
}

bool is_called(std::span<const DirectionWord> words, std::size_t at, std::span<const std::string> calls) {
    const std::string_view word = words[at].text;
    if ((at + 1 < words.size() && is_baked(words[at + 1].text)) || word == "buttered") { // "a buttered pan"
        return false;
    }
    return std::any_of(calls.begin(), calls.end(), [&](std::string_view call) {
        const std::size_t space = call.find(' ');
        if (space != std::string_view::npos && (at == 0 || words[at - 1].text != call.substr(0, space))) {
            return false;
        }
        call.remove_prefix(space == std::string_view::npos ? 0 : space + 1);
        return word.starts_with(call) && word.size() <= call.size() + 2; // "seed", "seeds"
    });
}

Sentence sentence_around(std::span<const DirectionWord> words, std::size_t at) {
    constexpr std::size_t farthest = 200;
    Sentence sentence{at, at};
    while (sentence.begin > 0 && at - sentence.begin < farthest &&
           words[sentence.begin - 1].kind != Kind::end) {
        --sentence.begin;
    }
    while (sentence.begin < at &&
           words[sentence.begin].text.find_first_not_of("0123456789") == std::string::npos) {
        ++sentence.begin;
    }
    while (sentence.end < words.size() && sentence.end - at < farthest &&
           words[sentence.end].kind != Kind::end) {
        ++sentence.end;
    }
    return sentence;
}

bool is_mixed_alone(std::span<const DirectionWord> words, const Sentence& sentence) {
    const auto all = words.subspan(sentence.begin, sentence.end - sentence.begin);
    const bool has_dough = std::any_of(all.begin(), all.end(), [](const DirectionWord& word) {
        return word.text.starts_with("flour") || word.text == "yeast" || word.text == "dough" ||
               word.text.starts_with("ingredient") || word.text == "everything";
    });
    constexpr auto stems =
        std::to_array<std::string_view>({"combine", "mix", "beat", "melt", "whisk", "stir"});
    const std::size_t verb = !all.empty() && all.front().text == "meanwhile" ? 1 : 0;
    return !has_dough && all.size() > verb && begins_with_any(all[verb].text, stems);
}

} // namespace leavenwright
