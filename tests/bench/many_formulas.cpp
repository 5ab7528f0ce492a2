// Many formulas in one process: read, convert, write, against a bare yaml-cpp parse of the
// same bytes, for growing numbers of formulas.
//
//     bench_many FORMULA
#include "convert/compare.hpp"
#include "convert/convert.hpp"
#include "formula/read_formula.hpp"
#include "formula/write_formula.hpp"

#include <fmt/core.h>
#include <yaml-cpp/yaml.h>

#include <ctime>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace {

using namespace leavenwright;

double processor_seconds() {
    timespec now{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) + static_cast<double>(now.tv_nsec) * 1e-9;
}

// The formula with a flour weight of its own for each number.
std::vector<std::string> formulas_like(const std::string& text, std::size_t count) {
    const std::string marked = "bread flour: 1200 g";
    const std::size_t at = text.find(marked);
    std::vector<std::string> formulas;
    for (std::size_t i = 0; i < count; ++i) {
        std::string formula = text;
        formula.replace(at, marked.size(), fmt::format("bread flour: {} g", 1200 + i % 60));
        formulas.push_back(std::move(formula));
    }
    return formulas;
}

double time_bare(const std::vector<std::string>& formulas) {
    const double begin = processor_seconds();
    std::size_t keys = 0;
    for (const std::string& formula : formulas) {
        keys += YAML::Load(formula).size();
    }
    return keys > 0 ? processor_seconds() - begin : 0.0;
}

double time_ours(const std::vector<std::string>& formulas) {
    const double begin = processor_seconds();
    std::size_t bytes = 0;
    const Pantry pantry;
    for (const std::string& text : formulas) {
        Diagnostics diagnostics;
        const auto source = std::make_shared<SourceText>("bench.yaml", text);
        const auto formula = read_formula(source, pantry, diagnostics);
        const auto conversion = convert(formula.value(), ConversionRequest{}, diagnostics);
        bytes += write_formula(conversion.value().after, {}).size();
    }
    return bytes > 0 ? processor_seconds() - begin : 0.0;
}

double time_comparisons(const std::vector<std::string>& formulas) {
    const double begin = processor_seconds();
    std::size_t moved = 0;
    const Pantry pantry;
    for (std::size_t i = 0; i + 1 < formulas.size(); i += 2) {
        Diagnostics diagnostics;
        const auto first =
            read_formula(std::make_shared<SourceText>("first.yaml", formulas[i]), pantry, diagnostics);
        const auto second =
            read_formula(std::make_shared<SourceText>("second.yaml", formulas[i + 1]), pantry, diagnostics);
        moved += compare_formulas(first.value(), second.value(), grams(0.5), false).unchanged() ? 0U : 1U;
    }
    return moved > 0 ? processor_seconds() - begin : 0.0;
}

} // namespace

int main(int count, char** words) {
    if (count != 2) {
        return 2;
    }
    std::ifstream file(words[1]);
    std::ostringstream text;
    text << file.rdbuf();
    fmt::print("one process: read + convert + write against a bare parse of the same bytes\n");
    for (const std::size_t number : {2500U, 5000U, 10000U}) {
        const std::vector<std::string> formulas = formulas_like(text.str(), number);
        const double bare = time_bare(formulas);
        const double ours = time_ours(formulas);
        fmt::print("  {:>6} formulas: bare {:6.3f} s, ours {:6.3f} s, ratio {:4.2f}, {:5.1f} us a formula\n",
                   number, bare, ours, ours / bare, ours / static_cast<double>(number) * 1e6);
    }
    fmt::print("one process: read and compare pairs against a bare parse of both\n");
    for (const std::size_t pairs : {2500U, 5000U, 10000U}) {
        const std::vector<std::string> formulas = formulas_like(text.str(), 2 * pairs);
        const double bare = time_bare(formulas);
        const double ours = time_comparisons(formulas);
        fmt::print("  {:>6} pairs: bare {:6.3f} s, ours {:6.3f} s, ratio {:4.2f}, {:5.1f} us a pair\n", pairs,
                   bare, ours, ours / bare, ours / static_cast<double>(pairs) * 1e6);
    }
    return 0;
}
