#include "transcribe/table_head.hpp"

#include "source/unicode.hpp"
#include "transcribe/ingredient_line.hpp"
#include "transcribe/kitchen_words.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/recipe_text.hpp"
#include "transcribe/recipe_words.hpp"

#include <algorithm>
#include <array>
#include <span>

namespace leavenwright {
namespace {

using Kind = TableColumn::Kind;

constexpr std::size_t longest_head = 200; // bytes of a line over columns

struct ColumnWord {
    std::string_view word; // folded
    Kind kind;
    std::string_view unit;
};

constexpr auto column_words = std::to_array<ColumnWord>({
    {"ingredients", Kind::name, ""},
    {"ingredient", Kind::name, ""},
    {"material", Kind::name, ""},
    {"materials", Kind::name, ""},
    {"item", Kind::name, ""},
    {"items", Kind::name, ""},
    {"foods", Kind::name, ""},
    {"food", Kind::name, ""},
    {"articles", Kind::name, ""},
    {"article", Kind::name, ""},
    {"weight", Kind::weight, ""},
    {"weights", Kind::weight, ""},
    {"amount", Kind::weight, ""},
    {"amounts", Kind::weight, ""},
    {"quantity", Kind::weight, ""},
    {"quantities", Kind::weight, ""},
    {"metric", Kind::weight, ""},
    {"pounds", Kind::weight, "lb"},
    {"lbs", Kind::weight, "lb"},
    {"lb", Kind::weight, "lb"},
    {"ounces", Kind::weight, "oz"},
    {"oz", Kind::weight, "oz"},
    {"ozs", Kind::weight, "oz"},
    {"grams", Kind::weight, "g"},
    {"gram", Kind::weight, "g"},
    {"g", Kind::weight, "g"},
    {"kilograms", Kind::weight, "kg"},
    {"kg", Kind::weight, "kg"},
    {"measure", Kind::measure, ""},
    {"count", Kind::measure, "each"},
    {"measures", Kind::measure, ""},
    {"volume", Kind::measure, ""},
    {"cups", Kind::measure, "cup"},
    {"percent", Kind::ignored, ""},
    {"cent", Kind::ignored, ""},
    {"percentage", Kind::ignored, ""},
    {"%", Kind::ignored, ""},
    {"issue", Kind::ignored, ""},
    {"portions", Kind::ignored, ""},
    {"servings", Kind::ignored, ""},
    {"cost", Kind::ignored, ""},
    {"notes", Kind::ignored, ""},
    {"note", Kind::ignored, ""},
    {"remarks", Kind::ignored, ""},
    {"comments", Kind::ignored, ""},
    {"method", Kind::directions, ""},
    {"directions", Kind::directions, ""},
    {"procedure", Kind::directions, ""},
});

// Words that say nothing of a column beside those above: "approximate measure", "baker's percent".
constexpr auto column_fillers = std::to_array<std::string_view>(
    {"approximate", "approx", "household", "us",    "bakers", "baker's", "your", "variable", "total", "in",
     "of",          "by",     "the",       "level", "about",  "for",     "per",  "flour",    "basis", "on"});

constexpr auto batch_words = std::to_array<std::string_view>(
    {"portions", "portion", "servings", "serving", "loaves", "loaf",      "rolls",     "buns",  "men",
     "persons",  "people",  "dozen",    "pieces",  "port",   "doughnuts", "biscuits",  "pans",  "pan",
     "tray",     "trays",   "batch",    "batches", "pizzas", "balls",     "baguettes", "bagels"});

// "1 1/2 lb loaf", "one large pan".
constexpr auto batch_sizes = std::to_array<std::string_view>(
    {"lb", "lbs", "pound", "pounds", "small", "medium", "large", "regular", "inch", "-"});

template <class Words>
bool is_one_of(std::string_view word, const Words& words) {
    return std::find(words.begin(), words.end(), word) != words.end();
}

// What a cell of a head says; nothing where it belongs to no head.
std::optional<TableColumn> column_named(const TableCell& cell) {
    TableColumn column{
        .kind = Kind::name, .unit = {}, .role = {}, .batch = {}, .begin = cell.begin, .end = cell.end};
    if (is_batch_label(cell.text)) {
        column.kind = Kind::batch;
        column.batch = plain_line(cell.text);
        return column;
    }
    const std::size_t mark = std::min(cell.text.find_first_of(":("), cell.text.find("<br"));
    if (mark != std::string_view::npos && is_batch_label(cell.text.substr(0, mark))) {
        // "50 servings: weight", "50 servings<br>weight", "100 portions (weights)"
        const std::size_t end = cell.text[mark] == '<' ? cell.text.find('>', mark) : mark;
        std::string_view what = cell.text.substr(std::min(end, cell.text.size() - 1) + 1);
        what = what.substr(0, what.find(')'));
        auto rest = column_named({.text = what, .begin = cell.begin, .end = cell.end});
        if (rest) {
            rest->batch = plain_line(cell.text.substr(0, mark));
        } else if (!what.empty() && what.find_first_not_of("0123456789") == std::string_view::npos) {
            column.kind = Kind::batch; // "one pan (16)"
            column.batch = plain_line(cell.text);
            return column;
        }
        return rest;
    }
    bool is_named = false;
    constexpr std::size_t longest = 60;
    for (const LineToken& token : line_tokens(plain_line(cell.text.substr(0, longest)))) {
        if (token.is_number()) {
            return std::nullopt;
        }
        const std::string_view word = token.is_word() ? std::string_view(token.folded) : token.text;
        const auto known = std::find_if(column_words.begin(), column_words.end(),
                                        [&](const ColumnWord& candidate) { return candidate.word == word; });
        if (known != column_words.end() && !is_named) {
            column.kind = known->kind;
            column.unit = known->unit;
            is_named = true;
        } else if (known != column_words.end() && column.is_amount() && column.unit.empty() &&
                   !known->unit.empty()) { // "Weight (g)"
            column.kind = known->kind;
            column.unit = known->unit;
        } else if (known != column_words.end() && known->kind == Kind::ignored) { // "Amount (%)"
            column.kind = Kind::ignored;
        } else if (token.is_word() && !is_one_of(word, column_fillers)) {
            return std::nullopt;
        }
    }
    return is_named ? std::optional(column) : std::nullopt;
}

bool overlaps(const TableColumn& column, const TableCell& cell) {
    return cell.begin < column.end && column.begin < cell.end;
}

class HeadReader {
public:
    HeadReader(const SourceText& source, std::size_t first_line) : source_(source), line_(first_line) {}

    std::optional<TableHead> read() {
        const std::vector<StageHead> stages = take_stages();
        if (!take_line()) {
            return std::nullopt;
        }
        name_stages_of_columns(stages);
        constexpr std::size_t most_lines = 4;
        for (std::size_t count = 1; count < most_lines && take_further(); ++count) {
        }
        return finish();
    }

private:
    struct StageHead {
        std::string role;
        std::size_t begin = 0; // in code points
    };

    // "SPONGE        DOUGH        TOTAL FORMULA" over columns that each has: a line of its own.
    std::vector<StageHead> take_stages() {
        constexpr std::size_t fewest = 2;
        std::vector<StageHead> stages;
        if (source_.line(line_).size() > longest_head) {
            return stages;
        }
        for (const TableCell& cell : table_cells(source_.line(line_))) {
            const auto role = role_of_heading(heading_text(cell.text));
            if (!role || has_digit(cell.text) || !(is_in_dough(*role) || *role == role_of_total)) {
                return {};
            }
            stages.push_back({.role = *role, .begin = cell.begin});
        }
        if (stages.size() < fewest || line_ >= source_.line_count()) {
            return {};
        }
        ++line_;
        return stages;
    }

    void name_stages_of_columns(const std::vector<StageHead>& stages) {
        constexpr std::size_t most_left = 3; // of its head
        for (TableColumn& column : head_.columns) {
            for (const StageHead& stage : stages) {
                const bool is_below = column.is_amount() && stage.begin <= column.begin + most_left;
                column.role = is_below ? stage.role : column.role;
            }
        }
    }

    // "!Ingredient" over "!Weight", in a wiki
    bool take_stacked() {
        const std::size_t lines = stacked_lines(source_, line_, '!');
        head_.is_barred = head_.is_stacked = true;
        for (const TableCell& cell : stacked_cells(source_, line_, lines)) {
            TableColumn other{.kind = Kind::ignored,
                              .unit = {},
                              .role = {},
                              .batch = {},
                              .begin = cell.begin,
                              .end = cell.end};
            head_.columns.push_back(column_named(cell).value_or(std::move(other)));
        }
        line_ += lines;
        return head_.columns.size() >= 2;
    }

    bool take_line() {
        const std::string_view line = source_.line(line_);
        if (line.starts_with('!') && !is_wiki_row(line)) {
            return take_stacked();
        }
        head_.is_barred = line.find('|') != std::string_view::npos || is_wiki_row(line);
        head_.is_tabbed = !head_.is_barred && is_tabbed(line);
        const auto cells = head_.is_tabbed ? tabbed_cells(line) : table_cells(line);
        head_.has_stage_cells = head_.is_counted() && cells.size() > 2 && names_stages(cells.front()) &&
                                column_named(cells[1]) && column_named(cells[1])->kind == Kind::name;
        for (const TableCell& cell : std::span(cells).subspan(head_.has_stage_cells ? 1 : 0)) {
            if (cell.text.empty() && head_.is_counted() && head_.columns.empty()) {
                head_.columns.push_back({.kind = Kind::name,
                                         .unit = {},
                                         .role = {},
                                         .batch = {},
                                         .begin = cell.begin,
                                         .end = cell.end});
                continue;
            }
            auto column = column_named(cell);
            if (!column && head_.is_counted() && !head_.columns.empty()) {
                column = column_of_stage(cell);
            }
            if (!column && head_.columns.empty() && may_be_title(cell, cells.size())) {
                head_.title = plain_line(cell.text);
                column = TableColumn{.kind = Kind::name,
                                     .unit = {},
                                     .role = {},
                                     .batch = {},
                                     .begin = cell.begin,
                                     .end = cell.end};
            }
            if (!column) {
                return false;
            }
            head_.columns.push_back(*column);
        }
        ++line_;
        return (head_.columns.size() >= 2 || is_unit_alone()) && has_stages_throughout();
    }

    // "| Stage | Ingredient | Amount |"
    static bool names_stages(const TableCell& cell) {
        const std::string heading = heading_text(cell.text);
        return is_one_of(std::string_view(heading),
                         std::to_array<std::string_view>(
                             {"stage", "part", "component", "phase", "section", "step", "for", "mix"}));
    }

    // "| Ingredient | Poolish | Dough (g) |"
    static std::optional<TableColumn> column_of_stage(const TableCell& cell) {
        const std::string heading = heading_text(cell.text);
        const auto role = role_of_heading(without_brackets(heading));
        if (!role || has_digit(heading)) {
            return std::nullopt;
        }
        const std::size_t bracket = cell.text.find('(');
        const auto unit = bracket == std::string_view::npos
                              ? std::nullopt
                              : column_named({.text = cell.text.substr(bracket), .begin = 0, .end = 0});
        return TableColumn{.kind = Kind::weight,
                           .unit = unit ? unit->unit : std::string(),
                           .role = *role,
                           .batch = {},
                           .begin = cell.begin,
                           .end = cell.end};
    }

    // Columns of stages are all that have amounts, and one is of the dough.
    bool has_stages_throughout() const {
        const auto& columns = head_.columns;
        const auto is_staged = [](const TableColumn& column) { return !column.role.empty(); };
        const auto is_open = [](const TableColumn& column) {
            return column.is_amount() && column.role.empty();
        };
        const auto is_dough = [](const TableColumn& column) { return column.role == "dough"; };
        return std::none_of(columns.begin(), columns.end(), is_staged) ||
               (std::none_of(columns.begin(), columns.end(), is_open) &&
                std::any_of(columns.begin(), columns.end(), is_dough));
    }

    // One tab between two cells, each with words in it.
    static bool is_tabbed(std::string_view line) {
        return line.find('\t') != std::string_view::npos && line.find("\t\t") == std::string_view::npos &&
               line.find("  ") == std::string_view::npos;
    }

    // "                 Pounds" over the figures of one column, far from the names.
    bool is_unit_alone() const {
        constexpr std::size_t nearest = 16;
        return head_.columns.size() == 1 && head_.columns.front().kind == Kind::weight &&
               !head_.columns.front().unit.empty() && head_.columns.front().begin >= nearest;
    }

    // "POOLISH      %     KG": what the rows are of, where the names of columns stand.
    static bool may_be_title(const TableCell& cell, std::size_t cells) {
        constexpr std::size_t longest = 40;
        return cells >= 2 && cell.text.size() <= longest && !has_digit(cell.text);
    }

    // A line below that says more of the columns: "Ounces" under "Weight", "Weight  Measure" under "50
    // servings", "(flour basis)".
    bool take_further() {
        if (line_ > source_.line_count() || is_rule(source_.line(line_))) {
            return false;
        }
        const auto cells = table_cells(source_.line(line_));
        std::vector<TableColumn> columns;
        for (const TableCell& cell : cells) {
            const auto column = column_named(cell);
            const bool is_remark = cell.text.starts_with('(') || cell.text.ends_with(')');
            if (!column && !is_remark) {
                return false;
            }
            if (column) {
                columns.push_back(*column);
            }
        }
        if (cells.empty()) {
            return false;
        }
        ++line_;
        const auto count = [](const std::vector<TableColumn>& all, auto is_counted) {
            return std::count_if(all.begin(), all.end(), is_counted);
        };
        const auto amounts = count(columns, [](const TableColumn& column) { return column.is_amount(); });
        const auto batches =
            count(head_.columns, [](const TableColumn& column) { return column.kind == Kind::batch; });
        const bool splits = columns.size() > head_.columns.size() ||
                            (batches > 1 && amounts > batches && !head_.is_tabbed && !head_.is_barred);
        splits ? split_by(std::move(columns)) : refine_by(columns);
        return true;
    }

    // "50 servings", "100 servings" above the columns of each.
    void split_by(std::vector<TableColumn> columns) {
        for (TableColumn& column : columns) {
            if (!column.is_amount()) {
                continue;
            }
            const TableColumn* above = nullptr;
            for (const TableColumn& batch : head_.columns) {
                above = batch.kind == Kind::batch && batch.begin <= column.end ? &batch : above;
            }
            column.batch = above != nullptr ? above->batch : std::string();
        }
        const auto keep = [&](const TableColumn& column) { // "Ingredients", "Directions"
            return column.kind != Kind::batch && !column.is_amount() &&
                   std::none_of(columns.begin(), columns.end(), [&](const TableColumn& below) {
                       return below.begin < column.end && column.begin < below.end;
                   });
        };
        std::copy_if(head_.columns.begin(), head_.columns.end(), std::back_inserter(columns), keep);
        std::stable_sort(
            columns.begin(), columns.end(),
            [](const TableColumn& left, const TableColumn& right) { return left.begin < right.begin; });
        head_.columns = std::move(columns);
    }

    void refine_by(const std::vector<TableColumn>& columns) {
        for (const TableColumn& column : columns) {
            const TableCell cell{.text = {}, .begin = column.begin, .end = column.end};
            for (TableColumn& above : head_.columns) {
                if (overlaps(above, cell) && above.is_amount() && above.unit.empty()) {
                    above.unit = column.unit;
                    above.end = std::max(above.end, column.end);
                }
            }
        }
    }

    std::optional<TableHead> finish() {
        if (head_.columns.front().kind != Kind::name) {
            head_.columns.insert(head_.columns.begin(), TableColumn());
            head_.columns.front().end = 1;
        }
        const bool has_amount = std::any_of(head_.columns.begin(), head_.columns.end(),
                                            [](const TableColumn& column) { return column.is_amount(); });
        if (!has_amount) {
            return std::nullopt;
        }
        name_batches();
        head_.end_line = line_;
        return std::move(head_);
    }

    // Columns of a kind that stood before belong to another batch.
    void name_batches() {
        std::vector<std::pair<Kind, std::string>> seen;
        bool is_another = false;
        for (TableColumn& column : head_.columns) {
            if (!column.is_amount() || !column.role.empty()) {
                continue;
            }
            if (!column.batch.empty()) {
                if (!is_one_of(column.batch, head_.batches)) {
                    head_.batches.push_back(column.batch);
                }
                continue;
            }
            const std::pair<Kind, std::string> sort(column.kind, column.unit);
            is_another = is_another || std::find(seen.begin(), seen.end(), sort) != seen.end();
            seen.push_back(sort);
            column.batch = is_another ? "others" : "";
        }
        for (TableColumn& column : head_.columns) { // "100 portions (weights)   Approximate measures"
            if (head_.batches.size() == 1 && column.is_amount() && column.batch.empty()) {
                column.batch = head_.batches.front();
            }
        }
    }

    const SourceText& source_;
    std::size_t line_ = 1;
    TableHead head_;
};

// A name with an amount, a number or a dash behind it for each column.
bool is_row_of_breads(std::string_view line, std::size_t columns) {
    const auto is_cell = [](const TableCell& cell) {
        const auto tokens = line_tokens(plain_line(cell.text));
        const bool is_number = tokens.size() == 1 && !tokens.front().is_word();
        return tokens.empty() || is_rule(cell.text) || is_number || is_amount_alone(cell.text);
    };
    const auto cells = table_cells(line);
    return !cells.empty() && !is_amount_alone(cells.front().text) && !is_cell(cells.front()) &&
           cells.size() <= columns + 1 && std::all_of(cells.begin() + 1, cells.end(), is_cell);
}

// "Sponge   Dough   Total" over columns: the amounts of each stage. Whether all are such.
bool name_stages(TableHead& head) {
    std::vector<std::string> roles;
    bool has_stage = false;
    for (std::size_t at = 1; at < head.columns.size(); ++at) {
        const auto role = role_of_heading(heading_text(head.columns[at].batch));
        if (!role || !(is_in_dough(*role) || *role == role_of_total)) {
            return false;
        }
        has_stage = has_stage || (*role != "dough" && *role != role_of_total);
        roles.push_back(*role);
    }
    if (!has_stage || !is_one_of(std::string_view("dough"), roles)) {
        return false;
    }
    for (std::size_t at = 0; at < roles.size(); ++at) {
        head.columns[at + 1].role = roles[at];
        head.columns[at + 1].kind = Kind::weight;
        head.columns[at + 1].batch.clear();
    }
    return true;
}

// "White   Graham   Rye" over columns of amounts, in one line or two: a bread a column.
std::optional<TableHead> read_bread_names(const SourceText& source, std::size_t line) {
    constexpr std::size_t fewest_rows = 3;
    const auto cells = table_cells(source.line(line));
    if (cells.size() < 2 || has_digit(source.line(line))) {
        return std::nullopt;
    }
    TableHead head;
    head.columns.emplace_back().end = 1;
    for (const TableCell& cell : cells) {
        head.columns.push_back({.kind = Kind::batch,
                                .unit = {},
                                .role = {},
                                .batch = plain_line(cell.text),
                                .begin = cell.begin,
                                .end = cell.end});
    }
    std::size_t next = line + 1;
    const auto further =
        next <= source.line_count() ? table_cells(source.line(next)) : std::vector<TableCell>();
    if (!name_stages(head) && further.size() == cells.size() && !has_digit(source.line(next))) {
        for (std::size_t at = 0; at < further.size(); ++at) {
            head.columns[at + 1].batch += " " + plain_line(further[at].text);
        }
        ++next;
    }
    head.end_line = next;
    std::size_t whole = 0; // rows with an amount in each column
    for (std::size_t rows = 0; rows < fewest_rows && next <= source.line_count(); ++next) {
        const std::string_view row = source.line(next);
        if (is_blank(row) || is_rule(row)) {
            continue;
        }
        if (!is_row_of_breads(row, cells.size())) {
            return std::nullopt;
        }
        ++rows;
        whole += table_cells(row).size() == cells.size() + 1 ? 1U : 0U;
    }
    if (whole == 0) {
        return std::nullopt;
    }
    for (std::size_t at = 1; at < head.columns.size() && !head.has_roles(); ++at) {
        head.batches.push_back(head.columns[at].batch);
    }
    return head;
}

} // namespace

std::optional<TableHead> read_table_head(const SourceText& source, std::size_t first_line) {
    if (auto head = HeadReader(source, first_line).read()) {
        return head;
    }
    return read_bread_names(source, first_line);
}

bool is_batch_label(std::string_view text) {
    constexpr std::size_t longest = 40;
    if (text.size() > longest) {
        return false;
    }
    bool has_number = false;
    bool is_named = false;
    for (const LineToken& token : line_tokens(plain_line(text))) {
        if (token.is_number() || number_named(token.folded) > 0.0) {
            has_number = true;
        } else if (token.is("individual")) { // of a class that cooks
            has_number = is_named = true;
        } else if (is_one_of(token.folded, batch_words)) {
            is_named = true;
        } else if (!token.is(".") && !token.is(":") && !is_one_of(token.folded, column_fillers) &&
                   !is_one_of(token.folded, batch_sizes)) {
            return false;
        }
    }
    return has_number && is_named;
}

std::string batch_heading(std::string_view line) {
    constexpr std::size_t longest = 80; // with a rule around it
    if (line.size() > longest) {
        return {};
    }
    std::string text = heading_text(line);
    constexpr std::string_view rule = "mmmmm "; // of programs that once kept recipes
    text.erase(0, text.starts_with(rule) ? rule.size() : 0U);
    bool has_size = false;
    bool is_named = false;
    for (const LineToken& token : line_tokens(text)) {
        const bool is_number = token.is_number() || number_named(token.folded) > 0.0;
        const bool is_size = is_number || (token.is_word() && is_one_of(token.folded, batch_sizes));
        const bool is_kind = is_one_of(token.folded, batch_words);
        if (token.is_word() && !is_size && !is_kind &&
            !token.is_any({"for", "to", "make", "makes", "use", "take", "the", "following", "ingredients"})) {
            return {};
        }
        has_size = has_size || is_size;
        is_named = is_named || is_kind;
    }
    return has_size && is_named ? text : std::string();
}

std::vector<std::string> batch_heads(std::string_view line) {
    std::vector<std::string> labels;
    if (line.size() > longest_head) {
        return labels;
    }
    for (const TableCell& cell : table_cells(line)) {
        if (!is_batch_label(cell.text) && !is_amount_alone(cell.text)) {
            return {};
        }
        labels.push_back(plain_line(cell.text));
    }
    return labels.size() < 2 ? std::vector<std::string>() : labels;
}

bool names_batch_in_brackets(std::string_view text) {
    const std::size_t begin = text.find('(');
    const std::size_t end = text.find(')', std::min(begin, text.size()));
    return begin != std::string_view::npos && begin > 0 && end != std::string_view::npos &&
           is_batch_label(text.substr(begin + 1, end - begin - 1));
}

bool TableHead::has_roles() const {
    return std::any_of(columns.begin(), columns.end(),
                       [](const TableColumn& column) { return !column.role.empty(); });
}

std::size_t TableHead::column_of(const TableCell& cell, std::size_t index) const {
    if (is_counted()) {
        return std::min(index, columns.size() - 1);
    }
    std::size_t widest = 0;
    std::size_t best = columns.size();
    for (std::size_t at = 0; at < columns.size(); ++at) {
        const std::size_t from = std::max(cell.begin, columns[at].begin);
        const std::size_t to = std::min(cell.end, columns[at].end);
        if (to > from && to - from > widest) {
            widest = to - from;
            best = at;
        }
    }
    if (best < columns.size()) {
        return best;
    }
    // between two heads: by the middle of the gap
    const std::size_t middle = (cell.begin + cell.end) / 2;
    for (std::size_t at = 0; at + 1 < columns.size(); ++at) {
        if (middle < (columns[at].end + columns[at + 1].begin) / 2) {
            return at;
        }
    }
    return columns.size() - 1;
}

} // namespace leavenwright
