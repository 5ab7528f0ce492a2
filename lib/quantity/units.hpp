// The unit table: every unit that can be read, with its spellings. A new unit is a row
// here: tests/published/household_measures_test.cpp asks the program `units` for each.
#pragma once

#include <span>
#include <string_view>

namespace leavenwright {

enum class Dimension { mass, volume, time, temperature };

std::string_view name_of(Dimension dimension);

struct Unit {
    std::string_view name; // as shown
    Dimension dimension;
    double factor;    // SI units (kg, m3, s, K) in one of it
    int power_of_ten; // factor as a power of ten, where it is one
    bool is_power_of_ten;
    std::string_view spellings; // others, folded, separated by '|'
    std::string_view gnu_name;  // what GNU units calls it; the tests ask that program
};

std::span<const Unit> unit_table();

/// The unit with this name or spelling (folded, full stops dropped, plural s allowed);
/// null if there is none.
const Unit* find_unit(std::string_view folded);

} // namespace leavenwright
