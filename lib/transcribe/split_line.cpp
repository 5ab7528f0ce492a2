#include "transcribe/split_line.hpp"

#include "transcribe/line_brackets.hpp"
#include "transcribe/line_purpose.hpp"
#include "transcribe/recipe_text.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace leavenwright {
namespace {

using Tokens = std::vector<LineToken>;

// Whether the number at `at` and the C behind it are all that is left: "water at 24 C", "water (30C)".
bool ends_in_celsius(const Tokens& tokens, std::size_t at) {
    constexpr double coolest = 15.0; // fewer are cups
    return at + 2 == tokens.size() && tokens[at].is_number() && tokens[at].value >= coolest &&
           tokens[at + 1].text == "C";
}

class LineSplitter {
public:
    explicit LineSplitter(Tokens tokens) : tokens_(without_brackets(std::move(tokens), brackets_)) {}

    SplitLine split() {
        if (tokens_.size() > 2 && tokens_[0].is_any({"un", "ein"}) &&
            says_little(tokens_[1].folded)) { // "un po' di sale"
            tokens_.erase(tokens_.begin());
        }
        take_lead();
        take_lead_of_bracket();
        take_size_of();
        take_front_amount();
        if (!line_.amount) {
            take_later_amount();
        }
        take_alternatives();
        take_brackets();
        take_fullness_behind(line_.aside);
        take_fullness_behind(line_.name);
        for (Tokens* tokens : {&line_.name, &line_.aside}) {
            if (line_.amount && !line_.amount->is_range) {
                take_upper_end(*line_.amount, *tokens);
            }
        }
        take_less();
        take_extra();
        turn_part_behind(line_.name);
        take_fat_in_pan();
        if (line_.purpose.empty() && !is_purpose_of_second_) {
            line_.purpose = purpose_in(line_.name);
        }
        if (line_.purpose.empty() && !is_of_more(line_.aside)) {
            line_.purpose = purpose_in(line_.aside);
        }
        if (line_.purpose.empty() && !is_of_more(line_.aside)) {
            line_.purpose = purpose_of_layer(line_.aside); // "1 egg + 1 tbsp water (egg wash)"
        }
        if (!line_.purpose.empty() && (is_of_part(line_.name) || is_of_part(line_.aside))) {
            line_.part_purpose = std::exchange(line_.purpose, {});
        }
        take_share(line_.name);
        for (const Bracket& bracket : brackets_) {
            take_share(bracket.tokens);
        }
        return std::move(line_);
    }

private:
    // "30 g olive oil in the pan"; butter melted in it is not for it
    void take_fat_in_pan() {
        constexpr std::size_t place = 3; // words
        Tokens& name = line_.name;
        if (!line_.purpose.empty() || name.size() <= place) {
            return;
        }
        const std::size_t at = name.size() - place;
        const bool is_place = name[at].is("in") && name[at + 1].is("the") &&
                              name[at + 2].is_any({"pan", "pans", "tin", "tins", "tray", "trays"});
        if (is_place && name[at - 1].is_any({"oil", "butter", "lard", "ghee", "margarine", "evoo"})) {
            line_.purpose = "greasing";
            name.resize(at);
        }
    }

    // "2 eggs (1 for the dough, 1 for brushing)"
    void take_share(const Tokens& tokens) {
        std::string share = line_.part_purpose.empty() ? purpose_of_share(tokens) : std::string();
        if (!share.empty()) {
            line_.part_purpose = std::move(share);
            line_.purpose.clear();
        }
    }

    std::span<const LineToken> from(std::size_t at) const {
        return std::span<const LineToken>(tokens_).subspan(at);
    }

    // "For the tops: 1 egg white", "Glaze: 2 tbsp milk": what the line is for stands before it.
    void take_lead() {
        constexpr std::size_t longest_lead = 4;
        if (tokens_.size() > 3 && tokens_[1].is("with") && !purpose_named(tokens_[0].folded).empty() &&
            read_kitchen_amount(from(2))) { // "Ice with 1 cup powdered sugar"
            line_.purpose = purpose_named(tokens_[0].folded);
            drop_front(2);
            return;
        }
        std::size_t colon = 0;
        while (colon < tokens_.size() && colon <= longest_lead && tokens_[colon].is_word()) {
            ++colon;
        }
        const bool is_dash =
            colon == 1 && tokens_.size() > 1 && tokens_[1].is("-") && !tokens_[1].is_glued; // "Coating - "
        if (colon == 0 || colon + 1 >= tokens_.size() || !(tokens_[colon].is(":") || is_dash)) {
            return;
        }
        std::size_t begin = 0;
        while (begin < colon && tokens_[begin].is_any({"for", "to", "the", "a", "optional"})) {
            ++begin;
        }
        const bool is_of_dough = begin + 1 == colon && role_of_heading(tokens_[begin].folded) == "dough";
        std::string_view purpose =
            begin + 1 == colon && !is_of_dough ? purpose_named(tokens_[begin].folded) : std::string_view();
        if (begin + 1 < colon &&
            tokens_[begin].is_any({"topping", "toppings", "filling", "glaze", "icing"})) {
            purpose = purpose_named(tokens_[begin].folded);               // "Toppings of choice:"
        } else if (begin + 1 < colon && tokens_[colon - 1].is("paste")) { // for crosses
            purpose = purpose_named("paste");
        } else if (begin + 1 < colon) { // "Egg wash:"
            purpose =
                purpose_of_layer({tokens_.begin(), tokens_.begin() + static_cast<std::ptrdiff_t>(colon)});
        }
        if (begin + 2 == colon &&
            (tokens_[begin + 1].is("with") || tokens_[begin + 1].is("feed"))) { // "Fill with:"
            purpose = purpose_named(tokens_[begin + (tokens_[begin + 1].is("feed") ? 1 : 0)].folded);
        }
        const auto only_amount = read_kitchen_amount(from(colon + 1)); // "Syrup: 2 tbsp" names the syrup
        const bool is_name = only_amount && colon + 1 + only_amount->length >= tokens_.size();
        const bool is_saying =
            tokens_.front().is("at") || tokens_.front().is("in"); // "At the beep: 1/3 cup seeds"
        if ((!purpose.empty() && !is_name) || (is_saying && only_amount && !is_name)) {
            line_.purpose = purpose;
            drop_front(colon + 1);
        }
    }

    // "egg wash (1 egg, 1 tbsp milk)": what it is made of stands in the bracket.
    void take_lead_of_bracket() {
        const std::string_view purpose = purpose_of_layer(tokens_);
        if (purpose.empty() || brackets_.size() != 1) {
            return;
        }
        const auto amount = read_kitchen_amount(brackets_.front().tokens);
        if (amount && amount->length < brackets_.front().tokens.size()) {
            line_.purpose = purpose;
            tokens_ = std::move(brackets_.front().tokens);
            brackets_.clear();
        }
    }

    void drop_front(std::size_t count) {
        tokens_.erase(tokens_.begin(), tokens_.begin() + static_cast<std::ptrdiff_t>(count));
        for (Bracket& bracket : brackets_) {
            bracket.at -= std::min(bracket.at, count);
        }
    }

    // "butter the size of an egg", "butter as large as a walnut"
    void take_size_of() {
        for (std::size_t at = 1; at + 1 < tokens_.size() && at < 12; ++at) {
            const bool is_size = (tokens_[at].is("size") && (tokens_[at + 1].is_any({"of", "a", "an"}) ||
                                                             tokens_[at - 1].is_any({"the", "about"}))) ||
                                 ((tokens_[at].is("large") || tokens_[at].is("big")) &&
                                  tokens_[at - 1].is("as") && tokens_[at + 1].is("as"));
            if (!is_size) {
                continue;
            }
            std::size_t thing = at + 1;
            while (thing + 1 < tokens_.size() &&
                   (tokens_[thing].is_any({"of", "a", "an", "as", "small", "large", "good", "-", "hens",
                                           "black", "english", "fair"}) ||
                    number_named(tokens_[thing].folded) > 1.0)) {
                line_.size_count = std::max(line_.size_count, number_named(tokens_[thing].folded));
                ++thing;
            }
            std::size_t end = at;
            while (end > 0 && tokens_[end - 1].is_any({"the", "a", "as", ",", "about", "of", "-"})) {
                --end;
            }
            if (tokens_[thing].is_word() && end > 0) {
                line_.size_of = tokens_[thing].folded;
                tokens_.resize(end);
                // "a piece of butter": the piece is what has the size
                for (std::size_t of = 1; of + 1 < tokens_.size() && of < 4; ++of) {
                    if (tokens_[of].is("of")) {
                        tokens_.erase(tokens_.begin(), tokens_.begin() + static_cast<std::ptrdiff_t>(of) + 1);
                        break;
                    }
                }
                line_.name = tokens_;
            }
            return;
        }
    }

    // "00 flour", "2% milk": a number that belongs to the name.
    bool is_name_number(std::size_t at) const {
        const LineToken& token = tokens_[at];
        if (!token.is_number()) {
            return false;
        }
        const bool is_type = token.text == "00" || token.text == "0" || token.text == "000";
        const LineToken* next = at + 1 < tokens_.size() ? &tokens_[at + 1] : nullptr;
        const bool is_share_of_fat = next != nullptr && next->is("%") && at + 2 < tokens_.size() &&
                                     tokens_[at + 2].is_any({"milk", "yogurt", "yoghurt", "fat", "protein",
                                                             "reduced", "lowfat", "cream"});
        const bool is_temperature =
            next != nullptr &&
            (next->text == "\xC2\xB0" || next->is("degrees") || next->is("degree") || next->is("inch") ||
             next->is("inches") || next->is("minutes") || next->is("cm"));
        const bool is_behind_type = at > 0 && tokens_[at - 1].is_any({"type", "tipo", "typ", "t", "no"});
        const bool is_joined = next != nullptr && next->is_glued && next->text == "\xC2\xB0";
        return (at > 0 && ends_in_celsius(tokens_, at)) || is_type || is_share_of_fat || is_temperature ||
               is_behind_type || is_joined;
    }

    void take_front_amount() {
        if (!line_.size_of.empty() || tokens_.empty() || is_name_number(0)) {
            return;
        }
        if (tokens_.front().is_word()) { // "pinch salt", "good pinch salt"
            const bool is_led =
                tokens_.size() > 1 &&
                tokens_.front().is_any({"good", "big", "generous", "small", "large", "tiny", "scant"});
            const LineToken& word = tokens_[is_led ? 1 : 0];
            const auto measure = measure_named(word.text, word.folded);
            const bool is_few = measure && tokens_.size() > 4 && !is_led &&
                                tokens_[1].is("or") && // "sprig or two of"
                                number_named(tokens_[2].folded) == 2.0 && tokens_[3].is("of");
            if (is_few) {
                tokens_.erase(tokens_.begin() + 1, tokens_.begin() + 3);
            }
            const bool is_pinch = measure && (measure->name == "pinch" || measure->name == "dash");
            const bool is_volume = measure && measure->is_volume();
            const bool is_one =
                measure && !is_led && word.folded.size() > 2 && tokens_.size() > 1 &&
                (is_volume ? tokens_[1].is_word() && !is_clause_word(tokens_[1].folded) // "cup milk"
                           : tokens_.size() > 2 && tokens_[1].is("of"));                // "cake of yeast"
            if (is_pinch || is_one) {
                LineToken one;
                one.kind = LineToken::Kind::number;
                one.text = "1";
                one.value = 1.0;
                tokens_.insert(tokens_.begin(), one);
            }
        }
        auto amount = read_kitchen_amount(tokens_);
        if (!amount) {
            return;
        }
        if (amount->measure.kind == Measure::Kind::percent && take_amount_behind(amount->length)) {
            return;
        }
        line_.amount = amount;
        line_.is_name_behind = true;
        amount_end_ = amount->length;
        rest_begin_ = amount->length;
    }

    // "2.8% salt = 17 g", "65% water so 390": what a baker worked out behind the share.
    bool take_amount_behind(std::size_t share_length) {
        const Tokens all = tokens_;
        drop_front(share_length);
        take_later_amount();
        if (!line_.amount || line_.amount->measure.kind == Measure::Kind::percent) {
            tokens_ = all;
            line_.amount.reset();
            amount_begin_ = amount_end_ = rest_begin_ = 0;
        }
        return line_.amount.has_value();
    }

    void take_later_amount() {
        if (!line_.size_of.empty()) {
            return;
        }
        int tries = 0;
        for (std::size_t at = 1; at < tokens_.size() && tries < 8; ++at) {
            const LineToken& before = tokens_[at - 1];
            const bool is_behind_mark =
                before.kind == LineToken::Kind::mark && before.text != "/" && before.text != "\"";
            const bool may_begin = tokens_[at].is_number() || (is_behind_mark && tokens_[at].is_word()) ||
                                   (before.is("of") && number_named(tokens_[at].folded) > 0.0) ||
                                   (before.is("of") && at > 1 && is_part_word(tokens_[at - 2]) &&
                                    tokens_[at].is_any({"a", "an", "half"}));        // "rind of a lemon"
            const bool is_pinch = tokens_[at].is("a") && at + 2 == tokens_.size() && // "salt a pinch"
                                  tokens_[at + 1].is_any({"pinch", "dash", "splash", "knob"});
            const bool is_added = before.is_any({"+", "plus"}); // "egg yolk + 1 tsp cream"
            if (!(may_begin || is_pinch) || is_added || is_name_number(at)) {
                continue;
            }
            ++tries;
            const auto amount = read_kitchen_amount(from(at));
            const bool is_last = amount && at + amount->length == tokens_.size();
            const bool is_repeat = amount && at + amount->length + 1 == tokens_.size() && // "Eggs: 12 eggs"
                                   tokens_.back().folded == tokens_.front().folded;
            const bool is_counted = amount && (before.is("of") || is_repeat || is_part_word(before) ||
                                               (is_behind_mark && tokens_[at].is_number()) || is_last);
            if (!amount || (amount->measure.name.empty() && !is_counted) ||
                (before.is(",") && names_next(at + amount->length))) {
                continue;
            }
            line_.amount = amount;
            amount_begin_ = at;
            amount_end_ = rest_begin_ = at + amount->length;
            return;
        }
    }

    // "salt sufficient, a cup of yeast": the amount has a name of its own.
    bool names_next(std::size_t of) const {
        return of + 1 < tokens_.size() && tokens_[of].is("of") && tokens_[of + 1].is_word() &&
               !tokens_[of + 1].is_any({"the", "it", "them", "each", "this", "that", "these", "best"});
    }

    static bool is_part_word(const LineToken& token) {
        return token.is_any({"white", "whites", "yolk", "yolks", "rind", "rinds", "zest", "peel", "juice"});
    }

    // "350 g / 1 1/2 cups", "1 cup or 120 g", "1 cup = 120 g", "1 cup, 120 g"
    void take_alternatives() {
        if (!line_.amount) {
            if (line_.size_of.empty()) {
                line_.name = tokens_;
            }
            return;
        }
        while (rest_begin_ < tokens_.size() && line_.others.size() < 4) {
            const LineToken& mark = tokens_[rest_begin_];
            const bool separates = mark.is_any({"/", "or", "=", ",", ";", "-", ":"});
            // without a mark, the next column of a table: "5 lb    2 1/2 qt"
            const std::size_t begin = rest_begin_ + (separates ? 1U : 0U);
            if (!(separates || mark.is_number()) || begin >= tokens_.size() || is_name_number(begin)) {
                break;
            }
            const auto other = read_kitchen_amount(from(begin));
            if (!other || other->measure.name.empty()) {
                break;
            }
            line_.others.push_back({.amount = *other, .is_each = false});
            rest_begin_ = begin + other->length;
        }
        // a name before the amount, then what follows it
        line_.name.assign(tokens_.begin(), tokens_.begin() + static_cast<std::ptrdiff_t>(amount_begin_));
        while (!line_.name.empty() && line_.name.back().kind == LineToken::Kind::mark) {
            line_.name.pop_back();
        }
        std::size_t begin = rest_begin_;
        while (begin < tokens_.size() && tokens_[begin].is_any({"of", ".", ":", "-", ",", "/", ";"})) {
            ++begin;
        }
        if (!line_.name.empty() && begin < tokens_.size() && is_part_word(line_.name.back())) {
            LineToken of; // "grated rind 1 lemon"
            of.kind = LineToken::Kind::word;
            of.text = of.folded = "of";
            line_.name.push_back(of);
        }
        const bool is_counted_name = !line_.name.empty() && line_.name.back().is("of"); // yolks of 2 eggs
        if (!line_.name.empty() && begin < tokens_.size() && !is_counted_name) {
            LineToken comma;
            comma.text = comma.folded = ",";
            line_.name.push_back(comma);
        }
        line_.name.insert(line_.name.end(), tokens_.begin() + static_cast<std::ptrdiff_t>(begin),
                          tokens_.end());
        while (line_.name.size() > 2 && line_.name.back().is("%") && (line_.name.end() - 2)->is_number()) {
            line_.name.resize(line_.name.size() - 2); // "500 g flour    100 %"
        }
        take_last_amount();
        // "2 cups sifted flour" was sifted before it was measured; "2 cups flour, sifted" was not
        if (begin < tokens_.size() && (tokens_[begin].is("sifted") || tokens_[begin].is("packed"))) {
            line_.amount->how = tokens_[begin].folded;
        }
        for (std::size_t at = begin; at + 1 < tokens_.size(); ++at) { // "flour, sifted before measuring"
            if (tokens_[at].is("sifted") && tokens_[at + 1].is("before")) {
                line_.amount->how = "sifted";
            }
        }
    }

    // "2 1/4 tsp active dry yeast 1 packet", "6 oz flour      1 1/3 c": the same by another measure.
    void take_last_amount() {
        constexpr std::size_t most_tokens = 4;
        const std::size_t size = line_.name.size();
        const bool is_said_more =
            std::any_of(line_.name.begin(), line_.name.end(), [](const LineToken& token) {
                return token.is(",") || is_clause_word(token.folded); // "with water to make 4 quarts"
            });
        if (is_said_more || line_.amount->measure.name.empty()) { // a number of the list, perhaps
            return;
        }
        for (std::size_t length = std::min(most_tokens, size - std::min<std::size_t>(size, 1)); length > 1;
             --length) {
            const std::size_t at = size - length;
            const auto other = line_.name[at].is_number() && line_.name[at - 1].is_word()
                                   ? read_kitchen_amount(std::span<const LineToken>(line_.name).subspan(at))
                                   : std::nullopt;
            if (other && other->length == length && !other->measure.name.empty() &&
                other->measure.kind != Measure::Kind::percent && is_other_kind(other->measure)) {
                line_.others.push_back({.amount = *other, .is_each = false});
                line_.name.resize(at);
                return;
            }
        }
    }

    bool is_other_kind(const Measure& measure) const {
        const Measure& own = line_.amount->measure;
        return measure.is_piece() != own.is_piece() || measure.is_volume() != own.is_volume();
    }

    // "(soaked in 1/4 cup rum)"
    static bool is_soaked_in_other(const Tokens& tokens) {
        bool is_act = false;
        for (std::size_t at = 0; at + 2 < tokens.size(); ++at) {
            is_act =
                is_act || tokens[at].is_any({"soak", "soaked", "dissolved", "mixed", "steeped", "plumped"});
            if (!is_act || !tokens[at].is_any({"in", "with"}) || !tokens[at + 1].is_number()) {
                continue;
            }
            const auto amount = read_kitchen_amount(std::span<const LineToken>(tokens).subspan(at + 1));
            const std::size_t name = at + 1 + (amount ? amount->length : 0U);
            if (amount && !amount->measure.is_piece() && name < tokens.size() && tokens[name].is_word()) {
                return true;
            }
        }
        return false;
    }

    // "(400 white, 100 whole wheat)" behind 500 g: a sum, each part of it with a name.
    bool is_sum(const Tokens& tokens) const {
        constexpr double tolerance = 0.001; // of the whole
        double sum = 0.0;
        int parts = 0;
        for (std::size_t at = 0; at < tokens.size(); ++at) {
            if (tokens[at].is("or")) {
                return false;
            }
            if (!tokens[at].is_number()) {
                continue;
            }
            const std::size_t next = at + 1;
            const bool has_measure =
                next < tokens.size() && measure_named(tokens[next].text, tokens[next].folded);
            const std::size_t name = next + (has_measure ? 1U : 0U);
            if (name >= tokens.size() || !tokens[name].is_word() ||
                tokens[name].is_any(
                    {"for", "in", "into", "to", "bag", "packet", "more", "at", "on", "each"})) {
                return false;
            }
            sum += tokens[at].value;
            ++parts;
        }
        return line_.amount && parts > 1 && std::abs(sum - line_.amount->number) <= tolerance * sum;
    }

    void take_brackets() {
        for (Bracket& bracket : brackets_) {
            line_.is_of_parts = line_.is_of_parts || is_sum(bracket.tokens);
            line_.has_other_in_bracket = line_.has_other_in_bracket || is_soaked_in_other(bracket.tokens);
            if (ends_in_celsius(bracket.tokens, 0) || take_range_in(bracket)) {
                continue;
            }
            std::size_t at = begin_of_amount(bracket);
            if (at > 0 && at < bracket.tokens.size() && bracket.tokens.front().is("or") &&
                names_other(bracket, at)) {
                continue; // "1 egg (or 2 tablespoons dried egg)"
            }
            const bool is_amount = at < bracket.tokens.size();
            const bool says_each =
                std::any_of(bracket.tokens.begin(), bracket.tokens.end(), [](const LineToken& token) {
                    return token.is_any({"each", "per", "apiece"});
                });
            const bool is_inside = line_.amount && bracket.at > amount_begin_ && bracket.at < amount_end_ &&
                                   tokens_[bracket.at].is_word(); // and no full stop
            while (at < bracket.tokens.size() && line_.others.size() < 6) {
                const auto amount =
                    read_kitchen_amount(std::span<const LineToken>(bracket.tokens).subspan(at));
                if (!amount || amount->measure.name.empty()) {
                    break;
                }
                at += amount->length;
                if (amount->measure.kind != Measure::Kind::percent) {
                    line_.others.push_back({.amount = *amount, .is_each = says_each || is_inside});
                }
                while (at < bracket.tokens.size() &&
                       bracket.tokens[at].is_any({"/", "or", "=", ",", ";", "-"})) {
                    ++at;
                }
            }
            if (!is_amount) {
                line_.aside.insert(line_.aside.end(), bracket.tokens.begin(), bracket.tokens.end());
            }
        }
        const bool is_only_in_brackets = !line_.amount && !line_.others.empty();
        if (is_only_in_brackets) {
            line_.amount = line_.others.front().amount;
            line_.others.erase(line_.others.begin());
        }
    }

    // "1 cup sugar, scant", "1 cup (heaping) flour"
    void take_fullness_behind(const Tokens& tokens) {
        if (!line_.amount || line_.amount->is_vague || line_.amount->measure.kind != Measure::Kind::volume) {
            return;
        }
        for (const LineToken& token : tokens) {
            const auto fullness = size_named(token.folded).empty() && !token.is_any({"small", "big", "bare"})
                                      ? fullness_named(token.folded)
                                      : std::nullopt;
            if (fullness) {
                line_.amount->is_vague = true;
                line_.amount->number *= fullness->likely;
                line_.amount->least *= fullness->least;
                line_.amount->most *= fullness->most;
                return;
            }
        }
    }

    // "1 cup less 2 tablespoons flour"
    void take_less() {
        if (!line_.amount || line_.name.size() < 3 || !line_.name.front().is_any({"less", "minus"})) {
            return;
        }
        const auto less = read_kitchen_amount(std::span<const LineToken>(line_.name).subspan(1));
        const double number = less ? line_.amount->in_same(*less) : 0.0;
        if (!(number > 0.0) || !(number < line_.amount->least)) {
            return;
        }
        for (double* part : {&line_.amount->number, &line_.amount->least, &line_.amount->most}) {
            *part -= number;
        }
        line_.name.erase(line_.name.begin(),
                         line_.name.begin() + 1 + static_cast<std::ptrdiff_t>(less->length));
    }

    // "plus more for dusting", "plus one for brushing", "plus 2 tablespoons"
    void take_extra() {
        auto plus = std::find_if(line_.name.begin(), line_.name.end(), [](const LineToken& token) {
            return token.is_any({"plus", "+"});
        });
        for (auto more = line_.name.begin(); plus == line_.name.end() && more != line_.name.end(); ++more) {
            const bool is_and = more->is_any({"and", "&"}); // "& a little extra for the tin"
            const auto end = more + std::min<std::ptrdiff_t>(4, line_.name.end() - more);
            if ((is_and && std::any_of(more, end,
                                       [](const LineToken& token) {
                                           return token.is_any({"extra", "more", "little"});
                                       })) ||
                begins_more(more - line_.name.begin())) {
                plus = more;
            }
        }
        if (plus == line_.name.end() || plus == line_.name.begin()) {
            return;
        }
        Tokens tail(plus + 1, line_.name.end());
        line_.name.erase(plus, line_.name.end());
        while (!line_.name.empty() && line_.name.back().kind == LineToken::Kind::mark) {
            line_.name.pop_back();
        }
        line_.extra = read_kitchen_amount(tail);
        line_.extra_purpose = purpose_in(tail);
        const auto measure =
            tail.size() > 1 ? measure_named(tail.front().text, tail.front().folded) : std::nullopt;
        const bool is_pinch =
            !line_.extra && measure && measure->is_volume() && names_more(tail, 1); // "1 yolk + pinch salt"
        if (is_pinch || (line_.extra && names_more(tail, line_.extra->length) &&
                         !names_the_same(tail, line_.extra->length) &&
                         (line_.extra_purpose.empty() || !shares_a_word(tail, line_.name)))) {
            LineToken comma; // "1 egg + 1 yolk": another ingredient
            comma.text = comma.folded = ",";
            line_.extra.reset();
            is_purpose_of_second_ = !line_.extra_purpose.empty() && !is_wash(line_.amount, line_.name, tail);
            line_.extra_purpose.clear();
            line_.name.push_back(comma);
            line_.name.insert(line_.name.end(), tail.begin(), tail.end());
            return;
        }
        const bool is_for_need = line_.extra && is_for_need_only(tail, line_.extra->length);
        if (is_for_need && line_.extra_purpose.empty()) {
            line_.extra.reset();
        }
        const bool is_same = line_.extra && line_.amount && line_.extra_purpose.empty();
        const double more = is_same ? line_.amount->in_same(*line_.extra) : 0.0;
        if (more > 0.0) {
            line_.amount->number += more;
            line_.amount->least += more;
            line_.amount->most += more;
            line_.extra.reset();
        }
    }

    // ", more for dusting", "; with extra for the pan"
    bool begins_more(std::ptrdiff_t mark) const {
        const auto is_at = [&](std::ptrdiff_t at, std::initializer_list<std::string_view> words) {
            return at < std::ssize(line_.name) && line_.name[static_cast<std::size_t>(at)].is_any(words);
        };
        const std::ptrdiff_t more = mark + (is_at(mark + 1, {"with"}) ? 2 : 1);
        std::ptrdiff_t end = more + 1;
        while (is_at(end, {"if", "as", "needed", "necessary", "required"})) {
            ++end;
        }
        return line_.amount && is_at(mark, {",", ";", "-"}) && is_at(more, {"more", "extra", "additional"}) &&
               is_at(end, {"for", "to"});
    }

    // "plus 1-2 tbsp if needed"; "plus 2 tablespoons, and more as needed" is more.
    static bool is_for_need_only(const Tokens& tail, std::size_t begin) {
        while (begin < tail.size() && tail[begin].is_word() && !tail[begin].is_any({"plus", "and"})) {
            const bool is_if = tail[begin].is("if") && begin > 0 && tail[begin - 1].is("more");
            if (is_if || tail[begin].is_any({"needed", "necessary", "required"})) {
                return true;
            }
            ++begin;
        }
        return false;
    }

    // "1/2 cup butter plus 1 tablespoon melted butter": no word of the second is another thing.
    bool names_the_same(const Tokens& tail, std::size_t begin) const {
        bool is_named = false;
        for (std::size_t at = begin; at < tail.size() && tail[at].is_word(); ++at) {
            const LineToken& token = tail[at];
            if (is_preparation_word(token.folded) || is_clause_word(token.folded)) {
                continue;
            }
            const bool is_known = std::any_of(line_.name.begin(), line_.name.end(),
                                              [&](const LineToken& word) { return word.is(token.folded); });
            if (!is_known) {
                return false;
            }
            is_named = true;
        }
        return is_named;
    }

    // "500 g flour plus 2 tbsp flour for dusting" is more of the same
    static bool shares_a_word(const Tokens& tail, const Tokens& name) {
        const auto end = std::find_if(tail.begin(), tail.end(), [](const LineToken& token) {
            return token.is(",") || is_clause_word(token.folded);
        });
        return std::any_of(tail.begin(), end, [&](const LineToken& token) {
            return token.is_word() && std::any_of(name.begin(), name.end(), [&](const LineToken& word) {
                       return word.is_word() && word.is(token.folded);
                   });
        });
    }

    // "3 cups flour (3 to 3 1/2)"
    bool take_range_in(const Bracket& bracket) {
        const auto range = read_kitchen_amount(bracket.tokens);
        const bool is_range =
            range && range->is_range && range->measure.name.empty() && range->length == bracket.tokens.size();
        if (!is_range || !line_.amount || line_.amount->is_range || line_.amount->measure.name.empty() ||
            line_.amount->number < range->least || line_.amount->number > range->most) {
            return false;
        }
        line_.amount->least = range->least;
        line_.amount->most = range->most;
        line_.amount->number = range->number;
        line_.amount->is_range = true;
        return true;
    }

    // Whether an amount in a bracket is of something that the line does not name.
    bool names_other(const Bracket& bracket, std::size_t at) const {
        const auto amount = read_kitchen_amount(std::span<const LineToken>(bracket.tokens).subspan(at));
        const std::size_t behind = at + (amount ? amount->length : 0U);
        const bool is_named =
            line_.amount && !line_.name.empty() && amount && names_more(bracket.tokens, behind);
        return is_named && !line_.name.front().is(bracket.tokens[behind].folded);
    }

    // Words of preparation may stand before the name: "lukewarm water", but no clause: "for the top".
    static bool names_more(const Tokens& tail, std::size_t begin) {
        while (begin < tail.size() && tail[begin].is_word() && is_preparation_word(tail[begin].folded) &&
               !tail[begin].is_any({"more", "extra", "additional", "to", "as", "if", "needed"})) {
            ++begin;
        }
        return begin < tail.size() && tail[begin].is_word() && !is_clause_word(tail[begin].folded) &&
               !tail[begin].is_any({"more", "extra", "additional", "needed"});
    }

    std::vector<Bracket> brackets_;
    Tokens tokens_;
    SplitLine line_;
    std::size_t amount_begin_ = 0;
    std::size_t amount_end_ = 0;
    std::size_t rest_begin_ = 0;
    bool is_purpose_of_second_ = false; // of what stands behind "plus"
};

} // namespace

SplitLine split_line(std::string_view plain) {
    return split_tokens(line_tokens(plain));
}

SplitLine split_tokens(std::vector<LineToken> tokens) {
    return LineSplitter(std::move(tokens)).split();
}

} // namespace leavenwright
