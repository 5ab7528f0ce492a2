// What was typed, as plain values. Only options.cpp knows how it is read.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

/// A command line that was understood: the verb, what stands behind it, and the options that
/// were given, by name.
class Options {
public:
    std::string verb;
    std::vector<std::string> arguments;

    bool has(std::string_view name) const { return values_.contains(name); }
    /// The value of an option, if it was given.
    std::optional<std::string> value(std::string_view name) const;
    /// All values of an option that may repeat.
    std::vector<std::string> values(std::string_view name) const;
    void set(std::string_view name, std::vector<std::string> values) { values_[name] = std::move(values); }

private:
    std::map<std::string_view, std::vector<std::string>> values_; // names as in the table
};

/// Either options, or the answer to a command line that needs no verb to run: help, the
/// version, or what is wrong with it.
struct ReadOptions {
    std::optional<Options> options;
    int status = 0;
    std::string answer;
};

ReadOptions read_options(int count, const char* const* arguments);

/// The columns that reports are set in.
inline constexpr std::size_t report_columns = 80;

} // namespace leavenwright
