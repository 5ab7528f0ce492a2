// The template and the style of a card's HTML, built in. Private to the render folder.
#pragma once

#include <string_view>

namespace leavenwright {

std::string_view card_template();
std::string_view card_style();

} // namespace leavenwright
