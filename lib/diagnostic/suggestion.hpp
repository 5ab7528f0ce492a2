// Near misses: what the writer of an unknown word probably meant.
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

/// Edits (insert, delete, replace, swap of neighbours) between two short words, or
/// `limit` + 1 if there are more. Bytes are compared.
std::size_t edit_distance(std::string_view left, std::string_view right, std::size_t limit);

/// How many edits a slip in a word may take: two, one for up to four letters, none for one.
std::size_t edits_allowed(std::string_view word);

/// The candidate nearest to `word` within the edits allowed, or nothing.
std::string_view nearest_word(std::string_view word, std::span<const std::string_view> candidates);

/// "a, b or c"
std::string listed(std::span<const std::string_view> words);

} // namespace leavenwright
