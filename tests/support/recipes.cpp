#include "support/recipes.hpp"

#include "support/formulas.hpp"

#include <algorithm>
#include <memory>
#include <stdexcept>
#include <utility>

namespace leavenwright::testing {

Read read(const std::string& text) {
    const Pantry pantry;
    Diagnostics diagnostics;
    auto result = transcribe(std::make_shared<SourceText>("recipe.txt", text), pantry, diagnostics);
    if (!result) {
        throw std::runtime_error("no recipe was read");
    }
    std::string codes;
    for (const Diagnostic& item : diagnostics.in_order()) {
        codes += (codes.empty() ? "" : " ") + std::string(name_of(item.code));
    }
    return {*std::move(result), codes};
}

std::string lines_of(const Transcription& transcription) {
    std::string text;
    for (const IngredientLine& line : transcription.lines) {
        const double weight_g = line.weight ? in_grams(line.weight->likely) : 0.0;
        text += (text.empty() ? "" : ", ") + line.role + ": " + (line.key.empty() ? line.name : line.key) +
                (line.weight ? " " + std::to_string(static_cast<long>(weight_g + 0.5)) : "") +
                (line.is_sure ? "" : "?");
    }
    return text;
}
namespace {

std::vector<std::filesystem::path> files_in(const std::filesystem::path& folder) {
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(project_folder() / folder)) {
        files.push_back(folder / entry.path().filename());
    }
    std::sort(files.begin(), files.end());
    return files;
}

} // namespace

std::vector<std::filesystem::path> expectations_in(const std::string& folder) {
    std::vector<std::filesystem::path> tables = files_in(folder);
    std::erase_if(tables, [](const std::filesystem::path& file) { return file.extension() != ".expected"; });
    return tables;
}

Transcription transcription_beside(const std::filesystem::path& table, const Pantry& pantry) {
    for (const std::filesystem::path& file : files_in(table.parent_path())) {
        if (file.stem() != table.stem() || file == table) {
            continue;
        }
        Diagnostics diagnostics;
        const auto source =
            std::make_shared<SourceText>(file.filename().string(), project_file(file.string()));
        if (auto transcription = transcribe(source, pantry, diagnostics)) {
            return *std::move(transcription);
        }
        throw std::runtime_error("not read: " + file.string());
    }
    throw std::runtime_error("no recipe beside " + table.string());
}

} // namespace leavenwright::testing
