#include "transcribe/find_name.hpp"

#include <algorithm>

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
    if (match.ingredient == nullptr && !split.aside.empty()) { // "yeast (instant)"
        std::vector<LineToken> turned = split.aside;
        turned.insert(turned.end(), split.name.begin(), split.name.end());
        const NameMatch other = match_name(turned, pantry);
        match = other.ingredient != nullptr ? other : match;
    }
    if (match.ingredient != nullptr || !match.meanings.empty() || match.is_culture) {
        return {.match = std::move(match), .instead_of = {}};
    }
    NameMatch other = match_name(split.aside, pantry);
    if (other.ingredient == nullptr) {
        other = match_behind_capitals(split, pantry);
    }
    if (other.ingredient == nullptr) {
        other = match_short_words(split.name, pantry);
    }
    if (other.ingredient == nullptr && other.meanings.empty()) {
        return {.match = std::move(match), .instead_of = {}};
    }
    other.alternative.clear();
    return {.match = std::move(other), .instead_of = match.name};
}

} // namespace leavenwright
