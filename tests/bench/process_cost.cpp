// User and system time, and peak memory, of whole processes, taken in turns so that the
// machine's moods fall on both alike.
//
//     bench_process FLOOR COMMAND FORMULA [RUNS]
//
// compares `FLOOR FORMULA` with `COMMAND convert FORMULA` in its three formats
// (without its windows), and `FLOOR FORMULA FORMULA`, which parses both, with `COMMAND check FORMULA
// FORMULA`.
#include "process_runs.hpp"

#include <fmt/core.h>

#include <cstdlib>
#include <string>
#include <vector>

int main(int count, char** words) {
    if (count < 4) {
        return 2;
    }
    const std::string floor = words[1];
    const std::string command = words[2];
    const std::string formula = words[3];
    const int runs = count > 4 ? std::atoi(words[4]) : 600;
    const std::vector<std::vector<std::string>> contestants{
        {floor, formula},
        {command, "convert", formula, "--brief"},
        {command, "convert", formula, "--format", "json"},
        {command, "convert", formula, "--format", "formula"},
        {floor, formula, formula},
        {command, "check", formula, formula},
    };
    const std::vector<std::string> names{"bare parse",      "convert brief",   "convert json",
                                         "convert formula", "bare parse of 2", "check of 2"};
    const std::vector<std::size_t> floors{0, 0, 0, 0, 4, 4}; // what each is compared with
    std::vector<std::vector<double>> times(contestants.size());
    std::vector<long> peaks(contestants.size(), 0);
    for (int run = 0; run < runs; ++run) {
        for (std::size_t i = 0; i < contestants.size(); ++i) {
            const Cost cost = run_once(contestants[i]);
            times[i].push_back(cost.milliseconds);
            peaks[i] = std::max(peaks[i], cost.peak_kb);
        }
    }
    fmt::print("whole process, {} runs each, median of user + system time\n", runs);
    for (std::size_t i = 0; i < contestants.size(); ++i) {
        const double own_ms = median(times[i]);
        fmt::print("  {:<16} {:6.3f} ms  ratio {:4.2f}  peak {:5} kB\n", names[i], own_ms,
                   own_ms / median(times[floors[i]]), peaks[i]);
    }
    return 0;
}
