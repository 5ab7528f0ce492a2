#include "transcribe/prose_items.hpp"

#include "quantity/show.hpp"
#include "transcribe/ingredient_line.hpp"
#include "transcribe/kitchen_acts.hpp"
#include "transcribe/kitchen_amount.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/prose_amounts.hpp"
#include "transcribe/prose_names.hpp"
#include "transcribe/prose_roles.hpp"
#include "transcribe/recipe_text.hpp"
#include "transcribe/recipe_words.hpp"
#include "transcribe/running_text.hpp"

#include <algorithm>
#include <optional>
#include <utility>

namespace leavenwright {
namespace {

class ItemFinder {
public:
    ItemFinder(const SourcedText& paragraph, const Pantry& pantry)
        : paragraph_(paragraph), clauses_(clauses_of(paragraph.text, is_running_text(paragraph.text))),
          names_(paragraph_.text, clauses_, pantry), roles_(names_) {}

    ProseItems find() {
        for (std::size_t at = 0; at < clauses_.size() && items_.size() < most_recipe_lines; ++at) {
            names_.open(at, last_end_);
            read_clause(at);
        }
        return {.clauses = std::move(clauses_), .items = std::move(items_)};
    }

private:
    void read_clause(std::size_t number) {
        roles_.open_clause();
        tries_ = 0;
        const std::size_t adjective = names_.word(0) == "average" ? 1 : 0;
        is_cost_ = is_cost_ ||
                   (names_.clause().begins_sentence() && is_one_of("cost|price", names_.word(adjective)));
        for (std::size_t at = is_cost_ ? names_.size() : 0; at < names_.size();) {
            if (names_.clause().words[at].begin < last_end_) { // of an item that the clause before began
                ++at;
                continue;
            }
            if (const std::size_t end = take_amount_behind(at, number); end > 0) {
                at = end;
                continue;
            }
            roles_.read_word(at);
            auto found = find_item(at);
            if (!found && roles_.is_name_expected()) {
                found = names_.bare_name(at);
            }
            if (!found && at == 0) {
                found = bare_clause(number);
            }
            if (!found) {
                roles_.pass_word(at);
                ++at;
                continue;
            }
            push(*found, number);
            roles_.pass_item(!found->has_amount);
            at = found->end;
        }
    }

    // "flour to make a stiff dough, about six cups": behind which word it ends; 0 where it is none.
    std::size_t take_amount_behind(std::size_t at, std::size_t number) {
        std::size_t lead = 0; // "(it will take about six cups)"
        while (lead < at &&
               is_one_of("it|you|will|may|take|takes|require|requires|need|needs|use|using|about|nearly|"
                         "perhaps|probably|say|some",
                         names_.word(lead))) {
            ++lead;
        }
        const bool is_first = lead == at;
        if (!is_first || items_.empty() || items_.back().has_amount || items_.back().clause + 1 != number ||
            names_.clause().begins_sentence() || !may_begin_amount(names_.word(at))) {
            return 0;
        }
        const std::size_t end = end_of_bare_amount(names_, at);
        if (end > 0) {
            ProseItem& item = items_.back();
            const auto begin = static_cast<std::size_t>(item.place.text.data() - paragraph_.text.data());
            last_end_ = names_.clause().words[end - 1].end;
            if (names_.clause().mark_before == '(' && item.words.empty()) {
                item.words = std::string(names_.text_of(at, end)) + " " + std::string(item.place.text);
            }
            item.place = paragraph_.part(begin, last_end_ - begin);
            item.has_amount = true;
        }
        return end;
    }

    std::optional<FoundItem> find_item(std::size_t at) {
        constexpr int most_tries = 12; // of one clause
        if (auto found = as_much_as_before(at)) {
            return found;
        }
        if (auto found = names_.without_amount(at, !is_in_dough(roles_.role()))) {
            return found;
        }
        if (auto found = one_measure(at)) {
            return found;
        }
        const bool may_be_likened = names_.is_likened(at);
        const bool may_be_amount = may_begin_amount(names_.word(at));
        if (tries_ >= most_tries || !(may_be_likened || may_be_amount)) {
            return std::nullopt;
        }
        ++tries_;
        if (auto few = few_of_unknown(at)) {
            return few;
        }
        auto found = may_be_likened ? names_.likened(at) : std::nullopt;
        found = found || !may_be_amount ? found : measured_item(names_, at);
        return found ? found : in_measure_before(at);
    }

    // "half an ounce of yeast, a few caraway comfits": of a name not known, between two items.
    std::optional<FoundItem> few_of_unknown(std::size_t at) const {
        constexpr std::size_t most_name_words = 3;
        const std::size_t lead = names_.word(0) == "and" ? 1 : 0;
        const std::size_t name = lead + 2;
        const bool is_behind = at == lead && !items_.empty() && items_.back().has_amount &&
                               items_.back().clause + 1 == names_.clause_number() &&
                               !names_.clause().begins_sentence();
        if (!is_behind || names_.word(lead) != "a" || names_.word(lead + 1) != "few" ||
            names_.size() <= name || names_.size() > name + most_name_words ||
            names_.known_from(at, name, true) ||
            is_one_of("minutes|hours|days|times|moments|seconds|weeks|inches|others|more|strokes|turns|drops",
                      names_.word(name))) {
            return std::nullopt;
        }
        return FoundItem{.begin = at,
                         .end = names_.size(),
                         .text_begin = names_.clause().words[at].begin,
                         .has_amount = true,
                         .is_known = false};
    }

    // "A pint of milk, and as much water"; "as much flour as will make it stiff" is no amount.
    std::optional<FoundItem> as_much_as_before(std::size_t at) const {
        constexpr std::size_t most_name_words = 3;
        const std::size_t name = at + 2;
        const bool is_near = !items_.empty() && items_.back().has_amount && items_.back().is_known &&
                             items_.back().clause + 1 >= names_.clause_number();
        if (!is_near || names_.word(at) != "as" || !is_one_of("much|many", names_.word(at + 1))) {
            return std::nullopt;
        }
        const ProseItem& before = items_.back();
        const auto amount = read_kitchen_amount(line_tokens(
            plain_line(before.words.empty() ? before.place.text : std::string_view(before.words))));
        const std::size_t end = names_.size();
        const Ingredient* ingredient =
            amount && name < end && end <= name + most_name_words ? names_.named(name, end) : nullptr;
        if (ingredient == nullptr || before.ingredient == nullptr || goes_on_with_as() ||
            !(ingredient->ingredient_class == before.ingredient->ingredient_class ||
              (is_fluid(*ingredient) && is_fluid(*before.ingredient)))) {
            return std::nullopt;
        }
        return FoundItem{.begin = at,
                         .end = end,
                         .text_begin = names_.clause().words[at].begin,
                         .ingredient = ingredient,
                         .words = show_decimal(amount->number, 3) + " " + amount->measure.name + " " +
                                  std::string(names_.text_of(name, end)),
                         .has_amount = true};
    }

    // "as much milk, made a little warm, as will wet it"
    bool goes_on_with_as() const {
        constexpr std::size_t near = 2;
        const std::size_t next = names_.clause_number() + 1;
        return std::any_of(clauses_.begin() + static_cast<std::ptrdiff_t>(std::min(next, clauses_.size())),
                           clauses_.begin() +
                               static_cast<std::ptrdiff_t>(std::min(next + near, clauses_.size())),
                           [](const ProseClause& clause) { return clause.word(0) == "as"; });
    }

    // "half a cup of yeast, salt", "add salt, two eggs", "flavor with nutmeg": a clause that is a name and
    // nothing else, beside amounts, of what was not named before.
    std::optional<FoundItem> bare_clause(std::size_t number) const {
        std::size_t name = 0;
        while (is_one_of("and|then|also", names_.word(name))) {
            ++name;
        }
        bool is_added = false;
        for (std::size_t at = 0; at < names_.size(); ++at) { // "in the morning add"
            if (is_one_of("add|adding", names_.word(at))) {
                name = at + 1;
                is_added = true;
            }
        }
        const bool is_flavour = is_one_of("flavor|flavour|season|flavored|flavoured", names_.word(name)) &&
                                names_.word(name + 1) == "with";
        const bool is_behind = !items_.empty() && items_.back().clause + 1 == number;
        const ProseClause* next = names_.next_clause();
        const bool has_next = next != nullptr && !next->begins_sentence() && may_begin_amount(next->word(0));
        const bool is_before = is_added && has_next;
        if (has_next && is_amount_alone(names_.text().substr(next->begin, next->end - next->begin))) {
            return std::nullopt; // "molasses, 1/3 cup"
        }
        if (!is_flavour && !is_before && (!is_behind || names_.clause().begins_sentence())) {
            return std::nullopt;
        }
        name += is_flavour ? 2 : 0;
        auto found = name < names_.size() ? names_.known_from(name, name, true) : std::nullopt;
        const bool is_known = found && found->end == names_.size() &&
                              std::none_of(items_.begin(), items_.end(), [&](const ProseItem& item) {
                                  return item.ingredient == found->ingredient;
                              });
        return is_known ? found : std::nullopt;
    }

    // "two eggs, tablespoon of yeast": one of them.
    std::optional<FoundItem> one_measure(std::size_t at) const {
        constexpr std::size_t most_name_words = 3;
        constexpr std::size_t shortest = 3;
        const std::string_view word = names_.word(at);
        const auto measure = at == 0 && word.size() >= shortest ? measure_named(word, word) : std::nullopt;
        const std::size_t name = names_.word(1) == "of" ? 2 : 1;
        if (!measure || (name == 1 && !measure->is_volume())) {
            return std::nullopt;
        }
        for (std::size_t end = std::min(name + most_name_words, names_.size()); end > name; --end) {
            const std::string_view text = names_.text_of(0, end);
            if (is_ingredient_line(text, names_.pantry())) {
                return FoundItem{.begin = 0,
                                 .end = end,
                                 .text_begin = names_.clause().words.front().begin,
                                 .ingredient = names_.named(name, end),
                                 .words = "1 " + std::string(text),
                                 .has_amount = true};
            }
        }
        return std::nullopt;
    }

    // Of "one", or of "one and three-quarters".
    std::size_t end_of_mixed_number(std::size_t at) const {
        if (names_.word(at + 1) == "and" && names_.word(at + 2) == "a" &&
            fraction_named(names_.word(at + 3)) > 0.0) {
            return at + 4; // "one and a half"
        }
        const bool is_mixed =
            names_.word(at + 1) == "and" &&
            fraction_named(names_.word(at + 2).substr(names_.word(at + 2).rfind('-') + 1)) > 0.0;
        return at + (is_mixed ? 3 : 1);
    }

    // "two tablespoonfuls of butter, two of sugar": tablespoonfuls again.
    std::optional<FoundItem> in_measure_before(std::size_t at) const {
        constexpr std::size_t most_name_words = 3;
        const bool is_near = !items_.empty() && items_.back().has_amount && items_.back().is_known &&
                             items_.back().clause + 1 >= names_.clause_number() &&
                             !(names_.clause().begins_sentence() && at == 0);
        const std::size_t of = end_of_mixed_number(at); // "one and three-quarters of butter"
        if (!is_near || names_.word(of) != "of") {
            return std::nullopt;
        }
        const ProseItem& before = items_.back();
        const auto amount = read_kitchen_amount(line_tokens(
            plain_line(before.words.empty() ? before.place.text : std::string_view(before.words))));
        if (!amount || amount->measure.is_piece() || amount->measure.kind == Measure::Kind::percent) {
            return std::nullopt;
        }
        const std::size_t name = of + 1;
        for (std::size_t end = std::min(name + most_name_words, names_.size()); end > name; --end) {
            const Ingredient* ingredient = names_.named(name, end);
            if (ingredient != nullptr && !mass_of_piece(*ingredient, "")) {
                return FoundItem{.begin = at,
                                 .end = end,
                                 .text_begin = names_.clause().words[at].begin,
                                 .ingredient = ingredient,
                                 .words = std::string(names_.text_of(at, of)) + " " + amount->measure.name +
                                          " " + std::string(names_.text_of(of, end)),
                                 .has_amount = true};
            }
        }
        return std::nullopt;
    }

    void push(const FoundItem& found, std::size_t number) {
        if (!items_.empty() && is_no_item(found.begin)) {
            return;
        }
        const std::size_t end =
            found.text_end > 0 ? found.text_end : names_.clause().words[found.end - 1].end;
        last_end_ = end;
        items_.push_back({.place = paragraph_.part(found.text_begin, end - found.text_begin),
                          .role = is_on_top(found.end)   ? "topping"
                                  : is_frying_fat(found) ? "bath"
                                                         : roles_.role(),
                          .ingredient = found.ingredient,
                          .words = found.words,
                          .clause = number,
                          .has_amount = found.has_amount,
                          .is_known = found.is_known,
                          .is_part = found.is_part || roles_.is_held_back(),
                          .is_behind_verb = roles_.is_behind_verb()});
    }

    // "Have ready three pounds of lard, smoking hot"
    bool is_frying_fat(const FoundItem& found) const {
        const bool is_ready = names_.word(0) == "have" && names_.word(1) == "ready";
        return is_ready && found.ingredient != nullptr &&
               found.ingredient->ingredient_class == IngredientClass::fat;
    }

    // "a few chopped nuts on top"
    bool is_on_top(std::size_t at) const {
        constexpr std::size_t near = 5;
        for (std::size_t next = at; next < at + near && is_in_dough(roles_.role()); ++next) {
            const bool is_top = is_one_of("top|tops", names_.word(next)) && next > at &&
                                is_one_of("on|over|the", names_.word(next - 1));
            if (is_top || is_one_of("sprinkled|strewn|scattered", names_.word(next))) {
                return true;
            }
        }
        return false;
    }

    // "For a softer crumb use 50 g of butter"
    bool is_advice() const {
        return names_.word(0) == "for" && names_.word(1) == "a" && names_.word(2).ends_with("er") &&
               names_.clause().begins_sentence();
    }

    // "or two cups of home-made yeast": the first is taken. "Makes three pounds of bread" is no ingredient.
    bool is_no_item(std::size_t at) const {
        if (is_advice()) {
            return true;
        }
        if (at > 1 && names_.word(at - 1) == "of" &&
            is_one_of("instead|place|stead|lieu", names_.word(at - 2))) {
            return true;
        }
        constexpr std::size_t near = 2;
        for (std::size_t before = at - std::min(at, near); before < at; ++before) {
            const bool is_share = is_one_of("each|every", names_.word(before)) && is_in_dough(roles_.role());
            if (is_share ||
                is_one_of("or|makes|make|yields|yield|weighing|weighs|weigh", names_.word(before))) {
                return true;
            }
        }
        return false;
    }

    SourcedText paragraph_;
    std::vector<ProseClause> clauses_;
    ProseNames names_;
    ProseRoles roles_;
    std::vector<ProseItem> items_;
    std::size_t last_end_ = 0; // of the last item, in bytes
    int tries_ = 0;            // of this clause
    bool is_cost_ = false;     // "Cost: flour, 4c.": what follows is of money
};

} // namespace

ProseItems find_prose_items(const SourcedText& paragraph, const Pantry& pantry) {
    return ItemFinder(paragraph, pantry).find();
}

} // namespace leavenwright
