#include "support/process_times.hpp"

#include "culture/ripening.hpp"
#include "schedule/dough_plan.hpp"
#include "support/fermentation.hpp"
#include "support/formulas.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace leavenwright::testing {
namespace {

// Prefermented flour and the levain's hydration in per cent; none where the packaged yeast stays.
struct LevainShare {
    double flour = 0.0;
    double hydration = 100.0;
};

// Places in C; a rise in per cent where the source says one, 0 where the engine's own is taken.
struct Dough {
    std::string_view name;
    std::string_view source;
    std::string_view ingredients;
    LevainShare levain;
    double mixed_c;
    double bulk_c;
    double rise;
    double bulk_least_h; // 0: not printed, or not compared
    double bulk_most_h;
    double proof_c;
    double proof_least_h;
    double proof_most_h;
};

struct Build {
    std::string_view name;
    std::string_view source;
    double seed; // per cent of the fresh flour
    double hydration;
    double celsius;
    double whole_grain; // per cent of the flour
    double grams;
    double least_h;
    double most_h;
};

constexpr std::string_view white = "bread flour: 100%";
constexpr std::string_view tenth_rye = "bread flour: 90%\n  whole rye flour: 10%";
constexpr std::string_view tenth_whole = "bread flour: 90%\n  whole wheat flour: 10%";

std::vector<Dough> doughs() {
    const std::string_view yeast = "instant yeast: 0.5%"; // replaced
    static const auto lean = [](std::string_view flour, double water, double salt, std::string_view more) {
        return fmt::format("  {}\n  water: {}%\n  salt: {}%\n  {}\n", flour, water, salt, more);
    };
    static const std::array texts{
        lean(tenth_rye, 65, 1.9, yeast),
        lean("bread flour: 95%\n  whole rye flour: 5%", 65, 1.8, yeast),
        lean("whole wheat flour: 100%", 82, 1.8, yeast),
        lean(tenth_whole, 75, 2, yeast),
        lean(white, 70, 1.8, yeast),
        lean(white, 62, 1.9, yeast),
        lean(tenth_whole, 73, 1.8, yeast),
        lean(white, 75, 2.2, yeast),
        lean(white, 61, 2, yeast),
        lean(white, 62, 2, yeast),
        lean(white, 66, 1.8, "fresh yeast: 1.25%"),
        lean(white, 72, 2.1, "instant yeast: 0.4%"),
        lean(white, 78, 2.2, "instant yeast: 0.08%"),
        lean(white, 62, 1.4, "active dry yeast: 1.67%\n  sugar: 6%\n  butter: 3.5%"),
        lean("all-purpose flour: 100%", 75, 2.7, "active dry yeast: 1.5%"),
        lean(white, 57, 2, "fresh yeast: 1%\n  shortening: 0.7%"),
        lean(white, 59, 2.9, "fresh yeast: 0.18%"),
        lean(white, 60, 2.5,
             "fresh yeast: 3.75%\n  sugar: 3.75%\n  nonfat dry milk: 5%\n  shortening: 3.75%"),
        lean(white, 32, 1.9,
             "fresh yeast: 3%\n  sugar: 8%\n  egg: 14%\n  egg yolk: 7.5%\n  vegetable oil: 7.5%"),
        lean(white, 63, 2, "fresh yeast: 2%"),
        lean(white, 62, 1.5, "fresh yeast: 3%\n  sugar: 6%\n  shortening: 3%"),
        lean(white, 55, 1.4, "fresh yeast: 0.9%"),
        lean(white, 55, 1.6, "fresh yeast: 0.22%"),
        lean(white, 75, 2, yeast),
    };
    return {
        {"liquid levain, 15 %, folded",
         "Hamelman",
         texts[0],
         {15, 125},
         24.4,
         24.4,
         0,
         2.5,
         2.5,
         24.4,
         2,
         2.5},
        {"stiff levain, 15.5 %, folded",
         "Hamelman",
         texts[1],
         {15.5, 60},
         24.4,
         24.4,
         0,
         2.5,
         2.5,
         24.4,
         2,
         2.5},
        {"dark miche, stiff levain, 20 %",
         "Hamelman",
         texts[2],
         {20, 60},
         24.4,
         24.4,
         0,
         2.5,
         2.5,
         24.4,
         2,
         2.5},
        {"country loaf, 9 %, to +25 %",
         "Robertson 2010",
         texts[3],
         {9.1, 100},
         26.5,
         26.5,
         25,
         3,
         4,
         25,
         3,
         4},
        {"everyday loaf, 5 %, doubled", "Raffa 2017", texts[4], {4.8, 100}, 21.5, 21, 100, 8, 10, 21, 0, 0},
        {"firm starter, 24 %, to +90 %", "Reinhart 2001", texts[5], {24, 53}, 26, 22, 90, 3, 4, 22, 2, 3},
        {"beginner's loaf, 10 %, to +35 %",
         "home bakers' pages",
         texts[6],
         {10, 100},
         24.4,
         24.4,
         35,
         4,
         4,
         24,
         0,
         0},
        {"simple loaf, 9 %, to +60 %",
         "home bakers' pages",
         texts[7],
         {9.1, 100},
         22,
         21,
         60,
         6,
         10,
         21,
         0,
         0},
        {"9 %, 75 % water, to +30 %",
         "home bakers' pages",
         texts[23],
         {9.1, 100},
         26.7,
         26.7,
         30,
         5,
         5,
         26.7,
         0,
         0},
        {"9 %, 75 % water, to +50 %",
         "home bakers' pages",
         texts[23],
         {9.1, 100},
         23.9,
         23.9,
         50,
         7,
         7,
         23.9,
         0,
         0},
        {"9 %, 75 % water, to +75 %",
         "home bakers' pages",
         texts[23],
         {9.1, 100},
         21.1,
         21.1,
         75,
         10,
         12,
         21.1,
         0,
         0},
        {"9 %, 75 % water, doubled",
         "home bakers' pages",
         texts[23],
         {9.1, 100},
         18.3,
         18.3,
         100,
         14,
         16,
         18.3,
         0,
         0},
        {"white loaf, liquid levain 12.5 %, doubled",
         "Silverton 1996",
         texts[8],
         {12.5, 145},
         24,
         22,
         100,
         3.5,
         4,
         22,
         0,
         0},
        {"stiff levain, 20 %, to +15 %",
         "Calvel 1990",
         texts[9],
         {20, 50},
         25.5,
         25.5,
         15,
         0,
         0,
         26.5,
         3.5,
         4.5},
        {"hearth bread, 1.25 % fresh yeast", "Hamelman", texts[10], {}, 24.4, 24.4, 0, 3, 3, 24.4, 1, 1.5},
        {"0.4 % instant yeast, tripled", "Forkish 2012", texts[11], {}, 25.5, 21, 200, 5, 5, 21, 1.25, 1.25},
        {"0.08 % instant yeast overnight", "Forkish 2012", texts[12], {}, 25, 20.5, 175, 12, 14, 21, 0, 0},
        {"a packet for a pound of flour, doubled",
         "extension leaflets",
         texts[13],
         {},
         28,
         28,
         100,
         0.75,
         1.25,
         28,
         0.75,
         1},
        {"1.5 % dry yeast in warm water", "home bakers' books", texts[14], {}, 29, 22, 150, 2, 2, 22, 0, 0},
        {"1 % fresh yeast", "Cauvain and Young", texts[15], {}, 27, 27, 0, 3, 3, 40, 0, 0},
        {"pizza, 0.18 % fresh yeast, balls", "Neapolitan rule", texts[16], {}, 24, 25, 0, 0, 0, 25, 4, 6},
        {"pan bread, 3.75 % fresh yeast", "Gisslen", texts[17], {}, 27, 27, 100, 1.5, 1.5, 32, 0, 0},
        {"plait with eggs, 3 % fresh yeast", "Hamelman", texts[18], {}, 25.5, 25, 0, 2, 2, 25, 1.5, 2},
        {"direct dough, 2 % fresh yeast",
         "millers' sheets",
         texts[19],
         {},
         24.5,
         25,
         0,
         1,
         1.5,
         25.5,
         1.25,
         1.75},
        {"test loaf, 3 % fresh yeast", "AACC 10-10B", texts[20], {}, 30, 30, 100, 1.75, 1.75, 30, 0.92, 1},
        {"straight dough, 0.9 % fresh yeast", "Jago 1911", texts[21], {}, 25.5, 25, 0, 3, 3, 27, 0, 0},
        {"overnight dough, 0.22 % fresh yeast", "Jago 1911", texts[22], {}, 24, 24, 0, 10, 10, 25, 0, 0},
    };
}

constexpr auto builds = std::to_array<Build>({
    {"125 %, seed 21 %, 21 C", "Hamelman", 21, 125, 21, 0, 400, 12, 16},
    {"100 %, seed 20 %, 24 C", "home bakers' pages", 20, 100, 24, 30, 220, 12, 12},
    {"100 %, seed 50 %, 25.5 C", "home bakers' pages", 50, 100, 25.5, 50, 184, 5, 6},
    {"1 : 1 : 1, 21 C", "millers' sheets", 100, 100, 21, 0, 400, 6, 8},
    {"1 : 1 : 1, 24.5 C", "home bakers' pages", 100, 100, 24.5, 0, 150, 4, 6},
    {"1 : 5 : 5, 24.5 C", "home bakers' pages", 20, 100, 24.5, 0, 150, 8, 12},
    {"1 : 10 : 10, 24.5 C", "home bakers' pages", 10, 100, 24.5, 0, 150, 12, 16},
    {"100 %, seed 10 %, 23.5 C", "home bakers' pages", 10, 100, 23.5, 0, 200, 12, 12},
    {"1 : 1 : 1, 27.5 C", "home bakers' pages", 100, 100, 27.5, 0, 150, 3, 4},
    {"half whole wheat, seed 9 %, 19 C", "Robertson 2010", 9, 100, 19, 50, 400, 10, 12},
    {"60 %, seed 20 %, 21 C", "Hamelman", 20, 60, 21, 0, 400, 12, 12},
    {"45 %, seed 100 %, 29 C", "Italian bakers", 100, 45, 29, 0, 400, 3.5, 4},
    {"54 %, seed 89 %, 22 C", "Reinhart 2001", 89, 54, 22, 0, 280, 4, 4},
    {"50 %, seed 80 %, 21 C", "Suas 2008", 80, 50, 21, 0, 400, 8, 8},
    {"60 %, seed 80 %, 25 C", "Whitley 2006", 80, 60, 25, 0, 400, 4, 4},
    {"50 %, seed 50 %, 25 C", "French baking schools", 50, 50, 25, 0, 1500, 5, 6},
    {"rye 80 %, seed 5 %, 21 C", "Hamelman", 5, 80, 21, 100, 400, 14, 16},
    {"rye 100 %, seed 10 %, 21 C", "Ginsberg 2016", 10, 100, 21, 100, 400, 10, 14},
    {"rye 72 %, seed 100 %, 28 C", "Auerman", 100, 72, 28, 100, 2000, 3, 4},
    {"rye 90 %, full sour, 31 C", "Detmold", 100, 90, 31, 100, 2000, 3, 4},
});

Formula formula_of(const Dough& dough) {
    Formula formula =
        formula_from(fmt::format("formula: 1\nname: Loaf\nmakes: 2 x 900 g\noverall:\n{}process:\n"
                                 "  - mix: {{ to: {} C }}\n  - bulk: {{ for: 2 h, at: {} C }}\n"
                                 "  - divide\n  - shape\n  - proof: {{ for: 1 h, at: {} C }}\n",
                                 dough.ingredients, dough.mixed_c, dough.bulk_c, dough.proof_c));
    if (dough.levain.flour == 0.0) {
        return formula;
    }
    ConversionRequest request;
    request.inoculation = PrefermentedFlour::percent(dough.levain.flour);
    request.levain_hydration = Hydration::percent(dough.levain.hydration);
    return converted(formula, request).after;
}

void add_dough(std::vector<ProcessTime>& times, const Dough& dough) {
    PlanRequest request;
    if (dough.rise > 0.0) {
        request.bulk_rise = Fraction::percent(dough.rise);
    }
    Diagnostics diagnostics;
    const Windows windows = windows_of(formula_of(dough), request, Ensemble{}, diagnostics).value();
    const bool has_levain = dough.levain.flour > 0.0;
    const auto add = [&](const StageWindow& stage, TimeClass kind, double least, double most) {
        if (most > 0.0) {
            times.push_back({fmt::format("{}: {}, {} C", dough.name, stage.stage,
                                         kind == TimeClass::levain_bulk || kind == TimeClass::yeasted_bulk
                                             ? dough.bulk_c
                                             : dough.proof_c),
                             std::string(dough.source), kind, least, most, in_hours(stage.in_stage.earliest),
                             in_hours(stage.in_stage.likely), in_hours(stage.in_stage.latest)});
        }
    };
    add(windows.stages.front(), has_levain ? TimeClass::levain_bulk : TimeClass::yeasted_bulk,
        dough.bulk_least_h, dough.bulk_most_h);
    add(windows.stages.back(), has_levain ? TimeClass::levain_proof : TimeClass::yeasted_proof,
        dough.proof_least_h, dough.proof_most_h);
}

void add_build(std::vector<ProcessTime>& times, const Build& row) {
    LevainBuild build;
    build.seed = SeedShare::percent(row.seed);
    build.hydration = Hydration::percent(row.hydration);
    build.whole_grain = Fraction::percent(row.whole_grain);
    build.place = TemperatureProfile(Temperature::celsius(row.celsius));
    build.mass = grams(row.grams);
    const Window ripe = ripening_of(build).ripe.in_stage;
    times.push_back({fmt::format("levain {}", row.name), std::string(row.source), TimeClass::levain_build,
                     row.least_h, row.most_h, in_hours(ripe.earliest), in_hours(ripe.likely),
                     in_hours(ripe.latest)});
}

constexpr std::array classes{TimeClass::levain_bulk, TimeClass::levain_proof, TimeClass::levain_build,
                             TimeClass::yeasted_bulk, TimeClass::yeasted_proof};

} // namespace

std::string_view name_of(TimeClass kind) {
    constexpr std::array<std::string_view, 5> names{"levain dough, bulk", "levain dough, proof",
                                                    "levain build", "packaged yeast, bulk",
                                                    "packaged yeast, proof"};
    return names[static_cast<std::size_t>(kind)];
}

double ProcessTime::printed_h() const {
    return std::sqrt(least_h * most_h);
}

std::vector<ProcessTime> process_times() {
    std::vector<ProcessTime> times;
    for (const Dough& dough : doughs()) {
        add_dough(times, dough);
    }
    for (const Build& build : builds) {
        add_build(times, build);
    }
    return times;
}

double mean_ratio(const std::vector<ProcessTime>& times, TimeClass kind) {
    double sum = 0.0;
    double count = 0.0;
    for (const ProcessTime& time : times) {
        if (time.kind == kind) {
            sum += std::log(time.likely_h / time.printed_h());
            count += 1.0;
        }
    }
    return std::exp(sum / count);
}

std::string table_of(const std::vector<ProcessTime>& times) {
    std::string table = "| printed | source | hours | early | likely | late | inside |\n"
                        "|---|---|---|---|---|---|---|\n";
    for (const ProcessTime& time : times) {
        const std::string printed = time.least_h == time.most_h
                                        ? fmt::format("{:g}", time.least_h)
                                        : fmt::format("{:g}-{:g}", time.least_h, time.most_h);
        table +=
            fmt::format("| {} | {} | {} | {:.1f} | {:.1f} | {:.1f} | {} |\n", time.name, time.source, printed,
                        time.earliest_h, time.likely_h, time.latest_h, time.is_inside() ? "yes" : "no");
    }
    return table;
}

std::string classes_of(const std::vector<ProcessTime>& times) {
    std::string table = "| class | printed times | middle inside | likely / printed |\n|---|---|---|---|\n";
    for (const TimeClass kind : classes) {
        const auto is_of_class = [&](const ProcessTime& time) { return time.kind == kind; };
        const auto is_inside = [&](const ProcessTime& time) { return time.kind == kind && time.is_inside(); };
        table += fmt::format("| {} | {} | {} | {:.2f} |\n", name_of(kind),
                             std::count_if(times.begin(), times.end(), is_of_class),
                             std::count_if(times.begin(), times.end(), is_inside), mean_ratio(times, kind));
    }
    return table;
}

} // namespace leavenwright::testing
