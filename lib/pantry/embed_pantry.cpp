// Build-time program: pantry.yaml, read as any pantry file is, into tables of C++ that
// cost nothing at start.
//
//     embed_pantry pantry.yaml embedded_pantry.cpp
#include "diagnostic/render_diagnostic.hpp"
#include "pantry/read_pantry.hpp"
#include "source/unicode.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <fstream>
#include <iostream>
#include <iterator>
#include <sstream>

namespace leavenwright {
namespace {

std::string literal(std::string_view text) {
    std::string result = "\"";
    for (const char byte : text) {
        const auto value = static_cast<unsigned char>(byte);
        if (value < 0x20 || value >= 0x7F || byte == '"' || byte == '\\' || byte == '?') {
            result += fmt::format("\\{:03o}", value);
        } else {
            result += byte;
        }
    }
    return result + "\"";
}

class TableWriter {
public:
    std::string write(const PantryFile& file) {
        out_ = "// Made from lib/pantry/pantry.yaml by embed_pantry. Not for editing.\n"
               "#include \"pantry/pantry.hpp\"\n\nnamespace leavenwright {\nnamespace {\n\n";
        const auto& ingredients = file.shelf->ingredients();
        for (std::size_t i = 0; i < ingredients.size(); ++i) {
            write_lists(ingredients[i], i);
        }
        add("constexpr Ingredient ingredients[] = {{\n");
        for (std::size_t i = 0; i < ingredients.size(); ++i) {
            write_ingredient(ingredients[i], i);
        }
        add("}};\n\n");
        write_names(file);
        write_ambiguous(file);
        add("constexpr PantrySource sources[] = {{\n");
        for (const auto& [key, title] : file.sources) {
            add("    {{{}, {}}},\n", literal(key), literal(title));
        }
        add("}};\n\nconstexpr PantryTables tables{{ingredients, names, ambiguous, sources}};\n\n}} // "
            "namespace\n\n"
            "const PantryTables& embedded_pantry() {{\n    return tables;\n}}\n\n}} // namespace "
            "leavenwright\n");
        return std::move(out_);
    }

private:
    template <class... Args>
    void add(fmt::format_string<Args...> format, Args&&... args) {
        fmt::format_to(std::back_inserter(out_), format, std::forward<Args>(args)...);
    }

    void write_texts(std::string_view prefix, std::size_t index, std::span<const std::string_view> texts) {
        if (texts.empty()) {
            return;
        }
        add("constexpr std::string_view {}_{}[] = {{", prefix, index);
        for (const std::string_view text : texts) {
            add("{}, ", literal(text));
        }
        add("}};\n");
    }

    void write_lists(const Ingredient& ingredient, std::size_t index) {
        write_texts("also", index, ingredient.also);
        write_texts("eu", index, ingredient.eu_allergens);
        write_texts("us", index, ingredient.us_allergens);
        if (!ingredient.nearest_for.empty()) {
            add("constexpr NearestName nearest_{}[] = {{", index);
            for (const NearestName& nearest : ingredient.nearest_for) {
                add("{{{}, {}}}, ", literal(nearest.name), literal(nearest.why));
            }
            add("}};\n");
        }
        if (!ingredient.volumes.empty()) {
            add("constexpr MeasuredVolume volumes_{}[] = {{", index);
            for (const MeasuredVolume& volume : ingredient.volumes) {
                add("{{{}, {}, cubic_metres({}), kilograms({}), {}}}, ", literal(volume.how),
                    literal(volume.measure), volume.volume.value(), volume.mass.value(),
                    literal(volume.source));
            }
            add("}};\n");
        }
        if (!ingredient.pieces.empty()) {
            add("constexpr PieceWeight pieces_{}[] = {{", index);
            for (const PieceWeight& piece : ingredient.pieces) {
                add("{{{}, kilograms({}), {}}}, ", literal(piece.word), piece.mass.value(),
                    literal(piece.source));
            }
            add("}};\n");
        }
    }

    static std::string list_name(std::string_view prefix, std::size_t index, bool is_empty) {
        return is_empty ? "{}" : fmt::format("{}_{}", prefix, index);
    }

    void write_ingredient(const Ingredient& ingredient, std::size_t index) {
        const Composition& c = ingredient.composition;
        add("    {{{}, static_cast<IngredientClass>({}), {}, {}, {},\n", literal(ingredient.name),
            static_cast<int>(ingredient.ingredient_class), list_name("also", index, ingredient.also.empty()),
            list_name("nearest", index, ingredient.nearest_for.empty()), literal(ingredient.stand_in));
        add("     {{");
        for (const Fraction part :
             {c.water, c.protein, c.fat, c.carbohydrate, c.fibre, c.ash, c.sugars, c.sodium}) {
            add("Fraction({}), ", part.value());
        }
        add("}}, {}, {},\n", ingredient.has_composition, literal(ingredient.source));
        add("     {}, Fraction({}), {}, {}, {}, {}}},\n",
            list_name("volumes", index, ingredient.volumes.empty()), ingredient.volume_uncertainty.value(),
            list_name("pieces", index, ingredient.pieces.empty()),
            list_name("eu", index, ingredient.eu_allergens.empty()),
            list_name("us", index, ingredient.us_allergens.empty()), literal(ingredient.dries_to));
    }

    void write_names(const PantryFile& file) {
        struct Row {
            std::string folded;
            std::size_t ingredient;
            int nearest;
        };
        std::vector<Row> rows;
        const auto& ingredients = file.shelf->ingredients();
        for (std::size_t i = 0; i < ingredients.size(); ++i) {
            rows.push_back({fold_name(ingredients[i].name), i, -1});
            for (const std::string_view name : ingredients[i].also) {
                rows.push_back({fold_name(name), i, -1});
            }
            int nearest = 0;
            for (const NearestName& name : ingredients[i].nearest_for) {
                rows.push_back({fold_name(name.name), i, nearest++});
            }
        }
        std::sort(rows.begin(), rows.end(),
                  [](const Row& left, const Row& right) { return left.folded < right.folded; });
        add("constexpr PantryName names[] = {{\n");
        for (const Row& row : rows) {
            add("    {{{}, {}, {}}},\n", literal(row.folded), row.ingredient, row.nearest);
        }
        add("}};\n\n");
    }

    void write_ambiguous(const PantryFile& file) {
        std::size_t index = 0;
        for (const auto& [name, meanings] : file.ambiguous) {
            const std::vector<std::string_view> views(meanings.begin(), meanings.end());
            write_texts("meanings", index++, views);
        }
        add("constexpr AmbiguousName ambiguous[] = {{\n");
        index = 0;
        for (const auto& [name, meanings] : file.ambiguous) {
            add("    {{{}, meanings_{}}},\n", literal(fold_name(name)), index++);
        }
        add("}};\n\n");
    }

    std::string out_;
};

int embed(const char* from, const char* to) {
    std::ifstream input(from, std::ios::binary);
    std::ostringstream text;
    text << input.rdbuf();
    const auto source = std::make_shared<SourceText>(from, text.str());
    Diagnostics diagnostics;
    const auto document = read_document(source, diagnostics);
    const PantryFile file =
        document ? read_pantry_file(*document, PantryOrigin::built_in, diagnostics) : PantryFile{};
    std::cerr << render_diagnostics(diagnostics, {});
    if (!document || !diagnostics.empty()) {
        return 1;
    }
    std::ofstream output(to, std::ios::binary);
    output << TableWriter().write(file);
    return output.flush() ? 0 : 1;
}

} // namespace
} // namespace leavenwright

int main(int count, char** arguments) {
    return count == 3 ? leavenwright::embed(arguments[1], arguments[2]) : 2;
}
