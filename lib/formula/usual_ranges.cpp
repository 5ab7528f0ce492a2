#include "formula/usual_ranges.hpp"

#include "formula/overall.hpp"
#include "quantity/number.hpp"
#include "quantity/read_quantity.hpp"
#include "quantity/show.hpp"

namespace leavenwright {
namespace {

// Ratios come from sums of doubles; the ends of a range belong to it.
constexpr double hair = 1e-9;

bool is_within(double value, UsualRange range) {
    return value >= range.least - hair && value <= range.most + hair;
}

std::string range_text(UsualRange range) {
    return show_decimal(range.least * 100.0, 2) + " to " + show_percent(range.most);
}

// Flour and water of a stage without its culture.
Overall own_contents(const Stage& stage) {
    std::vector<Line> lines;
    for (const Line& line : stage.lines) {
        if (!line.ingredient->is_culture()) {
            lines.push_back(line);
        }
    }
    return add_up(lines, {});
}

// "1%", "1" before a percentage, or nothing at all.
std::optional<WrittenPercentage> read_least(const SourcedText& text, Diagnostics& diagnostics) {
    Diagnostics attempt;
    const auto number = read_number(text, attempt);
    const bool is_bare = number && number->length == text.text.size();
    if (number && (is_bare || number->value == 0.0)) {
        return WrittenPercentage(number->scaled(-2));
    }
    return read_percentage(text, diagnostics);
}

} // namespace

std::optional<UsualRange> read_usual_range(const SourcedText& text, Diagnostics& diagnostics) {
    constexpr std::string_view mark = " to ";
    const std::size_t at = text.text.find(mark);
    if (at == std::string_view::npos) {
        diagnostics.error(Code::number_unreadable, text, in_quotes(text.text) + " is no range",
                          "write two percentages: 1% to 3%");
        return std::nullopt;
    }
    const auto most = read_percentage(text.part(at + mark.size(), text.text.size()), diagnostics);
    const auto least = read_least(trimmed(text.part(0, at)), diagnostics);
    if (!least || !most) {
        return std::nullopt;
    }
    if (*least > *most) {
        diagnostics.error(Code::unit_unfit, text, in_quotes(text.text) + " ends before it begins",
                          "put the smaller one first");
        return std::nullopt;
    }
    return UsualRange{least->value(), most->value()};
}

void warn_of_unusual(const Formula& formula, const UsualRanges& ranges, const SourcedText& place,
                     Diagnostics& diagnostics) {
    const std::string source = " (common practice; textbooks, from memory)";
    const auto warn = [&](Code code, const std::string& what, double value, UsualRange range,
                          std::string_view option) {
        if (!is_within(value, range)) {
            diagnostics.warning(
                code, place, what + " is " + show_percent(value) + "; usual is " + range_text(range) + source,
                "check the amounts; if it is meant, " + std::string(option));
        }
    };
    const Overall overall = compute_overall(formula);
    warn(Code::salt_unusual, "salt", overall.percentage(overall.salt).value(), ranges.salt,
         "set the range with --usual-salt");
    warn(Code::hydration_unusual, "hydration in true water", overall.hydration_true().value(),
         ranges.hydration, "set the range with --usual-hydration");
    Mass prefermented = kilograms(0.0);
    for (const Stage& stage : formula.stages) {
        if (!is_preferment(stage.kind)) {
            continue;
        }
        prefermented += add_up(contents_of(stage, *formula.pantry), {}).total_flour;
        const Overall own = own_contents(stage);
        if (stage.kind == StageKind::levain) {
            warn(Code::levain_hydration_unusual, "the hydration of " + in_quotes(stage.name),
                 own.hydration_true().value(), ranges.levain_hydration, "leave it so");
        }
    }
    if (prefermented.value() > 0.0) {
        warn(Code::prefermented_unusual, "prefermented flour", overall.percentage(prefermented).value(),
             ranges.prefermented_flour, "set the range with --usual-prefermented");
    }
}

} // namespace leavenwright
