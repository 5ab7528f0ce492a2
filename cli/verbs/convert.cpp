#include "convert/convert.hpp"
#include "formula/write_formula.hpp"
#include "quantity/read_quantity.hpp"
#include "render/conversion.hpp"
#include "session.hpp"
#include "verbs/verbs.hpp"

namespace leavenwright {
namespace {

// A word as a shell reads it back.
std::string shell_word(const std::string& word) {
    const bool is_plain =
        !word.empty() &&
        word.find_first_not_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"
                               "_-./%+:@=") == std::string::npos;
    if (is_plain) {
        return word;
    }
    std::string quoted_word = "'";
    for (const char byte : word) {
        quoted_word += byte == '\'' ? std::string("'\\''") : std::string(1, byte);
    }
    return quoted_word + "'";
}

// The command as it was given, less how much levain and how wet.
std::string command_of(const Options& options) {
    std::string command = "leavenwright convert " + shell_word(options.arguments.front());
    for (const std::string_view option : {"--levain-flour", "--keep", "--water-from", "--pantry", "--format",
                                          "--output", "--units", "--weigh-to", "--diagnostics"}) {
        for (const std::string& value : options.values(option)) {
            command += " " + std::string(option) + " " + shell_word(value);
        }
    }
    for (const std::string_view flag : {"--keep-blend", "--dry-milk", "--force"}) {
        command += options.has(flag) ? " " + std::string(flag) : "";
    }
    return command;
}

class RequestReader {
public:
    RequestReader(const Options& options, const Pantry& pantry, Session& session)
        : options_(options), pantry_(pantry), session_(session) {}

    ConversionRequest read() {
        read_inoculation<PrefermentedFlour>("--prefermented-flour");
        read_inoculation<LevainOnTotalFlour>("--levain-on-total-flour");
        read_inoculation<LevainOnDoughFlour>("--levain-on-dough-flour");
        if (const auto text = session_.option_text("--levain-hydration")) {
            if (const auto hydration = read_percentage(*text, session_.diagnostics)) {
                request_.levain_hydration = Hydration(hydration->value());
            }
            if (!request_.inoculation_place.source) {
                request_.inoculation_place = *text;
            }
        }
        if (const auto text = session_.option_text("--levain-flour")) {
            request_.levain_flour_place = *text;
            request_.levain_flour = read_levain_flour(*text, pantry_, session_.diagnostics, request_.remarks);
        }
        if (const auto text = session_.option_text("--water-from")) {
            request_.water_from_place = *text;
            request_.water_from = read_ingredient_list(*text, pantry_, session_.diagnostics);
        }
        request_.keep = options_.values("--keep");
        for (const std::string& stage : request_.keep) {
            request_.keep_places.push_back(text_from("--keep", stage));
        }
        request_.keep_blend = options_.has("--keep-blend");
        request_.dry_milk = options_.has("--dry-milk");
        request_.command = command_of(options_);
        return request_;
    }

private:
    template <class Share>
    void read_inoculation(std::string_view option) {
        const auto text = session_.option_text(option);
        if (!text) {
            return;
        }
        request_.inoculation_place = *text;
        if (const auto share = read_percentage(*text, session_.diagnostics)) {
            request_.inoculation = Share(share->value());
        }
    }

    const Options& options_;
    const Pantry& pantry_;
    Session& session_;
    ConversionRequest request_;
};

std::string heading_of(const Conversion& conversion) {
    std::string heading = "Written by leavenwright: packaged yeast replaced by a levain.";
    for (const std::string& note : conversion.notes) {
        heading += "\n" + note;
    }
    return heading;
}

std::string report_of(const Conversion& conversion, const std::string& format, const WeighingScale& scale) {
    if (format == "json") {
        return render_conversion_json(conversion);
    }
    if (format == "formula") {
        return write_formula(conversion.after, heading_of(conversion));
    }
    return render_conversion_text(conversion, {.columns = report_columns, .scale = scale});
}

} // namespace

int run_convert(const Options& options) {
    Session session(options);
    const WeighingScale scale = session.scale();
    const auto formula = session.read_formula_file(options.arguments.front());
    // Options are read against the formula's own pantry, and reported even where the formula has faults.
    const Pantry& pantry = formula ? *formula->pantry : session.pantry;
    const ConversionRequest request = RequestReader(options, pantry, session).read();
    if (!formula || session.diagnostics.has_errors()) {
        return session.finish();
    }
    const auto conversion = convert(*formula, request, session.diagnostics);
    if (!conversion) {
        return session.finish();
    }
    return session.deliver(report_of(*conversion, session.format(), scale));
}

} // namespace leavenwright
