// Helpers of the tests against published figures.
#pragma once

#include "formula/overall.hpp"
#include "pantry/pantry.hpp"

#include <initializer_list>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace leavenwright::testing {

/// A built-in ingredient by any of its names; throws where there is none.
const Ingredient& ingredient_named(std::string_view name);

/// The weight of one ingredient in a list of lines, in grams.
double grams_in(const std::vector<Line>& lines, std::string_view name);
double grams_in(const Overall& overall, std::string_view name);
/// The same as a baker's percentage.
double percent_in(const Overall& overall, std::string_view name);

/// Flour of one stage over the flour of the whole formula, the used part of the stage alone.
PrefermentedFlour prefermented_in(const Formula& formula, std::string_view stage);

/// The rows of a CSV file of this folder by the names in its head; lines that begin with # are
/// left out. Fields may be quoted, with "" for a quotation mark. Throws where a row has another
/// number of fields than the head.
using CsvRow = std::map<std::string, std::string>;
std::vector<CsvRow> read_csv(const std::string& text);

/// A whole text as a number; throws where it is none.
double number_in(const std::string& text);

/// The five-grain levain in stages, without its `makes`: 1400 g of dough.
/// Source: after Hamelman, Bread, "Five-Grain Levain".
inline const std::string five_grain_levain = "formula: 1\nname: Five-grain levain\n"
                                             "dough:\n"
                                             "  bread flour: 300 g\n"
                                             "  whole wheat flour: 150 g\n"
                                             "  water: 155 g\n"
                                             "  salt: 11 g\n"
                                             "  instant yeast: 5 g\n"
                                             "  levain: 335 g\n"
                                             "preferments:\n"
                                             "  levain:\n"
                                             "    bread flour: 150 g\n"
                                             "    water: 185 g\n"
                                             "    culture: 30 g\n"
                                             "soakers:\n"
                                             "  five-grain soaker:\n"
                                             "    rye chops: 55 g\n"
                                             "    flaxseed: 55 g\n"
                                             "    sunflower seeds: 45 g\n"
                                             "    rolled oats: 45 g\n"
                                             "    water: 240 g\n"
                                             "    salt: 4 g\n";

} // namespace leavenwright::testing
