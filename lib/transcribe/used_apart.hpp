// Lines listed with the dough that the directions only brush, strew or fill with. Private to the transcribe
// folder.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "transcribe/direction_words.hpp"
#include "transcribe/ingredient_line.hpp"

#include <span>
#include <string>
#include <vector>

namespace leavenwright {

/// Takes such lines out of the dough, with a warning each. A whole egg, and the parts of one where all
/// ingredients are mixed, stay in it with the warning. What goes by a common name (sugar, butter, flour) is
/// left alone: the same word may mean another line. Linear in the directions for each line.
void set_apart_by_directions(std::vector<IngredientLine>& lines, std::span<const std::string> directions,
                             Diagnostics& diagnostics);

/// The role of a thing that every sentence naming it sets apart; empty where one mixes it, or none names it.
std::string role_by_directions(std::span<const DirectionWord> words, std::span<const std::string> calls);

/// Leaves a line where it is, with a warning that it is doubtful.
void doubt(IngredientLine& line, Code code, const std::string& message, const std::string& hint,
           Diagnostics& diagnostics);

/// Takes a line out of the dough, with a warning: `why` goes on behind its words.
void set_apart(IngredientLine& line, const std::string& role, const std::string& why,
               Diagnostics& diagnostics);

} // namespace leavenwright
