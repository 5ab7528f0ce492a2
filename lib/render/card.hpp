// The bake card as text for a terminal, as one HTML file, and as JSON, which is also what the
// PDF is made from.
#pragma once

#include "card/card.hpp"

#include <cstddef>
#include <span>
#include <string>

namespace leavenwright {

enum class Paper { a4, letter };

/// One card after the other, lines of at most `columns` display columns.
std::string render_cards_text(std::span<const Card> cards, std::size_t columns);

/// One file that needs nothing beside it: no network, no script. Cards begin on pages of their own
/// when it is printed.
std::string render_cards_html(std::span<const Card> cards, Paper paper);

/// One object with a list of cards; documented in cli/verbs/card.md.
std::string render_cards_json(std::span<const Card> cards, Paper paper);

} // namespace leavenwright
