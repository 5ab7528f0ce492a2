// A place in a text that is read line by line, and what can be seen from there. Private to the transcribe
// folder.
#pragma once

#include "source/source_text.hpp"

#include <cstddef>
#include <string_view>

namespace leavenwright {

class LineCursor {
public:
    explicit LineCursor(SourceHandle source) : source_(std::move(source)) {}

    /// Lines are counted from 1.
    void move_to(std::size_t number);
    std::size_t number() const { return number_; }
    /// Bytes of white space that begin the line.
    std::size_t indent() const;
    /// The line below; empty at the end of the text.
    std::string_view next_line() const { return next_line_; }
    SourcedText next() const;
    /// Of the three lines below, the first that has words and is no rule; empty where none has.
    std::string_view next_words() const { return next_words_; }
    /// Of the three lines above, the last that has words; empty where none has.
    std::string_view words_above() const;
    /// 1 for "# Bread" or "Bread" over "=====", 2 for "## Dough" or over "-----", and so on; 0 for other
    /// lines.
    std::size_t heading_level() const { return heading_level(number_); }
    std::size_t heading_level(std::size_t number) const;
    /// The nearest heading above that the one here is a part of; empty where none is near.
    std::string_view heading_around() const;
    /// From `line`, which is this one or its end, down to the next blank one or rule; at most 4,000 bytes.
    SourcedText paragraph_from(const SourcedText& line) const;

private:
    SourceHandle source_;
    std::size_t number_ = 0;
    std::string_view next_line_;
    std::string_view next_words_;
};

} // namespace leavenwright
