#include "formula/read_lines.hpp"

#include "diagnostic/suggestion.hpp"
#include "document/map_reader.hpp"
#include "pantry/resolve_ingredient.hpp"
#include "source/unicode.hpp"

#include <algorithm>
#include <array>
#include <iterator>
#include <span>
#include <vector>

namespace leavenwright {
namespace {

constexpr std::string_view levain_example =
    "take this line out and describe it as a stage, which the dough takes whole: preferments: { levain: { "
    "bread flour: 100 g, water: 100 g } }; a culture within it is written culture: 10 g";

constexpr auto unit_words = std::to_array<std::string_view>(
    {"g", "kg", "mg", "oz", "lb", "ml", "l", "tsp", "tbsp", "cup", "fl oz", "pint", "quart"});

SourcedText place_of_word(const WrittenLine& line, const Count& count) {
    const auto at = static_cast<std::size_t>(count.word.data() - line.place.text.data());
    return line.place.part(at, count.word.size());
}

// The number of a national type: "65" of "farine T65", "00" of "tipo 00".
std::string type_of(std::string_view name) {
    std::string digits;
    std::copy_if(name.begin(), name.end(), std::back_inserter(digits),
                 [](char byte) { return byte >= '0' && byte <= '9'; });
    return digits;
}

// "T65" is "farine T65": names of one type with one reason are spellings of it.
std::vector<std::string_view> spellings_of(const NearestName& name, const Ingredient& ingredient) {
    std::vector<std::string_view> spellings;
    const std::string type = type_of(name.name);
    for (const NearestName& other : ingredient.nearest_for) {
        if (!type.empty() && other.why == name.why && type_of(other.name) == type) {
            spellings.push_back(other.name);
        }
    }
    return spellings;
}

} // namespace

const Ingredient* LineReader::resolve(const SourcedText& name) {
    const Ingredient* ingredient = resolve_ingredient(name, pantry_, diagnostics_, remarks_);
    const PantryMatch match = pantry_.find(name.text);
    if (ingredient == nullptr || match.nearest == nullptr) {
        return ingredient;
    }
    auto shelf = std::make_shared<PantryShelf>();
    Ingredient own = *ingredient;
    own.name = shelf->keep(std::string(name.text));
    own.stand_in = match.nearest->why;
    own.also = own.is_flour() ? shelf->keep(spellings_of(*match.nearest, *ingredient))
                              : std::span<const std::string_view>();
    own.nearest_for = {};
    const Ingredient& kept = shelf->keep(own);
    pantry_.add(std::move(shelf));
    return &kept;
}

std::optional<WrittenLine> LineReader::read(const Node::Entry& entry, const WrittenStage* stage) {
    const SourcedText name = document_.place(entry.key);
    const auto text = amount_of(document_, entry.key, entry.value, diagnostics_);
    WrittenLine line{.name = entry.key.text,
                     .ingredient = nullptr,
                     .place = {},
                     .is_percentage = false,
                     .ratio = 0.0,
                     .mass = {},
                     .uncertainty = {}};
    const bool is_own = pantry_.find(name.text).ingredient != nullptr;
    if (!is_own && is_culture_name(name.text)) {
        if (stage == nullptr || stage->kind != StageKind::levain) {
            diagnostics_.error(Code::culture_outside_levain, name,
                               in_quotes(name.text) +
                                   " is a levain or its seed; its flour and water are not known here",
                               std::string(levain_example));
        } else {
            line.ingredient = &culture_ingredient();
        }
    } else {
        line.ingredient = resolve(name);
    }
    const bool is_soaked = stage != nullptr && !is_preferment(stage->kind);
    if (line.ingredient != nullptr && line.ingredient->is_yeast() && is_soaked) {
        diagnostics_.error(Code::soaker_with_yeast, name,
                           in_quotes(stage->name) + " has yeast in it, so it is no soaker",
                           "move the stage to 'preferments:', or the yeast to the dough");
    }
    const auto amount = text ? read_amount(*text, diagnostics_) : std::nullopt;
    if (!amount) {
        return std::nullopt;
    }
    line.place = *text;
    if (line.ingredient == nullptr) {
        report_count(line, *amount);
        return std::nullopt;
    }
    if (const auto* percentage = std::get_if<WrittenPercentage>(&*amount)) {
        line.is_percentage = true;
        line.ratio = percentage->value();
    } else if (!weigh(*amount, line) || !check_weight(line)) {
        return std::nullopt;
    }
    return line;
}

bool LineReader::weigh(const Amount& amount, WrittenLine& line) {
    const Ingredient& ingredient = *line.ingredient;
    if (const auto* mass = std::get_if<Mass>(&amount)) {
        line.mass = *mass;
        return true;
    }
    if (const auto* volume = std::get_if<Volume>(&amount)) {
        const auto mass = mass_of_volume(ingredient, *volume);
        if (!mass) {
            diagnostics_.error(Code::measure_missing, line.place,
                               "the pantry does not know what a volume of " + in_quotes(line.name) +
                                   " weighs",
                               "weigh it once and write grams");
            return false;
        }
        line.mass = *mass;
        line.uncertainty = ingredient.volume_uncertainty;
        return true;
    }
    const auto& count = std::get<Count>(amount);
    const auto piece = mass_of_piece(ingredient, count.word);
    if (!piece) {
        report_piece(line, count);
        return false;
    }
    line.mass = *piece * count.number;
    line.uncertainty = piece_uncertainty;
    line.piece = *piece;
    return true;
}

// A volume or a piece may weigh anything in a pantry of the user's own.
bool LineReader::check_weight(const WrittenLine& line) {
    if (line.mass.value() > 0.0 && line.mass <= largest_amount()) {
        return true;
    }
    diagnostics_.error(Code::amount_too_large, line.place,
                       in_quotes(line.place.text) + " of " + in_quotes(line.name) +
                           " has no weight that makes sense",
                       "check the amount, and the weights in the pantry");
    return false;
}

// Of a name that is not known: what can be said of its amount nevertheless.
void LineReader::report_count(const WrittenLine& line, const Amount& amount) {
    const auto* count = std::get_if<Count>(&amount);
    if (count == nullptr || count->word.empty()) { // "egss: 2" may be counted
        return;
    }
    if (const std::string_view near = nearest_word(fold_name(count->word), unit_words); !near.empty()) {
        diagnostics_.error(Code::unit_unknown, place_of_word(line, *count),
                           "unknown unit " + in_quotes(count->word),
                           "did you mean '" + std::string(near) + "'?");
    }
}

void LineReader::report_unit_missing(const SourcedText& place, std::span<const std::string_view> pieces) {
    diagnostics_.error(Code::unit_missing, place, in_quotes(place.text) + " of what? a unit is missing",
                       "write the unit behind it: " + std::string(place.text) + " g" +
                           (pieces.empty() ? "" : ", or a piece: " + listed(pieces)));
}

void LineReader::report_piece(const WrittenLine& line, const Count& count) {
    std::vector<std::string_view> words;
    for (const PieceWeight& piece : line.ingredient->pieces) {
        words.push_back(piece.word);
    }
    if (count.word.empty()) {
        report_unit_missing(line.place, words);
        return;
    }
    const SourcedText place = place_of_word(line, count);
    std::vector<std::string_view> known = words;
    known.insert(known.end(), unit_words.begin(), unit_words.end());
    const std::string_view near = nearest_word(fold_name(count.word), known);
    const std::string hint = near.empty() ? "" : "did you mean '" + std::string(near) + "'? ";
    if (words.empty()) {
        diagnostics_.error(
            Code::unit_unknown, place, "unknown unit " + in_quotes(count.word),
            hint + "weights: mg, g, kg, oz, lb; volumes: ml, l, tsp, tbsp, cup, fl oz, pint, quart");
    } else {
        diagnostics_.error(Code::piece_unknown, place,
                           "the pantry knows no " + in_quotes(count.word) + " of " + in_quotes(line.name),
                           hint + "pieces it knows: " + listed(words) +
                               (line.ingredient->volumes.empty()
                                    ? "; or write a weight"
                                    : "; or write a weight, or a volume: 1 tbsp"));
    }
}

} // namespace leavenwright
