#include "transcribe/misread_print.hpp"

#include "source/unicode.hpp"
#include "transcribe/kitchen_words.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <utility>

namespace leavenwright {
namespace {

bool is_digit(char byte) {
    return byte >= '0' && byte <= '9';
}

bool is_small(char byte) {
    return byte >= 'a' && byte <= 'z';
}

bool is_capital(char byte) {
    return byte >= 'A' && byte <= 'Z';
}

// Letters that look like the figure one.
bool is_stroke(char byte) {
    return byte == 'l' || byte == 'I' || byte == 'i' || byte == 'j' || byte == '|';
}

bool is_denominator(char byte) {
    return byte == '2' || byte == '3' || byte == '4' || byte == '8';
}

std::string_view next_word(std::string_view rest) {
    constexpr std::size_t longest = 24;
    rest = rest.substr(0, longest + 2); // and not the whole of a line of blanks and hyphens
    const std::size_t begin = rest.find_first_not_of(" -");
    if (begin == std::string_view::npos || begin > 2) {
        return {};
    }
    rest = rest.substr(begin, longest);
    return rest.substr(0, rest.find_first_of(" .,;:)-"));
}

bool is_misread_pound(std::string_view word) {
    return word == "1b" || word == "1bs" || word == "Ib" || word == "Ibs";
}

bool is_measure(std::string_view word) {
    return is_misread_pound(word) ||
           (!word.empty() && word != "can" && measure_named(word, fold_name(word)).has_value());
}

// What may stand behind an amount: a measure, the end of a range, or a fraction.
bool follows_amount(std::string_view rest) {
    const std::string_view word = next_word(rest);
    if (word == "to" || word == "or") { // of a range: "V8 or tomato juice" is none
        const std::string_view second = next_word(rest.substr(rest.find(word) + word.size()));
        return !second.empty() &&
               (is_digit(second.front()) || is_stroke(second.front()) || second.size() == 2);
    }
    return is_measure(word) || word == "inch" || word == "inches" || word == "level" || word == "heaping" ||
           word == "rounded" || word == "scant" || word == "full";
}

class PrintMender {
public:
    explicit PrintMender(std::string_view line) : line_(line) {}

    MendedPrint read() {
        out_.reserve(line_.size() + 8);
        while (at_ < line_.size()) {
            const std::size_t end = word_end();
            const std::string_view word = line_.substr(at_, end - at_);
            const std::string_view rest = line_.substr(end);
            const bool is_figure = !word.empty() && (take_fraction(word, rest) || take_figure(word, rest));
            has_figures_ = has_figures_ || is_figure;
            if (!is_figure && !take_pound(word) && !take_letters(word)) {
                out_ += word;
            }
            behind_number_ = !word.empty() && (is_digit(word.back()) || (behind_number_ && word == "."));
            at_ = end;
            while (at_ < line_.size() && is_gap(line_[at_])) {
                behind_number_ = behind_number_ && line_[at_] == ' ';
                out_ += line_[at_++];
            }
        }
        return {std::move(out_), has_figures_};
    }

private:
    static bool is_gap(char byte) {
        return std::string_view(" .,;:()\"\t").find(byte) != std::string_view::npos;
    }

    std::size_t word_end() const {
        std::size_t end = at_;
        while (end < line_.size() && !is_gap(line_[end])) {
            ++end;
        }
        return end;
    }

    // At the beginning of a line, or behind a mark or a leader.
    bool is_item_begun() const {
        const std::size_t last = line_.substr(0, at_).find_last_not_of(' ');
        return last == std::string_view::npos ||
               (std::string_view(".,;(").find(line_[last]) != std::string_view::npos &&
                (last == 0 || !is_digit(line_[last - 1]) || last + 1 < at_));
    }

    // "y4", "V2", "iy2", "5y2", and "11/2" for 1 1/2.
    bool take_fraction(std::string_view word, std::string_view rest) {
        if (!follows_amount(rest)) {
            return false;
        }
        const bool has_whole = word.size() == 3 && (is_digit(word[0]) || is_stroke(word[0]));
        const std::string_view part = has_whole ? word.substr(1) : word;
        const bool is_part = part.size() == 2 &&
                             std::string_view("yYV").find(part[0]) != std::string_view::npos &&
                             is_denominator(part[1]);
        const bool is_run_on = word.size() == 4 && is_digit(word[0]) && word[0] != '0' &&
                               (word[1] == '1' || word[1] == '3') && word[2] == '/' &&
                               is_denominator(word[3]) && word[1] < word[3];
        if (word == "34" && is_item_begun() && rest.starts_with(" c. ")) { // nobody takes 34 cups
            out_ += "3/4";
            return true;
        }
        if (!is_part && !is_run_on) {
            return false;
        }
        if (has_whole || is_run_on) {
            out_ += is_digit(word[0]) ? word[0] : '1';
            out_ += ' ';
        }
        out_ += is_run_on ? word[1] : '1';
        out_ += '/';
        out_ += word.back();
        return true;
    }

    // "l0 ozs.", "l lb." and "l 1/2 level spoonfuls"; "2 l milk" is two litres, and "I cup" a line's
    // beginning.
    bool take_figure(std::string_view word, std::string_view rest) {
        const bool is_alone =
            (word == "l" && is_item_begun()) || (word == "I" && (at_ == 0 || line_[at_ - 1] == '.'));
        const std::string_view next = next_word(rest);
        const bool is_fraction = next.size() == 3 && is_digit(next[0]) && next[1] == '/' && next[0] < next[2];
        if (is_alone && (is_measure(next) || is_fraction) && next != "l") {
            out_ += '1';
            return true;
        }
        if (word == "J" && is_measure(next)) { // of a half
            out_ += "1/2";
            return true;
        }
        const bool is_tens = word.size() == 2 && (word[0] == 'l' || word[0] == 'I') && is_digit(word[1]) &&
                             follows_amount(rest);
        if (is_tens) {
            out_ += '1';
            out_ += word[1];
        }
        return is_tens;
    }

    bool take_pound(std::string_view word) {
        const bool is_pound = behind_number_ && is_misread_pound(word);
        if (is_pound) {
            out_ += "lb";
            out_ += word.substr(2);
        }
        return is_pound;
    }

    // "leve1", "pIace", "fiour"
    bool take_letters(std::string_view word) {
        if (word.size() < 4 || !(is_small(word[0]) || is_capital(word[0]))) {
            return false;
        }
        std::string mended(word);
        for (std::size_t i = 1; i < mended.size(); ++i) {
            const bool is_inside = i + 1 < mended.size() && is_small(mended[i + 1]);
            const bool is_stroke_in = mended[i] == '1' || (mended[i] == 'I' && is_small(word[0])); // McIntosh
            if (is_stroke_in && is_small(mended[i - 1]) && is_inside) {
                mended[i] = 'l';
            }
        }
        for (const std::string_view end : {"leve1", "sma11", "fu11", "mea1", "unti1", "bow1"}) {
            if (word == end) { // a figure behind a word is a note's
                std::replace(mended.begin(), mended.end(), '1', 'l');
            }
        }
        if (mended == "fiour" || mended == "Fiour") { // lists begin with it
            mended[1] = 'l';
        }
        const bool is_mended = mended != word;
        out_ += is_mended ? mended : "";
        return is_mended;
    }

    std::string_view line_;
    std::size_t at_ = 0;
    bool behind_number_ = false;
    bool has_figures_ = false;
    std::string out_;
};

} // namespace

MendedPrint mended_print(std::string_view line) {
    return PrintMender(line).read();
}

std::vector<std::string> spellings_before_print(std::string_view word) {
    constexpr auto confused = std::to_array<std::pair<std::string_view, std::string_view>>({{"c", "e"},
                                                                                            {"e", "c"},
                                                                                            {"n", "u"},
                                                                                            {"u", "n"},
                                                                                            {"l", "i"},
                                                                                            {"i", "l"},
                                                                                            {"h", "b"},
                                                                                            {"rn", "m"},
                                                                                            {"o", "e"}});
    constexpr std::size_t shortest = 5;
    constexpr std::size_t longest = 16;
    std::vector<std::string> spellings;
    if (word.size() < shortest || word.size() > longest) {
        return spellings;
    }
    for (const auto& [read, meant] : confused) {
        for (std::size_t at = word.find(read); at != std::string_view::npos; at = word.find(read, at + 1)) {
            std::string spelling(word);
            spelling.replace(at, read.size(), meant);
            spellings.push_back(std::move(spelling));
        }
    }
    return spellings;
}

} // namespace leavenwright
