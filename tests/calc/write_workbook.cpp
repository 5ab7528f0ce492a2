// Writes a workbook that adds the conversions of the command up again, a sheet for each:
//
//     write_workbook FORMULA JSON [FORMULA JSON]... > workbook.fods
//
// FORMULA is a formula file, JSON what `leavenwright convert FORMULA --format json` printed. Weights and
// what the ingredients are made of go in as numbers; every sum, share and difference is a
// plain spreadsheet formula, so none of the engine's own sums is used. Beside each
// result stands the number of the JSON, as text; compare_workbook reads both.
#include "formula/read_formula.hpp"
#include "quantity/number.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <fstream>
#include <iostream>
#include <sstream>
#include <stdexcept>

namespace leavenwright {
namespace {

using Json = nlohmann::ordered_json;

std::string content_of(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    if (!file) {
        throw std::runtime_error("cannot open " + path);
    }
    std::ostringstream text;
    text << file.rdbuf();
    return text.str();
}

std::string escaped(std::string_view text) {
    std::string result;
    for (const char byte : text) {
        switch (byte) {
        case '&':
            result += "&amp;";
            break;
        case '<':
            result += "&lt;";
            break;
        case '>':
            result += "&gt;";
            break;
        case '"':
            result += "&quot;";
            break;
        default:
            result += byte;
        }
    }
    return result;
}

std::string number_text(double value) {
    char buffer[40];
    std::snprintf(buffer, sizeof buffer, "%.17g", value);
    return buffer;
}

// One sheet, written row by row.
class Sheet {
public:
    explicit Sheet(const std::string& name) { xml_ = "<table:table table:name=\"" + escaped(name) + "\">\n"; }

    void text(std::string_view text) {
        row_ += "<table:table-cell office:value-type=\"string\"><text:p>" + escaped(text) +
                "</text:p></table:table-cell>";
    }
    void number(double value) {
        row_ += "<table:table-cell office:value-type=\"float\" office:value=\"" + number_text(value) + "\"/>";
    }
    void formula(std::string_view formula) {
        row_ +=
            "<table:table-cell table:formula=\"of:=" + escaped(formula) + "\" office:value-type=\"float\"/>";
    }
    /// Ends the row and gives its number.
    std::size_t end_row() {
        xml_ += "<table:table-row>" + row_ + "</table:table-row>\n";
        row_.clear();
        return rows_++;
    }
    /// The number of the row that is being written.
    std::size_t row() const { return rows_; }

    /// A result to compare: relative to its own size, or to that of `size` where this is larger.
    void check(const std::string& what, const std::string& formula_text, double expected, double size = 0.0) {
        text("check");
        text(what);
        formula(formula_text);
        text("expected " + number_text(expected));
        text("size " + number_text(std::max(std::abs(expected), std::abs(size))));
        end_row();
    }
    std::string xml() const { return xml_ + "</table:table>\n"; }

private:
    std::string xml_;
    std::string row_;
    std::size_t rows_ = 1;
};

std::string cell(char column, std::size_t row) {
    return std::string("[.") + column + std::to_string(row) + "]";
}

// Columns of the tables of ingredients.
constexpr char name_column = 'B';
constexpr char as_listed = 'C'; // weight on the list
constexpr char in_dough = 'D';  // weight that reaches the dough, at the size of the result
constexpr char flour_column = 'E';
constexpr char added_water_column = 'F';
constexpr char water_column = 'G'; // mass fractions from here on
constexpr char salt_column = 'H';
constexpr char sugar_column = 'I';
constexpr char fat_column = 'J';
constexpr char yeast_column = 'K';

struct Rows {
    std::size_t first = 0;
    std::size_t last = 0;

    std::string in(char column) const {
        return std::string("[.") + column + std::to_string(first) + ":." + column + std::to_string(last) +
               "]";
    }
    std::string sum(char column) const { return "SUM(" + in(column) + ")"; }
    std::string sum_of(char column, char weights = in_dough) const {
        return "SUMPRODUCT(" + in(weights) + ";" + in(column) + ")";
    }
    std::string sum_of_name(std::string_view name) const {
        return "SUMPRODUCT((" + in(name_column) + "=\"" + std::string(name) + "\")*" + in(in_dough) + ")";
    }
    bool empty() const { return last < first; }
};

struct ListedLine {
    std::string name;
    double weight_g = 0.0;
};
struct ListedStage {
    std::string name;
    std::vector<ListedLine> lines;
    double used_g = 0.0;
    double culture_hydration = 0.0;
};
struct Lists {
    std::vector<ListedStage> stages;
    std::vector<ListedLine> dough;
};

Lists lists_of(const Formula& formula) {
    const auto listed = [](const std::vector<Line>& lines) {
        std::vector<ListedLine> result;
        for (const Line& line : lines) {
            result.push_back({line.name, exact_shift(line.mass.value(), 3)});
        }
        return result;
    };
    Lists lists{.stages = {}, .dough = listed(formula.dough)};
    for (const Stage& stage : formula.stages) {
        lists.stages.push_back({stage.name, listed(stage.lines), exact_shift(stage.used.value(), 3),
                                stage.culture_hydration.value()});
    }
    return lists;
}

Lists lists_of(const Json& json, const Formula& formula) {
    const auto line = [](const Json& item) {
        return ListedLine{item["ingredient"].get<std::string>(), item["weight_g"].get<double>()};
    };
    Lists lists;
    for (const Json& stage : json["stages"]) {
        lists.stages.push_back({stage["name"].get<std::string>(), {}, stage["used_g"].get<double>(), 0.0});
        for (const Json& item : stage["ingredients"]) {
            lists.stages.back().lines.push_back(line(item));
        }
        if (const Stage* kept = formula.find_stage(lists.stages.back().name)) {
            lists.stages.back().culture_hydration = kept->culture_hydration.value();
        }
    }
    // The bowl lists the stages first.
    for (std::size_t i = json["stages"].size(); i < json["dough"].size(); ++i) {
        lists.dough.push_back(line(json["dough"][i]));
    }
    return lists;
}

class WorkbookSheet {
public:
    WorkbookSheet(const std::string& title, const Formula& formula, const Json& json)
        : sheet_(title), formula_(formula), json_(json) {}

    std::string xml() {
        sheet_.text("scale");
        sheet_.number(json_["scaled_by"].get<double>());
        scale_cell_ = cell('B', sheet_.end_row());
        const Rows before = write_lists("before", lists_of(formula_), "*" + scale_cell_);
        const Lists after_lists = lists_of(json_, formula_);
        const Rows after = write_lists("after", after_lists, "");

        check_side("before", before);
        check_side("after", after);
        check_bowl(after);
        check_levain();
        check_removed(before, after);
        check_balance(before, after);
        return sheet_.xml();
    }

private:
    const Ingredient& ingredient(const std::string& name) const {
        const Ingredient* found = formula_.pantry->find(name).ingredient;
        if (found == nullptr) {
            throw std::runtime_error("no ingredient " + name);
        }
        return *found;
    }

    // The columns behind the weights.
    void write_classes(const Ingredient& item) {
        const bool counts =
            item.is_water() || std::find(formula_.count_as_water.begin(), formula_.count_as_water.end(),
                                         &item) != formula_.count_as_water.end();
        const bool is_inert = item.is_flour() || item.is_yeast(); // for sugar and fat
        sheet_.number(item.is_flour() ? 1.0 : 0.0);
        sheet_.number(counts && !item.is_flour() ? 1.0 : 0.0);
        sheet_.number(item.is_flour() ? 0.0 : item.is_water() ? 1.0 : item.composition.water.value());
        sheet_.number(item.ingredient_class == IngredientClass::salt ? 1.0 : 0.0);
        sheet_.number(is_inert ? 0.0 : item.composition.sugars.value());
        sheet_.number(is_inert ? 0.0 : item.composition.fat.value());
        sheet_.number(item.is_yeast() ? 1.0 : 0.0);
        sheet_.end_row();
    }

    void write_row(const std::string& where, const std::string& name, const std::string& weight,
                   const std::string& factors) {
        const Ingredient& item = ingredient(name);
        sheet_.text(where);
        sheet_.text(item.name);
        sheet_.formula(weight);
        sheet_.formula(cell(as_listed, sheet_.row()) + factors);
        write_classes(item);
    }

    // Stages, then the dough; gives the rows of both. `scale` is a factor of the formulas.
    Rows write_lists(const std::string& side, const Lists& lists, const std::string& scale) {
        stage_rows_.clear();
        Rows all{.first = 0, .last = 0};
        // What each stage weighs and how much of it is used stands above, so that the rows of
        // ingredients are one block.
        std::vector<std::string> shares;
        for (const ListedStage& stage : lists.stages) {
            sheet_.text(side + " " + stage.name);
            std::string sum;
            for (const ListedLine& line : stage.lines) {
                sum += (sum.empty() ? "" : "+") + number_text(line.weight_g);
            }
            sheet_.number(stage.used_g);
            sheet_.formula(sum);
            sheet_.formula(cell('B', sheet_.row()) + "/" + cell('C', sheet_.row()));
            shares.push_back("*" + cell('D', sheet_.end_row()));
        }
        all.first = sheet_.row();
        for (std::size_t i = 0; i < lists.stages.size(); ++i) {
            const ListedStage& stage = lists.stages[i];
            Rows rows{.first = sheet_.row(), .last = 0};
            for (const ListedLine& line : stage.lines) {
                if (is_culture_name(line.name)) {
                    write_culture(side + " " + stage.name, stage, line, shares[i] + scale);
                } else {
                    write_row(side + " " + stage.name, line.name, number_text(line.weight_g),
                              shares[i] + scale);
                }
            }
            rows.last = sheet_.row() - 1;
            stage_rows_.push_back(rows);
        }
        dough_rows_.first = sheet_.row();
        for (const ListedLine& line : lists.dough) {
            write_row(side + " dough", line.name, number_text(line.weight_g), scale);
        }
        dough_rows_.last = sheet_.row() - 1;
        all.last = sheet_.row() - 1;
        return all;
    }

    // Culture is flour and water at its own hydration, its flours those of its stage.
    void write_culture(const std::string& where, const ListedStage& stage, const ListedLine& culture,
                       const std::string& factors) {
        const std::string flour =
            number_text(culture.weight_g) + "/(1+" + number_text(stage.culture_hydration) + ")";
        std::string flours;
        for (const ListedLine& line : stage.lines) {
            if (!is_culture_name(line.name) && ingredient(line.name).is_flour()) {
                flours += (flours.empty() ? "" : "+") + number_text(line.weight_g);
            }
        }
        for (const ListedLine& line : stage.lines) {
            if (!is_culture_name(line.name) && ingredient(line.name).is_flour()) {
                write_row(where, line.name, flour + "*" + number_text(line.weight_g) + "/(" + flours + ")",
                          factors);
            }
        }
        write_row(where, "water", number_text(culture.weight_g) + "-" + flour, factors);
    }

    void check_side(const std::string& side, const Rows& rows) {
        const Json& expected = json_[side];
        const std::string flour = rows.sum_of(flour_column);
        const auto check = [&](const std::string& key, const std::string& formula, double size = 0.0) {
            sheet_.check(side + "." + key, formula, expected[key].get<double>(), size);
        };
        check("total_flour_g", flour);
        for (const auto& [name, weight] : expected["flours"].items()) {
            sheet_.check(side + ".flours." + name, rows.sum_of_name(ingredient(name).name),
                         weight.get<double>());
        }
        check("added_water_g", rows.sum_of(added_water_column));
        check("true_water_g", rows.sum_of(water_column));
        check("salt_g", rows.sum_of(salt_column));
        check("sugar_g", rows.sum_of(sugar_column));
        check("fat_g", rows.sum_of(fat_column));
        check("dough_g", rows.sum(in_dough));
        check("hydration_added", rows.sum_of(added_water_column) + "/" + flour);
        check("hydration_true", rows.sum_of(water_column) + "/" + flour);
    }

    // The list of the bowl: its sum, and each percentage.
    void check_bowl(const Rows& after) {
        std::string sum;
        for (const Json& item : json_["dough"]) {
            const std::string weight = number_text(item["weight_g"].get<double>());
            sum += (sum.empty() ? "" : "+") + weight;
            sheet_.check("dough." + item["ingredient"].get<std::string>() + ".percent",
                         weight + "*100/" + after.sum_of(flour_column), item["percent"].get<double>());
        }
        sheet_.check("dough, sum of the list", sum, json_["after"]["dough_g"].get<double>());
        std::size_t index = 0;
        for (const Json& stage : json_["stages"]) {
            const std::string name = "stages." + stage["name"].get<std::string>();
            sheet_.check(name + ".weight_g", stage_rows_[index].sum(as_listed),
                         stage["weight_g"].get<double>());
            sheet_.check(name + ".used_g", stage_rows_[index].sum(in_dough), stage["used_g"].get<double>());
            ++index;
        }
    }

    void check_levain() {
        const Json& levain = json_["levain"];
        const Json& stages = json_["stages"];
        const auto found = std::find_if(stages.begin(), stages.end(), [&](const Json& stage) {
            return stage["kind"] == "levain" && stage["ingredients"] == levain["ingredients"];
        });
        if (found == stages.end()) {
            throw std::runtime_error("the levain is no stage");
        }
        const Rows& rows = stage_rows_[static_cast<std::size_t>(found - stages.begin())];
        const std::string flour = rows.sum_of(flour_column, as_listed);
        const std::string water = rows.sum_of(added_water_column, as_listed);
        const std::string total = json_total_flour();
        const auto check = [&](const std::string& key, const std::string& formula) {
            sheet_.check("levain." + key, formula, levain[key].get<double>());
        };
        check("weight_g", rows.sum(as_listed));
        check("flour_g", flour);
        check("water_g", water);
        check("hydration", water + "/" + flour);
        check("prefermented_flour", flour + "/" + total);
        check("on_total_flour", rows.sum(as_listed) + "/" + total);
        if (!levain["on_dough_flour"].is_null()) {
            check("on_dough_flour", rows.sum(as_listed) + "/" + dough_rows_.sum_of(flour_column));
        }
    }

    // All flour after the conversion, stages and dough.
    std::string json_total_flour() const {
        return Rows{.first = stage_rows_.front().first, .last = dough_rows_.last}.sum_of(flour_column);
    }

    void check_removed(const Rows& before, const Rows& after) {
        std::string sum = "0";
        for (const Json& item : json_["removed"]) {
            const auto name = item["ingredient"].get<std::string>();
            const Ingredient& yeast = ingredient(name);
            const std::string weight =
                "(" + before.sum_of_name(yeast.name) + "-" + after.sum_of_name(yeast.name) + ")";
            sheet_.check("removed." + name + ".weight_g", weight, item["weight_g"].get<double>());
            sheet_.check("removed." + name + ".water_g",
                         weight + "*" + number_text(yeast.composition.water.value()),
                         item["water_g"].get<double>());
            sum += "+" + number_text(item["weight_g"].get<double>());
        }
        // All of the yeast that is not kept is on the list.
        sheet_.check("removed, all",
                     before.sum_of(yeast_column) + "-(" + after.sum_of(yeast_column) + ")-(" + sum + ")", 0.0,
                     json_["before"]["dough_g"].get<double>());
    }

    void check_balance(const Rows& before, const Rows& after) {
        for (const Json& row : json_["balance"]) {
            const auto quantity = row["quantity"].get<std::string>();
            const std::string was = balance_of(quantity, before);
            const std::string is = balance_of(quantity, after);
            const double size = std::max(row["before_g"].get<double>(), row["after_g"].get<double>());
            sheet_.check("balance." + quantity + ".before_g", was, row["before_g"].get<double>());
            sheet_.check("balance." + quantity + ".after_g", is, row["after_g"].get<double>());
            // A difference of sums is as exact as the sums are.
            const std::string difference = is + "-" + was;
            sheet_.check("balance." + quantity + ".difference_g", difference,
                         row["difference_g"].get<double>(), size);
            if (row["meant"].get<std::string>().empty()) {
                sheet_.check("balance." + quantity + " is unchanged", difference, 0.0, size);
            }
        }
    }

    std::string balance_of(const std::string& quantity, const Rows& rows) const {
        const std::pair<std::string_view, char> columns[] = {
            {"total flour", flour_column}, {"added water", added_water_column},
            {"true water", water_column},  {"salt", salt_column},
            {"sugar", sugar_column},       {"fat", fat_column}};
        for (const auto& [name, column] : columns) {
            if (quantity == name) {
                return rows.sum_of(column);
            }
        }
        return quantity == "dough" ? rows.sum(in_dough) : rows.sum_of_name(ingredient(quantity).name);
    }

    Sheet sheet_;
    const Formula& formula_;
    const Json& json_;
    std::string scale_cell_;
    std::vector<Rows> stage_rows_; // of the list written last
    Rows dough_rows_;
};

void write_workbook(const std::vector<std::string>& files) {
    std::cout << "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                 "<office:document xmlns:office=\"urn:oasis:names:tc:opendocument:xmlns:office:1.0\""
                 " xmlns:table=\"urn:oasis:names:tc:opendocument:xmlns:table:1.0\""
                 " xmlns:text=\"urn:oasis:names:tc:opendocument:xmlns:text:1.0\""
                 " xmlns:of=\"urn:oasis:names:tc:opendocument:xmlns:of:1.2\""
                 " office:version=\"1.2\""
                 " office:mimetype=\"application/vnd.oasis.opendocument.spreadsheet\">\n"
                 "<office:body><office:spreadsheet>\n";
    for (std::size_t i = 0; i + 1 < files.size(); i += 2) {
        Diagnostics diagnostics;
        const auto source = std::make_shared<SourceText>(files[i], content_of(files[i]));
        const auto formula = read_formula(source, Pantry(), diagnostics);
        if (!formula) {
            throw std::runtime_error("cannot read " + files[i]);
        }
        const Json json = Json::parse(content_of(files[i + 1]));
        const std::size_t slash = files[i + 1].find_last_of('/');
        std::cout << WorkbookSheet(files[i + 1].substr(slash + 1), *formula, json).xml();
    }
    std::cout << "</office:spreadsheet></office:body></office:document>\n";
}

} // namespace
} // namespace leavenwright

int main(int argc, char** argv) {
    try {
        leavenwright::write_workbook({argv + 1, argv + argc});
    } catch (const std::exception& error) {
        std::cerr << "write_workbook: " << error.what() << '\n';
        return 1;
    }
}
