// The temperatures of the places where a dough stands, one after the other: a room, a
// refrigerator, the room again.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "quantity/quantity.hpp"
#include "source/source_text.hpp"

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace leavenwright {

/// What a place where dough stands may have; below, and above, the models say nothing.
constexpr Temperature coldest_place() {
    return Temperature::celsius(-40.0);
}
constexpr Temperature hottest_place() {
    return Temperature::celsius(60.0);
}
/// The longest time that is computed, and the most places in a row.
constexpr Duration longest_profile() {
    return seconds(30.0 * 86400.0);
}
inline constexpr std::size_t most_legs = 100;

class TemperatureProfile {
public:
    struct Leg {
        Duration time; // more than nothing
        Temperature at;
    };

    /// One place for as long as it takes.
    explicit TemperatureProfile(Temperature held);
    /// Places in a row, at least one, then `held` for as long as it takes. Without `held` the
    /// profile ends, and the last temperature is taken beyond its end.
    explicit TemperatureProfile(std::vector<Leg> legs, std::optional<Temperature> held = {});

    std::span<const Leg> legs() const { return legs_; }
    /// What follows the legs for good, if anything does.
    std::optional<Temperature> held() const { return held_; }
    /// All legs together.
    Duration length() const;
    /// Whether it says what comes at that time.
    bool covers(Duration time) const { return held_ || time <= length(); }
    Temperature coldest() const;
    /// Of the place at that time; at a change, of the new place.
    Temperature at(Duration time) const;

private:
    std::vector<Leg> legs_;
    std::optional<Temperature> held_;
};

/// "3h at 24C, 14h at 4C, 2h at 22C". The last place may go without its time, and is then held:
/// "3h at 24C, 4C", or "24C" alone. Records every fault at its place.
std::optional<TemperatureProfile> read_profile(const SourcedText& place, Diagnostics& diagnostics);

} // namespace leavenwright
