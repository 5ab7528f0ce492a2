// The balance of a conversion, row by row. Private to the convert folder.
#pragma once

#include "convert/convert.hpp"

#include <string>
#include <vector>

namespace leavenwright {

/// What the conversion moved on purpose.
struct MeantMoves {
    bool yeast_carries_water = false;
    std::string solids;        // why sugar and fat moved; empty if they should not
    bool loses_solids = false; // of a liquid that gave up its water
};

/// Flours one by one, total flour, both waters, salt, sugar, fat, dough.
std::vector<BalanceRow> balance_of(const Overall& before, const Overall& after, const MeantMoves& moves);

/// Throws std::logic_error where total flour, salt, or the true water less what the yeast carried
/// has moved by more than 1e-9 of the dough: a fault of ours, never a report.
void prove(const Overall& before, const Overall& after, Mass yeast_water);

} // namespace leavenwright
