#include "transcribe/right_column.hpp"

#include "transcribe/find_name.hpp"
#include "transcribe/ingredient_line.hpp"
#include "transcribe/kitchen_amount.hpp"
#include "transcribe/line_continuation.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/match_name.hpp"
#include "transcribe/recipe_words.hpp"
#include "transcribe/split_line.hpp"

#include <algorithm>
#include <utility>

namespace leavenwright {
namespace {

// "grated rind of 1/2 lemon", "juice of an orange"
bool names_part_of_fruit(std::string_view text) {
    constexpr std::size_t enough = 60;
    constexpr std::size_t farthest = 3;
    const std::vector<LineToken> tokens = line_tokens(plain_line(text.substr(0, enough)));
    const auto end = tokens.begin() + static_cast<std::ptrdiff_t>(std::min(tokens.size(), farthest));
    const auto part = std::find_if(tokens.begin(), end, [](const LineToken& token) {
        return token.is_any({"rind", "zest", "peel", "juice", "yolk", "yolks", "white", "whites"});
    });
    return part != end && tokens.end() - part > 2 && (part + 1)->is("of") && !(part + 2)->is("it");
}

} // namespace

SourcedText RightColumn::left_of(const SourcedText& line, std::size_t indent, std::string_view role) {
    const std::string_view text = line.text;
    if (const auto right = begin_in(line, indent)) {
        keep(line.part(*right, text.size() - *right), indent + *right, role);
        return line.part(0, text.substr(0, *right).find_last_not_of(" \t|") + 1);
    }
    const std::size_t bar = text.find(" | "); // a line drawn between two columns
    const bool is_drawn = bar != std::string_view::npos && text.find('|', bar + 2) == std::string_view::npos;
    const std::size_t gap =
        std::min({text.find("   "), text.find('\t'), is_drawn ? bar : std::string_view::npos});
    if (gap == std::string_view::npos) {
        return line;
    }
    const std::size_t right = text.find_first_not_of(is_drawn ? " \t|" : " \t", gap);
    if (right == std::string_view::npos) {
        return line;
    }
    if (const std::string head = role_of_head(text.substr(right));
        !head.empty() && lines_.empty() && !role_of_head(text.substr(0, gap)).empty()) {
        begin_ = indent + right; // "DOUGH              FILLING"
        role_ = head;
        return line.part(0, gap);
    }
    const bool is_left_known = is_ingredient_line(text.substr(0, gap), pantry_);
    const bool is_pair = // "1 cup moss       1/2 yeast cake"
        has_measure(text.substr(0, gap)) && begins_with_number(text.substr(right)) &&
        is_ingredient_line(text.substr(right), pantry_);
    if (!(is_left_known && begins_item(text.substr(right))) && !is_pair) { // a share, a remark
        return line;
    }
    begin_ = indent + right;
    keep(line.part(right, text.size() - right), begin_, role);
    return line.part(0, gap);
}

bool RightColumn::mirrors(std::span<const RecipeLine> left) const {
    constexpr std::size_t fewest = 4;
    if (lines_.size() < fewest || lines_.size() != left.size()) {
        return false;
    }
    const auto key_of = [&](const RecipeLine& line) {
        constexpr std::size_t longest = 200;
        NameMatch match = name_in(line.said().substr(0, longest), pantry_);
        return match.key.empty() ? match.name : match.key;
    };
    std::size_t same = 0;
    for (std::size_t at = 0; at < left.size(); ++at) {
        const std::string key = key_of(left[at]);
        same += !key.empty() && key == key_of(lines_[at]) ? 1U : 0U;
    }
    return 5 * same >= 4 * left.size();
}

std::vector<RecipeLine> RightColumn::take() {
    begin_ = 0;
    role_.clear();
    return std::exchange(lines_, {});
}

// Where the column begins in a line, once its place is known; its words may be set in.
std::optional<std::size_t> RightColumn::begin_in(const SourcedText& line, std::size_t indent) const {
    const bool is_dashed =
        line.text.size() > 1 && line.text.front() == '-' && line.text[1] >= 'a' && line.text[1] <= 'z';
    const std::size_t most_set_in = is_dashed ? 20 : 4; // "-slivered", of the item above
    if ((lines_.empty() && role_.empty()) || begin_ == 0 || line.text.size() + indent <= begin_) {
        return std::nullopt;
    }
    if (indent >= begin_) {
        return indent <= begin_ + most_set_in ? std::optional<std::size_t>(0) : std::nullopt;
    }
    const std::size_t right = line.text.find_first_not_of(' ', begin_ - indent);
    const bool is_in_column =
        right != std::string_view::npos && right + indent <= begin_ + most_set_in && right >= 2 &&
        (line.text.substr(right - 2, 2) == "  " || line.text.substr(right - 2, 2) == "| ");
    return is_in_column ? std::optional(right) : std::nullopt;
}

void RightColumn::keep(const SourcedText& item, std::size_t column, std::string_view role) {
    if (const std::string head = role_of_head(item.text); !head.empty()) {
        role_ = head;
        return;
    }
    if (!lines_.empty() && !begins_with_number(item.text) && !names_part_of_fruit(item.text) &&
        (column > begin_ || goes_on(lines_.back(), item.text))) { // "(No. 2), drained"
        RecipeLine& above = lines_.back();
        constexpr std::size_t longest = 300; // bytes; what goes on longer is no ingredient
        if (above.said().size() + item.text.size() < longest) {
            above.words = above.said_with(item.text);
        }
        return;
    }
    lines_.push_back({.place = item, .role = role_.empty() ? std::string(role) : role_});
}

// "4 cups coarse entire", above "wheat flour"
bool RightColumn::goes_on(const RecipeLine& above, std::string_view text) const {
    return is_continuation(above.said(), text, pantry_) ||
           (!is_ingredient_line(above.said(), pantry_) && is_ingredient_line(above.said_with(text), pantry_));
}

// "FROSTING", alone; empty where a cell is no heading of a part.
std::string RightColumn::role_of_head(std::string_view cell) const {
    constexpr std::size_t most_words = 3;
    const std::string heading = heading_text(cell);
    const bool is_short = !heading.empty() && !has_digit(heading) && count_words(heading) <= most_words;
    const bool is_known = match_name(line_tokens(plain_line(cell)), pantry_).ingredient != nullptr;
    return is_short && !is_known ? role_of_heading(heading).value_or("") : std::string();
}

// An amount with a name behind it, or the name of an ingredient alone.
bool RightColumn::begins_item(std::string_view text) const {
    const auto tokens = line_tokens(plain_line(text));
    const auto amount = read_kitchen_amount(tokens);
    const bool is_named = amount && amount->length < tokens.size() && tokens[amount->length].is_word();
    return is_named || is_ingredient_line(text, pantry_) || match_name(tokens, pantry_).ingredient != nullptr;
}

} // namespace leavenwright
