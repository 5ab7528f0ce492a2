#include "source/unicode.hpp"
#include "source/wrap_text.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace leavenwright;

TEST_CASE("wrap_text: a word longer than a line is broken, each line within its columns") {
    CHECK(wrap_text("aaaaaaaaaaaa bb", "- ", "  ", 8) == "- aaaaaa\n  aaaaaa\n  bb\n");
    CHECK(wrap_text("x 酸種酸種酸種", "", "", 5) == "x\n酸種\n酸種\n酸種\n");
}

TEST_CASE("wrap_text: a prefix as wide as the line leaves the word whole") {
    CHECK(wrap_text("abc", "1234", "1234", 4) == "1234abc\n");
}
