#include "pantry/ingredient.hpp"

#include "source/unicode.hpp"

#include <array>
#include <string>
#include <utility>
#include <vector>

namespace leavenwright {
namespace {

constexpr auto class_names = std::to_array<std::pair<IngredientClass, std::string_view>>({
    {IngredientClass::flour, "flour"},
    {IngredientClass::liquid, "liquid"},
    {IngredientClass::salt, "salt"},
    {IngredientClass::sweetener, "sweetener"},
    {IngredientClass::fat, "fat"},
    {IngredientClass::egg, "egg"},
    {IngredientClass::dairy, "dairy"},
    {IngredientClass::yeast, "yeast"},
    {IngredientClass::seed_or_grain, "seed or grain"},
    {IngredientClass::other, "other"},
});

std::vector<std::string_view> words_of(std::string_view folded) {
    std::vector<std::string_view> words;
    while (!folded.empty()) {
        const std::size_t end = folded.find(' ');
        words.push_back(folded.substr(0, end));
        folded.remove_prefix(end == std::string_view::npos ? folded.size() : end + 1);
    }
    return words;
}

std::string_view singular(std::string_view word) {
    return word.size() > 2 && word.back() == 's' ? word.substr(0, word.size() - 1) : word;
}

bool names_itself(const Ingredient& ingredient, std::string_view word) {
    const std::string name = fold_name(ingredient.name);
    for (const std::string_view part : words_of(name)) {
        if (singular(part) == singular(word)) {
            return true;
        }
    }
    return word == "whole" || word == "of";
}

} // namespace

std::string_view name_of(IngredientClass ingredient_class) {
    for (const auto& [value, name] : class_names) {
        if (value == ingredient_class) {
            return name;
        }
    }
    return "culture";
}

std::optional<IngredientClass> ingredient_class_named(std::string_view name) {
    for (const auto& [value, class_name] : class_names) {
        if (class_name == name) {
            return value;
        }
    }
    return std::nullopt;
}

std::optional<Mass> mass_of_volume(const Ingredient& ingredient, Volume volume) {
    if (ingredient.volumes.empty()) {
        return std::nullopt;
    }
    const MeasuredVolume& measured = ingredient.volumes.front();
    return measured.mass * (volume / measured.volume).value();
}

std::optional<Mass> mass_of_piece(const Ingredient& ingredient, std::string_view word) {
    const std::string folded = fold_name(word);
    std::string size;
    for (const std::string_view part : words_of(folded)) {
        if (!names_itself(ingredient, part)) {
            size += (size.empty() ? "" : " ") + std::string(part);
        }
    }
    const std::string_view wanted = size.empty() ? "each" : std::string_view(size);
    for (const PieceWeight& piece : ingredient.pieces) {
        if (piece.word == wanted || piece.word == singular(wanted)) {
            return piece.mass;
        }
    }
    return std::nullopt;
}

} // namespace leavenwright
