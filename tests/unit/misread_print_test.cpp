#include "transcribe/misread_print.hpp"

#include "support/recipes.hpp"

#include <doctest/doctest.h>

#include <initializer_list>
#include <string_view>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

struct Reading {
    std::string_view written;
    std::string_view meant;
};

} // namespace

TEST_CASE("misread print: letters for figures, before a measure") {
    for (const Reading& reading : std::initializer_list<Reading>{
             {"y4 cup water", "1/4 cup water"},
             {"V2 C. sugar", "1/2 C. sugar"},
             {"iy2 cups milk", "1 1/2 cups milk"},
             {"5y2 to 6 cups flour", "5 1/2 to 6 cups flour"},
             {"11/2 tsp. salt", "1 1/2 tsp. salt"},
             {"23/4 cups flour", "2 3/4 cups flour"},
             {"Yeast.....l0 ozs.", "Yeast.....10 ozs."},
             {"Butter.....l lb.", "Butter.....1 lb."},
             {"Salt, l 1/2 level tablespoonfuls", "Salt, 1 1/2 level tablespoonfuls"},
             {"9 to l0 1bs.", "9 to 10 lbs."},
             {"J pint new milk", "1/2 pint new milk"},
             {"34 c. sugar", "3/4 c. sugar"}}) {
        CAPTURE(reading.written);
        CHECK(mended_print(reading.written).text == reading.meant);
        CHECK(mended_print(reading.written).has_figures);
    }
}

TEST_CASE("misread print: pounds and letters are mended without a doubt") {
    for (const Reading& reading : std::initializer_list<Reading>{{"2 Ibs. currants", "2 lbs. currants"},
                                                                 {"1 1b. 8 ozs.", "1 lb. 8 ozs."},
                                                                 {"3 leve1 spoonfuls", "3 level spoonfuls"},
                                                                 {"a warm pIace", "a warm place"},
                                                                 {"bread fiour", "bread flour"}}) {
        CAPTURE(reading.written);
        CHECK(mended_print(reading.written).text == reading.meant);
        CHECK_FALSE(mended_print(reading.written).has_figures);
    }
}

TEST_CASE("misread print: what is right stays") {
    for (const std::string_view text :
         {"1 l milk", "2 l water", "500 g Type 550 flour", "V8 juice, 1 cup", "V2 rockets", "1/2 cup sugar",
          "13/16 size", "I like 2 cups of tea", "E150 caramel", "B12 vitamin", "MIXED WITH 1 LB FLOUR",
          "in 1b.'s words", "McIntosh apples", "l'eau tiède", "y4", "", "l"}) {
        CAPTURE(text);
        CHECK(mended_print(text).text == text);
    }
}

TEST_CASE("misread print: a mended figure is doubtful, a mended word is not") {
    const Read mended = read("Bread\n\n500 g fiour\n300 g water\nV2 tsp. salt\n");
    CHECK(lines_of(mended.transcription) == "dough: all-purpose flour 500, dough: water 300, dough: salt 3?");
}

TEST_CASE("misread print: a name with one letter wrong is doubtful, one that is nobody's stays unknown") {
    const Read found =
        read("Rolls\n\n500 g flonr\n300 g scaldcd milk\n50 g shortenlng\n30 g mystery\n10 g salt\n");
    CHECK(lines_of(found.transcription) == "dough: all-purpose flour 500?, dough: milk 300?, dough: "
                                           "shortening 50?, dough: mystery 30?, dough: salt 10");
    CHECK(found.codes == "ingredient-doubtful ingredient-doubtful ingredient-doubtful ingredient-unknown");
}
