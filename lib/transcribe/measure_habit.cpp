#include "transcribe/measure_habit.hpp"

#include "quantity/units.hpp"

#include <array>
#include <utility>

namespace leavenwright {
namespace {

bool is_letter(char byte) {
    return (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z');
}

std::string lower(std::string_view text) {
    std::string lowered(text);
    for (char& byte : lowered) {
        byte = byte >= 'A' && byte <= 'Z' ? static_cast<char>(byte - 'A' + 'a') : byte;
    }
    return lowered;
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

// Words of one side only (common practice, no source).
constexpr auto british = std::to_array<std::string_view>(
    {"caster",       "castor",       "wholemeal",     "strong white",   "strong flour", "strong bread flour",
     "plain flour",  "breakfastcup", "breakfast cup", "treacle",        "demerara",     "sultana",
     "gas mark",     "regulo",       "fast-action",   "fast action",    "easy bake",    "easy blend",
     "semi-skimmed", "bicarb",       "imperial",      "strong granary", "clingfilm",    "cling film",
     "grammes",      "lb. tin",      "larder",        "national flour", "ozs"});
constexpr auto american =
    std::to_array<std::string_view>({"cup ", "cups", "pkg", "package", "all-purpose", "all purpose",
                                     "confectioners", "shortening", "oleo", "plastic wrap"});

} // namespace

MeasureHabit measure_habit(std::string_view text) {
    const std::string lowered = lower(text);
    const bool is_british = holds(lowered, british);
    const bool is_american = holds(lowered, american) || counts_cups(lowered);
    return is_british == is_american ? MeasureHabit::unknown
           : is_british              ? MeasureHabit::imperial
                                     : MeasureHabit::us;
}

void settle_measure(KitchenAmount& amount, MeasureHabit habit) {
    constexpr auto imperial_names = std::to_array<std::pair<std::string_view, std::string_view>>(
        {{"pint", "imperial pint"}, {"quart", "imperial quart"}, {"gill", "gill"}});
    for (const auto& [name, imperial] : imperial_names) {
        if (amount.measure.name != name || habit == MeasureHabit::us) {
            continue;
        }
        if (habit == MeasureHabit::unknown) {
            const Unit* us = find_unit("pint");
            const Unit* british_one = find_unit("imperial pint");
            amount.measure.is_doubtful = true;
            amount.measure.most = british_one->factor / us->factor;
            return;
        }
        const double pints = name == "gill" ? 0.25 : name == "quart" ? 2.0 : 1.0;
        amount.measure.volume = cubic_metres(pints * find_unit("imperial pint")->factor);
        amount.measure.name = imperial;
        amount.measure.least = amount.measure.most = 1.0;
        amount.measure.is_doubtful = false;
        return;
    }
}

} // namespace leavenwright
