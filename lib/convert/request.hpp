// What somebody asks of a conversion, and the reading of it from the words of a command.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "formula/formula.hpp"
#include "quantity/quantity.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace leavenwright {

/// How much levain, on one of the three bases of the trade.
using Inoculation = std::variant<PrefermentedFlour, LevainOnTotalFlour, LevainOnDoughFlour>;

struct LevainFlour {
    std::string name;
    const Ingredient* ingredient = nullptr;
    Fraction share; // of the levain's flour
};

struct ConversionRequest {
    Inoculation inoculation = PrefermentedFlour(0.2);
    Hydration levain_hydration{1.0};
    std::vector<LevainFlour> levain_flour; // empty: the dough's own flours, the largest first
    std::vector<std::string> keep;         // names of preferments that stay stages
    std::vector<const Ingredient*>
        water_from; // liquids that give up water after plain water; empty: the usual order
    bool keep_blend = false;
    bool dry_milk = false; // restore the solids of milk that gave up its water

    // Where the wishes stand, for diagnostics; may be left empty.
    SourcedText inoculation_place;
    std::vector<SourcedText> keep_places; // in the order of keep
    SourcedText levain_flour_place;
    SourcedText water_from_place;
    std::vector<std::string> remarks; // of the reading: stand-ins that the levain's flours are
    std::string command; // that was given, less inoculation and hydration, for the command that would work
};

/// "rye flour 50%, bread flour 50%"; the shares must add up to 100 %. One name alone is all of it.
std::vector<LevainFlour> read_levain_flour(const SourcedText& text, const Pantry& pantry,
                                           Diagnostics& diagnostics, std::vector<std::string>& remarks);

/// "milk, buttermilk": names of ingredients.
std::vector<const Ingredient*> read_ingredient_list(const SourcedText& text, const Pantry& pantry,
                                                    Diagnostics& diagnostics);

/// Whether the stages that the request names are there and can be kept, and the liquids are in `dough` and
/// hold water to give up; records what is not.
bool check_request(const Formula& formula, const std::vector<Line>& dough, const ConversionRequest& request,
                   Diagnostics& diagnostics);

/// "a, b": the parts of a list, trimmed.
std::vector<SourcedText> split_list(const SourcedText& text);

} // namespace leavenwright
