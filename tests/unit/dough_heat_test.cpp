#include "ferment/dough_heat.hpp"

#include "support/dough_figures.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

using namespace leavenwright;
using namespace leavenwright::testing;

TEST_CASE("compute_temperature_history: a ball in a refrigerator cools from outside") {
    const DoughHeat ball{.mass = grams(850.0),
                         .form = DoughForm::ball(),
                         .composition = plain_dough(0.65),
                         .gas = {},
                         .start = Temperature::celsius(24.0),
                         .surroundings = {},
                         .environment = TemperatureProfile(Temperature::celsius(4.0)),
                         .until = seconds(24.0 * 3600.0),
                         .heat_of_fermentation = {}};
    const TemperatureHistory history = compute_temperature_history(ball);
    REQUIRE(history.zone_count() == 5);
    CHECK(history.end_hours() == 24.0);
    CHECK(history.temperature_c(0, 0.0) == 24.0);
    for (std::size_t zone = 1; zone < 5; ++zone) {
        CHECK(history.temperature_c(zone, 2.0) < history.temperature_c(zone - 1, 2.0));
    }
    CHECK(near(history.mean_c(24.0), 4.0, 0.0, 0.05));
}
