#include "ferment/rate_sums.hpp"

#include "ferment/rates.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

// Two zones through every corner of every curve, up and down, with a jump of the slope between.
TemperatureHistory warmed_and_cooled() {
    TemperatureHistory history(2, seconds(4.0 * 3600.0));
    const auto add = [&](double hours, double inside, double outside, double slope) {
        const std::array celsius{inside, outside};
        const std::array slopes{slope, slope};
        history.add(hours, celsius, slopes);
    };
    add(0.0, 1.0, 5.0, 0.0);
    add(4.0, 50.0, 44.0, 8.0);
    add(4.0, 50.0, 44.0, -30.0);
    add(7.0, 3.0, 2.0, 0.0);
    add(10.0, 3.0, 2.0, 0.0);
    return history;
}

RateValues rates_of(double celsius) {
    return {growth_rate(Yeast::humilis, celsius), growth_rate(Yeast::cerevisiae, celsius),
            bacteria_rate(celsius), gas_rate(Yeast::packaged, celsius)};
}

std::array<RatePoint, 2> zones_at(const RateSums& sums, double hours) {
    std::array<RatePoint, 2> zones;
    sums.at(hours, zones);
    return zones;
}

} // namespace

TEST_CASE("RateSums: as the sum of ten thousand pieces") {
    const RateSums sums(warmed_and_cooled(), 0.05);
    std::array<RateValues, 2> expected{};
    constexpr double piece = 1e-4;
    double hours = 0.0;
    for (const double until : {0.5, 1.7, 3.1, 4.0, 4.6, 6.5, 10.0}) {
        for (; hours < until - piece / 2.0; hours += piece) {
            for (std::size_t zone = 0; zone < 2; ++zone) {
                const double celsius = sums.temperatures().temperature_c(zone, hours + piece / 2.0);
                const RateValues rates = rates_of(celsius);
                for (std::size_t i = 0; i < rates.size(); ++i) {
                    expected[zone][i] += piece * rates[i];
                }
            }
        }
        const auto actual = zones_at(sums, until);
        for (std::size_t zone = 0; zone < 2; ++zone) {
            for (std::size_t i = 0; i < expected[zone].size(); ++i) {
                CAPTURE(until);
                CAPTURE(zone);
                CAPTURE(i);
                CHECK(near(actual[zone].sums[i], expected[zone][i], 0.0, 1e-5));
            }
        }
    }
}

TEST_CASE("RateSums: rates, gas and what is dissolved are those of the temperature") {
    const RateSums sums(warmed_and_cooled(), 0.05);
    for (const double hours : {-1.0, 0.0, 0.33, 2.0, 5.2, 9.0, 12.0}) {
        const auto actual = zones_at(sums, hours);
        for (std::size_t zone = 0; zone < 2; ++zone) {
            const double celsius = sums.temperatures().temperature_c(zone, hours);
            const RateValues expected = rates_of(celsius);
            for (std::size_t i = 0; i < expected.size(); ++i) {
                CAPTURE(hours);
                CAPTURE(i);
                CHECK(near(actual[zone].rates[i], expected[i], 0.0, 2e-3)); // the slope of a cubic
            }
            CHECK(actual[zone].dissolved_limit == dissolved_gas_limit(celsius));
            CHECK(actual[zone].gas_litres == gas_litres(celsius));
        }
    }
}

TEST_CASE("RateSums: before and after the history its ends go on") {
    const RateSums sums(warmed_and_cooled());
    for (std::size_t i = 0; i < RateValues().size(); ++i) {
        CHECK(near(zones_at(sums, -2.0)[1].sums[i], -2.0 * rates_of(5.0)[i], 1e-12, 1e-15));
        const double end = zones_at(sums, 10.0)[0].sums[i];
        CHECK(near(zones_at(sums, 14.0)[0].sums[i], end + 4.0 * rates_of(3.0)[i], 1e-9, 1e-12));
    }
}

TEST_CASE("RateSums: steps end where a place changes, and are short where microbes are fast") {
    for (const double step_h : {0.5, 0.1}) {
        const RateSums sums(warmed_and_cooled(), step_h);
        const auto steps = sums.step_hours();
        CHECK(steps.front() == 0.0);
        CHECK(steps.back() == 10.0);
        CHECK(std::binary_search(steps.begin(), steps.end(), 4.0));
        for (std::size_t step = 1; step < steps.size(); ++step) {
            REQUIRE(steps[step] > steps[step - 1]);
            for (std::size_t zone = 0; zone < 2; ++zone) {
                for (std::size_t i = 0; i < RateValues().size(); ++i) {
                    REQUIRE(sums.at_step(step)[zone].sums[i] - sums.at_step(step - 1)[zone].sums[i] <=
                            step_h);
                }
            }
        }
        const double step = sums.step_end(20.0) - 20.0; // at the last temperatures
        const RateValues rates = rates_of(3.0);
        const double fastest = *std::max_element(rates.begin(), rates.end());
        CHECK(near(step, std::min(8.0, step_h / fastest), 0.05, 0.0));
    }
}
