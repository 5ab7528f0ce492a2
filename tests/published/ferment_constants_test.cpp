// The table of constants in lib/ferment/README.md has the values of the code.
#include "ferment/kinetics.hpp"
#include "support/formulas.hpp"

#include <doctest/doctest.h>

#include <cstdlib>
#include <map>
#include <sstream>
#include <string>

using namespace leavenwright;
using namespace leavenwright::testing;

TEST_CASE("constants: the table in lib/ferment/README.md has those of the middle culture") {
    const Kinetics middle;
    const std::map<std::string, double> constants{
        {"yeast_per_h", middle.yeast_per_h},
        {"bacteria_per_h", middle.bacteria_per_h},
        {"yeast_cap", middle.yeast_cap},
        {"bacteria_cap", middle.bacteria_cap},
        {"ripe_yeast", middle.ripe_yeast},
        {"ripe_bacteria", middle.ripe_bacteria},
        {"ripe_acid", middle.ripe_acid},
        {"lag", middle.lag},
        {"acid_per_bacterium", middle.acid_per_bacterium},
        {"acid_per_bacterium_h", middle.acid_per_bacterium_h},
        {"acid_buffer", middle.acid_buffer},
        {"whole_acid_buffer", middle.whole_acid_buffer},
        {"flour_ph", middle.flour_ph},
        {"floor_ph", middle.floor_ph},
        {"gas_per_cell", middle.gas_per_cell},
        {"gas_per_cell_h", middle.gas_per_cell_h},
        {"gas_per_acid", middle.gas_per_acid},
        {"packaged_gas_per_cell_h", middle.packaged_gas_per_cell_h},
        {"packaged_asleep", middle.packaged_asleep},
        {"packaged_waking", middle.packaged_waking},
        {"packaged_per_h", middle.packaged_per_h},
        {"packaged_lag", middle.packaged_lag},
        {"packaged_new_cells", middle.packaged_new_cells},
        {"retention", middle.retention},
        {"handling", middle.handling},
    };
    std::map<std::string, double> shown;
    std::istringstream page(project_file("lib/ferment/README.md"));
    for (std::string line; std::getline(page, line);) {
        if (line.rfind("| `", 0) == 0) {
            const std::size_t name_ends = line.find('`', 3);
            const std::size_t value_begins = line.find('|', name_ends) + 1;
            shown[line.substr(3, name_ends - 3)] = std::strtod(line.c_str() + value_begins, nullptr);
        }
    }
    CHECK(shown == constants);
}
