#include "transcribe/used_apart.hpp"

#include "source/unicode.hpp"
#include "transcribe/direction_words.hpp"
#include "transcribe/kitchen_words.hpp"
#include "transcribe/late_use.hpp"
#include "transcribe/named_late.hpp"
#include "transcribe/recipe_text.hpp"
#include "transcribe/recipe_words.hpp"
#include "transcribe/stage_row.hpp"

#include <algorithm>
#include <array>
#include <string_view>
#include <utility>

namespace leavenwright {
namespace {

using Kind = DirectionWord::Kind;

// What the next act of the sentence is for; empty where it mixes, or none follows.
std::string_view act_behind(std::span<const DirectionWord> words, std::size_t at) {
    const auto rest = words.subspan(at, sentence_around(words, at).end - at);
    const auto act = std::find_if(rest.begin(), rest.end(),
                                  [](const DirectionWord& word) { return word.kind != Kind::other; });
    constexpr auto elsewhere = std::to_array<std::string_view>(
        {"bowl", "pan", "tin", "sheet", "board", "counter", "tray", "skillet", "in", "into"});
    constexpr std::ptrdiff_t near = 4; // "brush the bowl with oil", "drizzle in the butter"
    const auto end = act + std::min(near, rest.end() - act);
    const bool is_elsewhere = std::any_of(act, end, [&](const DirectionWord& word) {
        return std::find(elsewhere.begin(), elsewhere.end(), word.text) != elsewhere.end();
    });
    return act == rest.end() || is_elsewhere ? std::string_view() : act->role;
}

// "Combine egg whites and water. Brush loaves": the sentence behind the one that mixes a thing brushes, and
// names nothing else to do it with. "Mix the garlic into the butter and brush it over": its own does.
bool is_brushed_behind(std::span<const DirectionWord> words, std::size_t at) {
    const Sentence sentence = sentence_around(words, at);
    if (!is_mixed_alone(words, sentence)) {
        return false;
    }
    if (act_behind(words, at) == "brushing") {
        return true;
    }
    at = sentence.end;
    if (at + 1 >= words.size() || words[at + 1].role != "brushing") {
        return false;
    }
    for (at += 2; at < words.size() && words[at].kind != Kind::end; ++at) {
        constexpr auto surfaces =
            std::to_array<std::string_view>({"with", "pan", "pans", "bowl", "sheet", "sheets", "bench",
                                             "board", "tray", "trays", "tin", "tins", "surface"});
        if (std::find(surfaces.begin(), surfaces.end(), words[at].text) != surfaces.end()) {
            return false;
        }
    }
    return true;
}

// Whether what is mixed there is for another thing than the dough: it stands aside, or the dough rises.
bool is_dough_made(std::span<const DirectionWord> words, std::size_t sentence) {
    constexpr auto stems =
        std::to_array<std::string_view>({"knead", "doubl", "shape", "ball", "prov", "dough"});
    return words[sentence].text == "meanwhile" ||
           std::any_of(words.begin(), words.begin() + static_cast<std::ptrdiff_t>(sentence),
                       [&](const DirectionWord& word) { return begins_with_any(word.text, stems); });
}

// "Brush with garlic ghee": the last word that names a thing to brush with; 0 where none does.
std::size_t last_brushed(std::span<const DirectionWord> words, std::span<const std::string> calls) {
    std::size_t last = 0;
    bool is_brushing = false;
    for (std::size_t at = 0; at < words.size(); ++at) {
        const bool is_act = words[at].kind != Kind::other;
        is_brushing = is_act ? words[at].role == "brushing" : is_brushing;
        last = is_brushing && !is_act && is_called(words, at, calls) ? at : last;
    }
    return last;
}

// A meal that baking sheets are strewn with as often as it goes into doughs.
bool is_strewn_flour(const IngredientLine& line, std::span<const IngredientLine> lines) {
    constexpr double most = 0.15; // of the flour; more goes into the dough. Common practice, no source
    const bool is_meal = line.key == "cornmeal" || line.key == "semolina" || line.key == "rice flour";
    return is_meal && (!line.weight || line.weight->likely < most * flour_in_dough(lines));
}

// Butter beside another fat that the directions name too: "add shortening", "brush with melted butter".
bool is_second_fat(const IngredientLine& line, std::span<const IngredientLine> lines,
                   std::span<const DirectionWord> words) {
    const auto is_named = [&](std::string_view name) {
        return std::any_of(words.begin(), words.end(),
                           [&](const DirectionWord& word) { return word.text == name; });
    };
    return line.key == "butter" && std::any_of(lines.begin(), lines.end(), [&](const IngredientLine& other) {
               return other.key != "butter" && other.role == "dough" && other.is_of(IngredientClass::fat) &&
                      is_named(other.key);
           });
}

// "Mix flour, water and oil", where olive oil is the only oil: what a mixing sentence calls by the kind.
bool is_mixed_by_kind(const IngredientLine& line, std::span<const IngredientLine> lines,
                      std::span<const DirectionWord> words) {
    const std::string name = fold_name(line.name.empty() ? line.key : line.name);
    const std::size_t space = name.rfind(' ');
    std::vector<std::string> kinds;
    if (space != std::string::npos && is_common_word(name.substr(space + 1))) { // others it is called by
        kinds.push_back(name.substr(space + 1));
        const auto has_kind = [&](const IngredientLine& other) {
            return &other != &line && fold_name(other.name).ends_with(kinds.front());
        };
        if (std::any_of(lines.begin(), lines.end(), has_kind)) {
            kinds.clear(); // of another line
        }
    }
    if (line.ingredient != nullptr && line.ingredient->is_flour()) {
        kinds.insert(kinds.end(), {"flours", "meal"});
    }
    if (line.is_of(IngredientClass::fat)) {
        kinds.emplace_back("fats");
    }
    bool is_mixing = false;
    for (std::size_t at = 0; at < words.size(); ++at) {
        is_mixing = words[at].kind == Kind::other ? is_mixing : words[at].kind == Kind::mix;
        const bool is_kind = std::find(kinds.begin(), kinds.end(), words[at].text) != kinds.end();
        const bool is_whole = at > 0 && space != std::string::npos &&
                              name.substr(0, space).ends_with(words[at - 1].text); // "brown sugar" itself
        if (is_mixing && is_kind && !is_whole) {
            return true;
        }
    }
    return false;
}

bool is_seed(const IngredientLine& line) {
    return line.key.ends_with("seed") || line.key.ends_with("seeds");
}

// "1/2 cup sugar mixed with 1 tbsp cinnamon": what stands in one line with it.
void set_apart_beside(std::vector<IngredientLine>& lines, const IngredientLine& apart,
                      Diagnostics& diagnostics) {
    const bool is_joined =
        apart.text.find("mixed with") != std::string::npos ||
        (apart.key.starts_with("egg") &&
         (apart.text.find("beaten with") != std::string::npos ||
          apart.text.find(" plus ") != std::string::npos || apart.text.find(" + ") != std::string::npos));
    if (!is_joined) {
        return;
    }
    for (IngredientLine& line : lines) {
        if (line.role == "dough" && line.place.span.offset == apart.place.span.offset) {
            set_apart(line, apart.role,
                      " is mixed with what the directions name for " + apart.role + "; it is kept apart",
                      diagnostics);
        }
    }
}

// "Combine egg whites and water": the water or milk listed right behind what it thins is brushed on with it.
void set_apart_thinning(std::vector<IngredientLine>& lines, std::size_t at,
                        std::span<const DirectionWord> words, std::span<const std::string> calls,
                        Diagnostics& diagnostics) {
    const bool has_next = at + 1 < lines.size() && lines[at + 1].role == "dough" &&
                          (lines[at + 1].key == "water" || lines[at + 1].key.ends_with("milk"));
    const auto is_same = [&](const IngredientLine& line) { return line.key == lines[at + 1].key; };
    if (!has_next || std::count_if(lines.begin(), lines.end(), is_same) < 2) {
        return;
    }
    for (std::size_t word = 0; word + 2 < words.size(); ++word) {
        const bool is_joint = words[word + 1].text == "and" || words[word + 1].text == "with";
        const std::string_view fluid = lines[at + 1].key == "water" ? "water" : "milk";
        if (is_joint && words[word + 2].text == fluid && is_called(words, word, calls)) {
            set_apart(lines[at + 1], lines[at].role,
                      " is mixed with what is kept apart; it is kept apart too", diagnostics);
            return;
        }
    }
}

// "Mix the last two ingredients and brush the loaves with it"
void set_apart_last(std::vector<IngredientLine>& lines, std::span<const DirectionWord> words,
                    Diagnostics& diagnostics) {
    for (std::size_t at = 0; at + 2 < words.size(); ++at) {
        const double count = number_named(words[at + 1].text);
        if (words[at].text != "last" || !words[at + 2].text.starts_with("ingredient") || !(count > 1.0) ||
            count >= static_cast<double>(lines.size())) {
            continue;
        }
        std::size_t end = at;
        while (end < words.size() && words[end].kind != Kind::end && words[end].kind != Kind::apart) {
            ++end;
        }
        constexpr std::size_t near = 6;
        bool is_with_it = false; // "and brush the loaves with it"
        for (std::size_t next = end; next < std::min(end + near, words.size()); ++next) {
            is_with_it = is_with_it || words[next].text == "it" || words[next].text == "them" ||
                         words[next].text == "this";
        }
        const std::size_t verb =
            at - std::min<std::size_t>(at, words[at - std::min<std::size_t>(at, 1)].text == "the" ? 2 : 1);
        const bool goes_in = words[verb].text == "in" || words[verb].text == "add"; // "knead in the last two"
        if (end == words.size() || words[end].kind != Kind::apart || !is_with_it || goes_in) {
            continue;
        }
        for (std::size_t line = lines.size() - static_cast<std::size_t>(count); line < lines.size(); ++line) {
            if (lines[line].role == "dough") {
                set_apart(lines[line], std::string(words[end].role),
                          " is one of the last that the directions name for " + std::string(words[end].role) +
                              "; it is kept apart",
                          diagnostics);
            }
        }
        return;
    }
}

// More than a dough holds of a thing that pieces are boiled or fried in; shares of the flour are common
// practice, no source.
struct Bath {
    bool (*is_it)(const IngredientLine&);
    double most;                                     // of the flour, in one line
    bool (*is_done)(std::span<const DirectionWord>); // by a sentence
    std::string_view why;
};

bool boils(std::span<const DirectionWord> sentence) {
    return has_stem(sentence, {"boil", "simmer", "poach"});
}

bool boils_with_soda(std::span<const DirectionWord> sentence) {
    return has_stem(sentence, {"boil", "simmer", "dip"}) && has_stem(sentence, {"water"}) &&
           has_stem(sentence, {"soda"});
}

bool fries_in_fat(std::span<const DirectionWord> sentence) {
    return has_stem(sentence, {"fry", "fried"}) &&
           (has_stem(sentence, {"deep"}) ||
            (has_stem(sentence, {"hot"}) && has_stem(sentence, {"oil", "fat", "lard", "shortening"})) ||
            has_stem(sentence, {"oil"}));
}

constexpr auto baths = std::to_array<Bath>({
    {[](const IngredientLine& line) {
         return line.key == "water" && line.text.find("oiling") == std::string::npos;
     },
     1.5, boils, " is more water than such a dough holds, and the directions boil; it is kept apart"},
    {[](const IngredientLine& line) {
         return line.is_of(IngredientClass::fat) && line.key.find("butter") == std::string::npos;
     },
     0.5, fries_in_fat, " is more fat than such a dough holds, and the directions fry; it is kept apart"},
    {[](const IngredientLine& line) { return line.key == "baking soda"; }, 0.05, boils_with_soda,
     " is more than a dough holds, and the directions boil; it is kept apart"},
});

// A sentence, or two neighbours: "Heat the oil. Fry the rings."
template <class Test>
bool in_a_sentence(std::span<const std::span<const DirectionWord>> sentences, const Test& is_it,
                   bool may_be_two = false) {
    for (std::size_t at = 0; at < sentences.size(); ++at) {
        const auto& last = sentences[may_be_two && at + 1 < sentences.size() ? at + 1 : at];
        const auto length = static_cast<std::size_t>(last.data() + last.size() - sentences[at].data());
        if (is_it(std::span(sentences[at].data(), length))) {
            return true;
        }
    }
    return false;
}

// A gallon beside three cups for the dough; a litre of oil where the directions fry.
void set_apart_bath(std::vector<IngredientLine>& lines, const CallIndex& index, Diagnostics& diagnostics) {
    const Mass flour = flour_in_dough(lines);
    int fluids = 0;
    for (const IngredientLine& line : lines) {
        if (line.is_known() && line.ingredient->is_flour() && !line.weight) { // how much is open
            return;
        }
        const bool is_counted = line.is_known() && line.weight && is_in_dough(line.role);
        fluids += is_counted && (line.key == "water" || line.key.ends_with("milk")) ? 1 : 0;
    }
    for (const Bath& bath : baths) {
        if (!(flour.value() > 0.0) || !in_a_sentence(index.sentences(), bath.is_done, true)) {
            continue;
        }
        for (IngredientLine& line : lines) {
            const bool is_much = bath.is_it(line) && line.role == "dough" && line.weight &&
                                 line.weight->likely > bath.most * flour;
            if (is_much && (line.key != "water" || fluids > 1)) {
                set_apart(line, "bath", std::string(bath.why), diagnostics);
            }
        }
    }
}

// "3 tablespoons butter" and, without an amount, "Melted butter": it goes on top, or into the pan.
void set_apart_more_fat(std::vector<IngredientLine>& lines, Diagnostics& diagnostics) {
    for (std::size_t at = 1; at < lines.size(); ++at) {
        IngredientLine& line = lines[at];
        const bool is_for = line.text.find(" for ") != std::string::npos; // "cold butter for laminating"
        const bool is_open_fat =
            line.role == "dough" && !line.number && !is_for && line.is_of(IngredientClass::fat);
        const bool has_amount_above =
            is_open_fat && std::any_of(lines.begin(), lines.begin() + static_cast<std::ptrdiff_t>(at),
                                       [&](const IngredientLine& above) {
                                           return above.key == line.key && above.role == "dough" &&
                                                  above.number;
                                       });
        if (has_amount_above) {
            set_apart(line, "brushing", " has no amount, and the dough has its own above; it is kept apart",
                      diagnostics);
        }
    }
}

// "Beat in 4 eggs. Beat the remaining egg and brush it on": how many the dough gets is not counted here.
void doubt_shared_eggs(std::vector<IngredientLine>& lines, const CallIndex& index, Diagnostics& diagnostics) {
    const auto is_brushed_rest = [&](std::span<const DirectionWord> sentence) {
        bool is_named = false;
        for (std::size_t at = 1; at < sentence.size(); ++at) {
            is_named =
                is_named ||
                (sentence[at].text.starts_with("egg") &&
                 sentence[at - 1].is_any({"remaining", "other", "last", "reserved", "leftover", "another"}));
        }
        return is_named && std::any_of(sentence.begin(), sentence.end(),
                                       [](const DirectionWord& word) { return word.role == "brushing"; });
    };
    if (!in_a_sentence(index.sentences(), is_brushed_rest)) {
        return;
    }
    for (IngredientLine& line : lines) {
        if (line.key == "egg" && line.role == "dough" && line.is_sure && line.number && *line.number > 1.0) {
            doubt(line, Code::amount_doubtful,
                  "some of " + in_quotes(line.text) +
                      " is brushed on by the directions; all of it is counted",
                  "take off what does not go into the dough", diagnostics);
        }
    }
}

} // namespace

// "All but two tablespoons of the seeds": of what is mixed a share is kept.
static bool is_share_behind(std::span<const DirectionWord> words, std::size_t at) {
    constexpr std::size_t near = 3;
    const auto rest = words_behind(words, at, near);
    return std::any_of(rest.begin(), rest.end(), [&](const DirectionWord& word) {
        return has_digit(word.text) || number_named(word.text) > 0.0 ||
               word.is_any({"handful", "little", "few", "half", "third", "quarter", "some", "part", "about",
                            "cup", "tablespoon", "tablespoons", "tbsp"});
    });
}

std::string role_by_directions(std::span<const DirectionWord> words, std::span<const std::string> calls) {
    const std::size_t brushed_at = last_brushed(words, calls);
    std::string role;
    std::string_view act;     // of the words before; empty where it mixes
    bool is_open = false;     // named in this sentence
    bool has_act = false;     // of this sentence
    bool is_waiting = false;  // for what is done with it: "break up the tomatoes and spread them over"
    std::size_t left_out = 0; // words that "all but" may still leave out
    for (std::size_t at = 0; at < words.size(); ++at) {
        const DirectionWord& word = words[at];
        if (word.kind == Kind::mix && is_open) { // "strew the seeds over and knead them in"
            return {};
        }
        if (word.kind == Kind::end && is_open && at + 1 < words.size() &&
            has_stem(words.subspan(at + 1, 1), {"fold", "knead", "laminat", "work"})) { // "Fold in thirds"
            return {};
        }
        if (is_waiting && word.kind != Kind::other) {
            if (word.kind != Kind::apart) {
                return {};
            }
            role = role.empty() ? std::string(word.role) : role;
            is_waiting = false;
        }
        if (word.kind != Kind::other) {
            act = word.role;
            has_act = word.kind != Kind::end;
            is_open = is_open && word.kind != Kind::end;
        } else if (left_out == 0 && is_called(words, at, calls)) { // "all the rest but the jam"
            const bool is_mixed = act.empty() && has_act;
            const Sentence mixed = sentence_around(words, at);
            const bool is_aside = is_mixed_alone(words, mixed) && is_dough_made(words, mixed.begin);
            if (is_mixed && ((is_aside && brushed_at > at) || is_brushed_behind(words, at))) {
                role = "brushing";
                continue;
            }
            if (const std::string_view next = act_behind(words, at); is_mixed && is_aside && !next.empty()) {
                role = next; // "Whisk sugar and lemon juice and drizzle over"
                continue;
            }
            if (is_mixed) {
                return {};
            }
            is_waiting = act.empty();
            if (is_waiting && mixed.begin < words.size() && words[mixed.begin].text == "toss") {
                is_waiting = false; // "Toss the tomatoes with salt": what is done with them follows
                continue;
            }
            if (is_waiting) {
                continue;
            }
            role = role.empty() ? std::string(act) : role;
            is_open = true;
        }
        constexpr std::size_t most_left_out = 7; // "except the melted butter and the seeds"
        const bool leaves_out = word.is_any({"but", "except", "without"});
        left_out = leaves_out                 ? (is_share_behind(words, at) ? 0 : most_left_out)
                   : word.kind != Kind::other ? 0
                   : left_out > 0             ? left_out - 1
                                              : 0;
    }
    return role;
}

void doubt(IngredientLine& line, Code code, const std::string& message, const std::string& hint,
           Diagnostics& diagnostics) {
    line.is_sure = false;
    diagnostics.warning(code, line.place, message, hint);
}

void set_apart(IngredientLine& line, const std::string& role, const std::string& why,
               Diagnostics& diagnostics) {
    line.role = role;
    doubt(line, Code::ingredient_doubtful, in_quotes(line.text) + why,
          "add it to the dough if it goes into it", diagnostics);
}

void set_apart_by_directions(std::vector<IngredientLine>& lines, std::span<const std::string> directions,
                             Diagnostics& diagnostics) {
    const std::vector<DirectionWord> words = direction_words(directions);
    const bool is_all_mixed = mixes_all(words);
    for (IngredientLine& line : lines) {
        const auto is_same = [&](const IngredientLine& other) {
            return &other != &line && other.key == line.key && other.name == line.name;
        };
        const bool is_plain = line.ingredient == nullptr || is_strewn_flour(line, lines) ||
                              (!line.ingredient->is_flour() && !line.ingredient->is_yeast());
        if (line.role != "dough" || !is_plain || line.key == "water" ||
            std::any_of(lines.begin(), lines.end(), is_same)) {
            continue;
        }
        std::vector<std::string> calls = calls_of(line);
        if (calls.empty() && !is_all_mixed && is_second_fat(line, lines, words)) {
            calls.emplace_back("butter");
        }
        if (!calls.empty() && is_seed(line)) { // "sprinkle the seeds" are all of them
            calls.emplace_back(std::count_if(lines.begin(), lines.end(), is_seed) == 1 ? "seed" : "seeds");
        }
        const bool is_meant = !calls.empty() && line.key != "egg" && is_mixed_by_kind(line, lines, words);
        const std::string role = calls.empty() || is_meant ? std::string() : role_by_directions(words, calls);
        if (role.empty()) {
            continue;
        }
        const bool is_kept = line.key == "egg" || (line.is_of(IngredientClass::egg) && is_all_mixed);
        doubt(line, Code::ingredient_doubtful,
              in_quotes(line.name) + " is listed with the dough, but the directions name it for " + role +
                  " only" + (is_kept ? "" : "; it is kept apart"),
              is_kept ? "take it out of the dough if it does not go into it"
                      : "add it to the dough if it goes into it",
              diagnostics);
        line.role = is_kept ? line.role : role;
        if (!is_kept) {
            set_apart_beside(lines, line, diagnostics);
            set_apart_thinning(lines, static_cast<std::size_t>(&line - lines.data()), words, calls,
                               diagnostics);
        }
    }
    set_apart_last(lines, words, diagnostics);
    set_apart_more_fat(lines, diagnostics);
    const CallIndex index(lines, words);
    doubt_shared_eggs(lines, index, diagnostics);
    set_apart_bath(lines, index, diagnostics);
    set_apart_greasing(lines, index, diagnostics);
    const std::size_t late = end_of_making(index);
    set_apart_named_late(lines, index, late, diagnostics);
    set_apart_egg_wash(lines, index, late, diagnostics);
    doubt_behind_apart(lines, index, late, diagnostics);
    doubt_worked_in(lines, index, diagnostics);
}

} // namespace leavenwright
