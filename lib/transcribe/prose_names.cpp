#include "transcribe/prose_names.hpp"

#include "transcribe/find_name.hpp"
#include "transcribe/kitchen_acts.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/match_name.hpp"
#include "transcribe/split_line.hpp"

#include <algorithm>
#include <array>

namespace leavenwright {

namespace {

bool is_small_word(std::string_view word) {
    return is_one_of(
        "and|or|on|over|in|into|to|if|while|as|at|with|for|from|upon|just|when|until|till|enough|"
        "through|around|round|under|out|is|are|may|which|that|the|this|every|each|makes|make|will|can",
        word);
}

} // namespace

bool ends_prose_name(std::string_view word) {
    // "jelly" is the one name of a kitchen that ends as an adverb does
    return (word.ends_with("ly") && word != "jelly") || word.ends_with("ing") || word.ends_with("ed") ||
           is_small_word(word) ||
           is_one_of(
               "together|once|first|also|all|one|two|three|four|after|before|being|by|well|very|not|without|"
               "they|you|we|it|he|she|but|there|here|now|thus|previously|has|have|had|been|was|were|allow|"
               "add|light|stiff|smooth|rather",
               word);
}

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

bool is_fluid(const Ingredient& one) {
    return one.ingredient_class == IngredientClass::liquid || one.ingredient_class == IngredientClass::dairy;
}

bool may_be_mixed(const Ingredient* one, const Ingredient* other) {
    return one != nullptr && other != nullptr && one != other &&
           (is_same_kind(one, other) || (is_fluid(*one) && is_fluid(*other)));
}

std::string_view ProseNames::text_of(std::size_t begin, std::size_t end) const {
    const std::size_t first = clause().words[begin].begin;
    return text_.substr(first, clause().words[end - 1].end - first);
}

// "hot rolls", "a top": behind an article a verb is none.
bool ProseNames::is_noun(std::size_t at) const {
    return at > 0 &&
           is_one_of("the|a|an|of|on|its|this|each|every|per|sweet|sour|thick|thin|rich", word(at - 1));
}

// Where the words of an item that begins at `at` end: at a verb, or where it grows too long.
std::size_t ProseNames::end_of_words(std::size_t at) const {
    std::size_t end = at + 1;
    while (end < size() && clause().words[end].end - clause().words[at].begin <= longest_prose_item &&
           !(ends_name(word(end)) && !is_noun(end) && !(word(end) == "mix" && end + 1 == size()))) {
        ++end;
    }
    return end;
}

// The pantry's ingredient that all of the words name; null where they name none.
const Ingredient* ProseNames::known(std::string_view text) const {
    if (text.size() > longest_prose_item || text.ends_with("-warm")) { // "milk-warm" says how warm
        return nullptr;
    }
    const NameMatch match = match_name(line_tokens(plain_line(text)), pantry_);
    return match.ingredient != nullptr || match.meanings.empty()
               ? match.ingredient
               : pantry_.find(match.meanings.front()).ingredient;
}

const Ingredient* ProseNames::named(std::size_t begin, std::size_t end) const {
    const bool is_open = is_one_of("of|and|the|a|in|with|to|or|is|into", word(end - 1)) ||
                         is_one_of("and|or|to|in|with|is|of", word(begin));
    return begin >= end || is_open ? nullptr : known(text_of(begin, end));
}

std::optional<FoundItem> ProseNames::known_from(std::size_t begin, std::size_t name, bool is_bare) const {
    constexpr std::size_t most_words = 4;
    if (is_one_of("the|this|that|these|rest|remaining|remainder|it|them", word(name))) {
        return std::nullopt;
    }
    std::size_t most = name + 1;
    while (most < std::min(name + most_words, size()) && !is_small_word(word(most))) {
        ++most;
    }
    for (std::size_t end = std::min(most, size()); end > name; --end) {
        const bool ends_there =
            end == size() || ends_prose_name(word(end)) || (!is_bare && ends_name(word(end)));
        if (const Ingredient* ingredient = named(name, end); ingredient != nullptr && ends_there) {
            return FoundItem{.begin = begin,
                             .end = end,
                             .text_begin = clause().words[begin].begin,
                             .ingredient = ingredient};
        }
    }
    return std::nullopt;
}

// What an act is done with: "brush with melted butter", "and strew with plenty of sugar".
std::optional<FoundItem> ProseNames::bare_name(std::size_t at) const {
    std::size_t name = at;
    while (
        is_one_of("a|little|bit|of|some|plenty|more|few|deep|deal|good|nice|smoking|very|fine|and|thin|thick|"
                  "paste|mixture|coating",
                  word(name))) {
        const bool is_vague = is_one_of(
            "little|bit|few|good|nice|deal|very|fine|thin|thick|paste|mixture|coating", word(name + 1));
        if (word(name) == "a" && !is_vague) { // "a nutmeg" is an amount
            return std::nullopt;
        }
        ++name;
    }
    const bool is_mixture = name > at + 1 && word(name - 1) == "of" && // "a thin paste of cornstarch"
                            is_one_of("paste|mixture|coating", word(name - 2));
    return name < size() ? known_from(word(at) == "and" || is_mixture ? name : at, name, true) : std::nullopt;
}

std::optional<FoundItem> ProseNames::without_amount(std::size_t at, bool is_apart) const {
    constexpr std::string_view before =
        "enough|sufficient|plenty|some|little|few|bit|piece|trifle|grating|dusting|dust";
    if (at == 0 && is_one_of("enough|sufficient", word(0)) && is_one_of("to|for", word(1))) {
        auto found = name_before(); // "milk, enough to make a batter"
        if (found) {
            found->end = end_of_words(0);
        }
        return found;
    }
    std::size_t article = is_one_of("a|as|so", word(at)) ? 1 : 0;
    article += article == 1 && word(at + 1) == "very" ? 1U : 0U; // "a very little hot water"
    const std::string_view much = word(at + article);
    const bool is_as_much = word(at) != "a" && article > 0 && is_one_of("much|little", much);
    const bool needs_article = is_one_of("little|few|bit|piece|trifle|grating|dusting|dust", much);
    if ((article > 0 && word(at) == "a" && needs_article) || is_as_much ||
        (article == 0 && is_one_of(before, much) && !needs_article)) {
        std::size_t name = at + article + 1;
        name += is_one_of("more|very", word(name)) ? 1U : 0U;
        name += word(name) == "of" ? 1U : 0U;
        if (is_likened(at)) {
            return std::nullopt;
        }
        auto found = thing_from(at, name, is_apart);
        if (found && !is_one_of("little|some", much)) { // "plenty of" is no part of a line
            found->text_begin = clause().words[name].begin;
        }
        return found;
    }
    return enough_behind(at);
}

// What is greased or eaten with need not be known: "a bit of salt pork".
std::optional<FoundItem> ProseNames::thing_from(std::size_t begin, std::size_t name, bool is_apart) const {
    constexpr std::size_t most_words = 3;
    auto found = known_from(begin, name, false);
    const bool is_thing = is_apart && !is_one_of("paper|cloth|knife|brush|fork", word(size() - 1)) &&
                          name < size() && size() <= name + most_words &&
                          !is_one_of("the|this|that|these|rest|it|them|more", word(name));
    return found || !is_thing ? found
                              : FoundItem{.begin = begin,
                                          .end = size(),
                                          .text_begin = clause().words[begin].begin,
                                          .is_known = false};
}

// "flour to make a stiff batter", "flour enough to roll out", "salt to taste"
std::optional<FoundItem> ProseNames::enough_behind(std::size_t at) const {
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
        const bool is_until = is_one_of("until|till", word(end)) && is_stirred_in(at, named(at, end));
        if ((is_enough || is_use || is_until) && named(at, end) != nullptr && !may_begin_amount(word(at))) {
            return FoundItem{.begin = at,
                             .end = std::min(end_of_words(end + 1), size()),
                             .text_begin = clause().words[at].begin,
                             .ingredient = named(at, end)};
        }
    }
    return std::nullopt;
}

// "stir in sifted flour until it is thick", "mix with warm water till"
bool ProseNames::is_stirred_in(std::size_t at, const Ingredient* thing) const {
    constexpr std::size_t near = 3;
    const bool makes_dough = thing != nullptr && (thing->is_flour() || is_fluid(*thing));
    bool is_verb = false;
    for (std::size_t before = at - std::min(at, near); before < at; ++before) {
        is_verb = is_verb || is_one_of("stir|work|knead|add|beat|mix|put|stiffen|thicken", word(before));
    }
    return makes_dough && is_verb && is_one_of("in|with|add", word(at - 1)) &&
           !is_one_of("the|this|that", word(at)); // which stands before
}

// Words on, where "size" or "as large as" stands near.
bool ProseNames::is_likened(std::size_t at) const {
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
std::optional<FoundItem> ProseNames::likened(std::size_t at) const {
    const bool may_begin = !is_one_of("and|in|with|of|the|to|into|then|add|as|about|size", word(at));
    if (!may_begin || !is_likened(at)) {
        return std::nullopt;
    }
    std::size_t end = end_of_words(at);
    for (std::size_t joint = at + 1; joint < end; ++joint) { // "into a quart of flour"
        end = word(joint) == "into" ? joint : end;
    }
    const SplitLine split = split_line(plain_line(text_of(at, end)));
    const Ingredient* ingredient = find_name(split, pantry_).match.ingredient;
    if (split.size_of.empty() || ingredient == nullptr) {
        return std::nullopt;
    }
    return FoundItem{.begin = at,
                     .end = end,
                     .text_begin = clause().words[at].begin,
                     .ingredient = ingredient,
                     .has_amount = true};
}

// The name that ends the clause before; only its first byte and its ingredient are set.
std::size_t ProseNames::begin_of_mixture(const Ingredient* second) const {
    if (at_clause_ < 2 || clauses_[at_clause_ - 1].mark_before != '&') {
        return 0;
    }
    const ProseClause& first = clauses_[at_clause_ - 2];
    const std::size_t begin = first.words.front().begin;
    const bool is_mixed = begin >= last_end_ && first.words.size() <= 2 &&
                          may_be_mixed(known(text_.substr(begin, first.words.back().end - begin)), second);
    return is_mixed ? begin + 1 : 0U;
}

std::optional<FoundItem> ProseNames::name_before() const {
    if (at_clause_ == 0) {
        return std::nullopt;
    }
    const bool is_choice = at_clause_ > 1 && clauses_[at_clause_ - 1].word(0) == "or"; // "water (or milk)"
    const ProseClause& before = clauses_[at_clause_ - (is_choice ? 2 : 1)];
    const bool is_behind_mark = std::string_view(",(:-").find(before.mark_behind) != std::string_view::npos;
    const std::size_t most = before.words.size() - (before.word(0) == "and" ? 1U : 0U);
    for (std::size_t length = std::min<std::size_t>(3, most); is_behind_mark && length > 0; --length) {
        const ProseWord& first = before.words[before.words.size() - length];
        const std::string_view name = text_.substr(first.begin, before.words.back().end - first.begin);
        const Ingredient* ingredient = first.begin >= last_end_ ? known(name) : nullptr;
        if (ingredient != nullptr) {
            const bool is_joined = length + 1 == before.words.size() && before.word(0) == "and";
            const std::size_t mixed = is_joined ? begin_of_mixture(ingredient) : 0U;
            return FoundItem{.text_begin = mixed > 0 ? mixed - 1 : first.begin, .ingredient = ingredient};
        }
    }
    return std::nullopt;
}

} // namespace leavenwright
