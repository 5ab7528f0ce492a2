#include "transcribe/ingredient_line.hpp"

#include "diagnostic/suggestion.hpp"
#include "quantity/show.hpp"
#include "source/unicode.hpp"
#include "transcribe/bare_number.hpp"
#include "transcribe/choose_amount.hpp"
#include "transcribe/cut_ingredient.hpp"
#include "transcribe/filling_up.hpp"
#include "transcribe/find_name.hpp"
#include "transcribe/line_brackets.hpp"
#include "transcribe/match_name.hpp"
#include "transcribe/measure_habit.hpp"
#include "transcribe/misread_print.hpp"
#include "transcribe/recipe_words.hpp"
#include "transcribe/running_text.hpp"
#include "transcribe/split_line.hpp"
#include "transcribe/wash.hpp"
#include "transcribe/weigh_amount.hpp"
#include "transcribe/yeast_kind.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace leavenwright {
namespace {

constexpr std::size_t longest_line = 2000; // bytes; more is no ingredient

std::string range_text(const WeightRange& weight) {
    return show_grams(weight.least) + " to " + show_grams(weight.most);
}

class IngredientReader {
public:
    IngredientReader(const SourcedText& place, const Pantry& pantry, std::string_view role,
                     Diagnostics& diagnostics, MeasureHabit habit, std::string_view words)
        : place_(place), words_(words.empty() ? place.text : words), pantry_(pantry),
          diagnostics_(diagnostics), habit_(habit) {
        const std::string_view text = without_bullet(place.text);
        line_.text = text.find('\n') == std::string_view::npos ? std::string(text)
                                                               : on_one_line(joined_at_margins(text));
        said_ = words.empty() ? line_.text : std::string(words);
        line_.place = place;
        line_.role = role;
    }

    std::vector<IngredientLine> read() {
        if (words_.size() > longest_line) {
            doubt(Code::ingredient_unknown, "a line of more than 2,000 bytes is no ingredient",
                  "write one ingredient a line");
            return {line_};
        }
        std::vector<IngredientLine> lines;
        std::vector<LineToken> tokens = line_tokens(plain_line(words_));
        for (std::vector<LineToken>& name : names_in_row(tokens, pantry_)) {
            begin_next(std::move(name));
            take_name();
            take_amount();
            lines.push_back(line_);
        }
        if (!lines.empty()) {
            return lines;
        }
        std::vector<LineToken> later = cut_unmeasured(tokens, false, pantry_);
        const bool is_list = !later.empty();
        split_ = split_tokens(std::move(tokens));
        settle_fraction();
        if (begins_with_letter_for_one(words_)) {
            doubt(Code::amount_doubtful, in_quotes(said_) + " begins with a letter: the figure 1 is read",
                  "write the figure in the text if it is another");
        } else if (mended_print(without_brackets(std::string_view(words_))).has_figures) {
            doubt(Code::amount_doubtful,
                  in_quotes(said_) + " is hard to read: " + in_quotes(plain_line(words_)),
                  "mend the amount in the formula if it is another");
        }
        if (!split_.purpose.empty()) {
            line_.role = split_.purpose;
        }
        constexpr int most_ingredients = 8; // of one line
        std::vector<LineToken> rest;
        bool is_run_together = false;
        for (int count = 0; count < most_ingredients; ++count) {
            const bool is_each = !split_.name.empty() && split_.name.front().is("each");
            const bool may_go_on = count + 1 < most_ingredients;
            rest = !may_go_on ? std::vector<LineToken>() : is_each ? cut_each(split_) : cut_same(split_);
            bool is_shared = is_each || !rest.empty();
            if (may_go_on && !is_shared) {
                rest = cut_second(split_, pantry_);
            }
            if (rest.empty() && may_go_on) {
                rest = std::move(later);
            }
            std::vector<LineToken> mixed =
                count == 0 ? cut_mixture(split_, pantry_) : std::vector<LineToken>();
            if (!mixed.empty()) { // "butter and lard mixed, one teaspoonful of salt"
                later = rest.empty() ? std::move(later) : std::move(rest);
                rest = std::move(mixed);
                is_shared = true;
            }
            const auto shared = split_.amount;
            const bool was_run_together = is_run_together;
            is_run_together = split_.is_run_together;
            take_name();
            take_amount();
            if (is_run_together || was_run_together) {
                doubt(Code::ingredient_doubtful,
                      in_quotes(said_) + " holds two items and no mark between them",
                      "write each ingredient on a line of its own");
            }
            lines.push_back(line_);
            add_extra(lines);
            if (rest.empty()) {
                break;
            }
            later = later.empty() ? cut_unmeasured(rest, is_list, pantry_) : std::move(later);
            begin_next(std::move(rest));
            if (is_shared) {
                split_.amount = shared;
            } else {
                settle_fraction();
            }
        }
        add_filling_up(lines);
        report_wash(lines);
        return lines;
    }

private:
    void doubt(Code code, std::string message, std::string hint) {
        line_.is_sure = false;
        diagnostics_.warning(code, place_, std::move(message), std::move(hint));
    }

    void begin_next(std::vector<LineToken> tokens) {
        const std::string purpose = split_.purpose;
        const std::string role = line_.role;
        const std::string text = line_.text;
        split_ = split_tokens(std::move(tokens));
        if (split_.purpose.empty()) {
            split_.purpose = purpose;
        }
        line_ = IngredientLine();
        line_.text = text;
        line_.place = place_;
        line_.role = split_.purpose.empty() ? role : split_.purpose;
    }

    bool is_in_dough() const { return split_.purpose.empty(); }

    void take_name() {
        const auto [match, instead_of] = find_name(split_, pantry_);
        if (!instead_of.empty()) {
            doubt(Code::ingredient_doubtful,
                  in_quotes(instead_of) + " is read as " +
                      in_quotes(match.key.empty() ? match.name : match.key),
                  "change the name in the formula if it is something else");
        }
        line_.name = match.name;
        line_.ingredient = match.ingredient;
        line_.key = match.key;
        const bool is_open = match.ingredient == nullptr && !match.meanings.empty();
        const bool is_fresh =
            match.name == "fresh yeast" && split_.amount && split_.amount->measure.name != "cup";
        if ((is_open || is_fresh) && is_liquid_yeast(match.name, split_.amount)) {
            line_.ingredient = nullptr;
            line_.key.clear();
            report_liquid_yeast();
        } else if (is_open) {
            take_meaning(match);
        } else if (match.ingredient == nullptr) {
            report_unknown(match);
        } else if (!match.alternative.empty()) {
            doubt(Code::ingredient_doubtful,
                  in_quotes(line_.name) + " or " + match.alternative + ": the first is taken",
                  "change the name in the formula if you use the other");
        }
    }

    // Of a name that stands for several things.
    void take_meaning(const NameMatch& match) {
        const Ingredient* first = pantry_.find(match.meanings.front()).ingredient;
        const bool is_yeast = first != nullptr && first->is_yeast();
        std::string hint = "change the name in the formula if it is another";
        line_.key = match.meanings.front();
        if (is_yeast) {
            const YeastKind kind = choose_yeast_kind(match, split_.amount, pantry_);
            line_.key = kind.key;
            hint = kind.weights +
                   ". Change the name in the formula if it is another; 1 g of instant does the "
                   "work of about 1.25 g of active dry or 3 g of fresh";
        }
        line_.ingredient = pantry_.find(line_.key).ingredient;
        doubt(Code::ingredient_ambiguous,
              in_quotes(match.name) + " does not say which; " + line_.key + " is taken", hint);
    }

    void report_liquid_yeast() {
        doubt(Code::ingredient_unknown,
              in_quotes(said_) + " is the liquid yeast that old kitchens kept, whose strength nobody knows",
              "the formula has it as a comment; write another yeast instead: fresh yeast at 2 % of the flour "
              "raises a dough in about two hours");
    }

    void report_unknown(const NameMatch& match) {
        if (match.is_culture) {
            doubt(Code::culture_outside_levain,
                  in_quotes(match.name) + " is a levain or its seed; its flour and water are not known here",
                  "describe it as a stage: preferments: { levain: { bread flour: 100 g, water: 100 g } }");
            return;
        }
        constexpr std::size_t longest_name = 60;
        const bool is_short = match.name.size() <= longest_name;
        const auto near = is_short ? pantry_.near_misses(match.name) : std::vector<std::string_view>();
        doubt(Code::ingredient_unknown,
              match.name.empty() ? "no ingredient is named in " + in_quotes(said_)
                                 : "unknown ingredient " + in_quotes(match.name),
              (near.empty() ? std::string() : "did you mean " + listed(near) + "? ") +
                  "the formula has it as a comment; mend the name there, or describe it under 'pantry:'");
    }

    void take_amount() {
        if (!split_.size_of.empty()) {
            take_likened();
            return;
        }
        if (!split_.amount) {
            report_missing();
            return;
        }
        settle_measure(*split_.amount, habit_);
        for (OtherAmount& other : split_.others) {
            settle_measure(other.amount, habit_);
        }
        if (line_.ingredient != nullptr) {
            take_piece_of_name(split_, *line_.ingredient);
            if (take_bare_grams(split_, *line_.ingredient, habit_.bare_numbers)) {
                doubt(Code::amount_doubtful, in_quotes(said_) + " does not say of what; grams are taken",
                      "write the unit in the formula if it is another");
            }
            take_way_of_name(split_, *line_.ingredient);
        }
        KitchenAmount chosen = preferred();
        line_.number = chosen.number;
        line_.unit = chosen.measure.name.empty() ? chosen.size : chosen.measure.name;
        if (line_.ingredient == nullptr) {
            if (chosen.measure.kind == Measure::Kind::mass) {
                const Mass one = chosen.measure.mass;
                line_.weight = WeightRange{chosen.number * one, chosen.least * one, chosen.most * one};
                check_weight(line_);
            } else if (is_liquid_yeast(line_.name,
                                       split_.amount)) { // weighs what water does, whatever its strength
                const Mass one = kilograms((chosen.measure.volume / litres(1.0)).value());
                line_.weight = WeightRange{chosen.number * one, chosen.least * one, chosen.most * one};
                check_weight(line_);
            }
            return;
        }
        line_.weight = weigh_amount(*line_.ingredient, chosen);
        line_.amount = formula_amount(*line_.ingredient, chosen, line_.weight);
        if (!check_weight(line_)) {
            return;
        }
        if (line_.amount.empty()) {
            report_unweighable(chosen);
        } else {
            report_vague(chosen);
        }
        compare_others(chosen);
        report_divided();
        report_left_over();
    }

    // "1-2 cup": a half, among others of the kind; alone, it may be a range as well.
    void settle_fraction() {
        using Hyphen = KitchenAmount::Hyphen;
        if (!split_.amount) {
            return;
        }
        KitchenAmount& amount = *split_.amount;
        if (amount.hyphen == Hyphen::none ||
            (amount.hyphen == Hyphen::maybe_fraction && !habit_.has_hyphen_fractions)) {
            return;
        }
        amount.take_as_fraction();
        if (!habit_.has_hyphen_fractions) {
            doubt(Code::amount_doubtful,
                  in_quotes(said_) + " is read as a fraction: " + kitchen_number(amount.number) + " " +
                      amount.measure.name,
                  "write '1 to 2' if it is a range");
        }
    }

    // "1/2 cup sugar, divided": some of it may be for a topping. "3 eggs (save some for the tops)": some is.
    void report_divided() {
        if (!split_.part_purpose.empty()) {
            doubt(Code::amount_doubtful,
                  "some of " + in_quotes(said_) + " is for " + split_.part_purpose + "; all of it is counted",
                  "take off what does not go into the dough");
            return;
        }
        const bool is_divided = std::any_of(split_.name.begin(), split_.name.end(),
                                            [](const LineToken& token) { return token.is("divided"); });
        if (is_divided && is_in_dough()) {
            doubt(Code::amount_doubtful, in_quotes(said_) + " is divided; all of it is counted",
                  "take off what does not go into the dough");
        }
    }

    // "1 egg, beaten with 1 tbsp milk" that nobody says the purpose of is brushed on, as a rule.
    void report_wash(std::vector<IngredientLine>& lines) {
        if (!is_wash_without_a_word(lines)) {
            return;
        }
        for (IngredientLine& line : lines) {
            line.role = purpose_named("wash");
            line.is_sure = false;
        }
        doubt(Code::ingredient_doubtful, in_quotes(said_) + " is taken for what is brushed on",
              "write it into the formula if it goes into the dough");
    }

    // An amount that nothing was made of: another ingredient, perhaps.
    void report_left_over() {
        if (split_.has_other_in_bracket) {
            doubt(Code::amount_doubtful,
                  "another amount stands in " + in_quotes(said_) + ": it is not counted",
                  "write each ingredient on a line of its own");
            return;
        }
        if (split_.is_of_parts && split_.part_purpose.empty()) {
            doubt(Code::amount_doubtful, in_quotes(said_) + " is a sum of several things, taken for one",
                  "write each ingredient on a line of its own");
            return;
        }
        for (std::size_t at = 1; at + 1 < split_.name.size() && at < 60; ++at) {
            const LineToken& token = split_.name[at];
            if (token.is("%") && split_.name[at + 1].is_word() && at > 1 && !split_.aside.empty()) {
                doubt(Code::amount_doubtful, in_quotes(said_) + " names shares of several things",
                      "write each ingredient on a line of its own");
                return;
            }
            if (token.is("per")) {
                doubt(Code::amount_doubtful, in_quotes(said_) + " is an amount for a part of something",
                      "write the whole amount in the formula");
                return;
            }
            const auto amount = token.is_number()
                                    ? read_kitchen_amount(std::span<const LineToken>(split_.name).subspan(at))
                                    : std::nullopt;
            if (amount && !amount->measure.is_piece() && amount->measure.kind != Measure::Kind::percent) {
                doubt(Code::amount_doubtful,
                      "another amount stands in " + in_quotes(said_) + ": it is not counted",
                      "write each ingredient on a line of its own");
                return;
            }
        }
    }

    bool check_weight(IngredientLine& line) {
        if (!line.weight || (line.weight->likely.value() > 0.0 && line.weight->most <= largest_amount())) {
            return true;
        }
        line.weight.reset();
        line.amount.clear();
        line.is_sure = false;
        doubt(Code::amount_too_large, in_quotes(said_) + " has no weight that makes sense",
              "check the amount");
        return false;
    }

    KitchenAmount preferred() {
        const ChosenAmount chosen = choose_amount(split_, line_.ingredient);
        if (chosen.is_share_unclear) {
            doubt(Code::amount_doubtful,
                  in_quotes(said_) + " does not say whether the weight is of one or of all; of all is taken",
                  "write the whole weight in the formula");
        }
        return chosen.amount;
    }

    void compare_others(const KitchenAmount& chosen) {
        const auto other = line_.weight ? disagreeing_weight(split_, *line_.ingredient, chosen, *line_.weight)
                                        : std::nullopt;
        if (other) {
            doubt(Code::amounts_disagree,
                  "the amounts of " + in_quotes(line_.name) + " disagree: " +
                      show_grams(line_.weight->likely) + " is taken, the other is " + range_text(*other),
                  "check which is meant");
        }
    }

    void take_likened() {
        auto weight = weigh_likened(split_.size_of);
        if (!weight || line_.ingredient == nullptr) {
            report_missing();
            return;
        }
        for (Mass* mass : {&weight->likely, &weight->least, &weight->most}) {
            *mass = split_.size_count * *mass;
        }
        line_.number = split_.size_count;
        line_.unit = "size of " + split_.size_of;
        line_.weight = weight;
        line_.amount = show_decimal(in_grams(weight->likely), 1) + " g";
        report_range("by its size");
    }

    void report_missing() {
        if (!is_in_dough() || !leavenwright::is_in_dough(line_.role)) {
            return;
        }
        doubt(Code::amount_missing,
              line_.ingredient != nullptr && line_.ingredient->is_flour()
                  ? in_quotes(said_) + " has no number: how much flour is not known"
                  : in_quotes(said_) + " has no amount",
              "the formula has it as a comment; write how much it is there");
    }

    void report_unweighable(const KitchenAmount& amount) {
        if (amount.measure.is_piece()) {
            const std::string piece = line_.unit.empty() ? "a piece" : line_.unit;
            doubt(Code::measure_missing,
                  "the pantry does not know what " + in_quotes(piece) + " of " + in_quotes(line_.name) +
                      " weighs",
                  "weigh it once and write grams in the formula");
        } else {
            doubt(Code::measure_missing,
                  "the pantry does not know what a volume of " + in_quotes(line_.name) + " weighs",
                  "weigh it once and write grams in the formula");
        }
    }

    void report_vague(const KitchenAmount& amount) {
        if (amount.is_range || amount.is_vague) {
            report_range(amount.is_range ? "a range; its middle is taken" : "no exact measure");
        } else if (amount.measure.is_doubtful) {
            report_range("a measure that books disagree on");
        } else if (amount.measure.is_piece() && !amount.size.empty() &&
                   !mass_of_piece(*line_.ingredient, amount.size)) {
            report_range("a size whose weight is not known; any one is taken");
        }
    }

    void report_range(const std::string& why) {
        if (!line_.weight) { // a percentage
            doubt(Code::amount_doubtful, in_quotes(said_) + " is " + why,
                  "write the percentage that you use");
            return;
        }
        doubt(Code::amount_doubtful,
              in_quotes(said_) + " is " + why + ": " + show_grams(line_.weight->likely) + ", from " +
                  range_text(*line_.weight),
              "write the weight in the formula once you have weighed it");
    }

    void add_extra(std::vector<IngredientLine>& lines) {
        if (!split_.extra || line_.ingredient == nullptr) {
            return;
        }
        IngredientLine extra = line_;
        extra.role = split_.extra_purpose.empty() ? "extra" : split_.extra_purpose;
        extra.number = split_.extra->number;
        extra.unit = split_.extra->measure.name.empty() ? split_.extra->size : split_.extra->measure.name;
        extra.weight = weigh_amount(*line_.ingredient, *split_.extra);
        extra.amount = formula_amount(*line_.ingredient, *split_.extra, extra.weight);
        check_weight(extra);
        lines.push_back(std::move(extra));
    }

    // "3 eggs + enough water to make 270 ml": a second ingredient.
    void add_filling_up(std::vector<IngredientLine>& lines) {
        const auto filling = lines.size() == 1 && lines.front().weight
                                 ? read_filling_up(plain_line(words_), *lines.front().weight, pantry_)
                                 : std::nullopt;
        if (!filling) {
            return;
        }
        line_ = IngredientLine();
        line_.text = lines.front().text;
        line_.place = place_;
        line_.role = lines.front().role;
        line_.name = filling->match.name;
        line_.key = filling->match.key;
        line_.ingredient = filling->match.ingredient;
        line_.weight = filling->weight;
        line_.number = in_grams(line_.weight->likely);
        line_.unit = "g";
        line_.amount = show_decimal(in_grams(line_.weight->likely), 1) + " g";
        report_range("filled up with " + line_.name);
        lines.push_back(line_);
    }

    const SourcedText place_;
    const std::string_view words_; // what is read of it
    std::string said_;             // the same, as messages quote it
    const Pantry& pantry_;
    Diagnostics& diagnostics_;
    const MeasureHabit habit_;
    SplitLine split_;
    IngredientLine line_;
};

} // namespace

bool is_in_dough(std::string_view role) {
    constexpr auto parts = std::to_array<std::string_view>(
        {"dough", "poolish", "biga", "sponge", "preferment", "levain", "old dough", "soaker", "scald"});
    return std::find(parts.begin(), parts.end(), role) != parts.end();
}

Mass flour_in_dough(std::span<const IngredientLine> lines) {
    Mass flour{};
    for (const IngredientLine& line : lines) {
        const bool is_counted = line.is_known() && line.weight && is_in_dough(line.role);
        flour += is_counted && line.ingredient->is_flour() ? line.weight->likely : Mass{};
    }
    return flour;
}

std::vector<IngredientLine> read_ingredient_line(const SourcedText& place, const Pantry& pantry,
                                                 std::string_view role, Diagnostics& diagnostics,
                                                 MeasureHabit habit, std::string_view words) {
    return IngredientReader(place, pantry, role, diagnostics, habit, words).read();
}

bool names_flour(std::string_view line, const Pantry& pantry) {
    if (line.size() > longest_line) {
        return false;
    }
    const NameMatch match = name_in(line, pantry);
    return match.ingredient != nullptr && match.ingredient->is_flour();
}

bool is_ingredient_line(std::string_view line, const Pantry& pantry) {
    if (line.empty() || line.size() > 300) {
        return false;
    }
    SplitLine split = split_line(plain_line(line));
    if (!split.amount && split.size_of.empty()) {
        return false;
    }
    const auto names_one = [&] {
        const NameMatch match = find_name(split, pantry).match;
        const bool is_liquid_yeast = match.name.ends_with("yeast"); // of no known strength
        return match.is_found() || match.is_culture || is_liquid_yeast;
    };
    return names_one() || (!cut_second(split, pantry).empty() && names_one());
}

} // namespace leavenwright
