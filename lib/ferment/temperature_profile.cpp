#include "ferment/temperature_profile.hpp"

#include "quantity/read_quantity.hpp"

#include <algorithm>
#include <cassert>
#include <string>
#include <string_view>
#include <utility>

namespace leavenwright {

TemperatureProfile::TemperatureProfile(Temperature held) : held_(held) {}

TemperatureProfile::TemperatureProfile(std::vector<Leg> legs, std::optional<Temperature> held)
    : legs_(std::move(legs)), held_(held) {
    assert(!legs_.empty() || held_);
}

Duration TemperatureProfile::length() const {
    Duration sum = seconds(0.0);
    for (const Leg& leg : legs_) {
        sum += leg.time;
    }
    return sum;
}

Temperature TemperatureProfile::coldest() const {
    Temperature coldest = held_.value_or(hottest_place());
    for (const Leg& leg : legs_) {
        coldest = std::min(coldest, leg.at);
    }
    return coldest;
}

Temperature TemperatureProfile::at(Duration time) const {
    Duration end = seconds(0.0);
    for (const Leg& leg : legs_) {
        end += leg.time;
        if (time < end) {
            return leg.at;
        }
    }
    return held_ ? *held_ : legs_.back().at;
}

namespace {

constexpr std::string_view form_hint = "write each place as a time, 'at' and a temperature, with commas "
                                       "between: 3h at 24C, 14h at 4C";

bool is_digit(char byte) {
    return byte >= '0' && byte <= '9';
}

// The comma that ends the place beginning at `from`. One between two digits belongs to a number,
// whose reader explains it.
std::size_t end_of_leg(std::string_view text, std::size_t from) {
    for (std::size_t at = from; at < text.size(); ++at) {
        const bool is_decimal =
            at > 0 && at + 1 < text.size() && is_digit(text[at - 1]) && is_digit(text[at + 1]);
        if (text[at] == ',' && !is_decimal) {
            return at;
        }
    }
    return text.size();
}

std::optional<Temperature> read_place(const SourcedText& text, Diagnostics& diagnostics) {
    const auto temperature = read_temperature(text, diagnostics);
    if (!temperature) {
        return std::nullopt;
    }
    if (*temperature < coldest_place() || *temperature > hottest_place()) {
        const SourcedText words = trimmed(text);
        diagnostics.error(Code::temperature_out_of_range, words,
                          in_quotes(words.text) + " is no place for dough to stand",
                          "between -40 and 60 C, or -40 and 140 F; baking is no part of this");
        return std::nullopt;
    }
    return temperature;
}

std::optional<Duration> read_time(const SourcedText& text, Diagnostics& diagnostics) {
    const auto range = read_duration(text, diagnostics);
    if (!range) {
        return std::nullopt;
    }
    if (range->least != range->most) {
        const SourcedText words = trimmed(text);
        diagnostics.error(Code::profile_malformed, words,
                          in_quotes(words.text) + " is a range; one time belongs here",
                          "choose a time; the answer has its own range");
        return std::nullopt;
    }
    return range->most;
}

class ProfileReader {
public:
    ProfileReader(const SourcedText& place, Diagnostics& diagnostics)
        : place_(trimmed(place)), diagnostics_(diagnostics) {}

    std::optional<TemperatureProfile> read() {
        const std::size_t before = diagnostics_.error_count();
        for (std::size_t at = 0; at <= place_.text.size() && !is_last_;) {
            const std::size_t end = end_of_leg(place_.text, at);
            is_last_ = end == place_.text.size();
            if (++count_ > most_legs) {
                diagnostics_.error(Code::profile_malformed, place_, "more than 100 places in a row",
                                   "leave out those that change little");
                break;
            }
            read_leg(trimmed(place_.part(at, end - at)));
            at = end + 1;
        }
        if (total_ > longest_profile()) {
            diagnostics_.error(Code::amount_too_large, place_, "these places last longer than 30 days",
                               "check the times and their units");
        }
        if (diagnostics_.error_count() > before) {
            return std::nullopt;
        }
        return legs_.empty() ? TemperatureProfile(*held_) : TemperatureProfile(std::move(legs_), held_);
    }

private:
    void read_leg(const SourcedText& leg) {
        constexpr std::string_view mark = " at ";
        const std::size_t at = leg.text.find(mark);
        if (leg.text.empty()) {
            diagnostics_.error(Code::profile_malformed, count_ == 1 && is_last_ ? place_ : leg,
                               "a place is missing here", std::string(form_hint));
            return;
        }
        if (at != std::string_view::npos) {
            const auto time = read_time(leg.part(0, at), diagnostics_);
            const auto temperature = read_place(leg.part(at + mark.size(), leg.text.size()), diagnostics_);
            if (time && temperature) {
                legs_.push_back({*time, *temperature});
                total_ += *time;
            }
            return;
        }
        Diagnostics attempt;
        if (!read_temperature(leg, attempt)) {
            diagnostics_.error(Code::profile_malformed, leg,
                               in_quotes(leg.text) + " is not a time at a temperature",
                               std::string(form_hint));
        } else if (!is_last_) {
            diagnostics_.error(Code::profile_malformed, leg,
                               "how long at " + in_quotes(leg.text) + "? another place follows",
                               "write the time before it: 3h at " + std::string(leg.text));
        } else {
            held_ = read_place(leg, diagnostics_);
        }
    }

    SourcedText place_;
    Diagnostics& diagnostics_;
    std::vector<TemperatureProfile::Leg> legs_;
    std::optional<Temperature> held_;
    Duration total_ = seconds(0.0);
    std::size_t count_ = 0;
    bool is_last_ = false;
};

} // namespace

std::optional<TemperatureProfile> read_profile(const SourcedText& place, Diagnostics& diagnostics) {
    return ProfileReader(place, diagnostics).read();
}

} // namespace leavenwright
