#include "transcribe/prose_clauses.hpp"

#include "transcribe/kitchen_acts.hpp"
#include "transcribe/kitchen_words.hpp"
#include "transcribe/running_text.hpp"

#include <algorithm>

namespace leavenwright {
namespace {

constexpr auto none = std::string_view::npos;

bool is_alphanumeric(char byte) {
    return (byte >= '0' && byte <= '9') || (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z') ||
           (static_cast<unsigned char>(byte) & 0x80U) != 0U;
}

bool is_space(char byte) {
    return byte == ' ' || byte == '\n' || byte == '\t' || byte == '\r';
}

std::string folded_word(std::string_view word) {
    if (word == "w/" || word == "W/") {
        return "with";
    }
    std::string text = joined_at_margins(word);
    for (char& byte : text) {
        byte = byte >= 'A' && byte <= 'Z' ? static_cast<char>(byte - 'A' + 'a') : byte;
    }
    const auto is_edge = [](char byte) { return !is_alphanumeric(byte); };
    text.erase(std::find_if_not(text.rbegin(), text.rend(), is_edge).base(), text.end());
    text.erase(text.begin(), std::find_if_not(text.begin(), text.end(), is_edge));
    return text;
}

class ClauseCutter {
public:
    ClauseCutter(std::string_view text, bool is_running) : text_(text), is_running_(is_running) {}

    std::vector<ProseClause> cut() {
        std::vector<ProseClause> clauses;
        char mark = '.';
        for (std::size_t begin = 0; begin < text_.size();) {
            ProseClause clause;
            clause.mark_before = mark;
            clause.begin = begin;
            clause.end = end_from(begin);
            clause.mark_behind = mark = mark_at(clause.end);
            clause.words = words_between(clause.begin, clause.end);
            begin = clause.end + length_of_mark(clause.end);
            if (!clause.words.empty()) {
                clauses.push_back(std::move(clause));
            } else if (!clauses.empty()) { // ".--", "; and"
                mark = clauses.back().begins_sentence() && mark == '&' ? '&' : stronger(clauses.back(), mark);
            }
        }
        return clauses;
    }

private:
    // A full stop stays one where other marks follow it.
    static char stronger(const ProseClause& last, char mark) {
        return last.mark_behind == '.' || last.mark_behind == '!' || last.mark_behind == '?' ? '.' : mark;
    }

    bool is_digit(std::size_t at) const { return at < text_.size() && text_[at] >= '0' && text_[at] <= '9'; }

    bool is_dash(std::size_t at) const {
        const std::string_view rest = text_.substr(std::min(at, text_.size()));
        return rest.starts_with("--") || rest.starts_with("\xE2\x80\x94");
    }

    std::size_t length_of_mark(std::size_t at) const {
        return is_dash(at) ? (text_[at] == '-' ? 2U : 3U) : 1U;
    }

    char mark_at(std::size_t at) const {
        return at >= text_.size()                                                         ? '.'
               : is_dash(at)                                                              ? '-'
               : is_space(text_[at]) && text_[at] != '\n'                                 ? '&'
               : text_[at] == '\n' && (is_running_ || goes_on(at) || is_behind_comma(at)) ? '&'
                                                                                          : text_[at];
    }

    // A line's end inside of a sentence: the next line goes on with a small letter.
    bool goes_on(std::size_t at) const {
        constexpr std::size_t widest_gap = 40;
        const std::string_view ahead = text_.substr(std::min(at, text_.size()), widest_gap);
        const std::size_t next = ahead.find_first_not_of(" \t\r\n");
        return next != none && ahead[next] >= 'a' && ahead[next] <= 'z';
    }

    // "molasses,\n1/3 cup": a list that runs on over the margin.
    bool is_behind_comma(std::size_t at) const {
        const std::size_t last = text_.substr(0, at).find_last_not_of(" \t\r");
        return last != none && (text_[last] == ',' || text_[last] == ';');
    }

    // "lb", "ozs", "tbsp": letters before a full stop, few enough to be cut short.
    bool ends_short_form(std::size_t begin, std::size_t at) const {
        std::size_t letters = 0;
        while (at - letters > begin && letters < 5 && is_alphanumeric(text_[at - 1 - letters])) {
            ++letters;
        }
        return letters > 0 && letters <= 4;
    }

    std::string folded_before(std::size_t begin, std::size_t at) const {
        constexpr std::size_t longest = 24;
        const std::string_view before = text_.substr(std::max(begin, at - std::min(at, longest)),
                                                     at - std::max(begin, at - std::min(at, longest)));
        const std::size_t last = before.find_last_not_of(" \t\r\n");
        const std::size_t space = last == none ? none : before.find_last_of(" \t\r\n", last);
        return last == none ? std::string() : folded_word(before.substr(space == none ? 0 : space + 1));
    }

    // "a quart and half a pint": a pint may be added to a quart, a spoon is of something else.
    static bool is_part_of(const std::optional<Measure>& part, const Measure& whole) {
        constexpr Volume spoon = litres(0.05);
        if (!part || part->kind != whole.kind) {
            return false;
        }
        return part->kind == Measure::Kind::mass
                   ? part->mass < whole.mass
                   : part->is_volume() && part->volume < whole.volume && part->volume > spoon;
    }

    // "a pint and a half", "one and one-fourth cups": behind "and" goes on the number before it.
    bool is_numeric_and(std::size_t begin, std::size_t at) const {
        constexpr std::size_t longest = 40;
        std::vector<ProseWord> next = words_between(at, std::min(at + longest, text_.size()));
        next.resize(std::max<std::size_t>(next.size(), 4));
        const bool is_article = is_one_of("a|one", next[1].folded);
        const std::string_view joined = next[1].folded; // "one-fourth"
        const std::size_t hyphen = joined.find('-');
        const bool is_fraction = (is_article && fraction_named(next[2].folded) > 0.0) ||
                                 (hyphen != none && number_named(joined.substr(0, hyphen)) > 0.0 &&
                                  fraction_named(joined.substr(hyphen + 1)) > 0.0) ||
                                 is_one_of("1/2|1/3|1/4|2/3|3/4|1/8|\xC2\xBC|\xC2\xBD|\xC2\xBE", joined);
        const std::string before = folded_before(begin, at);
        const bool is_number = number_named(before) > 0.0 || is_digit(at - 1);
        const std::string& behind = next[is_article ? 3 : 2].folded;
        const bool is_half = fraction_named(joined) > 0.0 && behind == "of"; // "a pint and half of"
        const auto measure = measure_named(before, before);
        const std::string& second = next[is_article && fraction_named(next[2].folded) > 0.0 ? 3 : 2].folded;
        const bool is_number_next = is_article || fraction_named(joined) > 0.0 || number_named(joined) > 0.0;
        return (measure && is_number_next && is_part_of(measure_named(second, second), *measure)) ||
               ((is_fraction || is_half) && (is_number || (measure && is_one_of("of|more", behind))));
    }

    // "stewed and strained pumpkin": what was done to one thing.
    bool is_preparing_and(std::size_t begin, std::size_t at) const {
        constexpr std::size_t longest = 60;
        const auto next = words_between(at, std::min(at + longest, text_.size()));
        constexpr std::size_t fewest = 3; // "and", the word, the name
        const std::string before = folded_before(begin, at);
        return next.size() >= fewest && before.ends_with("ed") && next[1].folded.ends_with("ed") &&
               (is_preparation_word(before) || before == "dried") && is_preparation_word(next[1].folded);
    }

    // "(about 2 cups)": an amount said twice is no clause of its own. Its length; 0 where it is none.
    std::size_t length_of_amount_in_brackets(std::size_t at) const {
        constexpr std::size_t longest = 40;
        const std::string_view ahead = text_.substr(at, longest);
        const std::size_t end = ahead.find(')');
        return end != none && ahead.find_first_of("0123456789") < end ? end : 0U;
    }

    bool is_end(std::size_t begin, std::size_t at) const {
        const char byte = text_[at];
        if (is_space(byte)) {
            const std::string_view word = text_.substr(std::min(at + 1, text_.size()), 5);
            const bool is_and = word.starts_with("and ") || word.starts_with("and\n");
            const bool is_joint = is_and || word.starts_with("plus ") || word.starts_with("then ");
            const bool is_break = byte == '\n' && !is_running_ && !goes_on(at) && !is_behind_comma(at);
            return is_break || (at > begin && is_joint &&
                                !(is_and && (is_numeric_and(begin, at) || is_preparing_and(begin, at))));
        }
        const bool is_mark = std::string_view(",;:.!?()").find(byte) != none || is_dash(at);
        const bool is_in_number = at > begin && is_digit(at - 1) && is_digit(at + 1);
        const bool is_purpose = // "2 tbsp olive oil. for brushing after: 50 g butter"
            text_.substr(std::min(at + 1, text_.size())).starts_with(" for ") &&
            !measure_named(folded_before(begin, at), folded_before(begin, at));
        const bool is_short_form =
            byte == '.' && ends_short_form(begin, at) && goes_on(at + 1) && !is_purpose;
        return is_mark && !is_in_number && !is_short_form;
    }

    std::size_t end_from(std::size_t begin) const {
        for (std::size_t at = begin; at < text_.size(); ++at) {
            const std::size_t brackets = text_[at] == '(' ? length_of_amount_in_brackets(at) : 0U;
            if (brackets > 0) {
                at += brackets;
            } else if (is_end(begin, at)) {
                return at;
            }
        }
        return text_.size();
    }

    std::vector<ProseWord> words_between(std::size_t begin, std::size_t end) const {
        std::vector<ProseWord> words;
        for (std::size_t at = begin; at < end;) {
            if (is_space(text_[at])) {
                ++at;
                continue;
            }
            std::size_t last = at;
            while (last < end && (!is_space(text_[last]) || is_cut(last))) {
                ++last;
            }
            ProseWord word{.begin = at, .end = last, .folded = folded_word(text_.substr(at, last - at))};
            if (!word.folded.empty()) {
                words.push_back(std::move(word));
            }
            at = last;
        }
        return words;
    }

    // A word goes on behind the margin: "but-\nter".
    bool is_cut(std::size_t at) const {
        constexpr std::size_t widest_gap = 40;
        const std::size_t last = text_.substr(0, at).find_last_not_of(" \t\r\n");
        const bool is_hyphen = last != none && last > 0 && at - last < widest_gap && text_[last] == '-' &&
                               is_alphanumeric(text_[last - 1]);
        const std::string_view gap = text_.substr(at, widest_gap);
        const bool is_at_end =
            is_hyphen && (text_.substr(last, at - last).find('\n') != none ||
                          gap.substr(0, gap.find_first_not_of(" \t\r\n")).find('\n') != none);
        return is_at_end && goes_on(at);
    }

    std::string_view text_;
    bool is_running_;
};

} // namespace

bool may_begin_amount(std::string_view folded) {
    const std::string_view word = folded.substr(0, folded.find('-'));
    if (word.empty()) {
        return false;
    }
    const bool is_number = word.front() >= '0' && word.front() <= '9';
    const bool is_vulgar = word.starts_with("\xC2\xBC") || word.starts_with("\xC2\xBD") ||
                           word.starts_with("\xC2\xBE") || word.starts_with("\xE2\x85");
    return is_number || is_vulgar || word == "a" || word == "an" || number_named(word) > 0.0 ||
           fraction_named(word) > 0.0;
}

std::vector<ProseClause> clauses_of(std::string_view text, bool is_running) {
    return ClauseCutter(text, is_running).cut();
}

} // namespace leavenwright
