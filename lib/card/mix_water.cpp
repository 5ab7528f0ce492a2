#include "card/mix_water.hpp"

#include "quantity/show.hpp"
#include "source/unicode.hpp"

#include <array>

namespace leavenwright {
namespace {

constexpr std::size_t longest_name = 60; // display columns

class MixWaterWords {
public:
    MixWaterWords(const WaterPlan& plan, const WeighingScale& scale)
        : plan_(plan), request_(plan.request), scale_(scale) {}

    std::string words() const {
        std::string text = "by factors " + answer(plan_.by_factors);
        if (plan_.by_heat) {
            text += "; by heat " + answer(*plan_.by_heat);
        }
        return text + "; for a dough of " + shown(request_.dough) + " (" + assumed() + ")";
    }

private:
    std::string shown(Temperature temperature) const { return show_temperature(temperature, scale_.units); }

    std::string answer(const WaterAnswer& answer) const {
        switch (answer.verdict) {
        case WaterAnswer::Verdict::too_hot:
            return "too hot to use: warm the flour";
        case WaterAnswer::Verdict::too_cold:
            return "colder than ice can do: chill the flour";
        case WaterAnswer::Verdict::hot:
            return shown(answer.water) + " (it hurts yeast and levain that it touches)";
        case WaterAnswer::Verdict::ice:
            return answer.ice ? ice(answer) : shown(answer.water);
        case WaterAnswer::Verdict::tap:
            break;
        }
        return shown(answer.water);
    }

    // Below 0 °C it is a figure of the calculation, and the ice says it all.
    std::string ice(const WaterAnswer& answer) const {
        const std::string ice = request_.weights ? shown_mass(answer.ice->instead * request_.weights->water)
                                                 : show_percent(answer.ice->instead.value());
        const bool is_water = answer.water >= Temperature::celsius(0.0);
        return (is_water ? shown(answer.water) + ", or " : "") + ice +
               " of it as ice, the rest from the tap at " + shown(request_.tap);
    }

    std::string shown_mass(Mass mass) const {
        return show_weighed(weigh(std::array{mass}, scale_).total, scale_);
    }

    // By its own name where there is one of them.
    std::string preferment() const {
        std::string name;
        for (const MixPart& part : request_.weights ? request_.weights->parts : std::vector<MixPart>()) {
            if (part.kind == MixPart::Kind::preferment) {
                name = name.empty() ? printable(part.name, longest_name) : "preferments";
            }
        }
        return name.empty() ? "levain or preferment" : name;
    }

    std::string assumed() const {
        const MixTemperatures& mix = request_.mix;
        std::string text = "flour " + shown(mix.flour) + ", room " + shown(mix.room);
        text += mix.preferment ? ", " + preferment() + " " + shown(*mix.preferment) : "";
        text += mix.others ? ", other ingredients " + shown(*mix.others) : "";
        if (!request_.friction && !request_.logged) {
            return text + ", no friction counted";
        }
        return text + ", friction " + show_temperature_difference(plan_.by_factors.friction, scale_.units) +
               (request_.logged ? " from the logged mix" : "");
    }

    const WaterPlan& plan_;
    const WaterRequest& request_;
    const WeighingScale& scale_;
};

} // namespace

std::string describe_mix_water(const WaterPlan& plan, const WeighingScale& scale) {
    return MixWaterWords(plan, scale).words();
}

} // namespace leavenwright
