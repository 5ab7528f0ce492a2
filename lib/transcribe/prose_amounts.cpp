#include "transcribe/prose_amounts.hpp"

#include "transcribe/find_name.hpp"
#include "transcribe/ingredient_line.hpp"
#include "transcribe/kitchen_acts.hpp"
#include "transcribe/kitchen_amount.hpp"
#include "transcribe/kitchen_words.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/recipe_words.hpp"
#include "transcribe/split_line.hpp"

#include <algorithm>
#include <array>
#include <span>

namespace leavenwright {
namespace {

class AmountFinder {
public:
    explicit AmountFinder(const ProseNames& names) : names_(names) {}

    std::optional<FoundItem> measured(std::size_t at) const {
        const std::size_t end = names_.end_of_words(at);
        const auto tokens = line_tokens(plain_line(names_.text_of(at, end)));
        const auto amount = read_kitchen_amount(tokens);
        if (!amount || (at == 0 && is_step_without_mark(names_.text_of(0, end)))) {
            return std::nullopt;
        }
        const auto name = std::span(tokens).subspan(std::min(amount->length, tokens.size()));
        if (names_nothing(name)) {
            return with_name_before(at, end, !amount->measure.name.empty());
        }
        if (name[0].is("less") || (name.size() > 1 && name[1].is("less"))) { // "by one-half cup less flour"
            return std::nullopt;
        }
        const bool is_measured = !amount->measure.is_piece();
        auto found = known_item(at, begin_of_next(at, end), is_measured);
        const bool names_something =
            name.size() > 1 && name[0].is("of") && name[1].is_word() &&
            !(is_one_of("it|them|which|each|dough|batter|sponge|paste|mixture|leaven|bread",
                        name[1].folded) &&
              !(name.size() > 2 && name[1].is("bread") && name[2].is_any({"dough", "sponge"}))) &&
            !is_part(name);
        if (!found && is_measured && names_something) {
            found = FoundItem{.begin = at,
                              .end = begin_of_next(at, end),
                              .text_begin = names_.clause().words[at].begin,
                              .is_known = false};
        }
        if (found) {
            found->has_amount = true;
            found->is_part = is_part(name);
            take_share(*found);
        }
        return found;
    }

    // Words of an amount that nothing is named with; 0 where it is none.
    std::size_t bare(std::size_t at) const {
        const std::size_t end = names_.end_of_words(at);
        const auto tokens = line_tokens(plain_line(names_.text_of(at, end)));
        const auto amount = read_kitchen_amount(tokens);
        const bool is_bare =
            amount && !amount->measure.is_piece() &&
            names_nothing(std::span(tokens).subspan(std::min(amount->length, tokens.size())));
        return is_bare ? end_of_bare(at, end) : 0U;
    }

private:
    // The longest words from `at` on that are an amount and a name of the pantry.
    std::optional<FoundItem> known_item(std::size_t at, std::size_t end, bool is_measured) const {
        constexpr int most_cuts = 6;
        const std::size_t begin = begin_of_part(at);
        int cuts = 0;
        for (std::size_t last = end; last > at + 1 && cuts < most_cuts; --last) {
            if (last < end && !ends_prose_name(names_.word(last))) {
                continue;
            }
            ++cuts;
            const std::string_view text = names_.text_of(begin, last);
            if (is_ingredient_line(text, names_.pantry()) && (is_measured || is_counted(text))) {
                const Ingredient* ingredient = ingredient_of(text);
                const bool may_be_mixed = last == names_.size() && is_measured;
                return FoundItem{.begin = begin,
                                 .end = without_joint(at + 1, last),
                                 .text_begin = names_.clause().words[begin].begin,
                                 .text_end = may_be_mixed ? end_of_mixture(ingredient) : 0U,
                                 .ingredient = ingredient};
            }
        }
        return std::nullopt;
    }

    // "one ounce of salt to every three pounds of flour": of how many pounds is not said, so that only the
    // name is taken.
    void take_share(FoundItem& found) const {
        std::size_t of = 0;
        for (std::size_t at = found.begin + 1; at <= found.end; ++at) {
            of = of == 0 && names_.word(at) == "of" ? at : of;
            const bool is_share =
                is_one_of("each|every", names_.word(at)) && is_one_of("to|for|in", names_.word(at - 1));
            if (is_share && of > 0 && of + 2 < at) {
                found.end = at - 1;
                found.text_begin = names_.clause().words[of + 1].begin;
                found.has_amount = false;
                return;
            }
        }
    }

    // Where "the yolk of an egg", "grated rind of a lemon" begins, before its "an".
    std::size_t begin_of_part(std::size_t at) const {
        if (at > 0 && is_one_of("yolks|yelks|whites", names_.word(at - 1))) { // "Yolks 2 eggs"
            return at - 1;
        }
        const bool is_part =
            at >= 2 && names_.word(at - 1) == "of" &&
            is_one_of("yolk|yolks|yelk|yelks|white|whites|rind|rinds|juice|zest|peel", names_.word(at - 2));
        const std::size_t begin = is_part ? at - 2 : at;
        return is_part && begin > 0 && names_.word(begin - 1) == "grated" ? begin - 1 : begin;
    }

    bool has_each() const {
        const auto& words = names_.clause().words;
        return std::any_of(words.begin(), words.end(),
                           [](const ProseWord& word) { return word.folded == "each"; });
    }

    // "a cup of butter and lard mixed": the amount is of both. Where it ends; 0 where it is of one.
    std::size_t end_of_mixture(const Ingredient* first) const {
        if (names_.clause().mark_behind != '&' || names_.next_clause() == nullptr || first == nullptr) {
            return 0;
        }
        const ProseClause& next = *names_.next_clause();
        std::size_t words = next.words.size();
        words -= next.word(words - 1) == "mixed" ? 1U : 0U;
        if (words < 2 || words > 4 || next.word(0) != "and" || next.word(1) == "the") {
            return 0;
        }
        const std::size_t begin = next.words[1].begin;
        const Ingredient* second =
            names_.known(names_.text().substr(begin, next.words[words - 1].end - begin));
        const bool is_each = second != nullptr && has_each(); // "a teaspoonful each of salt and sugar"
        return is_each || may_be_mixed(first, second) ? next.words.back().end : 0U;
    }

    // "five cups, or until it is stiff": no name behind the amount.
    static bool names_nothing(std::span<const LineToken> name) {
        const bool is_more = !name.empty() &&
                             name[0].is("more") && // "some three cupfuls more will be wanted"
                             (name.size() == 1 || is_one_of("will|may|are|is|or|if", name[1].folded));
        return name.empty() || is_more || name[0].is("or") || name[0].is("until") || name[0].is("till") ||
               name[0].is("to") || name[0].is("being") || (name[0].is("for") && name.back().is("lot"));
    }

    // "five cups, or until it is stiff"
    std::size_t end_of_bare(std::size_t at, std::size_t end) const {
        for (std::size_t last = at + 2; last < end; ++last) {
            const bool is_end = is_one_of("or|until|till|to|being|more", names_.word(last)) &&
                                !may_begin_amount(names_.word(last + 1));
            end = is_end ? last : end;
        }
        return end;
    }

    // "graham flour, five cups": the name ends the clause before.
    std::optional<FoundItem> with_name_before(std::size_t at, std::size_t end, bool is_measured) const {
        const bool is_first = at == 0 || (at == 1 && is_one_of("about|nearly|say|from|some", names_.word(0)));
        if (!is_first) {
            return std::nullopt;
        }
        end = end_of_bare(at, end);
        auto found = names_.name_before();
        if (found && !is_measured && !mass_of_piece(*found->ingredient, "")) {
            found.reset();
        }
        if (found) {
            found->begin = at;
            found->end = end;
            found->has_amount = true;
        }
        return found;
    }

    // Where a second item begins in the words of the first: "yeast with a saltspoonful of sugar".
    std::size_t begin_of_next(std::size_t at, std::size_t end) const {
        constexpr int most_tries = 4;
        int tries = 0;
        for (std::size_t next = at + 2; next + 1 <= end && tries < most_tries; ++next) {
            const bool is_thing = names_.without_amount(next, false).has_value();
            const bool may_be = is_thing || (may_begin_amount(names_.word(next)) && next + 1 < end);
            if (!may_be) {
                continue;
            }
            ++tries;
            const std::size_t begin = begin_of_part(next);
            if (begin <= at + 1) {
                continue;
            }
            const bool is_first =
                is_ingredient_line(names_.text_of(at, begin), names_.pantry()) || is_unknown_item(at, begin);
            if (is_first && (is_thing || known_item(next, end, true))) {
                return begin;
            }
        }
        return end;
    }

    // "4 oz. of clarified suet into": an amount of something, down to a word that leads on.
    bool is_unknown_item(std::size_t at, std::size_t end) const {
        std::size_t of = at + 1;
        while (of < end && names_.word(of) != "of") {
            ++of;
        }
        return of + 2 < end && is_one_of("into|with|in|to|over|on", names_.word(end - 1));
    }

    // "sugar dissolved in", "milk with": without the words that lead on to the next.
    std::size_t without_joint(std::size_t least, std::size_t end) const {
        while (end > least &&
               is_one_of("in|with|and|to|into|of|the|dissolved|over|on|upon|mixed|which|that|has|been",
                         names_.word(end - 1))) {
            --end;
        }
        return end;
    }

    // A bare number counts eggs, not milk.
    bool is_counted(std::string_view text) const {
        const SplitLine split = split_line(plain_line(text));
        const Ingredient* ingredient = find_name(split, names_.pantry()).match.ingredient;
        const bool is_bare = split.amount && split.amount->measure.name.empty();
        return !is_bare || ingredient == nullptr || ingredient->is_yeast() || text.front() <= '9' ||
               mass_of_piece(*ingredient, "").has_value();
    }

    // "of the sugar": what stands elsewhere with its amount. "Of the best flour" is new.
    static bool is_part(std::span<const LineToken> name) {
        const std::size_t at = !name.empty() && name.front().is("of") ? 1 : 0;
        const bool is_pointed =
            at < name.size() && is_one_of("the|this|that|these|those|your", name[at].folded);
        const bool is_other_water = // "a cup of the potato water"
            at + 2 < name.size() && name[at + 2].is("water") && !is_preparation_word(name[at + 1].folded);
        return is_pointed && at + 1 < name.size() && !is_other_water &&
               !is_one_of("best|finest|very|purest|whitest|freshest|following|usual", name[at + 1].folded);
    }

    const Ingredient* ingredient_of(std::string_view text) const {
        return name_in(text, names_.pantry()).ingredient;
    }

    const ProseNames& names_;
};

} // namespace

std::optional<FoundItem> measured_item(const ProseNames& names, std::size_t at) {
    return AmountFinder(names).measured(at);
}

std::size_t end_of_bare_amount(const ProseNames& names, std::size_t at) {
    return AmountFinder(names).bare(at);
}

} // namespace leavenwright
