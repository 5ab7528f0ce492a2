#include "support/process_cases.hpp"

#include "schedule/dough_plan.hpp"
#include "support/dough_figures.hpp"
#include "support/fermentation.hpp"
#include "support/formulas.hpp"

#include <fmt/core.h>

#include <cmath>

namespace leavenwright::testing {
namespace {

using Cases = std::vector<ProcessCase>;
constexpr double infinite = std::numeric_limits<double>::infinity();

// Sours of dough yield 160, a fifth of ripe levain (assumed; the table does not say), 30 C.
void add_acid_and_counts(Cases& cases) {
    const std::string source = "Nutrients 2019";
    const Kinetics middle;
    const MicrobeEquations white(middle, mix_of({}));
    cases.push_back({"pH at 34.4 mmol/kg of acid", source, "4.26", 4.18, 4.34, white.ph(34.4), 2});
    cases.push_back({"pH at 53.5 mmol/kg of acid", source, "3.89", 3.81, 3.97, white.ph(53.5), 2});
    cases.push_back({"pH at 113.6 mmol/kg of acid", source, "3.55", 3.47, 3.63, white.ph(113.6), 2});

    const DoughMix sour = mix_of({.flour = 100.0, .water = 60.0, .levain = 40.0, .levain_hydration = 0.6});
    Kinetics of_table = middle; // its counts rise on down to pH 3.55
    of_table.culture_bacteria = Lactobacillus::acid_tolerant;
    const MicrobeState early = state_after(of_table, sour, 30.0, 4.0);
    const MicrobeState late = state_after(of_table, sour, 30.0, 24.0);
    const auto counted = [](double cells) { return std::log10(cells); };
    cases.push_back({"sour, 4 h at 30 C: pH", source, "4.26", 4.01, 4.51, white.ph(early[acid_state]), 2});
    cases.push_back({"sour, 4 h: yeast, log/g", source, "7.07", 6.77, 7.37, counted(early[yeast_state]), 2});
    cases.push_back(
        {"sour, 4 h: lactobacilli, log/g", source, "9.18", 8.88, 9.48, counted(early[bacteria_state]), 2});
    cases.push_back({"sour, 24 h at 30 C: pH", source, "3.55", 3.30, 3.80, white.ph(late[acid_state]), 2});
    cases.push_back({"sour, 24 h: yeast, log/g", source, "7.50", 7.20, 7.80, counted(late[yeast_state]), 2});
    cases.push_back(
        {"sour, 24 h: lactobacilli, log/g", source, "9.75", 9.45, 10.05, counted(late[bacteria_state]), 2});
    cases.push_back(
        {"sour, 24 h / 4 h: acid", source, "3.3 x", 2.2, 4.95, late[acid_state] / early[acid_state], 2});
    cases.push_back(
        {"sour, 24 h / 4 h: yeast", source, "2.69 x", 1.79, 4.04, late[yeast_state] / early[yeast_state], 2});
    cases.push_back({"sour, 24 h / 4 h: lactobacilli", source, "3.72 x", 2.48, 5.57,
                     late[bacteria_state] / early[bacteria_state], 2});
}

LevainBuild detmold(double starter, double celsius, double salt = 0.0) {
    LevainBuild build;
    build.seed = SeedShare(starter);
    build.hydration = Hydration(0.8); // dough yield 180
    build.salt = BakersPercentage(salt);
    build.place = TemperatureProfile(Temperature::celsius(celsius));
    build.mass = kilograms(5.0);
    return build;
}

void add_rye_sours(Cases& cases) {
    struct Row {
        double starter;
        double celsius;
    };
    double lowest = infinite;
    double highest = 0.0;
    for (const Row& row : {Row{0.10, 25.0}, Row{0.05, 26.5}, Row{0.03, 27.5}}) {
        const std::string name =
            fmt::format("Detmold one-stage, {:.0f} % at {} C", 100.0 * row.starter, row.celsius);
        const DoughMix mix =
            mix_of({.flour = 100.0, .water = 80.0, .levain = 100.0 * row.starter, .levain_hydration = 0.8});
        const double ph = points_at(Kinetics{}, mix, row.celsius, {15.0}).front().ph;
        lowest = std::min(lowest, ph);
        highest = std::max(highest, ph);
        cases.push_back({name + ": pH at 15 h", "Detmold", "ripe, at most 4.2", 3.5, 4.2, ph, 2});
        const double ripe = sour_hours(detmold(row.starter, row.celsius));
        cases.push_back({name + ": taken as a sour, h", "Detmold", "15", 13.0, 18.0, ripe, 1});
        const double slowed = sour_hours(detmold(row.starter, row.celsius, 0.02)) / ripe;
        cases.push_back(
            {name + ", with 2 % salt: times as long", "Detmold", "39 h / 15 h", 1.5, infinite, slowed, 3});
    }
    cases.push_back(
        {"Detmold one-stage: pH apart", "Detmold", "equally ripe", 0.0, 0.15, highest - lowest, 2});

    for (const double factor : {3.0, 5.0, 6.0}) {
        // A fermented flour of 1 becomes one of `factor`: seed and build have the same water.
        LevainBuild build = detmold(1.9 / (factor - 1.0), 28.0);
        build.hydration = Hydration(0.9); // dough yield 180 to 200
        cases.push_back({fmt::format("Arkady, {0:.0f} times the flour at 28 C: ripe, h", factor), "Arkady",
                         fmt::format("{:.0f}", factor), 0.65 * factor, 1.35 * factor, ripe_hours(build), 2});
    }
}

LevainBuild sponge(double celsius) {
    LevainBuild build;
    build.seed = SeedShare(1.0);
    build.hydration = Hydration(0.49);
    build.place = TemperatureProfile(Temperature::celsius(celsius));
    build.mass = kilograms(20.0);
    return build;
}

void add_san_francisco(Cases& cases) {
    const Kinetics middle;
    const DoughMix sponge_mix =
        mix_of({.flour = 100.0, .water = 49.0, .levain = 100.0, .levain_hydration = 0.49});
    const auto of_sponge = points_at(middle, sponge_mix, 26.7, {0.0, 7.5});
    cases.push_back({"San Francisco sponge: pH mixed", "Kline", "4.4-4.5", 4.2, 4.7, of_sponge[0].ph, 2});
    cases.push_back(
        {"San Francisco sponge: pH after 7.5 h at 26.7 C", "Kline", "3.8-3.9", 3.6, 4.1, of_sponge[1].ph, 2});
    cases.push_back(
        {"San Francisco sponge: taken as a sour, h", "Kline", "7-8", 6.0, 10.0, sour_hours(sponge(26.7)), 1});

    const DoughParts parts{
        .flour = 100.0, .water = 60.0, .levain = 20.0, .levain_hydration = 0.49, .salt = 2.0};
    const DoughMix dough = mix_of(parts);
    cases.push_back(
        {"San Francisco dough: sponge in it, %", "Kline", "11", 10.9, 11.1, dough.levain.in_percent(), 1});
    const double yeast = MicrobeEquations(middle, dough).start()[yeast_state] / 1e6;
    cases.push_back({"San Francisco dough: million yeast/g mixed", "Pyler", "2-4", 1.33, 6.0, yeast, 1});
    const auto of_dough = points_at(middle, dough, 30.0, {0.0, 9.0});
    cases.push_back({"San Francisco dough: pH mixed", "Kline", "5.2-5.3", 4.95, 5.55, of_dough[0].ph, 2});
    cases.push_back(
        {"San Francisco dough: pH after 9 h at 30 C", "Kline", "3.9-4.0", 3.35, 4.55, of_dough[1].ph, 2});
    cases.push_back({"San Francisco dough: rise after 9 h, %", "Kline", "proofed", 80.0, infinite,
                     100.0 * of_dough[1].rise, 0});
}

// Galal's loaf as it is proofed: an hour's rest, then hot air around a cooler dough. Half a kilogram is
// assumed; the source's is not known here.
double hours_in_hot_air(const DoughMix& mix) {
    const auto stage = [](const char* name, double celsius) {
        PlannedStage planned;
        planned.name = name;
        planned.surroundings = Temperature::celsius(celsius);
        planned.mass = kilograms(0.5);
        return planned;
    };
    DoughPlan plan;
    plan.mix = mix;
    plan.composition = plain_dough(0.6);
    plan.mixed_at = Temperature::celsius(27.0);
    plan.stages = {stage("rest", 27.0), stage("proof", 41.0)};
    plan.stages.front().lasts = seconds(3600.0);
    plan.stages.back().rise = Fraction(1.0);
    return compute_windows(plan, Ensemble{}).stages.back().in_stage.likely.value() / 3600.0;
}

void add_hot_proof(Cases& cases) {
    const DoughMix mix =
        mix_of({.flour = 100.0, .water = 60.0, .levain = 15.0, .levain_hydration = 0.5, .salt = 1.75});
    cases.push_back(
        {"warm-proofed dough: sponge in it, %", "Galal", "8.5", 8.4, 8.6, mix.levain.in_percent(), 1});
    const double rise = points_at(Kinetics{}, mix, 41.0, {4.0}).front().rise;
    cases.push_back({"the same at 41 C throughout: rise, %", "Galal", "none", 0.0, 0.0, 100.0 * rise, 0});
    cases.push_back(
        {"the same, a loaf in air of 41 C: doubled, h", "Galal", "4", 2.6, 5.4, hours_in_hot_air(mix), 1});
}

LevainBuild liquid(double seed, double celsius) {
    LevainBuild build;
    build.seed = SeedShare(seed);
    build.hydration = Hydration(1.25);
    build.place = TemperatureProfile(Temperature::celsius(celsius));
    return build;
}

void add_wheat_levains(Cases& cases) {
    cases.push_back({"liquid levain, 20 % seed at 21 C: ripe, h", "Hamelman (memory)", "12-16", 12.0, 16.0,
                     ripe_hours(liquid(0.20, 21.0)), 1});
    cases.push_back({"liquid culture 111:100:125 at 25.5 C: ripe, h", "Hamelman", "fed every 12", 0.0, 12.0,
                     ripe_hours(liquid(1.11, 25.5)), 1});
}

// New cells of packaged yeast in an interval, per cent of those mixed in.
double new_cells(double fresh_yeast, double from, double to) {
    const DoughMix mix = mix_of({.flour = 100.0, .water = 60.0, .fresh_yeast = fresh_yeast});
    const double first = state_after(Kinetics{}, mix, 27.0, 0.0)[packaged_state];
    const double before = state_after(Kinetics{}, mix, 27.0, from)[packaged_state];
    return 100.0 * (state_after(Kinetics{}, mix, 27.0, to)[packaged_state] - before) / first;
}

void add_packaged_yeast(Cases& cases) {
    const std::string source = "Hoffman";
    cases.push_back({"0.5 % fresh yeast, 6 h at 27 C: new cells, %", source, "88", 63.0, 113.0,
                     new_cells(0.5, 0.0, 6.0), 0});
    cases.push_back(
        {"2 % fresh yeast, 6 h at 27 C: new cells, %", source, "29", 4.0, 54.0, new_cells(2.0, 0.0, 6.0), 0});
    cases.push_back(
        {"1.67 % fresh yeast, 0-2 h: new cells, %", source, "0", -25.0, 25.0, new_cells(1.67, 0.0, 2.0), 0});
    cases.push_back(
        {"1.67 % fresh yeast, 2-4 h: new cells, %", source, "26", 1.0, 51.0, new_cells(1.67, 2.0, 4.0), 0});
    cases.push_back(
        {"1.67 % fresh yeast, 4-6 h: new cells, %", source, "9", -16.0, 34.0, new_cells(1.67, 4.0, 6.0), 0});

    const DoughParts tested{.flour = 250.0, .water = 145.0, .salt = 5.0, .fresh_yeast = 7.0};
    const double gas = points_at(Kinetics{}, mix_of(tested), 28.5, {3.0}).front().gas; // mmol/kg
    cases.push_back({"rheofermentometer, 7 g yeast, 3 h at 28.5 C: gas, L", "gas protocol (memory)",
                     "1.4-1.9", 1.4, 1.9, gas * tested.total() / 1000.0 * gas_litres(28.5), 2});
}

Windows practice_windows(double celsius) {
    PlanRequest request;
    request.at = Temperature::celsius(celsius);
    request.mixed_at = request.at;
    Diagnostics diagnostics;
    return windows_of(loaf_of_practice("process:\n  - bulk\n  - shape\n  - proof\n"), request, Ensemble{},
                      diagnostics)
        .value();
}

void add_practice(Cases& cases) {
    const std::string source = "common practice";
    const auto bulk = [](const Windows& windows) {
        return windows.stages.front().in_stage.likely.value() / 3600.0;
    };
    const auto whole = [](const Windows& windows) {
        return windows.stages.back().after_mixing.likely.value() / 3600.0;
    };
    const Windows winter = practice_windows(20.0);
    const Windows room = practice_windows(25.6);
    const Windows summer = practice_windows(29.0);
    cases.push_back(
        {"loaf, levain 20 % of the flour: bulk at 25.6 C, h", source, "4-4.5", 3.6, 4.95, bulk(room), 1});
    cases.push_back({"the same at 20 C: whole rise, h", source, "10-12", 8.5, 13.8, whole(winter), 1});
    cases.push_back({"the same at 29 C: bulk, h", source, "2-4", 1.7, 4.6, bulk(summer), 1});
    cases.push_back({"the same at 29 C: whole rise, h", source, "2-4", 1.7, 4.6, whole(summer), 1, true});
}

} // namespace

std::vector<ProcessCase> process_cases() {
    Cases cases;
    add_acid_and_counts(cases);
    add_rye_sours(cases);
    add_san_francisco(cases);
    add_hot_proof(cases);
    add_wheat_levains(cases);
    add_packaged_yeast(cases);
    add_practice(cases);
    return cases;
}

std::string table_of(const std::vector<ProcessCase>& cases) {
    std::string table =
        "| case | source | published | band | predicted | inside |\n|---|---|---|---|---|---|\n";
    for (const ProcessCase& row : cases) {
        const std::string band = std::isfinite(row.high) ? fmt::format("{:.{}f} to {:.{}f}", row.low,
                                                                       row.digits, row.high, row.digits)
                                                         : fmt::format("from {:.{}f}", row.low, row.digits);
        table += fmt::format("| {} | {} | {} | {} | {:.{}f} | {} |\n", row.name, row.source, row.published,
                             band, row.predicted, row.digits, row.is_inside() ? "yes" : "no");
    }
    return table;
}

} // namespace leavenwright::testing
