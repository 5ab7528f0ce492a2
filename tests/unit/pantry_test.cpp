#include "pantry/pantry.hpp"
#include "pantry/read_pantry.hpp"
#include "quantity/read_quantity.hpp"
#include "source/unicode.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <memory>
#include <set>
#include <string>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

std::shared_ptr<const PantryShelf> shelf_from(const std::string& text, std::string& codes) {
    Diagnostics diagnostics;
    const auto document = read_document(std::make_shared<SourceText>("pantry.yaml", text), diagnostics);
    REQUIRE(document.has_value());
    auto shelf = read_ingredients(*document, document->root, diagnostics);
    for (const Diagnostic& item : diagnostics.in_order()) {
        codes += (codes.empty() ? "" : " ") + std::string(name_of(item.code));
    }
    return shelf;
}

std::string codes_of_shelf(const std::string& text) {
    std::string codes;
    shelf_from(text, codes);
    return codes;
}

} // namespace

TEST_CASE("pantry: a name is found however it is written") {
    const Pantry pantry;
    const Ingredient* flour = pantry.find("bread flour").ingredient;
    REQUIRE(flour != nullptr);
    CHECK(flour->name == "bread flour");
    for (const std::string_view name :
         {"Bread Flour", "bread-flour", "BREAD  FLOUR", "strong flour", "bread flours"}) {
        CHECK(pantry.find(name).ingredient == flour);
    }
    CHECK(pantry.find("eggs").ingredient == pantry.find("egg").ingredient);
    CHECK(pantry.find("tomatoes").ingredient == pantry.find("tomato").ingredient);
}

TEST_CASE("pantry: a name that stands in says so") {
    const Pantry pantry;
    const PantryMatch match = pantry.find("farine T55");
    REQUIRE(match.ingredient != nullptr);
    REQUIRE(match.nearest != nullptr);
    CHECK_FALSE(match.nearest->why.empty());
    CHECK(pantry.find("bread flour").nearest == nullptr);
}

TEST_CASE("pantry: unknown and ambiguous names") {
    const Pantry pantry;
    CHECK(pantry.find("granite").ingredient == nullptr);
    CHECK(pantry.find("").ingredient == nullptr);
    CHECK(pantry.find("s").ingredient == nullptr);
    CHECK(pantry.find("yeast").ingredient == nullptr);
    CHECK(pantry.meanings_of("Yeast").size() == 3);
    CHECK(pantry.meanings_of("bread flour").empty());
}

TEST_CASE("pantry: near misses") {
    const Pantry pantry;
    const auto names = pantry.near_misses("bred flour");
    REQUIRE_FALSE(names.empty());
    CHECK(names.front() == "bread flour");
    CHECK(names.size() <= 3);
    CHECK(pantry.near_misses("qqqqqqqqqq").empty());
    CHECK(std::find(names.begin(), names.end(), "") == names.end());
}

TEST_CASE("pantry: every built-in ingredient is found by its names") {
    const Pantry pantry;
    std::set<std::string> names;
    for (const Ingredient& ingredient : pantry.built_in()) {
        CAPTURE(ingredient.name);
        CHECK(pantry.find(ingredient.name).ingredient == &ingredient);
        CHECK(names.insert(fold_name(ingredient.name)).second);
        for (const std::string_view name : ingredient.also) {
            CAPTURE(name);
            CHECK(pantry.find(name).ingredient == &ingredient);
        }
        for (const NearestName& nearest : ingredient.nearest_for) {
            CAPTURE(nearest.name);
            CHECK(pantry.find(nearest.name).ingredient == &ingredient);
            CHECK(pantry.find(nearest.name).nearest != nullptr);
        }
        if (!ingredient.dries_to.empty()) {
            CHECK(pantry.find(ingredient.dries_to).ingredient != nullptr);
            CHECK(ingredient.composition.water.value() >
                  pantry.find(ingredient.dries_to).ingredient->composition.water.value());
        }
        const Composition& c = ingredient.composition;
        const double sum =
            c.water.value() + c.protein.value() + c.fat.value() + c.carbohydrate.value() + c.ash.value();
        CHECK(sum <= 1.02);
        for (const MeasuredVolume& volume : ingredient.volumes) {
            const double density = volume.mass.value() / volume.volume.value(); // kg/m3
            CHECK(density > 50.0);
            CHECK(density < 2500.0);
        }
    }
    for (const AmbiguousName& ambiguous : embedded_pantry().ambiguous) {
        CHECK(pantry.find(ambiguous.folded).ingredient == nullptr);
        for (const std::string_view meaning : ambiguous.meanings) {
            CHECK(pantry.find(meaning).ingredient != nullptr);
        }
    }
}

TEST_CASE("pantry: volumes and pieces weigh something") {
    const Pantry pantry;
    const Ingredient& egg = *pantry.find("egg").ingredient;
    const auto weighs = [&](std::string_view word, double grams_wanted) {
        const auto mass = mass_of_piece(egg, word);
        REQUIRE(mass.has_value());
        CHECK(near(in_grams(*mass), grams_wanted, 1e-12, 0.0));
    };
    weighs("", 50.0);
    weighs("large", 50.0);
    weighs("eggs large", 50.0);
    weighs("Extra-Large", 56.0);
    weighs("eggs", 50.0);
    CHECK_FALSE(mass_of_piece(egg, "gigantic"));
    const auto cup = mass_of_volume(*pantry.find("milk").ingredient, cubic_metres(3.785411784e-3 / 16.0));
    REQUIRE(cup.has_value());
    CHECK(near(in_grams(*cup), 244.0, 1e-9, 0.0));
    CHECK_FALSE(mass_of_volume(Ingredient{}, litres(1.0)));
}

TEST_CASE("pantry: ingredients that are added come first") {
    std::string codes;
    const auto shelf = shelf_from(
        "bread flour:\n  class: flour\n  also: [quay flour]\n  nearest for:\n    - { name: T99, why: near "
        "}\n  per 100 g: { water: 8.2 g, fat: 0 g }\n"
        "  volumes:\n    - { 1 cup: 162 g, source: weighed }\n  pieces:\n    Scoop: { weight: 40 g }\n",
        codes);
    CHECK(codes.empty());
    Pantry pantry;
    const Ingredient* built_in = pantry.find("bread flour").ingredient;
    pantry.add(shelf);
    const Ingredient* own = pantry.find("Bread Flour").ingredient;
    REQUIRE(own != nullptr);
    CHECK(own != built_in);
    CHECK(pantry.find("quay flours").ingredient == own);
    CHECK(pantry.find("T99").nearest != nullptr);
    CHECK(own->composition.water.value() == 0.082);
    CHECK(own->volume_uncertainty.value() == 0.15);
    CHECK(mass_of_piece(*own, "scoops").has_value());
    CHECK(pantry.added().size() == 1);
    CHECK(Pantry().find("quay flour").ingredient == nullptr);
}

TEST_CASE("pantry: faults of an ingredient") {
    CHECK(codes_of_shelf("a: { class: flower }") == "class-unknown");
    CHECK(codes_of_shelf("a: { class: culture }") == "class-unknown");
    CHECK(codes_of_shelf("a: { also: [b] }") == "key-missing");
    CHECK(codes_of_shelf("a: { class: flour, colour: red }") == "key-unknown");
    CHECK(codes_of_shelf("a: flour") == "value-not-a-map");
    CHECK(codes_of_shelf("a:") == "value-missing");
    CHECK(codes_of_shelf("a: { class: flour, per 100 g: { water: 80 g, fat: 30 g } }") ==
          "composition-impossible");
    CHECK(codes_of_shelf("a: { class: flour, per 100 g: { water: -1 g } }") == "amount-not-positive");
    CHECK(codes_of_shelf("a: { class: flour, per 100 g: { iron: 1 g } }") == "key-unknown");
    CHECK(codes_of_shelf("a: { class: flour }\nb: { class: flour, also: [A] }") == "name-taken");
    CHECK(codes_of_shelf("a: { class: flour, also: b }") == "value-not-a-list");
    CHECK(codes_of_shelf("a: { class: flour, also: [[b]] }") == "value-not-text");
    CHECK(codes_of_shelf("a: { class: flour, volumes: [{ 1 kg: 100 g }] }") == "unit-unfit");
    CHECK(codes_of_shelf("a: { class: flour, volumes: { 1 cup: 100 g } }") == "value-not-a-list");
    CHECK(codes_of_shelf("a: { class: flour, pieces: [x] }") == "value-not-a-map");
    CHECK(codes_of_shelf("a: { class: flour, pieces: { x: { source: y } } }") == "key-missing");
    CHECK(codes_of_shelf("a: { class: flour, volume uncertainty: 15 }") == "unit-missing");
    CHECK(codes_of_shelf("a: { class: flour, nearest for: [{ name: b }] }") == "key-missing");
}

TEST_CASE("pantry: classes have names that read back") {
    for (const std::string_view name :
         {"flour", "liquid", "salt", "sweetener", "fat", "egg", "dairy", "yeast", "seed or grain", "other"}) {
        const auto value = ingredient_class_named(name);
        REQUIRE(value.has_value());
        CHECK(name_of(*value) == name);
    }
    CHECK_FALSE(ingredient_class_named("culture"));
}
