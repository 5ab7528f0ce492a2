#include "quantity/number.hpp"
#include "render/conversion.hpp"

#include <nlohmann/json.hpp>

#include <cmath>

namespace leavenwright {
namespace {

using Json = nlohmann::ordered_json;

double grams_of(Mass mass) {
    return exact_shift(mass.value(), 3);
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
            {"hydration_added", overall.hydration_added().value()},
            {"hydration_true", overall.hydration_true().value()},
            {"hydration_true_uncertainty", overall.hydration_uncertainty().value()}};
}

Json line_json(const std::string& name, Mass mass, const Overall& overall) {
    return {{"ingredient", name},
            {"weight_g", grams_of(mass)},
            {"percent", overall.percentage(mass).in_percent()}};
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
            {"hydration", levain.hydration.value()},
            {"prefermented_flour", levain.prefermented_flour.value()},
            {"on_total_flour", levain.on_total_flour.value()},
            {"on_dough_flour", std::isfinite(on_dough) ? Json(on_dough) : Json(nullptr)},
            {"ingredients", lines_json(levain.lines, overall)}};
}

} // namespace

std::string render_conversion_json(const Conversion& conversion) {
    const Overall& after = conversion.overall_after;
    Json dough = Json::array();
    Json stages = Json::array();
    for (const Stage& stage : conversion.after.stages) {
        dough.push_back(line_json(stage.name, stage.used, after));
        stages.push_back({{"name", stage.name},
                          {"kind", name_of(stage.kind)},
                          {"weight_g", grams_of(stage.mass())},
                          {"used_g", grams_of(stage.used)},
                          {"ingredients", lines_json(stage.lines, after)}});
    }
    for (const Line& line : conversion.after.dough) {
        dough.push_back(line_json(line.name, line.mass, after));
    }
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
                           {"difference_g", grams_of(row.difference())},
                           {"meant", row.meant}});
    }
    const Json json{{"schema", "leavenwright/conversion/1"},
                    {"name", conversion.after.name},
                    {"scaled_by", conversion.scaled_by},
                    {"before", overall_json(conversion.overall_before)},
                    {"after", overall_json(after)},
                    {"levain", levain_json(conversion.levain, after)},
                    {"dough", std::move(dough)},
                    {"stages", std::move(stages)},
                    {"removed", std::move(removed)},
                    {"balance", std::move(balance)},
                    {"notes", conversion.notes}};
    return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

} // namespace leavenwright
