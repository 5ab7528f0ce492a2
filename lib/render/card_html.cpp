// Mustache escapes all that comes from a formula; the one text that goes in as it is, the style, is
// our own.
#include "quantity/show.hpp"
#include "render/card.hpp"
#include "render/card_page.hpp"
#include "render/curve_chart.hpp"
#include "render/curve_rows.hpp"

#include <kainjow/mustache.hpp>

#include <stdexcept>

namespace leavenwright {
namespace {

namespace mustache = kainjow::mustache;
using mustache::data;

// Nothing may be fetched, run or sent, whatever got into the file.
constexpr std::string_view content_policy =
    "default-src 'none'; style-src 'unsafe-inline'; base-uri 'none'; form-action 'none'";

constexpr double chart_width = 380.0;
constexpr double chart_height = 250.0;

// Mustache writes nothing for a name that is not there; here it is a fault of ours.
class CheckedContext : public mustache::context<std::string> {
public:
    using context::context;
    const data* get(const std::string& name) const override {
        const data* found = context::get(name);
        if (found == nullptr) {
            throw std::logic_error("the template of the card names '" + name + "', which no card has");
        }
        return found;
    }
};

data flag(bool value) {
    return data(value ? data::type::bool_true : data::type::bool_false);
}

data texts_of(const std::vector<std::string>& texts) {
    data list(data::type::list);
    for (const std::string& text : texts) {
        list.push_back(data("text", text));
    }
    return list;
}

data row_of(const CardRow& row) {
    data item;
    item.set("name", row.name);
    item.set("weight", row.weight);
    item.set("percent", row.percent);
    return item;
}

data columns_of(const Card& card) {
    data list(data::type::list);
    for (const CardColumn& column : card.columns) {
        data rows(data::type::list);
        for (const CardRow& row : column.rows) {
            rows.push_back(row_of(row));
        }
        data sums(data::type::list);
        sums.push_back(row_of(column.total));
        for (const CardRow& row : column.below) {
            sums.push_back(row_of(row));
        }
        data item;
        item.set("name", column.name);
        item.set("has_when", flag(!column.when.empty()));
        item.set("when", column.when);
        item.set("rows", rows);
        item.set("sums", sums);
        list.push_back(item);
    }
    return list;
}

data facts_of(const Card& card) {
    data list(data::type::list);
    const auto add = [&](const std::string& name, const std::string& text) {
        if (!text.empty()) {
            data item;
            item.set("has_name", flag(!name.empty()));
            item.set("name", name);
            item.set("text", text);
            list.push_back(item);
        }
    };
    add("makes", card.makes);
    add("mixed on", card.date);
    add("water for the mix", card.water_temperature);
    add("", card.levain);
    return list;
}

data steps_of(const Card& card) {
    data list(data::type::list);
    for (const CardStep& step : card.steps) {
        data item;
        item.set("name", step.name);
        item.set("has_clock", flag(!step.clock.empty()));
        item.set("clock", step.clock);
        item.set("detail", step.detail);
        list.push_back(item);
    }
    return list;
}

data windows_of(const Card& card) {
    data list(data::type::list);
    for (const CardWindow& window : card.windows) {
        data item;
        item.set("name", window.name);
        item.set("likely", window.likely);
        item.set("has_range", flag(!window.range.empty()));
        item.set("range", window.range);
        item.set("lines", texts_of(window.lines()));
        list.push_back(item);
    }
    return list;
}

std::string coordinate(double value) {
    return show_decimal(value, 1);
}

std::string path_of(const std::vector<ChartPoint>& points, bool is_closed) {
    std::string path;
    for (const ChartPoint& point : points) {
        path += (path.empty() ? "M" : "L") + coordinate(point.x) + " " + coordinate(point.y);
    }
    return path + (is_closed ? "Z" : "");
}

data lines_of(const CurveChart& chart) {
    data list(data::type::list);
    const auto add = [&](const std::string& style, const std::vector<ChartPoint>& points, bool is_closed) {
        data item;
        item.set("style", style);
        item.set("path", path_of(points, is_closed));
        list.push_back(item);
    };
    add("band", chart.band, true);
    add("likely", chart.likely, false);
    add("dough", chart.dough, false);
    add("surroundings", chart.surroundings, false);
    for (const ChartLine& axis : chart.axes) {
        add("axis", {axis.from, axis.to}, false);
    }
    return list;
}

data labels_of(const CurveChart& chart) {
    constexpr std::string_view anchors[] = {"start", "middle", "end"};
    data list(data::type::list);
    for (const ChartLabel& label : chart.labels) {
        data item;
        item.set("x", coordinate(label.at.x));
        item.set("y", coordinate(label.at.y));
        item.set("anchor", std::string(anchors[static_cast<std::size_t>(label.anchor)]));
        item.set("text", label.text);
        list.push_back(item);
    }
    return list;
}

void set_curve(data& item, const Card& card) {
    const CurveChart chart = draw_curve(card, chart_width, chart_height);
    data grid(data::type::list);
    for (const ChartLine& line : chart.grid) {
        grid.push_back(data("path", path_of({line.from, line.to}, false)));
    }
    data rows(data::type::list);
    for (const CurveRow& row : curve_rows(card)) {
        data cells;
        cells.set("time", row.time);
        cells.set("rise", row.rise);
        cells.set("low", row.low);
        cells.set("high", row.high);
        cells.set("dough", row.dough);
        cells.set("surroundings", row.surroundings);
        rows.push_back(cells);
    }
    item.set("has_curve", flag(!card.curve.empty()));
    item.set("chart_width", coordinate(chart_width));
    item.set("chart_height", coordinate(chart_height));
    item.set("grid", grid);
    item.set("lines", lines_of(chart));
    item.set("labels", labels_of(chart));
    item.set("curve_rows", rows);
    item.set("settings", texts_of(card.settings));
}

data table_of(const std::string& heading, const std::vector<CardFigure>& figures,
              const std::vector<std::string>& reasons) {
    data list(data::type::list);
    for (const CardFigure& figure : figures) {
        data item;
        item.set("name", figure.name);
        item.set("before", figure.before);
        item.set("after", figure.after);
        item.set("difference", figure.difference);
        list.push_back(item);
    }
    data table;
    table.set("heading", heading);
    table.set("is_compared", flag(!figures.empty() && !figures.front().before.empty()));
    table.set("figures", list);
    table.set("reasons", texts_of(reasons));
    return table;
}

data tables_of(const Card& card) {
    data list(data::type::list);
    if (!card.side_by_side.empty()) {
        list.push_back(table_of("Side by side", card.side_by_side, {}));
    }
    list.push_back(table_of("Balance", card.balance, card.reasons));
    return list;
}

data allergens_of(const Card& card) {
    data list(data::type::list);
    const auto add = [&](std::string_view name, const std::vector<std::string>& allergens) {
        data item;
        item.set("list", std::string(name));
        item.set("names", joined_allergens(allergens));
        list.push_back(item);
    };
    add(eu_allergen_list, card.eu_allergens);
    add(us_allergen_list, card.us_allergens);
    return list;
}

data card_of(const Card& card) {
    data item;
    item.set("title", card.title);
    item.set("facts", facts_of(card));
    item.set("columns", columns_of(card));
    item.set("as_weighed", card.as_weighed);
    item.set("has_steps", flag(!card.steps.empty()));
    item.set("steps", steps_of(card));
    item.set("has_windows", flag(!card.windows.empty()));
    item.set("windows", windows_of(card));
    set_curve(item, card);
    item.set("has_notes", flag(!card.notes.empty()));
    item.set("notes", texts_of(card.notes));
    item.set("tables", tables_of(card));
    item.set("allergens", allergens_of(card));
    item.set("cautions", texts_of(card.cautions));
    item.set("version", card.version);
    return item;
}

} // namespace

std::string render_cards_html(std::span<const Card> cards, Paper paper) {
    data list(data::type::list);
    for (const Card& card : cards) {
        list.push_back(card_of(card));
    }
    data page;
    page.set("policy", std::string(content_policy));
    page.set("style", std::string(card_style()));
    page.set("paper", paper == Paper::letter ? "letter" : "A4");
    page.set("document_title",
             cards.size() == 1 ? cards.front().title : std::to_string(cards.size()) + " bake cards");
    page.set("cards", list);
    mustache::mustache page_template{std::string(card_template())};
    CheckedContext context(&page);
    std::string html = page_template.render(context);
    if (!page_template.is_valid()) {
        throw std::logic_error("the template of the card: " + page_template.error_message());
    }
    return html;
}

} // namespace leavenwright
