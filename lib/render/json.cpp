// All JSON that is written; the only user of nlohmann/json.
#include "quantity/number.hpp"
#include "render/card.hpp"
#include "render/comparison.hpp"
#include "render/conversion.hpp"
#include "render/diagnostics_json.hpp"
#include "render/scaled.hpp"
#include "render/transcription.hpp"
#include "render/water.hpp"
#include "render/windows.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <initializer_list>
#include <string_view>
#include <utility>

namespace leavenwright {
namespace {

using Json = nlohmann::ordered_json;

// nlohmann's own lists of members make a list of two for each member first: three times the work.
struct Member {
    std::string_view key;
    mutable Json value; // moved out of its list
};

Json object_of(std::initializer_list<Member> members) {
    Json::object_t object;
    object.reserve(members.size());
    for (const Member& member : members) {
        object.emplace_back(std::string(member.key), std::move(member.value));
    }
    return object;
}

template <class Range, class Make>
Json list_of(const Range& range, Make make) {
    Json list = Json::array();
    for (const auto& item : range) {
        list.push_back(make(item));
    }
    return list;
}

// Ratios of dust-free masses are good to two digits less.
constexpr int ratio_digits = 13;

double ratio_of(double ratio) {
    return without_dust(ratio, ratio_digits);
}

double grams_of(Mass mass) {
    return exact_shift(without_dust(mass.value()), 3);
}

double percent_of(BakersPercentage percentage) {
    return exact_shift(without_dust(percentage.value(), ratio_digits), 2);
}

// Nothing where only the last digits of sums differ.
double difference_of(const BalanceRow& row) {
    constexpr double dust = 1e-12;
    const bool is_dust = std::abs(row.difference().value()) <= dust * std::max(row.before, row.after).value();
    return is_dust ? 0.0 : without_dust(grams_of(row.after) - grams_of(row.before), ratio_digits);
}

Json overall_json(const Overall& overall) {
    Json flours = Json::object();
    for (const Line& flour : overall.flours()) {
        flours[flour.name] = grams_of(flour.mass);
    }
    return object_of({{"total_flour_g", grams_of(overall.total_flour)},
                      {"flours", std::move(flours)},
                      {"added_water_g", grams_of(overall.added_water)},
                      {"true_water_g", grams_of(overall.true_water)},
                      {"salt_g", grams_of(overall.salt)},
                      {"sugar_g", grams_of(overall.sugar)},
                      {"fat_g", grams_of(overall.fat)},
                      {"dough_g", grams_of(overall.total)},
                      {"hydration_added", ratio_of(overall.hydration_added().value())},
                      {"hydration_true", ratio_of(overall.hydration_true().value())},
                      {"hydration_true_uncertainty", overall.hydration_uncertainty().value()}});
}

Json line_json(const std::string& name, Mass mass, const Overall& overall) {
    return object_of({{"ingredient", name},
                      {"weight_g", grams_of(mass)},
                      {"percent", percent_of(overall.percentage(mass))}});
}

Json lines_json(const std::vector<Line>& lines, const Overall& overall) {
    return list_of(lines, [&](const Line& line) { return line_json(line.name, line.mass, overall); });
}

Json levain_json(const Levain& levain, const Overall& overall) {
    // JSON has no infinity: null where no flour is added at mixing.
    const double on_dough = levain.on_dough_flour.value();
    return object_of({{"weight_g", grams_of(levain.mass())},
                      {"flour_g", grams_of(levain.flour)},
                      {"water_g", grams_of(levain.water)},
                      {"hydration", ratio_of(levain.hydration.value())},
                      {"prefermented_flour", ratio_of(levain.prefermented_flour.value())},
                      {"on_total_flour", ratio_of(levain.on_total_flour.value())},
                      {"on_dough_flour", std::isfinite(on_dough) ? Json(ratio_of(on_dough)) : Json(nullptr)},
                      {"ingredients", lines_json(levain.lines, overall)}});
}

Json dough_json(const Formula& formula, const Overall& overall) {
    Json dough = Json::array();
    for (const Stage& stage : formula.stages) {
        dough.push_back(line_json(stage.name, stage.used, overall));
    }
    for (const Line& line : formula.dough) {
        dough.push_back(line_json(line.name, line.mass, overall));
    }
    return dough;
}

Json stages_json(const Formula& formula, const Overall& overall) {
    return list_of(formula.stages, [&](const Stage& stage) {
        return object_of({{"name", stage.name},
                          {"kind", name_of(stage.kind)},
                          {"weight_g", grams_of(stage.mass())},
                          {"used_g", grams_of(stage.used)},
                          {"ingredients", lines_json(stage.lines, overall)}});
    });
}

// Text that is not UTF-8 (a file name, say) is shown with replacement characters.
std::string written(const Json& json) {
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

Json diagnostics_list(const Diagnostics& diagnostics) {
    Json list = Json::array();
    for (const Diagnostic& item : diagnostics.in_order()) {
        const SourcePosition position =
            item.source ? item.source->position(item.span.offset) : SourcePosition{};
        Json notes = Json::array();
        for (const Diagnostic::Note& note : item.notes) {
            const SourcePosition place =
                item.source ? item.source->position(note.span.offset) : SourcePosition{};
            notes.push_back(
                object_of({{"message", note.message}, {"line", place.line}, {"column", place.column}}));
        }
        list.push_back(object_of({{"file", item.source ? item.source->name() : std::string()},
                                  {"line", position.line},
                                  {"column", position.column},
                                  {"offset", item.span.offset},
                                  {"length", item.span.length},
                                  {"severity", item.severity == Severity::error ? "error" : "warning"},
                                  {"code", name_of(item.code)},
                                  {"message", item.message},
                                  {"hint", item.hint},
                                  {"notes", std::move(notes)}}));
    }
    return list;
}

// Hours to a second's part; nothing where it is never reached.
Json hours_json(Duration time) {
    return is_reached(time) ? Json(std::round(time.value() / 3.6) / 1000.0) : Json();
}

double rounded(double value, double step) {
    return without_dust(std::round(value / step) * step, ratio_digits);
}

Json window_json(const Window& window) {
    return object_of({{"earliest_h", hours_json(window.earliest)},
                      {"likely_h", hours_json(window.likely)},
                      {"latest_h", hours_json(window.latest)}});
}

Json stage_json(const StageWindow& stage) {
    Json json = object_of({{"stage", stage.stage}});
    json.update(window_json(stage.in_stage));
    json["temperature_c"] = rounded(stage.surroundings.in_celsius(), 0.01);
    json["dough_c"] = rounded(stage.dough.in_celsius(), 0.01);
    json["after_mixing"] = window_json(stage.after_mixing);
    json["by_clock"] = stage.by_clock;
    json["rise"] = stage.rise ? Json(rounded(stage.rise->value(), 1e-4)) : Json();
    json["rise_at_end"] = object_of({{"low", rounded(stage.rise_at_end.low.value(), 1e-4)},
                                     {"likely", rounded(stage.rise_at_end.likely.value(), 1e-4)},
                                     {"high", rounded(stage.rise_at_end.high.value(), 1e-4)}});
    json["written"] = stage.written;
    json["signs"] = stage.signs;
    json["past"] = stage.past;
    return json;
}

Json stages_json(const Windows& windows) {
    return list_of(windows.stages, stage_json);
}

Json answer_json(const Answer& answer) {
    Json json = object_of({{"sentence", answer.sentence}});
    if (answer.inoculation) {
        json["prefermented_flour"] = rounded(answer.inoculation->value(), 1e-4);
    }
    if (answer.temperature) {
        json["temperature_c"] = rounded(answer.temperature->in_celsius(), 0.01);
    }
    if (answer.retard) {
        json["retard_h"] = hours_json(*answer.retard);
    }
    return json;
}

Json curve_json(const std::vector<CurvePoint>& curve) {
    return list_of(curve, [&](const CurvePoint& point) {
        return object_of({{"time_h", hours_json(point.time)},
                          {"rise_low", rounded(point.rise_low.value(), 1e-4)},
                          {"rise_likely", rounded(point.rise_likely.value(), 1e-4)},
                          {"rise_high", rounded(point.rise_high.value(), 1e-4)},
                          {"ph", rounded(point.ph, 1e-3)},
                          {"acid_mmol_per_kg", rounded(point.acid_mmol_per_kg, 0.01)},
                          {"gas_dissolved", rounded(point.gas_dissolved.value(), 1e-4)},
                          {"surroundings_c", rounded(point.surroundings.in_celsius(), 0.01)},
                          {"dough_c", rounded(point.dough.in_celsius(), 0.01)}});
    });
}

Json card_row_json(const CardRow& row) {
    return object_of({{"name", row.name},
                      {"weight_g", grams_of(row.mass)},
                      {"weight", row.weight},
                      {"percent", row.percent}});
}

Json card_rows_json(const std::vector<CardRow>& rows) {
    return list_of(rows, card_row_json);
}

Json card_columns_json(const Card& card) {
    return list_of(card.columns, [&](const CardColumn& column) {
        return object_of({{"name", column.name},
                          {"when", column.when},
                          {"rows", card_rows_json(column.rows)},
                          {"total", card_row_json(column.total)},
                          {"below", card_rows_json(column.below)}});
    });
}

Json card_times_json(const Card& card) {
    Json steps = list_of(card.steps, [&](const CardStep& step) {
        return object_of({{"name", step.name}, {"clock", step.clock}, {"detail", step.detail}});
    });
    Json windows = list_of(card.windows, [&](const CardWindow& window) {
        return object_of({{"name", window.name},
                          {"likely", window.likely},
                          {"range", window.range},
                          {"clock", window.clock},
                          {"signs", window.signs},
                          {"past", window.past}});
    });
    Json points = list_of(card.curve, [&](const CardCurvePoint& point) {
        return object_of({{"hours", point.hours},
                          {"rise_low", point.rise_low},
                          {"rise_likely", point.rise_likely},
                          {"rise_high", point.rise_high},
                          {"dough", point.dough},
                          {"surroundings", point.surroundings}});
    });
    return object_of({{"steps", std::move(steps)},
                      {"windows", std::move(windows)},
                      {"temperature_unit", card.temperature_unit},
                      {"curve", std::move(points)},
                      {"settings", card.settings}});
}

Json card_figures_json(const std::vector<CardFigure>& figures) {
    return list_of(figures, [&](const CardFigure& figure) {
        return object_of({{"name", figure.name},
                          {"before", figure.before},
                          {"after", figure.after},
                          {"difference", figure.difference}});
    });
}

Json card_json(const Card& card) {
    Json json = object_of({{"title", card.title},
                           {"makes", card.makes},
                           {"date", card.date},
                           {"levain", card.levain},
                           {"water_temperature", card.water_temperature},
                           {"columns", card_columns_json(card)},
                           {"as_weighed", card.as_weighed}});
    json.update(card_times_json(card));
    json.update(object_of({{"side_by_side", card_figures_json(card.side_by_side)},
                           {"balance", card_figures_json(card.balance)},
                           {"reasons", card.reasons},
                           {"eu_allergens", card.eu_allergens},
                           {"us_allergens", card.us_allergens},
                           {"cautions", card.cautions},
                           {"notes", card.notes},
                           {"version", card.version}}));
    return json;
}

// Null where nothing is known.
template <class Value>
Json known(const std::optional<Value>& value) {
    return value ? Json(*value) : Json(nullptr);
}

Json transcribed_json(const IngredientLine& line) {
    const auto weight_of = [&](Mass WeightRange::*part) {
        return line.weight ? Json(exact_shift(without_dust(((*line.weight).*part).value(), 12), 3))
                           : Json(nullptr);
    };
    return object_of({{"text", line.text},
                      {"ingredient", line.ingredient != nullptr ? line.key : line.name},
                      {"known", line.ingredient != nullptr},
                      {"amount", known(line.number)},
                      {"unit", line.unit},
                      {"weight_g", weight_of(&WeightRange::likely)},
                      {"low_g", weight_of(&WeightRange::least)},
                      {"high_g", weight_of(&WeightRange::most)},
                      {"sure", line.is_sure},
                      {"role", line.role}});
}

} // namespace

std::string render_cards_json(std::span<const Card> cards, Paper paper) {
    Json list = list_of(cards, card_json);
    return written(object_of({{"schema", "leavenwright/cards/1"},
                              {"paper", paper == Paper::letter ? "letter" : "a4"},
                              {"cards", std::move(list)}}));
}

std::string render_diagnostics_json(const Diagnostics& diagnostics) {
    Json list = diagnostics_list(diagnostics);
    const auto errors =
        std::count_if(list.begin(), list.end(), [](const Json& item) { return item["severity"] == "error"; });
    const auto all = static_cast<std::ptrdiff_t>(list.size());
    return written(object_of({{"schema", "leavenwright/diagnostics/1"},
                              {"errors", errors},
                              {"warnings", all - errors},
                              {"diagnostics", std::move(list)}}));
}

namespace {

double celsius_of(Temperature temperature) {
    return without_dust(temperature.in_celsius(), ratio_digits);
}

double kelvins_of(TemperatureDifference difference) {
    return without_dust(difference.value(), ratio_digits);
}

Json optional_celsius(const std::optional<Temperature>& temperature) {
    return temperature ? Json(celsius_of(*temperature)) : Json(nullptr);
}

Json ice_json(const IceShare& ice, const WaterRequest& request) {
    Json json = object_of({{"at_c", celsius_of(request.ice)},
                           {"in_place_of_water", ratio_of(ice.instead.value())},
                           {"on_top_of_water", ratio_of(ice.on_top.value())}});
    if (request.weights) {
        json["in_place_of_water_g"] = grams_of(ice.instead * request.weights->water);
        json["on_top_of_water_g"] = grams_of(ice.on_top * request.weights->water);
    }
    return json;
}

Json answer_json(const WaterAnswer& answer, std::string_view friction_name, const WaterRequest& request) {
    return object_of({{friction_name, kelvins_of(answer.friction)},
                      {"water_c", celsius_of(answer.water)},
                      {"verdict", name_of(answer.verdict)},
                      {"ice", answer.ice ? ice_json(*answer.ice, request) : Json(nullptr)}});
}

Json parts_json(const WaterRequest& request) {
    return list_of(request.weights->parts, [&](const MixPart& part) {
        return object_of({{"name", part.name},
                          {"weight_g", grams_of(part.mass)},
                          {"specific_heat_j_per_kg_k", ratio_of(part.specific_heat)},
                          {"at_c", celsius_of(temperature_of(part.kind, request.mix))}});
    });
}

} // namespace

std::string render_water_json(const WaterSheet& sheet) {
    const WaterRequest& request = sheet.plan.request;
    Json factors = answer_json(sheet.plan.by_factors, "friction_k", request);
    factors["factors"] = request.mix.factors();
    Json heat = nullptr;
    if (sheet.plan.by_heat) {
        heat = answer_json(*sheet.plan.by_heat, "rise_k", request);
        heat["water_g"] = grams_of(request.weights->water);
        heat["parts"] = parts_json(request);
    }
    return written(object_of({{"schema", "leavenwright/water/1"},
                              {"name", sheet.name},
                              {"dough_c", celsius_of(request.dough)},
                              {"flour_c", celsius_of(request.mix.flour)},
                              {"room_c", celsius_of(request.mix.room)},
                              {"preferment_c", optional_celsius(request.mix.preferment)},
                              {"tap_c", celsius_of(request.tap)},
                              {"by_factors", std::move(factors)},
                              {"by_heat", std::move(heat)},
                              {"notes", sheet.notes}}));
}

std::string render_scaled_json(const ScaledFormula& scaled) {
    const Overall overall = compute_overall(scaled.formula);
    return written(object_of({{"schema", "leavenwright/scaled/1"},
                              {"name", scaled.formula.name},
                              {"factor", scaled.factor},
                              {"overall", overall_json(overall)},
                              {"dough", dough_json(scaled.formula, overall)},
                              {"stages", stages_json(scaled.formula, overall)},
                              {"notes", scaled.notes}}));
}

std::string render_comparison_json(const Comparison& comparison) {
    Json differences = Json::array();
    for (const ComparedRatio& ratio : comparison.hydrations) {
        if (ratio.moved) {
            differences.push_back(object_of({{"quantity", ratio.name},
                                             {"before", ratio_of(ratio.before)},
                                             {"after", ratio_of(ratio.after)},
                                             {"unit", "ratio"}}));
        }
    }
    const auto mass_json = [](const ComparedMass& mass) {
        return object_of({{"quantity", mass.name},
                          {"before", grams_of(mass.before)},
                          {"after", grams_of(mass.after)},
                          {"unit", "g"}});
    };
    for (const ComparedMass& mass : comparison.masses) {
        if (mass.moved) {
            differences.push_back(mass_json(mass));
        }
    }
    Json quantities = Json::array();
    for (const ComparedRatio& ratio : comparison.hydrations) {
        quantities.push_back(object_of({{"quantity", ratio.name},
                                        {"before", ratio_of(ratio.before)},
                                        {"after", ratio_of(ratio.after)},
                                        {"unit", "ratio"}}));
    }
    for (const ComparedMass& mass : comparison.masses) {
        quantities.push_back(mass_json(mass));
    }
    Json yeast = list_of(comparison.yeast, mass_json);
    return written(object_of({{"schema", "leavenwright/comparison/1"},
                              {"unchanged", comparison.unchanged()},
                              {"differences", std::move(differences)},
                              {"quantities", std::move(quantities)},
                              {"yeast", std::move(yeast)},
                              {"scaled_by", comparison.scaled_by}}));
}

std::string render_overall_json(const Formula& formula, const Overall& overall, const Diagnostics& findings) {
    return written(object_of({{"schema", "leavenwright/check/1"},
                              {"name", formula.name},
                              {"notation", formula.notation == Notation::dough ? "dough" : "overall"},
                              {"overall", overall_json(overall)},
                              {"ingredients", lines_json(overall.lines, overall)},
                              {"findings", diagnostics_list(findings)},
                              {"notes", formula.remarks}}));
}

std::string render_conversion_json(const Conversion& conversion) {
    const Overall& after = conversion.overall_after;
    Json removed = list_of(conversion.removed, [&](const Removed& item) {
        return object_of({{"ingredient", item.name},
                          {"weight_g", grams_of(item.mass)},
                          {"water_g", grams_of(item.water)}});
    });
    Json balance = list_of(conversion.balance, [&](const BalanceRow& row) {
        return object_of({{"quantity", row.name},
                          {"before_g", grams_of(row.before)},
                          {"after_g", grams_of(row.after)},
                          {"difference_g", difference_of(row)},
                          {"meant", row.meant}});
    });
    return written(object_of({{"schema", "leavenwright/conversion/1"},
                              {"name", conversion.after.name},
                              {"scaled_by", conversion.scaled_by},
                              {"before", overall_json(conversion.overall_before)},
                              {"after", overall_json(after)},
                              {"levain", levain_json(conversion.levain, after)},
                              {"dough", dough_json(conversion.after, after)},
                              {"stages", stages_json(conversion.after, after)},
                              {"removed", std::move(removed)},
                              {"balance", std::move(balance)},
                              {"notes", conversion.notes}}));
}

std::string render_proof_json(const ProofReport& report) {
    Json json = object_of({{"schema", "leavenwright/proof/1"},
                           {"name", report.name},
                           {"raised_by", report.raised_by},
                           {"stages", stages_json(report.windows)},
                           {"curves", curve_json(report.windows.curve)},
                           {"members", report.windows.members},
                           {"draw", report.windows.seed},
                           {"settings", report.windows.settings},
                           {"cautions", report.windows.cautions}});
    if (report.answer) {
        json["answer"] = answer_json(*report.answer);
    }
    json["as_written"] =
        report.as_written ? object_of({{"stages", stages_json(*report.as_written)}}) : Json();
    return written(json);
}

std::string render_ripening_json(const LevainBuild& build, const Ripening& ripening, const Window& sour) {
    Json json = object_of({{"schema", "leavenwright/ripening/1"},
                           {"seed_on_fresh_flour", ratio_of(build.seed.value())},
                           {"levain_hydration", ratio_of(build.hydration.value())},
                           {"temperature_c", rounded(build.place.at(seconds(0.0)).in_celsius(), 0.01)}});
    json.update(window_json(ripening.ripe.in_stage));
    json["ripe_for_h"] = hours_json(ripening.ripe_for);
    json["sour"] = window_json(sour);
    json["levain_c"] = rounded(ripening.ripe.dough.in_celsius(), 0.01);
    json["members"] = ripening.members;
    json["draw"] = ripening.seed;
    json["curves"] = curve_json(ripening.curve);
    return written(json);
}

std::string render_transcription_json(const Transcription& transcription, const Diagnostics& findings) {
    Json lines = list_of(transcription.lines, transcribed_json);
    Json hydration = nullptr;
    if (transcription.hydration) {
        hydration = object_of({{"likely", ratio_of(transcription.hydration->likely)},
                               {"low", ratio_of(transcription.hydration->least)},
                               {"high", ratio_of(transcription.hydration->most)}});
    }
    return written(object_of({{"schema", "leavenwright/transcription/1"},
                              {"name", transcription.name},
                              {"lines", std::move(lines)},
                              {"sure", transcription.sure},
                              {"doubtful", transcription.doubtful},
                              {"unread", transcription.unread},
                              {"hydration_true", std::move(hydration)},
                              {"formula", transcription.formula},
                              {"findings", diagnostics_list(findings)}}));
}

} // namespace leavenwright
