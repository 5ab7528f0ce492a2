// Text into typed quantities. Each function reads the whole of the text it is given,
// records what is wrong with it at its place, and then returns nothing.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "quantity/quantity.hpp"
#include "source/source_text.hpp"

#include <optional>
#include <string_view>
#include <variant>

namespace leavenwright {

/// A percentage whose basis depends on where it stands.
using WrittenPercentage = Ratio<struct BasisFromContext>;

/// A number of things: "2 large", "1 packet", "3". `word` is as written, a view of the text
/// that was read; empty for a bare number.
struct Count {
    double number = 0.0;
    std::string_view word;
};

using Amount = std::variant<WrittenPercentage, Mass, Volume, Count>;

/// An amount of an ingredient: "68%", "5 lb 4 oz", "1 1/2 cups", "2 eggs large". More than nothing.
/// A word that is no unit makes a Count; the pantry knows whether it is a piece.
std::optional<Amount> read_amount(const SourcedText& place, Diagnostics& diagnostics);

std::optional<WrittenPercentage> read_percentage(const SourcedText& place, Diagnostics& diagnostics);
std::optional<Mass> read_mass(const SourcedText& place, Diagnostics& diagnostics);
/// What a kitchen sees, from a freezer to a wood-fired oven; other temperatures are refused.
constexpr Temperature coldest_temperature() {
    return Temperature::celsius(-40.0);
}
constexpr Temperature hottest_temperature() {
    return Temperature::celsius(550.0);
}
std::optional<Temperature> read_temperature(const SourcedText& place, Diagnostics& diagnostics);
/// "8F", "-2 C": a difference of temperatures, up to 50 K either way.
std::optional<TemperatureDifference> read_temperature_difference(const SourcedText& place,
                                                                 Diagnostics& diagnostics);

/// From `least` to `most`; the same where one time was given.
struct DurationRange {
    Duration least;
    Duration most;
};

/// "1 h 30 min", "45 to 60 min", "12-16 h".
std::optional<DurationRange> read_duration(const SourcedText& place, Diagnostics& diagnostics);

/// `place` without the spaces around its text.
SourcedText trimmed(const SourcedText& place);

} // namespace leavenwright
