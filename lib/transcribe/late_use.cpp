#include "transcribe/late_use.hpp"

#include <algorithm>
#include <array>

namespace leavenwright {
namespace {

using Words = std::span<const DirectionWord>;
using Kind = DirectionWord::Kind;

constexpr auto pastes =
    std::to_array<std::string_view>({"paste", "cross", "pipe", "piping", "crumb", "streusel", "custard"});
constexpr auto surfaces = std::to_array<std::string_view>(
    {"bowl",    "pan",      "pans",      "tin",     "tins",    "sheet",  "sheets",  "board",    "boards",
     "counter", "tray",     "trays",     "skillet", "mould",   "moulds", "mold",    "molds",    "case",
     "cases",   "banneton", "bannetons", "basket",  "baskets", "bench",  "surface", "surfaces", "worktop",
     "table",   "hands",    "parchment", "paper",   "griddle", "cups",   "cloth",   "peel"});

// Flour goes in: not "a floured board", nor "flour the board", "with a little flour".
bool takes_flour(Words sentence) {
    constexpr std::size_t few = 3;
    for (std::size_t at = 0; at < sentence.size(); ++at) {
        const bool is_flour = sentence[at].is_any({"flour", "flours"});
        const Words rest = words_behind(sentence, at, few);
        const bool is_strewn =
            has_word(rest, surfaces) || (at > 0 && sentence[at - 1].is_any({"with", "little"}));
        if (is_flour && !is_strewn) {
            return true;
        }
    }
    return false;
}

// Between "to" and "dough".
constexpr auto words_of_dough = std::to_array<std::string_view>(
    {"a",     "the",    "soft",  "wet",   "smooth",  "stiff",   "firm",   "sticky",
     "rough", "light",  "loose", "slack", "shaggy",  "silky",   "thick",  "thin",
     "very",  "fairly", "nice",  "good",  "pliable", "elastic", "coarse", "softish"});

bool goes_into_dough(Words sentence) {
    for (std::size_t at = 0; at + 1 < sentence.size(); ++at) {
        std::size_t next = at + 1; // behind "the", "soft"
        while (next < sentence.size() && sentence[next].is_any(words_of_dough)) {
            ++next;
        }
        const bool is_into = sentence[at].is_any({"into", "to", "in", "a"}); // "to a dough"
        if (is_into && next < sentence.size() && sentence[next].is_any({"dough", "batter", "sponge"})) {
            return true;
        }
    }
    return false;
}

// "For the topping cream the shortening with the flour."
bool is_for_top(Words sentence) {
    constexpr std::size_t few = 4;
    return sentence.front().text == "for" &&
           has_word(words_behind(sentence, 0, few),
                    {"topping", "filling", "glaze", "icing", "frosting", "streusel", "crumb", "crumbs",
                     "crust", "cross", "crosses", "paste"});
}

// "Mix all the ingredients", but "of the filling".
bool mixes_whole_list(Words sentence) {
    return mixes_all(sentence) &&
           !has_word(sentence, {"topping", "filling", "glaze", "icing", "frosting", "streusel", "other"});
}

// Something is mixed into the dough there: not "my yeast was old", nor "you may add nuts".
bool makes_dough(Words sentence) {
    const bool is_mixed = std::any_of(sentence.begin(), sentence.end(),
                                      [](const DirectionWord& word) { return word.kind == Kind::mix; });
    if (!is_mixed || has_word(sentence, {"may", "can", "could", "if", "instead"}) || is_for_top(sentence)) {
        return false;
    }
    const bool is_added = // "press the slices into the dough" is not
        has_stem(sentence, {"mix", "add", "stir", "beat", "knead", "fold", "work", "incorporat", "combin",
                            "blend", "whisk", "rub", "make", "prepar", "bring", "form"});
    return (is_added && (goes_into_dough(sentence) || mixes_whole_list(sentence))) ||
           (takes_flour(sentence) && !has_stem(sentence, pastes)) || has_stem(sentence, {"knead", "yeast"});
}

// The dough is left alone or shaped there.
bool is_rest(Words sentence) {
    const bool is_proofed_yeast = has_stem(sentence, {"yeast"}); // "proof the yeast in the milk"
    return has_stem(sentence, {"rise", "rising", "risen", "doubl", "ferment", "shape", "divide", "bake",
                               "chill", "refrigerat", "fridge", "overnight", "bulk", "retard"}) ||
           has_word(sentence, {"rest", "stand", "roll"}) ||
           (has_word(sentence, {"leave", "left", "aside"}) &&
            has_word(sentence, {"hour", "hours", "minutes", "mins", "min", "h", "warm"})) ||
           (!is_proofed_yeast && has_stem(sentence, {"prov", "proof"}));
}

// Greased pans, what is served with it, and what one may do.
bool is_beside_recipe(Words sentence) {
    return has_stem(sentence, {"serv", "enjoy", "store", "freez", "reheat", "toast", "optional"}) ||
           sentence.front().text == "if";
}

// The act that the word at `at` orders, and what it is for: not "brushed", nor "brush the tins".
std::string_view role_of_order(Words words, std::size_t at) {
    struct Act {
        std::string_view stem;
        std::string_view role;
    };
    constexpr auto acts = std::to_array<Act>({{"dip", "topping"},
                                              {"dot", "topping"},
                                              {"dunk", "topping"},
                                              {"coat", "topping"},
                                              {"drench", "topping"},
                                              {"frost", "topping"},
                                              {"smear", "filling"},
                                              {"slather", "topping"},
                                              {"stuff", "filling"},
                                              {"ladle", "topping"},
                                              {"immers", "topping"},
                                              {"pipe", "topping"},
                                              {"poach", "bath"}});
    constexpr std::size_t few = 5;
    const DirectionWord& word = words[at];
    const Words rest = words_behind(words, at, few);
    if (word.text.ends_with("ed") || has_word(rest, surfaces)) {
        return {};
    }
    const bool is_over = has_word(rest, {"over", "on", "onto"});
    if (word.kind == Kind::apart) {
        const bool goes_in = !rest.empty() && rest.front().is_any({"in", "into"});
        return goes_in || (word.text.starts_with("lay") && !is_over) ? std::string_view() : word.role;
    }
    for (const Act& act : acts) {
        if (word.text.starts_with(act.stem)) {
            return act.role;
        }
    }
    const bool is_poured = word.is_any({"spoon", "pour", "trickle"}) && is_over;
    if (word.is_any({"boil", "simmer"}) && !rest.empty() && rest.front().text == "in") {
        return "bath";
    }
    const bool is_iced = word.text == "ice" && !rest.empty() && rest.front().text == "the";
    const bool is_rolled = // "roll in the sugar", "toss the knots in it"
        word.is_any({"roll", "toss"}) && has_word(rest, {"in"});
    if (word.text == "rub" && has_word(rest, {"top", "tops", "crust", "crusts", "loaf", "loaves"})) {
        return "brushing";
    }
    const bool is_soaked = word.text == "soak" && has_word(rest, {"syrup", "it", "this"});
    const bool is_covered = word.text == "cover" && has_word(words_behind(words, at, 2), {"with"}) &&
                            !has_word(rest, {"towel", "cloth", "film", "lid", "foil", "wrap", "plastic"});
    constexpr std::size_t several = 9;
    const Words behind = words_behind(words, at, several);
    const bool is_set_in = // "put a spoonful in the middle of each"
        (word.is_any({"put", "place", "set", "drop"}) &&
         (has_word(behind, {"each", "squares", "them"}) ||
          has_stem(behind, {"spoon", "teaspoon", "tablespoon"}))) ||
        (word.is_any({"spoon", "pile", "put", "place"}) && has_word(behind, {"middle", "centre", "center"}) &&
         !has_word(behind,
                   {"oven", "rack", "shelf", "bowl", "flour", "flours", "well", "knob", "tin", "pan"}));
    const bool is_in_crust = // "line a tin with the dough and pour in the leeks"
        word.is_any({"pour", "tip", "spoon"}) &&
        has_word(words.first(std::min<std::size_t>(words.size(), 2)), {"line"}) && has_word(words, {"dough"});
    const bool is_pressed_on = // "press a disc of topping on each"
        word.text == "press" && has_word(behind, {"on"}) && has_word(behind, {"each"});
    const bool is_pasted = word.text == "paste" && has_word(behind, {"on", "over"});
    if (is_pressed_on || is_pasted) {
        return "topping";
    }
    if (is_set_in || is_in_crust) {
        return "filling";
    }
    return is_poured || is_iced || is_rolled || is_soaked || is_covered ? "topping" : "";
}

// "Melt the butter", "For the glaze, mix": something is begun that need not be the dough. "Stir in the peel"
// is.
bool begins_batch(Words sentence) {
    std::size_t first = 0;
    while (first + 1 < sentence.size() &&
           (sentence[first].is_any({"meanwhile", "then"}) || sentence[first].text.ends_with("ly") ||
            sentence[first].text.find_first_not_of("0123456789") == std::string::npos)) {
        ++first;
    }
    constexpr auto verbs = std::to_array<std::string_view>(
        {"melt", "boil", "heat",     "simmer", "whisk", "mix",   "combine", "stir",  "beat",  "bring",
         "warm", "cook", "dissolve", "make",   "blend", "cream", "rub",     "crush", "fry",   "saute",
         "mash", "whip", "season",   "shake",  "wilt",  "sweat", "toss",    "grind", "drain", "caramel"});
    const bool is_in = has_word(words_behind(sentence, first, 2), {"in", "through", "into"});
    const auto add = std::find_if(sentence.begin(), sentence.end(),
                                  [](const DirectionWord& word) { return word.text == "add"; });
    const bool is_added = // "melt the butter, beat the egg, and add these with the sugar"
        add != sentence.end() &&
        has_word(words_behind(sentence, static_cast<std::size_t>(add - sentence.begin()), 1),
                 {"these", "them", "it", "this", "all"});
    bool is_put_in = false; // "dissolve the soda in the rest and beat it in"
    for (std::size_t at = 0; at + 1 < sentence.size(); ++at) {
        is_put_in = is_put_in ||
                    (sentence[at].is_any({"it", "them", "this"}) && sentence[at + 1].is_any({"in", "into"}) &&
                     (at + 2 == sentence.size() || sentence[at + 2].text != "a"));
    }
    const bool goes_in = is_added || is_put_in ||
                         has_stem(sentence, {"work", "fold", "knead", "incorporat"}) ||
                         goes_into_dough(sentence);
    const bool is_for = sentence[first].is_any({"for", "to"});
    return !is_in && !goes_in &&
           (is_for || begins_with_any(sentence[first].text, std::span<const std::string_view>(verbs)));
}

// What a mixture is called where it is used.
bool names_batch(Words words) {
    return has_word(words, {"it", "them", "this", "glaze", "icing", "frosting", "syrup", "mixture", "filling",
                            "sauce", "paste", "wash"});
}

class UseFinder {
public:
    UseFinder(const CallIndex& index, std::size_t group) : index_(index), group_(group) {}

    // Of a sentence that names the group at `word`.
    LateUse use_in(std::size_t sentence, std::size_t word) const {
        const Words words = index_.sentences()[sentence];
        LateUse use{.role = {}, .sentence = sentence, .is_batch = false, .is_paste = false};
        const bool is_mixture = begins_batch(words) && index_.named_in(sentence).size() > 1;
        if (is_beside_recipe(words) || is_dimpled_next(sentence) ||
            (!is_mixture && (is_folded_in(sentence) || is_kneaded_next(sentence))) || wets_dough(sentence)) {
            return use;
        }
        if (begins_batch(words) || goes_on_with_batch(sentence)) {
            use.is_batch = index_.named_in(sentence).size() > 1;
            use.is_paste = has_stem(words, pastes);
            use.role = role_of_batch(sentence);
        } else {
            use.role = role_by_order_before(words, word);
        }
        return use;
    }

private:
    // "Warm the butter with the garlic. Stir in parsley."
    bool goes_on_with_batch(std::size_t sentence) const {
        const Words words = index_.sentences()[sentence];
        return sentence > 0 && words.front().is_any({"stir", "whisk", "beat", "add"}) &&
               !goes_into_dough(words) && begins_batch(index_.sentences()[sentence - 1]) &&
               !makes_dough(index_.sentences()[sentence - 1]);
    }

    // What stands in that sentence or the two behind it is done with the batch.
    std::string_view role_of_batch(std::size_t sentence) const {
        constexpr std::size_t most_behind = 3;
        const auto sentences = index_.sentences();
        for (std::size_t at = 0; at < sentences[sentence].size(); ++at) {
            if (const std::string_view role = role_of_order(sentences[sentence], at); !role.empty()) {
                return role;
            }
        }
        const auto is_in_pan = [&](Words words,
                                   std::initializer_list<std::string_view> verbs) { // of sticky buns
            return index_.named_in(sentence).size() > 1 && has_word(words, verbs) &&
                   has_word(words, surfaces);
        };
        if (is_in_pan(sentences[sentence], {"pour", "spread", "spoon", "put"})) {
            return "topping";
        }
        for (std::size_t next = sentence + 1; next < sentences.size() && next <= sentence + most_behind;
             ++next) {
            const Words words = sentences[next];
            if (has_word(sentences[sentence], {"water"}) &&
                words.front().is_any({"boil", "poach", "simmer"})) {
                return "bath";
            }
            if (words.front().text == "pour" && is_in_pan(words, {"pour"})) {
                return "topping";
            }
            if (words.front().text == "serve" && is_done_with(sentence, next, 0)) {
                return "serving";
            }
            for (std::size_t at = 0; at < sentences[next].size(); ++at) {
                const std::string_view role = role_of_order(sentences[next], at);
                if (!role.empty() && is_done_with(sentence, next, at)) {
                    return role;
                }
            }
        }
        return {};
    }

    // "Brush over the buns", "dip into the glaze", but not "strew with the almonds": of something else.
    bool is_done_with(std::size_t batch, std::size_t sentence, std::size_t order) const {
        const Words words = index_.sentences()[sentence];
        if (is_beside_recipe(words) && words.front().text != "serve") {
            return false;
        }
        constexpr std::size_t few = 5;
        std::size_t with = order + 1; // of this order: "brush over the knots and sprinkle with cheese"
        bool is_cut = false;          // by another
        while (with < words.size() && words[with].text != "with" && !is_cut) {
            is_cut = !role_of_order(words, with).empty();
            ++with;
        }
        with = is_cut ? words.size() : with;
        const std::size_t into = static_cast<std::size_t>(
            std::find_if(words.begin() + static_cast<std::ptrdiff_t>(order), words.end(),
                         [](const DirectionWord& word) {
                             return word.is_any({"into", "in"});
                         }) -
            words.begin());
        const bool is_spread =
            words[order].text == "spread" && has_word(words_behind(words, order, 1), {"it", "them"});
        const bool is_meant = is_spread ||
                              (with < words.size() && names_batch(words_behind(words, with, few))) ||
                              (into < words.size() && names_batch(words_behind(words, into, 2)));
        const std::vector<std::size_t>& of_batch = index_.named_in(batch);
        const std::vector<std::size_t>& named = index_.named_in(sentence);
        const bool names_other = std::any_of(named.begin(), named.end(), [&](std::size_t group) {
            return !std::binary_search(of_batch.begin(), of_batch.end(), group);
        });
        const bool names_own = std::any_of(named.begin(), named.end(), [&](std::size_t group) {
            return std::binary_search(of_batch.begin(), of_batch.end(), group);
        });
        const bool is_over = has_word(words_behind(words, order, few), {"over", "all"});
        return is_meant || names_own || (with >= words.size() && (is_over || is_cut || !names_other));
    }

    // An order before the name, with no other between: "Spread with butter and sprinkle with the sugar".
    static std::string_view role_by_order_before(Words words, std::size_t word) {
        constexpr std::size_t farthest = 12;
        std::string_view role;
        std::size_t from = word; // the order
        for (std::size_t at = word - std::min(word, farthest); at < word; ++at) {
            const std::string_view order = role_of_order(words, at);
            from = !order.empty() ? at : from;
            role = !order.empty() ? order : words[at].kind == Kind::mix ? std::string_view() : role;
        }
        constexpr std::size_t few = 9; // "scatter the nuts over it and fold it up"
        const Words around = words.subspan(from, std::min(word + few, words.size()) - from);
        return has_stem(around, {"add", "work", "fold", "incorporat", "knead"}) ? std::string_view() : role;
    }

    // "Pour on the other water with the salt and squeeze it through."
    bool wets_dough(std::size_t sentence) const {
        constexpr std::size_t most_of_brine = 3;
        const Words words = index_.sentences()[sentence];
        const std::string& head = index_.call_of_group(group_).head;
        return (head == "water" || head == "milk") &&
               (has_stem(words, {"squeez", "pinch", "dimpl", "leaven", "levain", "starter"}) ||
                (has_word(words, {"salt"}) && index_.named_in(sentence).size() <= most_of_brine));
    }

    // "Lay the butter on the dough, fold over it": of the dough, in layers.
    bool is_folded_in(std::size_t sentence) const {
        const std::string& head = index_.call_of_group(group_).head;
        if (head != "butter" && head != "lard") {
            return false;
        }
        const auto folds = [](Words words) {
            return has_stem(words, {"fold", "squeez", "pinch", "laminat", "enclos", "envelop"}) ||
                   has_word(words, {"turns"});
        };
        const auto sentences = index_.sentences();
        return folds(sentences[sentence]) ||
               (sentence + 1 < sentences.size() && folds(sentences[sentence + 1]));
    }

    // "Scatter the pecans over. Fold in thirds and shape", "spread the raisins over; knead gently".
    bool is_kneaded_next(std::size_t sentence) const {
        const auto sentences = index_.sentences();
        return sentence + 1 < sentences.size() &&
               has_stem(sentences[sentence + 1].first(1), {"fold", "knead", "laminat", "work"});
    }

    // "Whisk the salt with the last water and pour it on; dimple it in."
    bool is_dimpled_next(std::size_t sentence) const {
        const auto sentences = index_.sentences();
        return sentence + 1 < sentences.size() &&
               has_stem(sentences[sentence + 1].first(1), {"dimpl", "squeez", "pinch"}) &&
               !has_word(sentences[sentence + 1], {"off"}); // "pinch off pieces"
    }

    const CallIndex& index_;
    std::size_t group_;
};

} // namespace

bool is_worked_in(const CallIndex& index, std::size_t group) {
    return std::any_of(index.places(group).begin(), index.places(group).end(),
                       [&](const CallIndex::Place& place) {
                           const Words words = index.sentences()[place.sentence];
                           const Words behind = words_behind(words, place.word, words.size());
                           return goes_into_dough(behind) &&
                                  has_stem(words.first(place.word),
                                           {"knead", "incorporat", "work", "fold", "mix", "stir", "add"}) &&
                                  !has_word(words, {"if", "may", "can", "could", "instead"});
                       });
}

bool is_layered(const CallIndex& index, std::size_t group, std::size_t first) {
    const auto sentences = index.sentences();
    return std::any_of(
        index.places(group).begin(), index.places(group).end(), [&](const CallIndex::Place& place) {
            if (place.sentence < first || place.sentence + 1 >= sentences.size()) {
                return false;
            }
            const Words words = sentences[place.sentence];
            bool is_strewn = false;
            for (std::size_t at = 0; at < std::min(place.word, words.size()); ++at) {
                is_strewn = is_strewn || !role_of_order(words, at).empty();
            }
            return is_strewn && has_stem(sentences[place.sentence + 1].first(1), {"fold", "laminat", "turn"});
        });
}

std::size_t end_of_making(const CallIndex& index) {
    const auto sentences = index.sentences();
    std::size_t end = 0;
    bool has_rested = false;
    for (std::size_t at = 0; at < sentences.size(); ++at) {
        const bool is_crust = // a crackled one, of rice flour and yeast, brushed on
            has_rested && has_word(sentences[at], {"rice"}) && begins_batch(sentences[at]);
        end = makes_dough(sentences[at]) && !is_crust ? at + 1 : end;
        has_rested = has_rested || (end > 0 && is_rest(sentences[at]));
    }
    while (end > 0 && end < sentences.size() &&
           !is_rest(sentences[end - 1])) { // "Stir in the raisins. Let rise."
        ++end;
    }
    return end;
}

std::vector<LateUse> late_uses(const CallIndex& index, std::size_t group, std::size_t first) {
    std::vector<LateUse> uses;
    const UseFinder finder(index, group);
    for (const CallIndex::Place& place : index.places(group)) {
        constexpr std::size_t longest = 300; // words; more are no sentence
        const bool is_counted = !uses.empty() && uses.back().sentence == place.sentence;
        if (place.sentence < first || is_counted || index.sentences()[place.sentence].size() > longest) {
            continue;
        }
        if (LateUse use = finder.use_in(place.sentence, place.word); !use.role.empty()) {
            uses.push_back(use);
        }
    }
    return uses;
}

} // namespace leavenwright
