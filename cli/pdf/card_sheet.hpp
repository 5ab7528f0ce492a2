// A card on its pages.
#pragma once

#include "card/card.hpp"
#include "pdf/page.hpp"

namespace leavenwright {

/// Draws one card: on one page in the largest type that fits, else on as many as it takes.
void draw_card(const Card& card, PdfDocument& pdf);

} // namespace leavenwright
