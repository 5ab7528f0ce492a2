// Two columns of one list: the left one is read line by line, the right one waits for the end of the list.
// Private to the transcribe folder.
#pragma once

#include "pantry/pantry.hpp"
#include "transcribe/recipe_text.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

class RightColumn {
public:
    explicit RightColumn(const Pantry& pantry) : pantry_(pantry) {}

    bool is_empty() const { return lines_.empty(); }
    /// "2 cups milk         1 yeast cake": keeps the right part of a line that begins at byte `indent` of its
    /// own, and gives the left one, which is empty where nothing stands in it.
    SourcedText left_of(const SourcedText& line, std::size_t indent, std::string_view role);
    /// Whether it holds what the left column holds, row by row: amounts for another batch.
    bool mirrors(std::span<const RecipeLine> left) const;
    void push(RecipeLine line) { lines_.push_back(std::move(line)); }
    /// What was kept, in order; the next line begins another list.
    std::vector<RecipeLine> take();

private:
    std::optional<std::size_t> begin_in(const SourcedText& line, std::size_t indent) const;
    void keep(const SourcedText& item, std::size_t column, std::string_view role);
    std::string role_of_head(std::string_view cell) const;
    bool goes_on(const RecipeLine& above, std::string_view text) const;
    bool begins_item(std::string_view text) const;

    const Pantry& pantry_;
    std::string role_; // by a heading in the column; empty where none says one
    std::vector<RecipeLine> lines_;
    std::size_t begin_ = 0; // in bytes of a line; 0 where it is not known
};

} // namespace leavenwright
