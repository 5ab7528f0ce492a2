#include "quantity/show.hpp"
#include "render/text_table.hpp"
#include "render/water.hpp"
#include "source/unicode.hpp"
#include "source/wrap_text.hpp"

#include <fmt/core.h>

#include <array>

namespace leavenwright {
namespace {

using Verdict = WaterAnswer::Verdict;

class WaterText {
public:
    WaterText(const WaterSheet& sheet, const TextStyle& style)
        : sheet_(sheet), request_(sheet.plan.request), style_(style), units_(style.scale.units) {}

    std::string text() {
        const std::string dough = "dough at " + shown(request_.dough);
        out_ += wrap_text(sheet_.name.empty() ? dough : printable(sheet_.name, 400) + ", " + dough, "", "  ",
                          style_.columns);
        write_weights();
        write_answers();
        write_notes();
        return std::move(out_);
    }

private:
    std::string shown(Temperature temperature) const { return show_temperature(temperature, units_); }
    std::string shown(TemperatureDifference difference) const {
        return show_temperature_difference(difference, units_);
    }

    std::string shown(Mass mass) const {
        return show_weighed(weigh(std::array{mass}, style_.scale).total, style_.scale);
    }

    void write_weights() {
        TextTable table(style_.columns);
        if (!request_.weights) {
            out_ += "\nmeets in the bowl\n";
            table.add_row({"flour", shown(request_.mix.flour)});
            table.add_row({"room", shown(request_.mix.room)});
            if (request_.mix.preferment) {
                table.add_row({"levain or preferment", shown(*request_.mix.preferment)});
            }
            out_ += table.text();
            return;
        }
        const MixWeights& weights = *request_.weights;
        double capacity = weights.water.value() * water_specific_heat;
        for (const MixPart& part : weights.parts) {
            capacity += part.mass.value() * part.specific_heat;
        }
        const auto add = [&](const std::string& name, Mass mass, double specific_heat,
                             const std::string& at) {
            table.add_row({printable(name, 60), shown(mass), at,
                           show_decimal(100.0 * mass.value() * specific_heat / capacity, 0) + " %"});
        };
        table.add_row({"", "weight", "at", "heat share"});
        for (const MixPart& part : weights.parts) {
            add(part.name, part.mass, part.specific_heat, shown(temperature_of(part.kind, request_.mix)));
        }
        add("water", weights.water, water_specific_heat, "?");
        out_ += "\nmeets in the bowl\n" + table.text();
    }

    std::string answer_cell(const WaterAnswer& answer) const {
        switch (answer.verdict) {
        case Verdict::too_hot:
            return "too hot";
        case Verdict::too_cold:
            return "too cold";
        default:
            return shown(answer.water);
        }
    }

    std::string ice_cell(const WaterAnswer& answer, Fraction IceShare::*share) const {
        if (!answer.ice) {
            return answer.verdict == Verdict::too_cold ? "too cold" : "none";
        }
        const Fraction ice = (*answer.ice).*share;
        return request_.weights ? shown(ice * request_.weights->water)
                                : show_decimal(ice.in_percent(), 1) + " % of it";
    }

    void write_answers() {
        const WaterAnswer& factors = sheet_.plan.by_factors;
        const auto& heat = sheet_.plan.by_heat;
        TextTable table(style_.columns);
        const auto add = [&](const std::string& name, const std::string& left, const std::string& right) {
            std::vector<std::string> cells{name, left};
            if (heat) {
                cells.push_back(right);
            }
            table.add_row(std::move(cells));
        };
        add("", "by factors", "by heat");
        add("friction", shown(factors.friction), heat ? shown(heat->friction) : "");
        add("water", answer_cell(factors), heat ? answer_cell(*heat) : "");
        if (factors.ice || (heat && heat->ice)) {
            add("ice in place of water", ice_cell(factors, &IceShare::instead),
                heat ? ice_cell(*heat, &IceShare::instead) : "");
            add("or ice on top of it", ice_cell(factors, &IceShare::on_top),
                heat ? ice_cell(*heat, &IceShare::on_top) : "");
        }
        out_ += "\nwater\n" + table.text();
    }

    void note(const std::string& text) {
        out_ += wrap_text(printable(text, 2000), "- ", "  ", style_.columns);
    }

    void write_notes() {
        out_ += "\nnotes\n";
        note(factors_note());
        if (sheet_.plan.by_heat) {
            note(heat_note());
        }
        verdict_note("By factors", sheet_.plan.by_factors);
        if (sheet_.plan.by_heat) {
            verdict_note("By heat", *sheet_.plan.by_heat);
            note("The two ways differ, and neither corrects the other. Measure the dough, and log the mix.");
        }
        if (sheet_.plan.by_factors.ice || (sheet_.plan.by_heat && sheet_.plan.by_heat->ice)) {
            note("Ice of " + shown(request_.ice) + ", tap water of " + shown(request_.tap) +
                 ". In place of water, the dough is as wet as before; on top of it, wetter by the ice. Crush "
                 "it: "
                 "lumps outlast the mixing.");
        }
        for (const std::string& text : sheet_.notes) {
            note(text);
        }
    }

    std::string heat_note() const {
        std::string source;
        if (request_.logged) {
            source = ", from the logged mix with these weights";
        } else if (request_.friction) {
            source = fmt::format(", the friction over {} factors", request_.mix.factors());
        }
        return "By heat: weights times specific heats come to one temperature, and mixing warms the dough "
               "by " +
               shown(sheet_.plan.by_heat->friction) + source + ". Bowl and air are left out.";
    }

    std::string factors_note() const {
        const MixTemperatures& mix = request_.mix;
        std::string sum = fmt::format("By factors: {} x {} - {} (flour) - {} (room)", mix.factors(),
                                      shown(request_.dough), shown(mix.flour), shown(mix.room));
        if (mix.preferment) {
            sum += " - " + shown(*mix.preferment) + " (levain or preferment)";
        }
        return sum + " - " + shown(sheet_.plan.by_factors.friction) + " (friction" +
               (request_.logged ? ", from the logged mix" : "") +
               ") = " + shown(sheet_.plan.by_factors.water) + ". Weights play no part in it.";
    }

    void verdict_note(const std::string& way, const WaterAnswer& answer) {
        const std::string water = shown(answer.water);
        switch (answer.verdict) {
        case Verdict::too_hot:
            note(way + " water of " + water + " would be needed; above " + shown(hottest_water()) +
                 " it is too hot for flour and yeast. Warm the flour, or ask for a cooler dough.");
            break;
        case Verdict::too_cold:
            note(way + " not even ice in place of all the water is cold enough. Chill the flour.");
            break;
        case Verdict::hot:
            note(way + " the water has " + water + ": from " + shown(yeast_is_hurt_from()) +
                 " on it hurts yeast and levain that it touches (common practice). Let it meet the flour "
                 "first.");
            break;
        case Verdict::ice:
            if (answer.water < Temperature::celsius(0.0)) {
                note(way + " water of " + water + " is a figure of the calculation: only ice does it.");
            }
            break;
        case Verdict::tap:
            break;
        }
    }

    const WaterSheet& sheet_;
    const WaterRequest& request_;
    const TextStyle& style_;
    UnitSystem units_;
    std::string out_;
};

} // namespace

std::string render_water_text(const WaterSheet& sheet, const TextStyle& style) {
    return WaterText(sheet, style).text();
}

} // namespace leavenwright
