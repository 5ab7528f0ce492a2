// Recipes that stand beside tables of what their lines mean.
#pragma once

#include "transcribe/transcribe.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace leavenwright::testing {

struct Read {
    Transcription transcription;
    std::string codes; // of the findings, in order, a blank between two
};

/// A recipe's text as it is read; throws std::runtime_error where it has no ingredients.
Read read(const std::string& text);

/// "role: key grams" of each line, grams without decimals; "?" behind a doubtful one.
std::string lines_of(const Transcription& transcription);

/// The `.expected` files of a folder below the project's, from the project's root, in order.
std::vector<std::filesystem::path> expectations_in(const std::string& folder);

/// What the recipe of the same name beside a table is read as; throws std::runtime_error where there is none,
/// or it is not read.
Transcription transcription_beside(const std::filesystem::path& table, const Pantry& pantry);

} // namespace leavenwright::testing
