// The only user of CLI11.
#include "options.hpp"

#include "diagnostic/suggestion.hpp"
#include "exit_status.hpp"

#include <CLI/CLI.hpp>

#include <algorithm>
#include <array>
#include <span>
#include <sstream>

namespace leavenwright {
namespace {

constexpr std::string_view version_text = "leavenwright " LEAVENWRIGHT_VERSION "\n";

void add_pantry_option(CLI::App& verb, std::vector<std::string>& files) {
    verb.add_option("--pantry", files, "A file with ingredients of your own; may repeat")
        ->option_text("FILE")
        ->allow_extra_args(false);
}

constexpr const char* levain_group = "How much levain (one of these; 20% of the flour without)";
constexpr const char* kind_group = "What levain";
constexpr const char* stays_group = "What stays, what gives";
constexpr const char* report_group = "Report";

void add_output_options(CLI::App& verb, OutputOptions& output) {
    verb.add_option("--format", output.format, "How: text, json or formula")
        ->option_text("FORM")
        ->group(report_group);
    verb.add_option("-o,--output", output.file, "Write to FILE instead of the terminal")
        ->option_text("FILE")
        ->group(report_group);
    verb.add_flag("--force", output.force, "Replace FILE if it is there")->group(report_group);
}

void add_convert(CLI::App& app, ConvertOptions& options) {
    CLI::App* verb = app.add_subcommand("convert", "Replace packaged yeast by a levain");
    verb->add_option("FORMULA", options.formula, "Formula file; - is standard input")
        ->required()
        ->option_text(" ");
    const auto add = [&](const char* group, const char* name, auto& value, const char* text,
                         const char* example) {
        return verb->add_option(name, value, text)->option_text(example)->group(group);
    };
    CLI::Option* share = add(levain_group, "--prefermented-flour", options.prefermented_flour,
                             "Levain flour, of the total flour", "20%");
    CLI::Option* on_total = add(levain_group, "--levain-on-total-flour", options.levain_on_total_flour,
                                "Levain weight, of the total flour", "40%");
    CLI::Option* on_dough = add(levain_group, "--levain-on-dough-flour", options.levain_on_dough_flour,
                                "Levain weight, of flour added at mixing", "50%");
    share->excludes(on_total)->excludes(on_dough);
    on_total->excludes(on_dough);
    add(kind_group, "--levain-hydration", options.levain_hydration, "Its water, of its flour (100%)", "100%");
    add(kind_group, "--levain-flour", options.levain_flour, "Such as \"rye flour 50%, bread flour 50%\"",
        "FLOURS");
    add(stays_group, "--keep", options.keep, "Keep this preferment a stage; may repeat", "STAGE")
        ->allow_extra_args(false);
    verb->add_flag("--keep-blend", options.keep_blend, "An error if the blend of flours would move")
        ->group(stays_group);
    verb->add_flag("--dry-milk", options.dry_milk, "Restore solids of milk that gives water")
        ->group(stays_group);
    add(stays_group, "--water-from", options.water_from, "Liquids that give water after plain water",
        "NAMES");
    add_output_options(*verb, options.output);
    add(report_group, "--units", options.units, "metric or us (ounces)", "UNITS");
    add(report_group, "--weigh-to", options.weigh_to, "What the scale shows (1 g)", "WEIGHT");
    add_pantry_option(*verb, options.pantry_files);
}

void add_pantry(CLI::App& app, PantryOptions& options) {
    CLI::App* verb = app.add_subcommand("pantry", "List ingredients, or show one with its sources");
    verb->add_option("NAME", options.names, "An ingredient; all of them without")->option_text(" ");
    add_pantry_option(*verb, options.pantry_files);
}

constexpr auto conversion_formats = std::to_array<std::string_view>({"text", "json", "formula"});
constexpr auto unit_systems = std::to_array<std::string_view>({"metric", "us"});

// A word that must be one of a few; says what is wrong with it, or nothing.
std::string check_word(std::string_view option, const std::string& word,
                       std::span<const std::string_view> words) {
    if (word.empty() || std::find(words.begin(), words.end(), word) != words.end()) {
        return {};
    }
    const std::string_view near = nearest_word(word, words);
    return "leavenwright: " + std::string(option) + " does not know '" + word + "'\n" +
           (near.empty() ? std::string() : "did you mean '" + std::string(near) + "'? ") + "It knows " +
           listed(words) + ".\n";
}

Options checked(const ConvertOptions& options) {
    std::string fault = check_word("--format", options.output.format, conversion_formats);
    fault += check_word("--units", options.units, unit_systems);
    return fault.empty() ? Options(options) : Options(Answered{exit_wrong_usage, fault});
}

// The verb or option that was probably meant.
std::string suggestion(const CLI::App& app, const CLI::App* verb, const std::string& message) {
    std::vector<std::string> names;
    if (verb == nullptr) {
        for (const CLI::App* each : app.get_subcommands([](const CLI::App*) { return true; })) {
            names.push_back(each->get_name());
        }
    } else {
        for (const CLI::Option* option : verb->get_options()) {
            names.push_back(option->get_name());
        }
    }
    const std::vector<std::string_view> views(names.begin(), names.end());
    std::istringstream words(message);
    for (std::string word; words >> word;) {
        const std::string_view near = nearest_word(word.substr(0, word.find('=')), views);
        if (!near.empty() && near != word) {
            return "did you mean '" + std::string(near) + "'? ";
        }
    }
    return verb == nullptr ? "verbs: " + listed(views) + ". " : "";
}

Answered wrong_usage(const CLI::App& app, const CLI::ParseError& fault) {
    const auto parsed = app.get_subcommands();
    const CLI::App* verb = parsed.empty() ? nullptr : parsed.front();
    const std::string help =
        verb == nullptr ? "leavenwright --help" : "leavenwright " + verb->get_name() + " --help";
    std::string message = fault.what();
    if (verb == nullptr && message.find("subcommand is required") != std::string::npos) {
        message = "a verb is missing";
    }
    return {exit_wrong_usage,
            "leavenwright: " + message + "\n" + suggestion(app, verb, message) + "See '" + help + "'.\n"};
}

} // namespace

Options read_options(int count, const char* const* arguments) {
    CLI::App app("Turns yeasted bread formulas into levain formulas", "leavenwright");
    app.get_formatter()->column_width(34);
    app.footer("\nExit status: 0 done, 1 faults in the input, 2 wrong usage, 66 cannot read,\n"
               "73 cannot write, 70 our fault.");
    app.set_version_flag("--version", std::string(version_text));
    app.require_subcommand(1);
    ConvertOptions convert;
    PantryOptions pantry;
    // Options of the other verbs would only cost time; help, and a verb that is not known, want them.
    const std::string_view verb = count > 1 ? arguments[1] : "";
    if (verb != "pantry") {
        add_convert(app, convert);
    }
    if (verb != "convert") {
        add_pantry(app, pantry);
    }
    try {
        app.parse(count, arguments);
    } catch (const CLI::CallForHelp&) {
        const auto parsed = app.get_subcommands();
        return Answered{exit_done, parsed.empty() ? app.help() : parsed.front()->help()};
    } catch (const CLI::CallForVersion&) {
        return Answered{exit_done, std::string(version_text)};
    } catch (const CLI::ParseError& fault) {
        return wrong_usage(app, fault);
    }
    if (app.get_subcommands().front()->get_name() == "convert") {
        return checked(convert);
    }
    return pantry;
}

} // namespace leavenwright
