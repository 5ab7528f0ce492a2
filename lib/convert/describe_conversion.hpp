// A conversion in words and shown figures, which every report of it shares.
#pragma once

#include "convert/convert.hpp"
#include "quantity/weigh.hpp"

#include <span>
#include <string>
#include <vector>

namespace leavenwright {

/// "Levain: 20 % of the flour is prefermented, at 100 % hydration. ..."; all three bases.
std::string describe_levain(const Levain& levain);

struct ShownBalanceRow {
    std::string name;
    std::string before;
    std::string after;
    std::string difference; // with the number of its reason: "-7 g (2)"
};

struct ShownBalance {
    std::vector<ShownBalanceRow> rows;
    std::vector<std::string> reasons; // "(1) true water: in the yeast taken out."
};

/// The rows as a scale shows them, and both hydrations behind them.
ShownBalance show_balance(std::span<const BalanceRow> rows, const Conversion& conversion,
                          const WeighingScale& scale);

/// What egg and milk in a dough mean for its time in the warm; empty where there are none.
std::string warm_dough_caution(const Overall& overall);

} // namespace leavenwright
