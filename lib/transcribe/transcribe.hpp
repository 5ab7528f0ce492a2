// A recipe as people write it into a formula file, every doubtful reading marked.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "pantry/pantry.hpp"
#include "transcribe/ingredient_line.hpp"

#include <optional>
#include <string>
#include <vector>

namespace leavenwright {

/// The true hydration of what was read, and the range that cups and spoons leave to it.
struct ReadHydration {
    double likely = 0.0;
    double least = 0.0;
    double most = 0.0;
};

struct Transcription {
    std::string name;
    std::vector<IngredientLine> lines; // in the order of the recipe
    std::size_t sure = 0;              // lines read surely, doubtfully and not at all
    std::size_t doubtful = 0;
    std::size_t unread = 0;
    std::optional<ReadHydration> hydration;
    std::string formula; // the text of the formula file

    bool has_doubt() const { return doubtful + unread > 0; }
};

/// Whether a text is a recipe rather than a formula file, broken or not: it has no key of a formula, and an
/// ingredient with its amount or recipe markup.
bool is_recipe_text(const SourceText& source, const Pantry& pantry);

/// Reads plain text, Markdown, and pages or JSON with a schema.org Recipe. Doubts are warnings; nothing and
/// an error where there is no list of ingredients. Linear in the text.
std::optional<Transcription> transcribe(const SourceHandle& source, const Pantry& pantry,
                                        Diagnostics& diagnostics);

/// "12 lines: 10 read surely, 1 doubtfully, 1 not at all"
std::string summary_of(const Transcription& transcription);

} // namespace leavenwright
