#include "transcribe/kitchen_number.hpp"

#include "transcribe/kitchen_words.hpp"

#include <cmath>
#include <string_view>

namespace leavenwright {
namespace {

class NumberReader {
public:
    explicit NumberReader(std::span<const LineToken> tokens) : tokens_(tokens) {}

    std::optional<KitchenNumber> read() {
        const auto value = read_number();
        return value ? std::optional(KitchenNumber{.value = *value, .length = at_}) : std::nullopt;
    }

private:
    const LineToken* peek(std::size_t ahead = 0) const {
        return at_ + ahead < tokens_.size() ? &tokens_[at_ + ahead] : nullptr;
    }
    bool next_is(std::string_view word, std::size_t ahead = 0) const {
        const LineToken* token = peek(ahead);
        return token != nullptr && token->is(word);
    }

    // "one-half", "two-thirds" are one token each.
    double joined_fraction(const LineToken& token) const {
        const std::size_t space = token.folded.find(' ');
        if (!token.is_word() || space == std::string::npos) {
            return 0.0;
        }
        const double many = number_named(std::string_view(token.folded).substr(0, space));
        return many * fraction_named(std::string_view(token.folded).substr(space + 1));
    }

    void skip_article() {
        if ((next_is("a") || next_is("an")) && peek(1) != nullptr) {
            ++at_;
        }
    }

    std::optional<double> read_word_number() {
        const LineToken& first = *peek();
        if (const double joined = joined_fraction(first); joined > 0.0) {
            ++at_;
            skip_of_article();
            return joined;
        }
        if (const double fraction = fraction_named(first.folded); fraction > 0.0) {
            ++at_;
            skip_of_article();
            return dozens(fraction);
        }
        double number = number_named(first.folded);
        const bool is_article = first.is("a") || first.is("an");
        const LineToken* second = peek(1); // "a little", "un peu de", "un-bleached"
        const bool is_very_little =
            second != nullptr && second->is("very") && peek(2) != nullptr && says_little(peek(2)->folded);
        if (second != nullptr &&
            (is_very_little || says_little(second->folded) || (first.is("un") && second->is("-")))) {
            return std::nullopt;
        }
        if (number == 0.0 && !is_article) {
            return std::nullopt;
        }
        number = is_article ? 1.0 : number;
        ++at_;
        if (const LineToken* next = peek(); next != nullptr && next->is_word()) {
            if (const double fraction = fraction_named(next->folded); fraction > 0.0) {
                ++at_;
                skip_of_article();
                return number * fraction;
            }
            if (is_article && number_named(next->folded) >= 2.0) {
                number = number_named(next->folded);
                ++at_;
            }
        }
        return number;
    }

    void skip_of_article() {
        if (next_is("of") && (next_is("a", 1) || next_is("an", 1))) {
            at_ += 2;
        } else {
            skip_article();
        }
    }

    std::optional<double> read_number() {
        const LineToken* token = peek();
        if (token == nullptr) {
            return std::nullopt;
        }
        if (token->is_number()) {
            const double value = token->value;
            ++at_;
            return with_half(dozens(value));
        }
        const auto number = token->is_word() ? read_word_number() : std::nullopt;
        return number ? std::optional(with_half(*number)) : std::nullopt;
    }

    // "2 dozen", "1 doz."
    double dozens(double number) {
        if (!next_is("dozen") && !next_is("doz")) {
            return number;
        }
        ++at_;
        at_ += next_is(".") ? 1U : 0U;
        return 12.0 * number;
    }

    // "two and a half", "one and one-half", "3 -1/2"
    double with_half(double value) {
        const LineToken* behind = next_is("-") ? peek(1) : nullptr;
        if (behind != nullptr && behind->is_number() && behind->value > 0.0 && behind->value < 1.0 &&
            value >= 1.0 && value == std::floor(value)) { // "3 -1/2 cups"
            at_ += 2;
            return value + behind->value;
        }
        if (!next_is("and") || peek(1) == nullptr) {
            return value;
        }
        std::size_t ahead = 1;
        if (next_is("a", 1) || next_is("one", 1)) {
            ahead = 2;
        }
        const LineToken* fraction = peek(ahead);
        if (fraction == nullptr) {
            return value;
        }
        const double part = ahead == 2 ? fraction_named(fraction->folded) : joined_fraction(*fraction);
        if (part > 0.0) {
            at_ += ahead + 1;
            return value + part;
        }
        return value;
    }

    std::span<const LineToken> tokens_;
    std::size_t at_ = 0;
};

} // namespace

std::optional<KitchenNumber> read_kitchen_number(std::span<const LineToken> tokens) {
    return NumberReader(tokens).read();
}

} // namespace leavenwright
