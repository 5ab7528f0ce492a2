#include "source/source_text.hpp"

#include <doctest/doctest.h>

#include <memory>

using namespace leavenwright;

TEST_CASE("source text: lines are without their ends") {
    const SourceText text("a.yaml", "one\ntwo\r\n\nlast");
    CHECK(text.name() == "a.yaml");
    REQUIRE(text.line_count() == 4);
    CHECK(text.line(1) == "one");
    CHECK(text.line(2) == "two");
    CHECK(text.line(3).empty());
    CHECK(text.line(4) == "last");
    CHECK(text.line_start(2) == 4);
    CHECK(text.line_start(4) == 10);
}

TEST_CASE("source text: an empty text has one empty line") {
    const SourceText text("", "");
    CHECK(text.line_count() == 1);
    CHECK(text.line(1).empty());
    CHECK(text.position(0).line == 1);
    CHECK(text.position(0).column == 1);
}

TEST_CASE("source text: a text that ends in a line feed has an empty line behind it") {
    const SourceText text("", "a\n");
    CHECK(text.line_count() == 2);
    CHECK(text.line(2).empty());
    CHECK(text.position(2).line == 2);
}

TEST_CASE("source text: columns count code points") {
    const SourceText text("", "½ l\nlevûre: 7 g"); // one character of two bytes on each line
    CHECK(text.position(0).column == 1);
    CHECK(text.position(2).column == 2);
    const SourcePosition colon = text.position(text.text().find(':'));
    CHECK(colon.line == 2);
    CHECK(colon.column == 7);
}

TEST_CASE("source text: a place behind the end is the end") {
    const SourceText text("", "ab\ncd");
    CHECK(text.position(1000).line == 2);
    CHECK(text.position(1000).column == 3);
    CHECK(text.line_start(99) == 3);
}

TEST_CASE("sourced text: a part of a verbatim text has its own span") {
    const auto source = std::make_shared<SourceText>("", "water: 650 g");
    const SourcedText value{.source = source, .span = {7, 5}, .text = source->text().substr(7)};
    CHECK(value.is_verbatim());
    const SourcedText unit = value.part(4, 100);
    CHECK(unit.text == "g");
    CHECK(unit.span == SourceSpan{11, 1});
    CHECK(value.part(100, 3).text.empty());
}

TEST_CASE("sourced text: a part of a quoted text keeps the span of the whole") {
    const auto source = std::make_shared<SourceText>("", "\"650 g\"");
    const SourcedText value{.source = source, .span = {0, 7}, .text = source->text().substr(1, 5)};
    CHECK_FALSE(value.is_verbatim());
    CHECK(value.part(4, 1).text == "g");
    CHECK(value.part(4, 1).span == SourceSpan{0, 7});
}
