#include "transcribe/line_cursor.hpp"

#include "transcribe/recipe_words.hpp"

#include <algorithm>

namespace leavenwright {

void LineCursor::move_to(std::size_t number) {
    number_ = number;
    next_line_ = number < source_->line_count() ? source_->line(number + 1) : std::string_view();
    next_words_ = {};
    for (std::size_t next = number + 1; next <= source_->line_count() && next < number + 4; ++next) {
        const std::string_view line = source_->line(next);
        const bool is_remark = line.starts_with('(') && line.ends_with(')'); // "(make a day ahead)"
        if (!is_rule(line) && !is_blank(line) && !is_remark) {
            next_words_ = line;
            return;
        }
    }
}

std::size_t LineCursor::indent() const {
    const std::string_view line = source_->line(number_);
    return std::min(line.find_first_not_of(" \t"), line.size());
}

std::string_view LineCursor::words_above() const {
    for (std::size_t number = number_; number > 1 && number + 3 > number_;) {
        --number;
        if (!is_blank(source_->line(number))) {
            return source_->line(number);
        }
    }
    return {};
}

std::size_t LineCursor::heading_level(std::size_t number) const {
    constexpr std::size_t shortest = 3;
    std::string_view line = source_->line(number);
    line.remove_prefix(std::min(line.find_first_not_of(" \t>"), line.size()));
    const std::size_t marks = std::min(line.find_first_not_of("#="), line.size());
    if (marks > 0) { // "==" of a wiki is its second level
        return marks < line.size() ? marks : 0U;
    }
    const bool is_alone = number == 1 || is_blank(source_->line(number - 1));
    if (line.empty() || !is_alone || number >= source_->line_count()) {
        return 0;
    }
    const std::string_view below = source_->line(number + 1);
    const std::size_t end = below.find_last_not_of(" \t\r") + 1;
    const bool is_rule = end >= shortest && (below[0] == '=' || below[0] == '-') &&
                         below.substr(0, end).find_first_not_of(below[0]) == std::string_view::npos;
    return !is_rule ? 0U : below[0] == '=' ? 1U : 2U;
}

std::string_view LineCursor::heading_around() const {
    constexpr std::size_t most_lines = 60;
    const std::size_t level = heading_level();
    const std::size_t first = number_ - std::min(most_lines, number_ - 1);
    for (std::size_t number = number_; level > 0 && number > first;) {
        --number;
        const std::size_t other = heading_level(number);
        if (other > 0 && other < level) {
            return source_->line(number);
        }
    }
    return {};
}

SourcedText LineCursor::next() const {
    return {
        .source = source_, .span = {source_->line_start(number_ + 1), next_line_.size()}, .text = next_line_};
}

SourcedText LineCursor::paragraph_from(const SourcedText& line) const {
    constexpr std::size_t longest_paragraph = 4000;
    const std::string_view all = source_->text();
    const std::size_t begin = line.span.offset;
    std::size_t last = number_;
    while (last < source_->line_count() && !is_rule(source_->line(last + 1)) &&
           source_->line_start(last + 1) < begin + longest_paragraph && !is_blank(source_->line(last + 1))) {
        ++last;
    }
    std::size_t end = source_->line_start(last) + source_->line(last).size();
    if (end - begin > longest_paragraph) {
        const std::size_t space = all.find_last_of(" \n", begin + longest_paragraph);
        end = space == std::string_view::npos ? begin : std::max(space, begin);
    }
    return {.source = source_, .span = {begin, end - begin}, .text = all.substr(begin, end - begin)};
}

} // namespace leavenwright
