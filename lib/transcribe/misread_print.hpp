// Letters for figures, and figures for letters, as machines read old print. Private to the transcribe folder.
#pragma once

#include <string>
#include <string_view>

namespace leavenwright {

/// A line with what its print must have said.
struct MendedPrint {
    std::string text;
    bool has_figures = false; // some of its amounts are guesses
};

/// "y4 cup" is 1/4, "iy2" and "11/2" are 1 1/2, "l0 ozs." is 10, "2 Ibs." are pounds, "leve1" and "fIour"
/// are words. A figure is mended only before a measure. Linear time.
MendedPrint mended_print(std::string_view line);

} // namespace leavenwright
