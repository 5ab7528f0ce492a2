// What the fuzzers and tests/unit/fuzz_findings_test.cpp do with any bytes: read them, and hold the
// library to what it promises. A promise that is broken is thrown.
#pragma once

#include "convert/convert.hpp"
#include "convert/request.hpp"
#include "diagnostic/render_diagnostic.hpp"
#include "document/document.hpp"
#include "ferment/temperature_profile.hpp"
#include "formula/overall.hpp"
#include "formula/read_formula.hpp"
#include "formula/write_formula.hpp"
#include "fuzz/formula_equality.hpp"
#include "quantity/number.hpp"
#include "quantity/read_quantity.hpp"
#include "source/unicode.hpp"
#include "transcribe/transcribe.hpp"

#include <cmath>
#include <memory>
#include <stdexcept>
#include <string>
#include <string_view>

namespace leavenwright::fuzzing {

struct BrokenPromise : std::logic_error {
    using std::logic_error::logic_error;
};

inline void promise(bool is_kept, const std::string& what) {
    if (!is_kept) {
        throw BrokenPromise(what);
    }
}

inline SourceHandle source_of(std::string_view bytes) {
    return std::make_shared<SourceText>("fuzz.yaml", std::string(bytes));
}

inline bool is_within(const SourceSpan& span, const SourceText& source) {
    return span.offset <= source.text().size() && span.length <= source.text().size() - span.offset;
}

/// Findings have a place inside their text, and can be shown. `is_clean` input gives clean advice.
inline void check_diagnostics(const Diagnostics& diagnostics, bool is_clean = true) {
    for (const Diagnostic& item : diagnostics.in_order()) {
        promise(!item.message.empty(), "a finding has a message");
        promise(!item.source || is_within(item.span, *item.source), "a finding stands inside its text");
        promise(!find_text_fault(item.message), "a message is printable text: " + item.message);
        promise(!is_clean || !find_text_fault(item.hint), "a hint is printable text: " + item.hint);
    }
    promise(render_diagnostics(diagnostics, {}).empty() == diagnostics.empty(), "findings are shown");
}

inline void check_node(const Node& node, const SourceText& source) {
    promise(is_within(node.span, source), "a node stands inside its text");
    promise(!find_text_fault(node.text), "a node holds printable text");
    // A block's place is that of its sign, whatever it says below.
    const std::string_view from = source.text().substr(node.span.offset);
    const bool is_block = from.starts_with('>') || from.starts_with('|');
    const bool is_verbatim =
        node.kind == Node::Kind::text && !node.is_quoted && !is_block && node.span.length == node.text.size();
    promise(!is_verbatim || source.text().substr(node.span.offset, node.span.length) == node.text,
            "a plain text is what stands at its place");
    for (const Node& item : node.items) {
        check_node(item, source);
    }
    for (const Node::Entry& entry : node.entries) {
        promise(entry.key.kind == Node::Kind::text, "a key is a text");
        promise(node.find(entry.key.text) == &entry.value, "a key stands once");
        check_node(entry.key, source);
        check_node(entry.value, source);
    }
}

/// Text that was quoted for YAML reads back as the same text, as a value, in a flow map and as a key.
inline void check_scalar(std::string_view text) {
    constexpr std::size_t longest_key = 500;
    const std::string scalar = yaml_scalar(text);
    const bool is_key = text.size() <= longest_key && text != "<<";
    const std::string file = "value: " + scalar + "\nflow: { value: " + scalar + " }\n" +
                             (is_key ? "map:\n  " + scalar + ": 1 g\n" : "");
    Diagnostics diagnostics;
    const auto document = read_document(source_of(file), diagnostics);
    promise(document.has_value(), "a written scalar is read: " + scalar);
    promise(document->root.find("value")->text == text, "a written scalar keeps its text: " + scalar);
    promise(document->root.find("flow")->entries.at(0).value.text == text,
            "a scalar in a flow map keeps its text: " + scalar);
    promise(!is_key || document->root.find("map")->entries.at(0).key.text == text,
            "a written key keeps its text: " + scalar);
}

inline void fuzz_document(std::string_view bytes) {
    Diagnostics diagnostics;
    const SourceHandle source = source_of(bytes);
    const auto document = read_document(source, diagnostics);
    const bool is_whole = document && !document->has_twice;
    promise(is_whole != diagnostics.has_errors(), "a document or an error");
    check_diagnostics(diagnostics);
    if (document) {
        promise(document->root.kind == Node::Kind::map, "the root is a map");
        check_node(document->root, *source);
    }
    if (!find_text_fault(bytes) && bytes.size() < largest_document_bytes / 4) {
        check_scalar(bytes);
    }
}

inline void check_masses(const std::vector<Line>& lines) {
    for (const Line& line : lines) {
        promise(std::isfinite(line.mass.value()), "the mass is a number: " + line.name);
        promise(line.mass.value() >= 0.0, "the mass is not negative: " + line.name);
    }
}

inline void check_formula(const Formula& formula) {
    check_masses(formula.dough);
    for (const Stage& stage : formula.stages) {
        check_masses(stage.lines);
        promise(stage.used.value() > 0.0 && stage.used <= stage.mass(),
                "no more is used of a stage than there is");
    }
    const Overall overall = compute_overall(formula);
    promise(overall.total_flour.value() > 0.0, "a formula has flour");
    promise(std::isfinite(overall.total.value()), "the sum is a number");
}

inline void check_round_trip(const Formula& formula, const Pantry& pantry) {
    const std::string written = write_formula(formula, "fuzz");
    Diagnostics diagnostics;
    const auto again = read_formula(source_of(written), pantry, diagnostics);
    promise(again.has_value(),
            "a written formula is read:\n" + written + "\n" + render_diagnostics(diagnostics, {}));
    const std::string difference = testing::first_difference(formula, *again);
    promise(difference.empty(),
            "writing and reading keeps everything; not so: " + difference + "\n" + written);
    promise(write_formula(*again, "fuzz") == written, "writing again gives the same bytes:\n" + written);
}

inline void fuzz_formula(std::string_view bytes) {
    const Pantry pantry;
    Diagnostics diagnostics;
    const auto formula = read_formula(source_of(bytes), pantry, diagnostics);
    promise(formula.has_value() != diagnostics.has_errors(), "a formula or an error");
    check_diagnostics(diagnostics);
    if (!formula) {
        return;
    }
    check_formula(*formula);
    check_round_trip(*formula, pantry);
    Diagnostics of_conversion;
    const auto conversion = convert(*formula, {}, of_conversion);
    promise(conversion.has_value() != of_conversion.has_errors(), "a conversion or an error");
    check_diagnostics(of_conversion);
    if (conversion) {
        check_formula(conversion->after);
        check_round_trip(conversion->after, pantry);
        const double flour_kg = conversion->overall_before.total_flour.value();
        const double difference_kg = conversion->overall_after.total_flour.value() - flour_kg;
        promise(std::abs(difference_kg) <= 1e-8 * flour_kg, "the flour is conserved");
    }
}

inline void check_amount(double value, double most) {
    promise(value > 0.0 && value <= most, "an amount is more than nothing and bounded");
}

/// Calls a reader and checks that it gives a value or an error.
template <class Reader>
auto read_or_error(Reader reader, const SourcedText& place) {
    Diagnostics diagnostics;
    auto value = reader(place, diagnostics);
    promise(value.has_value() != diagnostics.has_errors(), "a value or an error");
    check_diagnostics(diagnostics, !find_text_fault(place.text));
    return value;
}

inline void fuzz_quantity(std::string_view bytes) {
    constexpr double most_kg = 1e6 * (1.0 + 1e-9);
    constexpr double most_m3 = 1e3 * (1.0 + 1e-9);
    constexpr double most_s = 1000.0 * 86400.0;
    const SourceHandle source = source_of(bytes);
    const SourcedText place{.source = source, .span = {0, bytes.size()}, .text = source->text()};
    if (const auto amount = read_or_error(read_amount, place)) {
        if (const auto* mass = std::get_if<Mass>(&*amount)) {
            check_amount(mass->value(), most_kg);
        } else if (const auto* volume = std::get_if<Volume>(&*amount)) {
            check_amount(volume->value(), most_m3);
        } else if (const auto* count = std::get_if<Count>(&*amount)) {
            check_amount(count->number, 1e6);
        } else {
            check_amount(std::get<WrittenPercentage>(*amount).value(), 1e4 * (1.0 + 1e-9));
        }
    }
    if (const auto mass = read_or_error(read_mass, place)) {
        check_amount(mass->value(), most_kg);
    }
    if (const auto percentage = read_or_error(read_percentage, place)) {
        check_amount(percentage->value(), 1e4 * (1.0 + 1e-9));
    }
    if (const auto range = read_or_error(read_duration, place)) {
        check_amount(range->least.value(), most_s);
        check_amount(range->most.value(), most_s);
        promise(range->least <= range->most, "a range begins before it ends");
    }
    if (const auto temperature = read_or_error(read_temperature, place)) {
        promise(*temperature >= coldest_temperature() && *temperature <= hottest_temperature(),
                "a temperature is in bounds");
    }
    if (const auto difference = read_or_error(read_temperature_difference, place)) {
        promise(std::abs(difference->value()) <= 50.0, "a difference is in bounds");
    }
    if (const auto profile = read_or_error(read_profile, place)) {
        promise(profile->length() <= longest_profile(), "a profile is in bounds");
        for (const TemperatureProfile::Leg& leg : profile->legs()) {
            check_amount(leg.time.value(), longest_profile().value());
            promise(leg.at >= coldest_place() && leg.at <= hottest_place(), "a place is in bounds");
        }
    }
    if (const auto number = read_or_error(read_number, place)) {
        promise(number->length > 0 && number->length <= bytes.size(), "a number has a length");
        promise(std::isfinite(number->value) && number->value >= 0.0, "a number is finite and has no sign");
        promise(!(number->scaled(-3) < 0.0), "a scaled number has no sign");
        if (number->value > 0.0) {
            const std::string text = exact_decimal(number->value, 0);
            promise(std::stod(text) == number->value || number->value < 1e-300,
                    "the shortest decimal reads back: " + text);
        }
    }
    const Pantry pantry;
    Diagnostics of_flour;
    std::vector<std::string> remarks;
    read_levain_flour(place, pantry, of_flour, remarks);
    check_diagnostics(of_flour, !find_text_fault(bytes));
    Diagnostics of_list;
    read_ingredient_list(place, pantry, of_list);
    check_diagnostics(of_list, !find_text_fault(bytes));
}

inline void check_transcribed(const IngredientLine& line) {
    promise(!find_text_fault(line.key), "a name is printable text");
    promise(!line.weight || (line.weight->likely.value() > 0.0 && line.weight->likely <= largest_amount()),
            "a weight is more than nothing and bounded: " + line.text);
    promise(!line.weight || (line.weight->least <= line.weight->likely * (1.0 + 1e-9) &&
                             line.weight->likely <= line.weight->most * (1.0 + 1e-9)),
            "a weight is within its range: " + line.text);
}

/// Any text is transcribed or refused; the formula is read, or lacks what a warning said that it lacks.
inline void fuzz_transcribe(std::string_view bytes) {
    const Pantry pantry;
    Diagnostics diagnostics;
    const auto source = std::make_shared<SourceText>("fuzz.txt", std::string(bytes));
    is_recipe_text(*source, pantry);
    const auto transcription = transcribe(source, pantry, diagnostics);
    promise(transcription.has_value() != diagnostics.has_errors(), "a transcription or an error");
    check_diagnostics(diagnostics, !find_text_fault(bytes));
    if (!transcription) {
        return;
    }
    for (const IngredientLine& line : transcription->lines) {
        check_transcribed(line);
    }
    Diagnostics of_formula;
    const auto document = read_document(source_of(transcription->formula), of_formula);
    const bool is_plain = (document && !document->has_twice) || !of_formula.has_errors();
    promise(is_plain,
            "a written formula is YAML:\n" + transcription->formula + render_diagnostics(of_formula, {}));
    Diagnostics of_reading;
    const auto formula = read_formula(source_of(transcription->formula), pantry, of_reading);
    promise(formula.has_value() != of_reading.has_errors(), "a formula or an error");
}

} // namespace leavenwright::fuzzing
