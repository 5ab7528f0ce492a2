// The formula file of a transcription. Private to the transcribe folder.
#pragma once

#include "transcribe/read_directions.hpp"
#include "transcribe/recipe_text.hpp"
#include "transcribe/transcribe.hpp"

#include <string>

namespace leavenwright {

/// Each line with the original words behind it as a comment; what is unknown or kept apart as comments alone.
std::string write_transcription(const Transcription& transcription, const RecipeText& recipe,
                                const std::vector<DirectionStep>& steps);

} // namespace leavenwright
