// Times and temperatures in the directions of a recipe, as process steps. Private to the transcribe folder.
#pragma once

#include <span>
#include <string>
#include <vector>

namespace leavenwright {

struct DirectionStep {
    std::string verb; // of the formula's process
    std::string time; // as the formula file reads it: "45 to 60 min"; may be empty
    std::string temperature;
    std::string words; // the sentence it was read from
};

/// Linear in the text.
std::vector<DirectionStep> read_directions(std::span<const std::string> paragraphs);

} // namespace leavenwright
