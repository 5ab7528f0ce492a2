#include "quantity/number.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <memory>
#include <string>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

struct Read {
    std::optional<ReadNumber> number;
    std::string code;
    SourceHandle source; // what the number's views are of
    SourceSpan span;
};

Read read(const std::string& text) {
    Diagnostics diagnostics;
    const auto source = std::make_shared<SourceText>("", text);
    Read result{.number = read_number({.source = source, .span = {0, text.size()}, .text = source->text()},
                                      diagnostics),
                .code = {},
                .source = source,
                .span = {}};
    if (!diagnostics.empty()) {
        result.code = name_of(diagnostics.in_order().front().code);
        result.span = diagnostics.in_order().front().span;
    }
    return result;
}

void reads(const std::string& text, double value, std::size_t length) {
    CAPTURE(text);
    const Read result = read(text);
    REQUIRE(result.number.has_value());
    CHECK(near(result.number->value, value, 1e-15, 0.0));
    CHECK(result.number->length == length);
}

} // namespace

TEST_CASE("number: decimals") {
    reads("650", 650.0, 3);
    reads("0.5 kg", 0.5, 3);
    reads(".5", 0.5, 2);
    reads("5.", 5.0, 2);
    reads("1e3 g", 1000.0, 3);
    reads("1.5E-2", 0.015, 6);
    reads("2e+1", 20.0, 4);
    reads("3 eggs", 3.0, 1);
    reads("3eggs", 3.0, 1); // an e without digits is a letter
    reads("007", 7.0, 3);
    reads("0", 0.0, 1);
}

TEST_CASE("number: fractions") {
    reads("1/2 cup", 0.5, 3);
    reads("3\xE2\x81\x84"
          "4",
          0.75, 5); // fraction slash
    reads("½ l", 0.5, 2);
    reads("⅓", 1.0 / 3.0, 3);
    reads("⅞", 7.0 / 8.0, 3);
    reads("5/4", 1.25, 3);
}

TEST_CASE("number: mixed numbers") {
    reads("1 1/2 cups", 1.5, 5);
    reads("1½ tbsp", 1.5, 3);
    reads("2 ½", 2.5, 4);
    reads("10 3/4", 10.75, 6);
    reads("1 5/4", 1.0, 1); // no mixed number: more than one
    reads("1.5 1/2", 1.5, 3);
    reads("1 2", 1.0, 1);
}

TEST_CASE("number: every vulgar fraction reads as its value") {
    reads("¼", 0.25, 2);
    reads("¾", 0.75, 2);
    reads("⅐", 1.0 / 7.0, 3);
    reads("⅑", 1.0 / 9.0, 3);
    reads("⅒", 0.1, 3);
    reads("⅔", 2.0 / 3.0, 3);
    reads("⅕", 0.2, 3);
    reads("⅖", 0.4, 3);
    reads("⅗", 0.6, 3);
    reads("⅘", 0.8, 3);
    reads("⅙", 1.0 / 6.0, 3);
    reads("⅚", 5.0 / 6.0, 3);
    reads("⅛", 0.125, 3);
    reads("⅜", 0.375, 3);
    reads("⅝", 0.625, 3);
}

TEST_CASE("number: what is none is reported") {
    CHECK(read("").code == "number-unreadable");
    CHECK(read("lots").code == "number-unreadable");
    CHECK(read(".").code == "number-unreadable");
    CHECK(read("e5").code == "number-unreadable");
    CHECK(read("+5").code == "number-unreadable");
    CHECK(read("inf").code == "number-unreadable");
    CHECK(read("nan").code == "number-unreadable");
    CHECK(read(" 5").code == "number-unreadable");
    CHECK(read("-5").code == "amount-not-positive");
    CHECK(read("\xE2\x88\x92"
               "5")
              .code == "amount-not-positive"); // the minus sign of typesetters
    CHECK(read("1e999").code == "amount-too-large");
}

TEST_CASE("number: a decimal comma is reported whole") {
    const Read result = read("1,8%");
    CHECK(result.code == "number-comma");
    CHECK(result.span == SourceSpan{0, 3});
    CHECK(read("1,000 g").code == "number-comma");
    CHECK(read("1, 2").code.empty()); // a list
}

TEST_CASE("number: no hexadecimal and no division by nothing") {
    reads("0x10", 0.0, 1);
    reads("1/0", 1.0, 1);
    reads("1/", 1.0, 1);
}

TEST_CASE("number: a scaled decimal is the nearest double") {
    CHECK(read("20.1").number->scaled(-3) == 0.0201);
    CHECK(read("0.3").number->scaled(-2) == 0.003);
    CHECK(read("1.1").number->scaled(-2) == 0.011);
    CHECK(read("1e2").number->scaled(-3) == 0.1);
    CHECK(read("7").number->scaled(0) == 7.0);
    CHECK(near(read("1/3").number->scaled(-3), 1.0 / 3000.0, 1e-15, 0.0));
}

TEST_CASE("number: the shortest decimal has no exponent and no needless zeros") {
    CHECK(exact_decimal(0.0201, 3) == "20.1");
    CHECK(exact_decimal(0.5, 0) == "0.5");
    CHECK(exact_decimal(0.5, 3) == "500");
    CHECK(exact_decimal(1e-9, 3) == "0.000001");
    CHECK(exact_decimal(123456.0, 0) == "123456");
    CHECK(exact_decimal(1e21, 0) == "1000000000000000000000");
    CHECK(exact_decimal(0.0, 3) == "0");
    CHECK(exact_decimal(-1.5, 0) == "-1.5");
    CHECK(exact_decimal(0.1 + 0.2, 0) == "0.30000000000000004");
    CHECK(exact_decimal(1.0, -3) == "0.001");
}

TEST_CASE("number: an exact shift leaves no dust") {
    CHECK(exact_shift(0.0201, 3) == 20.1);
    CHECK(exact_shift(0.0082, 1) == 0.082);
    CHECK(exact_shift(0.0, 3) == 0.0);
}
