#include "pantry/read_pantry.hpp"

#include "diagnostic/suggestion.hpp"
#include "document/map_reader.hpp"
#include "quantity/number.hpp"
#include "quantity/read_quantity.hpp"
#include "quantity/units.hpp"
#include "source/unicode.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <map>

namespace leavenwright {
namespace {

// A reading by volume, where the entry does not say: common practice, no source.
constexpr Fraction flour_volume_uncertainty{0.15};
constexpr Fraction liquid_volume_uncertainty{0.03};
constexpr Fraction powder_volume_uncertainty{0.10};

Fraction usual_volume_uncertainty(IngredientClass ingredient_class) {
    switch (ingredient_class) {
    case IngredientClass::flour:
        return flour_volume_uncertainty;
    case IngredientClass::liquid:
    case IngredientClass::dairy:
    case IngredientClass::egg:
    case IngredientClass::fat:
        return liquid_volume_uncertainty;
    default:
        return powder_volume_uncertainty;
    }
}

// Words that a stage reads as its own keys.
bool is_stage_key(std::string_view folded) {
    constexpr auto keys = std::to_array<std::string_view>(
        {"kind", "prefermented flour", "weight", "culture hydration", "process"});
    return std::find(keys.begin(), keys.end(), folded) != keys.end();
}

class IngredientReader {
public:
    IngredientReader(const Document& document, PantryShelf& shelf, Diagnostics& diagnostics)
        : document_(document), shelf_(shelf), diagnostics_(diagnostics) {}

    void read(const Node::Entry& entry) {
        const std::size_t errors_before = diagnostics_.error_count();
        if (!expect_map(document_, entry.key, entry.value, "class: flour", diagnostics_)) {
            return;
        }
        MapReader reader(document_, entry.value, "an ingredient", diagnostics_);
        Ingredient ingredient;
        ingredient.name = shelf_.keep(entry.key.text);
        read_class(reader, ingredient);
        ingredient.also = kept_texts(reader, "also");
        ingredient.nearest_for = read_nearest(reader);
        ingredient.stand_in = kept_text(reader, "stand-in");
        read_composition(reader, entry.key, ingredient);
        ingredient.source = kept_text(reader, "source");
        ingredient.volumes = read_volumes(reader);
        if (const auto text = reader.take_amount("volume uncertainty")) {
            if (const auto value = read_percentage(*text, diagnostics_)) {
                ingredient.volume_uncertainty = Fraction(value->value());
                if (value->value() > 1.0) {
                    diagnostics_.error(Code::amount_too_large, *text, "a volume is not as uncertain as that",
                                       "write how far a cup of it may be off: 10%");
                }
            }
        } else {
            ingredient.volume_uncertainty = usual_volume_uncertainty(ingredient.ingredient_class);
        }
        ingredient.pieces = read_pieces(reader);
        ingredient.eu_allergens = kept_texts(reader, "eu allergens");
        ingredient.us_allergens = kept_texts(reader, "us allergens");
        ingredient.dries_to = kept_text(reader, "dries to");
        reader.report_rest();
        claim_names(entry, ingredient);
        if (diagnostics_.error_count() == errors_before) {
            shelf_.keep(ingredient);
            return;
        }
        shelf_.note_faulty(ingredient.name);
        for (const std::string_view name : ingredient.also) {
            shelf_.note_faulty(name);
        }
        for (const NearestName& nearest : ingredient.nearest_for) {
            shelf_.note_faulty(nearest.name);
        }
    }

private:
    std::string_view kept_text(MapReader& reader, std::string_view key) {
        const auto text = reader.take_text(key);
        return text ? shelf_.keep(std::string(text->text)) : std::string_view();
    }

    std::span<const std::string_view> kept_texts(MapReader& reader, std::string_view key) {
        std::vector<std::string_view> kept;
        for (const SourcedText& text : reader.take_texts(key)) {
            kept.push_back(shelf_.keep(std::string(text.text)));
        }
        return kept.empty() ? std::span<const std::string_view>() : shelf_.keep(std::move(kept));
    }

    void read_class(MapReader& reader, Ingredient& ingredient) {
        reader.require("class", "class: flour");
        const auto text = reader.take_text("class");
        if (!text) {
            return;
        }
        const auto value = ingredient_class_named(fold_name(text->text));
        if (value) {
            ingredient.ingredient_class = *value;
            return;
        }
        diagnostics_.error(
            Code::class_unknown, *text, in_quotes(text->text) + " is not a class of ingredients",
            "one of: flour, liquid, salt, sweetener, fat, egg, dairy, yeast, seed or grain, other");
    }

    std::span<const NearestName> read_nearest(MapReader& reader) {
        const Node* list = reader.take("nearest for");
        std::vector<NearestName> names;
        if (list == nullptr) {
            return {};
        }
        if (list->kind != Node::Kind::list) {
            diagnostics_.error(Code::value_not_a_list, document_.place(*list), "'nearest for' is a list",
                               "write: - { name: farine T65, why: ... }");
            return {};
        }
        for (const Node& item : list->items) {
            if (item.kind != Node::Kind::map) {
                diagnostics_.error(Code::value_not_a_map, document_.place(item),
                                   "a name with its reason belongs here",
                                   "write: - { name: farine T65, why: ... }");
                continue;
            }
            MapReader entry(document_, item, "a name", diagnostics_);
            entry.require("name", "name: farine T65");
            entry.require("why", "why: ...");
            names.push_back({.name = kept_text(entry, "name"), .why = kept_text(entry, "why")});
            entry.report_rest();
        }
        return shelf_.keep(std::move(names));
    }

    // A part of 100 g of the ingredient; nothing is allowed here, in contrast to a dough.
    std::optional<Fraction> read_part(const Node::Entry& entry) {
        const auto text = amount_of(document_, entry.key, entry.value, diagnostics_);
        if (!text) {
            return std::nullopt;
        }
        Diagnostics attempt;
        const auto number = read_number(*text, attempt);
        if (number && number->value == 0.0) {
            return Fraction(0.0);
        }
        const auto mass = read_mass(*text, diagnostics_);
        // A share of 100 g is a mass in kg with its point moved, so that it is written back as it was.
        return mass ? std::optional(Fraction(exact_shift(mass->value(), 1))) : std::nullopt;
    }

    void read_composition(MapReader& reader, const Node& name, Ingredient& ingredient) {
        const Node* parts = reader.take("per 100 g");
        if (parts == nullptr ||
            !expect_map(document_, name, *parts, "per 100 g: { water: 12 g }", diagnostics_)) {
            return;
        }
        struct Part {
            std::string_view key;
            Fraction Composition::*field;
        };
        constexpr auto fields = std::to_array<Part>({
            {"water", &Composition::water},
            {"protein", &Composition::protein},
            {"fat", &Composition::fat},
            {"carbohydrate", &Composition::carbohydrate},
            {"fibre", &Composition::fibre},
            {"ash", &Composition::ash},
            {"sugars", &Composition::sugars},
            {"sodium", &Composition::sodium},
        });
        MapReader composition(document_, *parts, "a composition", diagnostics_);
        for (const Part& part : fields) {
            composition.take(part.key);
            for (const Node::Entry& entry : parts->entries) {
                const auto value = entry.key.text == part.key ? read_part(entry) : std::nullopt;
                if (value) {
                    ingredient.composition.*part.field = *value;
                }
            }
        }
        composition.report_rest();
        ingredient.has_composition = true;
        const Composition& c = ingredient.composition;
        const double sum =
            c.water.value() + c.protein.value() + c.fat.value() + c.carbohydrate.value() + c.ash.value();
        constexpr double slack = 0.02; // tables round each figure, and some are by difference
        const bool has_more = c.fibre.value() > c.carbohydrate.value() + slack ||
                              c.sugars.value() > c.carbohydrate.value() + slack;
        if (has_more) {
            diagnostics_.error(Code::composition_impossible, document_.place(name),
                               in_quotes(name.text) + " has more fibre or sugars than carbohydrate",
                               "carbohydrate is all of it, fibre and sugars too");
        }
        if (sum > 1.0 + slack) {
            diagnostics_.error(
                Code::composition_impossible, document_.place(name),
                fmt::format("the parts of {} add up to {:.1f} g of 100 g", in_quotes(name.text), sum * 100.0),
                "check water, protein, fat, carbohydrate and ash");
        }
    }

    // Between puffed grain and syrup, with room on both sides.
    static bool is_possible(Mass mass, Volume volume) {
        constexpr double lightest = 0.01; // kg/l
        constexpr double heaviest = 5.0;
        const double density = mass.value() / (volume / litres(1.0)).value();
        return density > lightest && density < heaviest;
    }

    std::span<const MeasuredVolume> read_volumes(MapReader& reader) {
        const Node* list = reader.take("volumes");
        if (list == nullptr) {
            return {};
        }
        constexpr std::string_view example = "write: - { 1 cup: 137 g, source: ... }";
        if (list->kind != Node::Kind::list) {
            diagnostics_.error(Code::value_not_a_list, document_.place(*list), "'volumes' is a list",
                               std::string(example));
            return {};
        }
        std::vector<MeasuredVolume> volumes;
        for (const Node& item : list->items) {
            if (item.kind != Node::Kind::map) {
                diagnostics_.error(Code::value_not_a_map, document_.place(item),
                                   "a volume with its weight belongs here", std::string(example));
                continue;
            }
            MapReader entry(document_, item, "a measured volume", diagnostics_);
            MeasuredVolume measured{.how = kept_text(entry, "how"),
                                    .measure = {},
                                    .volume = {},
                                    .mass = {},
                                    .source = kept_text(entry, "source")};
            const auto rest = entry.rest();
            if (rest.size() != 1) {
                diagnostics_.error(Code::value_not_a_map, document_.place(item),
                                   "one volume with its weight belongs here", std::string(example));
                continue;
            }
            const Node::Entry& weighed = *rest.front();
            const auto volume = read_amount(document_.place(weighed.key), diagnostics_);
            const auto text = amount_of(document_, weighed.key, weighed.value, diagnostics_);
            const auto mass = text ? read_mass(*text, diagnostics_) : std::nullopt;
            if (volume && !std::holds_alternative<Volume>(*volume)) {
                diagnostics_.error(Code::unit_unfit, document_.place(weighed.key),
                                   in_quotes(weighed.key.text) + " is not a volume", std::string(example));
            } else if (volume && mass && !is_possible(*mass, std::get<Volume>(*volume))) {
                diagnostics_.error(Code::amount_too_large, *text,
                                   "nothing of a kitchen weighs that in " + in_quotes(weighed.key.text),
                                   "check the weight and its unit");
            } else if (volume && mass) {
                measured.measure = shelf_.keep(weighed.key.text);
                measured.volume = std::get<Volume>(*volume);
                measured.mass = *mass;
                volumes.push_back(measured);
            }
        }
        return shelf_.keep(std::move(volumes));
    }

    std::span<const PieceWeight> read_pieces(MapReader& reader) {
        const Node* map = reader.take("pieces");
        if (map == nullptr) {
            return {};
        }
        constexpr std::string_view example = "large: { weight: 50 g, source: ... }";
        if (map->kind != Node::Kind::map) {
            diagnostics_.error(Code::value_not_a_map, document_.place(*map),
                               "'pieces' needs keys with values", std::string(example));
            return {};
        }
        std::vector<PieceWeight> pieces;
        for (const Node::Entry& entry : map->entries) {
            if (!expect_map(document_, entry.key, entry.value, example, diagnostics_)) {
                continue;
            }
            MapReader piece(document_, entry.value, "a piece", diagnostics_);
            piece.require("weight", "weight: 50 g");
            const auto text = piece.take_amount("weight");
            const auto mass = text ? read_mass(*text, diagnostics_) : std::nullopt;
            const std::string_view source = kept_text(piece, "source");
            piece.report_rest();
            const std::string word = fold_name(entry.key.text);
            const bool is_known = std::any_of(pieces.begin(), pieces.end(),
                                              [&](const PieceWeight& known) { return known.word == word; });
            if (word == "all" || find_unit(word) != nullptr) {
                diagnostics_.error(Code::name_taken, document_.place(entry.key),
                                   in_quotes(entry.key.text) + " is a word of amounts already",
                                   "give the piece a name of its own: large, loaf, packet");
            } else if (is_known) {
                diagnostics_.error(Code::key_duplicate, document_.place(entry.key),
                                   in_quotes(entry.key.text) + " is given twice",
                                   "capitals do not matter; keep one of the two");
            } else if (mass) {
                pieces.push_back({.word = shelf_.keep(word), .mass = *mass, .source = source});
            }
        }
        return shelf_.keep(std::move(pieces));
    }

    void claim_names(const Node::Entry& entry, const Ingredient& ingredient) {
        const auto claim = [&](std::string_view name) {
            if (fold_name(name) == "water" && ingredient.name != "water") {
                diagnostics_.error(Code::name_taken, document_.place(entry.key),
                                   "'water' is plain water; nothing else may have its name",
                                   "give the ingredient a name of its own");
                return;
            }
            if (is_stage_key(fold_name(name))) {
                diagnostics_.error(Code::name_taken, document_.place(entry.key),
                                   in_quotes(name) + " is a key of stages",
                                   "give the ingredient a name that says more");
                return;
            }
            const auto [owner, is_new] = owners_.emplace(fold_name(name), entry.key.text);
            if (!is_new) {
                diagnostics_.error(Code::name_taken, document_.place(entry.key),
                                   in_quotes(name) + " is a name of " + in_quotes(owner->second) + " already",
                                   "leave it out of one of the two");
            }
        };
        claim(ingredient.name);
        std::for_each(ingredient.also.begin(), ingredient.also.end(), claim);
        for (const NearestName& nearest : ingredient.nearest_for) {
            claim(nearest.name);
        }
    }

    const Document& document_;
    PantryShelf& shelf_;
    Diagnostics& diagnostics_;
    std::map<std::string, std::string> owners_;
};

} // namespace

std::shared_ptr<const PantryShelf> read_ingredients(const Document& document, const Node& node,
                                                    Diagnostics& diagnostics) {
    auto shelf = std::make_shared<PantryShelf>();
    if (node.kind != Node::Kind::map) {
        diagnostics.error(Code::value_not_a_map, document.place(node), "ingredients need keys with values",
                          "harbour flour: { class: flour }");
        return shelf;
    }
    IngredientReader reader(document, *shelf, diagnostics);
    for (const Node::Entry& entry : node.entries) {
        reader.read(entry);
    }
    return shelf;
}

PantryFile read_pantry_file(const Document& document, PantryOrigin origin, Diagnostics& diagnostics) {
    PantryFile file{.shelf = std::make_shared<PantryShelf>(), .ambiguous = {}, .sources = {}};
    MapReader reader(document, document.root, "a pantry file", diagnostics);
    reader.require("pantry", "pantry: 1");
    const auto version = reader.take_text("pantry");
    if (version && version->text != "1") {
        diagnostics.error(Code::version_unknown, *version,
                          in_quotes(version->text) + " is not a version of pantry files", "pantry: 1");
    }
    if (const Node* ingredients = reader.require("ingredients", "ingredients: ...")) {
        file.shelf = read_ingredients(document, *ingredients, diagnostics);
    }
    const bool is_built_in = origin == PantryOrigin::built_in;
    if (const Node* ambiguous = is_built_in ? reader.take("ambiguous") : nullptr; ambiguous != nullptr) {
        MapReader names(document, *ambiguous, "ambiguous names", diagnostics);
        for (const Node::Entry& entry : ambiguous->entries) {
            std::vector<std::string> meanings;
            for (const SourcedText& text : names.take_texts(entry.key.text)) {
                meanings.emplace_back(text.text);
            }
            file.ambiguous.emplace_back(entry.key.text, std::move(meanings));
        }
    }
    if (const Node* sources = is_built_in ? reader.take("sources") : nullptr; sources != nullptr) {
        for (const Node::Entry& entry : sources->entries) {
            if (const auto text = text_of(document, entry.key, entry.value, diagnostics)) {
                file.sources.emplace_back(entry.key.text, std::string(text->text));
            }
        }
    }
    reader.report_rest();
    return file;
}

} // namespace leavenwright
