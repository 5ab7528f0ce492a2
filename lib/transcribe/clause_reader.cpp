#include "transcribe/clause_reader.hpp"

#include "quantity/number.hpp"
#include "transcribe/kitchen_number.hpp"
#include "transcribe/weigh_amount.hpp"

#include <array>
#include <cmath>
#include <span>
#include <utility>

namespace leavenwright {
namespace {

std::string_view time_unit(const LineToken& token) {
    constexpr auto units = std::to_array<std::pair<std::string_view, std::string_view>>({{"minutes", "min"},
                                                                                         {"minute", "min"},
                                                                                         {"min", "min"},
                                                                                         {"mins", "min"},
                                                                                         {"hours", "h"},
                                                                                         {"hour", "h"},
                                                                                         {"hrs", "h"},
                                                                                         {"hr", "h"},
                                                                                         {"h", "h"},
                                                                                         {"seconds", "s"},
                                                                                         {"second", "s"},
                                                                                         {"sec", "s"},
                                                                                         {"secs", "s"},
                                                                                         {"days", "d"},
                                                                                         {"day", "d"}});
    for (const auto& [word, unit] : units) {
        if (token.is(word)) {
            return unit;
        }
    }
    return {};
}

// Gas marks in Celsius, as British oven tables print them (common practice, no source).
constexpr auto gas_marks_c = std::to_array<int>({0, 140, 150, 170, 180, 190, 200, 220, 230, 240});

} // namespace

std::string ClauseReader::time() const {
    bool is_over_night = false;
    for (std::size_t at = 0; at < tokens_.size(); ++at) {
        if (auto text = time_at(at); !text.empty()) {
            return text;
        }
        is_over_night = is_over_night || tokens_[at].is("overnight") ||
                        (tokens_[at].is("over") && next_is(at + 1, "night"));
    }
    return is_over_night ? "8 to 12 h" : "";
}

std::string ClauseReader::temperature(double least_c, double most_c) const {
    for (std::size_t at = 0; at < tokens_.size(); ++at) {
        if (!tokens_[at].is_number()) {
            continue;
        }
        const char scale = scale_behind(at + 1);
        const double degrees = tokens_[at].value;
        const double celsius = scale == 'F' ? (degrees - 32.0) * 5.0 / 9.0 : degrees;
        if (scale != '\0' && celsius >= least_c && celsius <= most_c) {
            return exact_decimal(degrees, 0) + " " + scale;
        }
    }
    return {};
}

std::string ClauseReader::oven() const {
    constexpr double coolest_c = 120.0;
    constexpr double hottest_c = 550.0;
    if (auto said = temperature(coolest_c, hottest_c); !said.empty()) {
        return said;
    }
    for (std::size_t at = 0; at < tokens_.size(); ++at) {
        const std::size_t mark = at + (next_is(at + 1, "mark") ? 2U : 1U);
        if (tokens_[at].is("gas") && mark < tokens_.size() && tokens_[mark].is_number()) {
            const double number = tokens_[mark].value;
            if (number >= 1.0 && number < gas_marks_c.size() && number == std::floor(number)) {
                return std::to_string(gas_marks_c[static_cast<std::size_t>(number)]) + " C";
            }
        }
    }
    // no kitchen's oven bakes bread at 300 C, nor at 250 F
    constexpr double least_f = 300.0;
    constexpr double most_c = 250.0;
    for (std::size_t at = 0; at < tokens_.size(); ++at) {
        const LineToken& token = tokens_[at];
        const double number = token.value;
        const bool is_degrees = token.is_number() && std::fmod(number, 5.0) == 0.0 && number >= 140.0 &&
                                number <= 550.0 && (number <= most_c || number >= least_f);
        const bool is_other =
            at + 1 < tokens_.size() && (tokens_[at + 1].is("g") || tokens_[at + 1].is("grams") ||
                                        tokens_[at + 1].is("ml") || !time_unit(tokens_[at + 1]).empty());
        const bool is_scaled = scale_behind(at + 1) != '\0'; // 205 F inside a loaf is no oven
        if (is_degrees && !is_other && !is_scaled) {
            return exact_decimal(number, 0) + (number >= least_f ? " F" : " C");
        }
    }
    return {};
}

std::string ClauseReader::time_at(std::size_t at) const {
    const std::span<const LineToken> all(tokens_);
    const bool is_repeat = at > 0 && (tokens_[at - 1].is("every") || tokens_[at - 1].is("after"));
    const auto least = read_kitchen_number(all.subspan(at));
    if (is_repeat || !least || !(least->value > 0.0) || least->value > 1000.0) {
        return {};
    }
    at += least->length;
    double most = 0.0;
    if (next_is(at, "-") || next_is(at, "to") || next_is(at, "or")) {
        const auto second = at + 1 < all.size() ? read_kitchen_number(all.subspan(at + 1)) : std::nullopt;
        most = second ? second->value : 0.0;
        at += second ? 1 + second->length : 0U;
    }
    while (next_is(at, "-") || next_is(at, "more") || next_is(at, "full") || next_is(at, "further")) {
        ++at;
    }
    const std::string_view unit = at < tokens_.size() ? time_unit(tokens_[at]) : std::string_view();
    const bool is_moment = next_is(at + 1, "before") || next_is(at + 1, "ahead"); // "2 hours before baking"
    if (unit.empty() || is_moment || (most != 0.0 && !(most > least->value))) {
        return {};
    }
    std::string text = kitchen_number(least->value);
    text += most > 0.0 ? " to " + kitchen_number(most) : "";
    text += " " + std::string(unit);
    if (most == 0.0 && unit == "h") { // "1 hour 30 minutes", "1 hour and 30 minutes"
        const std::size_t next = at + (next_is(at + 1, "and") ? 2U : 1U);
        if (next_is(at + 1, "and") && next_is(at + 2, "a") && next_is(at + 3, "half")) {
            return kitchen_number(least->value + 0.5) + " h";
        }
        const bool has_minutes = next + 1 < tokens_.size() && tokens_[next].is_number() &&
                                 tokens_[next].value > 0.0 && time_unit(tokens_[next + 1]) == "min";
        text += has_minutes ? " " + kitchen_number(tokens_[next].value) + " min" : "";
    }
    return text;
}

// The scale of a temperature: "F", "°F", "degrees F", "° F", "-450 F".
char ClauseReader::scale_behind(std::size_t at) const {
    for (std::size_t ahead = 0; ahead < 5 && at + ahead < tokens_.size(); ++ahead) {
        const LineToken& token = tokens_[at + ahead];
        const std::string_view text = token.text;
        const bool is_degree = text == "\xC2\xB0" || token.is("degrees") || token.is("degree") ||
                               token.is("deg") || token.is(".");
        if (text == "F" ||
            text == "\xC2\xB0"
                    "F" ||
            text == "f" || token.is("fahrenheit")) {
            return 'F';
        }
        if (text == "C" ||
            text == "\xC2\xB0"
                    "C" ||
            token.is("celsius") || token.is("centigrade")) {
            return 'C';
        }
        const bool continues = is_degree || token.is("-") || token.is("to") || token.is_number();
        if (!continues) {
            return '\0';
        }
    }
    return '\0';
}

} // namespace leavenwright
