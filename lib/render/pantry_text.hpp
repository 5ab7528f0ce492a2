// The pantry as text: the list of names, and one entry with its figures and their sources.
#pragma once

#include "pantry/pantry.hpp"

#include <cstddef>
#include <string>
#include <string_view>

namespace leavenwright {

std::string render_pantry_list(const Pantry& pantry, std::size_t columns);
std::string render_pantry_entry(const Pantry& pantry, std::string_view asked, const PantryMatch& match,
                                std::size_t columns);

} // namespace leavenwright
