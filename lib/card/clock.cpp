#include "card/clock.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>

namespace leavenwright {
namespace {

constexpr std::string_view form = "write year, month, day, hour and minute: \"2031-03-07 18:00\"";
constexpr std::string_view pattern = "0000-00-00 00:00"; // 0 stands for a digit

constexpr auto days = std::to_array<std::string_view>(
    {"Sunday", "Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday"});
constexpr auto months =
    std::to_array<std::string_view>({"January", "February", "March", "April", "May", "June", "July", "August",
                                     "September", "October", "November", "December"});

bool is_digit(char byte) {
    return byte >= '0' && byte <= '9';
}

bool has_form(std::string_view text) {
    if (text.size() != pattern.size()) {
        return false;
    }
    for (std::size_t i = 0; i < text.size(); ++i) {
        const bool is_between = i == pattern.find(' ');
        const bool is_right =
            pattern[i] == '0' ? is_digit(text[i]) : text[i] == pattern[i] || (is_between && text[i] == 'T');
        if (!is_right) {
            return false;
        }
    }
    return true;
}

int number_at(std::string_view text, std::size_t begin, std::size_t length) {
    int number = 0;
    for (const char digit : text.substr(begin, length)) {
        number = number * 10 + (digit - '0');
    }
    return number;
}

std::string_view day_name(ClockTime time) {
    const std::chrono::weekday day(std::chrono::floor<std::chrono::days>(time));
    return days[day.c_encoding()];
}

constexpr double step_minutes = 5.0;

double to_step(Duration length) {
    return std::round(length.value() / 60.0 / step_minutes) * step_minutes;
}

} // namespace

std::optional<ClockTime> read_clock_time(const SourcedText& place, Diagnostics& diagnostics) {
    const std::string_view text = place.text;
    if (!has_form(text)) {
        diagnostics.error(Code::clock_time_unreadable, place, in_quotes(text) + " is no day and hour",
                          std::string(form));
        return std::nullopt;
    }
    const std::chrono::year_month_day date(std::chrono::year(number_at(text, 0, 4)),
                                           std::chrono::month(static_cast<unsigned>(number_at(text, 5, 2))),
                                           std::chrono::day(static_cast<unsigned>(number_at(text, 8, 2))));
    const int hour = number_at(text, 11, 2);
    const int minute = number_at(text, 14, 2);
    const bool is_hour = hour <= 23 && minute <= 59;
    if (!date.ok()) {
        diagnostics.error(Code::clock_time_unreadable, place.part(0, 10),
                          "there is no day " + in_quotes(text.substr(0, 10)),
                          "write year, month, day: \"2031-03-07\"");
    }
    if (!is_hour) {
        diagnostics.error(Code::clock_time_unreadable, place.part(11, 5),
                          "the clock never shows " + in_quotes(text.substr(11)),
                          "hours go from 00:00 to 23:59");
    }
    if (!date.ok() || !is_hour) {
        return std::nullopt;
    }
    return ClockTime(std::chrono::local_days(date)) + std::chrono::hours(hour) + std::chrono::minutes(minute);
}

ClockTime later(ClockTime time, Duration length) {
    return time + std::chrono::minutes(static_cast<std::chrono::minutes::rep>(to_step(length)));
}

std::string show_day(ClockTime time) {
    const std::chrono::year_month_day date(std::chrono::floor<std::chrono::days>(time));
    const unsigned month = static_cast<unsigned>(date.month());
    return fmt::format("{} {} {} {}", day_name(time), static_cast<unsigned>(date.day()), months[month - 1],
                       static_cast<int>(date.year()));
}

std::string show_clock(ClockTime time) {
    const auto minutes = (time - std::chrono::floor<std::chrono::days>(time)).count();
    return fmt::format("{} {:02}:{:02}", day_name(time).substr(0, 3), minutes / 60, minutes % 60);
}

std::string show_length(Duration length) {
    const double minutes = std::max(step_minutes, to_step(length));
    const double hours = std::floor(minutes / 60.0);
    const double rest = minutes - hours * 60.0;
    if (hours < 1.0) {
        return fmt::format("{:.0f} min", rest);
    }
    return rest > 0.0 ? fmt::format("{:.0f} h {:.0f} min", hours, rest) : fmt::format("{:.0f} h", hours);
}

} // namespace leavenwright
