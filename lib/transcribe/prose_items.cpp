#include "transcribe/prose_items.hpp"

#include "transcribe/find_name.hpp"
#include "transcribe/ingredient_line.hpp"
#include "transcribe/kitchen_acts.hpp"
#include "transcribe/match_name.hpp"
#include "transcribe/recipe_text.hpp"
#include "transcribe/running_text.hpp"
#include "transcribe/split_line.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <span>

namespace leavenwright {
namespace {

constexpr std::size_t longest_item = 120; // bytes of one amount and its name

// Small words that no name goes on with.
constexpr std::string_view behind_names =
    "and|or|on|over|in|into|to|if|while|as|at|with|for|from|upon|just|when|"
    "until|till|enough|through|around|round|under|out|is|are|may|which|that";

// Where an item of a clause stands, in words; `end` is behind the last.
struct Found {
    std::size_t begin = 0;
    std::size_t end = 0;
    std::size_t text_begin = 0; // bytes: a name in the clause before may begin it
    std::size_t text_end = 0;   // 0: where its last word ends
    const Ingredient* ingredient = nullptr;
    bool has_amount = false;
    bool is_known = true;
    bool is_part = false;
};

class ItemFinder {
public:
    ItemFinder(const SourcedText& paragraph, const Pantry& pantry, std::vector<const Ingredient*>& named)
        : paragraph_(paragraph), pantry_(pantry), known_(named) {}

    ProseItems find() {
        result_.clauses = clauses_of(paragraph_.text, is_running_text(paragraph_.text));
        for (at_clause_ = 0; at_clause_ < result_.clauses.size() && result_.items.size() < most_recipe_lines;
             ++at_clause_) {
            read_clause();
        }
        return std::move(result_);
    }

private:
    const ProseClause& clause() const { return result_.clauses[at_clause_]; }
    std::string_view word(std::size_t at) const { return clause().word(at); }
    std::size_t size() const { return clause().words.size(); }

    std::string_view text_of(std::size_t begin, std::size_t end) const {
        const std::size_t first = clause().words[begin].begin;
        return paragraph_.text.substr(first, clause().words[end - 1].end - first);
    }

    // ------------------------------------------------------------------ what is done with it

    void read_clause() {
        open_clause();
        for (std::size_t at = 0; at < size();) {
            if (clause().words[at].begin < last_end_) { // of an item that the clause before began
                ++at;
                continue;
            }
            const bool was_name_expected = is_name_expected_;
            read_verb(at);
            auto found = find_item(at);
            if (!found && is_name_expected_) {
                found = bare_name(at);
            }
            if (found) {
                push(*found);
                at = found->end;
                continue;
            }
            // "with plenty of", "and": words before a name do not end the wait for it
            is_name_expected_ =
                is_name_expected_ && (!was_name_expected || is_one_of("and|with|over", word(at)));
            ++at;
        }
    }

    void open_clause() {
        const bool is_joined = clause().mark_before == '&' || clause().mark_before == ',';
        is_name_expected_ = is_joined && is_behind_name_ && size() <= 4;
        is_behind_name_ = false;
        is_behind_verb_ = is_held_back_ = false;
        tries_ = 0;
        if (!clause().begins_sentence() && clause().mark_before != '-' && clause().mark_before != ':') {
            return;
        }
        if (clause().begins_sentence()) {
            sentence_role_ = group_role_;
        }
        if (const std::string_view role = role_of_opening(); !role.empty()) {
            sentence_role_ = role;
            group_role_ = is_label() ? sentence_role_ : group_role_;
        }
        if (clause().begins_sentence()) {
            items_before_sentence_ = result_.items.size();
            pending_ = {};
        }
        role_ = sentence_role_;
    }

    // "Glaze:", "For the icing.--"
    bool is_label() const {
        return size() <= 4 && (clause().mark_behind == ':' || clause().mark_behind == '-' ||
                               (clause().mark_behind == '.' && size() <= 3));
    }

    std::string role_of_opening() const {
        if (is_one_of("serve|eat", word(1)) && word(0) == "to") {
            return "serving";
        }
        if (word(0) == "when" && is_one_of("done|baked", word(1))) {
            return "serving";
        }
        const bool is_for = word(0) == "for";
        if (!is_for && !is_label()) {
            return {};
        }
        const std::size_t begin = (is_for ? 1U : 0U) + (word(is_for ? 1 : 0) == "the" ? 1U : 0U);
        std::string title(word(begin));
        title += is_label() && begin + 1 < size() ? " " + std::string(word(begin + 1)) : "";
        const auto role = role_of_heading(title);
        return role && !is_in_dough(*role) ? *role : std::string();
    }

    // "hot rolls", "a top": behind an article a verb is none.
    bool is_noun(std::size_t at) const {
        return at > 0 && is_one_of("the|a|an|of|on|its|this|sweet|sour|thick|thin|all|cold|hot|rich|good",
                                   word(at - 1));
    }

    void read_verb(std::size_t at) {
        const std::string_view verb = word(at);
        if (!pending_.role.empty() && is_one_of(pending_.joints, verb)) {
            role_ = has_surface(at) && pending_.role == "topping" ? "dusting" : std::string(pending_.role);
            is_name_expected_ = true;
            return;
        }
        if (is_one_of("in|into", verb) && is_one_of("hot|boiling|deep|smoking", word(at + 1)) &&
            is_fat_behind(at + 1)) {
            role_ = "bath";
            is_name_expected_ = true;
            return;
        }
        if (is_noun(at)) {
            return;
        }
        const AsideAct act = aside_act(verb);
        if (!act.role.empty() && (!act.is_participle || word(at + 1) == "with")) {
            pending_ = act;
            if (act.is_direct && !is_one_of("in|into", word(at + 1))) {
                role_ = has_surface(at) ? "dusting" : act.role;
                is_name_expected_ = true;
            }
            is_behind_verb_ = true;
        } else if (verb == "rub" && has_surface(at)) { // "rub the pans with lard"
            pending_ = {.role = "greasing", .joints = "with"};
        } else if (is_mixing_verb(verb)) {
            role_ = sentence_role_;
            pending_ = {};
            is_held_back_ = is_name_expected_ = false;
            is_behind_verb_ = is_behind_verb_ || verb != "take";
        } else if (is_one_of("reserve|reserving|save|saving|keep|keeping", verb)) {
            is_held_back_ = true;
        }
    }

    bool has_surface(std::size_t at) const {
        constexpr std::size_t near = 6;
        for (std::size_t other = at - std::min(at, near); other < std::min(at + near, size()); ++other) {
            if (is_surface(word(other))) {
                return true;
            }
        }
        return false;
    }

    bool is_fat_behind(std::size_t at) const {
        for (std::size_t end = at + 1; end <= std::min(at + 4, size()); ++end) {
            const Ingredient* known = named(at, end);
            if (known != nullptr && known->ingredient_class == IngredientClass::fat) {
                return true;
            }
        }
        return false;
    }

    // ------------------------------------------------------------------ items

    void push(const Found& found) {
        const bool is_named_before = std::any_of(known_.begin(), known_.end(), [&](const Ingredient* other) {
            return is_same_kind(other, found.ingredient);
        });
        const bool has_item = result_.items.size() > items_before_sentence_;
        const bool is_alternative = has_item && is_behind_or(found.begin);
        is_name_expected_ = false;
        is_behind_name_ = !found.has_amount;
        if (is_alternative || ((found.is_part || is_held_back_) && is_named_before)) {
            return;
        }
        const std::size_t end = found.text_end > 0 ? found.text_end : clause().words[found.end - 1].end;
        if (found.ingredient != nullptr) {
            known_.push_back(found.ingredient);
        }
        last_end_ = end;
        result_.items.push_back({.place = paragraph_.part(found.text_begin, end - found.text_begin),
                                 .role = role_,
                                 .clause = at_clause_,
                                 .has_amount = found.has_amount,
                                 .is_known = found.is_known,
                                 .is_part = found.is_part,
                                 .is_behind_verb = is_behind_verb_});
    }

    // "or two cups of home-made yeast": the first is taken.
    bool is_behind_or(std::size_t at) const {
        constexpr std::size_t near = 2;
        for (std::size_t before = at - std::min(at, near); before < at; ++before) {
            if (word(before) == "or") {
                return true;
            }
        }
        return false;
    }

    std::optional<Found> find_item(std::size_t at) {
        constexpr int most_tries = 12; // of one clause
        if (auto found = without_amount(at)) {
            return found;
        }
        if (tries_ >= most_tries) {
            return std::nullopt;
        }
        if (auto found = likened(at)) {
            return found;
        }
        if (!may_begin_amount(word(at))) {
            return std::nullopt;
        }
        ++tries_;
        return measured(at);
    }

    // Where the words of an item that begins at `at` end: at a verb, or where it grows too long.
    std::size_t end_of_words(std::size_t at) const {
        std::size_t end = at + 1;
        while (end < size() && clause().words[end].end - clause().words[at].begin <= longest_item &&
               !(ends_name(word(end)) && !is_noun(end))) {
            ++end;
        }
        return end;
    }

    // Where "the yolk of an egg", "grated rind of a lemon" begins, before its "an".
    std::size_t begin_of_part(std::size_t at) const {
        const bool is_part = at >= 2 && word(at - 1) == "of" &&
                             is_one_of("yolk|yolks|white|whites|rind|rinds|juice|zest|peel", word(at - 2));
        const std::size_t begin = is_part ? at - 2 : at;
        return is_part && begin > 0 && word(begin - 1) == "grated" ? begin - 1 : begin;
    }

    std::optional<Found> measured(std::size_t at) const {
        const std::size_t begin = begin_of_part(at);
        std::size_t end = end_of_words(at);
        const auto tokens = line_tokens(plain_line(text_of(at, end)));
        const auto amount = read_kitchen_amount(tokens);
        if (!amount) {
            return std::nullopt;
        }
        const auto name = std::span(tokens).subspan(std::min(amount->length, tokens.size()));
        const bool is_measured = !amount->measure.is_piece();
        if (is_measured && names_nothing(name)) {
            return with_name_before(at, end);
        }
        const bool is_less =
            std::any_of(name.begin(), name.begin() + std::min<std::ptrdiff_t>(2, std::ssize(name)),
                        [](const LineToken& token) { return token.is("less"); });
        if (is_less) { // "by using one-half cup less flour"
            return std::nullopt;
        }
        end = begin_of_next(at, end);
        for (std::size_t last = end; last > at + 1 && last + 6 > end; --last) {
            const bool is_cut = last < end;
            if (is_cut && !may_follow_name(word(last))) {
                continue;
            }
            const std::string_view text = text_of(begin, last);
            if (is_ingredient_line(text, pantry_) && (is_measured || is_counted(text))) {
                const Ingredient* ingredient = ingredient_of(text);
                return Found{.begin = begin,
                             .end = without_joint(at + 1, last),
                             .text_begin = clause().words[begin].begin,
                             .text_end = last == size() && is_measured ? end_of_mixture(ingredient) : 0U,
                             .ingredient = ingredient,
                             .has_amount = true,
                             .is_known = true,
                             .is_part = is_part(name)};
            }
        }
        const bool names_something = name.size() > 1 && name[0].is("of") && name[1].is_word();
        if (is_measured && names_something && !is_part(name) && !is_one_of("it|them|which", name[1].folded)) {
            return Found{.begin = begin,
                         .end = end,
                         .text_begin = clause().words[begin].begin,
                         .ingredient = nullptr,
                         .has_amount = true,
                         .is_known = false};
        }
        return std::nullopt;
    }

    // "a cup of butter and lard mixed": the amount is of both. Where it ends; 0 where it is of one.
    std::size_t end_of_mixture(const Ingredient* first) const {
        if (clause().mark_behind != '&' || at_clause_ + 1 >= result_.clauses.size() || first == nullptr) {
            return 0;
        }
        const ProseClause& next = result_.clauses[at_clause_ + 1];
        std::size_t words = next.words.size();
        words -= next.word(words - 1) == "mixed" ? 1U : 0U;
        if (words < 2 || words > 4 || next.word(0) != "and" || next.word(1) == "the") {
            return 0;
        }
        const std::size_t begin = next.words[1].begin;
        const Ingredient* second = known(paragraph_.text.substr(begin, next.words[words - 1].end - begin));
        const auto is_liquid = [](const Ingredient& one) {
            return one.ingredient_class == IngredientClass::liquid ||
                   one.ingredient_class == IngredientClass::dairy;
        };
        const bool is_mixed =
            second != nullptr && (is_same_kind(first, second) || (is_liquid(*first) && is_liquid(*second)));
        return is_mixed && first != second ? next.words.back().end : 0U;
    }

    // "five cups, or until it is stiff": no name behind the amount.
    static bool names_nothing(std::span<const LineToken> name) {
        return name.empty() || name[0].is("or") || name[0].is("until") || name[0].is("till") ||
               name[0].is("to") || name[0].is("being");
    }

    // "graham flour, five cups": the name ends the clause before.
    std::optional<Found> with_name_before(std::size_t at, std::size_t end) const {
        if (at != 0 || at_clause_ == 0) {
            return std::nullopt;
        }
        const ProseClause& before = result_.clauses[at_clause_ - 1];
        const bool is_behind_mark =
            std::string_view(",(:-").find(before.mark_behind) != std::string_view::npos;
        for (std::size_t last = at + 2; last < end; ++last) {
            end = is_one_of("or|until|till|to|being", word(last)) && !may_begin_amount(word(last + 1)) ? last
                                                                                                       : end;
        }
        for (std::size_t length = std::min<std::size_t>(3, before.words.size()); is_behind_mark && length > 0;
             --length) {
            const ProseWord& first = before.words[before.words.size() - length];
            const std::string_view name =
                paragraph_.text.substr(first.begin, before.words.back().end - first.begin);
            if (first.begin >= last_end_ && known(name) != nullptr) {
                return Found{.begin = at,
                             .end = end,
                             .text_begin = first.begin,
                             .ingredient = known(name),
                             .has_amount = true};
            }
        }
        return std::nullopt;
    }

    // Where a second item begins in the words of the first: "yeast with a saltspoonful of sugar".
    std::size_t begin_of_next(std::size_t at, std::size_t end) const {
        constexpr int most_tries = 4;
        int tries = 0;
        for (std::size_t next = at + 2; next + 1 <= end && tries < most_tries; ++next) {
            const bool is_thing = without_amount(next).has_value();
            const bool may_be = is_thing || (may_begin_amount(word(next)) && next + 1 < end);
            if (!may_be) {
                continue;
            }
            ++tries;
            const std::size_t begin = begin_of_part(next);
            if (begin > at + 1 && is_ingredient_line(text_of(at, begin), pantry_) &&
                (is_thing || is_ingredient_line(text_of(begin, end), pantry_))) {
                return begin;
            }
        }
        return end;
    }

    // "sugar dissolved in", "milk with": without the words that lead on to the next.
    std::size_t without_joint(std::size_t least, std::size_t end) const {
        while (end > least &&
               is_one_of("in|with|and|to|into|of|the|dissolved|over|on|upon|mixed", word(end - 1))) {
            --end;
        }
        return end;
    }

    // A word that ends a name: an adverb, a participle, a small word.
    static bool may_follow_name(std::string_view word) {
        return word.ends_with("ly") || word.ends_with("ing") || word.ends_with("ed") ||
               is_one_of(
                   "together|once|first|also|while|all|one|two|three|four|after|before|being|by|well|very|"
                   "not|without|they|you|we|it|he|she|this|but|as|if|there|here|now|thus|previously",
                   word);
    }

    // A bare number counts eggs, not milk.
    bool is_counted(std::string_view text) const {
        const SplitLine split = split_line(plain_line(text));
        const Ingredient* ingredient = find_name(split, pantry_).match.ingredient;
        const bool is_bare = split.amount && split.amount->measure.name.empty();
        return !is_bare || ingredient == nullptr || ingredient->is_yeast() || text.front() <= '9' ||
               mass_of_piece(*ingredient, "").has_value();
    }

    // "of the sugar": what stands elsewhere with its amount. "Of the best flour" is new.
    static bool is_part(std::span<const LineToken> name) {
        const std::size_t at = !name.empty() && name.front().is("of") ? 1 : 0;
        const bool is_pointed =
            at < name.size() && is_one_of("the|this|that|these|those|your", name[at].folded);
        return is_pointed && at + 1 < name.size() &&
               !is_one_of("best|finest|very|purest|whitest|freshest|following|usual", name[at + 1].folded);
    }

    const Ingredient* ingredient_of(std::string_view text) const {
        return find_name(split_line(plain_line(text)), pantry_).match.ingredient;
    }

    // ------------------------------------------------------------------ without an amount

    // The pantry's ingredient that all of the words name; null where they name none.
    const Ingredient* known(std::string_view text) const {
        if (text.size() > longest_item) {
            return nullptr;
        }
        const NameMatch match = match_name(line_tokens(plain_line(text)), pantry_);
        return match.ingredient != nullptr || match.meanings.empty()
                   ? match.ingredient
                   : pantry_.find(match.meanings.front()).ingredient;
    }

    const Ingredient* named(std::size_t begin, std::size_t end) const {
        const bool is_open = is_one_of("of|and|the|a|in|with|to|or|is|into", word(end - 1)) ||
                             is_one_of("and|or|to|in|with|is|of", word(begin));
        return begin >= end || is_open ? nullptr : known(text_of(begin, end));
    }

    std::optional<Found> known_from(std::size_t begin, std::size_t name, bool is_bare) const {
        constexpr std::size_t most_words = 4;
        if (is_one_of("the|this|that|these|rest|remaining|remainder|it|them", word(name))) {
            return std::nullopt;
        }
        for (std::size_t end = std::min(name + most_words, size()); end > name; --end) {
            const bool ends_there = end == size() || is_one_of(behind_names, word(end)) ||
                                    may_follow_name(word(end)) || (!is_bare && ends_name(word(end)));
            if (const Ingredient* ingredient = named(name, end); ingredient != nullptr && ends_there) {
                return Found{.begin = begin,
                             .end = end,
                             .text_begin = clause().words[begin].begin,
                             .ingredient = ingredient};
            }
        }
        return std::nullopt;
    }

    // What an act is done with: "brush with melted butter", "and strew with plenty of sugar".
    std::optional<Found> bare_name(std::size_t at) const {
        std::size_t name = at;
        while (is_one_of("a|little|bit|of|some|plenty|more|few|deep|deal|good|nice|smoking|very|fine|and",
                         word(name))) {
            ++name;
        }
        return name < size() ? known_from(word(at) == "and" ? name : at, name, true) : std::nullopt;
    }

    std::optional<Found> without_amount(std::size_t at) const {
        constexpr std::string_view before =
            "enough|sufficient|plenty|some|little|bit|piece|trifle|grating|dusting";
        const std::size_t article = is_one_of("a|as|so", word(at)) ? 1 : 0;
        const std::string_view much = word(at + article);
        const bool is_as_much = word(at) != "a" && article == 1 && much == "much";
        const bool needs_article = is_one_of("little|bit|piece|trifle|grating|dusting", much);
        if ((article == 1 && word(at) == "a" && needs_article) || is_as_much ||
            (article == 0 && is_one_of(before, much) && !needs_article)) {
            std::size_t name = at + article + 1;
            name += word(name) == "more" ? 1U : 0U;
            name += word(name) == "of" ? 1U : 0U;
            return is_likened_from(at) ? std::nullopt : thing_from(at, name);
        }
        return enough_behind(at);
    }

    // What is greased or eaten with need not be known: "a bit of salt pork".
    std::optional<Found> thing_from(std::size_t begin, std::size_t name) const {
        constexpr std::size_t most_words = 3;
        auto found = known_from(begin, name, false);
        const bool is_apart = !is_in_dough(role_) && name < size() && size() <= name + most_words &&
                              !is_one_of("the|this|that|these|rest|it|them|more", word(name));
        return found || !is_apart ? found
                                  : Found{.begin = begin,
                                          .end = size(),
                                          .text_begin = clause().words[begin].begin,
                                          .is_known = false};
    }

    // "flour to make a stiff batter", "flour enough to roll out", "salt to taste"
    std::optional<Found> enough_behind(std::size_t at) const {
        constexpr std::size_t most_words = 3;
        if (at > 0 && is_one_of("the|this|that|of", word(at - 1))) {
            return std::nullopt;
        }
        for (std::size_t end = at + 1; end <= at + most_words && end < size(); ++end) {
            const bool is_enough = is_one_of("enough|sufficient", word(end));
            const bool is_use =
                word(end) == "to" &&
                is_one_of("make|form|mould|mold|roll|stiffen|thicken|taste|knead|sweeten|mix|bring",
                          word(end + 1));
            if ((is_enough || is_use) && named(at, end) != nullptr && !may_begin_amount(word(at))) {
                return Found{.begin = at,
                             .end = end_of_words(at),
                             .text_begin = clause().words[at].begin,
                             .ingredient = named(at, end)};
            }
        }
        return std::nullopt;
    }

    // Words on, where "size" or "as large as" stands near.
    bool is_likened_from(std::size_t at) const {
        constexpr std::size_t near = 8;
        for (std::size_t mark = at; mark < std::min(at + near, size()); ++mark) {
            const bool is_as = is_one_of("large|big", word(mark)) && mark > 0 && word(mark - 1) == "as";
            if (word(mark) == "size" || is_as) {
                return true;
            }
        }
        return false;
    }

    // "a piece of butter the size of an egg", "butter as large as a walnut"
    std::optional<Found> likened(std::size_t at) {
        const bool may_begin = !is_one_of("and|in|with|of|the|to|into|then|add|as|about|size", word(at));
        if (!may_begin || !is_likened_from(at)) {
            return std::nullopt;
        }
        ++tries_;
        const std::size_t end = end_of_words(at);
        const SplitLine split = split_line(plain_line(text_of(at, end)));
        const Ingredient* ingredient = find_name(split, pantry_).match.ingredient;
        if (split.size_of.empty() || ingredient == nullptr) {
            return std::nullopt;
        }
        return Found{.begin = at,
                     .end = end,
                     .text_begin = clause().words[at].begin,
                     .ingredient = ingredient,
                     .has_amount = true};
    }

    SourcedText paragraph_;
    const Pantry& pantry_;
    std::vector<const Ingredient*>& known_; // named so far
    ProseItems result_;
    std::string role_ = "dough";
    std::string sentence_role_ = "dough";
    std::string group_role_ = "dough"; // behind "For the icing:"
    AsideAct pending_;                 // whose "with" has not come yet
    std::size_t at_clause_ = 0;
    std::size_t items_before_sentence_ = 0;
    std::size_t last_end_ = 0;      // of the last item, in bytes
    bool is_name_expected_ = false; // behind "brush with"
    bool is_behind_name_ = false;   // "milk and sugar": a second name may follow
    bool is_behind_verb_ = false;
    bool is_held_back_ = false;
    int tries_ = 0;
};

} // namespace

bool is_same_kind(const Ingredient* one, const Ingredient* other) {
    if (one == nullptr || other == nullptr || one == other) {
        return one == other;
    }
    constexpr auto kinds =
        std::to_array<IngredientClass>({IngredientClass::flour, IngredientClass::sweetener,
                                        IngredientClass::fat, IngredientClass::yeast, IngredientClass::salt});
    return one->ingredient_class == other->ingredient_class &&
           std::find(kinds.begin(), kinds.end(), one->ingredient_class) != kinds.end();
}

ProseItems find_prose_items(const SourcedText& paragraph, const Pantry& pantry,
                            std::vector<const Ingredient*>& named) {
    return ItemFinder(paragraph, pantry, named).find();
}

} // namespace leavenwright
