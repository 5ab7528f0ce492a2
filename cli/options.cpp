// The only user of CLI11.
#include "options.hpp"

#include "diagnostic/diagnostic.hpp"
#include "diagnostic/suggestion.hpp"
#include "exit_status.hpp"
#include "option_table.hpp"
#include "source/unicode.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <array>
#include <deque>
#include <map>
#include <span>

namespace leavenwright {

std::optional<std::string> Options::value(std::string_view name) const {
    const auto found = values_.find(name);
    return found == values_.end() || found->second.empty() ? std::nullopt
                                                           : std::optional(found->second.front());
}

std::vector<std::string> Options::values(std::string_view name) const {
    const auto found = values_.find(name);
    return found == values_.end() ? std::vector<std::string>() : found->second;
}

namespace {

constexpr std::string_view version_text = "leavenwright " LEAVENWRIGHT_VERSION "\n";

// What CLI11 fills for one option.
struct Slot {
    const OptionRow* row = nullptr;
    std::vector<std::string> values;
    bool is_set = false;
};

std::vector<std::string_view> split_words(std::string_view text) {
    std::vector<std::string_view> words;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find(' '), text.size());
        words.push_back(text.substr(0, end));
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return words;
}

// One verb of the command line, set up from the tables.
class VerbSlots {
public:
    /// Sets up the options that `words` name; all of them for help. The others would only cost
    /// time at every start.
    VerbSlots(CLI::App& app, const VerbRow& row, std::span<const char* const> words) : row_(row) {
        verb_ = app.add_subcommand(std::string(row.name), std::string(row.summary));
        CLI::Option* argument =
            verb_->add_option(std::string(row.argument), arguments_, std::string(row.argument_text));
        argument->expected(0, static_cast<int>(many))->option_text(" ");
        for (const OptionRow& option : option_table) {
            const bool is_mine = option.verb == row.name || option.verb == "*";
            if (is_mine && (asks_help(words) || is_named(option, words))) {
                add(option);
            }
        }
    }

    const VerbRow& row() const { return row_; }

    Options options() const {
        Options options;
        options.verb = row_.name;
        options.arguments = arguments_;
        for (const Slot& slot : slots_) {
            if (slot.is_set || !slot.values.empty()) {
                options.set(slot.row->name, slot.values);
            }
        }
        return options;
    }

    /// What CLI11 does not check: options given twice, words that are not known.
    std::string fault() const {
        const std::string argument(row_.argument);
        if (arguments_.size() < row_.least) {
            return std::string(row_.name) + " needs a " + argument;
        }
        if (arguments_.size() > row_.most) {
            return std::string(row_.name) + " takes at most " + std::to_string(row_.most) + " " + argument +
                   "; " + std::to_string(arguments_.size()) + " are given";
        }
        std::map<std::string_view, const Slot*> only; // per group whose options exclude each other
        for (const Slot& slot : slots_) {
            if (const std::string_view advice = only_one_advice(slot.row->group);
                !advice.empty() && !slot.values.empty()) {
                const auto [other, is_first] = only.emplace(slot.row->group, &slot);
                if (!is_first) {
                    return std::string(slot.row->name) + " beside " + std::string(other->second->row->name) +
                           "\n" + std::string(advice);
                }
            }
            if (!slot.row->may_repeat && slot.values.size() > 1) {
                return std::string(slot.row->name) + " is given twice";
            }
            for (const std::string& value : slot.values) {
                if (const std::string text = word_fault(*slot.row, value); !text.empty()) {
                    return text;
                }
            }
        }
        return {};
    }

private:
    // Why one option of the group is enough; empty where several go together.
    static std::string_view only_one_advice(std::string_view group) {
        if (group == inoculation_group) {
            return "Say how much levain on one basis; the report shows all three.";
        }
        if (group == clock_group) {
            return "One hour gives all the others.";
        }
        return group == friction_group ? "A logged mix gives the friction." : "";
    }

    static bool asks_help(std::span<const char* const> words) {
        return std::any_of(words.begin(), words.end(),
                           [](std::string_view word) { return word == "--help" || word.starts_with("-h"); });
    }

    static bool is_named(const OptionRow& option, std::span<const char* const> words) {
        return std::any_of(words.begin(), words.end(), [&](std::string_view word) {
            return word.substr(0, word.find('=')) == option.name ||
                   (!option.short_name.empty() && word.starts_with(option.short_name));
        });
    }

    static std::string word_fault(const OptionRow& row, const std::string& value) {
        const std::vector<std::string_view> words = split_words(row.words);
        if (words.empty() || std::find(words.begin(), words.end(), value) != words.end()) {
            return {};
        }
        const std::string_view near = nearest_word(value, words);
        return std::string(row.name) + " does not know " + in_quotes(value) + "\n" +
               (near.empty() ? std::string() : "did you mean '" + std::string(near) + "'? ") +
               "It knows: " + listed(words) + ".";
    }

    void add(const OptionRow& row) {
        Slot& slot = slots_.emplace_back();
        slot.row = &row;
        const std::string names = row.short_name.empty()
                                      ? std::string(row.name)
                                      : std::string(row.short_name) + "," + std::string(row.name);
        if (row.argument.empty()) {
            verb_->add_flag(names, slot.is_set, std::string(row.text))->group(std::string(row.group));
            return;
        }
        verb_->add_option(names, slot.values, std::string(row.text))
            ->option_text(std::string(row.argument))
            ->group(std::string(row.group))
            ->allow_extra_args(false);
    }

    const VerbRow& row_;
    CLI::App* verb_ = nullptr;
    std::vector<std::string> arguments_;
    std::deque<Slot> slots_;
};

// CLI11 quotes what was typed as it was.
std::string printable_lines(std::string_view message) {
    std::string text;
    while (!message.empty()) {
        const std::size_t end = std::min(message.find('\n'), message.size());
        text += (text.empty() ? "" : "\n") + printable(message.substr(0, end), 400);
        message.remove_prefix(std::min(end + 1, message.size()));
    }
    return text;
}

ReadOptions wrong_usage(std::string_view verb, const std::string& message, const std::string& advice = {}) {
    const std::string help =
        verb.empty() ? "leavenwright --help" : "leavenwright " + std::string(verb) + " --help";
    return {std::nullopt, exit_wrong_usage,
            "leavenwright: " + printable_lines(message) + "\n" + (advice.empty() ? "" : advice + " ") +
                "See '" + help + "'.\n"};
}

const VerbRow* find_verb(std::string_view name) {
    const auto row = std::find_if(verb_table.begin(), verb_table.end(),
                                  [&](const VerbRow& candidate) { return candidate.name == name; });
    return row == verb_table.end() ? nullptr : &*row;
}

// Words of the trade that a baker may type for an option with another name.
struct OtherWord {
    std::string_view word;
    std::string_view option;
};
constexpr auto other_words = std::to_array<OtherWord>({
    {"--inoculation", "--prefermented-flour"},
    {"--inoculation", "--seed"},
    {"--hydration", "--levain-hydration"},
    {"--hydration", "--usual-hydration"},
    {"--temperature", "--at"},
    {"--temperature", "--to"},
    {"--temp", "--at"},
    {"--temp", "--to"},
    {"--weight", "--dough"},
    {"--batch", "--by"},
    {"--loaves", "--pieces"},
});

std::string did_you_mean(std::string_view word, const std::vector<std::string_view>& names) {
    const auto other = std::find_if(other_words.begin(), other_words.end(), [&](const OtherWord& row) {
        return row.word == word && std::find(names.begin(), names.end(), row.option) != names.end();
    });
    const std::string_view near = other != other_words.end() ? other->option : nearest_word(word, names);
    return near.empty() ? std::string() : "did you mean '" + std::string(near) + "'?";
}

// What CLI11 would say less clearly: options that the verb does not know, and values left out.
std::optional<ReadOptions> check_option_names(const VerbRow& verb, std::span<const char* const> words) {
    std::vector<std::string_view> names{"--help", "-h"};
    for (const OptionRow& row : option_table) {
        if (row.verb == verb.name || row.verb == "*") {
            names.push_back(row.name);
        }
    }
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string_view word = words[i];
        const std::string_view name = word.substr(0, word.find('='));
        if (word == "--") {
            break;
        }
        if (!word.starts_with("--")) {
            continue;
        }
        if (std::find(names.begin(), names.end(), name) == names.end()) {
            return wrong_usage(verb.name, std::string(verb.name) + " has no option " + printable(name, 60),
                               did_you_mean(name, names));
        }
        const auto row =
            std::find_if(option_table.begin(), option_table.end(), [&](const OptionRow& candidate) {
                return candidate.name == name && (candidate.verb == verb.name || candidate.verb == "*");
            });
        const bool wants_value = row != option_table.end() && !row->argument.empty();
        const bool has_value = word.size() > name.size() || i + 1 < words.size();
        if (wants_value && !has_value) {
            return wrong_usage(verb.name, std::string(name) + " needs a value: " + std::string(name) + " " +
                                              std::string(row->argument));
        }
    }
    return std::nullopt;
}

// CLI11's usage line counts arguments in a way of its own.
std::string help_of(const CLI::App& verb, const VerbRow& row) {
    std::string help = verb.help("leavenwright");
    const std::size_t begin = help.find("Usage: ");
    const std::size_t end = help.find('\n', begin);
    const std::string argument(row.argument);
    const std::string many_arguments = row.most > 2
                                           ? (row.least > 0 ? argument + "..." : "[" + argument + "...]")
                                           : argument + (row.most == 2 ? " [" + argument + "]" : "");
    return help.replace(begin, end - begin,
                        "Usage: leavenwright " + std::string(row.name) + " [OPTIONS] " + many_arguments);
}

// Options that would have no effect, and say so instead.
std::string misfit_of(const Options& options) {
    const auto given = [&](std::string_view name) { return options.has(name); };
    if (given("--force") && !given("--output")) {
        return "--force belongs to --output FILE";
    }
    const bool compares = options.arguments.size() == 2;
    for (const OptionRow& row : option_table) {
        const bool is_given = row.verb == options.verb && given(row.name);
        if (is_given && row.group == compare_group && !compares) {
            return std::string(row.name) + " is for comparing two formulas; one is given";
        }
        const bool converts = belongs_to_conversion(row) || row.name == "--side-by-side";
        if (is_given && given("--as-written") && converts) {
            return std::string(row.name) + " is for a conversion; --as-written makes none";
        }
        if (is_given && row.group == usual_group && compares) {
            return std::string(row.name) + " is for checking one formula; two are given";
        }
    }
    return {};
}

} // namespace

ReadOptions read_options(int count, const char* const* arguments) {
    const std::span<const char* const> words(arguments, static_cast<std::size_t>(count));
    const std::string_view word = words.size() > 1 ? words[1] : "";
    const VerbRow* asked = find_verb(word);
    if (asked == nullptr && (word.empty() || word.front() != '-')) {
        std::vector<std::string_view> names;
        for (const VerbRow& row : verb_table) {
            names.push_back(row.name);
        }
        const std::string near = did_you_mean(word, names);
        return wrong_usage("", word.empty() ? "a verb is missing" : in_quotes(word) + " is not a verb",
                           near.empty() ? "verbs: " + listed(names) + "." : near);
    }
    if (asked != nullptr) {
        if (const auto fault = check_option_names(*asked, words.subspan(2))) {
            return *fault;
        }
    }
    CLI::App app("Turns yeasted bread formulas into levain formulas", "leavenwright");
    app.get_formatter()->column_width(34);
    app.set_version_flag("--version", std::string(version_text));
    app.require_subcommand(1);
    std::deque<VerbSlots> verbs;
    for (const VerbRow& row : verb_table) {
        if (asked == nullptr || asked == &row) { // options of other verbs would only cost time
            verbs.emplace_back(app, row, words);
        }
    }
    try {
        app.parse(count, arguments);
    } catch (const CLI::CallForHelp&) {
        constexpr std::string_view statuses =
            "\nExit status: 0 done, 1 faults in the input or a check failed, 2 wrong usage,\n"
            "66 cannot read, 73 cannot write, 70 our fault.\n";
        const auto parsed = app.get_subcommands();
        return {std::nullopt, exit_done,
                (asked == nullptr || parsed.empty() ? app.help() : help_of(*parsed.front(), *asked)) +
                    std::string(statuses)};
    } catch (const CLI::CallForVersion&) {
        return {std::nullopt, exit_done, std::string(version_text)};
    } catch (const CLI::ParseError& fault) {
        return wrong_usage(asked == nullptr ? "" : asked->name, fault.what());
    }
    const VerbSlots& verb = verbs.front();
    if (const std::string fault = verb.fault(); !fault.empty()) {
        return wrong_usage(verb.row().name, fault);
    }
    Options options = verb.options();
    if (const std::string misfit = misfit_of(options); !misfit.empty()) {
        return wrong_usage(verb.row().name, misfit);
    }
    return {std::move(options), exit_done, {}};
}

} // namespace leavenwright
