#include "quantity/show.hpp"
#include "render/scaled.hpp"
#include "source/unicode.hpp"
#include "source/wrap_text.hpp"

#include <fmt/core.h>

namespace leavenwright {

std::string render_scaled_text(const ScaledFormula& scaled, const TextStyle& style) {
    std::string out = wrap_text(printable(scaled.formula.name, 400), "", "  ", style.columns);
    if (scaled.formula.makes) {
        out += "makes " + printable(scaled.formula.makes->text, 70) + "\n";
    }
    out += fmt::format("every amount x {}\n", show_decimal(scaled.factor, 5));
    const WeighOut weigh_out = render_weigh_out(scaled.formula, style);
    out += weigh_out.tables + "\n" + weigh_out.as_weighed;
    if (!scaled.notes.empty()) {
        out += "\nnotes\n";
    }
    for (const std::string& note : scaled.notes) {
        out += wrap_text(printable(note, 2000), "- ", "  ", style.columns);
    }
    return out;
}

} // namespace leavenwright
