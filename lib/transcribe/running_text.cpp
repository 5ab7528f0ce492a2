#include "transcribe/running_text.hpp"

#include "transcribe/kitchen_words.hpp"

#include <algorithm>
#include <array>

namespace leavenwright {
namespace {

constexpr std::string_view blanks = " \t\r";

bool is_small(char byte) {
    return byte >= 'a' && byte <= 'z';
}

std::string_view trimmed(std::string_view line) {
    const std::size_t begin = line.find_first_not_of(blanks);
    return begin == std::string_view::npos ? std::string_view()
                                           : line.substr(begin, line.find_last_not_of(blanks) - begin + 1);
}

std::string_view last_word(std::string_view line) {
    const std::size_t space = line.find_last_of(" \t\n-");
    return line.substr(space == std::string_view::npos ? 0 : space + 1);
}

// No item of a list ends with one of these, or begins with one of the others.
bool is_left_open(std::string_view line) {
    constexpr auto words =
        std::to_array<std::string_view>({"of", "and", "a", "an", "the", "or", "in", "with", "to", "into",
                                         "it", "is", "as", "till", "until", "about"});
    const std::string_view word = last_word(line);
    return line.ends_with('-') || std::find(words.begin(), words.end(), word) != words.end() ||
           number_named(word) > 0.0 || fraction_named(word) > 0.0;
}

bool is_continued(std::string_view next) {
    constexpr auto words = std::to_array<std::string_view>(
        {"of", "and",  "or",    "in",   "with", "to",   "the", "into", "it", "is",
         "as", "till", "until", "that", "them", "they", "on",  "at",   "be", "by"});
    return std::find(words.begin(), words.end(), next.substr(0, next.find(' '))) != words.end();
}

// A line with the end of a sentence in it, and words of the next.
bool holds_sentence_end(std::string_view line) {
    for (std::size_t at = line.find(". "); at != std::string_view::npos; at = line.find(". ", at + 1)) {
        const std::size_t next = line.find_first_not_of(' ', at + 1);
        if (next != std::string_view::npos && line[next] >= 'A' && line[next] <= 'Z' && at > 1 &&
            is_small(line[at - 1]) && is_small(line[at - 2])) {
            return true;
        }
    }
    return false;
}

// A long line with several sentences in it.
bool is_long_line(std::string_view line) {
    constexpr std::size_t least = 160;
    return line.size() >= least && holds_sentence_end(line);
}

} // namespace

std::size_t paragraph_length(std::string_view text, std::size_t most) {
    std::size_t end = 0;
    while (end < text.size() && end < most) {
        const std::size_t next = std::min(text.find('\n', end), text.size());
        if (trimmed(text.substr(end, next - end)).empty() && end > 0) {
            break;
        }
        end = std::min(next + 1, text.size());
    }
    if (end > most) { // inside a line: at a word's end
        const std::size_t space = text.find_last_of(" \n", most);
        end = space == std::string_view::npos || space == 0 ? most : space;
    }
    return end;
}

bool is_running_text(std::string_view paragraph) {
    constexpr std::size_t margin = 58; // bytes; lines of a list are shorter
    std::size_t breaks = 0;
    std::size_t small = 0;
    std::size_t open = 0;
    std::size_t listed = 0; // lines with a figure first
    std::size_t parted = 0; // lines in columns
    std::string_view before;
    while (!paragraph.empty()) {
        const std::size_t end = std::min(paragraph.find('\n'), paragraph.size());
        const std::string_view line = trimmed(paragraph.substr(0, end));
        paragraph.remove_prefix(std::min(end + 1, paragraph.size()));
        if (line.empty()) {
            continue;
        }
        parted += line.find("   ") != std::string_view::npos ? 1U : 0U;
        if (!before.empty()) {
            const bool goes_on = is_small(line.front());
            const bool is_wide = before.size() >= margin && (goes_on || holds_sentence_end(before));
            const bool is_choice = last_word(before) == "or" && line.front() >= '0' && line.front() <= '9';
            const bool is_open = (is_left_open(before) && !is_choice) || is_continued(line) || is_wide;
            breaks += 1;
            small += goes_on || is_open ? 1U : 0U;
            listed += !is_open && line.front() >= '0' && line.front() <= '9' ? 1U : 0U;
            open += is_open ? 1U : 0U;
        }
        before = line;
    }
    if (2 * parted > breaks + 1) {
        return false;
    }
    return breaks == 0
               ? is_long_line(before)
               : open > 0 && 4 * open >= breaks && 2 * small >= breaks && (listed < 2 || 2 * listed < breaks);
}

std::string joined_at_margins(std::string_view text) {
    std::string words;
    words.reserve(text.size());
    for (std::size_t at = 0; at < text.size(); ++at) {
        const std::size_t end =
            text[at] == '-' ? text.find_first_not_of(blanks, at + 1) : std::string_view::npos;
        const bool is_at_margin = end < text.size() && text[end] == '\n' && at > 0 && is_small(text[at - 1]);
        const std::size_t next =
            is_at_margin ? text.find_first_not_of(" \t\r\n", end) : std::string_view::npos;
        if (next >= text.size() || !is_small(text[next])) {
            words += text[at];
            continue;
        }
        words += number_named(last_word(words)) > 0.0 ? "-" : "";
        at = next - 1;
    }
    return words;
}

} // namespace leavenwright
