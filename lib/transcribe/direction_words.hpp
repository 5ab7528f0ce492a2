// The directions of a recipe as words with what is done in them. Private to the transcribe folder.
#pragma once

#include "transcribe/ingredient_line.hpp"

#include <algorithm>
#include <cstddef>
#include <initializer_list>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

/// A folded word, or the end of a sentence.
struct DirectionWord {
    enum class Kind { other, end, mix, apart }; // of a sentence; an act

    std::string text;
    Kind kind = Kind::other;
    std::string_view role; // of an act apart

    bool is_any(std::span<const std::string_view> words) const {
        return std::find(words.begin(), words.end(), text) != words.end();
    }
    bool is_any(std::initializer_list<std::string_view> words) const {
        return is_any(std::span(words.begin(), words.size()));
    }
};

/// All words of the directions, up to twenty thousand.
std::vector<DirectionWord> direction_words(std::span<const std::string> directions);

inline bool begins_with_any(std::string_view word, std::span<const std::string_view> stems) {
    return std::any_of(stems.begin(), stems.end(),
                       [&](std::string_view stem) { return word.starts_with(stem); });
}

inline bool has_stem(std::span<const DirectionWord> words, std::span<const std::string_view> stems) {
    return std::any_of(words.begin(), words.end(),
                       [&](const DirectionWord& word) { return begins_with_any(word.text, stems); });
}
inline bool has_stem(std::span<const DirectionWord> words, std::initializer_list<std::string_view> stems) {
    return has_stem(words, std::span(stems.begin(), stems.size()));
}

inline bool has_word(std::span<const DirectionWord> words, std::span<const std::string_view> names) {
    return std::any_of(words.begin(), words.end(),
                       [&](const DirectionWord& word) { return word.is_any(names); });
}
inline bool has_word(std::span<const DirectionWord> words, std::initializer_list<std::string_view> names) {
    return has_word(words, std::span(names.begin(), names.size()));
}

/// Up to `count` words before the one at `at`.
inline std::span<const DirectionWord> words_before(std::span<const DirectionWord> words, std::size_t at,
                                                   std::size_t count) {
    const std::size_t length = std::min(at, count);
    return words.subspan(at - length, length);
}
/// Up to `count` words behind the one at `at`.
inline std::span<const DirectionWord> words_behind(std::span<const DirectionWord> words, std::size_t at,
                                                   std::size_t count) {
    const std::size_t begin = std::min(at + 1, words.size());
    return words.subspan(begin, std::min(count, words.size() - begin));
}

/// The words of each sentence, without its end.
std::vector<std::span<const DirectionWord>> sentences_of(std::span<const DirectionWord> words);

/// "Mix everything", "all ingredients": what is not named may be meant.
bool mixes_all(std::span<const DirectionWord> words);

/// Whether many things go by this word: sugar, butter, flour.
bool is_common_word(std::string_view word);

/// What directions call a thing by: the words of its name that nothing else goes by, or two of them together.
std::vector<std::string> calls_of(const IngredientLine& line);

/// Whether the word at `at` ends what a thing is called by; "cinnamon buns" call none.
bool is_called(std::span<const DirectionWord> words, std::size_t at, std::span<const std::string> calls);

/// Of words, without the number of a step; `end` is the first word behind it.
struct Sentence {
    std::size_t begin;
    std::size_t end;
};

Sentence sentence_around(std::span<const DirectionWord> words, std::size_t at);

/// "Combine egg whites and water", "Meanwhile mix the ghee with the garlic": nothing of a dough.
bool is_mixed_alone(std::span<const DirectionWord> words, const Sentence& sentence);

} // namespace leavenwright
