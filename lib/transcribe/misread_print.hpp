// Letters for figures, and figures for letters, as machines read old print. Private to the transcribe folder.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

/// A line with what its print must have said.
struct MendedPrint {
    std::string text;
    bool has_figures = false; // some of its amounts are guesses
};

/// "y4 cup" is 1/4, "iy2" and "11/2" are 1 1/2, "l0 ozs." is 10, "J pint" is a half, "2 Ibs." are pounds,
/// "leve1" and "fIour" are words. A figure is mended only before a measure. Linear time.
MendedPrint mended_print(std::string_view line);

/// What a word may have been before one of its letters was misread: "butter" of "buttcr", "flour" of "flonr".
/// None for short words.
std::vector<std::string> spellings_before_print(std::string_view word);

} // namespace leavenwright
