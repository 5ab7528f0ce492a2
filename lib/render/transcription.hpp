// A transcription for programs; its form for people is the formula file itself.
#pragma once

#include "transcribe/transcribe.hpp"

#include <string>

namespace leavenwright {

/// `lines` in the order of the recipe, `formula` and more; documented in cli/verbs/transcribe.md.
std::string render_transcription_json(const Transcription& transcription, const Diagnostics& findings);

} // namespace leavenwright
