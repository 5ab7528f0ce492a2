#include "quantity/units.hpp"

#include "quantity/quantity.hpp"

#include <algorithm>
#include <array>

namespace leavenwright {
namespace {

constexpr Unit decimal(std::string_view name, Dimension dimension, int power, std::string_view spellings,
                       std::string_view gnu_name) {
    double factor = 1.0;
    for (int i = 0; i > power; --i) {
        factor /= 10.0;
    }
    return {name, dimension, factor, power, true, spellings, gnu_name};
}

constexpr Unit unit(std::string_view name, Dimension dimension, double factor, std::string_view spellings,
                    std::string_view gnu_name) {
    return {name, dimension, factor, 0, false, spellings, gnu_name};
}

// US customary measures: exact from 1 in = 25.4 mm, gallon 231 cubic inches (NIST
// Handbook 44, Appendix C). Avoirdupois: exact, 1 lb = 0.45359237 kg. The imperial
// gallon is 4.54609 l exactly (Weights and Measures Act 1985). Spoons and cups of other
// countries as the GNU units definitions file has them.
constexpr double us_gallon_m3 = 231.0 * 0.0254 * 0.0254 * 0.0254;
constexpr double imperial_gallon_m3 = 4.54609e-3;

constexpr auto mass = Dimension::mass;
constexpr auto volume = Dimension::volume;
constexpr auto time = Dimension::time;

constexpr auto units = std::to_array<Unit>({
    decimal("g", mass, -3, "gr|gram|gramme|grms", "g"),
    decimal("kg", mass, 0, "kilo|kilogram|kilogramme", "kg"),
    decimal("mg", mass, -6, "milligram|milligramme", "mg"),
    unit("oz", mass, ounce().value(), "ounce", "ounce"),
    unit("lb", mass, pound().value(), "lbs|pound", "pound"),
    decimal("ml", volume, -6, "millilitre|milliliter|cc", "ml"),
    decimal("cl", volume, -5, "centilitre|centiliter", "cl"),
    decimal("dl", volume, -4, "decilitre|deciliter", "dl"),
    decimal("l", volume, -3, "litre|liter", "l"),
    unit("tsp", volume, us_gallon_m3 / 768.0, "teaspoon|us tsp|us teaspoon|teaspoonful", "ustsp"),
    unit("tbsp", volume, us_gallon_m3 / 256.0, "tablespoon|tbs|tblsp|us tbsp|us tablespoon|tablespoonful",
         "ustbsp"),
    unit("cup", volume, us_gallon_m3 / 16.0, "us cup|cupful", "uscup"),
    unit("fl oz", volume, us_gallon_m3 / 128.0, "floz|fluid ounce|us fl oz|us fluid ounce", "usfloz"),
    unit("pint", volume, us_gallon_m3 / 8.0, "pt|us pint", "uspint"),
    unit("quart", volume, us_gallon_m3 / 4.0, "qt|us quart", "usquart"),
    unit("gallon", volume, us_gallon_m3, "gal|us gallon", "usgallon"),
    unit("metric tsp", volume, 5e-6, "metric teaspoon", "5 ml"),
    unit("metric tbsp", volume, 15e-6, "metric tablespoon", "15 ml"),
    unit("metric cup", volume, 250e-6, "", "metriccup"),
    unit("imperial tsp", volume, 5e-6, "imperial teaspoon|british tsp|british teaspoon", "brteaspoon"),
    unit("imperial dessertspoon", volume, 10e-6, "dessertspoon|british dessertspoon", "brdessertspoon"),
    unit("imperial tbsp", volume, 15e-6, "imperial tablespoon|british tbsp|british tablespoon",
         "brtablespoon"),
    unit("imperial fl oz", volume, imperial_gallon_m3 / 160.0,
         "imperial fluid ounce|british fl oz|british fluid ounce", "brfloz"),
    unit("imperial cup", volume, imperial_gallon_m3 / 16.0, "british cup", "brcup"),
    unit("imperial pint", volume, imperial_gallon_m3 / 8.0, "british pint", "brpint"),
    unit("imperial quart", volume, imperial_gallon_m3 / 4.0, "british quart", "brquart"),
    unit("imperial gallon", volume, imperial_gallon_m3, "british gallon", "brgallon"),
    unit("australian tbsp", volume, 20e-6, "australian tablespoon", "australiatablespoon"),
    unit("japanese cup", volume, 200e-6, "", "japancup"),
    unit("s", time, 1.0, "sec|second", "s"),
    unit("min", time, 60.0, "minute", "min"),
    unit("h", time, 3600.0, "hr|hour", "hour"),
    unit("d", time, 86400.0, "day", "day"),
    unit("C", Dimension::temperature, 1.0,
         "c|celsius|centigrade|degree c|degrees c|degree celsius|degrees celsius", "tempC"),
    unit("F", Dimension::temperature, 5.0 / 9.0,
         "f|fahrenheit|degree f|degrees f|degree fahrenheit|degrees fahrenheit", "tempF"),
});

struct Spelling {
    std::string_view text;
    std::size_t unit = 0;
};

constexpr std::size_t spelling_count() {
    std::size_t count = 0;
    for (const Unit& unit : units) {
        const bool has_more = !unit.spellings.empty();
        count += 1 + (has_more ? 1 + static_cast<std::size_t>(std::ranges::count(unit.spellings, '|')) : 0);
    }
    return count;
}

// Every name and spelling, sorted; where two units have the same, that of the earlier comes first.
constexpr auto spellings = [] {
    std::array<Spelling, spelling_count()> all{};
    std::size_t filled = 0;
    for (std::size_t i = 0; i < units.size(); ++i) {
        all[filled++] = {units[i].name, i};
        std::string_view rest = units[i].spellings;
        while (!rest.empty()) {
            const std::string_view spelling = rest.substr(0, rest.find('|'));
            all[filled++] = {spelling, i};
            rest.remove_prefix(std::min(rest.size(), spelling.size() + 1));
        }
    }
    std::ranges::sort(all, [](const Spelling& a, const Spelling& b) {
        return a.text != b.text ? a.text < b.text : a.unit < b.unit;
    });
    return all;
}();

const Unit* find_spelling(std::string_view folded) {
    const auto* found = std::ranges::lower_bound(spellings, folded, {}, &Spelling::text);
    return found != spellings.end() && found->text == folded ? &units[found->unit] : nullptr;
}

} // namespace

std::string_view name_of(Dimension dimension) {
    switch (dimension) {
    case Dimension::mass:
        return "a weight";
    case Dimension::volume:
        return "a volume";
    case Dimension::time:
        return "a time";
    case Dimension::temperature:
        return "a temperature";
    }
    return "";
}

std::span<const Unit> unit_table() {
    return units;
}

const Unit* find_unit(std::string_view folded) {
    const Unit* unit = find_spelling(folded);
    if (unit == nullptr && folded.size() > 2 && folded.back() == 's') {
        unit = find_spelling(folded.substr(0, folded.size() - 1));
    }
    return unit;
}

} // namespace leavenwright
