#include "describe/describe.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <string>
#include <string_view>

namespace leavenwright {
namespace {

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
    if (verb.most == many) {
        return italic(verb.argument) + " ...";
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

} // namespace

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
        {"leavenwright card loaf.yaml -o card.pdf", "The page to bake from:"},
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

} // namespace leavenwright
