#include "pantry/resolve_ingredient.hpp"

#include "diagnostic/suggestion.hpp"

#include <algorithm>

namespace leavenwright {

const Ingredient* resolve_ingredient(const SourcedText& name, const Pantry& pantry, Diagnostics& diagnostics,
                                     std::vector<std::string>& remarks) {
    const PantryMatch match = pantry.find(name.text);
    if (match.ingredient != nullptr) {
        if (match.nearest != nullptr) {
            std::string remark = in_quotes(name.text) + " is counted as " +
                                 std::string(match.ingredient->name) + ": " + std::string(match.nearest->why);
            if (std::find(remarks.begin(), remarks.end(), remark) == remarks.end()) {
                remarks.push_back(std::move(remark));
            }
        }
        return match.ingredient;
    }
    if (pantry.is_faulty(name.text)) { // one fault says it
        return nullptr;
    }
    const auto meanings = pantry.meanings_of(name.text);
    if (!meanings.empty()) {
        diagnostics.error(Code::ingredient_ambiguous, name, in_quotes(name.text) + " may be several things",
                          "write which: " + listed(meanings));
        return nullptr;
    }
    // Beyond what is shown anyway, looking for near misses would only take time.
    constexpr std::size_t most_suggestions = 50;
    const std::vector<std::string_view> near = diagnostics.error_count() < most_suggestions
                                                   ? pantry.near_misses(name.text)
                                                   : std::vector<std::string_view>();
    diagnostics.error(
        Code::ingredient_unknown, name, "unknown ingredient " + in_quotes(name.text),
        near.empty() ? "'leavenwright pantry' lists the names; a formula can bring its own under 'pantry:'"
                     : "did you mean " + listed(near) + "?");
    return nullptr;
}

} // namespace leavenwright
