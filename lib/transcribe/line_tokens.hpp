// A line of a recipe as tokens: numbers in every way that people write them, words, and marks.
// Private to the transcribe folder.
#pragma once

#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

struct LineToken {
    enum class Kind { number, word, mark };

    Kind kind = Kind::mark;
    std::string text;        // as written, typographic marks made plain
    std::string folded;      // of a word: as names are compared, without full stops
    double value = 0.0;      // of a number
    bool is_decimal = false; // of a number: written with a point or comma, or whole
    bool is_glued = false;   // nothing stands between it and the token before

    bool is(std::string_view word) const { return kind != Kind::number && folded == word; }
    bool is_any(std::initializer_list<std::string_view> words) const;
    bool is_number() const { return kind == Kind::number; }
    bool is_word() const { return kind == Kind::word; }
};

/// `line` without the bullet, check box or number that begins it, and without the spaces around it.
std::string_view without_bullet(std::string_view line);

/// `line` with bullets, check boxes, emphasis, links and table bars taken off, typographic spaces, dashes and
/// quotation marks made plain, and a letter for the figure one mended. Linear time.
std::string plain_line(std::string_view line);

/// Whether a line begins with a letter where a figure is meant, as machines read old print: "I cup", "l
/// tsp.", "I 1/2 cups". `plain_line` has the figure.
bool begins_with_letter_for_one(std::string_view line);

/// Tokens of a plain line. "1 1/2", "1-1/2", "1½", "1 and 1/2" and "1,5" are one number each; "1,000" is a
/// thousand. Linear time.
std::vector<LineToken> line_tokens(std::string_view line);

} // namespace leavenwright
