// What is written from the option table: a man page and completions. Each function returns the
// whole text of its file.
#pragma once

#include "option_table.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

// What CLI11 says of the two options that are its own.
inline constexpr std::string_view help_text = "Print this help message and exit";
inline constexpr std::string_view version_option_text = "Display program version information and exit";

std::string man_page();
std::string bash_completion();
std::string zsh_completion();
std::string fish_completion();

/// The options of a verb, those of every verb included, in the order of the table.
std::vector<const OptionRow*> options_of(const VerbRow& verb);
/// Their groups, in the order of the table, as --help has them.
std::vector<std::string_view> groups_of(const VerbRow& verb);
/// Whether the value of an option, or what stands behind a verb, is a file.
bool takes_file(const OptionRow& option);
bool takes_file(const VerbRow& verb);
/// `text` with every `from` in it as `to`.
std::string replaced(std::string_view text, std::string_view from, std::string_view to);
/// As one word of a shell of the Bourne family.
std::string shell_quoted(std::string_view text);
/// The names of a verb's options, separated by spaces.
std::string option_names(const VerbRow& verb);

} // namespace leavenwright
