#include "quantity/read_quantity.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <memory>
#include <string>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

constexpr double exact = 1e-12;
constexpr double pound_kg = 0.45359237;
constexpr double gallon_m3 = 3.785411784e-3;

template <class Value>
struct Read {
    SourceHandle source;
    std::optional<Value> value;
    std::string codes;
    SourceSpan span; // of the first finding
    std::string hint;
};

template <class Reader>
auto read(Reader reader, const std::string& text) {
    Diagnostics diagnostics;
    const auto source = std::make_shared<SourceText>("", text);
    const SourcedText place{.source = source, .span = {0, text.size()}, .text = source->text()};
    auto value = reader(place, diagnostics);
    Read<typename decltype(value)::value_type> result{
        .source = source, .value = std::move(value), .codes = {}, .span = {}, .hint = {}};
    for (const Diagnostic& item : diagnostics.in_order()) {
        result.codes += (result.codes.empty() ? "" : " ") + std::string(name_of(item.code));
    }
    if (!diagnostics.empty()) {
        result.span = diagnostics.in_order().front().span;
        result.hint = diagnostics.in_order().front().hint;
    }
    CHECK(result.value.has_value() == !diagnostics.has_errors());
    return result;
}

void is_mass(const std::string& text, double kg) {
    CAPTURE(text);
    const auto amount = read(read_amount, text);
    REQUIRE(amount.value.has_value());
    REQUIRE(std::holds_alternative<Mass>(*amount.value));
    CHECK(near(std::get<Mass>(*amount.value).value(), kg, exact, 0.0));
    const auto mass = read(read_mass, text);
    REQUIRE(mass.value.has_value());
    CHECK(mass.value->value() == std::get<Mass>(*amount.value).value());
}

void is_volume(const std::string& text, double m3) {
    CAPTURE(text);
    const auto amount = read(read_amount, text);
    REQUIRE(amount.value.has_value());
    REQUIRE(std::holds_alternative<Volume>(*amount.value));
    CHECK(near(std::get<Volume>(*amount.value).value(), m3, exact, 0.0));
}

void is_count(const std::string& text, double number, std::string_view word) {
    CAPTURE(text);
    const auto amount = read(read_amount, text);
    REQUIRE(amount.value.has_value());
    REQUIRE(std::holds_alternative<Count>(*amount.value));
    CHECK(near(std::get<Count>(*amount.value).number, number, exact, 0.0));
    CHECK(std::get<Count>(*amount.value).word == word);
}

void is_percentage(const std::string& text, double ratio) {
    CAPTURE(text);
    const auto amount = read(read_amount, text);
    REQUIRE(amount.value.has_value());
    REQUIRE(std::holds_alternative<WrittenPercentage>(*amount.value));
    CHECK(near(std::get<WrittenPercentage>(*amount.value).value(), ratio, exact, 0.0));
    REQUIRE(read(read_percentage, text).value.has_value());
}

void lasts(const std::string& text, double least_s, double most_s) {
    CAPTURE(text);
    const auto range = read(read_duration, text);
    REQUIRE(range.value.has_value());
    CHECK(near(range.value->least.value(), least_s, exact, 0.0));
    CHECK(near(range.value->most.value(), most_s, exact, 0.0));
}

void is_celsius(const std::string& text, double degrees) {
    CAPTURE(text);
    const auto temperature = read(read_temperature, text);
    REQUIRE(temperature.value.has_value());
    CHECK(near(temperature.value->in_celsius(), degrees, exact, 1e-10));
}

} // namespace

TEST_CASE("read quantity: weights") {
    is_mass("900 g", 0.9);
    is_mass("900g", 0.9);
    is_mass(" 1.5 kg ", 1.5);
    is_mass("250 mg", 0.00025);
    is_mass("1 oz", pound_kg / 16.0);
    is_mass("5 lb 4 oz", 5.25 * pound_kg);
    is_mass("5lb4oz", 5.25 * pound_kg);
    is_mass("1 lb. 2 oz.", 1.125 * pound_kg);
    is_mass("3 pounds", 3.0 * pound_kg);
    is_mass("1/2 lb", 0.5 * pound_kg);
    is_mass("1 1/2 kg", 1.5);
    is_mass("1½ kg", 1.5);
    is_mass("2 Grams", 0.002);
    is_mass("1 kg 250 g", 1.25);
    CHECK(std::get<Mass>(*read(read_amount, "20.1 g").value).value() == 0.0201);
}

TEST_CASE("read quantity: volumes") {
    is_volume("1 l", 1e-3);
    is_volume("½ l", 5e-4);
    is_volume("250 ml", 2.5e-4);
    is_volume("1 cup", gallon_m3 / 16.0);
    is_volume("1 1/2 cups", 1.5 * gallon_m3 / 16.0);
    is_volume("2 tbsp", gallon_m3 / 128.0);
    is_volume("2 fl oz", gallon_m3 / 64.0);
    is_volume("1 metric cup", 2.5e-4);
    is_volume("1 imperial pint", 4.54609e-3 / 8.0);
    is_volume("1 cup 2 tbsp", gallon_m3 / 16.0 + gallon_m3 / 128.0);
}

TEST_CASE("read quantity: counts") {
    is_count("3", 3.0, "");
    is_count("2 large", 2.0, "large");
    is_count("2 eggs large", 2.0, "eggs large");
    is_count("1/2 packet", 0.5, "packet");
    is_count("650 gg", 650.0, "gg"); // the pantry says that it knows no such piece
}

TEST_CASE("read quantity: percentages") {
    is_percentage("68%", 0.68);
    is_percentage("1.1 %", 0.011);
    is_percentage("½%", 0.005);
    is_percentage("100%", 1.0);
    CHECK(read(read_percentage, "1.1%").value->value() == 0.011);
}

TEST_CASE("read quantity: faults of amounts") {
    const auto codes = [](const std::string& text) { return read(read_amount, text).codes; };
    CHECK(codes("1,8%") == "number-comma");
    CHECK(codes("0,5 kg") == "number-comma");
    CHECK(codes("-3 g") == "amount-not-positive");
    CHECK(codes("0 g") == "amount-not-positive");
    CHECK(codes("0") == "amount-not-positive");
    CHECK(codes("0%") == "amount-not-positive");
    CHECK(codes("0 cups") == "amount-not-positive");
    CHECK(codes("1e300 g") == "amount-too-large");
    CHECK(codes("1e400 g") == "amount-too-large");
    CHECK(codes("1e9 cups") == "amount-too-large");
    CHECK(codes("1e7") == "amount-too-large");
    CHECK(codes("1e8%") == "amount-too-large");
    CHECK(codes("lots") == "number-unreadable");
    CHECK(codes("") == "number-unreadable");
    CHECK(codes("650 g warm") == "text-after-amount");
    CHECK(codes("68% of it") == "text-after-amount");
    CHECK(codes("68% 5 g") == "text-after-amount");
    CHECK(codes("2 large 3") == "text-after-amount");
    CHECK(codes("5 lb 4") == "unit-missing");
    CHECK(codes("5 lb 4 xx") == "unit-unknown");
    CHECK(codes("5 lb 1 cup") == "unit-unfit");
    CHECK(codes("20 min") == "unit-unfit");
    CHECK(codes("20 C") == "unit-unfit");
}

TEST_CASE("read quantity: faults stand where they are") {
    CHECK(read(read_amount, "650 g warm").span == SourceSpan{6, 4});
    CHECK(read(read_mass, "650 gg").span == SourceSpan{4, 2});
    CHECK(read(read_mass, "½ gg").span == SourceSpan{3, 2});
    CHECK(read(read_amount, "5 lb 4").span == SourceSpan{5, 1});
    CHECK(read(read_amount, "68% of it").span == SourceSpan{4, 5});
}

TEST_CASE("read quantity: faults of weights") {
    const auto codes = [](const std::string& text) { return read(read_mass, text).codes; };
    CHECK(codes("650") == "unit-missing");
    CHECK(codes("650 gg") == "unit-unknown");
    CHECK(codes("2 cups") == "unit-unfit");
    CHECK(codes("68%") == "unit-unknown");
    CHECK(codes("650 g warm") == "text-after-amount");
    CHECK(codes("g") == "number-unreadable");
    CHECK(read(read_mass, "650 gg").hint.find("did you mean") != std::string::npos);
}

TEST_CASE("read quantity: faults of percentages") {
    const auto codes = [](const std::string& text) { return read(read_percentage, text).codes; };
    CHECK(codes("20") == "unit-missing");
    CHECK(codes("20 g") == "unit-unfit");
    CHECK(codes("20%%") == "text-after-amount");
    CHECK(codes("-1%") == "amount-not-positive");
}

TEST_CASE("read quantity: times") {
    lasts("45 min", 2700.0, 2700.0);
    lasts("1 h 30 min", 5400.0, 5400.0);
    lasts("1h30min", 5400.0, 5400.0);
    lasts("2 hours", 7200.0, 7200.0);
    lasts("30 s", 30.0, 30.0);
    lasts("1 d", 86400.0, 86400.0);
    lasts("1 1/2 h", 5400.0, 5400.0);
}

TEST_CASE("read quantity: ranges of time") {
    lasts("45 to 60 min", 2700.0, 3600.0);
    lasts("45-60 min", 2700.0, 3600.0);
    lasts("12 – 16 h", 43200.0, 57600.0);
    lasts("45 min to 1 h 15 min", 2700.0, 4500.0);
    lasts("1 to 1 d", 86400.0, 86400.0);
}

TEST_CASE("read quantity: faults of times") {
    const auto codes = [](const std::string& text) { return read(read_duration, text).codes; };
    CHECK(codes("45") == "unit-missing");
    CHECK(codes("45 g") == "unit-unfit");
    CHECK(codes("45 minuets") == "unit-unknown");
    CHECK(codes("0 min") == "amount-not-positive");
    CHECK(codes("0 to 5 min") == "amount-not-positive");
    CHECK(codes("60 to 45 min") == "unit-unfit");
    CHECK(codes("1 h to 45 min") == "unit-unfit");
    CHECK(codes("2000 d") == "amount-too-large");
    CHECK(codes("overnight") == "number-unreadable");
    CHECK(codes("1,5 h") == "number-comma");
    CHECK(codes("45 to 60") == "unit-missing");
    CHECK_FALSE(codes("45 to").empty());
    CHECK_FALSE(codes("-5 min").empty());
    CHECK_FALSE(codes("1 to 2 to 3 h").empty());
}

TEST_CASE("read quantity: temperatures") {
    is_celsius("24 C", 24.0);
    is_celsius("24C", 24.0);
    is_celsius("24 °C", 24.0);
    is_celsius("24.5 degrees C", 24.5);
    is_celsius("75.2 F", 24.0);
    is_celsius("450 F", (450.0 - 32.0) * 5.0 / 9.0);
    is_celsius("-5 C", -5.0);
    is_celsius("-40 F", -40.0);
    is_celsius("0 C", 0.0);
}

TEST_CASE("read quantity: faults of temperatures") {
    const auto codes = [](const std::string& text) { return read(read_temperature, text).codes; };
    CHECK(codes("24") == "unit-missing");
    CHECK(codes("24 g") == "unit-unfit");
    CHECK(codes("24 K") == "unit-unfit");
    CHECK(codes("2400 C") == "temperature-out-of-range");
    CHECK(codes("-41 C") == "temperature-out-of-range");
    CHECK(codes("1100 F") == "temperature-out-of-range");
    CHECK(codes("warm") == "number-unreadable");
    CHECK(codes("24 C 5 C") == "unit-unfit");
    CHECK(codes("24,5 C") == "number-comma");
    CHECK_FALSE(codes("--5 C").empty());
    CHECK_FALSE(codes("-").empty());
}

TEST_CASE("read quantity: spaces around a text are cut off") {
    const auto source = std::make_shared<SourceText>("", " \t650 g\n");
    const SourcedText place =
        trimmed({.source = source, .span = {0, source->text().size()}, .text = source->text()});
    CHECK(place.text == "650 g");
    CHECK(place.span == SourceSpan{2, 5});
    const auto blank = std::make_shared<SourceText>("", "  ");
    CHECK(trimmed({.source = blank, .span = {0, 2}, .text = blank->text()}).text.empty());
}

TEST_CASE("read_temperature_difference: degrees of either kind, without the zero of their scale") {
    const auto kelvin = [](const std::string& text) {
        const auto difference = read(read_temperature_difference, text);
        REQUIRE(difference.value.has_value());
        return difference.value->value();
    };
    CHECK(kelvin("8C") == 8.0);
    CHECK(near(kelvin("9 F"), 5.0, exact, 0.0));
    CHECK(kelvin("-2.5 C") == -2.5);
    CHECK(kelvin("0F") == 0.0);
    const auto codes = [](const std::string& text) { return read(read_temperature_difference, text).codes; };
    CHECK(codes("51C") == "temperature-out-of-range");
    CHECK(codes("-91F") == "temperature-out-of-range");
    CHECK(codes("8") == "unit-missing");
    CHECK(codes("8 min") == "unit-unfit");
    CHECK(codes("") == "number-unreadable");
}
