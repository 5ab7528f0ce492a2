#include "transcribe/line_tokens.hpp"

#include "diagnostic/diagnostic.hpp"
#include "quantity/number.hpp"
#include "source/unicode.hpp"
#include "transcribe/kitchen_words.hpp"
#include "transcribe/line_markup.hpp"
#include "transcribe/misread_print.hpp"
#include "transcribe/running_text.hpp"

#include <array>
#include <memory>
#include <utility>

namespace leavenwright {
namespace {

constexpr auto plain_marks = std::to_array<std::pair<std::string_view, std::string_view>>({
    {"\xC2\xA0", " "},                              // no-break space
    {"\xE2\x80\x89", " "},                          // thin space
    {"\xE2\x80\xAF", " "},                          // narrow no-break space
    {"\xE2\x80\x82", " "},                          // en space
    {"\xE2\x80\x83", " "},                          // em space
    {"\xE2\x80\x8B", ""},                           // zero-width space
    {"\xEF\xBB\xBF", ""},                           // byte order mark
    {"\xE2\x80\x90", "-"},                          // hyphen
    {"\xE2\x80\x91", "-"},                          // non-breaking hyphen
    {"\xE2\x80\x92", "-"},                          // figure dash
    {"\xE2\x80\x93", "-"},                          // en dash
    {"\xE2\x80\x94", " - "}, {"\xE2\x88\x92", "-"}, // minus
    {"\xE2\x81\x84", "/"},                          // fraction slash
    {"\xE2\x80\x98", "'"},   {"\xE2\x80\x99", "'"},    {"\xE2\x80\x9C", "\""}, {"\xE2\x80\x9D", "\""},
    {"\xC3\x97", " x "},     {"\xC2\xBA", "\xC2\xB0"}, // the ordinal sign where a degree is meant
});

constexpr auto bullets = std::to_array<std::string_view>({
    "\xE2\x80\xA2",
    "\xC2\xB7",
    "\xE2\x97\x8F",
    "\xE2\x96\xAA",
    "\xE2\x97\xA6",
    "\xE2\x80\xA3",
    "\xE2\x96\xA2",
    "\xE2\x96\xA1",
    "\xE2\x98\x90",
    "\xE2\x98\x91",
    "\xE2\x9C\x93",
    "\xE2\x97\x8B",
    "\xE2\x96\xA0",
});

bool is_digit(char byte) {
    return byte >= '0' && byte <= '9';
}

bool is_letter(char byte) {
    return (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z') ||
           static_cast<unsigned char>(byte) >= 0x80U;
}

std::string with_plain_marks(std::string_view line) {
    std::string out;
    out.reserve(line.size());
    for (std::size_t at = 0; at < line.size();) {
        if (static_cast<unsigned char>(line[at]) < 0x80U) {
            const bool is_gap = line[at] == '\t' || line[at] == '|' || line[at] == '\n' || line[at] == '\r';
            const char byte = is_gap ? ' ' : line[at];
            out += byte;
            ++at;
            continue;
        }
        const std::string_view rest = line.substr(at, 3);
        std::size_t used = 0;
        for (const auto& [from, to] : plain_marks) {
            if (rest.starts_with(from)) {
                out += to;
                used = from.size();
                break;
            }
        }
        if (used == 0) {
            used = character_length(line.substr(at, 4));
            out += line.substr(at, used);
        }
        at += used;
    }
    return out;
}

// Bytes of the bullet that begins `line`, the space behind it included; 0 if there is none.
std::size_t bullet_length(std::string_view line) {
    for (const std::string_view bullet : bullets) {
        if (line.starts_with(bullet)) {
            return bullet.size();
        }
    }
    if (line.size() > 1 && std::string_view("-*+>").find(line.front()) != std::string_view::npos &&
        (line[1] == ' ' || (line.front() == '-' && is_digit(line[1])))) {
        return 1;
    }
    if (line.starts_with(':')) { // below ";Dough" in a wiki
        return 1;
    }
    for (const std::string_view box : {"[ ]", "[x]", "[X]", "[]"}) {
        if (line.starts_with(box)) {
            return box.size();
        }
    }
    // "1. " and "1) " of a numbered list
    std::size_t end = 0;
    while (end < line.size() && end < 3 && is_digit(line[end])) {
        ++end;
    }
    const bool is_numbered =
        end > 0 && end + 1 < line.size() && (line[end] == '.' || line[end] == ')') && line[end + 1] == ' ';
    return is_numbered ? end + 1 : 0;
}

void trim(std::string& text) {
    const std::size_t end = text.find_last_not_of(" \r\n");
    text.erase(end == std::string::npos ? 0 : end + 1);
    text.erase(0, std::min(text.find_first_not_of(' '), text.size()));
}

// The tokens of one line, from left to right.
class Lexer {
public:
    explicit Lexer(std::string_view line) : line_(line) {}

    std::vector<LineToken> read() {
        while (at_ < line_.size()) {
            if (line_[at_] == ' ') {
                ++at_;
                is_glued_ = false;
                continue;
            }
            LineToken token;
            if (!read_number(token) && !read_word(token)) {
                token.text = line_.substr(at_, 1);
                token.folded = token.text;
                ++at_;
            }
            token.is_glued = is_glued_ && !tokens_.empty();
            push(std::move(token));
            is_glued_ = true;
        }
        return std::move(tokens_);
    }

private:
    // "half-pint" is a number and its measure.
    void push(LineToken token) {
        const std::size_t hyphen = token.text.find('-');
        const std::string_view written = token.text;
        std::string_view second = hyphen == std::string::npos ? written : written.substr(hyphen + 1);
        second.remove_prefix(second.starts_with("a-") ? 2 : 0); // "half-a-pint"
        const std::string many =
            token.is_word() ? token.folded.substr(0, token.folded.find(' ')) : std::string();
        if (hyphen == std::string::npos || !(fraction_named(many) > 0.0) ||
            !measure_named(second, fold_name(second))) {
            tokens_.push_back(std::move(token));
            return;
        }
        LineToken part = token;
        part.text = part.folded = many;
        tokens_.push_back(part);
        part.kind = LineToken::Kind::mark;
        part.is_glued = true;
        part.text = part.folded = "-";
        tokens_.push_back(part);
        part.kind = LineToken::Kind::word;
        part.text = second;
        part.folded = fold_name(second);
        tokens_.push_back(std::move(part));
    }

    // A fraction character or "3/4" at `at`; none where there is none or it is not less than 1.
    bool fraction_at(std::size_t at, double& value, std::size_t& length) const {
        const std::string_view rest = line_.substr(at, 16);
        const bool may_be =
            !rest.empty() && (is_digit(rest.front()) || static_cast<unsigned char>(rest.front()) >= 0xC2U);
        if (!may_be) {
            return false;
        }
        Diagnostics unused;
        const auto text = std::make_shared<SourceText>("", std::string(rest));
        const auto number = leavenwright::read_number({text, {0, rest.size()}, text->text()}, unused);
        const bool is_fraction =
            number && number->decimal.empty() && number->value < 1.0 && number->value > 0.0;
        if (is_fraction) {
            value = number->value;
            length = number->length;
        }
        return is_fraction;
    }

    bool read_number(LineToken& token) {
        const char first = line_[at_];
        double fraction = 0.0;
        std::size_t length = 0;
        const bool after_letter = is_glued_ && !tokens_.empty() && tokens_.back().is_word();
        if (after_letter && is_digit(first)) {
            return false;
        }
        if (fraction_at(at_, fraction, length)) {
            take_number(token, fraction, length, false);
            return true;
        }
        const bool begins =
            is_digit(first) || (first == '.' && at_ + 1 < line_.size() && is_digit(line_[at_ + 1]));
        if (!begins) {
            return false;
        }
        bool is_whole = false;
        length = decimal_length(is_whole);
        double value = decimal_value(line_.substr(at_, length));
        if (is_whole) {
            std::size_t gap = 0;
            for (const std::string_view between : {"", " ", "-", " & ", " and ", "&"}) {
                const std::size_t next = at_ + length + between.size();
                std::size_t more = 0;
                const bool fits =
                    line_.substr(at_ + length).starts_with(between) && fraction_at(next, fraction, more);
                const bool is_character = fits && !is_digit(line_[next]);
                if (fits && (!between.empty() || is_character)) {
                    gap = between.size() + more;
                    value += fraction;
                    break;
                }
            }
            length += gap;
            take_number(token, value, length, gap == 0);
            return true;
        }
        take_number(token, value, length, true);
        return true;
    }

    void take_number(LineToken& token, double value, std::size_t length, bool is_decimal) {
        token.kind = LineToken::Kind::number;
        token.text = line_.substr(at_, length);
        token.value = value;
        token.is_decimal = is_decimal;
        at_ += length;
    }

    std::size_t digits_from(std::size_t at) const {
        std::size_t end = at;
        while (end < line_.size() && is_digit(line_[end])) {
            ++end;
        }
        return end - at;
    }

    // "500", "1.5", "1,5" and "1,000"; what is longer than any amount is cut.
    std::size_t decimal_length(bool& is_whole) const {
        const std::size_t whole = digits_from(at_);
        const std::size_t mark = at_ + whole;
        is_whole = true;
        if (mark < line_.size() && (line_[mark] == '.' || line_[mark] == ',')) {
            const std::size_t decimals = digits_from(mark + 1);
            if (decimals > 0) {
                is_whole = false;
                const std::size_t end = mark + 1 + decimals; // "2,500.5"
                const bool goes_on =
                    line_[mark] == ',' && decimals == 3 && end < line_.size() && line_[end] == '.';
                const std::size_t more = goes_on ? digits_from(end + 1) : 0;
                return whole + 1 + decimals + (more > 0 ? 1 + more : 0);
            }
        }
        return whole;
    }

    static double decimal_value(std::string_view text) {
        const std::size_t comma = text.find(',');
        const std::size_t point = std::min(text.find('.'), text.size());
        const bool is_thousands = comma != std::string_view::npos && point > comma && point - comma == 4 &&
                                  comma > 0 && comma <= 3 && text.front() != '0';
        std::string digits(text.substr(0, 40));
        if (comma < digits.size()) {
            digits[comma] = '.';
            if (is_thousands) {
                digits.erase(comma, 1);
            }
        }
        Diagnostics unused;
        const auto source = std::make_shared<SourceText>("", digits);
        const auto number = leavenwright::read_number({source, {0, digits.size()}, source->text()}, unused);
        return number ? number->value : 0.0;
    }

    // Whether the word down to `end` is the measure of the number before it.
    bool is_measure(std::size_t end) const {
        const std::string_view word = line_.substr(at_, end - at_);
        return !tokens_.empty() && tokens_.back().is_number() && measure_named(word, fold_name(word));
    }

    bool read_word(LineToken& token) {
        std::size_t end = at_;
        while (end < line_.size()) {
            const char byte = line_[end];
            const bool joins = (byte == '-' || byte == '\'') && end > at_ && end + 1 < line_.size() &&
                               (is_letter(line_[end + 1]) || is_digit(line_[end + 1]));
            if (joins && byte == '-' && is_digit(line_[end + 1]) && is_measure(end)) {
                break; // "900 g-1 kg"
            }
            double value = 0.0;
            std::size_t length = 0;
            const bool is_fraction =
                static_cast<unsigned char>(byte) >= 0xC2U && fraction_at(end, value, length);
            const bool belongs = is_letter(byte) || joins || (end > at_ && is_digit(byte));
            if (!belongs || is_fraction) {
                break;
            }
            ++end;
        }
        if (end == at_) {
            return false;
        }
        token.kind = LineToken::Kind::word;
        token.text = line_.substr(at_, end - at_);
        token.folded = fold_name(token.text);
        if (token.folded == "\xC2\xB0" || token.folded.empty()) {
            token.folded = token.text;
        }
        at_ = end;
        return true;
    }

    std::string_view line_;
    std::size_t at_ = 0;
    bool is_glued_ = false;
    std::vector<LineToken> tokens_;
};

} // namespace

bool LineToken::is_any(std::initializer_list<std::string_view> words) const {
    return std::any_of(words.begin(), words.end(), [this](std::string_view word) { return is(word); });
}

std::string_view without_bullet(std::string_view line) {
    const auto trim_view = [&] {
        const std::size_t begin = std::min(line.find_first_not_of(" \t"), line.size());
        const std::size_t end = line.find_last_not_of(" \t\r\n");
        line = end == std::string_view::npos ? std::string_view() : line.substr(begin, end + 1 - begin);
    };
    trim_view();
    for (std::size_t length = bullet_length(line); length > 0; length = bullet_length(line)) {
        const bool was_number = is_digit(line.front());
        line.remove_prefix(length);
        trim_view();
        if (was_number) {
            break;
        }
    }
    return line;
}

bool begins_with_letter_for_one(std::string_view line) {
    line = without_bullet(line);
    if (line.size() < 3 || std::string_view("Ili").find(line.front()) == std::string_view::npos) {
        return false;
    }
    const std::string_view rest = line.substr(1);
    const bool is_fraction = rest.starts_with("-2 ") || rest.starts_with("/2 ") || rest.starts_with("-4 ") ||
                             rest.starts_with("/4 ") || rest.starts_with("\xC2\xBC") ||
                             rest.starts_with("\xC2\xBD") || rest.starts_with("\xC2\xBE");
    if (is_fraction) {
        return true;
    }
    if (rest.front() != ' ') {
        return false;
    }
    const std::string_view words = rest.substr(1);
    const bool is_mixed =
        words.size() > 2 && is_digit(words[0]) && (words[1] == '/' || words[1] == '-') && is_digit(words[2]);
    constexpr std::size_t longest = 24;
    const std::string_view word =
        words.substr(0, std::min(words.substr(0, longest).find_first_of(" ."), longest));
    const std::string folded = fold_name(word);
    return is_mixed || folded == "yeast" || folded == "egg" ||
           (folded != "can" && measure_named(word, folded));
}

std::string plain_line(std::string_view line) {
    const bool is_broken = line.find('\n') != std::string_view::npos;
    const std::string_view whole = without_bullet(line);
    std::string text =
        with_plain_marks(without_markup(is_broken ? joined_at_margins(whole) : without_map(whole)));
    trim(text);
    // "1 cup puree *not pie filling": a remark; a star that closes later is emphasis.
    const std::size_t star = text.find(" *");
    if (star != std::string::npos && star + 2 < text.size() && is_letter(text[star + 2]) &&
        text.find('*', star + 2) == std::string::npos) {
        text = text.substr(0, star) + " (" + text.substr(star + 2) + ")";
    }
    // Emphasis: a mark that is doubled or stands at an end of the line.
    std::string out;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const char byte = text[at];
        const bool is_mark = byte == '*' || byte == '_' || byte == '`';
        if (!is_mark) {
            out += byte;
        }
    }
    trim(out);
    if (begins_with_letter_for_one(out)) {
        out.front() = '1';
    }
    return mended_print(out).text;
}

std::vector<LineToken> line_tokens(std::string_view line) {
    return Lexer(line).read();
}

} // namespace leavenwright
