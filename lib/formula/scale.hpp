// A formula at another size.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "formula/formula.hpp"

#include <string>
#include <variant>
#include <vector>

namespace leavenwright {

struct ToDough {
    Mass dough;
    std::string text; // as written
};
struct ToPieces {
    double pieces = 0.0;
    std::string noun;
    Mass piece;
    std::string text; // as written
};
struct ToFlour {
    Mass flour;
};
/// Bread out of the oven, and the share of the dough that is lost on the way.
struct ToBaked {
    Mass bread;
    Fraction loss;
};
/// Dough for pans: what they hold, times dough per unit of it.
struct ToPans {
    Mass dough;
    std::string text; // of the pans, for the report
};
struct ByFactor {
    double factor = 1.0;
};
using ScaleTarget = std::variant<ToDough, ToPieces, ToFlour, ToBaked, ToPans, ByFactor>;

struct ScaledFormula {
    Formula formula;
    double factor = 1.0;
    std::vector<std::string> notes;
};

/// Every amount times one factor, so that the target is met. With `whole_eggs` the factor is
/// the nearest one that leaves whole eggs; the notes say what that does to the rest.
ScaledFormula scale_formula(const Formula& formula, const ScaleTarget& target, bool whole_eggs);

} // namespace leavenwright
