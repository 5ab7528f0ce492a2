#include "transcribe/group_use.hpp"

#include "transcribe/direction_words.hpp"
#include "transcribe/recipe_text.hpp"
#include "transcribe/recipe_words.hpp"
#include "transcribe/stage_row.hpp"
#include "transcribe/used_apart.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

namespace leavenwright {

void set_apart_by_majority(std::span<IngredientLine> group, Diagnostics& diagnostics) {
    constexpr std::size_t fewest = 3;
    std::string role;
    std::size_t apart = 0;
    for (const IngredientLine& line : group) {
        if (!is_in_dough(line.role)) {
            role = apart == 0 ? line.role : role;
            ++apart;
        }
        const bool makes_dough =
            line.ingredient != nullptr && (line.ingredient->is_flour() || line.ingredient->is_yeast());
        if (makes_dough && is_in_dough(line.role)) {
            return;
        }
    }
    if (group.size() < fewest || apart * 2 <= group.size()) {
        return;
    }
    for (IngredientLine& line : group) {
        if (line.role == "dough") {
            set_apart(line, role, " stands among lines for " + role + "; it is kept apart", diagnostics);
        }
    }
}

static bool has_flour_or_yeast(std::span<const IngredientLine> group) {
    return std::any_of(group.begin(), group.end(), [](const IngredientLine& line) {
        return line.ingredient != nullptr && (line.ingredient->is_flour() || line.ingredient->is_yeast());
    });
}

// Of a crumb or a paste: far less flour than all, and no yeast.
static bool has_little_flour(std::span<const IngredientLine> group, Mass flour_of_all) {
    constexpr double most = 0.25; // common practice, no source
    Mass flour{};
    for (const IngredientLine& line : group) {
        if (line.ingredient != nullptr && line.ingredient->is_yeast()) {
            return false;
        }
        const bool is_flour = line.is_known() && line.ingredient->is_flour() && line.weight;
        flour += is_flour ? line.weight->likely : Mass{};
    }
    return group.size() > 1 && flour.value() > 0.0 && flour < most * flour_of_all;
}

// "Wet", "Fruit (soak it)", "Add on the second day": of the dough.
static bool names_part_of_dough(std::string_view title) {
    constexpr auto words = std::to_array<std::string_view>(
        {"wet",        "dry",         "liquid",    "liquids",    "yeast",      "flour",      "flours",
         "fruit",      "fruits",      "spice",     "spices",     "soak",       "soaked",     "dough",
         "bread",      "main",        "mix",       "base",       "step",       "day",        "part",
         "first",      "third",       "final",     "last",       "night",      "evening",    "add",
         "everything", "begin",       "start",     "basic",      "machine",    "grains",     "porridge",
         "nuts",       "fats",        "fat",       "dairy",      "salts",      "and",        "also",
         "plus",       "ingredients", "potato",    "potatoes",   "mash",       "inclusions", "fold",
         "knead",      "stir",        "work",      "flavoring",  "flavorings", "flavouring", "seasoning",
         "seasonings", "aromatics",   "sweetener", "sweeteners", "enrichment", "water",      "milk",
         "eggs",       "roux",        "slurry"});
    return names_rest(title) || has_word_of(title, words);
}

void doubt_by_title(std::span<IngredientLine> group, std::string_view title, Mass flour_of_all,
                    Diagnostics& diagnostics) {
    const auto is_counted = [](const IngredientLine& line) {
        return line.role == "dough" && line.is_known();
    };
    const auto first = std::find_if(group.begin(), group.end(), is_counted);
    const bool is_its_name =
        group.size() < 2 && std::any_of(group.begin(), group.end(), // "Butter", over 250 g of it
                                        [&](const IngredientLine& line) { return line.key == title; });
    if (first == group.end() || title.empty() || is_its_name || names_part_of_dough(title) ||
        (has_flour_or_yeast(group) && !has_little_flour(group, flour_of_all))) {
        return;
    }
    diagnostics.warning(Code::ingredient_doubtful, first->place,
                        in_quotes(title) + " does not say whether what stands below it goes into the dough",
                        "it is counted; write 'For the filling:' or the like above it if it does not");
    for (IngredientLine& line : group) {
        line.is_sure = line.is_sure && !is_counted(line);
    }
}

void set_apart_by_title(std::span<IngredientLine> group, std::string_view title,
                        std::span<const std::string> directions, Mass flour_of_all,
                        Diagnostics& diagnostics) {
    constexpr std::size_t shortest = 4;
    const std::string call(title.substr(title.rfind(' ') + 1));
    if (call.size() < shortest || is_common_word(call) ||
        (has_flour_or_yeast(group) && !has_little_flour(group, flour_of_all))) {
        return;
    }
    const std::string role = role_by_directions(direction_words(directions), std::span(&call, 1));
    for (IngredientLine& line : role.empty() ? std::span<IngredientLine>() : group) {
        if (line.role == "dough") {
            set_apart(line, role,
                      " stands below " + in_quotes(title) + ", which the directions name for " + role +
                          "; it is kept apart",
                      diagnostics);
        }
    }
}

void set_apart_by_group(std::span<IngredientLine> group, Diagnostics& diagnostics) {
    const auto first = std::find_if(group.begin(), group.end(), [](const IngredientLine& line) {
        return line.role != role_of_stage_row; // "All of the soaker"
    });
    if (first == group.end() || is_in_dough(first->role)) {
        return;
    }
    for (IngredientLine& line : group) {
        if (line.role == "dough") {
            set_apart(line, first->role,
                      " stands below a line for " + first->role + ", in a group of its own; it is kept apart",
                      diagnostics);
        }
    }
}

void set_apart_repeated_list(std::span<IngredientLine> lines, Diagnostics& diagnostics) {
    constexpr double tolerance = 0.01;
    constexpr std::size_t fewest = 3;
    std::vector<IngredientLine*> repeated;
    for (std::size_t at = 1; at < lines.size(); ++at) {
        IngredientLine& line = lines[at];
        const bool is_repeat = // in a list: "butter, 1/2 lb."
            !begins_with_number(line.text) && line.is_known() && line.weight && is_in_dough(line.role) &&
            std::any_of(lines.begin(), lines.begin() + static_cast<std::ptrdiff_t>(at),
                        [&](const IngredientLine& before) {
                            const bool is_brewed = // "2 tablespoonfuls of thick yeast"
                                before.key.empty() && before.name.ends_with("yeast") &&
                                line.ingredient->is_yeast() && before.number == line.number &&
                                before.unit == line.unit;
                            const bool is_same =
                                before.key == line.key && before.weight &&
                                std::abs((before.weight->likely / line.weight->likely).value() - 1.0) <
                                    tolerance;
                            return is_in_dough(before.role) && (is_same || is_brewed);
                        });
        if (is_repeat) {
            repeated.push_back(&line);
        }
    }
    if (repeated.size() < fewest) {
        return;
    }
    for (IngredientLine* line : repeated) {
        set_apart(*line, std::string(role_of_total),
                  " says again what stands before it: it is not counted again", diagnostics);
    }
}

void set_apart_repeated_flour(std::span<IngredientLine> lines, Diagnostics& diagnostics) {
    constexpr double tolerance = 0.005;
    Mass flour{};
    std::size_t flours = 0;
    std::string_view role; // of the first
    for (IngredientLine& line : lines) {
        if (!line.is_known() || !line.weight || !line.ingredient->is_flour() || !is_in_dough(line.role)) {
            continue;
        }
        const bool is_basis = (line.text.find("= 100 %") != std::string::npos ||
                               line.text.find("= 100%") != std::string::npos) &&
                              !begins_with_number(line.text);
        // one flour in another stage may weigh as much by chance
        const bool adds_up = flours > 1 || (flours == 1 && role == line.role);
        const Mass difference = line.weight->likely - flour;
        if (is_basis && adds_up && std::abs((difference / line.weight->likely).value()) < tolerance) {
            set_apart(line, std::string(role_of_total),
                      " weighs what the flours above it do: it is not counted again", diagnostics);
        } else {
            role = flours == 0 ? std::string_view(line.role) : role;
            flour += line.weight->likely;
            ++flours;
        }
    }
}

} // namespace leavenwright
