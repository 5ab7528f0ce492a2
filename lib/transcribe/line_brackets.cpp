#include "transcribe/line_brackets.hpp"

#include "transcribe/kitchen_amount.hpp"

#include <algorithm>
#include <span>

namespace leavenwright {

std::vector<LineToken> without_brackets(std::vector<LineToken> all, std::vector<Bracket>& brackets) {
    std::vector<LineToken> outside;
    int depth = 0;
    for (LineToken& token : all) {
        const bool opens = token.is("(") || token.is("[");
        const bool closes = token.is(")") || token.is("]");
        if (opens && depth++ == 0) {
            brackets.push_back({.tokens = {}, .at = outside.size()});
        } else if (closes) {
            depth = std::max(depth - 1, 0);
        } else if (!opens) {
            (depth > 0 ? brackets.back().tokens : outside).push_back(std::move(token));
        }
    }
    return outside;
}

std::size_t begin_of_amount(const Bracket& bracket) {
    const std::vector<LineToken>& tokens = bracket.tokens;
    const auto begin = std::find_if(tokens.begin(), tokens.end(), [](const LineToken& token) {
        return !token.is_any({"or", "=", "about", "scant", "ca", "approx", "approximately", "i", "e", "."});
    });
    const auto first = static_cast<std::size_t>(begin - tokens.begin());
    const auto amount_at = [&](std::size_t at) {
        return read_kitchen_amount(std::span<const LineToken>(tokens).subspan(at));
    };
    if (const auto amount = amount_at(first); amount && !amount->measure.name.empty()) {
        return first;
    }
    int tries = 0;
    for (std::size_t at = first + 1; at < tokens.size() && tries < 4; ++at) {
        if (tokens[at].is_number()) {
            ++tries;
            const auto amount = amount_at(at);
            if (amount && amount->measure.kind == Measure::Kind::mass) {
                return at;
            }
        }
    }
    return tokens.size();
}

} // namespace leavenwright
