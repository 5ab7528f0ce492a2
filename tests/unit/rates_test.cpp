#include "ferment/rates.hpp"

#include "support/near.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>

using namespace leavenwright;
using leavenwright::testing::near;

TEST_CASE("RateCurve: straight in the logarithm, level below, none above") {
    const RateCurve curve{{2.0, 0.1}, {10.0, 0.4}, {30.5, 1.0}, {33.0, 0.5}, {34.0, 0.0}};
    CHECK(curve(-5.0) == 0.1);
    CHECK(curve(2.0) == 0.1);
    CHECK(near(curve(6.0), 0.2, 1e-12, 0.0)); // the geometric mean, half way
    CHECK(near(curve(10.0), 0.4, 1e-12, 0.0));
    CHECK(near(curve(30.5), 1.0, 1e-12, 0.0));
    CHECK(near(curve(31.75), std::sqrt(0.5), 1e-12, 0.0));
    CHECK(near(curve(33.5), 0.25, 1e-12, 0.0)); // straight to nothing
    CHECK(curve(34.0) == 0.0);
    CHECK(curve(1000.0) == 0.0);
}

TEST_CASE("RateCurve: every piece is found, whatever lies in one degree") {
    const RateCurve curve{{0.0, 1.0}, {0.25, 2.0}, {0.5, 4.0}, {0.75, 8.0}, {7.9, 16.0}, {8.1, 0.0}};
    struct Point {
        double celsius;
        double rate;
    };
    for (const Point& point :
         std::to_array<Point>({{0.0, 1.0}, {0.25, 2.0}, {0.5, 4.0}, {0.75, 8.0}, {7.9, 16.0}, {8.0, 8.0}})) {
        CAPTURE(point.celsius);
        CHECK(near(curve(point.celsius), point.rate, 1e-12, 0.0));
    }
}

TEST_CASE("rates of temperature: no jumps") {
    for (double celsius = -5.0; celsius < 55.0; celsius += 0.01) {
        CAPTURE(celsius);
        for (const Yeast yeast : {Yeast::humilis, Yeast::cerevisiae, Yeast::packaged}) {
            CHECK(near(growth_rate(yeast, celsius), growth_rate(yeast, celsius + 0.01), 0.0, 0.01));
            CHECK(near(gas_rate(yeast, celsius), gas_rate(yeast, celsius + 0.01), 0.0, 0.01));
        }
        CHECK(near(bacteria_rate(celsius), bacteria_rate(celsius + 0.01), 0.0, 0.01));
    }
}

TEST_CASE("CardinalTemperature: one peak or not") {
    CHECK(CardinalTemperature{5.0, 20.0, 30.0}.has_one_peak());
    CHECK_FALSE(CardinalTemperature{5.0, 15.0, 30.0}.has_one_peak());
    CHECK_FALSE(CardinalTemperature{5.0, 30.0, 30.0}.has_one_peak());
}

TEST_CASE("CardinalPh: one at the best, none at and beyond the ends") {
    constexpr CardinalPh gamma{3.8, 5.25, 6.7};
    CHECK(gamma(5.25) == 1.0);
    CHECK(near(gamma(5.0), gamma(5.5), 1e-12, 0.0)); // the best is in the middle
    for (const double ph : {3.8, 6.7, 3.0, 9.0}) {
        CHECK(gamma(ph) == 0.0);
    }
    // 1.2 x 1.7 / (1.2 x 1.7 + 0.25^2), negated twice
    CHECK(near(gamma(5.0), 2.04 / (2.04 + 0.0625), 1e-12, 0.0));
}

TEST_CASE("salt: none without effect, nothing left at the limit, bacteria suffer more") {
    CHECK(yeast_salt_rate(BakersPercentage(0.0)) == 1.0);
    CHECK(bacteria_salt_rate(BakersPercentage(0.0)) == 1.0);
    CHECK(yeast_salt_rate(yeast_salt_limit) == 0.0);
    CHECK(yeast_salt_rate(BakersPercentage::percent(30.0)) == 0.0);
    for (const double salt : {0.5, 1.0, 2.0, 3.0}) {
        CHECK(bacteria_salt_rate(BakersPercentage::percent(salt)) <
              yeast_salt_rate(BakersPercentage::percent(salt)));
    }
    CHECK(near(yeast_salt_rate(BakersPercentage::percent(2.0)), 0.875, 1e-12, 0.0)); // 1 - (1/4)^1.5
}

TEST_CASE("sugar: free up to five per cent, straight to nothing at the limit") {
    CHECK(sugar_rate(BakersPercentage(0.0)) == 1.0);
    CHECK(sugar_rate(sugar_without_effect) == 1.0);
    CHECK(near(sugar_rate(BakersPercentage::percent(25.0)), 0.5, 1e-12, 0.0));
    CHECK(sugar_rate(sugar_limit) == 0.0);
    CHECK(sugar_rate(BakersPercentage::percent(90.0)) == 0.0);
}

TEST_CASE("water: stiff is slower, within bounds") {
    CHECK(water_rate(Hydration(0.65)) == 1.0);
    CHECK(near(water_rate(Hydration(0.5)), 0.97, 1e-12, 0.0));
    CHECK(water_rate(Hydration(5.0)) == 1.15);
    CHECK(water_rate(Hydration(0.0)) == 0.9);
}
