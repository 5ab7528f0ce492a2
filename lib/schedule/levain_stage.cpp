#include "schedule/levain_stage.hpp"

#include "formula/overall.hpp"

#include <algorithm>

namespace leavenwright {

Fraction whole_grain_of(Fraction fibre) {
    constexpr double white = 0.03;
    constexpr double whole = 0.11;
    return Fraction(std::clamp((fibre.value() - white) / (whole - white), 0.0, 1.0));
}

std::optional<LevainBuild> build_of(const Stage& stage, const Pantry& pantry,
                                    const TemperatureProfile& place) {
    const auto culture = std::find_if(stage.lines.begin(), stage.lines.end(),
                                      [](const Line& line) { return line.ingredient->is_culture(); });
    if (stage.kind != StageKind::levain || culture == stage.lines.end()) {
        return {};
    }
    const Overall contents = add_up(contents_of(stage, pantry), {});
    Mass fresh_flour{};
    Mass fibre{};
    for (const Line& line : stage.lines) {
        if (line.ingredient->is_flour()) {
            fresh_flour += line.mass;
            fibre += line.ingredient->composition.fibre * line.mass;
        }
    }
    if (!(fresh_flour > Mass{})) {
        return {};
    }
    LevainBuild build;
    build.seed = SeedShare::of(culture->mass, fresh_flour);
    build.hydration = contents.hydration_true();
    build.whole_grain = whole_grain_of(Fraction::of(fibre, fresh_flour));
    build.salt = contents.percentage(contents.salt);
    build.mass = stage.mass();
    build.place = place;
    for (const Step& step : stage.process) {
        if (step.verb == "ripen" && step.at) {
            build.place = TemperatureProfile(step.at->value);
        }
    }
    return build;
}

} // namespace leavenwright
