// The unit table and the pantry's densities against GNU units (the Debian package "units"), which
// has to be installed: these tests fail without it.
#include "published/published_support.hpp"
#include "quantity/read_quantity.hpp"
#include "quantity/units.hpp"
#include "support/formulas.hpp"
#include "support/near.hpp"
#include "transcribe/kitchen_words.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <memory>
#include <set>
#include <sstream>
#include <stdexcept>
#include <sys/wait.h>

namespace leavenwright {
namespace {

using namespace leavenwright::testing;

// Both sides compute in doubles from the same exact definitions.
constexpr double exact = 1e-9;

std::string output_of(const std::string& command) {
    std::FILE* pipe = popen(command.c_str(), "r");
    if (pipe == nullptr) {
        throw std::runtime_error("cannot run: " + command);
    }
    std::string output;
    std::array<char, 512> buffer{};
    for (std::size_t count = 0; (count = std::fread(buffer.data(), 1, buffer.size(), pipe)) > 0;) {
        output.append(buffer.data(), count);
    }
    const int status = pclose(pipe);
    const bool is_done = WIFEXITED(status) && WEXITSTATUS(status) == 0;
    if (!is_done) {
        throw std::runtime_error("failed: " + command + "\n" + output +
                                 "\nGNU units is needed: install the package \"units\"");
    }
    while (!output.empty() && output.back() == '\n') {
        output.pop_back();
    }
    return output;
}

// The program without anybody's own definitions; names are from the tables of this project.
std::string units_command() {
    return "LC_ALL=C.UTF-8 units --file '' ";
}

double by_program(const std::string& have, const std::string& want) {
    REQUIRE(have.find('\'') == std::string::npos);
    return number_in(
        output_of(units_command() + "--terse --output-format %.17g '" + have + "' '" + want + "'"));
}

std::string digits(double number) {
    std::array<char, 40> text{};
    std::snprintf(text.data(), text.size(), "%.17g", number);
    return text.data();
}

const char* si_unit(Dimension dimension) {
    switch (dimension) {
    case Dimension::mass:
        return "kg";
    case Dimension::volume:
        return "m^3";
    case Dimension::time:
        return "s";
    case Dimension::temperature:
        break;
    }
    return "";
}

SourcedText place_of(const std::string& text) {
    const auto source = std::make_shared<SourceText>("test", text);
    return {source, {0, text.size()}, source->text()};
}

// What the library reads, in SI units.
double as_read(const std::string& text, Dimension dimension) {
    Diagnostics diagnostics;
    const SourcedText place = place_of(text);
    if (dimension == Dimension::time) {
        const auto time = read_duration(place, diagnostics);
        REQUIRE(time);
        return time->least.value();
    }
    const auto amount = read_amount(place, diagnostics);
    REQUIRE(amount);
    if (dimension == Dimension::mass) {
        REQUIRE(std::holds_alternative<Mass>(*amount));
        return std::get<Mass>(*amount).value();
    }
    REQUIRE(std::holds_alternative<Volume>(*amount));
    return std::get<Volume>(*amount).value();
}

// The two coarse salts stand in the definitions file under a common word, one of them with a
// maker's name behind it: both are found by that word, so that the name need not stand here.
std::set<std::string> coarse_salts() {
    std::ifstream file(output_of(units_command() + "--unitsfile"));
    std::set<std::string> names;
    for (std::string line; std::getline(file, line);) {
        std::string name;
        std::istringstream(line) >> name;
        if (name.starts_with("koshersalt")) {
            names.insert(name);
        }
    }
    return names;
}

} // namespace

TEST_CASE("every unit of mass, volume and time is what GNU units says") {
    int checked = 0;
    for (const Unit& unit : unit_table()) {
        if (unit.dimension == Dimension::temperature) {
            continue;
        }
        CAPTURE(std::string(unit.name));
        REQUIRE(!unit.gnu_name.empty());
        const double expected = by_program(std::string(unit.gnu_name), si_unit(unit.dimension));
        CHECK(near(unit.factor, expected, exact, 0.0));
        CHECK(near(as_read("3 " + std::string(unit.name), unit.dimension), 3.0 * expected, exact, 0.0));
        if (unit.is_power_of_ten) {
            CHECK(near(std::pow(10.0, unit.power_of_ten), expected, exact, 0.0));
        }
        ++checked;
    }
    CHECK(checked >= 32);
}

TEST_CASE("measures of recipes that GNU units knows are what it says") {
    int checked = 0;
    for (const KitchenMeasure& measure : kitchen_measures()) {
        if (measure.gnu_name.empty()) {
            continue;
        }
        CAPTURE(std::string(measure.spellings));
        CHECK(near(measure.volume_ml, by_program(std::string(measure.gnu_name), "ml"), exact, 0.0));
        ++checked;
    }
    CHECK(checked >= 3);
    // and those of a line of a recipe are the units of the formula file
    const auto spoon = measure_named("T", "t");
    REQUIRE(spoon.has_value());
    CHECK(near(spoon->volume.value(), by_program("ustbsp", "m^3"), exact, 0.0));
}

TEST_CASE("points of temperature convert as GNU units converts them") {
    for (const double degrees : {-40.0, 0.0, 32.0, 75.0, 98.6, 212.0, 450.0}) {
        CAPTURE(degrees);
        const double celsius = by_program("tempF(" + digits(degrees) + ")", "tempC");
        const double fahrenheit = by_program("tempC(" + digits(degrees) + ")", "tempF");
        // 1e-9 degrees: 0 is among the answers, so the bound is absolute
        CHECK(near(Temperature::fahrenheit(degrees).in_celsius(), celsius, 0.0, exact));
        CHECK(near(Temperature::celsius(degrees).in_fahrenheit(), fahrenheit, 0.0, exact));
        CHECK(near(Temperature::celsius(degrees).in_kelvins(),
                   by_program("tempC(" + digits(degrees) + ")", "K"), 0.0, exact));
    }
    for (const char* text : {"98.6 F", "450 F", "40 F"}) {
        CAPTURE(text);
        Diagnostics diagnostics;
        const auto read = read_temperature(place_of(text), diagnostics);
        REQUIRE(read);
        const std::string number = std::string(text).substr(0, std::string(text).find(' '));
        CHECK(near(read->in_celsius(), by_program("tempF(" + number + ")", "tempC"), 0.0, exact));
    }
}

TEST_CASE("volumes of the pantry that name GNU units weigh what it says") {
    const std::set<std::string> salts = coarse_salts();
    REQUIRE(salts.size() == 2);
    const double one_g = by_program("1 ustsp " + *salts.begin(), "g");
    const double other_g = by_program("1 ustsp " + *salts.rbegin(), "g");
    int checked = 0;
    int checked_salts = 0;
    for (const Ingredient& ingredient : embedded_pantry().ingredients) {
        for (const MeasuredVolume& volume : ingredient.volumes) {
            if (!volume.source.starts_with("gnu ")) {
                continue;
            }
            CAPTURE(std::string(ingredient.name));
            CAPTURE(std::string(volume.source));
            const std::string name(volume.source.substr(4));
            // copied with eight digits
            constexpr double printed = 5e-8;
            if (name.starts_with("coarse flake salt")) {
                const bool is_light = name.find("light") != std::string::npos;
                CHECK(near(in_grams(volume.mass),
                           is_light ? std::min(one_g, other_g) : std::max(one_g, other_g), printed, 0.0));
                CHECK(volume.measure == "1 tsp");
                ++checked_salts;
                continue;
            }
            const double expected = by_program("(" + digits(volume.volume.value()) + " m^3) " + name, "g");
            CHECK(near(in_grams(volume.mass), expected, printed, 0.0));
            ++checked;
        }
    }
    CHECK(checked >= 30);
    CHECK(checked_salts >= 4);
}

} // namespace leavenwright
