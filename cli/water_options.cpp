#include "water_options.hpp"

#include "ferment/dough_heat.hpp"
#include "quantity/read_quantity.hpp"
#include "quantity/show.hpp"
#include "schedule/dough_composition.hpp"
#include "schedule/dough_plan.hpp"
#include "schedule/mix_weights.hpp"

#include <algorithm>
#include <array>
#include <map>

namespace leavenwright {
namespace {

struct Limits {
    Temperature coldest;
    Temperature hottest;
    std::string_view hint;
};

constexpr Limits place_limits{coldest_place(), hottest_place(), "between -40 and 60 C, or -40 and 140 F"};
constexpr Limits dough_limits{Temperature::celsius(5.0), Temperature::celsius(45.0),
                              "doughs are mixed between 5 and 45 C, or 41 and 113 F; most at 23 to 27 C"};
constexpr Limits water_limits{Temperature::celsius(0.0), Temperature::celsius(60.0),
                              "between 0 and 60 C, or 32 and 140 F"};
constexpr Limits ice_limits{coldest_place(), Temperature::celsius(0.0),
                            "between -40 and 0 C, or -40 and 32 F"};

std::optional<Temperature> read_within(const SourcedText& text, const Limits& limits,
                                       Diagnostics& diagnostics) {
    const auto temperature = read_temperature(text, diagnostics);
    if (temperature && (*temperature < limits.coldest || *temperature > limits.hottest)) {
        diagnostics.error(Code::temperature_out_of_range, text,
                          in_quotes(text.text) + " is out of range here", std::string(limits.hint));
        return std::nullopt;
    }
    return temperature;
}

// ---- a logged mix: "dough 26C, flour 21C, room 22C, water 30C" ----

constexpr std::string_view logged_form =
    "write --logged \"dough 26C, flour 21C, room 22C, water 30C\", and levain and others where they are";

using LoggedTemperatures = std::map<std::string_view, Temperature>;

void read_logged_item(const SourcedText& item, LoggedTemperatures& logged, Diagnostics& diagnostics) {
    constexpr std::array<std::string_view, 6> names{"dough", "water", "flour", "room", "levain", "others"};
    const std::size_t space = std::min(item.text.find(' '), item.text.size());
    const SourcedText name = item.part(0, space);
    if (std::find(names.begin(), names.end(), name.text) == names.end()) {
        diagnostics.error(Code::key_unknown, name, in_quotes(name.text) + " is nothing that a mix logs",
                          std::string(logged_form));
        return;
    }
    const auto temperature =
        read_within(trimmed(item.part(space, item.text.size())),
                    name.text == "dough" || name.text == "water" ? water_limits : place_limits, diagnostics);
    if (temperature && !logged.emplace(name.text, *temperature).second) {
        diagnostics.error(Code::key_duplicate, name, in_quotes(name.text) + " is given twice",
                          "give each temperature once");
    }
}

std::optional<Temperature> logged_at(const LoggedTemperatures& logged, std::string_view name) {
    const auto found = logged.find(name);
    return found == logged.end() ? std::nullopt : std::optional(found->second);
}

// ---- the request ----

class WaterRequestReader {
public:
    WaterRequestReader(const Options& options, const Formula* formula, const WeighingScale& scale,
                       const std::optional<MixDefaults>& defaults, Session& session)
        : options_(options), formula_(formula), scale_(scale), defaults_(defaults), session_(session),
          diagnostics_(session.diagnostics) {}

    std::optional<ReadWaterRequest> read() {
        read_weights();
        const auto dough = read_wanted();
        const auto room = read_room();
        const auto flour = read_option("--flour-at", place_limits);
        const auto levain = read_levain();
        request_.mix.others = read_option("--others-at", place_limits);
        request_.tap = read_option("--tap", water_limits).value_or(request_.tap);
        request_.ice = read_option("--ice-at", ice_limits).value_or(request_.ice);
        if (const auto text = session_.option_text("--friction")) {
            request_.friction = read_temperature_difference(*text, diagnostics_);
        }
        if (room) {
            request_.mix.room = *room;
            request_.mix.flour = flour.value_or(*room);
            request_.mix.preferment = levain || !has_preferment_ ? levain : room;
        }
        read_logged();
        if (diagnostics_.has_errors() || !dough) {
            return std::nullopt;
        }
        request_.dough = *dough;
        note_what_was_assumed();
        return ReadWaterRequest{.request = request_, .notes = notes_};
    }

private:
    void report_missing(const std::string& message, const std::string& hint, const SourcedText& place = {}) {
        diagnostics_.error(Code::mix_temperature_missing, place, message, hint);
    }

    std::optional<Temperature> read_option(std::string_view option, const Limits& limits) {
        const auto text = session_.option_text(option);
        return text ? read_within(*text, limits, diagnostics_) : std::nullopt;
    }

    std::optional<Temperature> read_room() {
        if (options_.has("--room")) {
            return read_option("--room", place_limits);
        }
        if (!defaults_) {
            report_missing("how warm is the room?", "write --room 22C");
            return std::nullopt;
        }
        return defaults_->room;
    }

    // --to, or what the formula's own steps say.
    std::optional<Temperature> read_wanted() {
        if (defaults_) {
            return defaults_->dough;
        }
        if (options_.has("--to")) {
            return read_option("--to", dough_limits);
        }
        for (const Step& step : formula_ != nullptr ? formula_->process : std::vector<Step>()) {
            if (step.verb == "mix" && step.to) {
                return step.to->value;
            }
        }
        report_missing("how warm is the dough to be?",
                       "write --to 25C, or - mix: { to: 25 C } in the formula's process");
        return std::nullopt;
    }

    // ---- weights ----

    void read_weights() {
        if (formula_ != nullptr) {
            if (!defaults_) {
                refuse_weights();
            }
            weigh_formula();
        } else if (options_.has("--flour") || options_.has("--water") || options_.has("--levain")) {
            weigh_options();
        }
    }

    void refuse_weights() {
        for (const std::string_view option : {"--flour", "--water", "--levain"}) {
            if (const auto text = session_.option_text(option)) {
                diagnostics_.error(Code::size_given_twice, *text, "the formula has its weights",
                                   "leave out " + std::string(option) + ", or the formula");
            }
        }
    }

    void weigh_formula() {
        BowlMix bowl = bowl_mix(*formula_);
        has_preferment_ = bowl.has_preferment;
        levain_mass_ = bowl.largest_preferment;
        levain_composition_ = bowl.of_preferment;
        if (!(bowl.weights.water.value() > 0.0)) {
            diagnostics_.error(
                Code::water_unweighed, {}, in_quotes(formula_->name) + " adds no plain water at mixing",
                "warm or cool its other liquids with care, or leave the formula out and give weights: "
                "--flour, --water");
        }
        request_.weights = std::move(bowl.weights);
    }

    std::optional<Mass> read_weight(std::string_view option) {
        const auto text = session_.option_text(option);
        return text ? read_mass(*text, diagnostics_) : std::nullopt;
    }

    void weigh_options() {
        const auto flour = read_weight("--flour");
        const auto water = read_weight("--water");
        const auto levain = read_weight("--levain");
        if (!options_.has("--flour")) {
            diagnostics_.error(Code::flour_missing, {}, "how much flour goes in?", "write --flour 1kg");
        }
        if (!options_.has("--water")) {
            diagnostics_.error(Code::water_unweighed, {}, "how much water goes in?", "write --water 650g");
        }
        has_preferment_ = options_.has("--levain");
        if (!flour || !water) {
            return;
        }
        const auto line = [&](const char* name, Mass mass) {
            return Line{.name = name,
                        .ingredient = session_.pantry.find(name).ingredient,
                        .mass = mass,
                        .uncertainty = {}};
        };
        MixWeights weights{.parts = {mix_part(MixPart::Kind::flour, "flour", {line("bread flour", *flour)})},
                           .water = *water};
        if (levain) {
            const std::vector<Line> halves{line("bread flour", *levain / 2.0), line("water", *levain / 2.0)};
            weights.parts.push_back(mix_part(MixPart::Kind::preferment, "levain", halves));
            levain_mass_ = *levain;
            levain_composition_ = dough_composition(halves);
            notes_.push_back("The levain is counted as half flour and half water.");
        }
        request_.weights = std::move(weights);
    }

    // ---- the levain's temperature ----

    std::optional<Temperature> read_levain() {
        const auto text = session_.option_text("--levain-at");
        if (!text) {
            return std::nullopt;
        }
        const auto profile = read_profile(*text, diagnostics_);
        if (request_.weights && !has_preferment_) {
            diagnostics_.error(Code::stage_unknown, *text, "there is no levain and no other preferment",
                               "leave out --levain-at");
            return std::nullopt;
        }
        if (!profile || profile->held()) {
            return profile ? profile->held() : std::nullopt;
        }
        if (!(levain_mass_.value() > 0.0)) {
            report_missing("how warm the levain becomes in " + in_quotes(text->text) +
                               " depends on its weight",
                           "give a formula, or --levain 200g, or one temperature", *text);
            return std::nullopt;
        }
        return levain_after(*profile, *text);
    }

    // As a jar or a tub, as high as it is wide, that had all of its first place's temperature.
    Temperature levain_after(const TemperatureProfile& profile, const SourcedText& text) {
        const TemperatureHistory history = compute_temperature_history({.mass = levain_mass_,
                                                                        .form = DoughForm::tub(),
                                                                        .composition = levain_composition_,
                                                                        .gas = {},
                                                                        .start = profile.legs().front().at,
                                                                        .surroundings = {},
                                                                        .environment = profile,
                                                                        .until = profile.length(),
                                                                        .heat_of_fermentation = {}});
        if (history.lowest_c() < dough_freezes_at().in_celsius()) {
            diagnostics_.error(Code::temperature_out_of_range, text,
                               "the levain would freeze, which is not computed",
                               "thaw it first and give its temperature");
        }
        const Temperature mean = Temperature::celsius(history.mean_c(history.end_hours()));
        notes_.push_back("After " + std::string(text.text) + " the levain has " +
                         show_temperature(mean, scale_.units) + " in the mean, computed for " +
                         show_weighed(levain_mass_, scale_) + " in a jar as high as it is wide.");
        return mean;
    }

    // ---- friction ----

    void read_logged() {
        const auto text = session_.option_text("--logged");
        if (!text) {
            return;
        }
        LoggedTemperatures logged;
        const std::size_t errors = diagnostics_.error_count();
        for (std::size_t at = 0; at <= text->text.size();) {
            const std::size_t end = std::min(text->text.find(',', at), text->text.size());
            read_logged_item(trimmed(text->part(at, end - at)), logged, diagnostics_);
            at = end + 1;
        }
        const auto dough = logged_at(logged, "dough");
        const auto water = logged_at(logged, "water");
        const auto room = logged_at(logged, "room");
        const bool had_levain = logged.contains("levain");
        const bool is_clean = diagnostics_.error_count() == errors;
        if (is_clean && (!dough || !water || !room)) {
            report_missing("a logged mix has the temperatures of dough, water and room",
                           std::string(logged_form), *text);
        } else if (is_clean && had_levain != (request_.mix.preferment.has_value() || has_preferment_)) {
            report_missing(had_levain ? "the logged mix had a levain, and this dough has none"
                                      : "the logged mix lacks the temperature of the levain",
                           "log a mix of this dough", *text);
        }
        if (dough && water && room) {
            request_.logged = LoggedMix{.dough = *dough,
                                        .water = *water,
                                        .mix = {.flour = logged_at(logged, "flour").value_or(*room),
                                                .room = *room,
                                                .preferment = logged_at(logged, "levain"),
                                                .others = logged_at(logged, "others")}};
        }
    }

    void note_what_was_assumed() {
        if (!options_.has("--flour-at")) {
            notes_.push_back("The flour is taken to have the room's temperature; --flour-at gives its own.");
        }
        if (has_preferment_ && !options_.has("--levain-at")) {
            notes_.push_back("The levain or preferment is taken to have the room's temperature; --levain-at "
                             "gives its own.");
        }
        if (!request_.friction && !request_.logged) {
            notes_.push_back(
                "No friction is counted, as for mixing by hand; a machine warms the dough. Log a "
                "mix with --logged to find yours.");
        }
    }

    const Options& options_;
    const Formula* formula_;
    const WeighingScale& scale_;
    const std::optional<MixDefaults>& defaults_;
    Session& session_;
    Diagnostics& diagnostics_;
    WaterRequest request_{.dough = usual_room,
                          .mix = {.flour = usual_room, .room = usual_room, .preferment = {}, .others = {}},
                          .friction = {},
                          .logged = {},
                          .weights = {}};
    bool has_preferment_ = false;
    Mass levain_mass_ = kilograms(0.0); // of the largest
    DoughComposition levain_composition_;
    std::vector<std::string> notes_;
};

} // namespace

std::optional<ReadWaterRequest> read_water_request(const Options& options, const Formula* formula,
                                                   const WeighingScale& scale, Session& session,
                                                   const std::optional<MixDefaults>& defaults) {
    return WaterRequestReader(options, formula, scale, defaults, session).read();
}

} // namespace leavenwright
