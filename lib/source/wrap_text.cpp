#include "source/wrap_text.hpp"

#include "source/unicode.hpp"

namespace leavenwright {

std::string wrap_text(std::string_view text, std::string_view first, std::string_view next,
                      std::size_t columns) {
    std::string out;
    std::string line(first);
    std::size_t width = display_width(first);
    bool is_fresh = true;
    const auto end_line = [&] {
        out += line + "\n";
        line = next;
        width = display_width(next);
        is_fresh = true;
    };
    while (!text.empty()) {
        const std::size_t stop = text.find_first_of(" \n");
        std::string_view word = text.substr(0, stop);
        std::size_t word_width = display_width(word);
        if (!is_fresh && width + 1 + word_width > columns) {
            end_line();
        }
        while (is_fresh && width < columns && width + word_width > columns) {
            const std::string_view piece = fit_width(word, columns - width);
            if (piece.empty()) { // not even one character has room
                break;
            }
            line += piece;
            word.remove_prefix(piece.size());
            word_width = display_width(word);
            end_line();
        }
        if (!is_fresh) {
            line += ' ';
            ++width;
        }
        line += word;
        width += word_width;
        is_fresh = false;
        if (stop == std::string_view::npos) {
            break;
        }
        if (text[stop] == '\n') {
            end_line();
        }
        text.remove_prefix(stop + 1);
    }
    out += line + "\n";
    return out;
}

} // namespace leavenwright
