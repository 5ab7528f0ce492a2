#include "source/unicode.hpp"

#include <doctest/doctest.h>

#include <string>

using namespace leavenwright;
using namespace std::string_literals;

TEST_CASE("unicode: valid text has no fault") {
    CHECK_FALSE(find_text_fault(""));
    CHECK_FALSE(find_text_fault("bread flour: 500 g\r\n\tsalt"));
    CHECK_FALSE(find_text_fault("levûre ½ 水 \xF0\x9F\x8D\x9E"));
}

TEST_CASE("unicode: bytes that are not UTF-8 are found") {
    const auto check = [](const std::string& text, std::size_t offset) {
        const auto fault = find_text_fault(text);
        REQUIRE(fault.has_value());
        CHECK(fault->fault == TextFault::not_utf8);
        CHECK(fault->offset == offset);
        CHECK(fault->byte == static_cast<unsigned char>(text[offset]));
    };
    check("lev\xFBre", 3);        // Latin-1
    check("a\xC3", 1);            // cut short
    check("\x80", 0);             // a continuation alone
    check("ab\xC0\xAF", 2);       // overlong
    check("\xED\xA0\x80", 0);     // a surrogate
    check("\xF4\x90\x80\x80", 0); // above the last code point
    check("ok \xE2\x82", 3);      // cut short
    check("\xFF\xFE"
          "f\0"s,
          0); // UTF-16
}

TEST_CASE("unicode: control characters are found, layout is none") {
    const auto check = [](const std::string& text, std::size_t offset) {
        const auto fault = find_text_fault(text);
        REQUIRE(fault.has_value());
        CHECK(fault->fault == TextFault::control_character);
        CHECK(fault->offset == offset);
    };
    check("a\0b"s, 1);
    check("\x1b[31m", 0);
    check("ab\x7F", 2);
    check("a\xC2\x85", 1); // next line, of the second set of controls
    check("\b", 0);
}

TEST_CASE("unicode: width is in columns of a terminal") {
    CHECK(display_width("") == 0);
    CHECK(display_width("salt") == 4);
    CHECK(display_width("½ l") == 3);
    CHECK(display_width("水") == 2);
    CHECK(display_width("e\xCC\x81") == 1); // e and a combining accent
    CHECK(display_width("a\xFF") == 2);     // not UTF-8 counts as one
}

TEST_CASE("unicode: text is cut between characters") {
    CHECK(fit_width("water", 3) == "wat");
    CHECK(fit_width("water", 10) == "water");
    CHECK(fit_width("水水", 3) == "水");
    CHECK(fit_width("水", 1).empty());
    CHECK(fit_width("½½", 1) == "½");
    CHECK(fit_width("abc", 0).empty());
}

TEST_CASE("unicode: a character has a length in bytes") {
    CHECK(character_length("") == 0);
    CHECK(character_length("a") == 1);
    CHECK(character_length("½ l") == 2);
    CHECK(character_length("水") == 3);
    CHECK(character_length("\xF0\x9F\x8D\x9E") == 4);
    CHECK(character_length("\xFF") == 1);
    CHECK(character_length("\xE2\x82") == 1);
}

TEST_CASE("unicode: names fold to what they are compared by") {
    CHECK(fold_name("  Bread--Flour ") == "bread flour");
    CHECK(fold_name("Levûre  de\tBière") == "levure de biere");
    CHECK(fold_name("baker's yeast") == "bakers yeast");
    CHECK(fold_name("baker\xE2\x80\x99s yeast") == "bakers yeast");
    CHECK(fold_name("farine_T65") == "farine t65");
    CHECK(fold_name("Wei\xC3\x9Fmehl") == "weissmehl");
    CHECK(fold_name("").empty());
    CHECK(fold_name("-").empty());
    CHECK(fold_name("\xC3\x96l") == fold_name("O\xCC\x88l")); // composed or not
}

TEST_CASE("unicode: folding twice changes nothing") {
    for (const std::string name :
         {"Bread Flour", "Levûre", "½ rye", "a - b", "'", "\xEF\xBC\xA1", "\xFF x", "\xC2\xA0 x"}) {
        CHECK(fold_name(fold_name(name)) == fold_name(name));
    }
}

TEST_CASE("unicode: what is shown is harmless and short") {
    CHECK(printable("650 g", 10) == "650 g");
    CHECK(printable("a\x1b[31mb", 10) == "a\xEF\xBF\xBD[31mb");
    CHECK(printable("a\0b"s, 10) == "a\xEF\xBF\xBD"
                                    "b");
    CHECK(printable("\xE2\x80\xAE"
                    "abc",
                    10) == "\xEF\xBF\xBD"
                           "abc"); // would turn the line around
    CHECK(printable("abcdef", 3) == "abc\xE2\x80\xA6");
    CHECK(printable("\xFF", 10) == "\xEF\xBF\xBD");
}

TEST_CASE("on_one_line: line ends, tabs and runs of spaces become one space") {
    CHECK(on_one_line("1 h\n\n\t 30 min\r\n") == "1 h 30 min");
    CHECK(on_one_line("  folded note\n") == "folded note");
    CHECK(on_one_line(" \n ").empty());
}
