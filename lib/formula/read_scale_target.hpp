// The size to bring a formula to, from the words of a command.
#pragma once

#include "formula/scale.hpp"

#include <optional>

namespace leavenwright {

/// What was asked; each is empty where it was not.
struct WrittenScaleTarget {
    std::optional<SourcedText> dough;
    std::optional<SourcedText> pieces;
    std::optional<SourcedText> flour;
    std::optional<SourcedText> baked;
    std::optional<SourcedText> pan_volume;
    std::optional<SourcedText> pan_area;
    std::optional<SourcedText> factor;
    std::optional<SourcedText> loss; // beside baked
    std::optional<SourcedText> fill; // beside the pans: dough per litre, or per 1000 cm2
};

/// Exactly one size, with what it needs beside it. Records what is wrong.
std::optional<ScaleTarget> read_scale_target(const WrittenScaleTarget& written, Diagnostics& diagnostics);

} // namespace leavenwright
