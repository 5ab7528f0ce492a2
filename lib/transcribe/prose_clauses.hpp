// Sentences of a recipe cut into clauses and words, with their places. Private to the transcribe folder.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

struct ProseWord {
    std::size_t begin = 0; // bytes of the text
    std::size_t end = 0;
    std::string folded; // small letters, without marks, in one piece where the margin cut it
};

struct ProseClause {
    std::size_t begin = 0;
    std::size_t end = 0;
    char mark_before = '.'; // "and" is '&', a line's end '\n'
    char mark_behind = '.';
    std::vector<ProseWord> words;

    bool begins_sentence() const {
        return mark_before == '.' || mark_before == '!' || mark_before == '?' || mark_before == '\n';
    }
    /// The folded word at `at`; empty behind the last.
    std::string_view word(std::size_t at) const {
        return at < words.size() ? std::string_view(words[at].folded) : std::string_view();
    }
};

/// Between marks and before "and", but not inside a number ("a pint and a half"), behind a short form ("1 lb.
/// of flour") or in brackets that hold an amount. The lines of a running text are one. Linear time.
std::vector<ProseClause> clauses_of(std::string_view text, bool is_running);

/// "600g", "½", "two", "a", "half": a word that an amount may begin with.
bool may_begin_amount(std::string_view folded);

} // namespace leavenwright
