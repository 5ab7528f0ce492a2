#include "source/source_text.hpp"

#include <algorithm>
#include <utility>

namespace leavenwright {

SourceText::SourceText(std::string name, std::string text)
    : name_(std::move(name)), text_(std::move(text)), line_starts_{0} {
    for (std::size_t at = text_.find('\n'); at != std::string::npos; at = text_.find('\n', at + 1)) {
        line_starts_.push_back(at + 1);
    }
}

std::size_t SourceText::line_start(std::size_t number) const {
    return line_starts_[std::min(number, line_starts_.size()) - 1];
}

std::string_view SourceText::line(std::size_t number) const {
    const std::size_t begin = line_start(number);
    std::size_t end = number < line_starts_.size() ? line_starts_[number] - 1 : text_.size();
    if (end > begin && text_[end - 1] == '\r') {
        --end;
    }
    return std::string_view(text_).substr(begin, end - begin);
}

SourcePosition SourceText::position(std::size_t offset) const {
    offset = std::min(offset, text_.size());
    const auto after = std::upper_bound(line_starts_.begin(), line_starts_.end(), offset);
    const auto line = static_cast<std::size_t>(after - line_starts_.begin());
    const std::string_view before =
        std::string_view(text_).substr(line_starts_[line - 1], offset - line_starts_[line - 1]);
    const auto is_code_point_start = [](char byte) {
        return (static_cast<unsigned char>(byte) & 0xC0U) != 0x80U;
    };
    const auto code_points =
        static_cast<std::size_t>(std::count_if(before.begin(), before.end(), is_code_point_start));
    const bool has_mark = before.starts_with("\xEF\xBB\xBF"); // a byte order mark is no character
    return {.line = line, .column = code_points + (has_mark ? 0 : 1)};
}

SourcedText SourcedText::part(std::size_t begin, std::size_t length) const {
    begin = std::min(begin, text.size());
    length = std::min(length, text.size() - begin);
    SourcedText result{.source = source, .span = span, .text = text.substr(begin, length)};
    if (is_verbatim()) {
        result.span = {.offset = span.offset + begin, .length = length};
    }
    return result;
}

} // namespace leavenwright
