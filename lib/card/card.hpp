// The bake card as data: everything that one page beside the bowl says, rounded and put into words
// once, so that text, HTML, PDF and JSON print the same. No widths, colours or markup.
#pragma once

#include "card/clock.hpp"
#include "card/timeline.hpp"
#include "convert/convert.hpp"
#include "quantity/weigh.hpp"

#include <optional>
#include <string>
#include <vector>

namespace leavenwright {

struct CardRow {
    std::string name;
    Mass mass;           // rounded as the scale shows it
    std::string weight;  // "400 g"
    std::string percent; // "40 %"; empty where none is meant
};

/// What is weighed together: a stage made ahead, or the dough.
struct CardColumn {
    std::string name;
    std::string when; // "ripe when the dough is mixed"; empty for the dough
    std::vector<CardRow> rows;
    CardRow total;
    std::vector<CardRow> below; // what becomes of it: into the dough, each of 2
};

struct CardStep {
    std::string name;   // "bulk"
    std::string clock;  // "Fri 18:00"; empty without a start
    std::string detail; // "1 h 30 min at 24 C"
};

/// When a rise is done, and how one sees it.
struct CardWindow {
    std::string name;
    std::string likely; // "4 h 10 min", from the stage's beginning
    std::string range;  // "3 h 20 min to 5 h 30 min"; empty where the clock ends it
    std::string clock;  // "Fri 22:10 (Fri 21:20 to Fri 23:30)"; empty without a start
    std::string signs;
    std::string past; // what happens past the window

    /// What stands below its name: the clock, the signs, what is past it; those that there are.
    std::vector<std::string> lines() const;
};

/// The dough at one time after the mixing; rises in percent of the mixed dough.
struct CardCurvePoint {
    double hours = 0.0;
    double rise_low = 0.0;
    double rise_likely = 0.0;
    double rise_high = 0.0;
    double dough = 0.0;        // in Card::temperature_unit
    double surroundings = 0.0; // in Card::temperature_unit
};

struct CardFigure {
    std::string name;
    std::string before; // empty where nothing was converted
    std::string after;
    std::string difference;
};

struct Card {
    std::string title;
    std::string makes;
    std::string date; // the day of the start; empty without one
    std::string levain;
    std::string water_temperature;   // for the mix; empty where it is not known
    std::vector<CardColumn> columns; // in the order of the work; the dough is the last
    std::string as_weighed;
    std::vector<CardStep> steps;
    std::vector<CardWindow> windows;
    std::vector<CardCurvePoint> curve;    // empty without an engine's word
    std::string temperature_unit;         // "°C"
    std::vector<std::string> settings;    // what the windows rest on
    std::vector<CardFigure> side_by_side; // where it was asked for
    std::vector<CardFigure> balance;
    std::vector<std::string> reasons; // of differences
    std::vector<std::string> eu_allergens;
    std::vector<std::string> us_allergens;
    std::vector<std::string> cautions;
    std::vector<std::string> notes;
    std::string version;

    bool is_converted() const { return !balance.empty() && !balance.front().before.empty(); }
};

inline constexpr std::string_view eu_allergen_list = "EU list (Regulation 1169/2011, Annex II)";
inline constexpr std::string_view us_allergen_list = "US list (FALCPA, FASTER Act)";

/// "milk, wheat"; "none" where there are none.
std::string joined_allergens(const std::vector<std::string>& allergens);

/// The hour of the mixing, or the hour at which the bread is out of the oven.
struct CardHour {
    enum class Of { mixing, ready };
    Of of = Of::mixing;
    ClockTime time;
    SourcedText place; // for diagnostics
};

struct CardRequest {
    WeighingScale scale;
    DoughForecast forecast;
    std::optional<CardHour> hour;
    bool side_by_side = false; // the formula before and after its conversion
    std::string version;       // of the program and of its figures
};

/// The card of a formula whose levains have their seed. `conversion` is where it comes from,
/// null for a formula as it was written. Nothing is returned where an hour is asked for that no
/// known time leads to.
std::optional<Card> make_card(const Formula& formula, const Conversion* conversion,
                              const CardRequest& request, Diagnostics& diagnostics);

} // namespace leavenwright
