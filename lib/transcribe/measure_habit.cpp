#include "transcribe/measure_habit.hpp"

#include "quantity/units.hpp"
#include "source/unicode.hpp"

#include <algorithm>
#include <array>

namespace leavenwright {
namespace {

bool is_letter(char byte) {
    return byte >= 'a' && byte <= 'z';
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

} // namespace

MeasureHabit measure_habit(std::string_view text) {
    const std::string folded = fold_name(text);
    const bool is_british = holds(folded, british) || costs_pence(folded);
    const bool is_american = holds(folded, american) || counts_cups(folded);
    return is_british == is_american ? MeasureHabit::unknown
           : is_british              ? MeasureHabit::imperial
                                     : MeasureHabit::us;
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
    const auto imperial = std::find_if(measures.begin(), measures.end(),
                                       [&](const Imperial& row) { return row.us_name == measure.name; });
    if (imperial == measures.end() || habit == MeasureHabit::us) {
        return;
    }
    const double pint_m3 = find_unit("imperial pint")->factor;
    measure.is_doubtful = habit == MeasureHabit::unknown;
    if (measure.is_doubtful) {
        measure.most = pint_m3 / find_unit("pint")->factor;
        return;
    }
    measure.name = imperial->name;
    measure.volume = cubic_metres(imperial->pints * pint_m3);
    measure.least = measure.most = 1.0;
}

} // namespace leavenwright
