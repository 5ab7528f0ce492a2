#include "transcribe/line_cursor.hpp"

#include "transcribe/recipe_words.hpp"

#include <algorithm>

namespace leavenwright {

void LineCursor::move_to(std::size_t number) {
    number_ = number;
    next_line_ = number < source_->line_count() ? source_->line(number + 1) : std::string_view();
    next_words_ = {};
    for (std::size_t next = number + 1; next <= source_->line_count() && next < number + 4; ++next) {
        if (!is_rule(source_->line(next)) && !is_blank(source_->line(next))) {
            next_words_ = source_->line(next);
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
