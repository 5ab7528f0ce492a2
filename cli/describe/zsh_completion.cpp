#include "describe/describe.hpp"

#include <cstddef>
#include <string>
#include <string_view>

namespace leavenwright {
namespace {

// Inside of a specification of _arguments.
std::string zsh_text(std::string_view text) {
    std::string result;
    for (const char character : text) {
        if (character == ':' || character == '[' || character == ']' || character == '\\') {
            result += '\\';
        }
        result += character;
    }
    return result;
}

std::string zsh_action(const OptionRow& option) {
    if (option.argument.empty()) {
        return {};
    }
    const std::string message = ":" + zsh_text(option.argument) + ":";
    if (takes_file(option)) {
        return message + "_files";
    }
    return message + (option.words.empty() ? " " : "(" + std::string(option.words) + ")");
}

std::string zsh_option(const OptionRow& option) {
    const std::string rest = "[" + zsh_text(option.text) + "]" + zsh_action(option);
    const std::string full = std::string(option.name) + (option.argument.empty() ? "" : "=");
    const std::string indent = " \\\n                ";
    if (option.short_name.empty()) {
        return indent + shell_quoted((option.may_repeat ? "*" : "") + full + rest);
    }
    const std::string others =
        option.may_repeat ? "*" : "(" + std::string(option.short_name) + " " + std::string(option.name) + ")";
    const std::string brief = std::string(option.short_name) + (option.argument.empty() ? "" : "+");
    return indent + shell_quoted(others + brief + rest) + indent + shell_quoted(others + full + rest);
}

std::string zsh_verb(const VerbRow& verb) {
    std::string arm = "        " + std::string(verb.name) + ")\n            _arguments \\\n";
    arm += "                '(- *)-h[" + std::string(help_text) + "]' \\\n";
    arm += "                '(- *)--help[" + std::string(help_text) + "]'";
    for (const OptionRow* option : options_of(verb)) {
        arm += zsh_option(*option);
    }
    const std::string spec = ":" + zsh_text(verb.argument) + ":" + (takes_file(verb) ? "_files" : " ");
    const std::string indent = " \\\n                ";
    if (verb.most == many) {
        arm += indent + shell_quoted("*" + spec);
    } else {
        for (std::size_t place = 1; place <= verb.most; ++place) {
            arm += indent + shell_quoted(std::to_string(place) + (place > verb.least ? ":" : "") + spec);
        }
    }
    return arm + "\n            ;;\n";
}

} // namespace

std::string zsh_completion() {
    std::string verbs;
    std::string arms;
    for (const VerbRow& verb : verb_table) {
        verbs += "                " +
                 shell_quoted(std::string(verb.name) + ":" + replaced(verb.summary, ":", "\\:")) + "\n";
        arms += zsh_verb(verb);
    }
    return "#compdef leavenwright\n"
           "# Written by describe_command from option_table.hpp.\n\n"
           "_leavenwright() {\n"
           "    local curcontext=\"$curcontext\" state state_descr line\n"
           "    typeset -A opt_args\n"
           "    _arguments -C \\\n"
           "        '(- *)-h[" +
           std::string(help_text) + "]' \\\n        '(- *)--help[" + std::string(help_text) +
           "]' \\\n        '(- *)--version[" + std::string(version_option_text) +
           "]' \\\n"
           "        '1:verb:->verb' \\\n"
           "        '*::argument:->argument' && return\n"
           "    case $state in\n"
           "    verb)\n"
           "        local -a verbs\n"
           "        verbs=(\n" +
           verbs +
           "        )\n"
           "        _describe verb verbs\n"
           "        ;;\n"
           "    argument)\n"
           "        case $line[1] in\n" +
           arms +
           "        esac\n"
           "        ;;\n"
           "    esac\n"
           "}\n\n"
           "_leavenwright \"$@\"\n";
}

} // namespace leavenwright
