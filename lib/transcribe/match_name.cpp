#include "transcribe/match_name.hpp"

#include "transcribe/kitchen_words.hpp"

#include <algorithm>
#include <array>
#include <iterator>

namespace leavenwright {
namespace {

using Words = std::vector<std::string>;
constexpr std::size_t most_words = 12; // of a name; more are prose

std::string joined(std::span<const std::string> words) {
    std::string text;
    for (const std::string& word : words) {
        text += (text.empty() ? "" : " ") + word;
    }
    return text;
}

bool is_harmless(std::span<const std::string> words) {
    return std::all_of(words.begin(), words.end(), [](const std::string& word) {
        const bool is_ordinal = word.size() == 1 && word.front() >= '0' && word.front() <= '9'; // "water 2"
        return is_ordinal || is_preparation_word(word);
    });
}

// The words between marks and clauses; the first segment is the name, what follows a comma may belong to it.
struct Segments {
    std::vector<Words> parts;
    Words behind_or;
};

// "luke-warm" is two words where names are compared.
void push_words(Words& words, std::string_view text) {
    while (!text.empty()) {
        const std::size_t end = std::min(text.find(' '), text.size());
        words.emplace_back(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
}

bool is_elided(const LineToken& token) {
    return token.text.starts_with("d'") || token.text.starts_with("l'");
}

// "d'olio": the name stands behind the apostrophe; "huile d'olive" is one name with it.
enum class Elision { kept, first_dropped, dropped };

Segments segments_of(std::span<const LineToken> tokens, Elision elision) {
    Segments segments;
    segments.parts.emplace_back();
    bool is_clause = false;
    bool is_or = false;
    std::size_t count = 0;
    for (const LineToken& token : tokens) {
        if (++count > 40) {
            break;
        }
        if (token.is("\"") || token.is("'")) { // '"00" flour', "confectioners' sugar"
            continue;
        }
        if (token.is("/") && segments.parts.size() == 1 && !segments.parts.back().empty()) { // "oil/ghee"
            is_or = is_clause = true;
            continue;
        }
        const bool is_comma = token.kind == LineToken::Kind::mark && token.text != "." && token.text != "&";
        if (is_comma) {
            is_clause = false;
            if (!segments.parts.back().empty()) {
                segments.parts.emplace_back();
            }
            continue;
        }
        if (token.is("or") && segments.parts.size() == 1 && !segments.parts.back().empty()) {
            is_or = true;
        }
        if (token.is_any({"enough", "sufficient"}) && segments.parts.front().empty()) {
            continue; // "enough flour to make a soft dough"
        }
        Words& words = segments.parts.back();
        const bool is_joint = segments.parts.size() == 1 && words.size() > 1 &&
                              words.back() == "and" && // "dried and sifted flour"
                              words[words.size() - 2].ends_with("ed") &&
                              is_harmless(std::span(words).first(words.size() - 2));
        // "very warm water" and "mixed peel" go on, "butter softened until" and "water poured over" do not
        const bool is_named = !is_harmless(segments.parts.back());
        const bool is_participle = token.is_word() && token.folded.size() > 4 && token.folded.ends_with("ed");
        const bool begins_clause = is_clause_word(token.folded) &&
                                   (is_named || (!is_participle && !is_preparation_word(token.folded)));
        if (is_joint && begins_clause) {
            words.clear();
        }
        is_clause = is_clause || (begins_clause && !is_joint);
        if (is_or && !token.is("or") && segments.behind_or.size() < most_words) {
            segments.behind_or.push_back(token.folded);
        }
        if (!is_clause && segments.parts.back().size() < most_words && token.text != ".") {
            const bool is_cut = is_elided(token) &&
                                (elision == Elision::dropped ||
                                 (elision == Elision::first_dropped && is_harmless(segments.parts.back())));
            push_words(segments.parts.back(), token.is_number() ? token.text
                                              : is_cut          ? token.folded.substr(1)
                                                                : token.folded);
        }
    }
    return segments;
}

bool take(NameMatch& match, const std::string& name, const Pantry& pantry) {
    const PantryMatch found = pantry.find(name);
    if (found.ingredient != nullptr) {
        match.ingredient = found.ingredient;
        match.key = found.nearest != nullptr ? name : std::string(found.ingredient->name);
        return true;
    }
    match.meanings = pantry.meanings_of(name);
    return !match.meanings.empty();
}

// A cup of cooked grain is mostly water: not what the pantry has under its name.
bool is_swollen(const Words& words, NameMatch& match) {
    const bool is_cooked = std::any_of(words.begin(), words.end(), [](const std::string& word) {
        return word == "cooked" || word == "boiled" || word == "soaked";
    });
    const bool is_grain =
        match.ingredient != nullptr && match.ingredient->ingredient_class == IngredientClass::seed_or_grain;
    if (is_cooked && is_grain) {
        match.ingredient = nullptr;
        match.key.clear();
    }
    return is_cooked && is_grain;
}

// The longest run of words with a name in the pantry, the rest being preparation; the later of two.
bool take_longest(NameMatch& match, const Words& words, const Pantry& pantry) {
    const std::span<const std::string> all(words);
    for (std::size_t length = words.size(); length > 0; --length) {
        for (std::size_t begin = words.size() - length + 1; begin-- > 0;) {
            const bool fits = is_harmless(all.first(begin)) && is_harmless(all.subspan(begin + length));
            if (fits && take(match, joined(all.subspan(begin, length)), pantry)) {
                return !is_swollen(words, match);
            }
        }
    }
    return false;
}

// "yolks of eggs", "eggs, whites only"
std::string_view egg_part(const Words& words) {
    const auto has = [&](std::string_view stem) {
        return std::any_of(words.begin(), words.end(), [&](const std::string& word) {
            return word == stem || word == std::string(stem) + "s";
        });
    };
    return !has("egg")                  ? std::string_view()
           : has("yolk") || has("yelk") ? "egg yolk"
           : has("white")               ? "egg white"
                                        : std::string_view();
}

// "zest of lemon", "grated rind of an orange"
bool take_part(NameMatch& match, const Words& words, const Pantry& pantry) {
    const auto of = std::find(words.begin(), words.end(), "of");
    if (of == words.begin() || of == words.end() || of + 1 == words.end()) {
        return false;
    }
    const auto part =
        std::find_if(words.begin(), of, [](const std::string& word) { return !is_preparation_word(word); });
    Words turned(of + 1, words.end());
    turned.insert(turned.end(), part, of);
    if (part == of || take_longest(match, turned, pantry)) {
        return part != of;
    }
    std::string& fruit = turned[static_cast<std::size_t>(words.end() - of) - 2]; // "two lemons"
    const bool is_many = fruit.size() > 3 && fruit.ends_with('s');
    fruit.resize(fruit.size() - (is_many ? 1U : 0U));
    return is_many && take_longest(match, turned, pantry);
}

// "active sourdough starter": how it stands is no part of its name.
bool is_state_of_culture(std::string_view word) {
    constexpr auto states = std::to_array<std::string_view>(
        {"active",    "bubbly",   "ripe",    "fed",   "mature", "lively", "vigorous",
         "refreshed", "recently", "freshly", "fresh", "unfed",  "cold",   "stirred",
         "your",      "my",       "our",     "good",  "strong", "very",   "well"});
    return std::find(states.begin(), states.end(), word) != states.end();
}

bool names_culture(const Words& words) {
    return std::any_of(words.begin(), words.end(), [](const std::string& word) {
        return word == "starter" || word == "culture" || word == "sourdough" || word == "leaven" ||
               word == "levain";
    });
}

// "cooked, sieved potato": the name stands behind the words of preparation.
void join_preparation(std::vector<Words>& parts) {
    const auto may_join = [&] {
        const bool is_state = // "bubbly, active starter"
            names_culture(parts[1]) &&
            std::all_of(parts.front().begin(), parts.front().end(), is_state_of_culture);
        return is_state || is_harmless(parts.front());
    };
    while (parts.size() > 1 && !parts.front().empty() && parts[1].size() < most_words && may_join()) {
        parts[1].insert(parts[1].begin(), parts.front().begin(), parts.front().end());
        parts.erase(parts.begin());
    }
}

// "flour, wheat, bread" is bread flour, and "flour, hard wheat" is what it is.
void drop_wheat(std::vector<Words>& parts) {
    const bool is_flour = parts.size() > 2 && parts.front() == Words{"flour"};
    if (is_flour && parts[1] == Words{"wheat"}) {
        parts.erase(parts.begin() + 1);
    }
}

// "olive or vegetable oil": the oil is of both.
bool take_shared_noun(NameMatch& match, const Words& head, const Words& behind_or, const Pantry& pantry) {
    const bool is_pair = head.size() == 1 && behind_or.size() > 1 &&
                         pantry.find(behind_or[0]).ingredient == nullptr &&
                         pantry.find(behind_or[0] + " " + behind_or[1]).ingredient != nullptr;
    return is_pair && take(match, head.front() + " " + behind_or[1], pantry);
}

NameMatch match_segments(Segments segments, const Pantry& pantry) {
    NameMatch match;
    join_preparation(segments.parts);
    Words head = segments.parts.front();
    while (head.size() > 1 && (head.front() == "of" || head.front() == "de")) {
        head.erase(head.begin());
    }
    match.is_culture = names_culture(head) && pantry.find(joined(head)).ingredient == nullptr;
    while (match.is_culture && head.size() > 1 && is_state_of_culture(head.front())) {
        head.erase(head.begin());
    }
    match.name = joined(head);
    if (head.empty() || match.is_culture) {
        return match;
    }
    if (const std::string_view part = egg_part(head);
        !part.empty() && take(match, std::string(part), pantry)) {
        return match;
    }
    bool is_found = false;
    drop_wheat(segments.parts);
    if (segments.parts.size() > 2 && segments.parts[1].size() + segments.parts[2].size() <= 4) {
        Words turned = segments.parts[1]; // "milk, nonfat, dry"
        turned.insert(turned.end(), segments.parts[2].begin(), segments.parts[2].end());
        turned.insert(turned.end(), head.begin(), head.end());
        is_found = take(match, joined(turned), pantry);
        match.name = is_found && match.meanings.empty() ? joined(turned) : match.name;
    }
    if (!is_found && segments.parts.size() > 1 && segments.parts[1].size() <= 4) { // "flour, bread"
        Words turned = segments.parts[1];
        while (turned.size() > 1 && (turned.back() == "kind" || turned.back() == "sort")) {
            turned.pop_back(); // "yeast, the instant kind"
        }
        const std::size_t kind = turned.size();
        turned.insert(turned.end(), head.begin(), head.end());
        is_found = take(match, joined(turned), pantry);
        const bool is_raw = std::find(head.begin(), head.end(), "raw") != head.end() ||
                            std::find(head.begin(), head.end(), "uncooked") != head.end();
        if (!is_found && !is_raw) { // "sifted flour, whole wheat"; "raw rice, boiled" is weighed raw
            Words plain(turned.begin(), turned.begin() + static_cast<std::ptrdiff_t>(kind));
            std::copy_if(head.begin(), head.end(), std::back_inserter(plain),
                         [](const std::string& word) { return !is_preparation_word(word); });
            is_found = plain.size() > kind && take(match, joined(plain), pantry);
        }
        // "yeast, active dry, softened in water": what is left over is preparation
        if (!is_found && pantry.find(joined(head)).ingredient == nullptr) {
            is_found = take_longest(match, turned, pantry);
        }
        match.name = is_found && match.meanings.empty() ? joined(turned) : match.name;
    }
    is_found = is_found || take_shared_noun(match, head, segments.behind_or, pantry);
    is_found = is_found || take(match, match.name, pantry) || take_longest(match, head, pantry) ||
               take_part(match, head, pantry);
    for (std::size_t at = 0; !is_found && at < segments.behind_or.size();
         ++at) { // "all-purpose or bread flour"
        Words whole = head;
        whole.push_back(segments.behind_or[at]);
        is_found = take(match, joined(whole), pantry);
    }
    if (std::find(head.begin(), head.end(), "ground") != head.end() && match.ingredient != nullptr) {
        take(match, "ground " + std::string(match.ingredient->name), pantry);
    }
    if (is_found && !segments.behind_or.empty()) {
        NameMatch other;
        Words behind = segments.behind_or;
        while (!behind.empty() && other.ingredient == nullptr) {
            take_longest(other, behind, pantry);
            behind.pop_back();
        }
        const bool differs = other.ingredient != nullptr && other.ingredient != match.ingredient;
        match.alternative = differs ? other.key : std::string();
    }
    return match;
}

} // namespace

NameMatch match_name(std::span<const LineToken> tokens, const Pantry& pantry) {
    if (std::any_of(tokens.begin(), tokens.end(), is_elided)) {
        for (const Elision elision : {Elision::kept, Elision::first_dropped}) {
            NameMatch match = match_segments(segments_of(tokens, elision), pantry);
            if (match.is_found()) {
                return match;
            }
        }
    }
    return match_segments(segments_of(tokens, Elision::dropped), pantry);
}

} // namespace leavenwright
