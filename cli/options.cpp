// The only user of CLI11.
#include "options.hpp"

#include "diagnostic/suggestion.hpp"
#include "exit_status.hpp"
#include "option_table.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <deque>
#include <sstream>

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
    VerbSlots(CLI::App& app, const VerbRow& row) : row_(row) {
        verb_ = app.add_subcommand(std::string(row.name), std::string(row.summary));
        CLI::Option* argument =
            verb_->add_option(std::string(row.argument), arguments_, std::string(row.argument_text));
        argument->expected(static_cast<int>(row.least), static_cast<int>(row.most))->option_text(" ");
        if (row.least > 0) {
            argument->required();
        }
        for (const OptionRow& option : option_table) {
            if (option.verb == row.name || option.verb == "*") {
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
        for (const Slot& slot : slots_) {
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
    static std::string word_fault(const OptionRow& row, const std::string& value) {
        const std::vector<std::string_view> words = split_words(row.words);
        if (words.empty() || std::find(words.begin(), words.end(), value) != words.end()) {
            return {};
        }
        const std::string_view near = nearest_word(value, words);
        return std::string(row.name) + " does not know '" + value + "'\n" +
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

// The verb or option that was probably meant.
std::string suggestion(std::string_view verb, const std::string& message) {
    std::vector<std::string_view> names;
    for (const VerbRow& row : verb_table) {
        if (verb.empty()) {
            names.push_back(row.name);
        }
    }
    for (const OptionRow& row : option_table) {
        if (row.verb == verb || (row.verb == "*" && !verb.empty())) {
            names.push_back(row.name);
        }
    }
    std::istringstream words(message);
    for (std::string word; words >> word;) {
        std::erase(word, '\'');
        const std::string_view near = nearest_word(word.substr(0, word.find('=')), names);
        if (!near.empty() && near != word) {
            return "did you mean '" + std::string(near) + "'? ";
        }
    }
    return verb.empty() ? "verbs: " + listed(names) + ". " : "";
}

ReadOptions wrong_usage(std::string_view verb, std::string message) {
    const std::string help =
        verb.empty() ? "leavenwright --help" : "leavenwright " + std::string(verb) + " --help";
    if (message.find("subcommand is required") != std::string::npos) {
        message = "a verb is missing";
    }
    return {std::nullopt, exit_wrong_usage,
            "leavenwright: " + message + "\n" + suggestion(verb, message) + "See '" + help + "'.\n"};
}

const VerbRow* find_verb(std::string_view name) {
    const auto row = std::find_if(verb_table.begin(), verb_table.end(),
                                  [&](const VerbRow& candidate) { return candidate.name == name; });
    return row == verb_table.end() ? nullptr : &*row;
}

} // namespace

ReadOptions read_options(int count, const char* const* arguments) {
    const VerbRow* asked = count > 1 ? find_verb(arguments[1]) : nullptr;
    const std::string_view word = count > 1 ? arguments[1] : "";
    if (asked == nullptr && !word.empty() && word.front() != '-') {
        return wrong_usage("", "'" + std::string(word) + "' is not a verb");
    }
    CLI::App app("Turns yeasted bread formulas into levain formulas", "leavenwright");
    app.get_formatter()->column_width(34);
    app.set_version_flag("--version", std::string(version_text));
    app.require_subcommand(1);
    std::deque<VerbSlots> verbs;
    for (const VerbRow& row : verb_table) {
        if (asked == nullptr || asked == &row) { // options of other verbs would only cost time
            verbs.emplace_back(app, row);
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
                (parsed.empty() ? app.help() : parsed.front()->help()) + std::string(statuses)};
    } catch (const CLI::CallForVersion&) {
        return {std::nullopt, exit_done, std::string(version_text)};
    } catch (const CLI::ParseError& fault) {
        return wrong_usage(asked == nullptr ? "" : asked->name, fault.what());
    }
    const VerbSlots& verb = verbs.front();
    if (const std::string fault = verb.fault(); !fault.empty()) {
        return wrong_usage(verb.row().name, fault);
    }
    return {verb.options(), exit_done, {}};
}

} // namespace leavenwright
