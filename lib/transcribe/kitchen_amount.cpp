#include "transcribe/kitchen_amount.hpp"

#include "transcribe/kitchen_number.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace leavenwright {
namespace {

class AmountReader {
public:
    explicit AmountReader(std::span<const LineToken> tokens) : tokens_(tokens) {}

    std::optional<KitchenAmount> read() {
        auto amount = read_one();
        if (!amount) {
            return std::nullopt;
        }
        read_range_of_measures(*amount);
        add_more(*amount);
        amount->length = at_;
        return amount;
    }

private:
    const LineToken* peek(std::size_t ahead = 0) const {
        return at_ + ahead < tokens_.size() ? &tokens_[at_ + ahead] : nullptr;
    }
    bool next_is(std::string_view word, std::size_t ahead = 0) const {
        const LineToken* token = peek(ahead);
        return token != nullptr && token->is(word);
    }
    void skip_stop() {
        if (next_is(".")) {
            ++at_;
        }
    }

    std::optional<double> read_number() {
        const auto number = at_ < tokens_.size() ? read_kitchen_number(tokens_.subspan(at_)) : std::nullopt;
        at_ += number ? number->length : 0U;
        return number ? std::optional(number->value) : std::nullopt;
    }

    bool at_range_mark() const { return next_is("-") || next_is("to") || next_is("or"); }

    std::optional<KitchenAmount> read_one() {
        KitchenAmount amount;
        skip_fillers(amount);
        const bool is_few = next_is("few") || next_is("several") || (next_is("a") && next_is("few", 1));
        if (is_few) {
            at_ += next_is("a") ? 2U : 1U;
            amount.number = 3.0;
            amount.least = 2.0;
            amount.most = 5.0;
            amount.is_vague = true;
        } else {
            const auto number = read_number();
            if (!number || !(*number > 0.0)) {
                return std::nullopt;
            }
            amount.number = amount.least = amount.most = *number;
            read_range(amount);
        }
        read_measure(amount);
        const double other = next_is("or") && next_is("of", 2) ? number_named(peek(1)->folded) : 0.0;
        if (other > amount.most && other <= 3.0) { // "a spoonful or two of rose water"
            amount.most = other;
            amount.number = (amount.least + amount.most) / 2.0;
            at_ += 2;
        }
        if (next_is("or") && peek(1) != nullptr && peek(1)->is_any({"more", "less", "so", "thereabouts"})) {
            constexpr double spread = 0.25; // common practice, no source
            amount.least *= peek(1)->is("more") ? 1.0 : 1.0 - spread;
            amount.most *= peek(1)->is("less") ? 1.0 : 1.0 + spread;
            amount.is_vague = true;
            at_ += 2; // "one pint or more"
        }
        return amount;
    }

    void skip_fillers(KitchenAmount& amount) {
        const bool is_circa = next_is("c") && next_is(".", 1) && peek(2) != nullptr && peek(2)->is_number();
        at_ += is_circa && at_ == 0 ? 2U : 0U; // "c. 450 g"
        for (const LineToken* token = peek(); token != nullptr && token->is_word(); token = peek()) {
            const bool is_article = token->is("a") || token->is("an");
            if (const auto fullness = fullness_named(token->folded);
                fullness && size_named(token->folded).empty()) {
                fill(amount, *fullness);
            } else if (is_article || !is_filler_word(token->folded)) {
                break;
            }
            ++at_;
            skip_stop();
        }
    }

    void fill(KitchenAmount& amount, const Fullness& fullness) {
        fullness_ = fullness;
        amount.is_vague = true;
    }

    void read_range(KitchenAmount& amount) {
        const std::size_t before = at_;
        if (!at_range_mark()) {
            return;
        }
        ++at_;
        skip_article_of_range();
        const auto most = read_number();
        if (!most || !(*most > amount.least)) {
            at_ = before;
            return;
        }
        const bool is_tight =
            tokens_[before].is("-") && tokens_[before].is_glued && tokens_[at_ - 1].is_glued;
        if (is_tight && is_common_fraction(amount.least, *most)) {
            amount.hyphen = is_behind_one()    ? KitchenAmount::Hyphen::likely_fraction
                            : is_behind_many() ? KitchenAmount::Hyphen::none
                                               : KitchenAmount::Hyphen::maybe_fraction;
        }
        set_range(amount, *most);
    }

    static bool is_common_fraction(double above, double below) {
        return (above == 1.0 && (below == 2.0 || below == 3.0 || below == 4.0 || below == 8.0)) ||
               (above == 2.0 && below == 3.0) || (above == 3.0 && below == 4.0);
    }

    // Measures that are written out tell one from many; "tsp." does not.
    bool is_behind_measure() const {
        constexpr std::size_t shortest_word = 3;
        const LineToken* token = peek();
        return token != nullptr && token->is_word() && token->folded.size() >= shortest_word &&
               !next_is(".", 1) && measure_named(token->text, token->folded);
    }
    bool is_behind_many() const { return is_behind_measure() && peek()->folded.ends_with('s'); }
    bool is_behind_one() const {
        constexpr auto whole_words = std::to_array<std::string_view>(
            {"cup", "cupful", "teaspoon", "teaspoonful", "tablespoon", "tablespoonful", "pint", "quart",
             "pound", "ounce", "cake", "teacup", "teacupful", "gallon", "package", "yeast"});
        const LineToken* token = peek();
        return token != nullptr && std::any_of(whole_words.begin(), whole_words.end(),
                                               [&](std::string_view word) { return token->is(word); });
    }

    void skip_article_of_range() {
        if (next_is("up") && next_is("to", 1)) {
            at_ += 2;
        }
    }

    static void set_range(KitchenAmount& amount, double most) {
        amount.most = most;
        amount.number = (amount.least + most) / 2.0;
        amount.is_range = true;
    }

    // Words between the number and the measure, then the measure.
    void read_measure(KitchenAmount& amount) {
        if (next_is("-") && peek(1) != nullptr && peek(1)->is_word() && peek(1)->is_glued) {
            ++at_; // "8-ounce"
        }
        const bool is_times = next_is("x") && peek(1) != nullptr && peek(1)->is_number();
        if ((is_times || (peek() != nullptr && peek()->is_number())) && read_times(amount, is_times)) {
            return;
        }
        if (next_is("%")) {
            ++at_;
            amount.measure.kind = Measure::Kind::percent;
            amount.measure.name = "%";
            amount.measure.is_formula_unit = true;
            return;
        }
        if (next_is("in") && next_is("number", 1)) { // "eggs, 16 in number"
            at_ += 2;
            amount.measure.is_formula_unit = true;
            return;
        }
        read_half_measure(amount);
        std::size_t ahead = 0;
        std::optional<Fullness> fullness;
        std::string how;
        std::string size;
        std::size_t behind_size = 0;
        while (peek(ahead) != nullptr && peek(ahead)->is_word() && ahead < 6) {
            const LineToken& token = *peek(ahead);
            if (const std::size_t used = take_measure(amount, ahead); used > 0) {
                at_ += ahead + used;
                finish_measure(amount, fullness, how, size);
                return;
            }
            const bool is_two_word_size =
                token.is("extra") && peek(ahead + 1) != nullptr && peek(ahead + 1)->is("large");
            if (is_two_word_size || !size_named(token.folded).empty()) {
                size = is_two_word_size ? "extra large" : std::string(size_named(token.folded));
                ahead += is_two_word_size ? 1U : 0U;
                fullness = fullness_named(token.folded);
                behind_size = ahead + 1;
                behind_size += peek(behind_size) != nullptr && peek(behind_size)->is(".") ? 1U : 0U;
            } else if (const auto full = fullness_named(token.folded)) {
                fullness = full;
            } else if (is_measured_as(token.folded)) {
                how = token.folded;
            } else if (!is_filler_word(token.folded) && !token.is("of")) {
                break;
            }
            ++ahead;
            if (peek(ahead) != nullptr && peek(ahead)->is(".")) {
                ++ahead;
            }
        }
        if (!size.empty()) { // "2 large eggs"
            amount.size = size;
            at_ += behind_size;
        }
        amount.measure.is_formula_unit = true;
    }

    // "one half-cup", "one scant half-cup", "a scant half cup"
    void read_half_measure(KitchenAmount& amount) {
        std::size_t half = 0;
        while (peek(half) != nullptr && peek(half)->is_word() && fullness_named(peek(half)->folded)) {
            ++half;
        }
        const LineToken* word = peek(half);
        const std::size_t behind = half + (next_is("-", half + 1) ? 2U : 1U);
        const bool is_joined = behind == half + 2 || half > 0; // "one half cup" has a number of its own
        const bool is_half = amount.number == 1.0 && word != nullptr && word->is_word() && is_joined &&
                             fraction_named(word->folded) > 0.0 && peek(behind) != nullptr &&
                             measure_named(peek(behind)->text, peek(behind)->folded);
        if (!is_half) {
            return;
        }
        const double share = fraction_named(word->folded);
        for (std::size_t at = 0; at < half; ++at) {
            fill(amount, *fullness_named(peek(at)->folded));
        }
        at_ += behind;
        for (double* part : {&amount.number, &amount.least, &amount.most}) {
            *part *= share;
        }
    }

    static bool is_measured_as(std::string_view word) {
        return word == "sifted" || word == "packed" || word == "spooned" || word == "scooped";
    }

    // "2 x 7 g sachets", "1 12-ounce bottle"
    bool read_times(KitchenAmount& amount, bool has_sign) {
        const std::size_t before = at_;
        const double times = amount.number;
        // "2 14 oz cans" are counted, "1.22 3 oz" are two figures of a table; how many packages a recipe
        // asks for at most is common practice, no source
        constexpr double most_packages = 24.0;
        if (!has_sign && (times > most_packages || times != std::floor(times))) {
            return false;
        }
        at_ += has_sign ? 1U : 0U;
        KitchenAmount one;
        const auto number = read_number();
        if (number && *number > 0.0) {
            one.number = one.least = one.most = *number;
            read_measure(one);
        }
        if (!(one.number > 0.0) || one.measure.is_piece()) {
            at_ = before;
            return false;
        }
        amount = one;
        amount.number *= times;
        amount.least *= times;
        amount.most *= times;
        const std::string_view unit = one.measure.name;
        if (!has_sign && (unit == "cup" || unit == "tbsp" || unit == "tsp")) { // no package holds a cup
            amount.least = one.least;
            amount.is_vague = true;
        }
        return true;
    }

    // "7 g sachet": the container says nothing more. Cake flour is no container.
    void skip_container() {
        const LineToken* token = peek();
        if (token == nullptr || !token->is_word() || peek(1) == nullptr) {
            return;
        }
        const auto piece = measure_named(token->text, token->folded);
        const bool is_spoon = token->is_any({"spoon", "spoons"}); // "2 x 5ml spoons"
        at_ += is_spoon || (piece && piece->is_piece() && piece->name != "cake") ? 1U : 0U;
    }

    // The number of tokens that name a measure from `ahead` on; 0 where none does.
    std::size_t take_measure(KitchenAmount& amount, std::size_t ahead) {
        const LineToken& first = *peek(ahead);
        std::size_t next = ahead + 1;
        while (peek(next) != nullptr && peek(next)->is(".")) {
            ++next;
        }
        if (peek(next) != nullptr && peek(next)->is("a") && peek(next + 1) != nullptr) { // "c. a soupe"
            const std::string three = first.folded + " a " + peek(next + 1)->folded;
            if (auto measure = measure_named(three, three)) {
                amount.measure = *std::move(measure);
                next += 2;
                next += peek(next) != nullptr && peek(next)->is(".") ? 1U : 0U;
                return next - ahead;
            }
        }
        if (peek(next) != nullptr && peek(next)->is_word()) {
            const std::string pair = first.folded + " " + peek(next)->folded;
            std::size_t end = next + 1;
            if (auto measure = measure_named(pair, pair)) {
                amount.measure = *std::move(measure);
                end += peek(end) != nullptr && peek(end)->is(".") ? 1U : 0U;
                return end - ahead;
            }
        }
        if (auto measure = measure_named(first.text, first.folded)) {
            amount.measure = *std::move(measure);
            return next - ahead;
        }
        return 0;
    }

    void finish_measure(KitchenAmount& amount, const std::optional<Fullness>& fullness,
                        const std::string& how, const std::string& size) {
        amount.how = how;
        const bool is_spoon_or_cup = amount.measure.is_volume();
        if (amount.measure.is_piece()) {
            amount.size = size;
        }
        if (fullness && is_spoon_or_cup) {
            fill(amount, *fullness);
        }
        if (fullness_ && is_spoon_or_cup) {
            amount.least *= fullness_->least;
            amount.most *= fullness_->most;
            amount.number *= fullness_->likely;
        }
        fullness_.reset();
        if (amount.measure.kind == Measure::Kind::mass || is_spoon_or_cup) {
            skip_container();
        }
    }

    // "3 cups to 3 1/2 cups", "900 g to 1 kg"
    void read_range_of_measures(KitchenAmount& amount) {
        if (amount.is_range || amount.measure.is_piece() || !(next_is("to") || next_is("-"))) {
            return;
        }
        const std::size_t before = at_;
        ++at_;
        const auto more = peek() != nullptr && peek()->is_number() ? read_one() : std::nullopt;
        constexpr double narrowest = 1.05; // "1 cup - 240 ml" is said twice
        constexpr double widest = 3.0;
        const bool is_same = more && more->measure.name == amount.measure.name;
        const double most = more ? amount.in_same(*more) : 0.0;
        const bool is_alike = more && amount.measure.is_metric == more->measure.is_metric && // "900 g-1 kg"
                              most > narrowest * amount.least && most < widest * amount.least;
        if ((is_same && more->number > amount.least) || is_alike) {
            set_range(amount, is_same ? more->number : most);
        } else {
            at_ = before;
        }
    }

    // "a pint and a half", "three pounds and a quarter of flour"
    bool add_fraction(KitchenAmount& amount) {
        if (!next_is("and") || amount.number != std::floor(amount.number) || at_ + 1 >= tokens_.size()) {
            return false;
        }
        const auto part = read_kitchen_number(tokens_.subspan(at_ + 1));
        const LineToken* behind = part ? peek(1 + part->length) : nullptr;
        const bool is_of_another = behind != nullptr && behind->is_word() && // "and half a teaspoon"
                                   measure_named(behind->text, behind->folded);
        if (!part || !(part->value < 1.0) || is_of_another || (behind != nullptr && !behind->is("of"))) {
            return add_half(amount);
        }
        add_part(amount, part->value, 1 + part->length);
        return true;
    }

    // "a pint and a half warm milk"
    bool add_half(KitchenAmount& amount) {
        const bool is_half = next_is("and") && next_is("a", 1) && next_is("half", 2) &&
                             !next_is("-", 3) && // "a quart and a half-pint"
                             amount.number == std::floor(amount.number);
        if (is_half) {
            add_part(amount, 0.5, 3);
        }
        return is_half;
    }

    void add_part(KitchenAmount& amount, double share, std::size_t length) {
        at_ += length;
        for (double* part : {&amount.number, &amount.least, &amount.most}) {
            *part += share;
        }
    }

    // "1 lb 2 oz", "1 cup plus 2 tbsp", "1 cup + 2 tbsp", "1 cup and 2 tbsp"
    void add_more(KitchenAmount& amount) {
        for (int times = 0; times < 3; ++times) {
            if (amount.measure.is_piece() || amount.measure.kind == Measure::Kind::percent) {
                return;
            }
            if (add_fraction(amount)) {
                return;
            }
            const std::size_t before = at_;
            const bool is_dashed = next_is("-") && amount.measure.name == "lb"; // "1 lb-3 oz"
            const bool is_joined =
                is_dashed || next_is("plus") || next_is("+") || next_is("and") || next_is("&");
            at_ += is_joined ? 1U : 0U;
            const bool may_follow = is_joined || (peek() != nullptr && peek()->is_number());
            const auto more = may_follow ? read_one() : std::nullopt;
            const bool adds =
                more && more->measure.kind == amount.measure.kind &&
                (!is_dashed || more->measure.name == "oz") &&
                (is_joined || (amount.in_same(*more) < amount.number && // "300 ml 1/2 pint" is said twice
                               amount.measure.is_metric == more->measure.is_metric)) &&
                amount.in_same(*more) > 0.0 && !next_is("for") && !next_is("to"); // "+ 100 g for coating"
            if (!adds) {
                at_ = before;
                return;
            }
            const double number = amount.in_same(*more);
            amount.least += number * more->least / more->number;
            amount.most += number * more->most / more->number;
            amount.number += number;
        }
    }

    std::span<const LineToken> tokens_;
    std::size_t at_ = 0;
    std::optional<Fullness> fullness_;
};

} // namespace

double KitchenAmount::in_same(const KitchenAmount& other) const {
    if (measure.kind == Measure::Kind::mass && other.measure.kind == Measure::Kind::mass) {
        return other.number * (other.measure.mass / measure.mass).value();
    }
    if (measure.is_volume() && other.measure.is_volume()) {
        return other.number * (other.measure.volume / measure.volume).value();
    }
    return measure.is_piece() && other.measure.name == measure.name ? other.number : 0.0;
}

void KitchenAmount::take_as_fraction() {
    number = least = most = least / most;
    is_range = false;
    hyphen = Hyphen::none;
}

std::optional<KitchenAmount> read_kitchen_amount(std::span<const LineToken> tokens) {
    return AmountReader(tokens).read();
}

} // namespace leavenwright
