#include "transcribe/read_table.hpp"

#include "source/unicode.hpp"
#include "transcribe/ingredient_line.hpp"
#include "transcribe/kitchen_amount.hpp"
#include "transcribe/kitchen_number.hpp"
#include "transcribe/kitchen_words.hpp"
#include "transcribe/line_continuation.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/recipe_words.hpp"
#include "transcribe/table_head.hpp"

#include <algorithm>
#include <span>
#include <utility>

namespace leavenwright {
namespace {

using Kind = TableColumn::Kind;

bool has_letter(std::string_view text) {
    return std::any_of(text.begin(), text.end(), [](char byte) {
        return (byte >= 'a' && byte <= 'z') || (byte >= 'A' && byte <= 'Z');
    });
}

// "-", "----", "...", "\u2014", "0": nothing of it.
bool is_blank_cell(std::string_view text) {
    return text == "0" || text == "n/a" || text == "N/A" ||
           (!has_letter(text) && line_tokens(plain_line(text)).empty()) ||
           text.find_first_not_of("-.\xE2\x80\x94\x93") == std::string_view::npos;
}

// "1 500" in a column of figures is 1500.
std::string without_gap_in_number(std::string_view cell) {
    std::string digits;
    std::size_t group = 0; // of digits since the last gap
    for (const char byte : cell) {
        const bool is_gap = byte == ' ' && group > 0 && (digits.size() == group ? group <= 3 : group == 3);
        if (!is_gap && !(byte >= '0' && byte <= '9')) {
            return std::string(cell);
        }
        group = is_gap ? 0 : group + 1;
        digits += is_gap ? "" : std::string(1, byte);
    }
    return group == 3 ? digits : std::string(cell);
}

bool is_amount(std::string_view text) {
    constexpr std::size_t longest = 80;
    return text.size() <= longest && read_kitchen_amount(line_tokens(plain_line(text))).has_value();
}

constexpr std::size_t longest_name = 120;

// The number in "10 eggs" of "Eggs, whole"; empty where a cell is no such number.
std::string number_of(std::string_view cell, std::string_view name) {
    const auto tokens = line_tokens(plain_line(cell.substr(0, longest_name)));
    const auto of_name = line_tokens(plain_line(name.substr(0, longest_name)));
    const bool is_pair = tokens.size() == 2 || (tokens.size() == 3 && tokens[2].is("."));
    const bool is_number = is_pair && tokens[0].is_number() && tokens[1].is_word() && !of_name.empty() &&
                           of_name[0].folded.starts_with(tokens[1].folded.substr(0, 3)) &&
                           !is_amount_alone(cell);
    return is_number ? tokens[0].text : std::string();
}

// "FLOUR,WHEAT,BREAD": names in which nothing stands behind the commas.
std::string spaced_name(std::string_view name) {
    std::string text;
    for (std::size_t at = 0; at < name.size(); ++at) {
        text += name[at];
        const bool is_tight = name[at] == ',' && at + 1 < name.size() && has_letter(name.substr(at + 1, 1));
        text += is_tight ? " " : "";
    }
    return text;
}

struct TableRow {
    SourcedText place; // its line, down to the last that goes on with it
    std::string name;
    std::vector<std::string> cells; // by column
};

class TableReader {
public:
    TableReader(const SourceHandle& source, TableHead head) : source_(source), head_(std::move(head)) {
        role_ = role_of_heading(heading_text(head_.title)).value_or("dough");
    }

    std::optional<RecipeTable> read() {
        std::size_t number = head_.end_line;
        std::size_t last = number;
        head_.is_barred = head_.is_barred && has_barred_rows();
        for (; number <= source_->line_count(); ++number) {
            const std::string_view line = source_->line(number);
            if (is_blank(line)) {
                is_blank_before_ = true;
                continue;
            }
            const std::size_t below = head_.is_stacked ? stacked_lines(*source_, number, '|') : 1;
            if (is_rule(line)) {
                push_row();
            } else if (below == 0 || !take(number, below)) {
                break;
            }
            number += is_rule(line) ? 0 : below - 1;
            is_blank_before_ = false;
            last = number + 1;
        }
        push_row();
        constexpr std::size_t fewest_rows = 2;
        if (rows_ < fewest_rows) {
            return std::nullopt;
        }
        table_.end_line = last;
        table_.batches = head_.batches;
        return std::move(table_);
    }

private:
    // A head with bars may stand over rows without.
    bool has_barred_rows() const {
        for (std::size_t number = head_.end_line; number <= source_->line_count(); ++number) {
            const std::string_view line = source_->line(number);
            if (line.find_first_not_of(" \t\r") != std::string_view::npos && !is_rule(line)) {
                return line.find('|') != std::string_view::npos;
            }
        }
        return true;
    }

    // Whether a line, or the lines of a row, belong to the table.
    bool take(std::size_t number, std::size_t lines) {
        const std::string_view line = source_->line(number);
        const bool is_below_tabs =
            head_.is_tabbed && is_blank_before_ && line.find('\t') == std::string_view::npos;
        if ((head_.is_barred && line.find('|') == std::string_view::npos && !line.starts_with('!')) ||
            begins_with_clock(line) || (is_below_tabs && is_sentence(line))) {
            return false;
        }
        TableRow row{.place = lines == 1 ? place_of(number)
                                         : joined(place_of(number), place_of(number + lines - 1)),
                     .name = {},
                     .cells = std::vector<std::string>(head_.columns.size())};
        std::size_t begin_of_name = 0;
        auto cells = head_.is_stacked ? stacked_cells(*source_, number, lines) : cells_of(line);
        if (head_.has_stage_cells && !cells.empty()) {
            take_stage(cells.front());
            cells.erase(cells.begin());
        }
        const bool is_subhead = line.starts_with('!') && !cells.empty(); // "! colspan=4 | Topping", in a wiki
        if (is_subhead && cells.size() > 1 && cells.front().text.find('=') != std::string_view::npos) {
            cells.erase(cells.begin());
        } else if (is_subhead && cells.front().text.starts_with("! ")) {
            cells.front().text.remove_prefix(2);
        }
        if (is_subhead && cells.size() == 1) {
            push_row();
            return take_subhead(cells.front().text);
        }
        const std::size_t left_out = cells.size() < head_.columns.size() && is_name_left_out(line) ? 1 : 0;
        for (std::size_t at = 0; at < cells.size(); ++at) {
            if (cells[at].text.empty()) {
                continue;
            }
            const bool is_first =
                at + left_out == 0 && cells[at].begin <= head_.columns.front().begin + widest_indent;
            const std::size_t column = is_first ? 0 : head_.column_of(cells[at], at + left_out);
            if (column == 0 && row.cells.front().empty()) {
                begin_of_name = cells[at].begin;
            }
            row.cells[column] +=
                (row.cells[column].empty() ? "" : " ") +
                (column > 0 ? without_gap_in_number(cells[at].text) : std::string(cells[at].text));
            if (column == 0 && runs_over(cells[at]) && cells.size() == 1) {
                return false; // prose across the page
            }
        }
        take_direction(row);
        return take_row(std::move(row), begin_of_name);
    }

    // An empty cell goes on with the stage above.
    void take_stage(const TableCell& cell) {
        if (!cell.text.empty()) {
            push_row();
            take_subhead(cell.text);
        }
    }

    bool take_subhead(std::string_view text) {
        std::string title = without_brackets(heading_text(text));
        title = has_digit(title) ? without_figures(title) : title; // "3 Glaze"
        if (part_named(title)) {
            return false;
        }
        if (title.empty()) { // "3": of the stage above
            return true;
        }
        const std::string_view made = role_of_made(title);
        const auto role = made.empty() ? role_of_heading(title) : std::optional(std::string(made));
        role_ = role.value_or("dough");
        title_ = role ? std::string() : title;
        rows_seen_ = false;
        return true;
    }

    // "              |        | 2 tsp |" below names that stand before the first bar.
    bool is_name_left_out(std::string_view line) const {
        const std::size_t bar = line.find_first_not_of(" \t");
        return head_.is_barred && !head_.is_stacked && bar != std::string_view::npos && line[bar] == '|' &&
               bar > head_.columns.front().begin;
    }

    // "2 lbs. 8 oz. 2 lbs. 8 oz." below two heads: two amounts with one space between them; a long name may
    // come as near to its amount.
    std::vector<TableCell> cells_of(std::string_view line) const {
        std::vector<TableCell> cells;
        for (const TableCell& cell : head_.is_tabbed ? tabbed_cells(line) : table_cells(line)) {
            const auto next =
                std::find_if(head_.columns.begin() + 1, head_.columns.end(), [&](const TableColumn& column) {
                    return column.is_amount() && column.begin > cell.begin + 1 && column.begin < cell.end;
                });
            const bool is_ascii = cell.end - cell.begin == cell.text.size();
            const std::size_t cut = next == head_.columns.end() ? 0 : next->begin - cell.begin;
            const bool is_double = is_ascii && !head_.is_counted() && cut > 0 && cell.text[cut - 1] == ' ' &&
                                   is_amount_alone(cell.text.substr(cut)) &&
                                   (is_amount_alone(cell.text.substr(0, cut - 1)) ||
                                    (cells.empty() && !has_digit(cell.text.substr(0, cut - 1))));
            if (!is_double) {
                cells.push_back(cell);
                continue;
            }
            cells.push_back(
                {.text = cell.text.substr(0, cut - 1), .begin = cell.begin, .end = cell.begin + cut - 1});
            cells.push_back({.text = cell.text.substr(cut), .begin = cell.begin + cut, .end = cell.end});
        }
        return cells;
    }

    // A line without the bars at its ends.
    SourcedText place_of(std::size_t number) const {
        const std::string_view line = source_->line(number);
        const std::size_t begin = std::min(line.find_first_not_of(" \t|"), line.size());
        const std::size_t end = line.find_last_not_of(" \t|\r") + 1;
        const SourcedText whole{
            .source = source_, .span = {source_->line_start(number), line.size()}, .text = line};
        return whole.part(begin, std::max(end, begin) - begin);
    }

    // Whether a text of the first column reaches into the amounts.
    bool runs_over(const TableCell& cell) const {
        const auto amount = std::find_if(head_.columns.begin(), head_.columns.end(),
                                         [](const TableColumn& column) { return column.is_amount(); });
        return !head_.is_counted() && cell.end > amount->begin + 2;
    }

    void take_direction(TableRow& row) {
        for (std::size_t at = 0; at < row.cells.size(); ++at) {
            if (head_.columns[at].kind == Kind::directions && !row.cells[at].empty()) {
                has_directions_ = true;
                if (table_.directions.size() < most_recipe_lines) {
                    table_.directions.push_back(row.cells[at]);
                }
                row.cells[at].clear();
            }
        }
    }

    bool has_cells(const TableRow& row) const {
        for (std::size_t at = 1; at < row.cells.size(); ++at) {
            if (!row.cells[at].empty() && head_.columns[at].kind != Kind::ignored) {
                return true;
            }
        }
        return false;
    }

    // "SERVING:   YIELD:   VOLUME:" below the columns is another table.
    bool has_other_words(const TableRow& row) const {
        for (std::size_t at = 1; at < row.cells.size(); ++at) {
            const std::string& cell = row.cells[at];
            const std::string words = fold_name(cell);
            const bool is_whole = words == "all" || words == "whole" || words == "some" || // of a stage
                                  words == "as needed" || words == "to taste";
            if (head_.columns[at].is_amount() && !cell.empty() && !is_blank_cell(cell) && !is_amount(cell) &&
                !is_whole) {
                return true;
            }
        }
        return false;
    }

    // "Sugar, powdered (for dusting) 1 pound": too long for its column.
    void part_name_from_weight(TableRow& row) const {
        const std::size_t space = row.name.find_last_of(' ');
        const std::size_t begin = space == std::string::npos || space == 0
                                      ? std::string::npos
                                      : row.name.find_last_of(' ', space - 1);
        if (begin == std::string::npos || !is_amount_alone(std::string_view(row.name).substr(begin + 1))) {
            return;
        }
        for (std::size_t at = 1; at < row.cells.size(); ++at) {
            if (head_.columns[at].is_amount() && row.cells[at].empty()) {
                row.cells[at] = row.name.substr(begin + 1);
                row.name.resize(begin);
                return;
            }
        }
    }

    bool take_row(TableRow row, std::size_t begin_of_name) {
        row.name = row.cells.front();
        part_name_from_weight(row);
        const bool is_indented = begin_of_name > begin_of_names_ && rows_seen_;
        const bool begins_small = !row.name.empty() && row.name.front() >= 'a' && row.name.front() <= 'z';
        if (!has_cells(row) && is_title(row.name)) {
            push_row();
            return take_title(std::move(row));
        }
        if (is_total(row.name)) {
            push_row();
            return true;
        }
        const bool goes_on =
            open_ && !is_blank_before_ &&
            (row.name.empty() || row.name.front() == '(' || is_indented || (begins_small && is_capital_) ||
             (has_open_bracket(open_->name) && !has_cells(*open_) &&
              row.name.find(')') != std::string::npos));
        if (goes_on) {
            add_to_row(row);
            return true;
        }
        if (row.name.empty()) {
            return !has_cells(row) || !has_other_words(row);
        }
        if (has_other_words(row)) {
            return false;
        }
        push_row();
        if (!has_cells(row)) {
            return take_title(std::move(row));
        }
        if (!rows_seen_) {
            begin_of_names_ = begin_of_name;
            is_capital_ = !begins_small;
            rows_seen_ = true;
        }
        ++rows_;
        open_ = std::move(row);
        return true;
    }

    static bool is_total(std::string_view name) {
        const std::string heading = heading_text(name);
        return heading == "total" || heading.starts_with("total ") || heading == "dough total" ||
               heading == "total dough";
    }

    // "Liquid (milk, potato", over "water or water)"
    static bool has_open_bracket(std::string_view name) {
        const std::size_t bracket = name.rfind('(');
        return bracket != std::string_view::npos && name.find(')', bracket) == std::string_view::npos;
    }

    static bool is_title(std::string_view name) { return name.ends_with(':') || name.ends_with(":**"); }

    // "Glaze:", "Filling", or an ingredient whose amount stands below, or nowhere.
    bool take_title(TableRow row) {
        const std::string title = without_brackets(heading_text(row.name));
        if (part_named(title)) {
            return false;
        }
        const bool is_use = title.find(" for ") != std::string::npos; // "Fat for frying"
        const bool is_item = has_measure(row.name);                   // "2 tbsp dry bread crumbs"
        if (const auto role = role_of_heading(title); role && !is_item && (!is_use || is_title(row.name))) {
            role_ = *role;
            rows_seen_ = false; // its rows may be set in
            return true;
        }
        if (is_blank_before_ && !is_title(row.name)) {
            return false; // a paragraph, a note
        }
        open_ = std::move(row);
        return true;
    }

    void add_to_row(const TableRow& row) {
        for (std::size_t at = 0; at < row.cells.size(); ++at) {
            if (!row.cells[at].empty() && !(at > 0 && is_blank_cell(row.cells[at]))) {
                open_->cells[at] += (open_->cells[at].empty() ? "" : " ") + row.cells[at];
            }
        }
        open_->name = open_->cells.front();
        open_->place = joined(open_->place, row.place);
    }

    void push(RecipeLine line) {
        line.title = title_;
        if (table_.lines.size() < most_recipe_lines) {
            table_.lines.push_back(std::move(line));
        }
    }

    void push_row() {
        if (!open_) {
            return;
        }
        if (head_.has_roles()) {
            push_stages(*open_);
            open_.reset();
            return;
        }
        const std::string amount = amount_of(*open_, {});
        if (amount.empty() && head_.batches.size() > 1 && has_amounts(*open_)) { // of another bread only
            open_.reset();
            return;
        }
        push({.place = open_->place,
              .role = role_,
              .words = amount + (amount.empty() ? "" : " ") + spaced_name(open_->name) + remark_of(*open_)});
        open_.reset();
    }

    // "melted, for tops" in a column of notes; what else stands there is not of the list.
    std::string remark_of(const TableRow& row) const {
        constexpr std::size_t longest = 60;
        std::string remark;
        for (std::size_t at = 1; at < row.cells.size(); ++at) {
            const std::string& cell = row.cells[at];
            const bool is_remark =
                head_.columns[at].kind == Kind::ignored && cell.size() < longest && !has_digit(cell);
            std::size_t mark = is_remark ? cell.find("for ") : std::string::npos;
            if (mark == std::string::npos) {
                continue;
            }
            std::string_view what = std::string_view(cell).substr(mark + 4);
            what.remove_prefix(what.starts_with("the ") ? 4U : 0U);
            if (!purpose_named(fold_name(what.substr(0, what.find_first_of(" ,.;")))).empty()) {
                remark += ", " + cell.substr(mark);
            }
        }
        return remark;
    }

    // A line for each column that has an amount.
    void push_stages(TableRow& row) {
        for (const TableColumn& column : head_.columns) {
            const bool is_stage = !column.role.empty() && column.role != role_of_total;
            const std::string amount = is_stage ? amount_of(row, column.role) : std::string();
            if (!amount.empty()) {
                push(
                    {.place = row.place, .role = column.role, .words = amount + " " + spaced_name(row.name)});
            }
        }
    }

    bool is_taken(const TableColumn& column, std::string_view role) const {
        return column.is_amount() && column.role == role &&
               (head_.batches.empty() ? column.batch.empty() : column.batch == head_.batches.front());
    }

    bool has_amounts(const TableRow& row) const {
        for (std::size_t at = 1; at < row.cells.size(); ++at) {
            if (head_.columns[at].is_amount() && !row.cells[at].empty() && !is_blank_cell(row.cells[at])) {
                return true;
            }
        }
        return false;
    }

    // The weight, with the measure in brackets; pounds and ounces of two columns are one weight.
    std::string amount_of(TableRow& row, std::string_view role) const {
        std::string weight;
        std::string measure;
        std::string count; // where nothing else is said
        for (std::size_t at = 1; at < row.cells.size(); ++at) {
            const TableColumn& column = head_.columns[at];
            if (!is_taken(column, role) || row.cells[at].empty() || is_blank_cell(row.cells[at])) {
                continue;
            }
            const std::string number = number_of(row.cells[at], row.name);
            std::string text = number.empty() ? row.cells[at] : number;
            if (!has_letter(text)) {
                const std::string unit = column.unit.empty() ? unit_of_name(row.name) : column.unit;
                text += unit.empty() ? "" : " " + unit;
            }
            std::string& place = column.unit == "each"          ? count
                                 : column.kind == Kind::measure ? measure
                                                                : weight;
            place += (place.empty() ? "" : " ") + text;
        }
        if (weight.empty() || measure.empty()) {
            return weight.empty() && measure.empty() ? count : weight + measure;
        }
        return is_amount_alone(measure) ? weight + " (" + measure + ")" : weight;
    }

    // "Water, cups": the measure of its numbers stands with the name.
    static std::string unit_of_name(std::string& name) {
        const std::size_t comma = name.rfind(',');
        if (comma == std::string::npos) {
            return {};
        }
        std::string unit = name.substr(comma + 1);
        unit.erase(0, std::min(unit.find_first_not_of(' '), unit.size()));
        if (!is_amount_alone("2 " + unit)) {
            return {};
        }
        name.erase(comma);
        return unit;
    }

    static constexpr std::size_t widest_indent = 4;

    SourceHandle source_;
    TableHead head_;
    RecipeTable table_;
    std::string role_ = "dough";
    std::string title_; // folded, of a head amid the rows that says no role
    std::optional<TableRow> open_;
    std::size_t rows_ = 0;
    std::size_t begin_of_names_ = 0;
    bool rows_seen_ = false;
    bool is_capital_ = false;
    bool is_blank_before_ = false;
    bool has_directions_ = false;
};

bool is_pounds(std::string_view cell) {
    const std::string words = fold_name(cell);
    return words.ends_with("lb.") || words.ends_with("lbs.") || words.ends_with("lb") ||
           words.ends_with("lbs");
}

bool is_ounces(std::string_view cell) {
    const std::string words = fold_name(cell);
    return words.ends_with("oz.") || words.ends_with("ozs.") || words.ends_with("oz") ||
           words.ends_with("ozs");
}

// "pounds   75" behind the leader, or "do.   2": amount and measure as they are said.
std::string amount_behind_unit(std::span<const TableCell> cells, std::string& unit) {
    constexpr std::size_t longest = 40;
    constexpr std::size_t most_cells = 6; // further ones are of other batches
    if (cells.size() < 2 || cells.size() > most_cells) {
        return {};
    }
    std::string_view behind = cells[1].text;
    behind = behind.substr(0, behind.find_last_not_of('.') + 1); // "pounds..       200"
    const std::size_t blank = cells.size() == 2 ? behind.find(' ') : behind.size();
    if (blank == std::string_view::npos || behind.size() > longest) {
        return {};
    }
    const std::string_view word = behind.substr(0, blank);
    const std::string_view number = cells.size() == 2 ? behind.substr(blank + 1) : cells[2].text;
    const auto tokens = line_tokens(plain_line(number.substr(0, longest)));
    const auto value = read_kitchen_number(tokens);
    if (has_digit(word) || !value || value->length != tokens.size()) {
        return {};
    }
    const bool is_same = word == "do." || word == "do" || word == "ditto" || word == "\"" || word == "''";
    if (!is_same && !is_amount_alone("2 " + std::string(word))) {
        return {};
    }
    unit = is_same ? unit : std::string(word);
    return unit.empty() ? std::string() : std::string(number) + " " + unit;
}

} // namespace

std::optional<RecipeTable> read_table(const SourceHandle& source, std::size_t first_line) {
    auto head = read_table_head(*source, first_line);
    return head ? TableReader(source, *std::move(head)).read() : std::nullopt;
}

std::vector<LeaderRow> leader_rows(std::string_view line, std::string& unit) {
    std::vector<LeaderRow> rows;
    if (!has_leader(line)) {
        return rows;
    }
    const auto cells = table_cells(line);
    const auto push = [&](const TableCell& first, const TableCell& last, std::string words) {
        const auto begin = static_cast<std::size_t>(first.text.data() - line.data());
        const auto end = static_cast<std::size_t>(last.text.data() - line.data()) + last.text.size();
        rows.push_back({.begin = begin, .length = end - begin, .words = std::move(words)});
    };
    if (const std::string amount = amount_behind_unit(cells, unit); !amount.empty()) {
        push(cells.front(), cells.back(), amount + " " + spaced_name(cells.front().text));
        return rows;
    }
    for (std::size_t at = 0; at < cells.size();) {
        const bool is_pair =
            at + 1 < cells.size() && !is_amount(cells[at].text) && is_amount(cells[at + 1].text);
        const bool is_rest = !rows.empty() && at + 1 == cells.size() && has_digit(cells[at].text);
        if (!is_pair && !is_rest) {
            return {};
        }
        std::size_t last = at + (is_pair ? 1 : 0);
        const std::string_view amount = cells[last].text;
        const bool is_open =
            amount.find('(') != std::string_view::npos && amount.find(')') == std::string_view::npos;
        std::string words(amount.substr(0, is_open ? amount.find('(') : amount.size()));
        if (is_pair) {
            const std::string_view second = last + 1 < cells.size() && is_amount_alone(cells[last].text)
                                                ? cells[last + 1].text
                                                : std::string_view();
            const bool is_count = !number_of(second, cells[at].text).empty();
            const bool has_second = is_count || (!second.empty() && is_amount_alone(second));
            constexpr std::size_t widest = 3; // farther apart they are of two batches
            const bool is_part = is_pounds(amount) && is_ounces(second) && // "1 lb.   4 oz."
                                 cells[last + 1].begin <= cells[last].end + widest;
            words += is_part                   ? " " + std::string(second)
                     : has_second && !is_count ? " (" + std::string(second) + ")"
                                               : "";
            words += " " + spaced_name(cells[at].text);
            last += has_second ? 1 : 0;
            const auto said = read_kitchen_amount(line_tokens(plain_line(amount.substr(0, longest_name))));
            unit = said && !said->measure.name.empty() ? said->measure.name : unit;
        }
        push(cells[at], cells[last], std::move(words));
        at = last + 1;
    }
    return rows;
}

} // namespace leavenwright
