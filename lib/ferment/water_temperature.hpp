// How warm the water has to be for a dough of a wanted temperature, told in two ways that stand side by
// side: the bakers' rule of factors, and the balance of heat with the weights that go into the bowl.
// And how much ice does it where water alone cannot.
#pragma once

#include "quantity/quantity.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

/// What the things have that meet in the bowl, water aside.
struct MixTemperatures {
    Temperature flour;
    Temperature room;
    std::optional<Temperature> preferment; // levain or another; a factor of its own
    std::optional<Temperature> others;     // eggs, milk, butter, ...; the room's without

    /// How many temperatures the rule of factors adds up, the water's included.
    int factors() const { return preferment ? 4 : 3; }
};

/// Heat made by mixing and kneading, as the rule of factors counts it: about `factors` times what the
/// dough warms by.
using FactorFriction = TemperatureDifference;

/// water = factors x dough - (flour + room [+ preferment]) - friction
/// Source: bakers' common practice; San Francisco Baking Institute, Artisan I course notes (2009).
Temperature water_by_factors(Temperature dough, const MixTemperatures& mix, FactorFriction friction);
/// The same solved for the friction, from a mix whose dough was measured.
FactorFriction friction_by_factors(Temperature dough, const MixTemperatures& mix, Temperature water);

/// Something that goes into the bowl, other than the water that is warmed or cooled.
struct MixPart {
    enum class Kind { flour, preferment, other };
    Kind kind = Kind::flour;
    std::string name;
    Mass mass;
    double specific_heat; // J/(kg K)
};

/// All that goes into the bowl. Bowl and air are left out: what they take is in a measured rise.
struct MixWeights {
    std::vector<MixPart> parts;
    Mass water;
};

Temperature temperature_of(MixPart::Kind kind, const MixTemperatures& mix);

/// sum m cp (dough - rise - T) = 0 over everything; `rise` is what mixing warms the dough by.
Temperature water_by_heat(Temperature dough, const MixTemperatures& mix, const MixWeights& weights,
                          TemperatureDifference rise);
/// The same solved for the rise.
TemperatureDifference rise_by_heat(Temperature dough, const MixTemperatures& mix, const MixWeights& weights,
                                   Temperature water);

/// J/(kg K), of liquid water: 1 Btu/(lb F), in which the trade's ice tables are worked.
inline constexpr double water_specific_heat = 4186.8;

/// Heat in J that takes ice at its temperature (0 C or below) to water at `water`: ice 0.504
/// Btu/(lb F), melting 144 Btu/lb, water 1 Btu/(lb F) (refrigeration tables). A `water` below 0 C
/// is not water but a figure of the calculation.
double heat_to_melt(Mass ice, Temperature at, Temperature water);

/// Ice that brings water from the tap to the temperature of a calculation, per weight of water.
struct IceShare {
    Fraction instead; // of the water, given as ice: the dough's water stays what it was
    Fraction on_top;  // of the water, added to all of it: the dough gets that much wetter
};
/// W (tap - water) c = ice (heat to melt): with W less the ice for `instead`, whole for `on_top`.
/// Nothing where ice alone is not cold enough.
std::optional<IceShare> ice_for(Temperature water, Temperature tap, Temperature ice);

/// Beyond this, water cooks the flour it meets and kills what should raise the dough.
constexpr Temperature hottest_water() {
    return Temperature::celsius(60.0);
}
/// From here on water hurts yeast and culture where it meets them (common practice).
constexpr Temperature yeast_is_hurt_from() {
    return Temperature::celsius(55.0);
}

/// What a method says.
struct WaterAnswer {
    enum class Verdict {
        tap,      // as it comes, or warmer
        hot,      // hurts yeast that it touches
        ice,      // colder than the tap: ice
        too_hot,  // above 60 C: no answer
        too_cold, // ice alone would not do
    };
    Temperature water;
    TemperatureDifference friction; // by factors: FactorFriction; by heat: the rise
    Verdict verdict = Verdict::tap;
    std::optional<IceShare> ice;

    bool can_be_done() const { return verdict != Verdict::too_hot && verdict != Verdict::too_cold; }
};

/// "tap", "hot", "ice", "too hot", "too cold"
std::string_view name_of(WaterAnswer::Verdict verdict);

/// A mix whose dough was measured.
struct LoggedMix {
    Temperature dough;
    Temperature water;
    MixTemperatures mix;
};

struct WaterRequest {
    Temperature dough; // wanted
    MixTemperatures mix;
    std::optional<FactorFriction> friction; // told; shared out over the factors it is the rise
    std::optional<LoggedMix> logged;        // measured; each method finds its own
    std::optional<MixWeights> weights;      // without them there are factors only
    Temperature tap = Temperature::celsius(15.0);
    Temperature ice = Temperature::celsius(0.0);
};

struct WaterPlan {
    WaterRequest request;
    WaterAnswer by_factors;
    std::optional<WaterAnswer> by_heat;
};

/// Neither method corrects the other. Without friction and without a logged mix it is 0: by hand.
WaterPlan plan_water(const WaterRequest& request);

} // namespace leavenwright
