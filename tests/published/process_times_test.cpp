// Printed times of doughs and levains, all from memory: no class leans far, and the README's tables are
// those.
#include "support/formulas.hpp"
#include "support/near.hpp"
#include "support/process_times.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cstdlib>
#include <sstream>
#include <vector>

using namespace leavenwright::testing;

namespace {

using Rows = std::vector<std::vector<std::string>>; // of cells

Rows rows_of(std::istream& text) {
    Rows rows;
    for (std::string line; std::getline(text, line) && line.starts_with('|');) {
        std::istringstream cells(line);
        rows.emplace_back();
        for (std::string cell; std::getline(cells, cell, '|');) {
            rows.back().push_back(cell);
        }
    }
    return rows;
}

// The rows of the README's table below this heading.
Rows rows_in_readme(const std::string& heading) {
    std::istringstream page(project_file("lib/ferment/README.md"));
    for (std::string line; std::getline(page, line);) {
        if (line.starts_with(heading)) {
            return rows_of(page);
        }
    }
    return {};
}

// Words are the same; figures to their last digit, which rounding may turn.
void compare(const std::string& table, double last_digit) {
    std::istringstream text(table);
    std::string heading;
    std::getline(text, heading);
    const Rows computed = rows_of(text);
    const Rows shown = rows_in_readme(heading);
    REQUIRE(shown.size() == computed.size());
    for (std::size_t row = 1; row < computed.size(); ++row) {
        REQUIRE(shown[row].size() == computed[row].size());
        CAPTURE(computed[row][1]);
        CHECK(shown[row][1] == computed[row][1]);
        for (std::size_t cell = 2; cell < computed[row].size(); ++cell) {
            const bool is_figure = computed[row][cell].find_first_of(".") != std::string::npos;
            const double figure = std::strtod(computed[row][cell].c_str(), nullptr);
            const bool is_same = shown[row][cell] == computed[row][cell];
            CHECK((is_same || (is_figure && near(std::strtod(shown[row][cell].c_str(), nullptr), figure, 0.0,
                                                 last_digit))));
        }
    }
}

} // namespace

TEST_CASE("printed times: no class leans by more than a third, but the proofs that are described") {
    const auto times = process_times();
    for (const TimeClass kind : {TimeClass::levain_bulk, TimeClass::levain_proof, TimeClass::levain_build,
                                 TimeClass::yeasted_bulk}) {
        CAPTURE(name_of(kind));
        CHECK(mean_ratio(times, kind) > 0.75);
        CHECK(mean_ratio(times, kind) < 1.33);
    }
    CHECK(mean_ratio(times, TimeClass::yeasted_proof) > 0.6); // a weak point
    const auto inside =
        std::count_if(times.begin(), times.end(), [](const ProcessTime& time) { return time.is_inside(); });
    CHECK(5 * inside >= 3 * std::ssize(times));
}

TEST_CASE("printed times: the tables in lib/ferment/README.md are the ones computed") {
    const auto times = process_times();
    MESSAGE("\n", table_of(times), "\n", classes_of(times));
    compare(table_of(times), 0.11);
    compare(classes_of(times), 0.011);
}
