#include "render/water.hpp"
#include "session.hpp"
#include "verbs/verbs.hpp"
#include "water_options.hpp"

namespace leavenwright {

int run_water(const Options& options) {
    Session session(options);
    const WeighingScale scale = session.scale();
    std::optional<Formula> formula;
    if (!options.arguments.empty()) {
        formula = session.read_formula_file(options.arguments.front());
        if (!formula) {
            return session.finish();
        }
    }
    const auto read = read_water_request(options, formula ? &*formula : nullptr, scale, session);
    if (!read) {
        return session.finish();
    }
    const WaterSheet sheet{.name = formula ? formula->name : std::string(),
                           .plan = plan_water(read->request),
                           .notes = read->notes};
    const WaterPlan& plan = sheet.plan;
    if (!plan.by_factors.can_be_done() && !(plan.by_heat && plan.by_heat->can_be_done())) {
        const bool is_hot = plan.by_factors.verdict == WaterAnswer::Verdict::too_hot;
        session.diagnostics.error(Code::water_temperature_unfit, {},
                                  is_hot ? "the water would have to be hotter than 60 C (140 F)"
                                         : "ice in place of all the water would not be cold enough",
                                  is_hot ? "warm the flour, or ask for a cooler dough"
                                         : "chill the flour, or ask for a warmer dough");
        return session.finish();
    }
    return session.deliver(session.format() == "json"
                               ? render_water_json(sheet)
                               : render_water_text(sheet, {.columns = report_columns, .scale = scale}));
}

} // namespace leavenwright
