#include "convert/convert.hpp"

#include "conversion_request.hpp"
#include "formula/write_formula.hpp"
#include "render/conversion.hpp"
#include "render/windows.hpp"
#include "schedule/dough_plan.hpp"
#include "session.hpp"
#include "source/wrap_text.hpp"
#include "verbs/card.hpp"
#include "verbs/verbs.hpp"

namespace leavenwright {
namespace {

std::string heading_of(const Conversion& conversion) {
    std::string heading = "Written by leavenwright: packaged yeast replaced by a levain.";
    for (const std::string& note : conversion.notes) {
        heading += "\n" + note;
    }
    return heading;
}

// What the engine says of the dough before and after; a dough that it has no answer for says why.
std::string rising_of(const Conversion& conversion, const std::string& path, const TextStyle& style) {
    PlanRequest request;
    request.formula_place = text_from(path, path);
    Diagnostics aside;
    const auto windows = windows_of(conversion.after, request, {}, aside);
    if (!windows) {
        return "\nwhen it is ready\n" +
               wrap_text("not to be said: " + aside.in_order().front().message, "  ", "  ", style.columns);
    }
    const auto written = windows_of(conversion.before, request, {}, aside);
    return render_rising_text(*windows, written ? &*written : nullptr, style);
}

std::string report_of(const Conversion& conversion, const std::string& path, const std::string& format,
                      const WeighingScale& scale, bool is_brief) {
    if (format == "json") {
        return render_conversion_json(conversion);
    }
    if (format == "formula") {
        return write_formula(conversion.after, heading_of(conversion));
    }
    const TextStyle style{.columns = report_columns, .scale = scale};
    return render_conversion_text(conversion, style) +
           (is_brief ? std::string() : rising_of(conversion, path, style));
}

} // namespace

int run_convert(const Options& options) {
    Session session(options);
    const WeighingScale scale = session.scale();
    const auto formula = session.read_formula_file(options.arguments.front());
    // Options are read against the formula's own pantry, and reported even where the formula has faults.
    const Pantry& pantry = formula ? *formula->pantry : session.pantry;
    const ConversionRequest request =
        read_conversion_request(options, options.arguments.front(), pantry, session);
    if (!formula || session.diagnostics.has_errors()) {
        if (formula) {
            check_names(*formula, request, session.diagnostics);
        }
        return session.finish();
    }
    const auto conversion = convert(*formula, request, session.diagnostics);
    if (!conversion) {
        return session.finish();
    }
    const std::string format = session.format();
    return session.deliver(format == "card" ? text_card(conversion->after, &*conversion, options, session)
                                            : report_of(*conversion, options.arguments.front(), format, scale,
                                                        options.has("--brief")));
}

} // namespace leavenwright
