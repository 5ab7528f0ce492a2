#include "transcribe/measure_habit.hpp"

#include "quantity/units.hpp"
#include "source/unicode.hpp"
#include "transcribe/kitchen_words.hpp"
#include "transcribe/line_tokens.hpp"

#include <algorithm>
#include <array>

namespace leavenwright {
namespace {

bool is_letter(char byte) {
    return byte >= 'a' && byte <= 'z';
}

bool is_figure(char byte) {
    return byte >= '0' && byte <= '9';
}

// Whether one of `words` begins a word of `text`.
template <std::size_t count>
bool holds(std::string_view text, const std::array<std::string_view, count>& words) {
    for (const std::string_view word : words) {
        for (std::size_t at = text.find(word); at != std::string_view::npos; at = text.find(word, at + 1)) {
            if (at == 0 || !is_letter(text[at - 1])) {
                return true;
            }
        }
    }
    return false;
}

// "2 c. flour", "1 stick": behind a number of kitchens; 200 C. is an oven, and dough sticks.
bool counts_cups(std::string_view text) {
    for (const std::string_view word : {" c. ", " stick ", " sticks "}) {
        for (std::size_t at = text.find(word); at != std::string_view::npos; at = text.find(word, at + 1)) {
            std::size_t digits = 0;
            while (digits < at && digits < 3 && text[at - 1 - digits] >= '0' &&
                   text[at - 1 - digits] <= '9') {
                ++digits;
            }
            if (digits == 1 || digits == 2) {
                return true;
            }
        }
    }
    return false;
}

// "1s. 4d.", "1d. each", "5½d.": a price in pence.
bool costs_pence(std::string_view text) {
    for (std::size_t at = text.find('d'); at != std::string_view::npos; at = text.find('d', at + 1)) {
        const bool is_behind_figure = at > 0 && ((text[at - 1] >= '0' && text[at - 1] <= '9') ||
                                                 text.substr(0, at).ends_with("\xC2\xBD"));
        if (is_behind_figure && at + 1 < text.size() && text[at + 1] == '.') {
            return true;
        }
    }
    return false;
}

// Words of one side only (common practice, no source).
constexpr auto british = std::to_array<std::string_view>(
    {"caster",        "castor",       "wholemeal",      "strong white", "strong flour", "strong bread flour",
     "plain flour",   "breakfastcup", "breakfast cup",  "treacle",      "demerara",     "sultana",
     "gas mark",      "regulo",       "fast action",    "easy bake",    "easy blend",   "semi skimmed",
     "bicarb",        "imperial",     "strong granary", "clingfilm",    "cling film",   "grammes",
     "lb. tin",       "larder",       "national flour", "ozs",          "german yeast", "moist sugar",
     "seconds flour", "half peck",    "quartern",       "dessertsp",    "pence",        "girdle"});
constexpr auto american = std::to_array<std::string_view>(
    {"cup ", "cups", "pkg", "package", "all purpose", "confectioners", "shortening", "oleo", "plastic wrap"});

// "two and "
bool ends_in_number_and(std::string_view text) {
    constexpr std::string_view joint = " and ";
    if (!text.ends_with(joint)) {
        return false;
    }
    text.remove_suffix(joint.size());
    const std::string_view word = text.substr(text.find_last_of(" \n") + 1);
    return number_named(word) > 0.0 || (!word.empty() && is_figure(word.back()));
}

// "1 1-2 teaspoons", "two and 1-2 hours".
bool has_hyphen_fractions(std::string_view folded_text) {
    for (const std::string_view fraction : {"1-2", "1-3", "1-4", "3-4", "2-3", "1-8"}) {
        for (std::size_t at = folded_text.find(fraction); at != std::string_view::npos;
             at = folded_text.find(fraction, at + 1)) {
            const std::string_view before = folded_text.substr(0, at);
            const char behind =
                at + fraction.size() < folded_text.size() ? folded_text[at + fraction.size()] : ' ';
            const bool is_mixed =
                before.size() >= 2 && before.back() == ' ' && is_figure(before[before.size() - 2]);
            if ((is_mixed || ends_in_number_and(before)) && !is_figure(behind) && behind != '-') {
                return true;
            }
        }
    }
    return false;
}

// Words of metric kitchens, beside cups.
bool is_metric_and_cups(std::string_view folded) {
    constexpr auto metric_kitchens =
        std::to_array<std::string_view>({"plain flour", "caster sugar", "castor sugar", "icing sugar",
                                         "self raising", "bicarb", "copha", "250 ml", "250ml"});
    constexpr auto cups = std::to_array<std::string_view>({"cup ", "cups "});
    constexpr auto old_cups =
        std::to_array<std::string_view>({"teacup", "tea cup", "breakfast cup", "coffee cup"});
    return holds(folded, metric_kitchens) && holds(folded, cups) && !holds(folded, old_cups);
}

// "500 strong white": a number too large for pieces, and no unit.
bool weighs_bare(std::string_view line) {
    constexpr double least_grams = 100.0;
    constexpr std::size_t longest = 80;
    const auto tokens = line_tokens(without_bullet(line.substr(0, longest)));
    return tokens.size() >= 2 && tokens[0].is_number() && tokens[0].value >= least_grams &&
           tokens[1].is_word() && !tokens[1].is_glued && !measure_named(tokens[1].text, tokens[1].folded);
}

MeasureHabit::BareNumbers bare_numbers(std::string_view list, std::string_view folded) {
    using BareNumbers = MeasureHabit::BareNumbers;
    constexpr auto sayings =
        std::to_array<std::string_view>({"all in grams", "in grams", "all grams", "grams throughout",
                                         "weights are grams", "all weights in g"});
    std::size_t bare = 0;
    std::size_t rest = 0;
    for (std::size_t at = 0; at < list.size();) {
        const std::size_t end = std::min(list.find('\n', at), list.size());
        bare += weighs_bare(list.substr(at, end - at)) ? 1U : 0U;
        ++rest;
        at = end + 1;
    }
    return bare == 0                ? BareNumbers::pieces
           : holds(folded, sayings) ? BareNumbers::grams
                                    : BareNumbers::likely_grams;
}

// A cup that may be the metric one, and a spoon that may be Australian.
void settle_cup(Measure& measure) {
    const double spoon_m3 = find_unit("australian tbsp")->factor;
    const double cup_m3 = find_unit("metric cup")->factor;
    if (measure.name == "cup") {
        measure.least = find_unit("cup")->factor / cup_m3;
        measure.name = "metric cup";
        measure.volume = cubic_metres(cup_m3);
        measure.is_doubtful = true;
    } else if (measure.name == "tbsp") {
        measure.most = spoon_m3 / find_unit("tbsp")->factor;
        measure.is_doubtful = true;
    }
}

} // namespace

MeasureHabit measure_habit(std::string_view list, std::string_view all) {
    const std::string folded = fold_name(all);
    const bool is_british = holds(folded, british) || costs_pence(folded);
    const bool is_american = holds(folded, american) || counts_cups(folded);
    MeasureHabit habit;
    habit.pints = is_british == is_american ? MeasureHabit::Pints::unknown
                  : is_british              ? MeasureHabit::Pints::imperial
                                            : MeasureHabit::Pints::us;
    habit.has_hyphen_fractions = has_hyphen_fractions(all);
    habit.bare_numbers = bare_numbers(list, folded);
    habit.may_have_metric_cups = is_metric_and_cups(folded);
    return habit;
}

void settle_measure(KitchenAmount& amount, MeasureHabit habit) {
    struct Imperial {
        std::string_view us_name;
        std::string_view name;
        double pints;
    };
    constexpr auto measures = std::to_array<Imperial>(
        {{"pint", "imperial pint", 1.0}, {"quart", "imperial quart", 2.0}, {"gill", "gill", 0.25}});
    Measure& measure = amount.measure;
    if (habit.may_have_metric_cups) {
        settle_cup(measure);
    }
    const auto imperial = std::find_if(measures.begin(), measures.end(),
                                       [&](const Imperial& row) { return row.us_name == measure.name; });
    if (imperial == measures.end() || habit.pints == MeasureHabit::Pints::us) {
        return;
    }
    const double pint_m3 = find_unit("imperial pint")->factor;
    measure.is_doubtful = habit.pints == MeasureHabit::Pints::unknown;
    if (measure.is_doubtful) {
        measure.most = pint_m3 / find_unit("pint")->factor;
        return;
    }
    measure.name = imperial->name;
    measure.volume = cubic_metres(imperial->pints * pint_m3);
    measure.least = measure.most = 1.0;
}

} // namespace leavenwright
