// All JSON that is written; the only user of nlohmann/json.
#include "quantity/number.hpp"
#include "render/comparison.hpp"
#include "render/conversion.hpp"
#include "render/diagnostics_json.hpp"
#include "render/scaled.hpp"
#include "render/transcription.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>

namespace leavenwright {
namespace {

using Json = nlohmann::ordered_json;

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
    return {{"total_flour_g", grams_of(overall.total_flour)},
            {"flours", std::move(flours)},
            {"added_water_g", grams_of(overall.added_water)},
            {"true_water_g", grams_of(overall.true_water)},
            {"salt_g", grams_of(overall.salt)},
            {"sugar_g", grams_of(overall.sugar)},
            {"fat_g", grams_of(overall.fat)},
            {"dough_g", grams_of(overall.total)},
            {"hydration_added", ratio_of(overall.hydration_added().value())},
            {"hydration_true", ratio_of(overall.hydration_true().value())},
            {"hydration_true_uncertainty", overall.hydration_uncertainty().value()}};
}

Json line_json(const std::string& name, Mass mass, const Overall& overall) {
    return {{"ingredient", name},
            {"weight_g", grams_of(mass)},
            {"percent", percent_of(overall.percentage(mass))}};
}

Json lines_json(const std::vector<Line>& lines, const Overall& overall) {
    Json list = Json::array();
    for (const Line& line : lines) {
        list.push_back(line_json(line.name, line.mass, overall));
    }
    return list;
}

Json levain_json(const Levain& levain, const Overall& overall) {
    // JSON has no infinity: null where no flour is added at mixing.
    const double on_dough = levain.on_dough_flour.value();
    return {{"weight_g", grams_of(levain.mass())},
            {"flour_g", grams_of(levain.flour)},
            {"water_g", grams_of(levain.water)},
            {"hydration", ratio_of(levain.hydration.value())},
            {"prefermented_flour", ratio_of(levain.prefermented_flour.value())},
            {"on_total_flour", ratio_of(levain.on_total_flour.value())},
            {"on_dough_flour", std::isfinite(on_dough) ? Json(ratio_of(on_dough)) : Json(nullptr)},
            {"ingredients", lines_json(levain.lines, overall)}};
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
    Json stages = Json::array();
    for (const Stage& stage : formula.stages) {
        stages.push_back({{"name", stage.name},
                          {"kind", name_of(stage.kind)},
                          {"weight_g", grams_of(stage.mass())},
                          {"used_g", grams_of(stage.used)},
                          {"ingredients", lines_json(stage.lines, overall)}});
    }
    return stages;
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
            notes.push_back({{"message", note.message}, {"line", place.line}, {"column", place.column}});
        }
        list.push_back({{"file", item.source ? item.source->name() : std::string()},
                        {"line", position.line},
                        {"column", position.column},
                        {"offset", item.span.offset},
                        {"length", item.span.length},
                        {"severity", item.severity == Severity::error ? "error" : "warning"},
                        {"code", name_of(item.code)},
                        {"message", item.message},
                        {"hint", item.hint},
                        {"notes", std::move(notes)}});
    }
    return list;
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
    return {{"text", line.text},
            {"ingredient", line.ingredient != nullptr ? line.key : line.name},
            {"known", line.ingredient != nullptr},
            {"amount", known(line.number)},
            {"unit", line.unit},
            {"weight_g", weight_of(&WeightRange::likely)},
            {"low_g", weight_of(&WeightRange::least)},
            {"high_g", weight_of(&WeightRange::most)},
            {"sure", line.is_sure},
            {"role", line.role}};
}

} // namespace

std::string render_diagnostics_json(const Diagnostics& diagnostics) {
    Json list = diagnostics_list(diagnostics);
    const auto errors =
        std::count_if(list.begin(), list.end(), [](const Json& item) { return item["severity"] == "error"; });
    const auto all = static_cast<std::ptrdiff_t>(list.size());
    return written({{"schema", "leavenwright/diagnostics/1"},
                    {"errors", errors},
                    {"warnings", all - errors},
                    {"diagnostics", std::move(list)}});
}

std::string render_scaled_json(const ScaledFormula& scaled) {
    const Overall overall = compute_overall(scaled.formula);
    return written({{"schema", "leavenwright/scaled/1"},
                    {"name", scaled.formula.name},
                    {"factor", scaled.factor},
                    {"overall", overall_json(overall)},
                    {"dough", dough_json(scaled.formula, overall)},
                    {"stages", stages_json(scaled.formula, overall)},
                    {"notes", scaled.notes}});
}

std::string render_comparison_json(const Comparison& comparison) {
    Json differences = Json::array();
    for (const ComparedRatio& ratio : comparison.hydrations) {
        if (ratio.moved) {
            differences.push_back({{"quantity", ratio.name},
                                   {"before", ratio_of(ratio.before)},
                                   {"after", ratio_of(ratio.after)},
                                   {"unit", "ratio"}});
        }
    }
    const auto mass_json = [](const ComparedMass& mass) {
        return Json{{"quantity", mass.name},
                    {"before", grams_of(mass.before)},
                    {"after", grams_of(mass.after)},
                    {"unit", "g"}};
    };
    for (const ComparedMass& mass : comparison.masses) {
        if (mass.moved) {
            differences.push_back(mass_json(mass));
        }
    }
    Json quantities = Json::array();
    for (const ComparedRatio& ratio : comparison.hydrations) {
        quantities.push_back({{"quantity", ratio.name},
                              {"before", ratio_of(ratio.before)},
                              {"after", ratio_of(ratio.after)},
                              {"unit", "ratio"}});
    }
    for (const ComparedMass& mass : comparison.masses) {
        quantities.push_back(mass_json(mass));
    }
    Json yeast = Json::array();
    for (const ComparedMass& mass : comparison.yeast) {
        yeast.push_back(mass_json(mass));
    }
    return written({{"schema", "leavenwright/comparison/1"},
                    {"unchanged", comparison.unchanged()},
                    {"differences", std::move(differences)},
                    {"quantities", std::move(quantities)},
                    {"yeast", std::move(yeast)},
                    {"scaled_by", comparison.scaled_by}});
}

std::string render_overall_json(const Formula& formula, const Overall& overall, const Diagnostics& findings) {
    return written({{"schema", "leavenwright/check/1"},
                    {"name", formula.name},
                    {"notation", formula.notation == Notation::dough ? "dough" : "overall"},
                    {"overall", overall_json(overall)},
                    {"ingredients", lines_json(overall.lines, overall)},
                    {"findings", diagnostics_list(findings)},
                    {"notes", formula.remarks}});
}

std::string render_transcription_json(const Transcription& transcription, const Diagnostics& findings) {
    Json lines = Json::array();
    for (const IngredientLine& line : transcription.lines) {
        lines.push_back(transcribed_json(line));
    }
    Json hydration = nullptr;
    if (transcription.hydration) {
        hydration = {{"likely", ratio_of(transcription.hydration->likely)},
                     {"low", ratio_of(transcription.hydration->least)},
                     {"high", ratio_of(transcription.hydration->most)}};
    }
    return written({{"schema", "leavenwright/transcription/1"},
                    {"name", transcription.name},
                    {"lines", std::move(lines)},
                    {"sure", transcription.sure},
                    {"doubtful", transcription.doubtful},
                    {"unread", transcription.unread},
                    {"hydration_true", std::move(hydration)},
                    {"formula", transcription.formula},
                    {"findings", diagnostics_list(findings)}});
}

std::string render_conversion_json(const Conversion& conversion) {
    const Overall& after = conversion.overall_after;
    Json removed = Json::array();
    for (const Removed& item : conversion.removed) {
        removed.push_back({{"ingredient", item.name},
                           {"weight_g", grams_of(item.mass)},
                           {"water_g", grams_of(item.water)}});
    }
    Json balance = Json::array();
    for (const BalanceRow& row : conversion.balance) {
        balance.push_back({{"quantity", row.name},
                           {"before_g", grams_of(row.before)},
                           {"after_g", grams_of(row.after)},
                           {"difference_g", difference_of(row)},
                           {"meant", row.meant}});
    }
    return written({{"schema", "leavenwright/conversion/1"},
                    {"name", conversion.after.name},
                    {"scaled_by", conversion.scaled_by},
                    {"before", overall_json(conversion.overall_before)},
                    {"after", overall_json(after)},
                    {"levain", levain_json(conversion.levain, after)},
                    {"dough", dough_json(conversion.after, after)},
                    {"stages", stages_json(conversion.after, after)},
                    {"removed", std::move(removed)},
                    {"balance", std::move(balance)},
                    {"notes", conversion.notes}});
}

} // namespace leavenwright
