#include "formula/scale.hpp"

#include "formula/read_scale_target.hpp"
#include "formula/write_formula.hpp"
#include "render/scaled.hpp"
#include "session.hpp"
#include "verbs/card.hpp"
#include "verbs/verbs.hpp"

namespace leavenwright {
namespace {

WrittenScaleTarget written_target(const Session& session) {
    return {.dough = session.option_text("--dough"),
            .pieces = session.option_text("--pieces"),
            .flour = session.option_text("--flour"),
            .baked = session.option_text("--baked"),
            .pan_volume = session.option_text("--pan-volume"),
            .pan_area = session.option_text("--pan-area"),
            .factor = session.option_text("--by"),
            .loss = session.option_text("--loss"),
            .fill = session.option_text("--fill")};
}

std::string report_of(const ScaledFormula& scaled, const std::string& format, const WeighingScale& scale) {
    if (format == "json") {
        return render_scaled_json(scaled);
    }
    if (format == "formula") {
        std::string heading = "Written by leavenwright: brought to another size.";
        for (const std::string& note : scaled.notes) {
            heading += "\n" + note;
        }
        return write_formula(scaled.formula, heading);
    }
    return render_scaled_text(scaled, {.columns = report_columns, .scale = scale});
}

// A card shows what a formula remarks.
Formula scaled_for_card(const ScaledFormula& scaled) {
    Formula formula = scaled.formula;
    formula.remarks.insert(formula.remarks.end(), scaled.notes.begin(), scaled.notes.end());
    return formula;
}

} // namespace

int run_scale(const Options& options) {
    Session session(options);
    const WeighingScale scale = session.scale();
    const auto target = read_scale_target(written_target(session), session.diagnostics);
    const auto formula = session.read_formula_file(options.arguments.front());
    if (!formula || !target || session.diagnostics.has_errors()) {
        return session.finish();
    }
    const ScaledFormula scaled = scale_formula(*formula, *target, options.has("--whole-eggs"));
    if (scaled.formula.dough_mass() > largest_dough()) {
        session.diagnostics.error(Code::scale_target_unfit, {}, "the dough would weigh more than 500 t",
                                  "ask for less");
        return session.finish();
    }
    const std::string format = session.format();
    return session.deliver(format == "card" ? text_card(scaled_for_card(scaled), nullptr, options, session)
                                            : report_of(scaled, format, scale));
}

} // namespace leavenwright
