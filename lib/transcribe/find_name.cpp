#include "transcribe/find_name.hpp"

#include "transcribe/misread_print.hpp"

#include <algorithm>
#include <array>

namespace leavenwright {
namespace {

bool has_capital(const LineToken& token) {
    return token.is_word() && token.text.front() >= 'A' && token.text.front() <= 'Z';
}

// What stands behind words with capitals, where the name follows the amount: a name that begins the line has
// a capital of its own.
NameMatch match_behind_capitals(const SplitLine& split, const Pantry& pantry) {
    const auto plain = std::find_if_not(split.name.begin(), split.name.end(), has_capital);
    return split.is_name_behind && plain != split.name.begin() ? match_name({plain, split.name.end()}, pantry)
                                                               : NameMatch();
}

// "500 g strong white", "2 g instant": the kind alone, among people who bake.
NameMatch match_kind_alone(const SplitLine& split, const Pantry& pantry) {
    constexpr auto of_flour =
        std::to_array<std::string_view>({"strong", "white", "wholemeal", "wholewheat", "wheat", "plain",
                                         "granary", "rye", "spelt", "whole wheat"});
    constexpr auto beside = std::to_array<std::string_view>(
        {"dark", "light", "medium", "bread", "canadian", "very", "extra", "organic", "whole", "stoneground",
         "active", "bake", "action", "easy", "rise", "rapid"});
    constexpr auto of_yeast =
        std::to_array<std::string_view>({"instant", "fresh", "dried", "dry", "active", "fast", "action",
                                         "easy", "bake", "quick", "rapid", "rise"});
    std::vector<LineToken> name;
    for (const LineToken& token : split.name) {
        if (token.is(",") || token.is("or") || token.is("(") || is_clause_word(token.folded)) {
            break;
        }
        name.push_back(token);
        const std::string_view whole = cut_word(token.folded); // "ww"
        if (!whole.empty()) {
            name.back().text = name.back().folded = whole;
        }
    }
    const auto is_kind = [&](const auto& kinds) {
        bool is_named = false;
        for (const LineToken& token : name) {
            const auto is = [&](std::string_view word) { return token.is(word); };
            const bool is_one = std::any_of(kinds.begin(), kinds.end(), is);
            if (!is_one && std::none_of(beside.begin(), beside.end(), is)) {
                return false;
            }
            is_named = is_named || is_one;
        }
        return is_named;
    };
    if (name.empty() || !split.amount || split.amount->measure.kind == Measure::Kind::percent) {
        return {};
    }
    constexpr Volume most_yeast = litres(0.1); // a cup of "dry" is something else
    constexpr Mass heaviest_yeast = kilograms(0.5);
    const KitchenAmount& amount = *split.amount;
    const bool may_be_yeast = amount.measure.is_volume() ? amount.number * amount.measure.volume < most_yeast
                              : amount.measure.kind == Measure::Kind::mass
                                  ? amount.number * amount.measure.mass < heaviest_yeast
                                  : true;
    const std::string_view what = is_kind(of_flour)                   ? "flour"
                                  : may_be_yeast && is_kind(of_yeast) ? "yeast"
                                                                      : std::string_view();
    if (what.empty()) {
        return {};
    }
    LineToken noun;
    noun.kind = LineToken::Kind::word;
    noun.text = noun.folded = what;
    name.push_back(noun);
    return match_name(name, pantry);
}

// "buttcr", "shortenlng": one letter of a word as a machine reads it.
NameMatch match_misread(const SplitLine& split, const Pantry& pantry) {
    constexpr std::size_t longest = 4; // words
    std::vector<LineToken> name = split.name;
    for (std::size_t at = 0; at < name.size() && name.size() <= longest; ++at) {
        const std::string written = name[at].folded;
        for (const std::string& spelling : spellings_before_print(name[at].is_word() ? written : "")) {
            name[at].text = name[at].folded = spelling;
            NameMatch match = match_name(name, pantry);
            if (match.is_found()) {
                return match;
            }
        }
        name[at].text = name[at].folded = written;
    }
    return {};
}

} // namespace

NameMatch match_short_words(std::span<const LineToken> tokens, const Pantry& pantry) {
    std::vector<LineToken> name(tokens.begin(), tokens.end());
    bool is_cut = false;
    for (LineToken& token : name) {
        const std::string_view word = token.is_word() ? cut_word(token.folded) : std::string_view();
        if (!word.empty()) {
            token.text = token.folded = word;
            is_cut = true;
        }
    }
    std::erase_if(name, [&](const LineToken& token) { return is_cut && token.is("."); });
    return is_cut ? match_name(name, pantry) : NameMatch();
}

FoundName find_name(const SplitLine& split, const Pantry& pantry) {
    NameMatch match = match_name(split.name, pantry);
    const bool is_choice = !match.meanings.empty() && // "liquid (milk, potato water or water)"
                           std::any_of(split.aside.begin(), split.aside.end(),
                                       [](const LineToken& token) { return token.is("or"); });
    const std::string instead_of = is_choice ? match.name : std::string();
    if (match.ingredient == nullptr && !split.aside.empty()) { // "yeast (instant)"
        std::vector<LineToken> turned = split.aside;
        turned.insert(turned.end(), split.name.begin(), split.name.end());
        const NameMatch other = match_name(turned, pantry);
        if (other.ingredient != nullptr) {
            return {.match = other, .instead_of = instead_of};
        }
    }
    if (match.ingredient == nullptr && !match.meanings.empty()) { // "yeast (IDY)"
        const NameMatch other = match_name(split.aside, pantry);
        const bool is_one =
            std::find(match.meanings.begin(), match.meanings.end(), other.key) != match.meanings.end();
        if (is_one) {
            return {.match = other, .instead_of = instead_of};
        }
    }
    if (match.is_found() || match.is_culture) {
        return {.match = std::move(match), .instead_of = {}};
    }
    NameMatch other = match_name(split.aside, pantry);
    if (other.ingredient == nullptr) {
        other = match_behind_capitals(split, pantry);
    }
    if (other.ingredient == nullptr) {
        other = match_short_words(split.name, pantry);
    }
    if (!other.is_found()) {
        other = match_kind_alone(split, pantry);
    }
    if (!other.is_found()) {
        other = match_misread(split, pantry);
    }
    if (!other.is_found()) {
        return {.match = std::move(match), .instead_of = {}};
    }
    other.alternative.clear();
    return {.match = std::move(other), .instead_of = match.name};
}

NameMatch name_in(std::string_view line, const Pantry& pantry) {
    return find_name(split_line(plain_line(line)), pantry).match;
}

} // namespace leavenwright
