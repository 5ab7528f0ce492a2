// Every file that a fuzzer ever found something with, and the seeds of its corpus, through every
// entry point.
#include "fuzz/entry_points.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

using namespace leavenwright;

namespace {

std::vector<std::filesystem::path> files_below(const std::string& folder) {
    std::vector<std::filesystem::path> files;
    for (const auto& entry :
         std::filesystem::recursive_directory_iterator(std::string(LEAVENWRIGHT_SOURCE_DIR) + "/" + folder)) {
        if (entry.is_regular_file()) {
            files.push_back(entry.path());
        }
    }
    std::sort(files.begin(), files.end());
    return files;
}

std::string content_of(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

void check_folder(const std::string& folder) {
    for (const auto& path : files_below(folder)) {
        CAPTURE(path.string());
        const std::string bytes = content_of(path);
        CHECK_NOTHROW(fuzzing::fuzz_document(bytes));
        CHECK_NOTHROW(fuzzing::fuzz_formula(bytes));
        CHECK_NOTHROW(fuzzing::fuzz_quantity(bytes));
        CHECK_NOTHROW(fuzzing::fuzz_transcribe(bytes));
    }
}

} // namespace

TEST_CASE("fuzz findings: what was found once holds now") {
    check_folder("tests/fuzz/findings");
}

TEST_CASE("fuzz findings: the seeds hold") {
    CHECK(files_below("tests/fuzz/corpus").size() >= 30);
    check_folder("tests/fuzz/corpus");
}

TEST_CASE("fuzz findings: the demo formulas hold") {
    CHECK(files_below("formulas").size() >= 20);
    check_folder("formulas");
}
