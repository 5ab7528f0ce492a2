// The rise curve as lines and labels on a plane, for whatever draws them: the band and the likely
// rise above, the temperatures below, hours along both. Readable without colour: lines differ in
// style and carry their names.
#pragma once

#include "card/card.hpp"

#include <string>
#include <vector>

namespace leavenwright {

/// x to the right, y down, from the upper left corner.
struct ChartPoint {
    double x = 0.0;
    double y = 0.0;
};

enum class Anchor { start, middle, end };

struct ChartLabel {
    ChartPoint at; // of its baseline
    Anchor anchor = Anchor::start;
    std::string text;
};

struct ChartLine {
    ChartPoint from;
    ChartPoint to;
};

struct CurveChart {
    double width = 0.0;
    double height = 0.0;
    std::vector<ChartLine> axes;
    std::vector<ChartLine> grid;
    std::vector<ChartPoint> band; // closed: what 8 of 10 doughs keep to
    std::vector<ChartPoint> likely;
    std::vector<ChartPoint> dough;        // its temperature
    std::vector<ChartPoint> surroundings; // theirs, a broken line
    std::vector<ChartLabel> labels;
};

inline constexpr double chart_text_size = 11.0;

/// The curve of a card in a frame of `width` and `height`, letters chart_text_size high; empty
/// for a card without one.
CurveChart draw_curve(const Card& card, double width, double height);

} // namespace leavenwright
