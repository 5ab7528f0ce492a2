// The words of recipes that are neither a number nor an ingredient: measures, sizes, preparation, and
// what an amount is for. Private to the transcribe folder.
#pragma once

#include "quantity/quantity.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace leavenwright {

/// What an amount counts: a weight, a volume, pieces, or a share of the flour.
struct Measure {
    enum class Kind { piece, mass, volume, percent };

    Kind kind = Kind::piece;
    std::string name;   // "cup", "g", "packet", "large"; empty for a bare number
    Mass mass{};        // of one, where it is a weight
    Volume volume{};    // of one, where it is a volume
    double least = 1.0; // of one: from `least` to `most` times it
    double most = 1.0;
    bool is_formula_unit = false; // the formula file reads `name`
    bool is_metric = false;
    bool is_doubtful = false; // books disagree on what it holds

    bool is_piece() const { return kind == Kind::piece; }
    bool is_volume() const { return kind == Kind::volume; }
};

/// A measure that cooks name and that the unit table leaves out, for the tests to compare.
struct KitchenMeasure {
    std::string_view spellings; // folded, separated by '|'; the first is its name
    double volume_ml;
    double least;
    double most;
    bool is_doubtful;
    std::string_view gnu_name; // what GNU units calls it; empty where it knows none
};
std::span<const KitchenMeasure> kitchen_measures();

/// The measure that a word, as written and as folded, names; nothing where it names none.
std::optional<Measure> measure_named(std::string_view written, std::string_view folded);

/// small, medium, large, extra large, jumbo; empty where the word is no size.
std::string_view size_named(std::string_view folded);
/// "about", "level": words before an amount that change nothing.
bool is_filler_word(std::string_view folded);
/// How much of a measure "scant", "heaping" and their like mean; nothing for other words.
struct Fullness {
    double likely;
    double least;
    double most;
};
std::optional<Fullness> fullness_named(std::string_view folded);

/// Warm, sifted, melted, organic: words beside a name that do not change what it is.
bool is_preparation_word(std::string_view folded);
/// Words that begin what is said about an ingredient, behind its name: "for", "until", "at".
bool is_clause_word(std::string_view folded);

/// "little" of "a little", "peu" of "un peu de": the article before it is no number.
bool says_little(std::string_view folded);

/// A number that is a word: "two", "dozen"; 0 where it is none.
double number_named(std::string_view folded);
/// A fraction that is a word: "half", "thirds"; 0 where it is none.
double fraction_named(std::string_view folded);

/// What words say that an amount is for: "brushing", "greasing", "dusting", "filling", "topping", "bath";
/// empty where they say nothing of the kind.
std::string_view purpose_named(std::string_view folded);

/// What a word cut short on a card stands for: "flour" for "flr"; empty where it is none.
std::string_view cut_word(std::string_view folded);

} // namespace leavenwright
