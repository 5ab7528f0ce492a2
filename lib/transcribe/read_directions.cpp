#include "transcribe/read_directions.hpp"

#include "quantity/number.hpp"
#include "transcribe/kitchen_words.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/weigh_amount.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

namespace leavenwright {
namespace {

constexpr std::size_t most_steps = 60;

// The index of the first word with one of these beginnings; the number of tokens where there is none.
std::size_t first_of(const std::vector<LineToken>& tokens, std::initializer_list<std::string_view> stems) {
    const auto found = std::find_if(tokens.begin(), tokens.end(), [&](const LineToken& token) {
        return token.is_word() && std::any_of(stems.begin(), stems.end(), [&](std::string_view stem) {
                   return token.folded.starts_with(stem);
               });
    });
    return static_cast<std::size_t>(found - tokens.begin());
}

bool holds(const std::vector<LineToken>& tokens, std::initializer_list<std::string_view> stems) {
    return first_of(tokens, stems) < tokens.size();
}

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
                                                                                         {"days", "d"},
                                                                                         {"day", "d"}});
    for (const auto& [word, unit] : units) {
        if (token.is(word)) {
            return unit;
        }
    }
    return {};
}

class SentenceReader {
public:
    explicit SentenceReader(std::string_view sentence) : tokens_(line_tokens(sentence)) {}

    const std::vector<LineToken>& tokens() const { return tokens_; }

    /// The first time in the sentence, as the formula reads it.
    std::string time() const {
        for (std::size_t at = 0; at < tokens_.size(); ++at) {
            if (auto text = time_at(at); !text.empty()) {
                return text;
            }
            const bool is_over_night =
                tokens_[at].is("over") && at + 1 < tokens_.size() && tokens_[at + 1].is("night");
            if (tokens_[at].is("overnight") || is_over_night) {
                return "8 to 12 h";
            }
        }
        return {};
    }

    /// The first temperature between two bounds in Celsius.
    std::string temperature(double least_c, double most_c) const {
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

private:
    std::optional<double> number_at(std::size_t at, std::size_t& used) const {
        if (at >= tokens_.size()) {
            return std::nullopt;
        }
        used = 1;
        if (tokens_[at].is_number()) {
            return tokens_[at].value;
        }
        const auto next_is = [&](std::size_t index, std::string_view word) {
            return index < tokens_.size() && tokens_[index].is(word);
        };
        if (tokens_[at].is("half") && (next_is(at + 1, "an") || next_is(at + 1, "a"))) {
            used = 2;
            return 0.5;
        }
        double value = number_named(tokens_[at].folded);
        if (value == 0.0 && (tokens_[at].is("an") || tokens_[at].is("a"))) {
            value = 1.0;
        }
        if (value > 0.0 && next_is(at + 1, "and") && next_is(at + 2, "a") && next_is(at + 3, "half")) {
            used = 4;
            value += 0.5;
        }
        return value > 0.0 ? std::optional(value) : std::nullopt;
    }

    std::string time_at(std::size_t at) const {
        std::size_t used = 0;
        const auto least = number_at(at, used);
        if (!least || !(*least > 0.0) || *least > 1000.0) {
            return {};
        }
        at += used;
        std::optional<double> most;
        const bool is_range =
            at + 1 < tokens_.size() && (tokens_[at].is("-") || tokens_[at].is("to") || tokens_[at].is("or"));
        if (is_range) {
            most = number_at(at + 1, used);
            at += most ? 1 + used : 0U;
        }
        while (at < tokens_.size() &&
               (tokens_[at].is("-") || tokens_[at].is("more") || tokens_[at].is("full"))) {
            ++at;
        }
        const std::string_view unit = at < tokens_.size() ? time_unit(tokens_[at]) : std::string_view();
        if (unit.empty() || (most && !(*most > *least))) {
            return {};
        }
        std::string text = kitchen_number(*least);
        text += most ? " to " + kitchen_number(*most) : "";
        text += " " + std::string(unit);
        if (!most && unit == "h") { // "1 hour 30 minutes", "1 hour and 30 minutes"
            std::size_t next = at + 1;
            next += next < tokens_.size() && tokens_[next].is("and") ? 1U : 0U;
            const bool has_minutes = next + 1 < tokens_.size() && tokens_[next].is_number() &&
                                     tokens_[next].value > 0.0 && time_unit(tokens_[next + 1]) == "min";
            text += has_minutes ? " " + kitchen_number(tokens_[next].value) + " min" : "";
        }
        return text;
    }

    // The scale of a temperature: "F", "°F", "degrees F", "° F", "-450 F".
    char scale_behind(std::size_t at) const {
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

    std::vector<LineToken> tokens_;
};

class DirectionsReader {
public:
    std::vector<DirectionStep> read(std::span<const std::string> paragraphs) {
        for (const std::string& paragraph : paragraphs) {
            std::string_view rest = paragraph;
            while (!rest.empty() && steps_.size() < most_steps) {
                const std::size_t end = end_of_sentence(rest);
                take(rest.substr(0, end));
                rest.remove_prefix(std::min(end + 1, rest.size()));
            }
        }
        return std::move(steps_);
    }

private:
    // At a full stop before a space, a semicolon, a line's end, or before "then".
    static std::size_t end_of_sentence(std::string_view text) {
        for (std::size_t at = 0; at < text.size(); ++at) {
            const bool is_stop =
                (text[at] == '.' || text[at] == '!') && (at + 1 == text.size() || text[at + 1] == ' ');
            const std::string_view rest = text.substr(at, 10);
            const bool is_then = text[at] == ' ' && at > 12 &&
                                 (rest.starts_with(" then ") || rest.starts_with(" and bake ") ||
                                  rest.starts_with(" and let "));
            if (is_stop || is_then || text[at] == ';' || text[at] == '\n') {
                return at;
            }
        }
        return text.size();
    }

    void take(std::string_view sentence) {
        if (sentence.size() < 4 || sentence.size() > 1000) {
            return;
        }
        const SentenceReader reader(sentence);
        const auto& tokens = reader.tokens();
        constexpr double coolest_oven_c = 120.0;
        const std::string oven = reader.temperature(coolest_oven_c, 550.0);
        if (holds(tokens, {"preheat", "oven"}) && !oven.empty()) {
            oven_ = oven;
        }
        std::string time = reader.time();
        const std::string place = reader.temperature(-5.0, 50.0);
        const auto add = [&](std::string verb, std::string at) {
            std::string words(sentence);
            words.erase(0, std::min(words.find_first_not_of(' '), words.size()));
            steps_.push_back({.verb = std::move(verb),
                              .time = time,
                              .temperature = std::move(at),
                              .words = std::move(words)});
        };
        const bool is_shaping = holds(tokens, {"shape", "form", "mold", "mould"});
        if (holds(tokens, {"bake", "baking"}) && !holds(tokens, {"preheat", "before"}) &&
            (!time.empty() || !oven.empty())) {
            add("bake", oven.empty() ? oven_ : oven);
        } else if (holds(tokens, {"refrigerat", "fridge", "chill"}) && !time.empty()) {
            add("retard", place);
        } else if (holds(tokens,
                         {"rise", "rising", "double", "prove", "proof", "ferment", "raise", "light"}) &&
                   !time.empty()) {
            const bool is_shaped_before = first_of(tokens, {"shape", "form", "mold", "mould"}) <
                                          first_of(tokens, {"rise", "rising", "double"});
            was_shaped_ = was_shaped_ || is_shaped_before;
            add(was_shaped_ ? "proof" : "bulk", place);
        } else if (holds(tokens, {"boil", "simmer"}) && holds(tokens, {"each", "side", "bath", "bagel"}) &&
                   !time.empty()) {
            add("boil", {});
        } else if (holds(tokens, {"knead"}) && !time.empty()) {
            add("knead", {});
        } else if (holds(tokens, {"rest", "stand", "sit"}) && !time.empty()) {
            add("rest", place);
        } else if (is_shaping) {
            time.clear();
            add("shape", {});
        } else if (holds(tokens, {"divide"})) {
            time.clear();
            add("divide", {});
        }
        was_shaped_ = was_shaped_ || is_shaping;
    }

    std::vector<DirectionStep> steps_;
    std::string oven_;
    bool was_shaped_ = false;
};

} // namespace

std::vector<DirectionStep> read_directions(std::span<const std::string> paragraphs) {
    return DirectionsReader().read(paragraphs);
}

} // namespace leavenwright
