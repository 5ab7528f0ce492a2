// Times that books, leaflets and mills print for doughs and levains, and what the engine says of them: the
// second table of lib/ferment/README.md. All from memory, and not looked up again.
#pragma once

#include <string>
#include <vector>

namespace leavenwright::testing {

enum class TimeClass { levain_bulk, levain_proof, levain_build, yeasted_bulk, yeasted_proof };
std::string_view name_of(TimeClass kind);

struct ProcessTime {
    std::string name;
    std::string source;
    TimeClass kind;
    double least_h; // as printed
    double most_h;
    double earliest_h; // predicted: 10, 50 and 90 %
    double likely_h;
    double latest_h;

    double printed_h() const; // the geometric middle
    bool is_inside() const { return earliest_h <= printed_h() && printed_h() <= latest_h; }
};

std::vector<ProcessTime> process_times();

/// As a Markdown table, and as one of the classes: how many, how many inside, geometric mean of likely /
/// printed.
std::string table_of(const std::vector<ProcessTime>& times);
std::string classes_of(const std::vector<ProcessTime>& times);
/// Geometric mean of likely / printed.
double mean_ratio(const std::vector<ProcessTime>& times, TimeClass kind);

} // namespace leavenwright::testing
