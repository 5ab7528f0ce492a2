// Whether a line is an item of a list of ingredients, or stands over some. Private to the transcribe folder.
#pragma once

#include "pantry/pantry.hpp"
#include "source/source_text.hpp"

#include <string_view>
#include <vector>

namespace leavenwright {

/// An ingredient with its amount, short, and no sentence.
bool is_item(std::string_view text, const Pantry& pantry);

/// Whether a line without an amount would be one of a list with one: "Raisins", "salt to taste".
bool names_ingredient(std::string_view text, const Pantry& pantry);

/// An item, or a part of the recipe made before: "all of the sponge".
bool begins_list(std::string_view text, const Pantry& pantry);

/// A few words over an ingredient that are no ingredient themselves: "Fruit", "Dry ingredients".
bool begins_group(std::string_view title, std::string_view next_line, const Pantry& pantry);

/// "Glaze: 1 egg, 2 tbsp milk", among directions.
bool is_item_apart(std::string_view text, const Pantry& pantry);

/// "Flour for dusting.", "Butter for the tin"
bool is_item_for_purpose(std::string_view text, const Pantry& pantry);

/// Of two lists side by side, the words of the left one.
std::string_view first_cell(std::string_view line);

/// "One quart of flour, add two eggs, one half-pint of milk": three amounts and more, in a sentence perhaps.
bool names_several(const SourcedText& line, const Pantry& pantry);

/// Whether a mail quotes lines that are no list and answers with one of its own.
bool has_list_beside_quote(const SourceText& source, const Pantry& pantry);

/// "Dough: 50 g yeast • 5 dl milk • 150 g butter" is a heading and three items; any other line is one piece.
std::vector<SourcedText> between_bullets(const SourcedText& line, const Pantry& pantry);

/// "250 g flour + 250 g water", "20 g flour and 100 g milk", "350 g raisins, 80 ml rum - soak overnight":
/// each with its amount, but for names at the end of a comma; none where something else stands among them.
std::vector<SourcedText> items_in_row(const SourcedText& row, const Pantry& pantry);

bool is_ended_by_colon(std::string_view text);

/// Whether a list has typed rings for bullets, "o 300 g flour": in three lines at least, as one "o" may be
/// "or".
bool has_typed_rings(const SourceText& source);

/// Of "50 g flour, 45 g water. Ready in 5 hours" the items, where no sentence behind them has an amount.
std::string_view before_sentence(std::string_view text);

/// Numbers with a measure behind them, anywhere in a line.
std::size_t measured_amounts(std::string_view text);

} // namespace leavenwright
