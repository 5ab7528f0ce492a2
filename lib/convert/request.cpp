#include "convert/request.hpp"

#include "formula/overall.hpp"
#include "pantry/resolve_ingredient.hpp"
#include "quantity/read_quantity.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace leavenwright {
namespace {

std::string wet_names(const Overall& overall) {
    std::string names;
    for (const Line& line : overall.lines) {
        if (line.ingredient->can_give_water() && !line.ingredient->is_water()) {
            names += (names.empty() ? "what the dough has: " : ", ") + line.name;
        }
    }
    return names.empty() ? "the dough has nothing beside plain water that could; leave --water-from out"
                         : names;
}

std::string stage_names(const Formula& formula) {
    std::string names;
    for (const Stage& stage : formula.stages) {
        names += (names.empty() ? "its stages: " : ", ") + stage.name;
    }
    return names.empty() ? "it has no stages; leave --keep out" : names;
}

void check_keep(const Formula& formula, const ConversionRequest& request, Diagnostics& diagnostics) {
    for (std::size_t i = 0; i < request.keep.size(); ++i) {
        const std::string& name = request.keep[i];
        const SourcedText place = i < request.keep_places.size() ? request.keep_places[i] : SourcedText{};
        const Stage* stage = formula.find_stage(name);
        if (stage == nullptr) {
            diagnostics.error(Code::stage_unknown, place, "the formula has no stage " + in_quotes(name),
                              stage_names(formula));
        } else if (stage->kind == StageKind::levain) {
            diagnostics.error(Code::keep_refused, place,
                              in_quotes(name) + " is a levain already; the new levain takes its place",
                              "leave --keep out; its flour and water are counted");
        }
    }
}

void check_water_from(const std::vector<Line>& dough, const ConversionRequest& request,
                      Diagnostics& diagnostics) {
    const Overall overall = add_up(dough, {});
    for (const Ingredient* ingredient : request.water_from) {
        const bool is_there = overall.mass_of(*ingredient).value() > 0.0;
        if (!is_there || !ingredient->can_give_water()) {
            diagnostics.error(Code::water_source_unfit, request.water_from_place,
                              in_quotes(ingredient->name) +
                                  (is_there ? " holds no water to give up" : " is not in the dough"),
                              wet_names(overall));
        }
    }
}

} // namespace

bool check_request(const Formula& formula, const std::vector<Line>& dough, const ConversionRequest& request,
                   Diagnostics& diagnostics) {
    const std::size_t errors_before = diagnostics.error_count();
    check_keep(formula, request, diagnostics);
    check_water_from(dough, request, diagnostics);
    return diagnostics.error_count() == errors_before;
}

std::vector<SourcedText> split_list(const SourcedText& text) {
    std::vector<SourcedText> parts;
    std::size_t at = 0;
    while (at <= text.text.size()) {
        const std::size_t end = std::min(text.text.find(',', at), text.text.size());
        const SourcedText part = trimmed(text.part(at, end - at));
        if (!part.text.empty()) {
            parts.push_back(part);
        }
        at = end + 1;
    }
    return parts;
}

namespace {

struct NamedShare {
    SourcedText name; // empty where nothing but a share is given
    std::optional<SourcedText> percentage;
};

// "rye flour 50 %" or "50% rye flour", but no name that begins so.
NamedShare split_share(const SourcedText& part, const Pantry& pantry) {
    const std::string_view text = part.text;
    if (text.back() == '%') {
        const std::size_t space = text.rfind(' ', text.find_last_not_of(" %"));
        return space == std::string_view::npos ? NamedShare{.name = {}, .percentage = part}
                                               : NamedShare{.name = trimmed(part.part(0, space)),
                                                            .percentage = part.part(space, text.size())};
    }
    const std::size_t sign = text.find_first_not_of("0123456789. ");
    const bool is_share_first =
        sign != std::string_view::npos && text[sign] == '%' && pantry.find(text).ingredient == nullptr;
    return is_share_first ? NamedShare{.name = trimmed(part.part(sign + 1, text.size())),
                                       .percentage = part.part(0, sign + 1)}
                          : NamedShare{.name = part, .percentage = std::nullopt};
}

} // namespace

std::vector<LevainFlour> read_levain_flour(const SourcedText& text, const Pantry& pantry,
                                           Diagnostics& diagnostics, std::vector<std::string>& remarks) {
    constexpr double sum_slack = 1e-6;
    const std::vector<SourcedText> parts = split_list(text);
    std::vector<LevainFlour> flours;
    double sum = 0.0;
    const std::size_t errors_before = diagnostics.error_count();
    for (const SourcedText& part : parts) {
        const auto [name, percentage] = split_share(part, pantry);
        if (name.text.empty()) {
            diagnostics.error(Code::levain_flour_unfit, part, in_quotes(part.text) + " names no flour",
                              "write the flour, then its share: rye flour 50%");
            continue;
        }
        const Ingredient* ingredient = resolve_ingredient(name, pantry, diagnostics, remarks);
        double share = 1.0;
        if (percentage) {
            const auto read = read_percentage(*percentage, diagnostics);
            share = read ? read->value() : 0.0;
        } else if (parts.size() > 1) {
            diagnostics.error(Code::unit_missing, part,
                              in_quotes(part.text) + " has no share of the levain's flour",
                              "write the flour, then its share: rye flour 50%");
            continue;
        }
        sum += share;
        if (ingredient != nullptr && !ingredient->is_flour()) {
            diagnostics.error(Code::levain_flour_unfit, name, in_quotes(name.text) + " is no flour",
                              "a levain is made of flours of the pantry's class 'flour'");
        } else if (ingredient != nullptr) {
            const auto same = std::find_if(flours.begin(), flours.end(), [&](const LevainFlour& flour) {
                return flour.ingredient == ingredient;
            });
            if (same != flours.end()) {
                same->share = Fraction(same->share.value() + share);
            } else {
                flours.push_back(
                    {.name = std::string(name.text), .ingredient = ingredient, .share = Fraction(share)});
            }
        }
    }
    if (diagnostics.error_count() == errors_before && std::abs(sum - 1.0) > sum_slack) {
        diagnostics.error(Code::levain_flour_sum, text,
                          fmt::format("the flours of the levain add up to {:.6g} %", sum * 100.0),
                          "write shares that add up to 100 %");
    }
    return flours;
}

std::vector<const Ingredient*> read_ingredient_list(const SourcedText& text, const Pantry& pantry,
                                                    Diagnostics& diagnostics) {
    std::vector<const Ingredient*> ingredients;
    std::vector<std::string> remarks;
    for (const SourcedText& part : split_list(text)) {
        if (const Ingredient* ingredient = resolve_ingredient(part, pantry, diagnostics, remarks)) {
            ingredients.push_back(ingredient);
        }
    }
    return ingredients;
}

} // namespace leavenwright
