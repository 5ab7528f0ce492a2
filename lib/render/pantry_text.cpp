#include "render/pantry_text.hpp"

#include "quantity/show.hpp"
#include "render/text_table.hpp"
#include "source/unicode.hpp"
#include "source/wrap_text.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <set>
#include <utility>
#include <vector>

namespace leavenwright {
namespace {

std::string joined(std::span<const std::string_view> texts, std::string_view nothing) {
    std::string result;
    for (const std::string_view text : texts) {
        result += (result.empty() ? "" : ", ") + std::string(text);
    }
    return result.empty() ? std::string(nothing) : result;
}

class EntryPage {
public:
    EntryPage(const Pantry& pantry, std::size_t columns) : pantry_(pantry), columns_(columns) {}

    std::string write(std::string_view asked, const PantryMatch& match) {
        const Ingredient& ingredient = *match.ingredient;
        out_ += printable(ingredient.name, columns_) + "\n";
        paragraph(fmt::format("class: {}", name_of(ingredient.ingredient_class)));
        if (match.nearest != nullptr) {
            paragraph(fmt::format("'{}' is not this; this is the nearest entry: {}", printable(asked, 60),
                                  match.nearest->why));
        }
        if (!ingredient.stand_in.empty()) {
            paragraph(fmt::format("stand-in: {}", ingredient.stand_in));
        }
        write_composition(ingredient);
        write_measures(ingredient);
        paragraph("EU allergens (Regulation 1169/2011, Annex II): " +
                  joined(ingredient.eu_allergens, "none"));
        paragraph("US allergens (FALCPA, FASTER Act): " + joined(ingredient.us_allergens, "none"));
        if (!ingredient.dries_to.empty()) {
            paragraph(fmt::format("its solids can be restored as {}", ingredient.dries_to));
        }
        if (!ingredient.also.empty()) {
            paragraph("also: " + joined(ingredient.also, ""));
        }
        write_nearest(ingredient);
        write_sources();
        return std::move(out_);
    }

private:
    void paragraph(const std::string& text) {
        out_ += wrap_text(printable(text, 4000), "  ", "    ", columns_);
    }

    std::string cited(std::string_view source) {
        const std::string_view key = source.substr(0, source.find(' '));
        for (const PantrySource& known : pantry_.sources()) {
            if (known.key == key) {
                cited_.insert(known.key);
            }
        }
        return std::string(source);
    }

    void write_composition(const Ingredient& ingredient) {
        if (!ingredient.has_composition) {
            paragraph("composition: not known; counted as holding no water");
            return;
        }
        const Composition& c = ingredient.composition;
        const auto parts =
            std::to_array<std::pair<std::string_view, Fraction>>({{"water", c.water},
                                                                  {"protein", c.protein},
                                                                  {"fat", c.fat},
                                                                  {"carbohydrate", c.carbohydrate},
                                                                  {"of it fibre", c.fibre},
                                                                  {"of it sugars", c.sugars},
                                                                  {"ash", c.ash},
                                                                  {"sodium", c.sodium}});
        out_ += "  per 100 g";
        out_ += ingredient.source.empty() ? "\n" : " (" + cited(ingredient.source) + ")\n";
        TextTable table(columns_, "    ");
        for (const auto& [name, part] : parts) {
            table.add_row({std::string(name), show_decimal(part.in_percent(), 3) + " g"});
        }
        out_ += table.text();
    }

    void write_measures(const Ingredient& ingredient) {
        if (!ingredient.volumes.empty()) {
            out_ +=
                fmt::format("  by volume, within {}\n", show_percent(ingredient.volume_uncertainty.value()));
            TextTable table(columns_, "    ");
            for (const MeasuredVolume& volume : ingredient.volumes) {
                std::string name(volume.measure);
                name += volume.how.empty() ? "" : ", " + std::string(volume.how);
                table.add_row({name, show_decimal(in_grams(volume.mass), 2) + " g", cited(volume.source)});
            }
            out_ += table.text();
        }
        if (!ingredient.pieces.empty()) {
            out_ += fmt::format("  by the piece, within {}\n", show_percent(piece_uncertainty.value()));
            TextTable table(columns_, "    ");
            for (const PieceWeight& piece : ingredient.pieces) {
                table.add_row({std::string(piece.word), show_decimal(in_grams(piece.mass), 2) + " g",
                               cited(piece.source)});
            }
            out_ += table.text();
        }
    }

    // One paragraph a reason: national types have many spellings.
    void write_nearest(const Ingredient& ingredient) {
        std::vector<std::pair<std::string_view, std::string>> reasons;
        for (const NearestName& nearest : ingredient.nearest_for) {
            const auto known = std::find_if(reasons.begin(), reasons.end(),
                                            [&](const auto& reason) { return reason.first == nearest.why; });
            if (known == reasons.end()) {
                reasons.emplace_back(nearest.why, nearest.name);
            } else {
                known->second += ", " + std::string(nearest.name);
            }
        }
        if (!reasons.empty()) {
            out_ += "  the nearest entry, though not the same, for\n";
        }
        for (const auto& [why, names] : reasons) {
            out_ += wrap_text(fmt::format("{} ({})", names, why), "    ", "      ", columns_);
        }
    }

    void write_sources() {
        for (const PantrySource& source : pantry_.sources()) {
            if (cited_.contains(source.key)) {
                paragraph(fmt::format("{}: {}", source.key, source.title));
            }
        }
    }

    const Pantry& pantry_;
    std::size_t columns_;
    std::set<std::string_view> cited_;
    std::string out_;
};

} // namespace

std::string render_pantry_list(const Pantry& pantry, std::size_t columns) {
    std::string out;
    std::vector<const Ingredient*> all = pantry.added();
    for (const Ingredient& ingredient : pantry.built_in()) {
        all.push_back(&ingredient);
    }
    for (int i = 0; i <= static_cast<int>(IngredientClass::other); ++i) {
        const auto ingredient_class = static_cast<IngredientClass>(i);
        std::string names;
        for (const Ingredient* ingredient : all) {
            if (ingredient->ingredient_class == ingredient_class) {
                names += (names.empty() ? "" : ", ") + std::string(ingredient->name) +
                         (ingredient->stand_in.empty() ? "" : "*");
            }
        }
        if (!names.empty()) {
            out +=
                std::string(name_of(ingredient_class)) + "\n" + wrap_text(names, "  ", "  ", columns) + "\n";
        }
    }
    return out + "* a stand-in: its figures are a neighbour's, or not known\n" +
           fmt::format("{} ingredients; ", all.size()) +
           "'leavenwright pantry NAME' shows one with its sources.\n";
}

std::string render_pantry_entry(const Pantry& pantry, std::string_view asked, const PantryMatch& match,
                                std::size_t columns) {
    return EntryPage(pantry, columns).write(asked, match);
}

} // namespace leavenwright
