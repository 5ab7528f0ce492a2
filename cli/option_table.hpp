// Every verb and option of the command, once. Reading them, --help, the man page and the
// shells' completions all come from here.
#pragma once

#include <array>
#include <cstddef>
#include <string_view>

namespace leavenwright {

struct VerbRow {
    std::string_view name;
    std::string_view summary;
    std::string_view argument; // name of what stands behind the verb
    std::string_view argument_text;
    std::size_t least = 0; // how many of them
    std::size_t most = 0;
};

struct OptionRow {
    std::string_view verb; // "*" for every verb
    std::string_view name;
    std::string_view short_name; // may be empty
    std::string_view argument;   // example or kind of its value; empty for a flag
    std::string_view group;
    std::string_view text;
    std::string_view words; // the values it knows, separated by spaces; empty where it takes any
    bool may_repeat = false;
};

inline constexpr std::size_t many = 1000;

inline constexpr auto verb_table = std::to_array<VerbRow>({
    {"convert", "Replace packaged yeast by a levain", "FORMULA", "Formula file; - is standard input", 1, 1},
    {"scale", "Bring a formula to another size", "FORMULA", "Formula file; - is standard input", 1, 1},
    {"check", "Check one formula, or compare two", "FORMULA", "One formula file, or two to compare", 1, 2},
    {"proof", "Say when a dough is ready in your kitchen", "FORMULA", "Formula file; - is standard input", 1,
     1},
    {"ripen", "Say when a levain build is ripe", "", "", 0, 0},
    {"card", "Make the bake card to work from", "FORMULA", "Formula files; a card for each", 1, many},
    {"water", "Say how warm the water has to be", "FORMULA", "Formula file; - is standard input", 0, 1},
    {"transcribe", "Turn a recipe's text into a formula", "RECIPE",
     "Text, page or JSON-LD; - is standard input", 1, 1},
    {"pantry", "List ingredients, or show one with its sources", "NAME", "An ingredient; all without", 0,
     many},
    {"explain", "Explain a diagnostic by its code", "CODE", "Such as unit-missing; all without", 0, many},
});

inline constexpr std::string_view inoculation_group =
    "How much levain (one of these; 20% of the flour without)";
inline constexpr std::string_view levain_group = "What levain";
inline constexpr std::string_view stays_group = "What stays, what gives";
inline constexpr std::string_view size_group = "To what size (one of these)";
inline constexpr std::string_view beside_group = "With a size";
inline constexpr std::string_view compare_group = "Comparing two";
inline constexpr std::string_view usual_group = "What is usual (a warning outside of it)";
inline constexpr std::string_view seed_group = "The build of the levain";
inline constexpr std::string_view clock_group = "Hours of the clock (one of these)";
inline constexpr std::string_view card_group = "What the card shows";
inline constexpr std::string_view build_group = "The build";
inline constexpr std::string_view place_group = "Where it stands (24 C without)";
inline constexpr std::string_view rise_group = "What ends a stage";
inline constexpr std::string_view search_group = "The other way round";
inline constexpr std::string_view cultures_group = "The cultures it reckons with";
inline constexpr std::string_view dough_group = "What dough";
inline constexpr std::string_view bowl_group = "What meets in the bowl";
inline constexpr std::string_view friction_group = "Heat of mixing (one of these; none without)";
inline constexpr std::string_view ice_group = "Colder than the tap";
inline constexpr std::string_view weights_group = "Weights, where there is no formula";
inline constexpr std::string_view report_group = "Report";

inline constexpr auto option_table = std::to_array<OptionRow>({
    {"convert", "--prefermented-flour", "", "20%", inoculation_group, "Levain flour, of the total flour", "",
     false},
    {"convert", "--levain-on-total-flour", "", "40%", inoculation_group, "Levain weight, of the total flour",
     "", false},
    {"convert", "--levain-on-dough-flour", "", "50%", inoculation_group,
     "Levain weight, of flour added at mixing", "", false},
    {"convert", "--levain-hydration", "", "100%", levain_group, "Its water, of its flour (100%)", "", false},
    {"convert", "--levain-flour", "", "FLOURS", levain_group, "Such as \"rye flour 50%, bread flour 50%\"",
     "", false},
    {"convert", "--keep", "", "STAGE", stays_group, "Keep this preferment a stage; may repeat", "", true},
    {"convert", "--keep-blend", "", "", stays_group, "An error if the blend of flours would move", "", false},
    {"convert", "--dry-milk", "", "", stays_group, "Restore solids of milk that gives water", "", false},
    {"convert", "--water-from", "", "NAMES", stays_group, "Liquids that give water after plain water", "",
     false},
    {"scale", "--dough", "", "1.8kg", size_group, "Weight of the whole dough", "", false},
    {"scale", "--pieces", "", "\"3 x 600 g\"", size_group, "Pieces by dough weight", "", false},
    {"scale", "--flour", "", "1kg", size_group, "Total flour", "", false},
    {"scale", "--baked", "", "800g", size_group, "Weight out of the oven; with --loss", "", false},
    {"scale", "--pan-volume", "", "2l", size_group, "Volume of the pans; with --fill", "", false},
    {"scale", "--pan-area", "", "\"20 x 30 cm\"", size_group, "Or \"28 cm round\", or 600cm2; with --fill",
     "", false},
    {"scale", "--by", "", "1.5", size_group, "Every amount times this", "", false},
    {"scale", "--loss", "", "12%", beside_group, "Lost between dough and bread, of the dough", "", false},
    {"scale", "--fill", "", "0.5kg", beside_group, "Dough per litre of pan, or per 1000 cm2", "", false},
    {"scale", "--whole-eggs", "", "", beside_group, "The nearest size with whole eggs", "", false},
    {"check", "--tolerance", "", "0.5g", compare_group, "What may differ (0.5 g)", "", false},
    {"check", "--any-size", "", "", compare_group, "Bring the second to the first's flour first", "", false},
    {"check", "--usual-salt", "", "\"1% to 3%\"", usual_group, "Salt, of the flour (1% to 3%)", "", false},
    {"check", "--usual-hydration", "", "\"50% to 90%\"", usual_group, "True hydration (50% to 90%)", "",
     false},
    {"check", "--usual-prefermented", "", "\"10% to 50%\"", usual_group, "Prefermented flour (10% to 50%)",
     "", false},
    {"card", "--prefermented-flour", "", "20%", inoculation_group, "Levain flour, of the total flour", "",
     false},
    {"card", "--levain-on-total-flour", "", "40%", inoculation_group, "Levain weight, of the total flour", "",
     false},
    {"card", "--levain-on-dough-flour", "", "50%", inoculation_group,
     "Levain weight, of flour added at mixing", "", false},
    {"card", "--levain-hydration", "", "100%", levain_group, "Its water, of its flour (100%)", "", false},
    {"card", "--levain-flour", "", "FLOURS", levain_group, "Such as \"rye flour 50%, bread flour 50%\"", "",
     false},
    {"card", "--keep", "", "STAGE", stays_group, "Keep this preferment a stage; may repeat", "", true},
    {"card", "--keep-blend", "", "", stays_group, "An error if the blend of flours would move", "", false},
    {"card", "--dry-milk", "", "", stays_group, "Restore solids of milk that gives water", "", false},
    {"card", "--water-from", "", "NAMES", stays_group, "Liquids that give water after plain water", "",
     false},
    {"card", "--seed", "", "20%", seed_group, "From the jar, of the levain's weight (20%)", "", false},
    {"card", "--jar-hydration", "", "100%", seed_group, "Water in the jar, of its flour (100%)", "", false},
    {"card", "--start", "", "\"2031-03-07 18:00\"", clock_group, "When the dough is mixed", "", false},
    {"card", "--ready", "", "\"2031-03-08 07:30\"", clock_group, "When the bread is out of the oven", "",
     false},
    {"card", "--at", "", "22C", place_group, "Temperature of the place", "", false},
    {"card", "--profile", "", "\"3h at 24C, 4C\"", place_group, "Places one after the other, from mixing on",
     "", false},
    {"card", "--mixed-at", "", "25C", place_group, "Temperature after mixing", "", false},
    {"card", "--vigour", "", "120%", cultures_group, "Your culture's speed, of the usual (100%)", "", false},
    {"card", "--room", "", "22C", bowl_group, "Of the room at mixing (where the dough stands)", "", false},
    {"card", "--flour-at", "", "20C", bowl_group, "Of the flour (the room's)", "", false},
    {"card", "--levain-at", "", "24C", bowl_group, "Of the levain, or \"12h at 4C, 1h at 22C\"", "", false},
    {"card", "--others-at", "", "5C", bowl_group, "Of other ingredients (the room's)", "", false},
    {"card", "--friction", "", "8F", friction_group, "As the rule of factors counts it", "", false},
    {"card", "--logged", "", "MIX", friction_group, "Such as \"dough 26C, room 22C, water 30C\"", "", false},
    {"card", "--tap", "", "15C", ice_group, "Of cold tap water (15C)", "", false},
    {"card", "--ice-at", "", "0C", ice_group, "Of the ice (0C)", "", false},
    {"card", "--as-written", "", "", card_group, "Leave packaged yeast in", "", false},
    {"card", "--side-by-side", "", "", card_group, "The formula before and after its conversion", "", false},
    {"card", "--paper", "", "PAPER", card_group, "For print: a4 or letter (a4; letter with us)", "a4 letter",
     false},
    {"proof", "--prefermented-flour", "", "20%", inoculation_group, "Levain flour, of the total flour", "",
     false},
    {"proof", "--levain-on-total-flour", "", "40%", inoculation_group, "Levain weight, of the total flour",
     "", false},
    {"proof", "--levain-on-dough-flour", "", "50%", inoculation_group,
     "Levain weight, of flour added at mixing", "", false},
    {"proof", "--levain-hydration", "", "100%", levain_group, "Its water, of its flour (100%)", "", false},
    {"proof", "--levain-flour", "", "FLOURS", levain_group, "Such as \"rye flour 50%, bread flour 50%\"", "",
     false},
    {"proof", "--keep", "", "STAGE", stays_group, "Keep this preferment a stage; may repeat", "", true},
    {"proof", "--keep-blend", "", "", stays_group, "An error if the blend of flours would move", "", false},
    {"proof", "--dry-milk", "", "", stays_group, "Restore solids of milk that gives water", "", false},
    {"proof", "--water-from", "", "NAMES", stays_group, "Liquids that give water after plain water", "",
     false},
    {"proof", "--at", "", "22C", place_group, "Temperature of the place", "", false},
    {"proof", "--profile", "", "\"3h at 24C, 4C\"", place_group, "Places one after the other, from mixing on",
     "", false},
    {"proof", "--mixed-at", "", "25C", place_group, "Temperature after mixing", "", false},
    {"proof", "--bulk-rise", "", "50%", rise_group, "Rise that ends bulk, over the mixed dough", "", false},
    {"proof", "--proof-rise", "", "100%", rise_group, "Rise that ends the proof, over the mixed dough", "",
     false},
    {"proof", "--gas-kept", "", "40%", rise_group, "Bubbles that dividing and shaping leave in", "", false},
    {"proof", "--retard", "", "12h", rise_group, "Time of a retard", "", false},
    {"proof", "--as-written", "", "", rise_group, "Leave packaged yeast in", "", false},
    {"proof", "--ready-in", "", "10h", search_group, "Time from mixing to the end of the proof", "", false},
    {"proof", "--by", "", "WHAT", search_group, "Find inoculation, temperature or retard",
     "inoculation temperature retard", false},
    {"proof", "--vigour", "", "120%", cultures_group, "Your culture's speed, of the usual (100%)", "", false},
    {"proof", "--members", "", "1000", cultures_group, "How many cultures (1000)", "", false},
    {"proof", "--draw", "", "1893", cultures_group, "Which draw of them; same draw, same answer", "", false},
    {"ripen", "--seed", "", "20%", build_group, "Seed from the jar, of the fresh flour (20%)", "", false},
    {"ripen", "--levain-hydration", "", "100%", build_group, "Its water, of its flour (100%)", "", false},
    {"ripen", "--flour", "", "FLOURS", build_group, "Such as \"rye flour 50%, bread flour 50%\"", "", false},
    {"ripen", "--salt", "", "0%", build_group, "Salt, of its flour (none)", "", false},
    {"ripen", "--weight", "", "400g", build_group, "What the build weighs (400 g)", "", false},
    {"ripen", "--at", "", "22C", place_group, "Temperature of the place", "", false},
    {"ripen", "--profile", "", "\"3h at 24C, 4C\"", place_group, "Places one after the other, from mixing on",
     "", false},
    {"ripen", "--mixed-at", "", "25C", place_group, "Temperature after mixing", "", false},
    {"ripen", "--vigour", "", "120%", cultures_group, "Your culture's speed, of the usual (100%)", "", false},
    {"ripen", "--members", "", "1000", cultures_group, "How many cultures (1000)", "", false},
    {"ripen", "--draw", "", "1893", cultures_group, "Which draw of them; same draw, same answer", "", false},
    {"water", "--to", "", "25C", dough_group, "Temperature wanted (the formula's mix: to)", "", false},
    {"water", "--room", "", "22C", bowl_group, "Of the room; always needed", "", false},
    {"water", "--flour-at", "", "20C", bowl_group, "Of the flour (the room's)", "", false},
    {"water", "--levain-at", "", "24C", bowl_group, "Of the levain, or \"12h at 4C, 1h at 22C\"", "", false},
    {"water", "--others-at", "", "5C", bowl_group, "Of other ingredients (the room's)", "", false},
    {"water", "--friction", "", "8F", friction_group, "As the rule of factors counts it", "", false},
    {"water", "--logged", "", "MIX", friction_group, "Such as \"dough 26C, room 22C, water 30C\"", "", false},
    {"water", "--tap", "", "15C", ice_group, "Of cold tap water (15C)", "", false},
    {"water", "--ice-at", "", "0C", ice_group, "Of the ice (0C)", "", false},
    {"water", "--flour", "", "1kg", weights_group, "Flour", "", false},
    {"water", "--water", "", "650g", weights_group, "Water, ice included", "", false},
    {"water", "--levain", "", "200g", weights_group, "Levain, half of it water", "", false},
    {"convert", "--format", "", "FORM", report_group, "How: text, json, formula or card",
     "text json formula card", false},
    {"scale", "--format", "", "FORM", report_group, "How: text, json, formula or card",
     "text json formula card", false},
    {"card", "--format", "", "FORM", report_group, "How: text, html, pdf or json", "text html pdf json",
     false},
    {"transcribe", "--strict", "", "", report_group, "Fail where a line is doubtful", "", false},
    {"transcribe", "--format", "", "FORM", report_group, "How: formula or json", "formula json", false},
    {"check", "--format", "", "FORM", report_group, "How: text or json", "text json", false},
    {"water", "--format", "", "FORM", report_group, "How: text or json", "text json", false},
    {"convert", "--output", "-o", "FILE", report_group, "Write to FILE instead of the terminal", "", false},
    {"convert", "--brief", "", "", report_group, "Without the times that the levain needs", "", false},
    {"scale", "--output", "-o", "FILE", report_group, "Write to FILE instead of the terminal", "", false},
    {"card", "--output", "-o", "FILE", report_group, "Write to FILE instead of the terminal", "", false},
    {"convert", "--force", "", "", report_group, "Replace FILE if it is there", "", false},
    {"scale", "--force", "", "", report_group, "Replace FILE if it is there", "", false},
    {"card", "--force", "", "", report_group, "Replace FILE if it is there", "", false},
    {"transcribe", "--output", "-o", "FILE", report_group, "Write to FILE instead of the terminal", "",
     false},
    {"transcribe", "--force", "", "", report_group, "Replace FILE if it is there", "", false},
    {"convert", "--units", "", "UNITS", report_group, "Metric or us (ounces)", "metric us", false},
    {"scale", "--units", "", "UNITS", report_group, "Metric or us (ounces)", "metric us", false},
    {"card", "--units", "", "UNITS", report_group, "Metric or us (ounces)", "metric us", false},
    {"convert", "--weigh-to", "", "WEIGHT", report_group, "What the scale shows (1 g)", "", false},
    {"scale", "--weigh-to", "", "WEIGHT", report_group, "What the scale shows (1 g)", "", false},
    {"card", "--weigh-to", "", "WEIGHT", report_group, "What the scale shows (1 g)", "", false},
    {"convert", "--pantry", "", "FILE", report_group, "Ingredients of your own; may repeat", "", true},
    {"scale", "--pantry", "", "FILE", report_group, "Ingredients of your own; may repeat", "", true},
    {"card", "--pantry", "", "FILE", report_group, "Ingredients of your own; may repeat", "", true},
    {"water", "--output", "-o", "FILE", report_group, "Write to FILE instead of the terminal", "", false},
    {"water", "--force", "", "", report_group, "Replace FILE if it is there", "", false},
    {"water", "--units", "", "UNITS", report_group, "Metric or us (ounces, F)", "metric us", false},
    {"water", "--weigh-to", "", "WEIGHT", report_group, "What the scale shows (1 g)", "", false},
    {"water", "--pantry", "", "FILE", report_group, "Ingredients of your own; may repeat", "", true},
    {"check", "--pantry", "", "FILE", report_group, "Ingredients of your own; may repeat", "", true},
    {"transcribe", "--pantry", "", "FILE", report_group, "Ingredients of your own; may repeat", "", true},
    {"pantry", "--pantry", "", "FILE", report_group, "Ingredients of your own; may repeat", "", true},
    {"proof", "--format", "", "FORM", report_group, "How: text, json or csv (the curves)", "text json csv",
     false},
    {"proof", "--output", "-o", "FILE", report_group, "Write to FILE instead of the terminal", "", false},
    {"proof", "--force", "", "", report_group, "Replace FILE if it is there", "", false},
    {"proof", "--units", "", "UNITS", report_group, "Metric or us (Fahrenheit)", "metric us", false},
    {"proof", "--pantry", "", "FILE", report_group, "Ingredients of your own; may repeat", "", true},
    {"ripen", "--format", "", "FORM", report_group, "How: text, json or csv (the curves)", "text json csv",
     false},
    {"ripen", "--output", "-o", "FILE", report_group, "Write to FILE instead of the terminal", "", false},
    {"ripen", "--force", "", "", report_group, "Replace FILE if it is there", "", false},
    {"ripen", "--units", "", "UNITS", report_group, "Metric or us (Fahrenheit)", "metric us", false},
    {"ripen", "--pantry", "", "FILE", report_group, "Ingredients of your own; may repeat", "", true},
    {"*", "--diagnostics", "", "FORM", report_group, "Faults as text or json", "text json", false},
});

/// Whether an option says something of a conversion.
constexpr bool belongs_to_conversion(const OptionRow& row) {
    return row.group == inoculation_group || row.group == levain_group || row.group == stays_group;
}

/// Whether an option says something of what meets in the bowl.
constexpr bool belongs_to_mix(const OptionRow& row) {
    return row.group == bowl_group || row.group == friction_group || row.group == ice_group;
}

} // namespace leavenwright
