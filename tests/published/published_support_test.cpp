#include "published/published_support.hpp"

#include <doctest/doctest.h>

#include <cstdlib>
#include <sstream>
#include <stdexcept>

namespace leavenwright::testing {
namespace {

std::vector<std::string> csv_fields(const std::string& line) {
    std::vector<std::string> fields(1);
    bool is_quoted = false;
    for (std::size_t i = 0; i < line.size(); ++i) {
        const char byte = line[i];
        if (byte == '"') {
            const bool is_mark = is_quoted && i + 1 < line.size() && line[i + 1] == '"';
            if (is_mark) {
                fields.back() += line[++i];
            } else {
                is_quoted = !is_quoted;
            }
        } else if (byte == ',' && !is_quoted) {
            fields.emplace_back();
        } else {
            fields.back() += byte;
        }
    }
    if (is_quoted) {
        throw std::runtime_error("open quotation mark in: " + line);
    }
    return fields;
}

} // namespace

const Ingredient& ingredient_named(std::string_view name) {
    const Ingredient* ingredient = Pantry().find(name).ingredient;
    if (ingredient == nullptr) {
        throw std::runtime_error("not in the pantry: " + std::string(name));
    }
    return *ingredient;
}

double grams_in(const std::vector<Line>& lines, std::string_view name) {
    const Ingredient& wanted = ingredient_named(name);
    Mass mass = kilograms(0.0);
    for (const Line& line : lines) {
        mass += line.ingredient == &wanted ? line.mass : kilograms(0.0);
    }
    return in_grams(mass);
}

double grams_in(const Overall& overall, std::string_view name) {
    return in_grams(overall.mass_of(ingredient_named(name)));
}

double percent_in(const Overall& overall, std::string_view name) {
    return overall.percentage(overall.mass_of(ingredient_named(name))).in_percent();
}

PrefermentedFlour prefermented_in(const Formula& formula, std::string_view stage) {
    const Stage* found = formula.find_stage(stage);
    if (found == nullptr) {
        throw std::runtime_error("no stage " + std::string(stage));
    }
    const Overall contents = add_up(contents_of(*found, *formula.pantry), {});
    return PrefermentedFlour::of(contents.total_flour, compute_overall(formula).total_flour);
}

std::vector<CsvRow> read_csv(const std::string& text) {
    std::vector<std::string> head;
    std::vector<CsvRow> rows;
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);) {
        if (line.empty() || line.front() == '#') {
            continue;
        }
        const std::vector<std::string> fields = csv_fields(line);
        if (head.empty()) {
            head = fields;
            continue;
        }
        if (fields.size() != head.size()) {
            throw std::runtime_error("another number of fields than the head: " + line);
        }
        CsvRow& row = rows.emplace_back();
        for (std::size_t i = 0; i < fields.size(); ++i) {
            row[head[i]] = fields[i];
        }
    }
    return rows;
}

double number_in(const std::string& text) {
    char* end = nullptr;
    const double number = std::strtod(text.c_str(), &end);
    const bool is_number = !text.empty() && end == text.c_str() + text.size();
    if (!is_number) {
        throw std::runtime_error("not a number: " + text);
    }
    return number;
}

TEST_CASE("CSV reader: quotes, commas in them, doubled marks, comments and empty fields") {
    const auto rows =
        read_csv("# a note\nname,size,grams\n\"potato (2\"\" wide), boiled\",,136\nsalt,tsp,6.0\n");
    REQUIRE(rows.size() == 2);
    CHECK(rows[0].at("name") == "potato (2\" wide), boiled");
    CHECK(rows[0].at("size").empty());
    CHECK(number_in(rows[0].at("grams")) == 136.0);
    CHECK(number_in(rows[1].at("grams")) == 6.0);
    CHECK_THROWS(read_csv("a,b\n1,2,3\n"));
    CHECK_THROWS(read_csv("a,b\n\"1,2\n"));
    CHECK_THROWS(number_in("6 g"));
}

} // namespace leavenwright::testing
