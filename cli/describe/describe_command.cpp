// Writes the man page and the completions for bash, zsh and fish from the option table. Run by
// the build:
//
//     describe_command FOLDER
#include "../option_table.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdio>
#include <fstream>
#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {
namespace {

constexpr std::string_view help_text = "Print this help message and exit";
constexpr std::string_view version_option_text = "Display program version information and exit";

std::vector<const OptionRow*> options_of(const VerbRow& verb) {
    std::vector<const OptionRow*> options;
    for (const OptionRow& option : option_table) {
        if (option.verb == verb.name || option.verb == "*") {
            options.push_back(&option);
        }
    }
    return options;
}

// In the order of the table, as --help has them.
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

// As one word of a shell of the Bourne family.
std::string shell_quoted(std::string_view text) {
    return "'" + replaced(text, "'", "'\\''") + "'";
}

// ---- man page ----

// Characters that troff would read as its own. A hyphen stays a hyphen.
std::string roff(std::string_view text) {
    std::string result;
    for (const char character : text) {
        switch (character) {
        case '\\':
            result += "\\e";
            break;
        case '"':
            result += "\\(dq";
            break;
        case '\'':
            result += "\\(aq";
            break;
        case '`':
            result += "\\(ga";
            break;
        case '^':
            result += "\\(ha";
            break;
        case '~':
            result += "\\(ti";
            break;
        default:
            result += character;
        }
    }
    return result.starts_with('.') ? "\\&" + result : result;
}

// What is typed: its hyphens can be copied from the page.
std::string roff_typed(std::string_view text) {
    return replaced(roff(text), "-", "\\-");
}

// A text of the table; what begins with a hyphen in it is meant to be typed.
std::string roff_text(std::string_view text) {
    std::string result;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find(' '), text.size());
        const std::string_view word = text.substr(0, end);
        result += word.starts_with('-') ? roff_typed(word) : roff(word);
        result += end < text.size() ? " " : "";
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return result;
}

std::string bold(std::string_view text) {
    return "\\fB" + roff_typed(text) + "\\fR";
}

std::string italic(std::string_view text) {
    return "\\fI" + roff_typed(text) + "\\fR";
}

std::string term(const std::string& heading, std::string_view text) {
    return ".TP\n" + heading + "\n" + roff_text(text) + "\n";
}

std::string man_argument(const VerbRow& verb) {
    if (verb.least == 0) {
        return "[" + italic(verb.argument) + (verb.most == many ? " ...]" : "]");
    }
    return italic(verb.argument) + (verb.most > verb.least ? " [" + italic(verb.argument) + "]" : "");
}

std::string man_option(const OptionRow& option) {
    std::string heading = option.short_name.empty() ? "" : bold(option.short_name) + ", ";
    heading += bold(option.name);
    if (!option.argument.empty()) {
        heading += " " + italic(option.argument);
    }
    return term(heading, std::string(option.text) + ".");
}

std::string man_verb(const VerbRow& verb) {
    std::string page = ".SS " + roff_typed(verb.name) + "\n" + roff_text(verb.summary) + ".\n";
    page += term(italic(verb.argument), std::string(verb.argument_text) + ".");
    for (const std::string_view group : groups_of(verb)) {
        page += ".PP\n" + roff_text(group) + ":\n";
        for (const OptionRow* option : options_of(verb)) {
            page += option->group == group ? man_option(*option) : "";
        }
    }
    return page;
}

std::string man_synopsis() {
    std::string page = ".SH SYNOPSIS\n";
    for (const VerbRow& verb : verb_table) {
        page += bold("leavenwright") + " " + bold(verb.name) + " [" + italic("options") + "] " +
                man_argument(verb) + "\n.br\n";
    }
    page += bold("leavenwright") + " [" + italic("verb") + "] " + bold("--help") + "\n.br\n";
    return page + bold("leavenwright") + " " + bold("--version") + "\n";
}

struct Example {
    std::string_view command;
    std::string_view text;
};

std::string man_page() {
    std::string page = ".\\\" Written by describe_command from option_table.hpp.\n"
                       ".TH LEAVENWRIGHT 1 \"\" \"leavenwright " LEAVENWRIGHT_VERSION "\" \"User Commands\"\n"
                       ".nh\n.ad l\n" // names of options and files stay whole
                       ".SH NAME\nleavenwright \\- turn yeasted bread formulas into levain formulas\n";
    page += man_synopsis();
    page += ".SH DESCRIPTION\n"
            "Reads a bread formula as it was written, takes the packaged yeast out, puts a levain of\n"
            "your choosing in, and leaves flour, water and salt where they were.\n"
            "A balance in the report shows that nothing moved.\n"
            "It also brings formulas to another size, checks and compares them, and knows what\n"
            "ingredients hold and weigh.\n"
            ".PP\n"
            "A formula is a YAML file with the ingredients in weights, household measures or\n"
            "baker\\(aqs percentages.\n"
            "The name\n.B \\-\nstands for standard input.\n"
            "Every fault of a file is shown in one run, with its place and what to type instead;\n"
            "nothing is written then.\n"
            ".PP\n"
            "Values with spaces in them are quoted for the shell.\n"
            "Values shown below are examples.\n";
    page += ".SH OPTIONS\n" + term(bold("-h") + ", " + bold("--help"),
                                   std::string(help_text) + "; behind a verb, the help of that verb.");
    page += term(bold("--version"), std::string(version_option_text) + ".");
    page += ".SH VERBS\n";
    for (const VerbRow& verb : verb_table) {
        page += man_verb(verb);
    }
    page += ".SH EXIT STATUS\n";
    page += term(bold("0"), "Done.");
    page += term(bold("1"), "The input has faults, or a check failed.");
    page += term(bold("2"), "Wrong usage.");
    page += term(bold("66"), "A file cannot be read.");
    page += term(bold("70"), "A fault of the program.");
    page += term(bold("73"), "A file cannot be written.");
    page += ".SH ENVIRONMENT\n" + term(bold("NO_COLOR"),
                                       "Where it is set and not empty, faults are shown without colour. "
                                       "They never have colour outside of a terminal.");
    constexpr auto examples = std::to_array<Example>({
        {"leavenwright convert loaf.yaml", "Replace the yeast by a levain with 20 % of the flour:"},
        {"leavenwright convert loaf.yaml --levain-hydration 60%", "By a stiff levain:"},
        {"leavenwright convert loaf.yaml -o loaf-levain.yaml", "Write the result as a formula:"},
        {"leavenwright scale loaf.yaml --pieces \"3 x 600 g\"", "For three loaves of 600 g of dough:"},
        {"leavenwright check loaf.yaml loaf-levain.yaml", "See that nothing but the yeast moved:"},
        {"leavenwright pantry butter", "What butter holds and weighs, and who says so:"},
        {"leavenwright explain unit-missing", "What a message is about:"},
    });
    page += ".SH EXAMPLES\n";
    for (const Example& example : examples) {
        page += ".PP\n" + roff_text(example.text) + "\n.PP\n.nf\n.RS\n" + roff_typed(example.command) +
                "\n.RE\n.fi\n";
    }
    page += ".SH FILES\n" + term(italic("FORMULA"),
                                 "A formula: YAML, at most 1 MiB. Its form is described in "
                                 "formulas/README.md, which is installed in share/leavenwright.");
    page += term(bold("--pantry") + " " + italic("FILE"),
                 "Ingredients of your own, in the form that the same page describes.");
    page += term(bold("-o") + " " + italic("FILE"),
                 "Its ending chooses the format where --format does not. Written whole or not at all.");
    page += ".SH SEE ALSO\n"
            "cli/verbs in the sources has a page for each verb, and cli/glossary.md explains the words\n"
            "of the trade.\n";
    return page;
}

// ---- bash ----

std::string option_names(const VerbRow& verb) {
    std::string names = "-h --help";
    for (const OptionRow* option : options_of(verb)) {
        names += (option->short_name.empty() ? "" : " " + std::string(option->short_name)) + " " +
                 std::string(option->name);
    }
    return names;
}

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

// ---- zsh ----

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

// ---- fish ----

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

bool write_file(const std::string& path, const std::string& text) {
    std::ofstream file(path, std::ios::binary);
    file << text << std::flush;
    if (!file) {
        std::fprintf(stderr, "describe_command: cannot write %s\n", path.c_str());
    }
    return static_cast<bool>(file);
}

} // namespace
} // namespace leavenwright

int main(int count, char** arguments) {
    using namespace leavenwright;
    if (count != 2) {
        std::fputs("usage: describe_command FOLDER\n", stderr);
        return 2;
    }
    const std::string folder = std::string(arguments[1]) + "/";
    const bool written = write_file(folder + "leavenwright.1", man_page()) &&
                         write_file(folder + "leavenwright.bash", bash_completion()) &&
                         write_file(folder + "_leavenwright", zsh_completion()) &&
                         write_file(folder + "leavenwright.fish", fish_completion());
    return written ? 0 : 1;
}
