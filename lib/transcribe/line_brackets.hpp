// What stands in brackets in a line: another measure of the amount, or an aside. Private to the transcribe
// folder.
#pragma once

#include "transcribe/line_tokens.hpp"

#include <cstddef>
#include <string_view>
#include <vector>

namespace leavenwright {

struct Bracket {
    std::vector<LineToken> tokens;
    std::size_t at = 0; // index in the tokens outside of brackets
};

/// Tokens outside of brackets, and the brackets; one that never closes ends with the line.
std::vector<LineToken> without_brackets(std::vector<LineToken> all, std::vector<Bracket>& brackets);

/// Where the amount in a bracket begins: at once, or later if it is a weight ("I weigh it, 440 g"); the
/// number of its tokens where it holds none.
std::size_t begin_of_amount(const Bracket& bracket);

} // namespace leavenwright
