#include "transcribe/line_continuation.hpp"

#include "transcribe/kitchen_amount.hpp"
#include "transcribe/kitchen_number.hpp"
#include "transcribe/kitchen_words.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/match_name.hpp"

namespace leavenwright {
namespace {

constexpr std::size_t longest_line = 160; // bytes; more is no part of a list

bool is_amount_alone(std::string_view item) {
    const auto tokens = line_tokens(plain_line(item.substr(0, longest_line)));
    const auto amount = read_kitchen_amount(tokens);
    return amount && !amount->measure.name.empty() && amount->length == tokens.size();
}

// What is done to an ingredient, or where it goes: "softened", "cut into pieces", "for the pan".
bool begins_remark(const LineToken& word) {
    return is_clause_word(word.folded) || is_preparation_word(word.folded) ||
           (word.folded.size() > 4 && word.folded.ends_with("ed"));
}

} // namespace

bool is_continuation(std::string_view item, std::string_view text, const Pantry& pantry) {
    if (text.empty() || text.size() > longest_line) {
        return false;
    }
    const bool is_set_off = text.front() == '(' || text.starts_with("-- ");
    const bool is_dashed = text.size() > 1 && text.front() == '-' && text[1] >= 'a' && text[1] <= 'z' &&
                           !item.starts_with('-'); // a list with such bullets
    if (is_set_off || is_dashed) {
        return true;
    }
    const auto tokens = line_tokens(plain_line(text));
    const bool is_small = text.front() >= 'a' && text.front() <= 'z';
    if (!is_small || tokens.empty() || read_kitchen_number(tokens)) {
        return false;
    }
    if (is_amount_alone(item) || tokens.front().is("or") || tokens.front().is("plus")) {
        return true;
    }
    const NameMatch match = match_name(tokens, pantry);
    const bool is_joined = tokens.front().is("and") && tokens.size() > 1; // "and sifted"
    return !match.is_found() && begins_remark(tokens[is_joined ? 1 : 0]);
}

SourcedText joined(const SourcedText& item, const SourcedText& line) {
    const SourceSpan span{item.span.offset, line.span.offset + line.text.size() - item.span.offset};
    return {
        .source = item.source, .span = span, .text = item.source->text().substr(span.offset, span.length)};
}

} // namespace leavenwright
