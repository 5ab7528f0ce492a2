#include "formula/read_formula.hpp"
#include "support/formulas.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

constexpr double exact = 1e-12;
const std::string head = "formula: 1\nname: Test\n";
const std::string small = head + "dough:\n  bread flour: 500 g\n  water: 325 g\n  salt: 10 g\n";

double grams_of(const std::vector<Line>& lines, std::string_view name) {
    for (const Line& line : lines) {
        if (line.name == name) {
            return in_grams(line.mass);
        }
    }
    return 0.0;
}

bool weighs(double actual_g, double expected_g) {
    return near(actual_g, expected_g, exact, 1e-9);
}

} // namespace

TEST_CASE("read formula: a dough in weights") {
    const Formula formula =
        formula_from(head + "note: by hand\nmakes: 2 x 850 g\ncount as water: [milk]\ndough:\n  bread flour: "
                            "900 g\n  whole wheat flour: 0.1 kg\n"
                            "  water: 660 g\n  salt: 20 g\n  instant yeast: 7 g\n");
    CHECK(formula.name == "Test");
    CHECK(formula.note == "by hand");
    CHECK(formula.notation == Notation::dough);
    REQUIRE(formula.dough.size() == 5);
    CHECK(formula.dough[0].name == "bread flour");
    CHECK(formula.dough[0].ingredient->name == "bread flour");
    CHECK(weighs(grams_of(formula.dough, "whole wheat flour"), 100.0));
    CHECK(weighs(in_grams(formula.dough_mass()), 1687.0));
    REQUIRE(formula.count_as_water.size() == 1);
    CHECK(formula.count_as_water[0]->name == "milk");
    CHECK(formula.stages.empty());
    CHECK(formula.pantry != nullptr);
    CHECK(formula.own_ingredients == nullptr);
}

TEST_CASE("read formula: what it makes") {
    const auto makes = [](const std::string& text) {
        return *formula_from(small + "makes: " + text + "\n").makes;
    };
    const Yield pieces = makes("2 x 417.5 g");
    CHECK(pieces.pieces == 2.0);
    CHECK(weighs(in_grams(*pieces.dough), 835.0));
    CHECK(weighs(in_grams(*pieces.piece), 417.5));
    CHECK(makes("2 loaves x 417 g").noun == "loaves");
    CHECK(weighs(in_grams(*makes("835 g").dough), 835.0));
    CHECK_FALSE(makes("835 g").piece);
    CHECK(makes("12 rolls").noun == "rolls");
    CHECK_FALSE(makes("12 rolls").dough);
    CHECK(makes("12").pieces == 12.0);
    CHECK(makes("12").noun.empty());
    CHECK(weighs(in_grams(*makes("2x417 g").dough), 834.0));
    CHECK(weighs(in_grams(*makes("2 × 417 g").dough), 834.0));
    CHECK(weighs(in_grams(*makes("2 loaves of 417 g").dough), 834.0));
    CHECK(codes_of(small + "makes: two big ones\n") == "number-unreadable");
    CHECK(codes_of(small + "makes: 0 rolls\n") == "makes-unreadable");
    CHECK(codes_of(small + "makes: 2 x 850 g\n") == "makes-mismatch");
    CHECK(codes_of(small + "makes: 2 x 100 g\n") == "makes-mismatch");
}

TEST_CASE("read formula: percentages sized by what it makes") {
    const Formula formula =
        formula_from(head + "makes: 2 x 835 g\ndough:\n  bread flour: 100%\n  water: 65%\n  salt: 2%\n");
    CHECK(weighs(grams_of(formula.dough, "bread flour"), 1000.0));
    CHECK(weighs(grams_of(formula.dough, "salt"), 20.0));
    CHECK(weighs(in_grams(formula.dough_mass()), 1670.0));
}

TEST_CASE("read formula: percentages sized by the flour weight") {
    const Formula formula = formula_from(
        head +
        "flour weight: 2 kg\ndough:\n  bread flour: 90%\n  rye flour: 10%\n  water: 65%\n  salt: 30 g\n");
    CHECK(weighs(grams_of(formula.dough, "rye flour"), 200.0));
    CHECK(weighs(grams_of(formula.dough, "water"), 1300.0));
    CHECK(weighs(grams_of(formula.dough, "salt"), 30.0));
}

TEST_CASE("read formula: weights and percentages in one list") {
    const Formula formula =
        formula_from(head + "dough:\n  bread flour: 900 g\n  rye flour: 10%\n  water: 65%\n");
    CHECK(weighs(grams_of(formula.dough, "rye flour"), 100.0));
    CHECK(weighs(grams_of(formula.dough, "water"), 650.0));
}

TEST_CASE("read formula: measures and pieces carry an uncertainty") {
    const Formula formula =
        formula_from(head + "dough:\n  bread flour: 4 cups\n  milk: 1 cup\n  egg: 2 large\n  butter: 1 "
                            "stick\n  salt: 10 g\n  instant yeast: 1 packet\n");
    CHECK(weighs(grams_of(formula.dough, "milk"), 244.0));
    CHECK(weighs(grams_of(formula.dough, "egg"), 100.0));
    CHECK(weighs(grams_of(formula.dough, "butter"), 113.0));
    CHECK(formula.dough[0].uncertainty.value() > 0.0);
    CHECK(formula.dough[2].uncertainty == piece_uncertainty);
    CHECK(formula.dough[4].uncertainty.value() == 0.0);
}

TEST_CASE("read formula: the overall notation takes the stages out") {
    const Formula formula = formula_from(
        head +
        "makes: 1701 g\noverall:\n  bread flour: 100%\n  water: 67%\n  salt: 2%\n  instant yeast: 1.1%\n"
        "preferments:\n  poolish:\n    prefermented flour: 33%\n    bread flour: 100%\n    water: 100%\n    "
        "instant yeast: 0.2%\n");
    CHECK(formula.notation == Notation::overall);
    REQUIRE(formula.stages.size() == 1);
    const Stage& poolish = formula.stages.front();
    CHECK(poolish.kind == StageKind::poolish);
    CHECK(weighs(grams_of(poolish.lines, "bread flour"), 330.0));
    CHECK(weighs(grams_of(poolish.lines, "instant yeast"), 0.66));
    CHECK(weighs(grams_of(formula.dough, "bread flour"), 670.0));
    CHECK(weighs(grams_of(formula.dough, "water"), 340.0));
    CHECK(weighs(in_grams(formula.dough_mass()), 1701.0));
}

TEST_CASE("read formula: overall lines that a stage uses up are gone") {
    const Formula formula =
        formula_from(head + "overall:\n  bread flour: 500 g\n  rye flour: 100 g\n  water: 400 "
                            "g\npreferments:\n  sponge: { rye flour: 100 g, water: 100 g }\n");
    CHECK(formula.dough.size() == 2);
    CHECK(weighs(grams_of(formula.dough, "water"), 300.0));
    CHECK(codes_of(head + "overall:\n  bread flour: 500 g\n  water: 100 g\npreferments:\n  sponge: { bread "
                          "flour: 200 g, water: 200 g }\n") == "stage-overdrawn");
    CHECK(codes_of(head + "overall:\n  bread flour: 500 g\n  sponge: all\npreferments:\n  sponge: { bread "
                          "flour: 200 g }\n") == "key-unknown");
}

TEST_CASE("read formula: a stage in weights goes in whole, or in part") {
    const std::string stages =
        "preferments:\n  levain:\n    bread flour: 150 g\n    water: 185 g\n    culture: 30 g\n";
    const Formula whole = formula_from(small + stages);
    CHECK(weighs(in_grams(whole.stages[0].used), 365.0));
    CHECK(whole.stages[0].used == whole.stages[0].mass());
    CHECK(formula_from(small + "  levain: all\n" + stages).stages[0].used == whole.stages[0].mass());
    const Formula part = formula_from(small + "  levain: 335 g\n" + stages);
    CHECK(weighs(in_grams(part.stages[0].used), 335.0));
    CHECK(near(part.stages[0].fraction_used().value(), 335.0 / 365.0, exact, 0.0));
    CHECK(codes_of(small + "  levain: 400 g\n" + stages) == "stage-overdrawn");
    CHECK(codes_of(small + "  levain: 2 cups\n" + stages) == "unit-unfit");
}

TEST_CASE("read formula: a stage named twice in the dough is reported") {
    CHECK_FALSE(codes_of(small + "  poolish: 100 g\n  Poolish: 20 g\npreferments:\n  poolish: { bread flour: "
                                 "100 g, water: 100 g }\n")
                    .empty());
}

TEST_CASE("read formula: the culture's own hydration") {
    const Formula own = formula_from(
        small + "preferments:\n  levain:\n    bread flour: 100 g\n    water: 60 g\n    culture: 20 g\n");
    CHECK(near(own.stages[0].culture_hydration.value(), 0.6, exact, 0.0));
    const Formula said = formula_from(small + "preferments:\n  levain:\n    culture hydration: 80%\n    "
                                              "bread flour: 100 g\n    water: 60 g\n    culture: 20 g\n");
    CHECK(near(said.stages[0].culture_hydration.value(), 0.8, exact, 0.0));
    CHECK(codes_of(small + "  culture: 20 g\n") == "culture-outside-levain");
    CHECK(codes_of(small + "preferments:\n  poolish: { bread flour: 100 g, starter: 20 g }\n") ==
          "culture-outside-levain");
}

TEST_CASE("read formula: kinds of stages by name or key") {
    const auto kind = [](const std::string& stage) { return formula_from(small + stage).stages.at(0).kind; };
    const std::string lines = "bread flour: 100 g, water: 100 g }\n";
    CHECK(kind("preferments:\n  poolish: { " + lines) == StageKind::poolish);
    CHECK(kind("preferments:\n  Biga: { " + lines) == StageKind::biga);
    CHECK(kind("preferments:\n  old dough: { " + lines) == StageKind::old_dough);
    CHECK(kind("preferments:\n  rye levain: { " + lines) == StageKind::levain);
    CHECK(kind("preferments:\n  starter: { " + lines) == StageKind::levain);
    CHECK(kind("preferments:\n  first dough: { " + lines) == StageKind::preferment);
    CHECK(kind("preferments:\n  first dough: { kind: sponge, " + lines) == StageKind::sponge);
    CHECK(kind("soakers:\n  seeds: { flaxseed: 50 g, water: 75 g }\n") == StageKind::soaker);
    CHECK(kind("soakers:\n  scald: { " + lines) == StageKind::scald);
    CHECK(kind("soakers:\n  seeds: { kind: scald, flaxseed: 50 g, water: 75 g }\n") == StageKind::scald);
    CHECK(codes_of(small + "preferments:\n  x: { kind: starter, " + lines) == "stage-kind-unknown");
    CHECK(codes_of(small + "soakers:\n  x: { kind: poolish, " + lines) == "stage-kind-unknown");
}

TEST_CASE("read formula: sizes of stages in percentages") {
    const std::string percent = "{ bread flour: 100%, water: 60%, ";
    const Formula by_weight = formula_from(small + "preferments:\n  biga: " + percent + "weight: 320 g }\n");
    CHECK(weighs(grams_of(by_weight.stages[0].lines, "bread flour"), 200.0));
    const Formula by_use =
        formula_from(small + "  biga: 320 g\npreferments:\n  biga: { bread flour: 100%, water: 60% }\n");
    CHECK(weighs(grams_of(by_use.stages[0].lines, "water"), 120.0));
    const Formula by_share =
        formula_from(small + "preferments:\n  biga: " + percent + "prefermented flour: 20% }\n");
    CHECK(weighs(grams_of(by_share.stages[0].lines, "bread flour"), 125.0)); // 20 % of 500 g / 0.8
    const Formula unnamed =
        formula_from(small + "preferments:\n  biga: { prefermented flour: 20%, water: 60% }\n");
    CHECK(weighs(grams_of(unnamed.stages[0].lines, "bread flour"), 125.0));
    CHECK(codes_of(small + "preferments:\n  biga: { bread flour: 100%, water: 60% }\n") ==
          "stage-size-missing");
    CHECK(codes_of(small + "preferments:\n  biga: " + percent +
                   "prefermented flour: 20%, weight: 320 g }\n") == "size-given-twice");
    CHECK(codes_of(small + "preferments:\n  biga: { bread flour: 100 g, water: 60%, weight: 320 g }\n") ==
          "size-given-twice");
    CHECK(codes_of(small + "preferments:\n  biga: { bread flour: 90%, water: 60%, weight: 320 g }\n") ==
          "flour-percent-sum");
    CHECK(codes_of(small + "preferments:\n  biga: { water: 60 g }\n") == "stage-flour-missing");
    CHECK(codes_of(small + "preferments:\n  biga: {}\n") == "stage-empty");
}

TEST_CASE("read formula: soakers are of the total flour") {
    const Formula formula = formula_from(small + "soakers:\n  seeds:\n    flaxseed: 10%\n    water: 75 g\n   "
                                                 " process:\n      - soak: { for: 2 to 4 h }\n");
    REQUIRE(formula.stages.size() == 1);
    CHECK(weighs(grams_of(formula.stages[0].lines, "flaxseed"), 50.0));
    CHECK(weighs(grams_of(formula.stages[0].lines, "water"), 75.0));
    REQUIRE(formula.stages[0].process.size() == 1);
    CHECK(formula.stages[0].process[0].verb == "soak");
}

TEST_CASE("read formula: the process") {
    const Formula formula =
        formula_from(small + "process:\n  - mix: { to: 25 C }\n  - bulk: { for: 1 h 30 min, at: 75.2 F, "
                             "note: fold twice }\n  - Divide\n  - shape: into rounds\n  - bake:\n");
    REQUIRE(formula.process.size() == 5);
    CHECK(near(formula.process[0].to->value.in_celsius(), 25.0, exact, 1e-10));
    CHECK(formula.process[1].time->text == "1 h 30 min");
    CHECK(near(formula.process[1].time->value.most.value(), 5400.0, exact, 0.0));
    CHECK(near(formula.process[1].at->value.in_celsius(), 24.0, exact, 1e-10));
    CHECK(formula.process[1].note == "fold twice");
    CHECK(formula.process[2].verb == "divide");
    CHECK(formula.process[3].note == "into rounds");
    CHECK(formula.process[4].verb == "bake");
}

TEST_CASE("read formula: faults of the process") {
    CHECK(codes_of(small + "process: mix\n") == "value-not-a-list");
    CHECK(codes_of(small + "process: [ knead_it ]\n") == "step-unknown");
    CHECK(codes_of(small + "process:\n  - [ mix ]\n") == "value-not-a-map");
    CHECK(codes_of(small + "process:\n  - mix: [ a ]\n") == "value-not-a-map");
    CHECK(codes_of(small + "process:\n  - { mix: a, bake: b }\n") == "value-not-a-map");
    CHECK(codes_of(small + "process:\n  - bulk: { fro: 1 h }\n") == "key-unknown");
    CHECK(codes_of(small + "process:\n  - bulk: { for: 20 g }\n") == "unit-unfit");
    CHECK(codes_of(small + "process:\n  - bulk: { at: 2400 C }\n") == "temperature-out-of-range");
    CHECK(codes_of(small + "process:\n  - bulk: { for: \"1 h\" }\n") == "quoted-number");
    CHECK(codes_of(small + "process:\n  - bulk: { for: }\n") == "value-missing");
}

TEST_CASE("read formula: faults of the heading") {
    CHECK(codes_of("name: x\ndough: { bread flour: 1 kg }\n") == "key-missing");
    CHECK(codes_of("formula: 1\ndough: { bread flour: 1 kg }\n") == "key-missing");
    CHECK(codes_of("formula: 7\nname: x\ndough: { bread flour: 1 kg }\n") == "version-unknown");
    CHECK(codes_of(head) == "key-missing");
    CHECK(codes_of(small + "overall: { bread flour: 1 kg }\n") == "dough-and-overall");
    CHECK(codes_of(small + "proces: [ mix ]\n") == "key-unknown");
    CHECK(codes_of(small + "flour weight: 800 g\n") == "size-given-twice");
    CHECK(codes_of(small + "flour weight: 500 g\n").empty());
    CHECK(codes_of(head + "dough:\n") == "value-missing");
    CHECK(codes_of(head + "dough: 500 g of flour\n") == "value-not-a-map");
    CHECK(codes_of(small + "count as water: milk\n") == "value-not-a-list");
}

TEST_CASE("read formula: faults of amounts and names") {
    const auto line = [](const std::string& text) {
        return codes_of(head + "dough:\n  bread flour: 500 g\n  " + text + "\n");
    };
    CHECK(line("water: 650") == "unit-missing");
    CHECK(line("water: 650 gg") == "unit-unknown");
    CHECK(line("water: 1,5 kg") == "number-comma");
    CHECK(line("water: \"650 g\"") == "quoted-number");
    CHECK(line("water:") == "value-missing");
    CHECK(line("water: [ 650 g ]") == "value-not-text");
    CHECK(line("water: 0 g") == "amount-not-positive");
    CHECK(line("egg: 2 gigantic") == "piece-unknown");
    CHECK(line("yeast: 7 g") == "ingredient-ambiguous");
    CHECK(line("granite: 7 g") == "ingredient-unknown");
    CHECK(line("vital wheat gluten: 2 fl oz").find("unit") == std::string::npos);
    CHECK(codes_of(head + "dough: { water: 650 g }\n") == "flour-missing");
    CHECK(codes_of(head + "makes: 1 kg\ndough: { bread flour: 80%, rye flour: 10%, water: 60% }\n") ==
          "flour-percent-sum");
    CHECK(codes_of(head + "dough: { bread flour: 100%, water: 60% }\n") == "formula-size-missing");
}

TEST_CASE("read formula: all faults are reported, not only the first") {
    CHECK(codes_of("formula: 2\ndough:\n  bred flour: 500 g\n  water: 1,5 l\n") ==
          "key-missing version-unknown ingredient-unknown number-comma");
}

TEST_CASE("read formula: ingredients of its own") {
    const Formula formula = formula_from(head + "dough: { house malt: 500 g, water: 300 g }\npantry:\n  "
                                                "harbour malt flour: { class: flour, also: [house malt] }\n");
    CHECK(formula.dough[0].name == "house malt");
    CHECK(formula.dough[0].ingredient->name == "harbour malt flour");
    REQUIRE(formula.own_ingredients != nullptr);
    CHECK(formula.own_ingredients->ingredients().size() == 1);
}

TEST_CASE("read formula: a name that stands in leaves a remark") {
    CHECK(formula_from(head + "dough: { farine T55: 500 g, water: 300 g }\n").remarks.size() == 1);
    CHECK(formula_from(small).remarks.empty());
}

TEST_CASE("read formula: two stages of one name") {
    CHECK(codes_of(small +
                   "preferments:\n  seeds: { bread flour: 10 g }\nsoakers:\n  Seeds: { flaxseed: 5 g }\n") ==
          "key-duplicate");
}

TEST_CASE("formula: stages are found by any spelling") {
    const Formula formula =
        formula_from(small + "preferments:\n  old dough: { bread flour: 100 g, water: 60 g }\n");
    CHECK(formula.find_stage("Old-Dough") == &formula.stages[0]);
    CHECK(formula.find_stage("poolish") == nullptr);
}

TEST_CASE("formula: scaling keeps a whole stage whole") {
    Formula formula = formula_from(
        small + "preferments:\n  levain: { bread flour: 33.3 g, water: 44.7 g, culture: 10.1 g }\n");
    for (const double factor : {1.0 / 3.0, 1.1, 7.77, 0.9876543}) {
        formula.scale(factor);
        CHECK(formula.stages[0].used == formula.stages[0].mass());
    }
}

TEST_CASE("formula: names of kinds and of the culture") {
    CHECK(name_of(StageKind::old_dough) == "old dough");
    CHECK(is_preferment(StageKind::levain));
    CHECK(is_preferment(StageKind::preferment));
    CHECK_FALSE(is_preferment(StageKind::soaker));
    CHECK_FALSE(is_preferment(StageKind::scald));
    CHECK(is_culture_name("Ripe Starter"));
    CHECK_FALSE(is_culture_name("yeast"));
    CHECK(culture_ingredient().is_culture());
}
