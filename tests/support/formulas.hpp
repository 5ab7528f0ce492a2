// Formulas for tests, from text.
#pragma once

#include "convert/convert.hpp"
#include "formula/formula.hpp"

#include <filesystem>
#include <string>

namespace leavenwright::testing {

/// Reads a formula that must be free of faults; throws std::runtime_error with the
/// diagnostics where it is not.
Formula formula_from(const std::string& text);

/// A loaf of 1720 g with levain of 20 % of its flour (10 % of the flour prefermented), 70 % hydration and
/// 2 % salt; `process` is its list of steps, from its key on.
Formula loaf_of_practice(const std::string& process);

/// The codes of the diagnostics that reading the text gives, in order, separated by spaces.
std::string codes_of(const std::string& text);

/// Converts; throws std::runtime_error with the diagnostics where it does not fit.
Conversion converted(const Formula& formula, const ConversionRequest& request);

/// Where the project is.
std::filesystem::path project_folder();

/// The whole content of a file below the project's folder.
std::string project_file(const std::string& path);

} // namespace leavenwright::testing
