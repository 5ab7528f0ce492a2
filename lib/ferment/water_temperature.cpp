#include "ferment/water_temperature.hpp"

#include <cassert>

namespace leavenwright {
namespace {

constexpr double btu_per_lb = 2326.0;                // J/kg, exact (international table Btu)
constexpr double melting_j = 144.0 * btu_per_lb;     // per kg
constexpr double ice_specific_heat = 0.504 * 4186.8; // J/(kg K)

// What the factors other than water are below the dough, added up.
TemperatureDifference below_dough(Temperature dough, const MixTemperatures& mix) {
    TemperatureDifference sum = (dough - mix.flour) + (dough - mix.room);
    if (mix.preferment) {
        sum += dough - *mix.preferment;
    }
    return sum;
}

// Heat in J that everything but the water takes to come to one temperature.
double heat_taken(Temperature mixed, const MixTemperatures& mix, const MixWeights& weights) {
    double sum = 0.0;
    for (const MixPart& part : weights.parts) {
        sum += part.mass.value() * part.specific_heat * (mixed - temperature_of(part.kind, mix)).value();
    }
    return sum;
}

double heat_capacity(const MixWeights& weights) { // J/K
    double sum = weights.water.value() * water_specific_heat;
    for (const MixPart& part : weights.parts) {
        sum += part.mass.value() * part.specific_heat;
    }
    return sum;
}

WaterAnswer answer_of(Temperature water, TemperatureDifference friction, const WaterRequest& request) {
    using Verdict = WaterAnswer::Verdict;
    WaterAnswer answer{.water = water, .friction = friction, .verdict = Verdict::tap, .ice = {}};
    if (water > hottest_water()) {
        answer.verdict = Verdict::too_hot;
    } else if (water >= yeast_is_hurt_from()) {
        answer.verdict = Verdict::hot;
    } else if (water < request.tap) {
        answer.ice = ice_for(water, request.tap, request.ice);
        answer.verdict = answer.ice ? Verdict::ice : Verdict::too_cold;
    }
    return answer;
}

} // namespace

Temperature water_by_factors(Temperature dough, const MixTemperatures& mix, FactorFriction friction) {
    return dough + (below_dough(dough, mix) - friction);
}

FactorFriction friction_by_factors(Temperature dough, const MixTemperatures& mix, Temperature water) {
    return below_dough(dough, mix) + (dough - water);
}

Temperature temperature_of(MixPart::Kind kind, const MixTemperatures& mix) {
    switch (kind) {
    case MixPart::Kind::flour:
        return mix.flour;
    case MixPart::Kind::preferment:
        return mix.preferment.value_or(mix.room);
    case MixPart::Kind::other:
        break;
    }
    return mix.others.value_or(mix.room);
}

Temperature water_by_heat(Temperature dough, const MixTemperatures& mix, const MixWeights& weights,
                          TemperatureDifference rise) {
    assert(weights.water.value() > 0.0);
    const Temperature mixed = dough + -rise;
    return mixed + kelvins(heat_taken(mixed, mix, weights) / (weights.water.value() * water_specific_heat));
}

TemperatureDifference rise_by_heat(Temperature dough, const MixTemperatures& mix, const MixWeights& weights,
                                   Temperature water) {
    const double water_heat = weights.water.value() * water_specific_heat * (dough - water).value();
    return kelvins((heat_taken(dough, mix, weights) + water_heat) / heat_capacity(weights));
}

double heat_to_melt(Mass ice, Temperature at, Temperature water) {
    const Temperature melting = Temperature::celsius(0.0);
    return ice.value() * (ice_specific_heat * (melting - at).value() + melting_j +
                          water_specific_heat * (water - melting).value());
}

std::optional<IceShare> ice_for(Temperature water, Temperature tap, Temperature ice) {
    const double given = water_specific_heat * (tap - water).value(); // J per kg of tap water
    const double taken = heat_to_melt(kilograms(1.0), ice, water);
    if (!(taken > 0.0)) {
        return std::nullopt;
    }
    return IceShare{.instead = Fraction(given / (given + taken)), .on_top = Fraction(given / taken)};
}

std::string_view name_of(WaterAnswer::Verdict verdict) {
    switch (verdict) {
    case WaterAnswer::Verdict::tap:
        return "tap";
    case WaterAnswer::Verdict::hot:
        return "hot";
    case WaterAnswer::Verdict::ice:
        return "ice";
    case WaterAnswer::Verdict::too_hot:
        return "too hot";
    case WaterAnswer::Verdict::too_cold:
        return "too cold";
    }
    return "";
}

WaterPlan plan_water(const WaterRequest& request) {
    FactorFriction friction = request.friction.value_or(kelvins(0.0));
    if (request.logged) {
        friction = friction_by_factors(request.logged->dough, request.logged->mix, request.logged->water);
    }
    WaterPlan plan{.request = request,
                   .by_factors =
                       answer_of(water_by_factors(request.dough, request.mix, friction), friction, request),
                   .by_heat = {}};
    if (request.weights) {
        const TemperatureDifference rise = request.logged
                                               ? rise_by_heat(request.logged->dough, request.logged->mix,
                                                              *request.weights, request.logged->water)
                                               : friction / static_cast<double>(request.mix.factors());
        plan.by_heat =
            answer_of(water_by_heat(request.dough, request.mix, *request.weights, rise), rise, request);
    }
    return plan;
}

} // namespace leavenwright
