// Laws of numbers as text and of weights as a scale shows them.
#include "property/random_formula.hpp"
#include "quantity/number.hpp"
#include "quantity/show.hpp"
#include "quantity/weigh.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <bit>
#include <cmath>
#include <memory>
#include <string>
#include <vector>

using namespace leavenwright;
using namespace leavenwright::testing;

namespace {

double read_back(const std::string& text, int exponent, bool& is_read) {
    Diagnostics diagnostics;
    const auto source = std::make_shared<SourceText>("number", text);
    const auto number =
        read_number({.source = source, .span = {0, text.size()}, .text = source->text()}, diagnostics);
    is_read = number.has_value() && number->length == text.size();
    return number ? number->scaled(exponent) : 0.0;
}

// A finite number above 0 from random bits.
double random_double(Dice& dice) {
    while (true) {
        const double value = std::abs(std::bit_cast<double>(dice.bits()));
        if (std::isfinite(value) && value > 0.0) {
            return value;
        }
    }
}

double sum_of(const std::vector<Mass>& masses) {
    double sum = 0.0;
    for (const Mass& mass : masses) {
        sum += mass.value();
    }
    return sum;
}

} // namespace

TEST_CASE("number: the shortest decimal reads back to the same bits") {
    constexpr std::uint64_t seed = 77001;
    Dice dice(seed);
    std::size_t read = 0;
    for (int i = 0; i < 50000; ++i) {
        // Half of them anywhere among the doubles, half where masses are.
        const double value = dice.chance(0.5) ? random_double(dice) : std::exp(dice.between(-20.0, 20.0));
        const int exponent = static_cast<int>(dice.below(13)) - 6;
        if (value > 1e300) {
            continue; // too large a number once its point has moved
        }
        const std::string text = exact_decimal(value, exponent);
        bool is_read = false;
        const double again = read_back(text, -exponent, is_read);
        CHECK_MESSAGE(is_read, "seed ", seed, ": ", text);
        CHECK_MESSAGE(std::bit_cast<std::uint64_t>(again) == std::bit_cast<std::uint64_t>(value), "seed ",
                      seed, ": ", text, " with exponent ", exponent);
        ++read;
    }
    CHECK(read >= 45000);
}

TEST_CASE("number: moving the point there and back gives the same bits where 15 digits suffice") {
    Dice dice(77002);
    for (int i = 0; i < 20000; ++i) {
        const double value = static_cast<double>(dice.bits() % 1000000000ULL) / 1e6;
        const int exponent = static_cast<int>(dice.below(7)) - 3;
        CHECK(exact_shift(exact_shift(value, exponent), -exponent) == value);
    }
}

TEST_CASE("weigh: what is printed adds up, near what it stands for") {
    constexpr std::uint64_t seed = 77003;
    Dice dice(seed);
    std::size_t weighed = 0;
    for (int round = 0; round < 6000; ++round) {
        const WeighingScale scales[] = {usual_scale(UnitSystem::metric),
                                        usual_scale(UnitSystem::us),
                                        {UnitSystem::metric, grams(5.0)},
                                        {UnitSystem::metric, grams(0.1)}};
        const WeighingScale scale = dice.one_of(scales);
        std::vector<Mass> masses(dice.below(20));
        for (Mass& mass : masses) {
            const double exact = std::exp(dice.between(-8.0, 9.0));
            mass = dice.chance(0.05)  ? grams(0.0)
                   : dice.chance(0.3) ? grams(std::round(2.0 * exact) / 2.0)
                                      : grams(exact);
        }
        const Weighing weighing = weigh(masses, scale);
        REQUIRE(weighing.masses.size() == masses.size());
        std::vector<double> steps;
        double largest_error = 0.0;
        for (std::size_t i = 0; i < masses.size(); ++i) {
            const double step = scale.step_for(masses[i]).value();
            const double error = std::abs(weighing.masses[i].value() - masses[i].value());
            largest_error = std::max(largest_error, error);
            CHECK_MESSAGE(error <= step * (1.0 + 1e-6), "seed ", seed, " round ", round);
            const double count = weighing.masses[i].value() / step;
            CHECK_MESSAGE(near(count, std::round(count), 1e-9, 1e-9), "a multiple of its step; seed ", seed,
                          " round ", round);
            CHECK(weighing.masses[i].value() >= 0.0);
            // What is shown is the weight that was rounded, not rounded once more.
            const double shown = std::stod(show_weighed(weighing.masses[i], scale));
            const double unit_kg = scale.units == UnitSystem::us ? 0.45359237 / 16.0 : 0.001;
            CHECK_MESSAGE(near(shown * unit_kg, weighing.masses[i].value(), 1e-9, 1e-9 * unit_kg),
                          "shown as ", show_weighed(weighing.masses[i], scale), "; seed ", seed, " round ",
                          round);
            if (std::find(steps.begin(), steps.end(), step) == steps.end()) {
                steps.push_back(step);
            }
            ++weighed;
        }
        double all_steps = 0.0;
        for (const double step : steps) {
            all_steps += step / 2.0;
        }
        CHECK(near(weighing.total.value(), sum_of(weighing.masses), 1e-12, 0.0));
        CHECK(near(weighing.largest_error.value(), largest_error, 1e-9, 1e-15));
        CHECK_MESSAGE(std::abs(weighing.total.value() - sum_of(masses)) <=
                          all_steps * (1.0 + 1e-6) + 1e-12 * sum_of(masses),
                      "half of each step used; seed ", seed, " round ", round);
        std::vector<Mass> shuffled = masses;
        dice.shuffle(shuffled);
        CHECK_MESSAGE(near(weigh(shuffled, scale).total.value(), weighing.total.value(), 1e-12, 1e-15),
                      "the order does not matter; seed ", seed, " round ", round);
    }
    CHECK(weighed >= 50000);
}
