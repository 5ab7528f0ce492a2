#include "ferment/temperature_profile.hpp"

#include "support/near.hpp"

#include <doctest/doctest.h>

#include <memory>
#include <string>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

constexpr double hour = 3600.0;

struct ReadText {
    SourceHandle source;
    std::optional<TemperatureProfile> profile;
    std::string codes; // in order, with the words they stand at: "number-comma(1,5)"
    std::string hint;  // of the first
};

ReadText read(const std::string& text) {
    Diagnostics diagnostics;
    const auto source = std::make_shared<SourceText>("", text);
    ReadText result{.source = source, .profile = {}, .codes = {}, .hint = {}};
    result.profile =
        read_profile({.source = source, .span = {0, text.size()}, .text = source->text()}, diagnostics);
    for (const Diagnostic& item : diagnostics.in_order()) {
        result.codes += (result.codes.empty() ? "" : " ") + std::string(name_of(item.code)) + "(" +
                        text.substr(item.span.offset, item.span.length) + ")";
        result.hint = result.hint.empty() ? item.hint : result.hint;
    }
    CHECK(result.profile.has_value() == !diagnostics.has_errors());
    return result;
}

void is_refused(const std::string& text, const std::string& codes) {
    CAPTURE(text);
    CHECK(read(text).codes == codes);
}

} // namespace

TEST_CASE("read_profile: places in a row") {
    const auto result = read("3h at 24C, 14 h at 4 C , 1h 30min at 71.6F");
    REQUIRE(result.profile);
    const TemperatureProfile& profile = *result.profile;
    REQUIRE(profile.legs().size() == 3);
    CHECK(profile.legs()[0].time.value() == 3.0 * hour);
    CHECK(profile.legs()[1].at == Temperature::celsius(4.0));
    CHECK(profile.legs()[2].time.value() == 1.5 * hour);
    CHECK(near(profile.legs()[2].at.in_celsius(), 22.0, 0.0, 1e-9)); // a rounding of F to C
    CHECK_FALSE(profile.held());
    CHECK(profile.length().value() == 18.5 * hour);
    CHECK(profile.covers(seconds(18.5 * hour)));
    CHECK_FALSE(profile.covers(seconds(18.5 * hour + 1.0)));
}

TEST_CASE("read_profile: the last place may go without its time") {
    const auto alone = read("24C");
    REQUIRE(alone.profile);
    CHECK(alone.profile->legs().empty());
    CHECK(alone.profile->held() == Temperature::celsius(24.0));
    CHECK(alone.profile->covers(longest_profile()));
    CHECK(alone.profile->at(seconds(0.0)) == Temperature::celsius(24.0));
    const auto last = read("2h at 24C, -2C");
    REQUIRE(last.profile);
    CHECK(last.profile->legs().size() == 1);
    CHECK(last.profile->held() == Temperature::celsius(-2.0));
}

TEST_CASE("TemperatureProfile: the new place counts at a change, the last one beyond the end") {
    const TemperatureProfile profile(
        {{seconds(hour), Temperature::celsius(24.0)}, {seconds(hour), Temperature::celsius(4.0)}});
    CHECK(profile.at(seconds(0.0)) == Temperature::celsius(24.0));
    CHECK(profile.at(seconds(hour - 1.0)) == Temperature::celsius(24.0));
    CHECK(profile.at(seconds(hour)) == Temperature::celsius(4.0));
    CHECK(profile.at(seconds(9.0 * hour)) == Temperature::celsius(4.0));
}

TEST_CASE("read_profile: every fault at its place") {
    is_refused("", "profile-malformed()");
    is_refused("3h at 24C,", "profile-malformed()");
    is_refused("3h at 24C,, 4C", "profile-malformed()");
    is_refused("14h 4C, 2h at 22C", "profile-malformed(14h 4C)");
    is_refused("24C, 2h at 22C", "profile-malformed(24C)");
    is_refused("2 to 3h at 24C", "profile-malformed(2 to 3h)");
    is_refused("1,5h at 24C", "number-comma(1,5)");
    is_refused("0h at 24C", "amount-not-positive(0h)");
    is_refused("3h at 24", "unit-missing(24)");
    is_refused("3 at 24C", "unit-missing(3)");
    is_refused("3h at 240C", "temperature-out-of-range(240C)");
    is_refused("3h at 61C, 141F", "temperature-out-of-range(61C) temperature-out-of-range(141F)");
    is_refused("20d at 4C, 11d at 4C", "amount-too-large(20d at 4C, 11d at 4C)");
    is_refused("3kg at 24C, 2h at 22 min, lunch",
               "unit-unfit(kg) unit-unfit(22 min) profile-malformed(lunch)");
    CHECK(read("24C, 2h at 22C").hint == "write the time before it: 3h at 24C");
}

TEST_CASE("read_profile: negative times, and too many places") {
    CHECK_FALSE(read("-3h at 24C").profile);
    std::string text = "1min at 4C";
    for (std::size_t i = 1; i < most_legs; ++i) {
        text += ",1min at 4C";
    }
    CHECK(read(text).profile);
    CHECK(read(text + ", 4C").codes.starts_with("profile-malformed"));
}
