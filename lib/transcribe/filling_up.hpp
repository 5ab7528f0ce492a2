// "3 eggs + enough water to make 270 ml": what the first leaves of the whole. Private to the transcribe
// folder.
#pragma once

#include "pantry/pantry.hpp"
#include "transcribe/ingredient_line.hpp"
#include "transcribe/match_name.hpp"

#include <optional>
#include <string_view>

namespace leavenwright {

struct FillingUp {
    NameMatch match; // of a liquid
    WeightRange weight;
};

/// `first` is what comes before. Nothing where the words fill nothing up, or where `first` is more than the
/// whole.
std::optional<FillingUp> read_filling_up(std::string_view words, const WeightRange& first,
                                         const Pantry& pantry);

} // namespace leavenwright
