// What a program that uses the installed library does: reads a formula, converts it, and prints
// three figures of the result.
#include "convert/convert.hpp"
#include "diagnostic/render_diagnostic.hpp"
#include "formula/read_formula.hpp"

#include <cstdio>
#include <memory>

namespace lw = leavenwright;

int main() {
    const auto source = std::make_shared<lw::SourceText>("consumer.yaml", "formula: 1\n"
                                                                          "name: Loaf of another program\n"
                                                                          "dough:\n"
                                                                          "  bread flour: 1000 g\n"
                                                                          "  water: 650 g\n"
                                                                          "  salt: 20 g\n"
                                                                          "  active dry yeast: 2 packets\n");
    lw::Diagnostics diagnostics;
    const auto formula = lw::read_formula(source, lw::Pantry(), diagnostics);
    lw::ConversionRequest request;
    request.inoculation = lw::PrefermentedFlour::percent(20.0);
    const auto conversion = formula ? lw::convert(*formula, request, diagnostics) : std::nullopt;
    if (!conversion) {
        std::fputs(lw::render_diagnostics(diagnostics, {}).c_str(), stderr);
        return 1;
    }
    const lw::Overall& overall = conversion->overall_after;
    std::printf("total flour %.3f g\n", lw::in_grams(overall.total_flour));
    std::printf("levain %.3f g\n", lw::in_grams(conversion->levain.mass()));
    std::printf("hydration %.3f %%\n", overall.hydration_added().in_percent());
}
