// The built-in pantry against the tables it was taken from: USDA ARS, National Nutrient Database
// for Standard Reference, release 27 (composition) and release 26 (household measures). Figures
// were copied, so they agree to 1e-9: the rounding of unit factors, not of print.
#include "published/published_support.hpp"
#include "support/formulas.hpp"
#include "support/near.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>
#include <sstream>

namespace leavenwright {
namespace {

using namespace leavenwright::testing;

constexpr double exact = 1e-9;

struct Column {
    const char* name;
    Fraction Composition::*part;
    double per_fraction; // what the column's figure is of a mass fraction of 1
};

const Column columns[] = {
    {"water_g", &Composition::water, 100.0},
    {"protein_g", &Composition::protein, 100.0},
    {"fat_g", &Composition::fat, 100.0},
    {"carbohydrate_by_difference_g", &Composition::carbohydrate, 100.0},
    {"fibre_g", &Composition::fibre, 100.0},
    {"ash_g", &Composition::ash, 100.0},
    {"sugars_g", &Composition::sugars, 100.0},
    {"sodium_mg", &Composition::sodium, 100000.0},
};

std::vector<CsvRow> measures_of(const std::vector<CsvRow>& rows, std::string_view number) {
    std::vector<CsvRow> found;
    std::copy_if(rows.begin(), rows.end(), std::back_inserter(found), [&](const CsvRow& row) {
        return row.at("kind") == "usda_portion" && row.at("ndb_no") == number;
    });
    return found;
}

std::set<std::string> words_of(std::string text) {
    std::replace_if(
        text.begin(), text.end(), [](char byte) { return byte == ',' || byte == '(' || byte == ')'; }, ' ');
    std::istringstream stream(text);
    std::set<std::string> words;
    for (std::string word; stream >> word;) {
        words.insert(word);
    }
    return words;
}

// The volume of a row is printed to 0.001 ml. One row states its spoon in words alone.
bool is_volume(const CsvRow& row, const MeasuredVolume& volume) {
    if (row.at("volume_ml").empty()) {
        const std::string counted = row.at("amount") + " " + row.at("measure"); // "1 liter"
        return row.at("measure").ends_with(volume.measure) || counted == volume.measure;
    }
    constexpr double printed_ml = 0.0005;
    return near(volume.volume.value() * 1e6, number_in(row.at("volume_ml")), 0.0, printed_ml + exact);
}

// A word of `how` ("packed", "sifted") that stands in any row of this food must stand in this one.
bool is_measured_so(const CsvRow& row, const std::vector<CsvRow>& all, std::string_view how) {
    const std::string said(how.substr(0, how.find("by the ")));
    const auto has = [](const CsvRow& any, const std::string& word) {
        return words_of(any.at("measure")).contains(word);
    };
    for (const std::string& word : words_of(said)) {
        const bool tells =
            std::any_of(all.begin(), all.end(), [&](const CsvRow& any) { return has(any, word); });
        if (tells && !has(row, word)) {
            return false;
        }
    }
    return true;
}

} // namespace

TEST_CASE("composition of the pantry is that of USDA SR27, column by column") {
    const auto rows = read_csv(project_file("tests/published/usda_sr27_composition.csv"));
    CHECK(rows.size() == 126);
    int checked = 0;
    std::set<std::string> used;
    for (const Ingredient& ingredient : embedded_pantry().ingredients) {
        if (!ingredient.source.starts_with("sr27 ")) {
            continue;
        }
        CAPTURE(std::string(ingredient.name));
        const std::string number(ingredient.source.substr(5));
        const auto row = std::find_if(rows.begin(), rows.end(),
                                      [&](const CsvRow& any) { return any.at("ndb_no") == number; });
        REQUIRE(row != rows.end());
        CHECK(ingredient.has_composition);
        for (const Column& column : columns) {
            CAPTURE(column.name);
            const std::string& figure = row->at(column.name);
            const double expected =
                figure.empty() ? 0.0 : number_in(figure); // what is left out counts as none
            const double actual = (ingredient.composition.*column.part).value() * column.per_fraction;
            CHECK(near(actual, expected, exact, exact));
        }
        used.insert(number);
        ++checked;
    }
    CHECK(checked >= 110);
    CHECK(used.size() >= 110); // different foods; the others stand in for a neighbour
}

TEST_CASE("measured volumes of the pantry are those of USDA SR26") {
    const auto rows = read_csv(project_file("tests/published/household_measures.csv"));
    int checked = 0;
    std::set<std::string_view> ingredients;
    for (const Ingredient& ingredient : embedded_pantry().ingredients) {
        for (const MeasuredVolume& volume : ingredient.volumes) {
            if (!volume.source.starts_with("sr26 ")) {
                continue;
            }
            CAPTURE(std::string(ingredient.name));
            CAPTURE(std::string(volume.measure));
            CAPTURE(std::string(volume.how));
            const auto measures = measures_of(rows, volume.source.substr(5));
            REQUIRE(!measures.empty());
            CHECK(std::any_of(measures.begin(), measures.end(), [&](const CsvRow& row) {
                return is_volume(row, volume) && is_measured_so(row, measures, volume.how) &&
                       near(in_grams(volume.mass), number_in(row.at("grams")), exact, 0.0);
            }));
            ingredients.insert(ingredient.name);
            ++checked;
        }
    }
    CHECK(checked >= 230);
    CHECK(ingredients.size() >= 110);
}

TEST_CASE("a volume is weighed by the first of an ingredient's measures") {
    int checked = 0;
    for (const Ingredient& ingredient : embedded_pantry().ingredients) {
        CAPTURE(std::string(ingredient.name));
        if (ingredient.volumes.empty()) {
            CHECK_FALSE(mass_of_volume(ingredient, litres(1.0)));
            continue;
        }
        const MeasuredVolume& first = ingredient.volumes.front();
        const auto mass = mass_of_volume(ingredient, litres(1.0));
        REQUIRE(mass);
        CHECK(near(in_grams(*mass), in_grams(first.mass) * 1e-3 / first.volume.value(), exact, 0.0));
        ++checked;
    }
    CHECK(checked >= 110);
}

TEST_CASE("pieces of the pantry are those of USDA SR26") {
    const auto rows = read_csv(project_file("tests/published/household_measures.csv"));
    int checked = 0;
    for (const Ingredient& ingredient : embedded_pantry().ingredients) {
        for (const PieceWeight& piece : ingredient.pieces) {
            if (!piece.source.starts_with("sr26 ")) {
                continue;
            }
            CAPTURE(std::string(ingredient.name));
            CAPTURE(std::string(piece.word));
            const auto measures = measures_of(rows, piece.source.substr(5));
            const auto is_this = [&](const CsvRow& row) {
                const double one_g = number_in(row.at("grams")) / number_in(row.at("amount"));
                return row.at("volume_ml").empty() && near(in_grams(piece.mass), one_g, exact, 0.0);
            };
            CHECK(std::any_of(measures.begin(), measures.end(), is_this));
            // A row that begins with the word ("extra large", "stick") is that piece.
            for (const CsvRow& row : measures) {
                const bool has_word =
                    row.at("measure").starts_with(piece.word) && row.at("volume_ml").empty();
                if (has_word) {
                    CHECK(is_this(row));
                }
            }
            ++checked;
        }
    }
    CHECK(checked >= 40);
}

} // namespace leavenwright
