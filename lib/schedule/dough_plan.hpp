// A formula as the fermentation engine sees it: what its microbes live in, and the stages of its
// process with where they stand and what ends them.
#pragma once

#include "ferment/ensemble.hpp"
#include "formula/formula.hpp"

#include <optional>
#include <string>
#include <vector>

namespace leavenwright {

/// What the baker may set; the rest comes from the formula, or from common practice, and the
/// settings say which.
struct PlanRequest {
    std::optional<Temperature> at; // of every stage that is not a retard
    std::optional<TemperatureProfile> profile;
    std::optional<Temperature> mixed_at;
    std::optional<Fraction> bulk_rise;
    std::optional<Fraction> proof_rise;
    std::optional<Fraction> gas_kept;
    std::optional<Duration> retard;     // time of every retard
    std::optional<double> levain_times; // levain of this many times the formula's: a search's
    SourcedText formula_place;          // of what is reported about the whole
    SourcedText profile_place;          // of what `at` or `profile` was read from

    const SourcedText& place_of_surroundings() const { return at || profile ? profile_place : formula_place; }
};

inline constexpr Temperature usual_room = Temperature::celsius(24.0);
inline constexpr Temperature usual_refrigerator = Temperature::celsius(4.0);
/// A place this cold is a retard, whatever it is called.
inline constexpr Temperature cold_below = Temperature::celsius(12.0);

struct FormulaPlan {
    DoughPlan plan;
    Temperature room = usual_room; // where it is mixed
    std::vector<std::string> settings;
    Fraction baked_rise; // at which a dough of this kind is usually baked
    Fraction most_rise;  // far beyond it; of a flat dough, which is pressed flat, that of a loaf
    bool is_flat = false;
    bool is_pressed_last = false; // what it has risen to last is pressed out by hands
    bool has_levain = false;
    bool has_egg_or_milk = false;
};

/// Reports a dough without yeast and one that salt or sugar stops.
std::optional<FormulaPlan> plan_of(const Formula& formula, const PlanRequest& request,
                                   Diagnostics& diagnostics);

/// The windows of a formula with their settings and cautions. Reports a profile that ends before
/// the likely end, and warns where the dough is not ready, or too warm for a culture.
std::optional<Windows> windows_of(const Formula& formula, const PlanRequest& request,
                                  const Ensemble& ensemble, Diagnostics& diagnostics);

} // namespace leavenwright
