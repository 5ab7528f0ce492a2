#include "formula/write_formula.hpp"

#include "document/document.hpp"
#include "quantity/number.hpp"
#include "source/unicode.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <iterator>
#include <span>

namespace leavenwright {
namespace {

constexpr int kilograms_to_grams = 3;

std::string in_exact_grams(Mass mass) {
    return exact_decimal(mass.value(), kilograms_to_grams) + " g";
}

std::string percent_text(double ratio) {
    return exact_decimal(ratio, 2) + "%";
}

class FormulaWriter {
public:
    std::string write(const Formula& formula, std::string_view heading) {
        while (!heading.empty()) {
            const std::size_t end = std::min(heading.find('\n'), heading.size());
            out_ += "# " + std::string(heading.substr(0, end)) + "\n";
            heading.remove_prefix(std::min(end + 1, heading.size()));
        }
        add("formula: 1\nname: {}\n", yaml_scalar(formula.name));
        if (!formula.note.empty()) {
            add("note: {}\n", yaml_scalar(formula.note));
        }
        if (formula.makes) {
            add("makes: {}\n", yaml_scalar(formula.makes->text));
        }
        write_dough(formula);
        write_stages(formula, "preferments", true);
        write_stages(formula, "soakers", false);
        if (!formula.count_as_water.empty()) {
            out_ += "count as water: [";
            for (std::size_t i = 0; i < formula.count_as_water.size(); ++i) {
                out_ += (i == 0 ? "" : ", ") + yaml_scalar(formula.count_as_water[i]->name);
            }
            out_ += "]\n";
        }
        write_process(formula.process, "");
        write_pantry(formula);
        return std::move(out_);
    }

private:
    template <class... Args>
    void add(fmt::format_string<Args...> format, Args&&... args) {
        fmt::format_to(std::back_inserter(out_), format, std::forward<Args>(args)...);
    }

    // The formula's own ingredients, and those that it has from a user's file, so that it is whole.
    void write_pantry(const Formula& formula) {
        std::vector<const Ingredient*> ingredients;
        if (formula.own_ingredients) {
            for (const Ingredient& ingredient : formula.own_ingredients->ingredients()) {
                ingredients.push_back(&ingredient);
            }
        }
        const auto is_written = [&](const Ingredient& ingredient) {
            return std::any_of(ingredients.begin(), ingredients.end(), [&](const Ingredient* written) {
                return written->name == ingredient.name || is_spelling_of(*written, ingredient);
            });
        };
        const auto add = [&](const Ingredient* ingredient) {
            if (is_foreign(*ingredient) && !is_written(*ingredient)) {
                ingredients.push_back(ingredient);
            }
        };
        const auto add_foreign = [&](const std::vector<Line>& lines) {
            std::for_each(lines.begin(), lines.end(), [&](const Line& line) { add(line.ingredient); });
        };
        std::for_each(formula.count_as_water.begin(), formula.count_as_water.end(), add);
        add_foreign(formula.dough);
        for (const Stage& stage : formula.stages) {
            add_foreign(stage.lines);
        }
        out_ += ingredients.empty() ? "" : "pantry:\n";
        for (const Ingredient* ingredient : ingredients) {
            write_ingredient(*ingredient);
        }
    }

    // Whether a line's ingredient is what an entry stands in for.
    static bool is_spelling_of(const Ingredient& entry, const Ingredient& ingredient) {
        return std::any_of(entry.nearest_for.begin(), entry.nearest_for.end(),
                           [&](const NearestName& nearest) {
                               return nearest.why == ingredient.stand_in &&
                                      fold_name(nearest.name) == fold_name(ingredient.name);
                           });
    }

    // Neither built in nor a spelling of what is.
    static bool is_foreign(const Ingredient& ingredient) {
        static const Pantry built_in;
        const PantryMatch known = built_in.find(ingredient.name);
        const bool is_spelling = known.nearest != nullptr && known.nearest->why == ingredient.stand_in;
        return known.ingredient != &ingredient && !is_spelling && !ingredient.is_culture();
    }

    void write_dough(const Formula& formula) {
        out_ += "dough:\n";
        for (const Line& line : merged(formula.dough)) {
            add("  {}: {}\n", yaml_scalar(line.name), in_exact_grams(line.mass));
        }
        for (const Stage& stage : formula.stages) {
            if (stage.used < stage.mass()) {
                add("  {}: {}\n", yaml_scalar(stage.name), in_exact_grams(stage.used));
            } else if (formula.dough.empty()) {
                add("  {}: all\n", yaml_scalar(stage.name));
            }
        }
    }

    // A key may stand only once in a map.
    static std::vector<Line> merged(const std::vector<Line>& lines) {
        std::vector<Line> result;
        for (const Line& line : lines) {
            const auto same = std::find_if(result.begin(), result.end(),
                                           [&](const Line& known) { return known.name == line.name; });
            if (same == result.end()) {
                result.push_back(line);
            } else {
                same->mass += line.mass;
            }
        }
        return result;
    }

    void write_stages(const Formula& formula, std::string_view section, bool are_preferments) {
        bool is_first = true;
        for (const Stage& stage : formula.stages) {
            if (is_preferment(stage.kind) != are_preferments) {
                continue;
            }
            if (is_first) {
                add("{}:\n", section);
                is_first = false;
            }
            add("  {}:\n", yaml_scalar(stage.name));
            if (stage.kind != StageKind::preferment && fold_name(stage.name) != name_of(stage.kind)) {
                add("    kind: {}\n", name_of(stage.kind));
            }
            if (holds(stage.lines, IngredientClass::culture)) {
                add("    culture hydration: {}\n", percent_text(stage.culture_hydration.value()));
            }
            for (const Line& line : merged(stage.lines)) {
                add("    {}: {}\n", yaml_scalar(line.name), in_exact_grams(line.mass));
            }
            write_process(stage.process, "    ");
        }
    }

    void write_process(const std::vector<Step>& process, std::string_view indent) {
        if (process.empty()) {
            return;
        }
        add("{}process:\n", indent);
        for (const Step& step : process) {
            add("{}  - {}", indent, step.verb);
            std::string keys;
            const auto add_key = [&](std::string_view key, const std::string& value) {
                keys += (keys.empty() ? "" : ", ") + std::string(key) + ": " + yaml_scalar(value);
            };
            if (step.time) {
                add_key("for", step.time->text);
            }
            if (step.at) {
                add_key("at", step.at->text);
            }
            if (step.to) {
                add_key("to", step.to->text);
            }
            if (!step.note.empty()) {
                add_key("note", step.note);
            }
            out_ += keys.empty() ? "\n" : ": { " + keys + " }\n";
        }
    }

    void write_texts(std::string_view key, std::span<const std::string_view> texts) {
        if (texts.empty()) {
            return;
        }
        add("    {}: [", key);
        for (std::size_t i = 0; i < texts.size(); ++i) {
            out_ += (i == 0 ? "" : ", ") + yaml_scalar(texts[i]);
        }
        out_ += "]\n";
    }

    void write_text(std::string_view key, std::string_view text) {
        if (!text.empty()) {
            add("    {}: {}\n", key, yaml_scalar(text));
        }
    }

    void write_composition(const Composition& composition) {
        out_ += "    per 100 g: { ";
        const auto part = [&](std::string_view key, Fraction value, std::string_view end) {
            // 100 g of it hold value x 100 g: a shift by two places.
            add("{}: {} g{}", key, exact_decimal(value.value(), 2), end);
        };
        part("water", composition.water, ", ");
        part("protein", composition.protein, ", ");
        part("fat", composition.fat, ", ");
        part("carbohydrate", composition.carbohydrate, ", ");
        part("fibre", composition.fibre, ", ");
        part("ash", composition.ash, ", ");
        part("sugars", composition.sugars, ", ");
        part("sodium", composition.sodium, " }\n");
    }

    void write_ingredient(const Ingredient& ingredient) {
        add("  {}:\n    class: {}\n", yaml_scalar(ingredient.name), name_of(ingredient.ingredient_class));
        write_texts("also", ingredient.also);
        if (!ingredient.nearest_for.empty()) {
            out_ += "    nearest for:\n";
            for (const NearestName& nearest : ingredient.nearest_for) {
                add("      - {{ name: {}, why: {} }}\n", yaml_scalar(nearest.name), yaml_scalar(nearest.why));
            }
        }
        write_text("stand-in", ingredient.stand_in);
        if (ingredient.has_composition) {
            write_composition(ingredient.composition);
        }
        write_text("source", ingredient.source);
        if (!ingredient.volumes.empty()) {
            out_ += "    volumes:\n";
            for (const MeasuredVolume& volume : ingredient.volumes) {
                add("      - {{ {}: {}", yaml_scalar(volume.measure), in_exact_grams(volume.mass));
                out_ += volume.how.empty() ? "" : ", how: " + yaml_scalar(volume.how);
                out_ += volume.source.empty() ? " }\n" : ", source: " + yaml_scalar(volume.source) + " }\n";
            }
        }
        add("    volume uncertainty: {}\n", percent_text(ingredient.volume_uncertainty.value()));
        if (!ingredient.pieces.empty()) {
            out_ += "    pieces:\n";
            for (const PieceWeight& piece : ingredient.pieces) {
                add("      {}: {{ weight: {}", yaml_scalar(piece.word), in_exact_grams(piece.mass));
                out_ += piece.source.empty() ? " }\n" : ", source: " + yaml_scalar(piece.source) + " }\n";
            }
        }
        write_texts("eu allergens", ingredient.eu_allergens);
        write_texts("us allergens", ingredient.us_allergens);
        write_text("dries to", ingredient.dries_to);
    }

    std::string out_;
};

} // namespace

std::string write_formula(const Formula& formula, std::string_view heading) {
    return FormulaWriter().write(formula, heading);
}

} // namespace leavenwright
