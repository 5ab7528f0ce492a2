#include "transcribe/line_purpose.hpp"

#include "transcribe/kitchen_words.hpp"
#include "transcribe/line_brackets.hpp"

#include <algorithm>

namespace leavenwright {
namespace {

using Tokens = std::vector<LineToken>;

LineToken word(std::string_view text) {
    LineToken token;
    token.kind = LineToken::Kind::word;
    token.text = token.folded = text;
    return token;
}

// The part that the words behind a comma name, where they name nothing else: "grated zest only".
std::optional<LineToken> part_of(std::span<const LineToken> words) {
    std::optional<LineToken> part;
    if (words.size() == 1 && words.front().is("peel")) { // "4 carrots, peel"
        return part;
    }
    for (const LineToken& token : words) {
        const bool is_part = token.is_any({"zest", "rind", "peel", "juice", "zested", "juiced"});
        if (is_part && !part) {
            part = word(token.is("zested") ? "zest" : token.is("juiced") ? "juice" : token.folded);
        } else if (is_part || !(token.is_any({"it", "them", "only"}) || is_preparation_word(token.folded))) {
            return std::nullopt;
        }
    }
    return part;
}

} // namespace

std::string purpose_in(const Tokens& tokens) {
    bool is_behind = false;
    bool is_made = false;   // behind "to"
    bool is_enough = false; // "flour enough to roll out" is the dough's
    std::size_t count = 0;
    for (std::size_t at = 0; at < tokens.size(); ++at) {
        const LineToken& token = tokens[at];
        is_enough = is_enough || token.is_any({"enough", "sufficient"});
        if (token.is("not")) { // "not counting that for the board"
            return {};
        }
        if (is_behind && token.is_word()) {
            const std::string_view found = purpose_named(token.folded);
            const bool is_verb = // "flour to mould soft", "flour enough to roll out"
                (is_enough && token.is_any({"roll", "knead", "handle"})) ||
                (token.is_any({"mould", "mold"}) && tokens[at - 1].is("to") && at > 1 &&
                 tokens[at - 2].is_any({"flour", "enough", "sufficient"}));
            if (is_verb) {
                return {};
            }
            const bool is_mixed = (token.is("paste") && is_made) || // "mix to a light paste", "to the boil"
                                  (token.is("boil") && tokens[at - 1].is_any({"the", "a"}));
            if (!is_mixed && (!found.empty() || token.is("dough"))) {
                return std::string(found);
            }
            if (++count > 6) {
                return {};
            }
        }
        if (token.is("spray") && at > 0 &&
            tokens[at - 1].is_any(
                {"cooking", "oil", "nonstick", "stick", "pan", "baking", "release", "pan release"})) {
            return std::string(purpose_named("greasing"));
        }
        is_made = is_made || token.is_any({"to", "into"});
        is_behind = is_behind || token.is_any({"for", "to", "fur", "zum", "zur", "pour", "per", "para"});
        if (token.is("frying") && at + 1 < tokens.size() &&
            tokens[at + 1].is_any({"fat", "oil", "lard", "shortening"})) {
            return std::string(purpose_named("frying"));
        }
    }
    return {};
}

std::string_view purpose_of_layer(std::span<const LineToken> words) {
    constexpr std::size_t most_words = 4;
    const bool is_short =
        !words.empty() && words.size() <= most_words &&
        std::all_of(words.begin(), words.end(), [](const LineToken& token) { return token.is_word(); });
    const bool is_layer = is_short && !words.front().is("not") &&
                          words.back().is_any({"wash", "egg wash", "eggwash", "glaze", "icing", "frosting",
                                               "topping", "filling", "garnish", "streusel", "stuffing"});
    return is_layer ? purpose_named(words.back().folded) : std::string_view();
}

bool is_of_part(const Tokens& tokens) {
    constexpr std::ptrdiff_t near = 4; // words before "for"
    const auto clause =
        std::find_if(tokens.begin(), tokens.end(), [](const LineToken& token) { return token.is("for"); });
    return clause != tokens.end() &&
           std::any_of(clause - std::min(near, clause - tokens.begin()), clause, [](const LineToken& token) {
               return token.is_any({"save", "saving", "reserve", "reserved", "reserving", "keep", "some",
                                    "half", "part", "little", "third", "quarter"});
           });
}

std::string purpose_of_share(const Tokens& tokens) {
    constexpr std::size_t near = 4; // words behind "for"
    for (std::size_t at = 1; at < tokens.size(); ++at) {
        const auto is_count = [&](std::size_t word) {
            return tokens[word].is_number() || number_named(tokens[word].folded) > 0.0 ||
                   fraction_named(tokens[word].folded) > 0.0 ||
                   tokens[word].is_any({"rest", "remainder", "remaining"});
        };
        if (!tokens[at].is_any({"for", "on"})) {
            continue;
        }
        std::size_t last = at - 1; // "1 beaten, for brushing"
        while (last > 0 && (tokens[last].is(",") || is_preparation_word(tokens[last].folded)) &&
               !is_count(last)) {
            --last;
        }
        const bool is_measured = last > 0 && is_count(last - 1) &&
                                 measure_named(tokens[last].text, tokens[last].folded).has_value();
        if (!(is_count(last) || is_measured)) {
            continue;
        }
        for (std::size_t word = at + 1; word < std::min(at + 1 + near, tokens.size()); ++word) {
            if (!tokens[word].is_word() || tokens[word].is("dough")) {
                break;
            }
            if (const std::string_view found = purpose_named(tokens[word].folded); !found.empty()) {
                return std::string(found);
            }
        }
    }
    return {};
}

bool is_of_more(const Tokens& tokens) {
    return std::any_of(tokens.begin(), tokens.end(), [](const LineToken& token) {
        return token.is_any({"more", "extra", "additional", "plus"});
    });
}

bool is_wash(const std::optional<KitchenAmount>& amount, const Tokens& first, const Tokens& second) {
    const auto names_egg = [](const LineToken& token) {
        return token.is_any({"egg", "eggs", "yolk", "yolks", "white", "whites"});
    };
    const auto clause = std::find_if(second.begin(), second.end(), [](const LineToken& token) {
        return token.is("for") || token.is("to"); // "for egg wash"
    });
    const bool is_spoon = amount && amount->measure.name.ends_with("sp");
    return (is_spoon || std::any_of(first.begin(), first.end(), names_egg)) &&
           std::none_of(second.begin(), clause, names_egg);
}

void turn_part_behind(Tokens& name) {
    const auto is_comma = [](const LineToken& token) { return token.is(",") || token.is(";"); };
    const auto first = std::find_if(name.begin(), name.end(), is_comma);
    for (auto begin = first; begin != name.end();) {
        const auto end = std::find_if(begin + 1, name.end(), is_comma);
        if (const auto part = part_of({begin + 1, end})) {
            Tokens turned{*part, word("of")};
            turned.insert(turned.end(), name.begin(), first);
            turned.insert(turned.end(), end, name.end());
            name = std::move(turned);
            return;
        }
        begin = end;
    }
}

void take_upper_end(KitchenAmount& amount, Tokens& tokens) {
    constexpr double widest = 3.0; // more is another thing
    for (std::size_t at = 0; at + 1 < tokens.size() && at < 40; ++at) {
        const bool is_up_to = tokens[at].is("up") && tokens[at + 1].is("to");
        const bool is_to =
            at > 0 && tokens[at].is("to") && tokens[at - 1].is("-") && tokens[at + 1].is_number();
        if (!is_up_to && !is_to && !tokens[at].is_any({"maybe", "perhaps", "possibly"})) {
            continue;
        }
        const std::size_t begin = at + (is_up_to ? 2U : 1U);
        const auto upper =
            begin < tokens.size() ? read_kitchen_amount(std::span(tokens).subspan(begin)) : std::nullopt;
        if (!upper) {
            continue;
        }
        std::size_t end = begin + upper->length;
        const bool is_plus = at > 0 && tokens[at - 1].is("plus");
        const bool is_more = end < tokens.size() && tokens[end].is_any({"more", "extra", "additional"});
        end += is_more ? 1U : 0U;
        const bool is_bare = upper->measure.is_piece() && upper->measure.name.empty();
        if (is_to && is_bare) { // "to 110 F"
            continue;
        }
        const double number = is_bare ? upper->most : amount.in_same(*upper);
        const double most = number + (is_more || is_plus ? amount.most : 0.0);
        if (!(number > 0.0) || !(most > amount.most) || most > widest * amount.most) {
            continue;
        }
        amount.most = most;
        amount.number = (amount.least + most) / 2.0;
        amount.is_range = true;
        const auto first = tokens.begin() + static_cast<std::ptrdiff_t>(at) - (is_plus ? 1 : 0);
        tokens.erase(first, tokens.begin() + static_cast<std::ptrdiff_t>(end));
        while (!tokens.empty() && tokens.back().kind == LineToken::Kind::mark) {
            tokens.pop_back();
        }
        return;
    }
}

} // namespace leavenwright
