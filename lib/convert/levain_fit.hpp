// Whether a levain fits into a dough, and what would. Private to the convert folder.
#pragma once

#include "convert/convert.hpp"
#include "convert/dough_stock.hpp"

#include <string>
#include <vector>

namespace leavenwright {

/// The dough with everything in it that the conversion may touch.
struct OpenDough {
    std::vector<Line> lines;   // without packaged yeast
    std::vector<Stage> stages; // that stay
    std::vector<Removed> removed;
    std::vector<std::string> dissolved; // names of stages
    Mass total_flour;
    Mass flour; // of `lines`: what the levain can take
};

/// Dissolves preferments that are not kept and takes the packaged yeast out.
OpenDough open_dough(const Formula& formula, const ConversionRequest& request);

/// The prefermented share p that an inoculation on any basis means. With K the flour in stages that
/// stay, the flour added at mixing is F - K - pF.
PrefermentedFlour prefermented_share(const Inoculation& inoculation, Hydration hydration,
                                     const OpenDough& dough);

/// What the sources can give up together.
Mass water_available(const std::vector<WaterSource>& sources);

/// The largest share at the request's hydration, and the wettest levain at its inoculation.
LargestFit largest_fit_of(const OpenDough& dough, const ConversionRequest& request, Mass water);

/// What would fit in place of `share_asked`, with the commands for it.
std::string offer_of(const OpenDough& dough, const ConversionRequest& request, PrefermentedFlour share_asked,
                     const LargestFit& fit);

struct Fit {
    bool fits = true;
    std::string message; // what is missing
    std::string offer;   // what would fit, with the commands for it
};
Fit fit_levain(const OpenDough& dough, const ConversionRequest& request, PrefermentedFlour share, Mass water);

/// Relative to the flour: rounding in sums of doubles, far below what any scale shows.
inline constexpr double fit_slack = 1e-9;

} // namespace leavenwright
