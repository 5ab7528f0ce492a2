#include "convert/convert.hpp"

#include "conversion_request.hpp"
#include "formula/write_formula.hpp"
#include "render/conversion.hpp"
#include "session.hpp"
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
    const ConversionRequest request =
        read_conversion_request(options, options.arguments.front(), pantry, session);
    if (!formula || session.diagnostics.has_errors()) {
        return session.finish();
    }
    const auto conversion = convert(*formula, request, session.diagnostics);
    if (!conversion) {
        return session.finish();
    }
    const std::string format = session.format();
    return session.deliver(format == "card" ? text_card(conversion->after, &*conversion, session)
                                            : report_of(*conversion, format, scale));
}

} // namespace leavenwright
