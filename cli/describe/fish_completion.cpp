#include "describe/describe.hpp"

#include <string>
#include <string_view>

namespace leavenwright {
namespace {

std::string fish_quoted(std::string_view text) {
    return "'" + replaced(replaced(text, "\\", "\\\\"), "'", "\\'") + "'";
}

std::string fish_option(const std::string& condition, const OptionRow& option) {
    std::string line =
        "complete -c leavenwright -n " + condition + " -l " + std::string(option.name.substr(2));
    if (!option.short_name.empty()) {
        line += " -s " + std::string(option.short_name.substr(1));
    }
    if (takes_file(option)) {
        line += " -r -F";
    } else if (!option.words.empty()) {
        line += " -x -a '" + std::string(option.words) + "'";
    } else if (!option.argument.empty()) {
        line += " -x";
    }
    return line + " -d " + fish_quoted(option.text) + "\n";
}

} // namespace

std::string fish_completion() {
    std::string script = "# fish completion for leavenwright. Written by describe_command from "
                         "option_table.hpp.\n\ncomplete -c leavenwright -f\n"
                         "complete -c leavenwright -s h -l help -d " +
                         fish_quoted(help_text) +
                         "\ncomplete -c leavenwright -n __fish_use_subcommand -l version -d " +
                         fish_quoted(version_option_text) + "\n";
    for (const VerbRow& verb : verb_table) {
        script += "complete -c leavenwright -n __fish_use_subcommand -a " + std::string(verb.name) + " -d " +
                  fish_quoted(verb.summary) + "\n";
    }
    for (const VerbRow& verb : verb_table) {
        const std::string condition = "'__fish_seen_subcommand_from " + std::string(verb.name) + "'";
        script += "\n";
        script += takes_file(verb) ? "complete -c leavenwright -n " + condition + " -F\n" : "";
        for (const OptionRow* option : options_of(verb)) {
            script += fish_option(condition, *option);
        }
    }
    return script;
}

} // namespace leavenwright
