#include "convert/request.hpp"
#include "culture/ripening.hpp"

#include "plan_request.hpp"
#include "quantity/read_quantity.hpp"
#include "render/windows.hpp"
#include "schedule/levain_stage.hpp"
#include "session.hpp"
#include "verbs/verbs.hpp"

namespace leavenwright {
namespace {

Fraction whole_grain_in(const SourcedText& text, Session& session) {
    std::vector<std::string> remarks;
    double fibre = 0.0;
    for (const LevainFlour& flour : read_levain_flour(text, session.pantry, session.diagnostics, remarks)) {
        fibre += flour.share.value() * flour.ingredient->composition.fibre.value();
    }
    return whole_grain_of(Fraction(fibre));
}

LevainBuild read_build(const Options& options, Session& session) {
    LevainBuild build;
    Diagnostics& diagnostics = session.diagnostics;
    if (const auto text = session.option_text("--seed")) {
        build.seed_place = *text;
        if (const auto share = read_percentage(*text, diagnostics)) {
            build.seed = SeedShare(share->value());
        }
    }
    if (const auto text = session.option_text("--levain-hydration")) {
        build.hydration_place = *text;
        if (const auto share = read_percentage(*text, diagnostics)) {
            build.hydration = Hydration(share->value());
        }
    }
    if (const auto text = session.option_text("--salt")) {
        build.salt_place = *text;
        if (const auto share = read_percentage(*text, diagnostics)) {
            build.salt = BakersPercentage(share->value());
        }
    }
    if (const auto text = session.option_text("--flour")) {
        build.whole_grain = whole_grain_in(*text, session);
    }
    if (const auto text = session.option_text("--weight")) {
        build.mass = read_mass(*text, diagnostics).value_or(build.mass);
    }
    const PlanRequest place = read_plan_request(options, text_from("ripen", "ripen"), session);
    build.temperature_place = place.profile_place;
    build.mixed_at = place.mixed_at;
    if (place.profile) {
        build.place = *place.profile;
    } else if (place.at) {
        build.place = TemperatureProfile(*place.at);
    }
    return build;
}

} // namespace

int run_ripen(const Options& options) {
    Session session(options);
    const WeighingScale scale = session.scale();
    const LevainBuild build = read_build(options, session);
    const Ensemble ensemble = read_ensemble(session);
    const auto ripening = session.diagnostics.has_errors()
                              ? std::nullopt
                              : compute_ripening(build, ensemble, session.diagnostics);
    if (!ripening) {
        return session.finish();
    }
    const std::string format = session.format();
    if (format == "csv") {
        return session.deliver(render_curve_csv(ripening->curve));
    }
    const Window sour = compute_souring(build, ensemble);
    return session.deliver(
        format == "json"
            ? render_ripening_json(build, *ripening, sour)
            : render_ripening_text(build, *ripening, sour, {.columns = report_columns, .scale = scale}));
}

} // namespace leavenwright
