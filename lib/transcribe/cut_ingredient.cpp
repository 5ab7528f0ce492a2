#include "transcribe/cut_ingredient.hpp"

#include "transcribe/find_name.hpp"
#include "transcribe/match_name.hpp"

#include <algorithm>

namespace leavenwright {
namespace {

// "1 egg white, coarse sugar": whether what stands behind a comma is an ingredient of its own, and no part of
// the first name ("flour, bread").
bool names_another(std::span<const LineToken> name, std::size_t comma, const Pantry& pantry) {
    auto tail = name.subspan(comma + 1);
    const auto measure =
        tail.size() > 1 ? measure_named(tail.front().text, tail.front().folded) : std::nullopt;
    if (measure && measure->is_volume()) { // "7 g yeast, teaspoon salt"
        tail = tail.subspan(1);
    }
    const auto end = std::find_if(tail.begin(), tail.end(),
                                  [](const LineToken& token) { return token.is(",") || token.is(";"); });
    const auto length = static_cast<std::size_t>(end - tail.begin());
    const bool is_choice =
        std::any_of(tail.begin(), tail.end(), [](const LineToken& token) { return token.is("or"); });
    if (length == 0 || is_choice) {
        return false;
    }
    const NameMatch before = match_name(name.first(comma), pantry);
    const Ingredient* first = before.ingredient;
    const Ingredient* second = match_name(tail.first(length), pantry).ingredient;
    if (!before.meanings.empty()) { // "yeast, salt"
        return second != nullptr && !second->is_yeast();
    }
    const bool is_of_egg = first != nullptr && second != nullptr && // "2 egg whites, yolks reserved"
                           first->ingredient_class == IngredientClass::egg &&
                           second->ingredient_class == IngredientClass::egg;
    return first != nullptr && second != nullptr && first != second && !is_of_egg &&
           match_name(name.first(name.size() - tail.size() + length), pantry).ingredient == first;
}

// "flour 500 g, water 350 g": whether a name with its amount behind it stands before the next comma.
bool has_amount_behind_name(std::span<const LineToken> tail, const Pantry& pantry) {
    const auto end = std::find_if(tail.begin(), tail.end(),
                                  [](const LineToken& token) { return token.is(",") || token.is(";"); });
    const auto number =
        std::find_if(tail.begin(), end, [](const LineToken& token) { return token.is_number(); });
    if (number == tail.begin() || number == end) {
        return false;
    }
    const auto amount = read_kitchen_amount({number, end});
    const NameMatch name = match_name({tail.begin(), number}, pantry);
    return amount && !amount->measure.name.empty() && name.is_found();
}

// "1 pint milk 1 ounce yeast": two columns that came out as one line. The number begins another item where
// nothing but the name of the first stands before it.
bool may_run_together(const std::vector<LineToken>& name, std::size_t at) {
    return name[at].is_number() &&
           std::all_of(name.begin(), name.begin() + static_cast<std::ptrdiff_t>(at),
                       [](const LineToken& token) {
                           return token.is_word() &&
                                  (!is_clause_word(token.folded) || is_preparation_word(token.folded));
                       });
}

// One thing in two measures, or two of which one is taken, and no two items: "3 cups flour 360 g bread
// flour".
bool are_alike(const NameMatch& first, const NameMatch& second, const Pantry& pantry) {
    const auto class_of = [&](const NameMatch& match) {
        const Ingredient* ingredient =
            match.ingredient != nullptr ? match.ingredient : pantry.find(match.meanings.front()).ingredient;
        return ingredient->ingredient_class;
    };
    return class_of(first) == class_of(second);
}

} // namespace

std::vector<LineToken> cut_second(SplitLine& split, const Pantry& pantry) {
    std::vector<LineToken>& name = split.name;
    int tries = 0;
    for (std::size_t at = 1; at + 1 < name.size() && tries < 8; ++at) {
        const bool may_part = name[at].is("in") || name[at].is("with") || name[at].is("over") ||
                              name[at].is(",") || name[at].is(";") || name[at].is("and") || name[at].is("&");
        if (!may_part && !may_run_together(name, at)) {
            continue;
        }
        ++tries;
        const auto tail = std::span<const LineToken>(name).subspan(at + (may_part ? 1U : 0U));
        const auto amount = read_kitchen_amount(tail);
        const bool is_list = !split.is_name_behind && (name[at].is(",") || name[at].is(";")) &&
                             has_amount_behind_name(tail, pantry);
        if (!amount && split.amount && (is_list || (name[at].is(",") && names_another(name, at, pantry)))) {
            std::vector<LineToken> rest(tail.begin(), tail.end());
            name.resize(at);
            return rest;
        }
        if (!amount || amount->measure.kind == Measure::Kind::percent ||
            (!may_part && amount->length == tail.size())) {
            continue;
        }
        const auto words = tail.subspan(std::min(amount->length, tail.size()));
        const bool is_solution = name[at].is("in") || name[at].is("with") || name[at].is("over");
        if (is_solution && words.size() > 2 && words[0].is("of") && words[1].is("the") && split.amount) {
            name.resize(at); // "yeast dissolved in 1/4 cup of the water": the water has a line of its own
            return {};
        }
        NameMatch second = match_name(words, pantry);
        if (!second.is_found()) { // a third may follow it
            const auto end = std::find_if(words.begin(), words.end(), [](const LineToken& token) {
                return token.is(",") || token.is("and") || token.is(";");
            });
            second = match_name({words.begin(), end}, pantry);
        }
        if (!second.is_found()) {
            second = match_short_words(words, pantry);
        }
        const NameMatch first = match_name(std::span<const LineToken>(name).first(at), pantry);
        const bool is_plain_first = // currants and sultanas are figured as raisins both
            first.ingredient != second.ingredient ||
            (name[at].is(",") && first.key != second.key && split.amount &&
             split.amount->measure.kind == amount->measure.kind && !amount->measure.is_piece());
        if (!may_part && second.is_found() && (!first.is_found() || are_alike(first, second, pantry))) {
            continue;
        }
        split.is_run_together = split.is_run_together || (!may_part && second.is_found());
        if (second.is_found() && is_plain_first && split.amount) {
            std::vector<LineToken> rest(tail.begin(), tail.end());
            name.resize(at);
            return rest;
        }
    }
    return {};
}

std::vector<LineToken> cut_mixture(SplitLine& split, const Pantry& pantry) {
    std::vector<LineToken>& name = split.name;
    if (name.size() > 3 && name.front().is("mixed")) {
        name.erase(name.begin());
    }
    const auto mark = std::find_if(name.begin(), name.end(),
                                   [](const LineToken& token) { return token.is("and") || token.is("&"); });
    if ((split.amount && split.amount->measure.is_piece()) || mark == name.end() ||
        match_name(name, pantry).ingredient != nullptr) {
        return {};
    }
    std::vector<LineToken> rest(mark + 1, name.end());
    const NameMatch first = match_name({name.begin(), mark}, pantry);
    const NameMatch second = match_name(rest, pantry);
    if (first.ingredient == nullptr || second.ingredient == nullptr) {
        return {};
    }
    if (first.ingredient == second.ingredient) { // sultanas and currants: figures of raisins both
        name.erase(mark, name.end());
        return {};
    }
    name.erase(mark, name.end());
    if (!split.amount) { // "milk and sugar to glaze"
        return rest;
    }
    for (double* part : {&split.amount->number, &split.amount->least, &split.amount->most}) {
        *part /= 2.0;
    }
    split.amount->least = 0.0; // any part of it may be the other
    split.amount->most *= 2.0;
    split.amount->is_vague = true;
    split.others.clear();
    return rest;
}

std::vector<LineToken> cut_unmeasured(std::vector<LineToken>& tokens, bool is_in_list, const Pantry& pantry) {
    const auto is_comma = [](const LineToken& token) { return token.is(","); };
    const auto is_bracket = [](const LineToken& token) { return token.is("(") || token.is("["); };
    const auto first_comma = std::find_if(tokens.begin(), tokens.end(), is_comma);
    const Ingredient* before = nullptr; // named last, without an amount
    int count = 0;                      // of such names
    for (auto begin = tokens.begin(); begin != tokens.end();) {
        const auto end = std::find_if(begin, tokens.end(), is_comma);
        const auto bracket = std::find_if(begin, end, is_bracket);
        const auto colon = std::find_if(begin, bracket, [](const LineToken& token) { return token.is(":"); });
        const auto name = begin == tokens.begin() && colon != bracket ? colon + 1 : begin;
        const auto amount = read_kitchen_amount({name, bracket});
        const auto behind = name + static_cast<std::ptrdiff_t>(amount ? amount->length : 0U);
        const bool has_figure = // the first number decides; "a cup of yeast" is one
            std::any_of(name, end, [](const LineToken& token) { return token.is_number(); }) ||
            (amount && behind != bracket && behind->is("of"));
        if (before != nullptr && amount && has_figure) {
            const auto stop = std::find_if(behind, bracket, // "a cup of yeast. Knead and bake."
                                           [](const LineToken& token) { return token.is("."); });
            const std::span<const LineToken> words(behind, stop);
            const NameMatch match = match_name(words, pantry);
            const Ingredient* named = match.ingredient;
            const bool is_kind = count == 1 && !is_in_list && named != nullptr && // "salt, 2 tsp kosher"
                                 named->ingredient_class == before->ingredient_class;
            if (!match.is_found() || named == before || is_kind) {
                return {};
            }
            std::vector<LineToken> rest(first_comma + 1, tokens.end());
            tokens.erase(first_comma, tokens.end());
            return rest;
        }
        before = has_figure || amount ? nullptr : match_name({name, bracket}, pantry).ingredient;
        if (before == nullptr || end == tokens.end()) {
            return {};
        }
        ++count;
        begin = end + 1;
    }
    return {};
}

std::vector<std::vector<LineToken>> names_in_row(std::span<const LineToken> tokens, const Pantry& pantry) {
    constexpr std::size_t longest = 24; // tokens
    const auto is_comma = [](const LineToken& token) { return token.is(","); };
    const bool may_be =
        tokens.size() <= longest && std::none_of(tokens.begin(), tokens.end(), [](const LineToken& token) {
            return token.is_number() || token.is_any({"(", ":", "for", "to", "with"});
        });
    std::vector<std::vector<LineToken>> names;
    std::vector<std::string> keys;
    for (auto begin = tokens.begin(); may_be && begin != tokens.end();) {
        const auto end = std::find_if(begin, tokens.end(), is_comma);
        NameMatch match = match_name({begin, end}, pantry);
        const bool is_plain = match.ingredient != nullptr && !match.ingredient->is_flour() &&
                              !match.ingredient->is_yeast() && !read_kitchen_amount({begin, end});
        if (!is_plain || std::find(keys.begin(), keys.end(), match.key) != keys.end()) {
            return {};
        }
        keys.push_back(std::move(match.key));
        names.emplace_back(begin, end);
        begin = end == tokens.end() ? end : end + 1;
    }
    const bool is_row =
        names.size() > 1 && match_name(tokens, pantry).key == keys.front(); // no "cheese, cheddar"
    return is_row ? names : std::vector<std::vector<LineToken>>();
}

std::vector<LineToken> cut_same(SplitLine& split) {
    std::vector<LineToken>& name = split.name;
    const auto is_mark = [](const LineToken& token) { return token.is_any({",", ";", "and", "&"}); };
    const auto mark = std::find_if(name.begin(), name.end(), is_mark);
    auto begin = std::find_if_not(mark, name.end(), is_mark);
    if (!split.amount || mark == name.begin() || name.end() - begin < 3 ||
        !((begin[0].is("the") && begin[1].is("same")) || (begin[0].is("as") && begin[1].is("much")))) {
        return {};
    }
    begin = std::find_if_not(begin + 2, name.end(), [](const LineToken& token) {
        return token.is_any({"quantity", "amount", "measure", "weight", "bulk", "of"});
    });
    const bool goes_on = std::any_of(begin, name.end(), [&](const LineToken& token) {
        return is_mark(token) || token.is_number() || token.is_any({"as", "again", "for", "needed"});
    });
    if (goes_on || begin == name.end()) { // "as much flour as will make a dough" is no amount
        return {};
    }
    std::vector<LineToken> rest(begin, name.end());
    name.erase(mark, name.end());
    return rest;
}

std::vector<LineToken> cut_each(SplitLine& split) {
    std::vector<LineToken>& name = split.name;
    name.erase(name.begin());
    const auto mark = std::find_if(name.begin(), name.end(), [](const LineToken& token) {
        return token.is("and") || token.is(",") || token.is("&");
    });
    if (mark == name.end()) {
        return {};
    }
    std::vector<LineToken> rest(mark + 1, name.end());
    const bool is_preparation = std::all_of(rest.begin(), rest.end(), [](const LineToken& token) {
        return !token.is_word() || is_preparation_word(token.folded); // "each anise and caraway, crushed"
    });
    name.erase(mark, name.end());
    if (is_preparation) {
        return {};
    }
    if (!rest.empty()) {
        LineToken each;
        each.kind = LineToken::Kind::word;
        each.text = each.folded = "each";
        rest.insert(rest.begin(), each);
    }
    return rest;
}

} // namespace leavenwright
