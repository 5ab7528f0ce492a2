// The text of one input (a file, standard input, or the value of an option), its
// lines, and where a byte of it stands. Everything that can be wrong in an input
// is reported against a span of such a text. Knows nothing of formats.
#pragma once

#include <cstddef>
#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

/// A run of bytes in a SourceText.
struct SourceSpan {
    std::size_t offset = 0;
    std::size_t length = 0;

    friend bool operator==(const SourceSpan&, const SourceSpan&) = default;
};

/// Line and column of a byte, both from 1. Columns count code points.
struct SourcePosition {
    std::size_t line = 1;
    std::size_t column = 1;
};

class SourceText {
public:
    SourceText(std::string name, std::string text);

    const std::string& name() const { return name_; }
    std::string_view text() const { return text_; }

    std::size_t line_count() const { return line_starts_.size(); }
    /// Line from 1, without its line end.
    std::string_view line(std::size_t number) const;
    /// Byte offset of the start of a line, from 1.
    std::size_t line_start(std::size_t number) const;
    SourcePosition position(std::size_t offset) const;

private:
    std::string name_;
    std::string text_;
    std::vector<std::size_t> line_starts_;
};

using SourceHandle = std::shared_ptr<const SourceText>;

/// A piece of text and where it stands: what readers of values are given.
/// `text` and the bytes at `span` are the same except for quoted and folded scalars.
struct SourcedText {
    SourceHandle source;
    SourceSpan span;
    std::string_view text;

    /// The part of `text` from `begin` on, `length` bytes of it.
    SourcedText part(std::size_t begin, std::size_t length) const;
    bool is_verbatim() const { return span.length == text.size(); }
};

} // namespace leavenwright
