#include "given_command.hpp"

namespace leavenwright {
namespace {

// A word as a shell reads it back.
std::string shell_word(const std::string& word) {
    const bool is_plain =
        !word.empty() &&
        word.find_first_not_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"
                               "_-./%+:@=") == std::string::npos;
    if (is_plain) {
        return word;
    }
    std::string quoted_word = "'";
    for (const char byte : word) {
        quoted_word += byte == '\'' ? std::string("'\\''") : std::string(1, byte);
    }
    return quoted_word + "'";
}

} // namespace

std::string given_command(const Options& options, const std::string& path,
                          bool (*is_left_out)(const OptionRow& row)) {
    std::string values;
    std::string flags;
    for (const OptionRow& row : option_table) {
        if ((row.verb != options.verb && row.verb != "*") || is_left_out(row) || !options.has(row.name)) {
            continue;
        }
        if (row.argument.empty()) {
            flags += " " + std::string(row.name);
        }
        for (const std::string& value : options.values(row.name)) {
            values += " " + std::string(row.name) + " " + shell_word(value);
        }
    }
    return "leavenwright " + options.verb + " " + shell_word(path) + values + flags;
}

} // namespace leavenwright
