#include "formula/read_process.hpp"

#include "diagnostic/suggestion.hpp"
#include "document/map_reader.hpp"
#include "quantity/number.hpp"
#include "quantity/units.hpp"
#include "source/unicode.hpp"

#include <algorithm>
#include <array>

namespace leavenwright {
namespace {

constexpr auto verbs = std::to_array<std::string_view>(
    {"autolyse", "mix", "knead", "fold", "bulk", "divide", "preshape", "rest", "shape", "proof", "retard",
     "temper", "score", "boil", "bake", "cool", "ripen", "soak", "scald"});

std::optional<std::string> read_verb(const Document& document, const Node& node, Diagnostics& diagnostics) {
    const std::string folded = fold_name(node.text);
    if (std::find(verbs.begin(), verbs.end(), folded) != verbs.end()) {
        return folded;
    }
    const std::string_view near = nearest_word(folded, verbs);
    diagnostics.error(Code::step_unknown, document.place(node), in_quotes(node.text) + " is not a step",
                      (near.empty() ? std::string() : "did you mean '" + std::string(near) + "'? ") +
                          "steps: " + listed(verbs));
    return std::nullopt;
}

void read_step_keys(const Document& document, const Node& map, Step& step, Diagnostics& diagnostics) {
    MapReader reader(document, map, "a step", diagnostics);
    if (const auto text = reader.take_amount("for")) {
        if (const auto time = read_duration(*text, diagnostics)) {
            step.time = Entered<DurationRange>{*time, on_one_line(text->text)};
        }
    }
    const auto read_point = [&](std::string_view key) -> std::optional<Entered<Temperature>> {
        const auto text = reader.take_amount(key);
        const auto temperature = text ? read_temperature(*text, diagnostics) : std::nullopt;
        if (!temperature) {
            return std::nullopt;
        }
        return Entered<Temperature>{*temperature, on_one_line(text->text)};
    };
    step.at = read_point("at");
    step.to = read_point("to");
    if (const auto text = reader.take_text("note")) {
        step.note = std::string(text->text);
    }
    reader.report_rest();
}

std::optional<Step> read_step(const Document& document, const Node& item, Diagnostics& diagnostics) {
    Step step;
    if (item.kind == Node::Kind::text) {
        const auto verb = read_verb(document, item, diagnostics);
        step.verb = verb.value_or("");
        return verb ? std::optional(step) : std::nullopt;
    }
    if (item.kind != Node::Kind::map || item.entries.size() != 1) {
        diagnostics.error(Code::value_not_a_map, document.place(item),
                          "a step is one word, with a map or a text behind its colon",
                          "write: - bulk: { for: 2 h, at: 24 C }");
        return std::nullopt;
    }
    const Node::Entry& entry = item.entries.front();
    const auto verb = read_verb(document, entry.key, diagnostics);
    step.verb = verb.value_or("");
    if (entry.value.kind == Node::Kind::text) {
        step.note = entry.value.text;
    } else if (entry.value.kind == Node::Kind::map) {
        read_step_keys(document, entry.value, step, diagnostics);
    } else if (entry.value.kind == Node::Kind::list) {
        diagnostics.error(Code::value_not_a_map, document.place(entry.key),
                          "a step has a map or a text behind its colon",
                          "write: - bulk: { for: 2 h, at: 24 C }");
    }
    return verb ? std::optional(step) : std::nullopt;
}

constexpr std::string_view yield_forms = "write 2 x 850 g, 1700 g or 12 rolls";

// The number of bytes of the mark between pieces and their weight that begins `text`: "x", "of"
// or the sign, with a number behind it.
std::size_t times_length(std::string_view text) {
    for (const std::string_view mark : {"x", "\xC3\x97", "X", "of ", "*"}) {
        if (!text.starts_with(mark)) {
            continue;
        }
        const std::size_t next = text.find_first_not_of(' ', mark.size());
        const bool has_number = next != std::string_view::npos && text[next] >= '0' && text[next] <= '9';
        return has_number ? mark.size() : 0;
    }
    return 0;
}

// What stands where pieces have their name, but is none: a unit, or a mark without a weight.
bool is_no_noun(std::string_view noun) {
    const std::string folded = fold_name(noun);
    const bool has_mark =
        folded == "x" || folded == "of" || folded.ends_with(" x") || folded.ends_with(" of");
    return has_mark || find_unit(folded) != nullptr ||
           noun.find_first_of("0123456789%") != std::string_view::npos;
}

} // namespace

std::vector<Step> read_process(const Document& document, const Node& key, const Node& node,
                               Diagnostics& diagnostics) {
    std::vector<Step> steps;
    if (node.kind != Node::Kind::list) {
        diagnostics.error(Code::value_not_a_list, document.place(key), "the process is a list of steps",
                          "begin each step with '- ' on a line of its own: - mix");
        return steps;
    }
    for (const Node& item : node.items) {
        if (auto step = read_step(document, item, diagnostics)) {
            steps.push_back(*std::move(step));
        }
    }
    return steps;
}

std::optional<Yield> read_yield(const SourcedText& untrimmed, Diagnostics& diagnostics) {
    const SourcedText place = trimmed(untrimmed);
    Yield yield{.text = std::string(place.text), .pieces = {}, .noun = {}, .dough = {}, .piece = {}};
    Diagnostics attempt;
    if (const auto weight = read_mass(place, attempt)) {
        yield.dough = *weight;
        return yield;
    }
    const auto number = read_number(place, diagnostics);
    if (!number) {
        return std::nullopt;
    }
    constexpr double most_pieces = 1e6;
    if (!(number->value > 0.0) || number->value > most_pieces) {
        diagnostics.error(Code::makes_unreadable, place, in_quotes(place.text) + " is no number of pieces",
                          std::string(yield_forms));
        return std::nullopt;
    }
    yield.pieces = number->value;
    SourcedText rest = trimmed(place.part(number->length, place.text.size()));
    std::size_t at = 0;
    while (at < rest.text.size() && times_length(rest.text.substr(at)) == 0) {
        const std::size_t space = rest.text.find(' ', at);
        at = space == std::string_view::npos ? rest.text.size() : space + 1;
    }
    yield.noun = std::string(trimmed(rest.part(0, at)).text);
    if (at < rest.text.size()) {
        const SourcedText before = trimmed(place.part(0, place.text.size() - (rest.text.size() - at)));
        const SourcedText behind = rest.part(at + times_length(rest.text.substr(at)), rest.text.size());
        Diagnostics aside;
        if (read_mass(before, aside)) {
            diagnostics.error(
                Code::makes_unreadable, place, "the weight of a piece stands before the number of pieces",
                "write " + std::string(trimmed(behind).text) + " x " + std::string(before.text));
            return std::nullopt;
        }
        const auto piece = read_mass(behind, diagnostics);
        if (!piece) {
            return std::nullopt;
        }
        yield.piece = *piece;
        yield.dough = *piece * number->value;
    }
    if (is_no_noun(yield.noun)) {
        diagnostics.error(Code::makes_unreadable, place,
                          "cannot tell what " + in_quotes(place.text) + " makes", std::string(yield_forms));
        return std::nullopt;
    }
    return yield;
}

} // namespace leavenwright
