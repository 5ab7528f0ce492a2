#include "session.hpp"

#include "diagnostic/render_diagnostic.hpp"
#include "exit_status.hpp"
#include "files.hpp"
#include "formula/read_formula.hpp"
#include "option_table.hpp"
#include "pantry/read_pantry.hpp"
#include "quantity/read_quantity.hpp"
#include "render/diagnostics_json.hpp"
#include "transcribe/transcribe.hpp"

#include <unistd.h>

#include <algorithm>
#include <array>
#include <cstdlib>

namespace leavenwright {
namespace {

bool wants_color() {
    const char* no_color = std::getenv("NO_COLOR");
    const bool is_refused = no_color != nullptr && *no_color != '\0';
    return !is_refused && ::isatty(STDERR_FILENO) == 1;
}

struct Ending {
    std::string_view ending;
    std::string_view format;
};

constexpr auto endings = std::to_array<Ending>({{".json", "json"},
                                                {".csv", "csv"},
                                                {".yaml", "formula"},
                                                {".yml", "formula"},
                                                {".html", "html"},
                                                {".htm", "html"},
                                                {".pdf", "pdf"}});

// The formats that a verb has, separated by spaces; empty where it has no choice.
std::string_view formats_of(std::string_view verb) {
    const auto row = std::find_if(option_table.begin(), option_table.end(), [&](const OptionRow& candidate) {
        return candidate.verb == verb && candidate.name == "--format";
    });
    return row == option_table.end() ? std::string_view() : row->words;
}

bool can_make(std::string_view verb, std::string_view format) {
    const std::string words = " " + std::string(formats_of(verb)) + " ";
    return words.find(" " + std::string(format) + " ") != std::string::npos;
}

// The format that the ending of a file's name stands for; empty where it stands for none.
std::string_view format_named_by(std::string_view file) {
    const auto known = std::find_if(endings.begin(), endings.end(),
                                    [&](const Ending& ending) { return file.ends_with(ending.ending); });
    return known == endings.end() ? std::string_view() : known->format;
}

// What of a recipe is kept apart from its dough, as a part of a sentence.
std::string kept_apart(const Transcription& transcription) {
    constexpr std::size_t most_bytes = 200;
    std::string names;
    for (const IngredientLine& line : transcription.lines) {
        if (line.ingredient != nullptr && !is_in_dough(line.role) && names.size() < most_bytes) {
            names += (names.empty() ? "" : ", ") + line.key + " (" + line.role + ")";
        }
    }
    return names.empty() ? std::string() : "; kept apart, allergens and all: " + names;
}

} // namespace

SourcedText text_from(std::string_view name, const std::string& words) {
    const auto source = std::make_shared<SourceText>(std::string(name), words);
    return {.source = source, .span = {0, words.size()}, .text = source->text()};
}

SourcedText beginning_of(const SourceHandle& source) {
    return {.source = source, .span = {0, 1}, .text = {}};
}

Session::Session(const Options& options) : options_(options) {
    for (const std::string& path : options.values("--pantry")) {
        const SourceHandle source = read(path);
        const auto document = source ? read_document(source, diagnostics) : std::nullopt;
        if (document) {
            pantry.add(read_pantry_file(*document, PantryOrigin::user, diagnostics).shelf);
        }
    }
}

SourceHandle Session::read(const std::string& path) {
    ReadFile file = read_file(path);
    if (!file.source) {
        diagnostics.error(Code::file_unreadable, {}, "cannot read " + in_quotes(path) + ": " + file.fault,
                          "check the name; '-' reads standard input");
        file_status_ = exit_cannot_read;
    }
    return file.source;
}

SourceHandle Session::read_formula_text(const std::string& path) {
    // Without the user's pantry every name in it would be reported; one fault says it.
    const SourceHandle source = file_status_ == 0 ? read(path) : nullptr;
    if (!source || !is_recipe_text(*source, pantry)) {
        return source;
    }
    const auto transcription = transcribe(source, pantry, diagnostics);
    if (!transcription) {
        return nullptr;
    }
    diagnostics.warning(Code::recipe_transcribed, {.source = source, .span = {0, 0}, .text = {}},
                        "this is a recipe's text, and was transcribed; " + summary_of(*transcription) +
                            kept_apart(*transcription),
                        "'leavenwright transcribe' writes the formula, to be looked over");
    return std::make_shared<SourceText>(source->name() + " (transcribed)", transcription->formula);
}

std::optional<Formula> Session::read_formula_file(const std::string& path) {
    const SourceHandle source = read_formula_text(path);
    return source ? read_formula(source, pantry, diagnostics) : std::nullopt;
}

std::optional<SourcedText> Session::option_text(std::string_view option) const {
    const auto value = options_.value(option);
    if (!value) {
        return std::nullopt;
    }
    return text_from(option, *value);
}

WeighingScale Session::scale() {
    WeighingScale scale =
        usual_scale(options_.value("--units") == "us" ? UnitSystem::us : UnitSystem::metric);
    if (const auto text = option_text("--weigh-to")) {
        scale.step = read_mass(*text, diagnostics).value_or(scale.step);
    }
    return scale;
}

std::string Session::format() const {
    if (const auto format = options_.value("--format")) {
        return *format;
    }
    const std::string_view format = format_named_by(options_.value("--output").value_or(""));
    return can_make(options_.verb, format) ? std::string(format) : "text";
}

int Session::finish() {
    if (options_.value("--diagnostics") == "json") {
        write_error(render_diagnostics_json(diagnostics));
    } else {
        write_error(render_diagnostics(diagnostics, {.color = wants_color()}));
    }
    if (file_status_ != 0) {
        return file_status_;
    }
    return diagnostics.has_errors() ? exit_input_faulty : exit_done;
}

int Session::deliver(const std::string& report) {
    const int so_far = finish();
    if (so_far != exit_done) {
        return so_far;
    }
    const std::string file = options_.value("--output").value_or("-");
    if (file == "-") {
        return deliver_output(report);
    }
    const std::string_view format = format_named_by(file);
    if (!options_.value("--format") && !format.empty() && !can_make(options_.verb, format)) {
        write_error("leavenwright: cannot write " + in_quotes(file) + ": " + options_.verb + " makes no " +
                    std::string(format) + "; choose another ending, or say --format text\n");
        return exit_wrong_usage;
    }
    const std::string fault = write_file(file, report, options_.has("--force"));
    if (!fault.empty()) {
        write_error("leavenwright: cannot write " + in_quotes(file) + ": " + fault + "\n");
        return exit_cannot_write;
    }
    return exit_done;
}

} // namespace leavenwright
