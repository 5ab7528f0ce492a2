// Cards out of the JSON that the command writes.
#pragma once

#include "card/card.hpp"
#include "render/card.hpp"

#include <string>
#include <vector>

namespace leavenwright {

struct CardFile {
    Paper paper = Paper::a4;
    std::vector<Card> cards;
};

/// Throws std::exception where the text is not what the command writes.
CardFile read_cards(const std::string& json);

} // namespace leavenwright
