#include "quantity/show.hpp"
#include "render/text_table.hpp"
#include "render/windows.hpp"
#include "source/unicode.hpp"
#include "source/wrap_text.hpp"

#include <fmt/core.h>

#include <algorithm>
#include <array>
#include <cmath>

namespace leavenwright {
namespace {

std::string hours_shown(Duration time) {
    if (!is_reached(time)) {
        return "never";
    }
    const long minutes = std::lround(time.value() / 300.0) * 5; // no window is good to a minute
    return fmt::format("{}:{:02}", minutes / 60, minutes % 60);
}

std::string window_shown(const Window& window) {
    return fmt::format("{:>6} {:>6} {:>6}", hours_shown(window.earliest), hours_shown(window.likely),
                       hours_shown(window.latest));
}

// Rise against time in characters: the likely curve in o, the band between 10 and 90 % in dots,
// the dough's warmth as a line of figures below.
class CurveChart {
public:
    CurveChart(const std::vector<CurvePoint>& curve, UnitSystem units) : curve_(curve), units_(units) {
        for (const CurvePoint& point : curve) {
            highest_ = std::max(highest_, point.rise_high.value());
        }
        highest_ = std::ceil(highest_ * 4.0) / 4.0;
    }

    std::string text() const {
        std::string out = "  rise over the mixed dough: o likely, . between 10 and 90 %\n";
        for (int row = rows; row >= 0; --row) {
            const bool is_labelled = row % 2 == 0;
            out += is_labelled ? fmt::format("  {:>4.0f} % |", highest_ * row / rows * 100.0) : "         |";
            std::string line;
            for (int column = 0; column < columns; ++column) {
                line += mark(row, column);
            }
            out += line.substr(0, line.find_last_not_of(' ') + 1) + "\n";
        }
        out += "         +" + std::string(columns, '-') + "\n";
        out += axis("    hours",
                    [](const CurvePoint& point) { return fmt::format("{:.1f}", in_hours(point.time)); });
        out += axis(units_ == UnitSystem::us ? "  dough F" : "  dough C", [this](const CurvePoint& point) {
            return fmt::format("{:.1f}", units_ == UnitSystem::us ? point.dough.in_fahrenheit()
                                                                  : point.dough.in_celsius());
        });
        out += axis("       pH", [](const CurvePoint& point) { return fmt::format("{:.1f}", point.ph); });
        return out;
    }

private:
    static constexpr int rows = 10;
    static constexpr int columns = 66;

    const CurvePoint& at(int column) const {
        const double share = static_cast<double>(column) / (columns - 1);
        return curve_[static_cast<std::size_t>(std::lround(share * static_cast<double>(curve_.size() - 1)))];
    }
    int row_of(Fraction rise) const { return static_cast<int>(std::lround(rise.value() / highest_ * rows)); }

    char mark(int row, int column) const {
        const CurvePoint& point = at(column);
        if (row == row_of(point.rise_likely)) {
            return 'o';
        }
        return row >= row_of(point.rise_low) && row <= row_of(point.rise_high) ? '.' : ' ';
    }

    template <class Show>
    std::string axis(std::string_view label, Show show) const {
        std::string line = fmt::format("{:<10}", label);
        for (int column = 0; column + 4 < columns; column += 11) {
            line += fmt::format("{:<11}", show(at(column)));
        }
        return line.substr(0, line.find_last_not_of(' ') + 1) + "\n";
    }

    const std::vector<CurvePoint>& curve_;
    UnitSystem units_;
    double highest_ = 0.25;
};

void append_list(std::string& out, std::string_view heading, const std::vector<std::string>& items,
                 std::size_t columns) {
    if (items.empty()) {
        return;
    }
    out += "\n" + std::string(heading) + "\n";
    for (const std::string& item : items) {
        out += wrap_text(item, "- ", "  ", columns);
    }
}

std::string members_line(int members, std::uint64_t seed) {
    return fmt::format("from {} cultures that differ as published ones do (draw {}): 10 % are ready by the "
                       "early time, half by the likely, 90 % by the late",
                       members, seed);
}

std::string windows_table(const Windows& windows, const TextStyle& style) {
    const bool has_written = std::any_of(windows.stages.begin(), windows.stages.end(),
                                         [](const StageWindow& stage) { return !stage.written.empty(); });
    std::string out = "                           in the stage          after mixing\n"
                      "  stage   place   dough  early likely   late   early likely   late";
    out += has_written ? " written\n" : "\n";
    for (const StageWindow& stage : windows.stages) {
        const std::string in_stage = stage.by_clock
                                         ? fmt::format("{:>13} {:>6}", hours_shown(stage.in_stage.likely), "")
                                         : window_shown(stage.in_stage);
        std::string line =
            fmt::format("  {:<7}{:>7} {:>7} {} {:>7} {:>6} {:>6} {}", stage.stage,
                        show_temperature(stage.surroundings, style.scale.units),
                        show_temperature(stage.dough, style.scale.units), in_stage,
                        hours_shown(stage.after_mixing.earliest), hours_shown(stage.after_mixing.likely),
                        hours_shown(stage.after_mixing.latest), printable(stage.written, 12));
        out += line.substr(0, line.find_last_not_of(' ') + 1) + "\n";
    }
    return out;
}

std::string rising_tables(const Windows& windows, const Windows* as_written, const TextStyle& style) {
    std::string out = "\nwhen it is ready (hours:minutes)\n" + windows_table(windows, style);
    if (as_written != nullptr) {
        out += "\nthe dough as written, with packaged yeast, by the same reckoning\n" +
               windows_table(*as_written, style);
    }
    return out;
}

} // namespace

std::string render_rising_text(const Windows& windows, const Windows* as_written, const TextStyle& style) {
    std::string out = rising_tables(windows, as_written, style);
    for (const std::string& caution : windows.cautions) {
        out += wrap_text(caution, "- ", "  ", style.columns);
    }
    return out + wrap_text("settings, signs and curves: leavenwright proof", "", "  ", style.columns);
}

std::string render_proof_text(const ProofReport& report, const TextStyle& style) {
    std::string out = wrap_text(printable(report.name, 400), "", "  ", style.columns);
    out += wrap_text("raised by " + report.raised_by, "", "  ", style.columns);
    if (report.answer) {
        out += "\n" + wrap_text(report.answer->sentence, "", "", style.columns);
    }
    out += rising_tables(report.windows, report.as_written ? &*report.as_written : nullptr, style);
    out += "\n" + wrap_text(members_line(report.windows.members, report.windows.seed), "", "", style.columns);
    out += "\nwhat to look for\n";
    for (const StageWindow& stage : report.windows.stages) {
        if (!stage.signs.empty()) { // the clock ends the others
            out += wrap_text(fmt::format("{}: {}; past it, {}", stage.stage, stage.signs, stage.past), "- ",
                             "  ", style.columns);
        }
    }
    out += "\n" + CurveChart(report.windows.curve, style.scale.units).text();
    append_list(out, "settings", report.windows.settings, style.columns);
    std::vector<std::string> cautions = report.windows.cautions;
    cautions.push_back("Raw flour and raw dough are not for eating. A culture with mould, or with pink or "
                       "orange streaks, is "
                       "thrown away whole.");
    append_list(out, "cautions", cautions, style.columns);
    return out;
}

namespace {

// "9:40 early, 13:00 likely, 17:05 late"
std::string window_in_words(const Window& window) {
    const auto shown = [](Duration time) {
        return is_reached(time) ? hours_shown(time) : std::string("over a week");
    };
    return fmt::format("{} early, {} likely, {} late", shown(window.earliest), shown(window.likely),
                       shown(window.latest));
}

} // namespace

std::string render_ripening_text(const LevainBuild& build, const Ripening& ripening, const Window& sour,
                                 const TextStyle& style) {
    std::string out = fmt::format("levain of {} seed on fresh flour, {} hydration, at {}{}\n",
                                  show_percent(build.seed.value()), show_percent(build.hydration.value()),
                                  show_temperature(build.place.at(seconds(0.0)), style.scale.units),
                                  build.place.legs().empty() ? "" : " to begin with");
    const Window& ripe = ripening.ripe.in_stage;
    if (!is_reached(ripe.likely)) {
        out += "\n  not likely to be ripe within a week\n";
    } else {
        out += fmt::format("\n  ripe after   {} (hours:minutes)\n", window_in_words(ripe));
        out += is_reached(ripening.ripe_for)
                   ? fmt::format("  stays ripe   about {} from then\n", hours_shown(ripening.ripe_for))
                   : std::string("  stays ripe   longer than a week\n");
        if (is_reached(sour.likely)) {
            out += fmt::format("  as a sour    after {}, for its acid\n", window_in_words(sour));
        }
        out += fmt::format("  the levain   is at {} when it is ripe\n",
                           show_temperature(ripening.ripe.dough, style.scale.units));
    }
    out += "\n";
    out += wrap_text(members_line(ripening.members, ripening.seed), "", "", style.columns);
    out += "\n" + wrap_text("look for: " + ripening.ripe.signs, "", "  ", style.columns);
    out += wrap_text("past it: " + ripening.ripe.past, "", "  ", style.columns);
    out += "\n" + CurveChart(ripening.curve, style.scale.units).text();
    out += "\n" + wrap_text("Do not close the jar tight: the gas has to get out. Mould, or pink or orange "
                            "streaks: discard all of it.",
                            "", "", style.columns);
    return out;
}

std::string render_curve_csv(const std::vector<CurvePoint>& curve) {
    std::string out =
        "time_h,rise_low,rise_likely,rise_high,ph,acid_mmol_per_kg,gas_dissolved,surroundings_c,dough_c\n";
    for (const CurvePoint& point : curve) {
        out += fmt::format("{:.4f},{:.4f},{:.4f},{:.4f},{:.3f},{:.2f},{:.4f},{:.2f},{:.2f}\n",
                           in_hours(point.time), point.rise_low.value(), point.rise_likely.value(),
                           point.rise_high.value(), point.ph, point.acid_mmol_per_kg,
                           point.gas_dissolved.value(), point.surroundings.in_celsius(),
                           point.dough.in_celsius());
    }
    return out;
}

} // namespace leavenwright
