// The table of published processes: computed, judged, and the same in lib/ferment/README.md.
#include "support/formulas.hpp"
#include "support/near.hpp"
#include "support/process_cases.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdlib>
#include <sstream>

using namespace leavenwright::testing;

namespace {

std::vector<std::string> cells_of(const std::string& line) {
    std::vector<std::string> cells;
    std::istringstream stream(line);
    for (std::string cell; std::getline(stream, cell, '|');) {
        cells.push_back(cell);
    }
    return cells;
}

// The lines of the table in the README, without its two lines of heading.
std::vector<std::string> table_in_readme() {
    std::istringstream page(project_file("lib/ferment/README.md"));
    std::vector<std::string> lines;
    bool is_inside = false;
    for (std::string line; std::getline(page, line);) {
        is_inside = is_inside ? !line.empty() : line.rfind("| case |", 0) == 0;
        if (is_inside) {
            lines.push_back(line);
        }
    }
    lines.erase(lines.begin(), lines.begin() + std::min<std::ptrdiff_t>(2, std::ssize(lines)));
    return lines;
}

} // namespace

TEST_CASE("published processes: inside their bands, but for the weak points that are described") {
    for (const ProcessCase& row : process_cases()) {
        CAPTURE(row.name);
        CAPTURE(row.published);
        CAPTURE(row.predicted);
        CHECK(row.is_inside() != row.is_weak_point);
    }
}

TEST_CASE("published processes: the table in lib/ferment/README.md is the one computed") {
    const std::vector<ProcessCase> cases = process_cases();
    const std::string table = table_of(cases);
    MESSAGE("\n", table);
    std::istringstream stream(table);
    std::vector<std::string> computed;
    for (std::string line; std::getline(stream, line);) {
        computed.push_back(line);
    }
    const std::vector<std::string> shown = table_in_readme();
    REQUIRE(shown.size() == cases.size());
    for (std::size_t i = 0; i < cases.size(); ++i) {
        CAPTURE(shown[i]);
        const auto in_readme = cells_of(shown[i]);
        const auto expected = cells_of(computed[i + 2]);
        REQUIRE(in_readme.size() == expected.size());
        for (std::size_t cell = 0; cell < expected.size(); ++cell) {
            if (cell == 5) { // the prediction: to its last digit, which rounding may turn
                CHECK(near(std::strtod(in_readme[cell].c_str(), nullptr), cases[i].predicted, 0.0,
                           std::pow(10.0, -cases[i].digits)));
            } else {
                CHECK(in_readme[cell] == expected[cell]);
            }
        }
    }
}
