// The pantry: names to ingredients. Holds the table that is built into the program and
// whatever a formula or a user's file adds to it; additions come first.
#pragma once

#include "pantry/ingredient.hpp"

#include <cstdint>
#include <deque>
#include <map>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

/// What a name stands for. `nearest` is set where the ingredient only stands in for it.
struct PantryMatch {
    const Ingredient* ingredient = nullptr;
    const NearestName* nearest = nullptr;
};

/// One row of the sorted table of names.
struct PantryName {
    std::string_view folded;
    std::uint16_t ingredient = 0;
    std::int16_t nearest = -1; // index in nearest_for; -1 where the name is the ingredient's own
};

/// A name that stands for several ingredients.
struct AmbiguousName {
    std::string_view folded;
    std::span<const std::string_view> meanings;
};

/// A work that figures are taken from.
struct PantrySource {
    std::string_view key;
    std::string_view title;
};

/// The tables built from pantry.yaml.
struct PantryTables {
    std::span<const Ingredient> ingredients;
    std::span<const PantryName> names; // ascending
    std::span<const AmbiguousName> ambiguous;
    std::span<const PantrySource> sources;
};
const PantryTables& embedded_pantry();

/// Keeps what was read from a file for as long as views of it are used.
class PantryShelf {
public:
    std::string_view keep(std::string text) { return texts_.emplace_back(std::move(text)); }
    std::span<const std::string_view> keep(std::vector<std::string_view> list) {
        return lists_.emplace_back(std::move(list));
    }
    std::span<const NearestName> keep(std::vector<NearestName> list) {
        return nearest_.emplace_back(std::move(list));
    }
    std::span<const MeasuredVolume> keep(std::vector<MeasuredVolume> list) {
        return volumes_.emplace_back(std::move(list));
    }
    std::span<const PieceWeight> keep(std::vector<PieceWeight> list) {
        return pieces_.emplace_back(std::move(list));
    }
    const Ingredient& keep(const Ingredient& ingredient) { return ingredients_.emplace_back(ingredient); }
    /// A name whose ingredient was read with a fault, and is left out.
    void note_faulty(std::string_view name) { faulty_.emplace_back(name); }

    const std::deque<Ingredient>& ingredients() const { return ingredients_; }
    const std::vector<std::string>& faulty() const { return faulty_; }

private:
    std::deque<std::string> texts_;
    std::deque<std::vector<std::string_view>> lists_;
    std::deque<std::vector<NearestName>> nearest_;
    std::deque<std::vector<MeasuredVolume>> volumes_;
    std::deque<std::vector<PieceWeight>> pieces_;
    std::deque<Ingredient> ingredients_;
    std::vector<std::string> faulty_;
};

class Pantry {
public:
    explicit Pantry(const PantryTables& tables = embedded_pantry()) : tables_(&tables) {}

    /// Adds the ingredients of a shelf; they hide built-in ones of the same name.
    void add(std::shared_ptr<const PantryShelf> shelf);

    /// Looks a name up, as written; a plural s may be left over.
    PantryMatch find(std::string_view name) const;
    /// The meanings of a name that stands for several things; empty if it does not.
    std::span<const std::string_view> meanings_of(std::string_view name) const;
    /// Whether a name's ingredient was left out for a fault in it, which was reported where it stands.
    bool is_faulty(std::string_view name) const;
    /// Up to three names that were probably meant.
    std::vector<std::string_view> near_misses(std::string_view name) const;

    /// Built-in ingredients, in the order of the table.
    std::span<const Ingredient> built_in() const { return tables_->ingredients; }
    std::span<const PantrySource> sources() const { return tables_->sources; }
    /// Ingredients that were added, in their order.
    std::vector<const Ingredient*> added() const;

private:
    PantryMatch find_folded(std::string_view folded) const;

    const PantryTables* tables_;
    std::vector<std::shared_ptr<const PantryShelf>> shelves_;
    std::map<std::string, PantryMatch, std::less<>> added_names_;
};

} // namespace leavenwright
