#include "quantity/units.hpp"

#include "quantity/quantity.hpp"

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

bool has_spelling(const Unit& unit, std::string_view folded) {
    if (unit.name == folded) {
        return true;
    }
    const std::string_view all = unit.spellings;
    for (std::size_t at = all.find(folded); at != std::string_view::npos; at = all.find(folded, at + 1)) {
        const std::size_t end = at + folded.size();
        if ((at == 0 || all[at - 1] == '|') && (end == all.size() || all[end] == '|')) {
            return true;
        }
    }
    return false;
}

const Unit* find_spelling(std::string_view folded) {
    for (const Unit& unit : units) {
        if (has_spelling(unit, folded)) {
            return &unit;
        }
    }
    return nullptr;
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
    if (folded.empty()) {
        return nullptr;
    }
    const Unit* unit = find_spelling(folded);
    if (unit == nullptr && folded.size() > 2 && folded.back() == 's') {
        unit = find_spelling(folded.substr(0, folded.size() - 1));
    }
    return unit;
}

} // namespace leavenwright
