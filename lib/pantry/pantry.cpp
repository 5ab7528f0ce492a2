#include "pantry/pantry.hpp"

#include "diagnostic/suggestion.hpp"
#include "source/unicode.hpp"

#include <algorithm>

namespace leavenwright {

void Pantry::add(std::shared_ptr<const PantryShelf> shelf) {
    for (const Ingredient& ingredient : shelf->ingredients()) {
        added_names_[fold_name(ingredient.name)] = {&ingredient, nullptr};
        for (const std::string_view name : ingredient.also) {
            added_names_[fold_name(name)] = {&ingredient, nullptr};
        }
        for (const NearestName& nearest : ingredient.nearest_for) {
            added_names_[fold_name(nearest.name)] = {&ingredient, &nearest};
        }
    }
    shelves_.push_back(std::move(shelf));
}

bool Pantry::is_faulty(std::string_view name) const {
    const std::string folded = fold_name(name);
    return std::any_of(shelves_.begin(), shelves_.end(), [&](const auto& shelf) {
        return std::any_of(shelf->faulty().begin(), shelf->faulty().end(),
                           [&](const std::string& faulty) { return fold_name(faulty) == folded; });
    });
}

PantryMatch Pantry::find_folded(std::string_view folded) const {
    const auto added = added_names_.find(folded);
    if (added != added_names_.end()) {
        return added->second;
    }
    const auto found =
        std::lower_bound(tables_->names.begin(), tables_->names.end(), folded,
                         [](const PantryName& row, std::string_view key) { return row.folded < key; });
    if (found == tables_->names.end() || found->folded != folded) {
        return {};
    }
    const Ingredient& ingredient = tables_->ingredients[found->ingredient];
    const NearestName* nearest =
        found->nearest < 0 ? nullptr : &ingredient.nearest_for[static_cast<std::size_t>(found->nearest)];
    return {&ingredient, nearest};
}

PantryMatch Pantry::find(std::string_view name) const {
    const std::string folded = fold_name(name);
    PantryMatch match = find_folded(folded);
    const std::string_view view = folded;
    if (match.ingredient == nullptr && view.ends_with('s')) {
        match = find_folded(view.substr(0, view.size() - 1));
    }
    if (match.ingredient == nullptr && view.ends_with("es")) {
        match = find_folded(view.substr(0, view.size() - 2));
    }
    return match;
}

std::span<const std::string_view> Pantry::meanings_of(std::string_view name) const {
    const std::string folded = fold_name(name);
    for (const AmbiguousName& ambiguous : tables_->ambiguous) {
        if (ambiguous.folded == folded) {
            return ambiguous.meanings;
        }
    }
    return {};
}

std::vector<std::string_view> Pantry::near_misses(std::string_view name) const {
    constexpr std::size_t most = 3;
    const std::string folded = fold_name(name);
    const std::size_t limit = edits_allowed(folded);
    const std::size_t word_alike = 2 * limit + 2;
    constexpr std::size_t longest_key = 1000;
    struct Candidate {
        std::size_t rank;
        std::size_t more; // bytes that the words do not share
        std::string_view shown;
    };
    std::vector<Candidate> candidates;
    const std::string spaced_name = " " + folded + " ";
    const auto place_in = [](const std::string& whole, const std::string& part) {
        return part.size() > 4 ? whole.find(part) : std::string::npos; // two spaces and three letters
    };
    const auto consider = [&](std::string_view key, std::string_view shown, bool is_flour) {
        const bool is_plural = // "egss" is "eggs"
            folded.ends_with('s') && !key.ends_with('s') &&
            edit_distance(folded, std::string(key) + "s", 1) <= 1;
        const std::size_t distance = is_plural ? 1 : edit_distance(folded, key, limit);
        const std::string spaced = " " + std::string(key) + " ";
        const std::size_t found = place_in(spaced, spaced_name);
        if (distance <= limit) {
            const bool begins_alike = key.substr(0, 1) == folded.substr(0, 1);
            candidates.push_back({2 * distance, begins_alike ? 0U : 1U, shown});
        } else if (found == 0) { // "spelt" is the flour before it is the flakes, or a slip of two letters
            candidates.push_back({3, key.size() - folded.size() + (is_flour ? 0U : longest_key), shown});
        } else if (place_in(spaced_name, spaced) != std::string::npos) {
            candidates.push_back({word_alike, folded.size() - key.size(), shown});
        } else if (found != std::string::npos) {
            candidates.push_back({word_alike + 1, key.size() - folded.size(), shown});
        }
    };
    for (const auto& [key, match] : added_names_) {
        consider(key, match.ingredient->name, match.ingredient->is_flour());
    }
    for (const PantryName& row : tables_->names) {
        const Ingredient& ingredient = tables_->ingredients[row.ingredient];
        consider(row.folded, row.nearest < 0 ? ingredient.name : row.folded, ingredient.is_flour());
    }
    for (const AmbiguousName& ambiguous : tables_->ambiguous) {
        if (edit_distance(folded, ambiguous.folded, limit) <= limit) { // "nutritional yeast" is no yeast
            consider(ambiguous.folded, ambiguous.folded, false);
        }
    }
    std::stable_sort(candidates.begin(), candidates.end(), [](const Candidate& left, const Candidate& right) {
        return std::pair(left.rank, left.more) < std::pair(right.rank, right.more);
    });
    std::vector<std::string_view> names;
    // Beside a slip of the pen, or a name cut short, names that only share a word are noise.
    if (!candidates.empty() && candidates.front().rank < word_alike) {
        const std::size_t best = candidates.front().rank;
        std::erase_if(candidates, [&](const Candidate& candidate) { return candidate.rank > best; });
    }
    for (const Candidate& candidate : candidates) {
        const bool is_new = std::none_of(names.begin(), names.end(), [&](std::string_view shown) {
            return fold_name(shown) == fold_name(candidate.shown);
        });
        if (is_new && names.size() < most) {
            names.push_back(candidate.shown);
        }
    }
    return names;
}

std::vector<const Ingredient*> Pantry::added() const {
    std::vector<const Ingredient*> ingredients;
    for (const auto& shelf : shelves_) {
        for (const Ingredient& ingredient : shelf->ingredients()) {
            ingredients.push_back(&ingredient);
        }
    }
    return ingredients;
}

} // namespace leavenwright
