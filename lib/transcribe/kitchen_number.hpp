// Numbers as recipes write them, in figures and in words. Private to the transcribe folder.
#pragma once

#include "transcribe/line_tokens.hpp"

#include <cstddef>
#include <optional>
#include <span>

namespace leavenwright {

struct KitchenNumber {
    double value = 0.0;
    std::size_t length = 0; // tokens read
};

/// The number that begins `tokens`: "2", "two and a half", "half a", "a dozen", "three-quarters of a";
/// nothing where there is none.
std::optional<KitchenNumber> read_kitchen_number(std::span<const LineToken> tokens);

} // namespace leavenwright
