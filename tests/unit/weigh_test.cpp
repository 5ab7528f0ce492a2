#include "quantity/show.hpp"
#include "quantity/weigh.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <vector>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

void weighs(const std::vector<double>& exact_g, const std::vector<double>& shown_g, double total_g) {
    std::vector<Mass> masses;
    for (const double g : exact_g) {
        masses.push_back(grams(g));
    }
    const Weighing weighing = weigh(masses, usual_scale(UnitSystem::metric));
    REQUIRE(weighing.masses.size() == shown_g.size());
    for (std::size_t i = 0; i < shown_g.size(); ++i) {
        CHECK(near(in_grams(weighing.masses[i]), shown_g[i], 1e-12, 1e-12));
    }
    CHECK(near(in_grams(weighing.total), total_g, 1e-12, 1e-12));
}

} // namespace

TEST_CASE("weigh: each is rounded so that the column adds up") {
    weighs({33.4, 33.3, 33.3}, {34.0, 33.0, 33.0}, 100.0);
    weighs({100.5, 100.5}, {101.0, 100.0}, 201.0);
    weighs({30.6, 30.6, 30.6}, {31.0, 31.0, 30.0}, 92.0);
}

TEST_CASE("weigh: the larger weights make good what the smaller were rounded by") {
    weighs({100.4, 100.4, 20.34}, {101.0, 100.0, 20.3}, 221.3);
    weighs({1763.56, 18.04, 18.4}, {1764.0, 18.0, 18.4}, 1800.4);
}

TEST_CASE("weigh: a sum is shown with the decimals of its finest part") {
    const WeighingScale scale = usual_scale(UnitSystem::metric);
    const std::vector<Mass> parts{grams(500.0), grams(350.0), grams(9.4), grams(5.4), grams(7.4)};
    CHECK(show_sum(grams(872.2), parts, scale) == "872.2 g");
}

TEST_CASE("weigh: nothing gives nothing") {
    weighs({}, {}, 0.0);
    weighs({0.0}, {0.0}, 0.0);
}

TEST_CASE("weigh: whole weights stay") {
    weighs({500.0, 325.0, 10.0}, {500.0, 325.0, 10.0}, 835.0);
}

TEST_CASE("weigh: small weights have finer steps") {
    weighs({7.04}, {7.0}, 7.0);
    weighs({6.56}, {6.6}, 6.6);
    weighs({0.123}, {0.12}, 0.12);
    weighs({9.97}, {10.0}, 10.0);
}

TEST_CASE("weigh: the step goes with the mass") {
    const WeighingScale scale = usual_scale(UnitSystem::metric);
    CHECK(near(in_grams(scale.step_for(grams(25.0))), 1.0, 1e-12, 0.0));
    CHECK(near(in_grams(scale.step_for(grams(24.99))), 0.1, 1e-12, 0.0));
    CHECK(near(in_grams(scale.step_for(grams(0.5))), 0.1, 1e-12, 0.0));
    CHECK(near(in_grams(scale.step_for(grams(0.49))), 0.01, 1e-12, 0.0));
    CHECK(near(in_grams(scale.step_for(grams(0.0))), 0.01, 1e-12, 0.0));
}

TEST_CASE("weigh: the largest error is that of one mass") {
    const std::vector<Mass> masses{grams(100.5), grams(100.5)};
    CHECK(near(in_grams(weigh(masses, usual_scale(UnitSystem::metric)).largest_error), 0.5, 1e-9, 0.0));
}

TEST_CASE("weigh: ounces in tenths") {
    const WeighingScale scale = usual_scale(UnitSystem::us);
    const std::vector<Mass> masses{grams(400.0)};
    CHECK(show_weighed(weigh(masses, scale).masses.front(), scale) == "14.1 oz");
}

TEST_CASE("show: weights have the decimals of their step") {
    const WeighingScale scale = usual_scale(UnitSystem::metric);
    CHECK(show_weighed(grams(400.0), scale) == "400 g");
    CHECK(show_weighed(grams(6.5), scale) == "6.5 g");
    CHECK(show_weighed(grams(0.12), scale) == "0.12 g");
    CHECK(show_weighed(grams(5000.0), scale) == "5000 g");
}

TEST_CASE("show: differences have a sign") {
    const WeighingScale scale = usual_scale(UnitSystem::metric);
    CHECK(show_difference(grams(0.0), scale) == "0 g");
    CHECK(show_difference(grams(12.0), scale) == "+12 g");
    CHECK(show_difference(grams(-7.2), scale) == "-7.2 g");
}

TEST_CASE("show: percentages and decimals without needless zeros") {
    CHECK(show_percent(0.66) == "66 %");
    CHECK(show_percent(0.0204) == "2.04 %");
    CHECK(show_percent(0.00055) == "0.055 %");
    CHECK(show_decimal(1.50, 2) == "1.5");
    CHECK(show_decimal(-0.001, 2) == "0");
    CHECK(show_decimal(100.0, 0) == "100");
}
