// Published processes and what the engine says of them: the table of lib/ferment/README.md.
#pragma once

#include <string>
#include <vector>

namespace leavenwright::testing {

struct ProcessCase {
    std::string name;
    std::string source;    // a key of the list of sources in lib/ferment/README.md
    std::string published; // as printed
    double low;            // the band
    double high;
    double predicted;
    int digits; // shown behind the point
    /// Known to lie outside, and described among the weak points of lib/ferment/README.md.
    bool is_weak_point = false;

    bool is_inside() const { return predicted >= low && predicted <= high; }
};

std::vector<ProcessCase> process_cases();

/// The cases as a Markdown table.
std::string table_of(const std::vector<ProcessCase>& cases);

} // namespace leavenwright::testing
