// Where directions name the lines of a list. Private to the transcribe folder.
#pragma once

#include "transcribe/direction_words.hpp"
#include "transcribe/ingredient_line.hpp"

#include <cstddef>
#include <span>
#include <string>
#include <vector>

namespace leavenwright {

/// What directions call a line by.
struct LineCall {
    std::vector<std::string> words; // of no other thing: "icing" of icing sugar
    std::string head;               // "sugar"; empty where another line has it and this one words of its own

    bool is_empty() const { return words.empty() && head.empty(); }
    bool operator==(const LineCall& other) const = default;
};

/// The words of directions by sentence, and for each line of a list the places at which it is named. Lines of
/// one call share their places. Time: the words, sorted, and for each call the places found.
class CallIndex {
public:
    CallIndex(std::span<const IngredientLine> lines, std::span<const DirectionWord> words);

    std::span<const std::span<const DirectionWord>> sentences() const { return sentences_; }
    const LineCall& call(std::size_t line) const { return calls_[group_[line]]; }
    /// Its noun, shared with other lines or not: "sugar" of brown sugar too. Empty where it has no such noun.
    const std::string& head(std::size_t line) const { return heads_[line]; }
    const LineCall& call_of_group(std::size_t group) const { return calls_[group]; }
    /// Lines of one number go by the same call.
    std::size_t group(std::size_t line) const { return group_[line]; }

    struct Place {
        std::size_t sentence;
        std::size_t word; // of the sentence
    };
    /// In order.
    const std::vector<Place>& places(std::size_t group) const { return places_[group]; }
    bool is_named_before(std::size_t group, std::size_t sentence) const {
        return !places_[group].empty() && places_[group].front().sentence < sentence;
    }
    /// Groups named in a sentence, ascending, each once.
    const std::vector<std::size_t>& named_in(std::size_t sentence) const { return named_[sentence]; }

private:
    std::vector<std::span<const DirectionWord>> sentences_;
    std::vector<std::string> heads_; // of each line
    std::vector<std::size_t> group_; // of each line
    std::vector<LineCall> calls_;    // of each group
    std::vector<std::vector<Place>> places_;
    std::vector<std::vector<std::size_t>> named_;
};

} // namespace leavenwright
