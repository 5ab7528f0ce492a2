#include "convert/compare.hpp"
#include "document/document.hpp"
#include "exit_status.hpp"
#include "formula/read_formula.hpp"
#include "formula/usual_ranges.hpp"
#include "quantity/number.hpp"
#include "quantity/read_quantity.hpp"
#include "render/comparison.hpp"
#include "session.hpp"
#include "verbs/verbs.hpp"

namespace leavenwright {
namespace {

UsualRanges ranges_of(Session& session) {
    UsualRanges ranges;
    const auto read = [&](std::string_view option, UsualRange& range) {
        if (const auto text = session.option_text(option)) {
            range = read_usual_range(*text, session.diagnostics).value_or(range);
        }
    };
    read("--usual-salt", ranges.salt);
    read("--usual-hydration", ranges.hydration);
    read("--usual-prefermented", ranges.prefermented_flour);
    return ranges;
}

// The key of the list of ingredients: where findings about the whole dough are shown.
SourcedText list_place(const Document& document) {
    for (const Node::Entry& entry : document.root.entries) {
        if (entry.key.text == "dough" || entry.key.text == "overall") {
            return document.place(entry.key);
        }
    }
    return beginning_of(document.source);
}

int check_one(const Options& options) {
    Session session(options);
    const UsualRanges ranges = ranges_of(session);
    const SourceHandle source = session.read_formula_text(options.arguments.front());
    const auto document = source ? read_document(source, session.diagnostics) : std::nullopt;
    const auto formula =
        document ? read_formula(*document, session.pantry, session.diagnostics) : std::nullopt;
    if (!formula || session.diagnostics.has_errors()) {
        return session.finish();
    }
    warn_of_unusual(*formula, ranges, list_place(*document), session.diagnostics);
    const Overall overall = compute_overall(*formula);
    return session.deliver(session.format() == "json"
                               ? render_overall_json(*formula, overall, session.diagnostics)
                               : render_overall_text(*formula, overall, report_columns));
}

Mass tolerance_of(Session& session) {
    const Mass usual = grams(0.5); // what rounding to whole grams may do to a weight
    const auto text = session.option_text("--tolerance");
    if (!text) {
        return usual;
    }
    Diagnostics attempt;
    const auto number = read_number(*text, attempt);
    if (number && number->value == 0.0) { // exact to the last digit, whatever the unit
        return kilograms(0.0);
    }
    return read_mass(*text, session.diagnostics).value_or(usual);
}

int check_two(const Options& options) {
    Session session(options);
    const Mass tolerance = tolerance_of(session);
    const auto first = session.read_formula_file(options.arguments[0]);
    const auto second = session.read_formula_file(options.arguments[1]);
    if (!first || !second || session.diagnostics.has_errors()) {
        return session.finish();
    }
    const Comparison comparison = compare_formulas(*first, *second, tolerance, options.has("--any-size"));
    const int status =
        session.deliver(session.format() == "json" ? render_comparison_json(comparison)
                                                   : render_comparison_text(comparison, report_columns));
    return status == exit_done && !comparison.unchanged() ? exit_input_faulty : status;
}

} // namespace

int run_check(const Options& options) {
    return options.arguments.size() == 1 ? check_one(options) : check_two(options);
}

} // namespace leavenwright
