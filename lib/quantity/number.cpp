#include "quantity/number.hpp"

#include <array>
#include <charconv>
#include <cmath>
#include <cstdlib>
#include <limits>

namespace leavenwright {
namespace {

struct Vulgar {
    std::string_view text;
    double value;
};

constexpr auto vulgar_fractions = std::to_array<Vulgar>({
    {"\xC2\xBC", 1.0 / 4.0},
    {"\xC2\xBD", 1.0 / 2.0},
    {"\xC2\xBE", 3.0 / 4.0},
    {"\xE2\x85\x90", 1.0 / 7.0},
    {"\xE2\x85\x91", 1.0 / 9.0},
    {"\xE2\x85\x92", 1.0 / 10.0},
    {"\xE2\x85\x93", 1.0 / 3.0},
    {"\xE2\x85\x94", 2.0 / 3.0},
    {"\xE2\x85\x95", 1.0 / 5.0},
    {"\xE2\x85\x96", 2.0 / 5.0},
    {"\xE2\x85\x97", 3.0 / 5.0},
    {"\xE2\x85\x98", 4.0 / 5.0},
    {"\xE2\x85\x99", 1.0 / 6.0},
    {"\xE2\x85\x9A", 5.0 / 6.0},
    {"\xE2\x85\x9B", 1.0 / 8.0},
    {"\xE2\x85\x9C", 3.0 / 8.0},
    {"\xE2\x85\x9D", 5.0 / 8.0},
    {"\xE2\x85\x9E", 7.0 / 8.0},
});

constexpr std::string_view fraction_slash = "\xE2\x81\x84";

bool is_digit(char byte) {
    return byte >= '0' && byte <= '9';
}

std::size_t digits_at(std::string_view text, std::size_t at) {
    std::size_t end = at;
    while (end < text.size() && is_digit(text[end])) {
        ++end;
    }
    return end - at;
}

// Bytes of the decimal that begins `text`, 0 if none does.
std::size_t decimal_length(std::string_view text) {
    const std::size_t whole = digits_at(text, 0);
    std::size_t end = whole;
    if (end < text.size() && text[end] == '.') {
        const std::size_t decimals = digits_at(text, end + 1);
        if (whole + decimals == 0) {
            return 0;
        }
        end += 1 + decimals;
    }
    if (end == 0) {
        return 0;
    }
    if (end < text.size() && (text[end] == 'e' || text[end] == 'E')) {
        std::size_t exponent = end + 1;
        if (exponent < text.size() && (text[exponent] == '+' || text[exponent] == '-')) {
            ++exponent;
        }
        const std::size_t digits = digits_at(text, exponent);
        end = digits > 0 ? exponent + digits : end;
    }
    return end;
}

double to_double(std::string_view text) {
    double value = 0.0;
    const auto result = std::from_chars(text.data(), text.data() + text.size(), value);
    if (result.ec == std::errc::result_out_of_range) {
        return std::strtod(std::string(text).c_str(), nullptr); // 0 or infinity, whichever is meant
    }
    return value;
}

struct FractionText {
    double value = 0.0;
    std::size_t length = 0;
};

// "3/4" or a vulgar-fraction character at the beginning of `text`.
FractionText fraction_at(std::string_view text) {
    const bool may_be_vulgar = !text.empty() && (static_cast<unsigned char>(text.front()) & 0x80U) != 0U;
    for (const Vulgar& vulgar : vulgar_fractions) {
        if (may_be_vulgar && text.starts_with(vulgar.text)) {
            return {vulgar.value, vulgar.text.size()};
        }
    }
    const std::size_t above = digits_at(text, 0);
    if (above == 0 || above > 6) {
        return {};
    }
    std::size_t slash = 0;
    if (above < text.size() && text[above] == '/') {
        slash = 1;
    } else if (text.substr(above).starts_with(fraction_slash)) {
        slash = fraction_slash.size();
    }
    const std::size_t below = slash > 0 ? digits_at(text, above + slash) : 0;
    if (below == 0 || below > 6) {
        return {};
    }
    const double divisor = to_double(text.substr(above + slash, below));
    if (divisor == 0.0) {
        return {};
    }
    return {to_double(text.substr(0, above)) / divisor, above + slash + below};
}

std::size_t number_like_length(std::string_view text) {
    const std::size_t end = text.find_first_not_of("0123456789.,'_-+");
    return std::max<std::size_t>(end == std::string_view::npos ? text.size() : end, 1);
}

void report_not_a_number(const SourcedText& place, Diagnostics& diagnostics) {
    const std::string_view text = place.text;
    if (!text.empty() && (text.front() == '-' || text.starts_with("\xE2\x88\x92"))) {
        diagnostics.error(Code::amount_not_positive, place, in_quotes(text) + " is less than nothing",
                          "write it without the minus sign, or leave it out");
        return;
    }
    diagnostics.error(Code::number_unreadable, place, "no number in " + in_quotes(text),
                      "write a number first, then its unit: 650 g, 1 1/2 cups, 68%");
}

// Scientific notation of `value` with the fewest digits: digits and a power of ten.
struct Digits {
    std::string digits; // without the point
    int exponent = 0;   // value = 0.DIGITS x 10^exponent
};

Digits shortest_digits(double value) {
    std::array<char, 32> buffer{};
    const auto end =
        std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::scientific);
    const std::string_view text(buffer.data(), static_cast<std::size_t>(end.ptr - buffer.data()));
    const std::size_t mark = text.find('e');
    Digits result;
    for (const char byte : text.substr(0, mark)) {
        if (is_digit(byte)) {
            result.digits.push_back(byte);
        }
    }
    std::string_view exponent = text.substr(mark + 1);
    if (exponent.front() == '+') {
        exponent.remove_prefix(1);
    }
    std::from_chars(exponent.data(), exponent.data() + exponent.size(), result.exponent);
    ++result.exponent;
    return result;
}

} // namespace

double ReadNumber::scaled(int exponent) const {
    if (decimal.empty() || exponent == 0) {
        return value * std::pow(10.0, exponent);
    }
    const std::size_t mark = decimal.find_first_of("eE");
    int own = 0;
    if (mark != std::string_view::npos) {
        std::string_view digits = decimal.substr(mark + 1);
        if (digits.front() == '+') {
            digits.remove_prefix(1);
        }
        const auto result = std::from_chars(digits.data(), digits.data() + digits.size(), own);
        if (result.ec != std::errc() || own > 400 || own < -400) {
            return value * std::pow(10.0, exponent);
        }
    }
    return to_double(std::string(decimal.substr(0, mark)) + "e" + std::to_string(own + exponent));
}

std::optional<ReadNumber> read_number(const SourcedText& place, Diagnostics& diagnostics) {
    const std::string_view text = place.text;
    if (const FractionText fraction = fraction_at(text); fraction.length > 0) {
        return ReadNumber{fraction.value, {}, fraction.length};
    }
    const std::size_t length = decimal_length(text);
    if (length == 0) {
        report_not_a_number(place, diagnostics);
        return std::nullopt;
    }
    const std::string_view rest = text.substr(length);
    const bool has_comma = rest.size() > 1 && rest.front() == ',' && is_digit(rest[1]);
    if (has_comma) {
        const std::size_t whole = length + number_like_length(rest);
        std::string with_point(text.substr(0, whole));
        with_point[length] = '.';
        if (const std::size_t thousands = with_point.find('.'); thousands < length) { // "1.000,5"
            with_point.erase(thousands, 1);
        }
        std::string without(text.substr(0, whole));
        without.erase(length, 1);
        const bool may_be_thousands = whole == length + 4;
        diagnostics.error(
            Code::number_comma, place.part(0, whole), in_quotes(text.substr(0, whole)) + " has a comma in it",
            may_be_thousands
                ? "write " + without + " for thousands, " + with_point + " for decimals"
                : "write decimals with a point, " + with_point + ", and thousands without a mark");
        return std::nullopt;
    }
    ReadNumber number{to_double(text.substr(0, length)), text.substr(0, length), length};
    if (!std::isfinite(number.value)) {
        diagnostics.error(Code::amount_too_large, place.part(0, length),
                          in_quotes(text.substr(0, length)) + " is too large a number",
                          "a dough weighs grams or kilograms: check the number");
        return std::nullopt;
    }
    // A mixed number: whole digits, perhaps a space, then a fraction.
    const bool is_whole = digits_at(text, 0) == length;
    const std::size_t gap = rest.starts_with(' ') ? 1 : 0;
    const FractionText fraction = is_whole ? fraction_at(rest.substr(gap)) : FractionText{};
    const bool is_vulgar = fraction.length > 0 && !is_digit(rest.substr(gap).front());
    if (fraction.length > 0 && (gap == 1 || is_vulgar) && fraction.value < 1.0) {
        return ReadNumber{number.value + fraction.value, {}, length + gap + fraction.length};
    }
    return number;
}

std::string exact_decimal(double value, int exponent) {
    if (value == 0.0) {
        return "0";
    }
    const bool is_negative = value < 0.0;
    Digits number = shortest_digits(std::abs(value));
    number.exponent += exponent;
    std::string text;
    const auto count = static_cast<int>(number.digits.size());
    if (number.exponent <= 0) {
        text = "0." + std::string(static_cast<std::size_t>(-number.exponent), '0') + number.digits;
    } else if (number.exponent >= count) {
        text = number.digits + std::string(static_cast<std::size_t>(number.exponent - count), '0');
    } else {
        const auto point = static_cast<std::size_t>(number.exponent);
        text = number.digits.substr(0, point) + "." + number.digits.substr(point);
    }
    if (text.find('.') != std::string::npos) {
        text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.') {
            text.pop_back();
        }
    }
    return is_negative ? "-" + text : text;
}

double without_dust(double value, int digits) {
    std::array<char, 40> buffer{};
    const auto end = std::to_chars(buffer.data(), buffer.data() + buffer.size(), value,
                                   std::chars_format::scientific, digits - 1);
    return to_double({buffer.data(), static_cast<std::size_t>(end.ptr - buffer.data())});
}

double exact_shift(double value, int exponent) {
    return to_double(exact_decimal(value, exponent));
}

} // namespace leavenwright
