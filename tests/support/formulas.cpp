#include "support/formulas.hpp"

#include "diagnostic/render_diagnostic.hpp"
#include "formula/read_formula.hpp"

#include <fstream>
#include <sstream>
#include <stdexcept>

namespace leavenwright::testing {

Formula formula_from(const std::string& text) {
    Diagnostics diagnostics;
    const auto source = std::make_shared<SourceText>("test.yaml", text);
    auto formula = read_formula(source, Pantry(), diagnostics);
    if (!formula) {
        throw std::runtime_error(render_diagnostics(diagnostics, {}));
    }
    return *std::move(formula);
}

Formula loaf_of_practice(const std::string& process) {
    return formula_from("formula: 1\n"
                        "name: Loaf of practice\n"
                        "makes: 1 x 1720 g\n"
                        "dough:\n"
                        "  bread flour: 900 g\n"
                        "  water: 600 g\n"
                        "  salt: 20 g\n"
                        "  levain: 200 g\n"
                        "preferments:\n"
                        "  levain:\n"
                        "    kind: levain\n"
                        "    bread flour: 80 g\n"
                        "    water: 80 g\n"
                        "    culture: 40 g\n"
                        "    culture hydration: 100%\n" +
                        process);
}

std::string codes_of(const std::string& text) {
    Diagnostics diagnostics;
    read_formula(std::make_shared<SourceText>("test.yaml", text), Pantry(), diagnostics);
    std::string codes;
    for (const Diagnostic& item : diagnostics.in_order()) {
        codes += (codes.empty() ? "" : " ") + std::string(name_of(item.code));
    }
    return codes;
}

Conversion converted(const Formula& formula, const ConversionRequest& request) {
    Diagnostics diagnostics;
    auto conversion = convert(formula, request, diagnostics);
    if (!conversion) {
        throw std::runtime_error(render_diagnostics(diagnostics, {}));
    }
    return *std::move(conversion);
}

std::filesystem::path project_folder() {
    return LEAVENWRIGHT_SOURCE_DIR;
}

std::string project_file(const std::string& path) {
    std::ifstream file(project_folder() / path, std::ios::binary);
    if (!file) {
        throw std::runtime_error("cannot open " + path);
    }
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

} // namespace leavenwright::testing
