#include "diagnostic/suggestion.hpp"

#include <algorithm>
#include <numeric>

namespace leavenwright {

std::size_t edit_distance(std::string_view left, std::string_view right, std::size_t limit) {
    const std::size_t longest = std::max(left.size(), right.size());
    const std::size_t shortest = std::min(left.size(), right.size());
    if (longest - shortest > limit || longest > 64) {
        return left == right ? 0 : limit + 1;
    }
    std::vector<std::size_t> before(right.size() + 1);
    std::vector<std::size_t> previous(right.size() + 1);
    std::vector<std::size_t> current(right.size() + 1);
    std::iota(previous.begin(), previous.end(), std::size_t{0});
    for (std::size_t i = 1; i <= left.size(); ++i) {
        current[0] = i;
        for (std::size_t j = 1; j <= right.size(); ++j) {
            const std::size_t replaced = previous[j - 1] + (left[i - 1] == right[j - 1] ? 0U : 1U);
            current[j] = std::min({replaced, previous[j] + 1, current[j - 1] + 1});
            const bool swapped = i > 1 && j > 1 && left[i - 1] == right[j - 2] && left[i - 2] == right[j - 1];
            if (swapped) {
                current[j] = std::min(current[j], before[j - 2] + 1);
            }
        }
        std::swap(before, previous);
        std::swap(previous, current);
    }
    return std::min(previous.back(), limit + 1);
}

std::size_t edits_allowed(std::string_view word) {
    if (word.size() <= 1) {
        return 0;
    }
    return word.size() <= 4 ? 1 : 2;
}

std::string_view nearest_word(std::string_view word, std::span<const std::string_view> candidates) {
    const std::size_t limit = edits_allowed(word);
    std::size_t best = 4 * limit + 4;
    std::string_view nearest;
    for (const std::string_view candidate : candidates) {
        const std::size_t distance = edit_distance(word, candidate, limit);
        // Of equals, one that begins alike; of those, one of the same length.
        const bool begins_alike = !word.empty() && !candidate.empty() && word.front() == candidate.front();
        const bool is_as_long = candidate.size() == word.size();
        const std::size_t rank = 4 * distance + (begins_alike ? 0U : 2U) + (is_as_long ? 0U : 1U);
        if (distance <= limit && rank < best) {
            best = rank;
            nearest = candidate;
        }
    }
    return nearest;
}

std::string listed(std::span<const std::string_view> words) {
    std::string text;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (i > 0) {
            text += i + 1 == words.size() ? " or " : ", ";
        }
        text += words[i];
    }
    return text;
}

} // namespace leavenwright
