// What was typed, as plain values. Only options.cpp knows how it is read.
#pragma once

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace leavenwright {

struct OutputOptions {
    std::string format; // empty: by the ending of the file, else text
    std::string file;   // empty: standard output
    bool force = false;
};

struct ConvertOptions {
    std::string formula;
    std::optional<std::string> prefermented_flour;
    std::optional<std::string> levain_on_total_flour;
    std::optional<std::string> levain_on_dough_flour;
    std::optional<std::string> levain_hydration;
    std::optional<std::string> levain_flour;
    std::vector<std::string> keep;
    std::optional<std::string> water_from;
    bool keep_blend = false;
    bool dry_milk = false;
    std::vector<std::string> pantry_files;
    std::string units = "metric";
    std::optional<std::string> weigh_to;
    OutputOptions output;
};

struct PantryOptions {
    std::vector<std::string> names;
    std::vector<std::string> pantry_files;
};

/// The command line was answered already: help, the version, or what is wrong with it.
struct Answered {
    int status;
    std::string text;
};

using Options = std::variant<Answered, ConvertOptions, PantryOptions>;

Options read_options(int count, const char* const* arguments);

/// The columns that reports are set in.
inline constexpr std::size_t report_columns = 80;

} // namespace leavenwright
