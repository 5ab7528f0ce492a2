// Which rise ends a stage. Bakers end it by the dough, not by the clock; how far it is let go
// depends on what follows and on how warm it is. All over the volume of the mixed dough.
#pragma once

#include "quantity/quantity.hpp"

#include <optional>

namespace leavenwright {

/// What a stage's rise depends on, beside its warmth.
struct RiseCircumstances {
    bool is_levain = true; // packaged yeast is let rise to double in bulk
    /// In a refrigerator that follows; the mass goes on rising there.
    std::optional<Duration> cold = std::nullopt;
    bool is_flat = false; // pizza, flatbread, focaccia: baked before it is fully risen
    bool is_rye = false;  // rye does not hold gas as wheat does
};

/// End of bulk. For a levain: 75 % in cool dough (20 C and below), 50 % at 24 C, 30 % in warm
/// dough (27 C and above) that goes to the refrigerator and 40 % in one that does not. With packaged
/// yeast double, half of it before a refrigerator. Before two days of cold and more 20 %; from half
/// a day on straight down to it. Common practice, no source.
Fraction bulk_rise(const RiseCircumstances& circumstances, Temperature dough);

/// End of proof: a little over double for a loaf, 70 % for a flat one, 60 % before a refrigerator; with
/// packaged yeast a loaf goes to 180 %: common practice, no source; a pup loaf of 100 g of flour is proofed
/// from 145 to 515 cc, 255 % (Moore and Hoseney).
Fraction proof_rise(const RiseCircumstances& circumstances);

/// Of the bubbles, what dividing and shaping leave in: a published balance of a punched and moulded dough
/// keeps 40 % of all its gas (Moore and Hoseney).
inline constexpr Fraction gas_kept_by_shaping{0.4};

} // namespace leavenwright
