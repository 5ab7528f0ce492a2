// Lists of words that are written as one text, "mix|stir|fold", to look words up in: a search of a sorted
// list, where a walk along the text took most of the time that a recipe needs. Private to the transcribe
// folder.
#pragma once

#include <algorithm>
#include <cstddef>
#include <optional>
#include <span>
#include <string_view>
#include <utility>
#include <vector>

namespace leavenwright {

/// Rows of words that '|' separates.
class WordRows {
public:
    explicit WordRows(std::span<const std::string_view> rows) {
        for (std::size_t row = 0; row < rows.size(); ++row) {
            std::string_view words = rows[row];
            while (!words.empty()) {
                const std::size_t end = std::min(words.find('|'), words.size());
                words_.emplace_back(words.substr(0, end), row);
                words.remove_prefix(std::min(end + 1, words.size()));
            }
        }
        std::sort(words_.begin(), words_.end());
    }

    /// The first row that holds `word`.
    std::optional<std::size_t> row_of(std::string_view word) const {
        const auto found = std::lower_bound(words_.begin(), words_.end(), std::pair(word, std::size_t{0}));
        return found == words_.end() || found->first != word ? std::nullopt : std::optional(found->second);
    }

private:
    std::vector<std::pair<std::string_view, std::size_t>> words_; // ascending, with the row of each
};

/// Words of one row.
class WordSet {
public:
    explicit WordSet(std::string_view words) : rows_(std::span(&words, 1)) {}

    bool has(std::string_view word) const { return rows_.row_of(word).has_value(); }

private:
    WordRows rows_;
};

} // namespace leavenwright
