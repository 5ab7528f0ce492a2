#include "diagnostic/suggestion.hpp"

#include <doctest/doctest.h>

#include <array>
#include <string>

using namespace leavenwright;

TEST_CASE("suggestion: edits are counted up to the limit") {
    CHECK(edit_distance("salt", "salt", 2) == 0);
    CHECK(edit_distance("salt", "sal", 2) == 1);
    CHECK(edit_distance("salt", "salts", 2) == 1);
    CHECK(edit_distance("salt", "malt", 2) == 1);
    CHECK(edit_distance("water", "watre", 2) == 1); // neighbours swapped
    CHECK(edit_distance("ab", "ba", 2) == 1);
    CHECK(edit_distance("water", "wtaer", 2) == 1);
    CHECK(edit_distance("bread", "broads", 2) == 2);
    CHECK(edit_distance("bread", "salt", 2) == 3);
    CHECK(edit_distance("", "", 2) == 0);
    CHECK(edit_distance("", "ab", 2) == 2);
    CHECK(edit_distance("", "abc", 2) == 3);
    CHECK(edit_distance("salt", "malt", 0) == 1);
}

TEST_CASE("suggestion: the distance is the same both ways") {
    constexpr std::array<std::string_view, 7> words{"process", "proces", "porcess", "prcoess",
                                                    "proofs",  "p",      ""};
    for (const std::string_view left : words) {
        for (const std::string_view right : words) {
            CHECK(edit_distance(left, right, 2) == edit_distance(right, left, 2));
        }
    }
}

TEST_CASE("suggestion: very long words are only compared for equality") {
    const std::string left(1000, 'a');
    const std::string right = left.substr(1) + "b";
    CHECK(edit_distance(left, left, 2) == 0);
    CHECK(edit_distance(left, right, 2) == 3);
}

TEST_CASE("suggestion: the nearest word is within two edits, one for short words") {
    constexpr std::array<std::string_view, 4> units{"kg", "g", "cup", "process"};
    CHECK(nearest_word("gg", units) == "g"); // of equals, the one that begins alike
    CHECK(nearest_word("cups", units) == "cup");
    CHECK(nearest_word("proces", units) == "process");
    CHECK(nearest_word("proce", units) == "process");
    CHECK(nearest_word("xyz", units).empty());
    CHECK(nearest_word("anything", {}).empty());
}

TEST_CASE("suggestion: lists read as prose") {
    constexpr std::array<std::string_view, 3> words{"a", "b", "c"};
    CHECK(listed(std::span(words).first(0)).empty());
    CHECK(listed(std::span(words).first(1)) == "a");
    CHECK(listed(std::span(words).first(2)) == "a or b");
    CHECK(listed(words) == "a, b or c");
}
