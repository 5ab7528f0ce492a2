// User and system time, and peak memory, of whole processes, taken in turns so that the
// machine's moods fall on both alike.
//
//     bench_process FLOOR COMMAND FORMULA [RUNS]
//
// compares `FLOOR FORMULA` with `COMMAND convert FORMULA` in its three formats and
// `COMMAND card FORMULA`, and `FLOOR FORMULA FORMULA`, which parses both, with `COMMAND check FORMULA
// FORMULA`.
#include <fmt/core.h>

#include <fcntl.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <string>
#include <vector>

namespace {

struct Cost {
    double milliseconds = 0.0;
    long peak_kb = 0;
};

double milliseconds_of(const timeval& time) {
    return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_usec) / 1e3;
}

Cost run_once(const std::vector<std::string>& words) {
    const pid_t child = fork();
    if (child == 0) {
        const int nowhere = open("/dev/null", O_WRONLY);
        dup2(nowhere, STDOUT_FILENO);
        std::vector<char*> arguments;
        for (const std::string& word : words) {
            arguments.push_back(const_cast<char*>(word.c_str()));
        }
        arguments.push_back(nullptr);
        execv(arguments.front(), arguments.data());
        _exit(127);
    }
    int status = 0;
    rusage usage{};
    wait4(child, &status, 0, &usage);
    if (!WIFEXITED(status) || WEXITSTATUS(status) != 0) {
        fmt::print(stderr, "{} failed\n", words.front());
        std::exit(1);
    }
    return {milliseconds_of(usage.ru_utime) + milliseconds_of(usage.ru_stime), usage.ru_maxrss};
}

double median(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    return values[values.size() / 2];
}

} // namespace

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
        {command, "card", formula},
        {command, "card", formula, "--format", "html"},
        {floor, formula, formula},
        {command, "check", formula, formula},
    };
    const std::vector<std::string> names{"bare parse", "convert brief", "convert json",    "convert formula",
                                         "card text",  "card html",     "bare parse of 2", "check of 2"};
    const std::vector<std::size_t> floors{0, 0, 0, 0, 0, 0, 6, 6}; // what each is compared with
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
