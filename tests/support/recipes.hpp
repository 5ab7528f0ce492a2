// Recipes that stand beside tables of what their lines mean.
#pragma once

#include "transcribe/transcribe.hpp"

#include <filesystem>
#include <string>
#include <vector>

namespace leavenwright::testing {

/// The `.expected` files of a folder below the project's, from the project's root, in order.
std::vector<std::filesystem::path> expectations_in(const std::string& folder);

/// What the recipe of the same name beside a table is read as; throws std::runtime_error where there is none,
/// or it is not read.
Transcription transcription_beside(const std::filesystem::path& table, const Pantry& pantry);

} // namespace leavenwright::testing
