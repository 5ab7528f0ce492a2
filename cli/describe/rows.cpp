#include "describe/describe.hpp"

#include <algorithm>

namespace leavenwright {

std::vector<const OptionRow*> options_of(const VerbRow& verb) {
    std::vector<const OptionRow*> options;
    for (const OptionRow& option : option_table) {
        if (option.verb == verb.name || option.verb == "*") {
            options.push_back(&option);
        }
    }
    return options;
}

std::vector<std::string_view> groups_of(const VerbRow& verb) {
    std::vector<std::string_view> groups;
    for (const OptionRow* option : options_of(verb)) {
        if (std::find(groups.begin(), groups.end(), option->group) == groups.end()) {
            groups.push_back(option->group);
        }
    }
    return groups;
}

bool takes_file(const OptionRow& option) {
    return option.argument == "FILE";
}

bool takes_file(const VerbRow& verb) {
    return verb.argument == "FORMULA" || verb.argument == "FILE";
}

std::string replaced(std::string_view text, std::string_view from, std::string_view to) {
    std::string result;
    for (std::size_t at = text.find(from); at != std::string_view::npos; at = text.find(from)) {
        result += std::string(text.substr(0, at)) + std::string(to);
        text.remove_prefix(at + from.size());
    }
    return result + std::string(text);
}

std::string shell_quoted(std::string_view text) {
    return "'" + replaced(text, "'", "'\\''") + "'";
}

std::string option_names(const VerbRow& verb) {
    std::string names = "-h --help";
    for (const OptionRow* option : options_of(verb)) {
        names += (option->short_name.empty() ? "" : " " + std::string(option->short_name)) + " " +
                 std::string(option->name);
    }
    return names;
}

} // namespace leavenwright
