#include "verbs/convert.hpp"

#include "convert/convert.hpp"
#include "formula/read_formula.hpp"
#include "formula/write_formula.hpp"
#include "quantity/read_quantity.hpp"
#include "render/conversion.hpp"
#include "session.hpp"

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
std::string command_of(const ConvertOptions& options) {
    std::string command = "leavenwright convert " + shell_word(options.formula);
    const auto add = [&](const std::string& option, const std::optional<std::string>& value) {
        command += value ? " " + option + " " + shell_word(*value) : "";
    };
    add("--levain-flour", options.levain_flour);
    for (const std::string& stage : options.keep) {
        add("--keep", stage);
    }
    add("--water-from", options.water_from);
    command += options.keep_blend ? " --keep-blend" : "";
    command += options.dry_milk ? " --dry-milk" : "";
    for (const std::string& file : options.pantry_files) {
        add("--pantry", file);
    }
    return command;
}

class RequestReader {
public:
    RequestReader(const ConvertOptions& options, const Pantry& pantry, Session& session)
        : options_(options), pantry_(pantry), session_(session) {}

    ConversionRequest read() {
        read_inoculation<PrefermentedFlour>("--prefermented-flour", options_.prefermented_flour);
        read_inoculation<LevainOnTotalFlour>("--levain-on-total-flour", options_.levain_on_total_flour);
        read_inoculation<LevainOnDoughFlour>("--levain-on-dough-flour", options_.levain_on_dough_flour);
        if (options_.levain_hydration) {
            const SourcedText text = session_.option_text("--levain-hydration", *options_.levain_hydration);
            if (const auto hydration = read_percentage(text, session_.diagnostics)) {
                request_.levain_hydration = Hydration(hydration->value());
            }
            if (!request_.inoculation_place.source) {
                request_.inoculation_place = text;
            }
        }
        if (options_.levain_flour) {
            request_.levain_flour_place = session_.option_text("--levain-flour", *options_.levain_flour);
            request_.levain_flour =
                read_levain_flour(request_.levain_flour_place, pantry_, session_.diagnostics);
        }
        if (options_.water_from) {
            request_.water_from_place = session_.option_text("--water-from", *options_.water_from);
            request_.water_from =
                read_ingredient_list(request_.water_from_place, pantry_, session_.diagnostics);
        }
        if (!options_.keep.empty()) {
            request_.keep = options_.keep;
            request_.keep_place = session_.option_text("--keep", options_.keep.front());
        }
        request_.keep_blend = options_.keep_blend;
        request_.dry_milk = options_.dry_milk;
        request_.command = command_of(options_);
        return request_;
    }

private:
    template <class Share>
    void read_inoculation(const std::string& option, const std::optional<std::string>& value) {
        if (!value) {
            return;
        }
        request_.inoculation_place = session_.option_text(option, *value);
        if (const auto share = read_percentage(request_.inoculation_place, session_.diagnostics)) {
            request_.inoculation = Share(share->value());
        }
    }

    const ConvertOptions& options_;
    const Pantry& pantry_;
    Session& session_;
    ConversionRequest request_;
};

WeighingScale scale_of(const ConvertOptions& options, Session& session) {
    WeighingScale scale = usual_scale(options.units == "us" ? UnitSystem::us : UnitSystem::metric);
    if (options.weigh_to) {
        const auto step =
            read_mass(session.option_text("--weigh-to", *options.weigh_to), session.diagnostics);
        scale.step = step.value_or(scale.step);
    }
    return scale;
}

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

int run_convert(const ConvertOptions& options) {
    Session session;
    session.add_pantry_files(options.pantry_files);
    const WeighingScale scale = scale_of(options, session);
    const SourceHandle source = session.read(options.formula);
    const auto formula = source ? read_formula(source, session.pantry, session.diagnostics) : std::nullopt;
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
    return session.deliver(options.output, report_of(*conversion, format_of(options.output), scale));
}

} // namespace leavenwright
