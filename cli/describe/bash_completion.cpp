#include "describe/describe.hpp"

#include <string>
#include <string_view>

namespace leavenwright {
namespace {

// The arm of the case for the value of an option.
std::string bash_value(const VerbRow& verb, const OptionRow& option) {
    const auto pattern = [&](std::string_view name) {
        return "'" + std::string(verb.name) + " " + std::string(name) + "'";
    };
    std::string arm = "        " + pattern(option.name);
    if (!option.short_name.empty()) {
        arm += " | " + pattern(option.short_name);
    }
    if (takes_file(option)) {
        return arm + ") _leavenwright_files \"$cur\"; return ;;\n";
    }
    if (!option.words.empty()) {
        return arm + ") words='" + std::string(option.words) + "' ;;\n";
    }
    return arm + ") return ;;\n"; // any value
}

} // namespace

std::string bash_completion() {
    std::string values;
    std::string arguments;
    std::string verbs;
    for (const VerbRow& verb : verb_table) {
        verbs += std::string(verb.name) + " ";
        for (const OptionRow* option : options_of(verb)) {
            values += option->argument.empty() ? "" : bash_value(verb, *option);
        }
        arguments += "        '" + std::string(verb.name) + " -'*) words='" + option_names(verb) + "' ;;\n";
        if (takes_file(verb)) {
            arguments +=
                "        '" + std::string(verb.name) + " '*) _leavenwright_files \"$cur\"; return ;;\n";
        }
    }
    return R"(# bash completion for leavenwright. Written by describe_command from option_table.hpp.

_leavenwright_files() {
    local name
    compopt -o filenames 2>/dev/null
    while IFS= read -r name; do
        COMPREPLY+=("$name")
    done < <(compgen -f -- "$1")
}

_leavenwright() {
    local cur="${COMP_WORDS[COMP_CWORD]}" prev="" words=""
    local verb="${COMP_WORDS[1]}"
    COMPREPLY=()
    if [ "$COMP_CWORD" -gt 1 ]; then
        prev="${COMP_WORDS[COMP_CWORD - 1]}"
    fi
    # --format=json comes as three words
    if [ "$cur" = "=" ]; then
        cur=""
    elif [ "$prev" = "=" ]; then
        prev="${COMP_WORDS[COMP_CWORD - 2]}"
    fi
    if [ "$COMP_CWORD" -eq 1 ]; then
        verb=""
        words=')" +
           verbs + R"(-h --help --version'
    fi
    case "$verb $prev" in
)" + values +
           R"(    esac
    if [ -z "$words" ]; then
        case "$verb $cur" in
)" + arguments +
           R"(        esac
    fi
    local word
    while IFS= read -r word; do
        COMPREPLY+=("$word")
    done < <(compgen -W "$words" -- "$cur")
}

complete -F _leavenwright leavenwright
)";
}

} // namespace leavenwright
