#include "transcribe/named_late.hpp"

#include "transcribe/kitchen_words.hpp"
#include "transcribe/late_use.hpp"
#include "transcribe/recipe_text.hpp"
#include "transcribe/recipe_words.hpp"
#include "transcribe/used_apart.hpp"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdlib>
#include <string>
#include <string_view>

namespace leavenwright {
namespace {

using Words = std::span<const DirectionWord>;

bool is_counted(const IngredientLine& line) {
    return line.role == "dough" && line.is_known();
}

bool may_be_apart(const IngredientLine& line) {
    return is_counted(line) && line.number && !line.ingredient->is_yeast() && line.key != "egg";
}

// The first line behind the flours, the yeast and the salt of the dough. A flour for which `is_base` is false
// is none of them.
template <class Test>
std::size_t end_of_base(const std::vector<IngredientLine>& lines, const Test& is_base_flour) {
    std::size_t end = 0;
    bool has_salt = false;
    for (std::size_t at = 0; at < lines.size(); ++at) {
        const IngredientLine& line = lines[at];
        const bool is_salt = line.key == "salt" && !has_salt; // another may be of a filling
        const bool is_base = is_counted(line) && (line.ingredient->is_yeast() || is_salt ||
                                                  (line.ingredient->is_flour() && is_base_flour(at)));
        has_salt = has_salt || is_salt;
        end = is_base ? at + 1 : end;
    }
    return end;
}

// Whether the sentences before `end` may mean what they do not name.
bool mixes_all_before(const CallIndex& index, std::size_t end) {
    const auto sentences = index.sentences().first(end == 0 ? index.sentences().size() : end);
    return std::any_of(sentences.begin(), sentences.end(), mixes_all);
}

class LateNames {
public:
    LateNames(std::vector<IngredientLine>& lines, const CallIndex& index, std::size_t late,
              Diagnostics& diagnostics)
        : lines_(lines), index_(index), late_(late), diagnostics_(diagnostics) {
        for (const IngredientLine& line : lines_) {
            const bool is_flour = is_counted(line) && line.ingredient->is_flour() && line.weight;
            flour_ += is_flour ? line.weight->likely : Mass{};
        }
    }

    void run() {
        if (late_ == 0 || late_ >= index_.sentences().size()) {
            return;
        }
        is_all_mixed_ = mixes_all_before(index_, late_);
        names_most_ = !is_all_mixed_ && count_named_early() >= fewest_named;
        tail_ = end_of_base(lines_, [&](std::size_t at) { return at == 0 || !is_paste_flour(at); });
        std::vector<bool> is_done(lines_.size());
        for (std::size_t at = 0; at < lines_.size(); ++at) {
            const std::size_t group = index_.group(at);
            if (!is_done[group] && may_be_apart(lines_[at]) && !index_.call(at).is_empty()) {
                is_done[group] = true;
                take_group(group);
            }
        }
    }

private:
    static constexpr int fewest_named = 3;

    int count_named_early() const {
        int named = 0;
        for (std::size_t at = 0; at < lines_.size(); ++at) {
            named += may_be_apart(lines_[at]) && index_.is_named_before(index_.group(at), late_) ? 1 : 0;
        }
        return named;
    }

    std::vector<LateUse> uses_of(std::size_t group, bool is_flour, bool is_one) const {
        std::vector<LateUse> uses = late_uses(index_, group, late_);
        const std::string& head = index_.call_of_group(group).head;
        const bool is_fluid = head == "water" || head == "milk";
        std::erase_if(uses, [&](const LateUse& use) {
            if (names_other_amount(group, use.sentence)) {
                return true;
            }
            const bool may_be_other = is_one || use.role != "brushing"; // "brush with milk", of the dough's
            const bool is_named = // rice flour of a crackled crust; not what is called flour
                use.role == "brushing" ||
                (use.role == "topping" && !index_.call_of_group(group).words.empty());
            const bool is_of_batch = use.is_batch && (is_named || names_own_amount(group, use.sentence));
            return (is_flour && !use.is_paste && !is_of_batch) || (is_fluid && !use.is_batch && may_be_other);
        });
        return uses;
    }

    // "Cream the lard with the 100 g flour", of the list.
    bool names_own_amount(std::size_t group, std::size_t sentence) const {
        const std::vector<CallIndex::Place>& places = index_.places(group);
        return std::any_of(places.begin(), places.end(),
                           [&](const CallIndex::Place& place) {
                               return place.sentence == sentence && number_before(place) > 0.0;
                           }) &&
               !names_other_amount(group, sentence);
    }

    // "A 10 g knob of butter", of which the list has 80 g.
    bool names_other_amount(std::size_t group, std::size_t sentence) const {
        bool is_other = false;
        for (const CallIndex::Place& place : index_.places(group)) {
            const double number = place.sentence == sentence ? number_before(place) : 0.0;
            const bool is_listed = std::any_of(lines_.begin(), lines_.end(), [&](const IngredientLine& line) {
                const auto at = static_cast<std::size_t>(&line - lines_.data());
                return index_.group(at) == group && is_number_of(at, number);
            });
            is_other = is_other || (number > 0.0 && !is_listed);
        }
        return is_other;
    }

    bool is_number_of(std::size_t at, double number) const {
        constexpr double tolerance = 0.01;
        return lines_[at].number && std::abs(*lines_[at].number - number) < tolerance;
    }

    // "20", "twenty"; 0 of another word.
    static double number_of(const DirectionWord& word) {
        const double named = number_named(word.text);
        return named > 0.0 ? named : std::atof(word.text.c_str());
    }

    // Of a measure that stands shortly before a name; 0 where none does.
    double number_before(const CallIndex::Place& place) const {
        constexpr std::size_t near = 4;
        const Words words = index_.sentences()[place.sentence];
        for (std::size_t at = place.word - std::min(place.word, near); at + 1 < place.word; ++at) {
            const double number = number_of(words[at]);
            const bool is_fraction = at > 0 && has_digit(words[at - 1].text); // "1/2 cup"
            if (number > 0.0 && !is_fraction && measure_named(words[at + 1].text, words[at + 1].text)) {
                return number;
            }
        }
        return 0.0;
    }

    bool is_amount_named(std::size_t at, std::size_t sentence) const {
        const std::vector<CallIndex::Place>& places = index_.places(index_.group(at));
        return std::any_of(places.begin(), places.end(), [&](const CallIndex::Place& place) {
            return place.sentence == sentence && is_number_of(at, number_before(place));
        });
    }

    // "75 g flour" of a paste for crosses.
    bool is_paste_flour(std::size_t at) const {
        constexpr double most = 0.3; // of all flour; common practice, no source
        if (!lines_[at].weight) {
            return false;
        }
        const std::vector<LateUse> uses = uses_of(index_.group(at), true, false);
        const bool is_its_own = std::any_of(uses.begin(), uses.end(), [&](const LateUse& use) {
            return is_amount_named(at, use.sentence); // "rub the 300 g flour into the butter"
        });
        return !uses.empty() && (is_its_own || lines_[at].weight->likely < most * flour_);
    }

    // "Cook the 20 g flour in the 100 g milk": the making names it by its amount.
    bool is_named_with_amount(std::size_t at) const {
        constexpr std::size_t near = 4;
        for (const CallIndex::Place& place : index_.places(index_.group(at))) {
            if (place.sentence >= late_) {
                break;
            }
            const Words words = index_.sentences()[place.sentence];
            const Words before = words_before(words, place.word, near);
            const bool is_it = std::any_of(before.begin(), before.end(), [&](const DirectionWord& word) {
                return number_of(word) > 0.0 && is_number_of(at, number_of(word));
            });
            if (is_it) {
                return true;
            }
        }
        return false;
    }

    // "The rest of the sugar", "a third of the lard", in a sentence that puts it on top.
    bool is_shared(std::size_t group, const std::vector<LateUse>& uses) const {
        constexpr std::size_t near = 3;
        for (const CallIndex::Place& place : index_.places(group)) {
            const bool is_use = std::any_of(
                uses.begin(), uses.end(), [&](const LateUse& use) { return use.sentence == place.sentence; });
            const Words before = words_before(index_.sentences()[place.sentence], place.word, near);
            if (is_use && has_word(before, {"half", "third", "quarter", "rest", "remaining", "remainder",
                                            "reserved", "other"})) {
                return true;
            }
        }
        return false;
    }

    // "Sugar" may be the brown sugar; of icing sugar nobody says so.
    bool may_be_called(std::size_t at, std::size_t group) const {
        const std::string& head = index_.call_of_group(group).head;
        return index_.group(at) == group ||
               (!head.empty() && index_.head(at) == head && lines_[at].key != "powdered sugar" &&
                index_.places(index_.group(at)).empty());
    }

    void take_group(std::size_t group) {
        std::vector<std::size_t> all;
        std::size_t elsewhere = 0; // lines that are apart already serve such sentences
        for (std::size_t at = 0; at < lines_.size(); ++at) {
            if (index_.group(at) == group && may_be_apart(lines_[at])) {
                all.push_back(at);
            } else if (!is_in_dough(lines_[at].role) && may_be_called(at, group)) {
                ++elsewhere;
            }
        }
        const bool is_early = index_.is_named_before(group, late_);
        if (is_early && all.size() == 1) {
            const std::vector<LateUse> uses = late_uses(index_, group, late_); // "the other 3 tbsp", too
            if (lines_[all.front()].is_sure && uses.size() > elsewhere && is_shared(group, uses)) {
                doubt_share(lines_[all.front()]);
            }
            return;
        }
        const std::vector<LateUse> uses =
            uses_of(group, lines_[all.front()].ingredient->is_flour(), all.size() == 1);
        if (uses.size() <= elsewhere) {
            doubt_layers(group);
            return;
        }
        const LineCall& call = index_.call_of_group(group);
        const bool is_batch =
            std::any_of(uses.begin(), uses.end(), [](const LateUse& use) { return use.is_batch; });
        // one of them is the dough's
        const bool keeps_one = is_early || (call.words.empty() && !names_most_ && !is_batch);
        std::size_t count = std::min(uses.size() - elsewhere, all.size() - (keeps_one ? 1U : 0U));
        for (std::size_t index = all.size(); index-- > 0 && count > 0; --count) {
            const std::size_t at = all[index];
            const bool is_above = at < tail_ && (is_early || !call.head.empty());
            const bool is_much_flour = lines_[at].ingredient->is_flour() && !is_paste_flour(at);
            if (is_above || is_much_flour || (all.size() == 1 && is_named_with_amount(at))) {
                return;
            }
            const std::string role(uses[uses.size() - (all.size() - index)].role);
            set_apart(lines_[at], role,
                      " is listed with the dough, but the directions name it for " + role +
                          "; it is kept apart",
                      diagnostics_);
        }
    }

    // "Scatter the sugar over. Fold in three": into the dough, or apart in its layers.
    void doubt_layers(std::size_t group) {
        for (IngredientLine& line : lines_) {
            const auto at = static_cast<std::size_t>(&line - lines_.data());
            const bool is_open = index_.group(at) == group && may_be_apart(line) && line.is_sure &&
                                 !index_.is_named_before(group, late_) && is_layered(index_, group, late_);
            if (is_open) {
                doubt(line, Code::ingredient_doubtful,
                      in_quotes(line.text) + " is folded in between layers of the dough; it is counted",
                      "take it out of the dough if it is a filling", diagnostics_);
            }
        }
    }

    void doubt_share(IngredientLine& line) {
        doubt(line, Code::amount_doubtful,
              "the directions keep back some of " + in_quotes(line.text) + "; all of it is counted",
              "take off what does not go into the dough", diagnostics_);
    }

    std::vector<IngredientLine>& lines_;
    const CallIndex& index_;
    std::size_t late_; // the first sentence behind the making
    Mass flour_{};
    bool is_all_mixed_ = false;
    bool names_most_ = false; // the making names enough to miss what it does not name
    std::size_t tail_ = 0;    // the first line behind flour, yeast and salt
    Diagnostics& diagnostics_;
};

// "Greased with the oil": of the list, not any.
bool is_greased_with(Words sentence, std::size_t at) {
    constexpr std::size_t near = 6;
    const Words before = words_before(sentence, at, near);
    const auto greased = std::find_if(before.begin(), before.end(), [](const DirectionWord& word) {
        return word.is_any({"greased", "greasing"});
    });
    return std::any_of(greased, before.end(), [](const DirectionWord& word) { return word.text == "the"; });
}

// Named before sentence `end`, in one that does not put it on top.
bool is_mixed(const CallIndex& index, std::size_t group, std::size_t end) {
    const std::vector<LateUse> uses = late_uses(index, group, 0);
    const std::vector<CallIndex::Place>& places = index.places(group);
    return std::any_of(places.begin(), places.end(), [&](const CallIndex::Place& place) {
        return place.sentence < end && std::none_of(uses.begin(), uses.end(), [&](const LateUse& use) {
                   return use.sentence == place.sentence;
               });
    });
}

// What directions call things by their kind.
bool names_kind(Words sentence, const IngredientLine& line) {
    const bool is_added = line.is_of(IngredientClass::other) || line.is_of(IngredientClass::seed_or_grain);
    return is_added &&
           has_stem(sentence, {"fruit", "nuts", "seeds", "spice", "herb", "vegetable", "inclusion"});
}

bool is_egg_brushed(const CallIndex& index, std::size_t late) {
    const auto behind = index.sentences().subspan(std::min(late, index.sentences().size()));
    return std::any_of(behind.begin(), behind.end(), [](Words sentence) {
        return has_stem(sentence, {"brush", "glaz", "wash"}) && has_stem(sentence, {"egg", "wash"});
    });
}

// "Mash the cheese with the sugar and an egg", behind the making, which had its own. Empty where none is so.
std::string role_of_filling_egg(const std::vector<IngredientLine>& lines, const IngredientLine& egg,
                                const CallIndex& index, std::size_t late) {
    const std::size_t group = index.group(static_cast<std::size_t>(&egg - lines.data()));
    if (!index.is_named_before(group, late)) {
        return {};
    }
    const std::vector<LateUse> uses = late_uses(index, group, late);
    const auto batch = std::find_if(uses.begin(), uses.end(), [](const LateUse& use) {
        return use.is_batch && use.role != "brushing"; // of the yolk that is the wash
    });
    return batch == uses.end() ? std::string() : std::string(batch->role);
}

} // namespace

void set_apart_named_late(std::vector<IngredientLine>& lines, const CallIndex& index, std::size_t late,
                          Diagnostics& diagnostics) {
    LateNames(lines, index, late, diagnostics).run();
}

void set_apart_egg_wash(std::vector<IngredientLine>& lines, const CallIndex& index, std::size_t late,
                        Diagnostics& diagnostics) {
    IngredientLine* last = nullptr;
    int of_dough = 0;
    bool has_wash = false;
    for (IngredientLine& line : lines) {
        const bool is_egg = line.is_of(IngredientClass::egg);
        has_wash = has_wash || (is_egg && !is_in_dough(line.role));
        if (is_egg && line.key == "egg" && line.role == "dough" && line.number) {
            last = &line;
            ++of_dough;
        }
    }
    if (late == 0 || of_dough < 2 || *last->number > 1.0) {
        return;
    }
    const bool is_wash = !has_wash && is_egg_brushed(index, late);
    const std::string role = is_wash ? "brushing" : role_of_filling_egg(lines, *last, index, late);
    if (role.empty()) {
        return;
    }
    set_apart(*last, role,
              " is the last egg of the list, and the directions name one for " + role + "; it is kept apart",
              diagnostics);
    for (IngredientLine& line : lines) { // "1 egg plus 1 tsp water"
        if (line.role == "dough" && line.place.span.offset == last->place.span.offset) {
            set_apart(line, role, " stands beside that egg; it is kept apart", diagnostics);
        }
    }
}

void set_apart_greasing(std::vector<IngredientLine>& lines, const CallIndex& index,
                        Diagnostics& diagnostics) {
    if (mixes_all_before(index, 0)) {
        return;
    }
    std::vector<std::size_t> of_group(lines.size());
    for (std::size_t at = 0; at < lines.size(); ++at) {
        ++of_group[index.group(at)];
    }
    for (std::size_t at = 0; at < lines.size(); ++at) {
        const std::vector<CallIndex::Place>& places = index.places(index.group(at));
        const bool is_one_fat = may_be_apart(lines[at]) && of_group[index.group(at)] == 1 &&
                                lines[at].is_of(IngredientClass::fat);
        const bool is_greasing =
            is_one_fat && !places.empty() &&
            std::all_of(places.begin(), places.end(), [&](const CallIndex::Place& place) {
                return is_greased_with(index.sentences()[place.sentence], place.word);
            });
        if (is_greasing) {
            set_apart(lines[at], "greasing",
                      " is listed with the dough, but the directions only grease with it; it is kept apart",
                      diagnostics);
        }
    }
}

void doubt_worked_in(std::vector<IngredientLine>& lines, const CallIndex& index, Diagnostics& diagnostics) {
    for (std::size_t at = 0; at < lines.size(); ++at) {
        IngredientLine& line = lines[at];
        const bool is_listed_apart = line.is_sure && line.is_known() && line.number &&
                                     (line.role == "filling" || line.role == "topping");
        if (!is_listed_apart || !is_worked_in(index, index.group(at))) {
            continue;
        }
        bool has_other = false;
        for (std::size_t other = 0; other < lines.size(); ++other) {
            const bool is_same = index.group(other) == index.group(at) ||
                                 (!index.head(at).empty() && index.head(other) == index.head(at));
            has_other = has_other || (is_same && is_in_dough(lines[other].role));
        }
        if (!has_other) {
            set_apart(line, line.role,
                      " is listed for " + line.role +
                          ", but the directions work it into the dough; it is kept apart",
                      diagnostics);
        }
    }
}

void doubt_behind_apart(std::vector<IngredientLine>& lines, const CallIndex& index, std::size_t late,
                        Diagnostics& diagnostics) {
    const auto making = index.sentences().first(late == 0 ? index.sentences().size() : late);
    if (making.empty() || mixes_all_before(index, late)) {
        return;
    }
    bool is_behind = false;
    for (std::size_t at = end_of_base(lines, [](std::size_t) { return true; }); at < lines.size(); ++at) {
        IngredientLine& line = lines[at];
        is_behind = is_behind || (line.number && !is_in_dough(line.role));
        const bool is_open = is_behind && may_be_apart(line) && line.is_sure && line.key != "water";
        const bool is_mixed_in = is_open && (is_mixed(index, index.group(at), making.size()) ||
                                             std::any_of(making.begin(), making.end(), [&](Words sentence) {
                                                 return names_kind(sentence, line);
                                             }));
        if (is_open && !is_mixed_in) {
            doubt(line, Code::ingredient_doubtful,
                  in_quotes(line.text) + " stands behind what is kept apart, and no direction mixes it in",
                  "it is counted; take it out of the dough if it does not go into it", diagnostics);
        }
    }
}

} // namespace leavenwright
