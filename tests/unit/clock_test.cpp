#include "card/clock.hpp"

#include <doctest/doctest.h>

#include <memory>

using namespace leavenwright;

namespace {

SourcedText text(const std::string& words) {
    const auto source = std::make_shared<SourceText>("--start", words);
    return {.source = source, .span = {0, words.size()}, .text = source->text()};
}

std::string shown(const std::string& words) {
    Diagnostics diagnostics;
    const auto time = read_clock_time(text(words), diagnostics);
    return time ? show_day(*time) + ", " + show_clock(*time) : "refused";
}

std::size_t faults(const std::string& words) {
    Diagnostics diagnostics;
    read_clock_time(text(words), diagnostics);
    return diagnostics.error_count();
}

} // namespace

TEST_CASE("read_clock_time: day, hour and minute") {
    CHECK(shown("2031-03-07 18:00") == "Friday 7 March 2031, Fri 18:00");
    CHECK(shown("2032-02-29T00:05") == "Sunday 29 February 2032, Sun 00:05");
}

TEST_CASE("read_clock_time: both faults of a text are found") {
    CHECK(faults("2031-02-29 24:00") == 2);
    CHECK(faults("2031-13-01 18:00") == 1);
    CHECK(faults("2031-03-07 18:60") == 1);
}

TEST_CASE("read_clock_time: other forms are refused") {
    for (const char* words : {"", "18:00", "2031-03-07", "7.3.2031 18:00", "2031-03-07  18:00",
                              "2031-03-07 18:00:00", "2031-03-07 6 pm", "2031-03-07t18:00"}) {
        CHECK_MESSAGE(faults(words) == 1, words);
    }
}

TEST_CASE("later: over midnight, to five minutes") {
    Diagnostics diagnostics;
    const ClockTime evening = read_clock_time(text("2031-12-31 23:00"), diagnostics).value();
    CHECK(show_day(later(evening, seconds(2.0 * 3600.0))) == "Thursday 1 January 2032");
    CHECK(show_clock(later(evening, seconds(3.0 * 60.0))) == "Wed 23:05");
    CHECK(show_clock(later(evening, seconds(-24.0 * 3600.0))) == "Tue 23:00");
}

TEST_CASE("show_length: hours and minutes, never nothing") {
    CHECK(show_length(seconds(3600.0 * 3.6666)) == "3 h 40 min");
    CHECK(show_length(seconds(3600.0)) == "1 h");
    CHECK(show_length(seconds(60.0 * 12.0)) == "10 min");
    CHECK(show_length(seconds(1.0)) == "5 min");
}
