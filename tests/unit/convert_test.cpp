#include "convert/convert.hpp"
#include "support/formulas.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <memory>
#include <string>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

constexpr double exact = 1e-12;
const std::string head = "formula: 1\nname: Test\n";
const std::string lean =
    head +
    "dough:\n  bread flour: 900 g\n  rye flour: 100 g\n  water: 660 g\n  salt: 20 g\n  instant yeast: 10 g\n";

bool is_grams(double actual_g, double expected_g) {
    return near(actual_g, expected_g, exact, 1e-9);
}

double grams_of(const std::vector<Line>& lines, std::string_view name) {
    double sum = 0.0;
    for (const Line& line : lines) {
        sum += line.name == name ? in_grams(line.mass) : 0.0;
    }
    return sum;
}

const Ingredient& ingredient(std::string_view name) {
    static const Pantry pantry;
    return *pantry.find(name).ingredient;
}

ConversionRequest asking(Inoculation inoculation, double hydration) {
    ConversionRequest request;
    request.inoculation = inoculation;
    request.levain_hydration = Hydration(hydration);
    return request;
}

std::string error_codes(const Formula& formula, const ConversionRequest& request) {
    Diagnostics diagnostics;
    const auto conversion = convert(formula, request, diagnostics);
    std::string codes;
    for (const Diagnostic& item : diagnostics.in_order()) {
        if (item.severity == Severity::error) {
            codes += (codes.empty() ? "" : " ") + std::string(name_of(item.code));
        }
    }
    CHECK(conversion.has_value() == codes.empty());
    return codes;
}

bool has_note(const Conversion& conversion, std::string_view part) {
    return std::any_of(conversion.notes.begin(), conversion.notes.end(),
                       [&](const std::string& note) { return note.find(part) != std::string::npos; });
}

} // namespace

TEST_CASE("convert: flour and water move into the levain, yeast goes") {
    const Conversion conversion = converted(formula_from(lean), asking(PrefermentedFlour(0.2), 0.8));
    const Formula& after = conversion.after;
    CHECK(is_grams(in_grams(conversion.levain.flour), 200.0));
    CHECK(is_grams(in_grams(conversion.levain.water), 160.0));
    CHECK(is_grams(grams_of(after.dough, "bread flour"), 700.0));
    CHECK(is_grams(grams_of(after.dough, "rye flour"), 100.0));
    CHECK(is_grams(grams_of(after.dough, "water"), 500.0));
    CHECK(is_grams(grams_of(after.dough, "salt"), 20.0));
    CHECK(is_grams(grams_of(after.dough, "instant yeast"), 0.0));
    REQUIRE(after.stages.size() == 1);
    CHECK(after.stages[0].name == "levain");
    CHECK(after.stages[0].kind == StageKind::levain);
    REQUIRE(conversion.removed.size() == 1);
    CHECK(is_grams(in_grams(conversion.removed[0].mass), 10.0));
    CHECK(is_grams(in_grams(conversion.removed[0].water), 0.508));
    CHECK(conversion.scaled_by == 1.0);
    CHECK(near(conversion.levain.on_total_flour.value(), 0.36, exact, 0.0));
    CHECK(near(conversion.levain.on_dough_flour.value(), 0.45, exact, 0.0));
}

TEST_CASE("convert: three bases for one levain") {
    const Formula formula = formula_from(lean);
    const auto flour = [&](Inoculation inoculation) {
        return in_grams(converted(formula, asking(inoculation, 0.8)).levain.flour);
    };
    CHECK(is_grams(flour(PrefermentedFlour(0.2)), 200.0));
    CHECK(is_grams(flour(LevainOnTotalFlour(0.36)), 200.0));
    CHECK(is_grams(flour(LevainOnDoughFlour(0.45)), 200.0));
}

TEST_CASE("convert: the formula itself is not changed") {
    const Formula formula = formula_from(lean);
    converted(formula, {});
    CHECK(formula.dough.size() == 5);
    CHECK(formula.stages.empty());
}

TEST_CASE("convert: the largest flours first, then the next") {
    const Conversion conversion =
        converted(formula_from(head + "dough: { bread flour: 300 g, rye flour: 700 g, water: 900 g }\n"),
                  asking(PrefermentedFlour(0.8), 1.0));
    CHECK(is_grams(grams_of(conversion.levain.lines, "rye flour"), 700.0));
    CHECK(is_grams(grams_of(conversion.levain.lines, "bread flour"), 100.0));
    CHECK(is_grams(grams_of(conversion.after.dough, "bread flour"), 200.0));
}

TEST_CASE("convert: the levain's own flours, and a blend that moves") {
    const Formula formula = formula_from(lean);
    ConversionRequest request = asking(PrefermentedFlour(0.2), 1.0);
    request.levain_flour = {
        {.name = "rye flour", .ingredient = &ingredient("rye flour"), .share = Fraction(0.5)},
        {.name = "bread flour", .ingredient = &ingredient("bread flour"), .share = Fraction(0.5)}};
    const Conversion fits = converted(formula, request);
    CHECK(is_grams(grams_of(fits.levain.lines, "rye flour"), 100.0));
    CHECK_FALSE(has_note(fits, "blend"));
    request.levain_flour = {
        {.name = "rye flour", .ingredient = &ingredient("rye flour"), .share = Fraction(1.0)}};
    const Conversion moved = converted(formula, request);
    CHECK(is_grams(in_grams(moved.overall_after.mass_of(ingredient("rye flour"))), 200.0));
    CHECK(is_grams(in_grams(moved.overall_after.mass_of(ingredient("bread flour"))), 800.0));
    CHECK(has_note(moved, "blend of flours moved"));
    request.keep_blend = true;
    CHECK(error_codes(formula, request) == "blend-moved");
}

TEST_CASE("convert: what does not fit is refused with what does") {
    const Formula formula = formula_from(lean);
    CHECK(error_codes(formula, asking(PrefermentedFlour(0.6), 1.25)) == "levain-does-not-fit");
    CHECK(error_codes(formula, asking(PrefermentedFlour(1.1), 0.1)) == "levain-does-not-fit");
    CHECK(error_codes(formula_from(head + "dough: { bread flour: 1 kg, salt: 20 g }\n"), {}) ==
          "levain-does-not-fit");
    Diagnostics diagnostics;
    ConversionRequest request = asking(PrefermentedFlour(0.6), 1.25);
    request.command = "leavenwright convert x.yaml";
    convert(formula, request, diagnostics);
    const std::string hint = diagnostics.in_order().front().hint;
    CHECK(hint.find("leavenwright convert x.yaml --prefermented-flour 52.8% --levain-hydration 125%") !=
          std::string::npos);
    CHECK(hint.find("--prefermented-flour 60% --levain-hydration 110%") != std::string::npos);
}

TEST_CASE("convert: the largest that fits") {
    const Formula formula = formula_from(lean);
    const LargestFit fit = largest_fit(formula, asking(PrefermentedFlour(0.6), 1.25));
    CHECK(near(fit.prefermented_flour.value(), 0.66 / 1.25, exact, 0.0));
    CHECK(near(fit.levain_hydration.value(), 1.1, exact, 0.0));
    // 80 % of levain on total flour: h / (1 + h) = 66 / 80.
    CHECK(near(largest_fit(formula, asking(LevainOnTotalFlour(0.8), 1.0)).levain_hydration.value(),
               0.66 / 0.14, 1e-9, 0.0));
}

TEST_CASE("convert: a heavy levain that needs some water to hold its flour") {
    // 160 % of levain: its flour fits from h = 0.6 on, its water up to h = 0.66 / 0.94.
    const Formula formula = formula_from(lean);
    CHECK(error_codes(formula, asking(LevainOnTotalFlour(1.6), 0.65)).empty());
    CHECK(near(largest_fit(formula, asking(LevainOnTotalFlour(1.6), 1.0)).levain_hydration.value(),
               0.66 / 0.94, 1e-9, 0.0));
}

TEST_CASE("convert: preferments are dissolved or kept") {
    const Formula formula = formula_from(
        head + "dough: { bread flour: 600 g, water: 300 g, salt: 20 g, instant yeast: 5 g }\npreferments:\n  "
               "poolish: { bread flour: 400 g, water: 400 g, instant yeast: 1 g }\n");
    const Conversion dissolved = converted(formula, asking(PrefermentedFlour(0.2), 1.0));
    CHECK(dissolved.after.stages.size() == 1);
    CHECK(is_grams(grams_of(dissolved.after.dough, "bread flour"), 800.0));
    CHECK(is_grams(grams_of(dissolved.after.dough, "water"), 500.0));
    CHECK(has_note(dissolved, "'poolish' is dissolved"));
    ConversionRequest request = asking(PrefermentedFlour(0.2), 1.0);
    request.keep = {"Poolish"};
    const Conversion kept = converted(formula, request);
    REQUIRE(kept.after.stages.size() == 2);
    CHECK(kept.after.stages[1].name == "poolish");
    CHECK(is_grams(grams_of(kept.after.stages[1].lines, "instant yeast"), 1.0));
    CHECK(is_grams(grams_of(kept.after.dough, "bread flour"), 400.0));
    request.keep = {"biga"};
    CHECK(error_codes(formula, request) == "stage-unknown");
}

TEST_CASE("convert: a levain of the formula is replaced") {
    const Formula formula = formula_from(
        head + "dough: { bread flour: 450 g, water: 155 g, salt: 11 g, levain: 182.5 g }\npreferments:\n  "
               "levain: { bread flour: 150 g, water: 185 g, culture: 30 g }\n");
    const Conversion conversion = converted(formula, asking(PrefermentedFlour(0.2), 1.0));
    REQUIRE(conversion.after.stages.size() == 1);
    CHECK(near(conversion.overall_after.total_flour.value(), conversion.overall_before.total_flour.value(),
               exact, 0.0));
    CHECK(near(conversion.overall_after.added_water.value(), conversion.overall_before.added_water.value(),
               exact, 0.0));
    ConversionRequest request;
    request.keep = {"levain"};
    CHECK(error_codes(formula, request) == "keep-refused");
}

TEST_CASE("convert: soakers stay") {
    const Formula formula = formula_from(lean + "soakers:\n  seeds: { flaxseed: 50 g, water: 75 g }\n");
    const Conversion conversion = converted(formula, asking(PrefermentedFlour(0.2), 1.0));
    REQUIRE(conversion.after.stages.size() == 2);
    CHECK(conversion.after.stages[1].name == "seeds");
    CHECK(error_codes(formula, asking(PrefermentedFlour(0.7), 1.0)) ==
          "levain-does-not-fit"); // not the soaker's water
}

TEST_CASE("convert: milk gives up its water") {
    const Formula formula = formula_from(head + "dough: { bread flour: 1 kg, milk: 600 g, salt: 20 g }\n");
    const Conversion plain = converted(formula, asking(PrefermentedFlour(0.2), 1.0));
    CHECK(is_grams(grams_of(plain.after.dough, "milk"), 600.0 - 200.0 / 0.8813));
    CHECK(has_note(plain, "--dry-milk"));
    ConversionRequest request = asking(PrefermentedFlour(0.2), 1.0);
    request.dry_milk = true;
    const Conversion restored = converted(formula, request);
    CHECK(near(restored.overall_after.true_water.value(), restored.overall_before.true_water.value(), 1e-9,
               0.0));
    CHECK(near(restored.overall_after.total.value(), restored.overall_before.total.value(), 1e-9, 0.0));
    CHECK(grams_of(restored.after.dough, "whole dry milk") > 0.0);
}

TEST_CASE("convert: everything that moves says why") {
    const Formula formula = formula_from(
        head + "dough: { bread flour: 1 kg, buttermilk: 600 g, salt: 20 g, fresh yeast: 20 g }\n");
    for (const bool dry_milk : {false, true}) {
        ConversionRequest request = asking(PrefermentedFlour(0.2), 1.0);
        request.dry_milk = dry_milk;
        const Conversion conversion = converted(formula, request);
        const double dough_kg = conversion.overall_before.total.value();
        for (const BalanceRow& row : conversion.balance) {
            CAPTURE(row.name);
            CAPTURE(dry_milk);
            CHECK((!row.meant.empty() || std::abs(row.difference().value()) <= 1e-9 * dough_kg));
        }
    }
}

TEST_CASE("convert: a liquid that yields nothing does not hide the next") {
    const Formula formula =
        formula_from(head + "dough: { bread flour: 1000 g, odd: 600 g, beer: 300 g }\npantry:\n  odd: { "
                            "class: dairy, dries to: nonfat dry milk }\n");
    const Conversion conversion = converted(formula, asking(PrefermentedFlour(0.2), 1.0));
    CHECK(near(conversion.overall_after.true_water.value(), conversion.overall_before.true_water.value(),
               1e-9, 0.0));
}

TEST_CASE("convert: liquids that were asked for") {
    const Formula formula =
        formula_from(head + "dough: { bread flour: 1 kg, water: 100 g, egg: 400 g, salt: 20 g }\n");
    CHECK(error_codes(formula, asking(PrefermentedFlour(0.2), 1.0)) == "levain-does-not-fit");
    ConversionRequest request = asking(PrefermentedFlour(0.2), 1.0);
    request.water_from = {&ingredient("egg")};
    CHECK(is_grams(grams_of(converted(formula, request).after.dough, "egg"), 400.0 - 100.0 / 0.7615));
    request.water_from = {&ingredient("milk")};
    CHECK(error_codes(formula, request) == "water-source-unfit");
    request.water_from = {&ingredient("olive oil")};
    CHECK(error_codes(formula, request) == "water-source-unfit");
}

TEST_CASE("convert: the promised dough weight is met without the yeast") {
    const Formula formula = formula_from(
        head + "makes: 2 x 850 g\ndough: { bread flour: 100%, water: 66%, salt: 2%, fresh yeast: 2% }\n");
    const Conversion conversion = converted(formula, asking(PrefermentedFlour(0.2), 1.0));
    CHECK(is_grams(in_grams(conversion.after.dough_mass()), 1700.0));
    CHECK(near(conversion.scaled_by, 170.0 / 168.0, 1e-9, 0.0));
    CHECK(has_note(conversion, "scaled"));
    CHECK(conversion.after.stages[0].used == conversion.after.stages[0].mass());
}

TEST_CASE("convert: yeast times become notes") {
    const Conversion conversion =
        converted(formula_from(lean + "process:\n  - mix: { to: 25 C }\n  - bulk: { for: 1 h, at: 24 C }\n  "
                                      "- bake: { for: 40 min, at: 230 C }\n"),
                  {});
    REQUIRE(conversion.after.process.size() == 3);
    CHECK_FALSE(conversion.after.process[1].time);
    CHECK(conversion.after.process[1].note.find("1 h") != std::string::npos);
    CHECK(conversion.after.process[2].time.has_value());
}

TEST_CASE("request: flours of the levain") {
    const Pantry pantry;
    const auto read = [&](const std::string& text, std::string& codes) {
        Diagnostics diagnostics;
        std::vector<std::string> remarks;
        const auto source = std::make_shared<SourceText>("--levain-flour", text);
        auto flours = read_levain_flour({.source = source, .span = {0, text.size()}, .text = source->text()},
                                        pantry, diagnostics, remarks);
        codes.clear();
        for (const Diagnostic& item : diagnostics.in_order()) {
            codes += (codes.empty() ? "" : " ") + std::string(name_of(item.code));
        }
        return flours;
    };
    std::string codes;
    const auto two = read("rye flour 50%, bread flour 50 %", codes);
    CHECK(codes.empty());
    REQUIRE(two.size() == 2);
    CHECK(two[0].ingredient->name == "rye flour");
    CHECK(near(two[1].share.value(), 0.5, exact, 0.0));
    REQUIRE(read("whole rye flour", codes).size() == 1);
    CHECK(codes.empty());
    read("rye flour 50%, bread flour 40%", codes);
    CHECK(codes == "levain-flour-sum");
    read("rye flour, bread flour", codes);
    CHECK(codes == "unit-missing unit-missing");
    read("salt", codes);
    CHECK(codes == "levain-flour-unfit");
    read("50%", codes);
    CHECK(codes == "levain-flour-unfit");
    read("granite 100%", codes);
    CHECK(codes == "ingredient-unknown");
    read("%", codes);
    CHECK_FALSE(codes.empty());
    read("", codes);
    CHECK_FALSE(codes.empty());
}

TEST_CASE("request: lists are split at commas") {
    const auto source = std::make_shared<SourceText>("--keep", " poolish, ,biga ,");
    const auto parts =
        split_list({.source = source, .span = {0, source->text().size()}, .text = source->text()});
    REQUIRE(parts.size() == 2);
    CHECK(parts[0].text == "poolish");
    CHECK(parts[1].text == "biga");
    CHECK(parts[1].span == SourceSpan{11, 4});
}
