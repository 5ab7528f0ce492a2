// What one run of a whole process costs, and the middle of many runs.
#pragma once

#include <fmt/core.h>

#include <fcntl.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <cstdlib>
#include <string>
#include <vector>

/// User and system time, and peak memory.
struct Cost {
    double milliseconds = 0.0;
    long peak_kb = 0;
};

inline double milliseconds_of(const timeval& time) {
    return static_cast<double>(time.tv_sec) * 1e3 + static_cast<double>(time.tv_usec) / 1e3;
}

/// Runs a command with its output thrown away; ends the benchmark where it fails.
inline Cost run_once(const std::vector<std::string>& words) {
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

inline double median(std::vector<double> values) {
    std::sort(values.begin(), values.end());
    return values[values.size() / 2];
}
