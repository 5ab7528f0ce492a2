#include "transcribe/named_late.hpp"

#include "source/unicode.hpp"
#include "transcribe/recipe_text.hpp"
#include "transcribe/word_set.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <utility>

namespace leavenwright {
namespace {

using Words = std::span<const DirectionWord>;

bool has_stem(Words words, std::span<const std::string_view> stems) {
    return std::any_of(words.begin(), words.end(),
                       [&](const DirectionWord& word) { return begins_with_any(word.text, stems); });
}

template <std::size_t size>
bool has_stem(Words words, const std::array<std::string_view, size>& stems) {
    return has_stem(words, std::span<const std::string_view>(stems));
}

// What is made of flour beside the dough.
constexpr auto pastes =
    std::to_array<std::string_view>({"paste", "cross", "pipe", "piping", "crumb", "streusel", "custard"});
constexpr auto boards =
    std::to_array<std::string_view>({"board", "surface", "counter", "bench", "worktop", "table", "cloth"});

std::vector<Words> sentences_of(Words words) {
    std::vector<Words> sentences;
    for (auto begin = words.begin(); begin != words.end();) {
        const auto end = std::find_if(begin, words.end(), [](const DirectionWord& word) {
            return word.kind == DirectionWord::Kind::end;
        });
        if (begin != end) {
            sentences.emplace_back(begin, end);
        }
        begin = end == words.end() ? end : end + 1;
    }
    return sentences;
}

// Flour goes in: not "a floured board", nor "flour the board", "with a little flour".
bool takes_flour(Words sentence) {
    constexpr std::size_t near = 3;
    for (std::size_t at = 0; at < sentence.size(); ++at) {
        if (sentence[at].text != "flour" && sentence[at].text != "flours") {
            continue;
        }
        const std::size_t end = std::min(at + 1 + near, sentence.size());
        const bool is_strewn =
            has_stem(sentence.subspan(at + 1, end - at - 1), boards) ||
            (at > 0 && (sentence[at - 1].text == "with" || sentence[at - 1].text == "little"));
        if (!is_strewn) {
            return true;
        }
    }
    return false;
}

// Something is mixed into the dough there.
bool mixes_dough(Words sentence) {
    constexpr auto of_dough = std::to_array<std::string_view>({"knead", "yeast"});
    const auto is_into_dough = [&](std::size_t at) {
        const std::string_view word = sentence[at].text;
        const std::size_t next = at + 1 < sentence.size() && sentence[at + 1].text == "the" ? at + 2 : at + 1;
        return (word == "into" || word == "to" || word == "in" || word == "a") && next < sentence.size() &&
               (sentence[next].text == "dough" || sentence[next].text == "batter" ||
                sentence[next].text == "sponge");
    };
    bool is_into = false;
    for (std::size_t at = 0; at < sentence.size(); ++at) {
        is_into = is_into || is_into_dough(at);
    }
    constexpr auto advice = std::to_array<std::string_view>({"may", "can", "could", "if", "instead"});
    const bool is_advice = std::any_of(sentence.begin(), sentence.end(), [&](const DirectionWord& word) {
        return std::find(advice.begin(), advice.end(), word.text) != advice.end();
    });
    const bool is_mixed = std::any_of(sentence.begin(), sentence.end(), [](const DirectionWord& word) {
        return word.kind == DirectionWord::Kind::mix; // not "my yeast was old"
    });
    if (is_advice || !is_mixed) {
        return false;
    }
    return is_into || (takes_flour(sentence) && !has_stem(sentence, pastes)) || has_stem(sentence, of_dough);
}

bool is_rising(Words sentence) {
    constexpr auto stems =
        std::to_array<std::string_view>({"rise", "rising", "risen", "prov", "proof", "doubl", "ferment",
                                         "shape", "roll", "divide", "bake", "cut"});
    return has_stem(sentence, stems);
}

// The sentences behind those that make the dough, up to the first rise: "Stir in the raisins. Let rise."
std::size_t end_of_making(std::span<const Words> sentences) {
    std::size_t end = 0;
    for (std::size_t at = 0; at < sentences.size(); ++at) {
        end = mixes_dough(sentences[at]) ? at + 1 : end;
    }
    while (end > 0 && end < sentences.size() && !is_rising(sentences[end - 1])) {
        ++end;
    }
    return end;
}

// What is done with a thing, and what the thing is for then.
std::string_view role_of_late_act(Words words, std::size_t at) {
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
                                              {"toss", "topping"},
                                              {"pipe", "topping"},
                                              {"poach", "bath"}});
    const DirectionWord& word = words[at];
    if (word.kind == DirectionWord::Kind::apart) {
        return word.role;
    }
    for (const Act& act : acts) {
        if (word.text.starts_with(act.stem)) {
            return act.role;
        }
    }
    constexpr std::size_t near = 5;
    const Words rest = words.subspan(at + 1, std::min(near, words.size() - at - 1));
    const auto has = [&](std::string_view joint) {
        return std::any_of(rest.begin(), rest.end(),
                           [&](const DirectionWord& other) { return other.text == joint; });
    };
    const bool is_poured = word.text == "spoon" || word.text == "pour" || word.text == "trickle";
    if ((is_poured && has("over")) || (word.text == "ice" && rest.size() > 0 && rest.front().text == "the")) {
        return "topping";
    }
    if (word.text == "roll" && has("in")) { // "roll in the sugar"
        return "topping";
    }
    return {};
}

std::string_view role_of_sentence(Words words) {
    for (std::size_t at = 0; at < words.size(); ++at) {
        if (const std::string_view role = role_of_late_act(words, at); !role.empty()) {
            return role;
        }
    }
    return {};
}

// Greased pans, what is served with it, and what one may do.
bool is_beside_recipe(Words sentence) {
    constexpr auto stems = std::to_array<std::string_view>(
        {"serv", "grease", "greasing", "oiled", "enjoy", "store", "freez", "reheat", "toast", "optional"});
    return has_stem(sentence, stems) || sentence.front().text == "if";
}

bool goes_in(Words sentence) {
    constexpr auto stems = std::to_array<std::string_view>({"add", "work", "fold", "incorporat", "into"});
    return has_stem(sentence, stems);
}

bool begins_batch(Words sentence) {
    constexpr auto stems = std::to_array<std::string_view>(
        {"melt", "boil", "heat",     "simmer", "whisk", "mix",   "combine", "stir",  "beat", "bring",
         "warm", "cook", "dissolve", "make",   "blend", "cream", "rub",     "crush", "fry",  "saute"});
    std::size_t first = 0;
    while (first + 1 < sentence.size() &&
           (sentence[first].text == "meanwhile" || sentence[first].text == "then" ||
            sentence[first].text.find_first_not_of("0123456789") == std::string::npos)) {
        ++first;
    }
    const bool is_for = sentence[first].text == "for" || sentence[first].text == "to"; // "For the glaze, mix"
    return is_for || begins_with_any(sentence[first].text, std::span<const std::string_view>(stems));
}

// What directions call a line by, and how often they do so.
struct Call {
    std::vector<std::string> words; // of no other line, or
    std::string head;               // the last of its name, which others may share

    bool operator==(const Call& other) const = default;
};

std::string singular(std::string word) {
    word.resize(word.size() - (word.size() > 3 && word.ends_with('s') ? 1U : 0U));
    return word;
}

Call call_of(const IngredientLine& line) {
    static const WordSet plain("butter|sugar|milk|water|cream|juice|oil|salt|lard");
    const std::string name = fold_name(line.name.empty() ? line.key : line.name);
    Call call{.words = calls_of(line), .head = {}};
    for (std::size_t begin = 0; begin < name.size();) { // "butter, melted"
        const std::size_t end = std::min(name.find_first_of(" ,(", begin), name.size());
        std::string word = singular(name.substr(begin, end - begin));
        if (plain.has(word)) {
            call.head = std::move(word);
        }
        begin = end + 1;
    }
    return call;
}

// Of each line. "Juice" is the orange juice where no other line is a juice.
std::vector<Call> calls_of_all(std::span<const IngredientLine> lines) {
    std::vector<Call> calls;
    for (const IngredientLine& line : lines) {
        calls.push_back(call_of(line));
    }
    const std::vector<Call> all = calls;
    for (std::size_t at = 0; at < all.size(); ++at) {
        const auto shared = std::count_if(all.begin(), all.end(),
                                          [&](const Call& other) { return other.head == all[at].head; });
        if (!all[at].words.empty() && shared > 1) {
            calls[at].head.clear();
        }
    }
    return calls;
}

class LateNames {
public:
    LateNames(std::vector<IngredientLine>& lines, Words words, Diagnostics& diagnostics)
        : lines_(lines), sentences_(sentences_of(words)), late_(end_of_making(sentences_)),
          calls_(calls_of_all(lines)), diagnostics_(diagnostics) {
        for (std::size_t at = 0; at < lines_.size(); ++at) {
            heads_.push_back(call_of(lines_[at]).head);
            is_candidate_.push_back(may_be_apart(at));
        }
    }

    void run() {
        set_apart_greasing();
        find_tail();
        for (std::size_t at = 0; late_ > 0 && late_ < sentences_.size() && at < lines_.size(); ++at) {
            if (is_candidate_[at] && is_first_of_call(at)) {
                set_apart_called(at);
            }
        }
        doubt_behind_apart();
    }

private:
    bool is_counted(std::size_t at) const { return lines_[at].role == "dough" && lines_[at].is_known(); }

    bool may_be_apart(std::size_t at) const {
        const bool has_call = !calls_[at].words.empty() || !calls_[at].head.empty();
        return is_counted(at) && lines_[at].number && has_call && !lines_[at].ingredient->is_yeast() &&
               lines_[at].key != "egg";
    }

    bool is_first_of_call(std::size_t at) const {
        for (std::size_t before = 0; before < at; ++before) {
            if (is_candidate_[before] && calls_[before] == calls_[at]) {
                return false;
            }
        }
        return true;
    }

    // Whether a sentence names what goes by `call`.
    bool names(Words sentence, const Call& call) const {
        for (std::size_t at = 0; at < sentence.size(); ++at) {
            if (is_named_at(sentence, at, call)) {
                return true;
            }
        }
        return false;
    }

    bool is_named_at(Words sentence, std::size_t at, const Call& call) const {
        return is_called(sentence, at, call.words) || is_head(sentence, at, call.head);
    }

    // "sugar", but not the "icing sugar" of another line, nor "cream the butter".
    bool is_head(Words sentence, std::size_t at, const std::string& head) const {
        const bool is_verb =
            head == "cream" && (at == 0 || (at + 1 < sentence.size() && sentence[at + 1].text == "the"));
        if (head.empty() || sentence[at].text != head || is_verb) {
            return false;
        }
        for (std::size_t line = 0; at > 0 && line < lines_.size(); ++line) {
            const std::vector<std::string>& words = calls_[line].words;
            if (heads_[line] == head &&
                (is_called(sentence, at - 1, words) || is_called(sentence, at, words))) {
                return false;
            }
        }
        return true;
    }

    // "A bowl greased with the oil", which nothing else is done with.
    void set_apart_greasing() {
        constexpr auto greasing = std::to_array<std::string_view>({"greased", "greasing"});
        for (std::size_t line = 0; line < lines_.size(); ++line) {
            if (!is_candidate_[line] || lines_[line].ingredient->ingredient_class != IngredientClass::fat ||
                std::count(calls_.begin(), calls_.end(), calls_[line]) > 1 || is_all_mixed()) {
                continue;
            }
            const auto is_named = [&](Words sentence) { return names(sentence, calls_[line]); };
            const auto greases = [&](Words sentence) {
                bool is_listed = false; // "the oil", not any
                for (std::size_t at = 2; at < sentence.size(); ++at) {
                    is_listed =
                        is_listed || (sentence[at].text == heads_[line] &&
                                      (sentence[at - 1].text == "the" || sentence[at - 2].text == "the"));
                }
                return is_listed && has_stem(sentence, greasing);
            };
            const auto count = std::count_if(sentences_.begin(), sentences_.end(), is_named);
            if (count > 0 && count == std::count_if(sentences_.begin(), sentences_.end(), greases)) {
                take_apart(line, "greasing");
            }
        }
    }

    // "60 g oil for the tray", then "olives, 100 g": they may go on top, as no direction mixes them in.
    void doubt_behind_apart() {
        bool is_behind = false;
        for (std::size_t at = tail_; at < lines_.size(); ++at) {
            IngredientLine& line = lines_[at];
            is_behind = is_behind || (line.number && !is_in_dough(line.role));
            const bool is_open = is_behind && is_candidate_[at] && is_counted(at) && line.is_sure;
            if (is_open && line.key != "water" && !is_named_early(calls_[at]) && !is_all_mixed()) {
                line.is_sure = false;
                diagnostics_.warning(Code::ingredient_doubtful, line.place,
                                     in_quotes(line.text) +
                                         " stands behind what is kept apart, and no direction mixes it in",
                                     "it is counted; take it out of the dough if it does not go into it");
            }
        }
    }

    void take_apart(std::size_t at, std::string_view role) {
        IngredientLine& line = lines_[at];
        line.role = std::string(role);
        line.is_sure = false;
        diagnostics_.warning(Code::ingredient_doubtful, line.place,
                             in_quotes(line.text) +
                                 " is listed with the dough, but the directions name it for " + line.role +
                                 "; it is kept apart",
                             "add it to the dough if it goes into it");
    }

    // The lines behind the last flour and yeast, and behind the last that only the making names.
    void find_tail() {
        for (std::size_t at = 0; at < lines_.size(); ++at) {
            const IngredientLine& line = lines_[at];
            const bool is_flour =
                is_counted(at) && line.ingredient->is_flour() && (tail_ == 0 || !is_late_only(calls_[at]));
            const bool is_base =
                is_flour || (is_counted(at) && (line.ingredient->is_yeast() || line.key == "salt"));
            tail_ = is_base ? at + 1 : tail_;
        }
    }

    bool is_named_early(const Call& call) const {
        return std::any_of(sentences_.begin(), sentences_.begin() + static_cast<std::ptrdiff_t>(late_),
                           [&](Words sentence) { return names(sentence, call); });
    }

    bool is_late_only(const Call& call) const {
        return (!call.words.empty() || !call.head.empty()) && !is_named_early(call) && !uses_of(call).empty();
    }

    struct Use {
        std::string_view role;
        bool is_batch; // mixed with another listed thing first
    };

    // Of the act that stands before the name, with no other act between.
    std::string_view role_by_act_before(Words sentence, const Call& call) const {
        std::string_view role;
        for (std::size_t at = 0; at < sentence.size() && !goes_in(sentence); ++at) {
            const std::string_view act = role_of_late_act(sentence, at);
            role = !act.empty()                                    ? act
                   : sentence[at].kind == DirectionWord::Kind::mix ? std::string_view()
                                                                   : role;
            if (!role.empty() && is_named_at(sentence, at, call)) {
                return role;
            }
        }
        return {};
    }

    // The late sentences that do something with it.
    std::vector<Use> uses_of(const Call& call) const {
        std::vector<Use> uses;
        for (std::size_t at = late_; at < sentences_.size(); ++at) {
            const Words sentence = sentences_[at];
            if (!names(sentence, call) || is_beside_recipe(sentence)) {
                continue;
            }
            const bool is_batch = begins_batch(sentence);
            std::string_view role =
                is_batch ? role_of_sentence(sentence) : role_by_act_before(sentence, call);
            constexpr std::size_t next = 3; // "Melt the butter. Stir in the icing sugar. Dip the buns"
            for (std::size_t behind = at + 1;
                 is_batch && role.empty() && behind < sentences_.size() && behind < at + next; ++behind) {
                role = role_of_sentence(sentences_[behind]);
            }
            if (!role.empty()) {
                uses.push_back({role, is_batch && names_two(sentence)});
            }
        }
        return uses;
    }

    bool names_two(Words sentence) const {
        std::vector<const Call*> named;
        for (std::size_t at = 0; at < lines_.size(); ++at) {
            const bool is_new = std::none_of(named.begin(), named.end(),
                                             [&](const Call* call) { return *call == calls_[at]; });
            if (is_new && is_candidate_[at] && names(sentence, calls_[at])) {
                named.push_back(&calls_[at]);
            }
        }
        return named.size() > 1;
    }

    // "Mix everything", "all ingredients": the making may mean what it does not name.
    bool is_all_mixed() const {
        constexpr auto stems = std::to_array<std::string_view>({"everything", "ingredient", "others"});
        return std::any_of(sentences_.begin(), sentences_.begin() + static_cast<std::ptrdiff_t>(late_),
                           [&](Words sentence) { return has_stem(sentence, stems); });
    }

    // Whether the making names enough of the list to miss what it does not name.
    bool names_most() const {
        constexpr int fewest = 3;
        int named = 0;
        for (std::size_t at = 0; at < lines_.size(); ++at) {
            named += is_candidate_[at] && is_named_early(calls_[at]) ? 1 : 0;
        }
        return named >= fewest && !is_all_mixed();
    }

    // "Sugar" may be the brown sugar; of icing sugar nobody says so.
    bool may_be_called(std::size_t at, const Call& call) const {
        return calls_[at] == call ||
               (!call.head.empty() && heads_[at] == call.head && lines_[at].key != "powdered sugar");
    }

    void set_apart_called(std::size_t first) {
        const Call call = calls_[first];
        std::vector<Use> uses = uses_of(call);
        std::vector<std::size_t> all;
        std::size_t elsewhere = 0; // lines that are apart already serve such sentences
        for (std::size_t at = 0; at < lines_.size(); ++at) {
            if (calls_[at] == call && is_candidate_[at]) {
                all.push_back(at);
            } else if (!is_in_dough(lines_[at].role) && may_be_called(at, call)) {
                ++elsewhere;
            }
        }
        if (uses.size() <= elsewhere) {
            return;
        }
        const bool is_early = is_named_early(call);
        const bool is_batch =
            std::any_of(uses.begin(), uses.end(), [](const Use& use) { return use.is_batch; });
        std::size_t most = all.size();
        if (is_early || (call.words.empty() && !names_most() && !is_batch)) {
            most -= 1; // one is the dough's
        }
        std::size_t count = std::min(uses.size() - elsewhere, most);
        for (std::size_t index = all.size(); index-- > 0 && count > 0; --count, uses.pop_back()) {
            const std::size_t at = all[index];
            if (at < tail_ && (is_early || !call.head.empty())) {
                return;
            }
            take_apart(at, uses.back().role);
        }
    }

    std::vector<IngredientLine>& lines_;
    std::vector<Words> sentences_;
    std::size_t late_; // the first sentence behind the making
    std::size_t tail_ = 0;
    std::vector<Call> calls_;
    std::vector<std::string> heads_; // of each line, shared or not
    std::vector<bool> is_candidate_; // before any was set apart
    Diagnostics& diagnostics_;
};

} // namespace

void set_apart_named_late(std::vector<IngredientLine>& lines, Words words, Diagnostics& diagnostics) {
    LateNames(lines, words, diagnostics).run();
}

} // namespace leavenwright
