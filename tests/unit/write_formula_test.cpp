#include "formula/read_formula.hpp"
#include "formula/write_formula.hpp"
#include "fuzz/formula_equality.hpp"
#include "support/formulas.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

const std::string head = "formula: 1\nname: Test\n";

void survives(const std::string& text) {
    CAPTURE(text);
    const Formula formula = formula_from(text);
    const std::string written = write_formula(formula, "heading");
    CAPTURE(written);
    Formula again;
    REQUIRE_NOTHROW(again = formula_from(written));
    CHECK(first_difference(formula, again) == "");
    CHECK(write_formula(again, "heading") == written);
}

} // namespace

TEST_CASE("write formula: a small formula") {
    const std::string written =
        write_formula(formula_from(head + "dough:\n  bread flour: 0.5 kg\n  water: 65%\n  salt: 10 "
                                          "g\nprocess:\n  - mix: { to: 25 C }\n  - divide\n"),
                      "One.\nTwo.");
    CHECK(written == "# One.\n# Two.\nformula: 1\nname: Test\ndough:\n  bread flour: 500 g\n  water: 325 g\n "
                     " salt: 10 g\nprocess:\n  - mix: { to: 25 C }\n  - divide\n");
}

TEST_CASE("write formula: no heading, no comment") {
    CHECK(
        write_formula(formula_from(head + "dough: { bread flour: 1 g }\n"), "").starts_with("formula: 1\n"));
}

TEST_CASE("write formula: every feature survives") {
    survives(head + "makes: 2 loaves x 850 g\nnote: |\n  two\n  lines\ncount as water: [milk]\ndough:\n  "
                    "bread flour: 1/3 lb\n  milk: 1 cup\n  egg: 2 large\n  salt: 1.7 oz\n"
                    "process:\n  - bulk: { for: 45 to 60 min, at: 75 F, to: -1 C, note: \"a: b, c\" }\n  - "
                    "shape: into rounds\n");
    survives(head + "flour weight: 1 kg\noverall:\n  bread flour: 90%\n  rye flour: 10%\n  water: 70%\n  "
                    "salt: 2%\n  fresh yeast: 1%\npreferments:\n  first dough:\n    kind: biga\n"
                    "    prefermented flour: 31.7%\n    bread flour: 100%\n    water: 55.5%\n    fresh "
                    "yeast: 0.3%\n    process: [ ripen: { for: 12 h } ]\n"
                    "soakers:\n  scald: { rye flour: 3%, water: 9% }\n");
    survives(head + "dough:\n  bread flour: 450 g\n  water: 155 g\n  levain: 335 g\npreferments:\n  levain: "
                    "{ bread flour: 150 g, water: 185 g, culture: 30 g, culture hydration: 77.7% }\n");
    survives(head + "dough: { levain: all }\npreferments:\n  levain: { bread flour: 150 g, water: 185 g }\n");
}

TEST_CASE("write formula: ingredients of its own survive") {
    survives(head + "dough: { quay flour: 1 scoop, water: 30 g }\npantry:\n  quay flour:\n    class: flour\n "
                    "   also: [house flour]\n    nearest for: [{ name: T99, why: \"near: enough\" }]\n"
                    "    stand-in: a neighbour\n    per 100 g: { water: 8.2 g, protein: 10.3 g, fat: 1.8 g, "
                    "carbohydrate: 78.3 g, fibre: 7.1 g, ash: 1.4 g, sugars: 0 g, sodium: 11 mg }\n"
                    "    source: label\n    volumes: [{ 1 cup: 162 g, how: scooped, source: weighed }, { 1/2 "
                    "cup: 81 g }]\n    volume uncertainty: 12.3%\n"
                    "    pieces: { Scoop: { weight: 40 g, source: weighed } }\n    eu allergens: [cereals "
                    "containing gluten (wheat)]\n    us allergens: [wheat]\n");
    survives(head + "dough: { bread flour: 1 kg, pier milk: 500 g }\npantry:\n  pier milk: { class: dairy, "
                    "dries to: nonfat dry milk }\n");
}

TEST_CASE("write formula: a composition of many digits survives") {
    survives(head + "dough: { quay flour: 1 kg }\npantry:\n  quay flour: { class: flour, per 100 g: { water: "
                    "8.234567890123457 g, protein: 0.1 g, fat: 1.7999999999999998 g, sodium: 11.3 mg } }\n");
}

TEST_CASE("write formula: texts that YAML would misread survive") {
    survives(
        "formula: 1\nname: \"- a: b # c\"\nnote: \"'quoted' \\\"twice\\\"\"\ndough: { bread flour: 1 kg }\n");
    survives("formula: 1\nname: ~tilde?\ndough: { bread flour: 1 kg }\n");
    survives(head + "dough: { bread flour: 1 kg }\nprocess:\n  - bulk: { for: 1 h, note: \"doubled?\" }\n  - "
                    "bake: \"hot, then cooler?\"\n");
    survives(head + "dough: { bread flour: 1 kg }\npreferments:\n  \"a: b\": { bread flour: 100 g }\n");
}

TEST_CASE("write formula: what it makes survives, with any noun") {
    survives(head + "makes: 12 rolls, small\ndough: { bread flour: 1 kg }\n");
    survives(head + "makes: 2 big [round] loaves\ndough: { bread flour: 1 kg }\n");
}

TEST_CASE("write formula: a time written with a tab survives") {
    survives(head + "dough: { bread flour: 1 kg }\nprocess:\n  - bulk: { for: 1\th }\n");
}

TEST_CASE("write formula: own ingredients named like keys of a stage survive a conversion") {
    const Formula formula =
        formula_from(head + "dough: { bread flour: 100 g, levain: 900 g, water: 600 g, instant yeast: 5 g "
                            "}\npantry:\n  levain: { class: flour }\n");
    const Formula after = converted(formula, {}).after;
    Formula again;
    REQUIRE_NOTHROW(again = formula_from(write_formula(after, "")));
    CHECK(first_difference(after, again) == "");
}

TEST_CASE("write formula: very large and very small amounts survive") {
    survives(head + "dough: { bread flour: 999 kg, water: 900000 g }\n");
    survives(head + "dough: { bread flour: 150000 kg, water: 200%, salt: 0.000001 mg }\n");
    survives(head + "dough: { bread flour: 1 kg, salt: 1e-300 mg }\n");
}

TEST_CASE("write formula: a dough too heavy to be written is refused when it is read") {
    CHECK(codes_of(head + "dough: { bread flour: 900000 kg, water: 200%, salt: 1 g }\n") ==
          "amount-too-large");
}

TEST_CASE("write formula: all demo formulas survive") {
    for (const char* name : {"breakwater-seed-loaf", "chandlers-caraway-rye", "ferry-galley-cinnamon-buns",
                             "ferry-galley-many-cups-loaf", "ferry-pier-tin-loaf", "quayside-half-levain"}) {
        survives(project_file(std::string("formulas/") + name + ".yaml"));
    }
}
