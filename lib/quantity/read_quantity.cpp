#include "quantity/read_quantity.hpp"

#include "diagnostic/suggestion.hpp"
#include "quantity/number.hpp"
#include "quantity/units.hpp"
#include "source/unicode.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

namespace leavenwright {
namespace {

constexpr double largest_volume_m3 = 1e3;
constexpr double largest_time_s = 1000.0 * 86400.0;
constexpr double largest_percentage = 1e6;
constexpr double largest_count = 1e6;

double largest(Dimension dimension) {
    switch (dimension) {
    case Dimension::mass:
        return largest_amount().value();
    case Dimension::volume:
        return largest_volume_m3;
    default:
        return largest_time_s;
    }
}

std::string_view units_text(Dimension dimension) {
    switch (dimension) {
    case Dimension::mass:
        return "weights: mg, g, kg, oz, lb";
    case Dimension::volume:
        return "volumes: ml, dl, l, tsp, tbsp, cup, fl oz, pint, quart";
    case Dimension::time:
        return "times: s, min, h, d";
    case Dimension::temperature:
        return "temperatures: C, F";
    }
    return "";
}

bool begins_number(std::string_view text) {
    const char byte = text.front();
    return (byte >= '0' && byte <= '9') ||
           (byte == '.' && text.size() > 1 && text[1] >= '0' && text[1] <= '9') ||
           (static_cast<unsigned char>(byte) >= 0xC2U &&
            (text.starts_with("\xC2\xBC") || text.starts_with("\xC2\xBD") || text.starts_with("\xC2\xBE") ||
             text.starts_with("\xE2\x85")));
}

// The words between a number and the next: "fl oz" of "2 fl oz", "lb" of "5 lb 4 oz".
std::size_t words_length(std::string_view text) {
    std::size_t at = 0;
    while (at < text.size() && !begins_number(text.substr(at))) {
        ++at;
    }
    return at;
}

// Folded, without full stops and degree signs: how a unit is looked up.
std::string unit_key(std::string_view words) {
    std::string text;
    for (std::size_t at = 0; at < words.size(); ++at) {
        if (words.compare(at, 2, "\xC2\xB0") == 0) {
            ++at;
        } else if (words[at] != '.') {
            text.push_back(words[at]);
        }
    }
    return fold_name(text);
}

// A number and the words after it, up to the next number.
struct Piece {
    ReadNumber number;
    SourcedText number_place;
    SourcedText words;
    const Unit* unit = nullptr;
    double value = 0.0; // SI, where there is a unit
};

std::optional<Piece> read_piece(const SourcedText& place, Diagnostics& diagnostics) {
    const auto number = read_number(place, diagnostics);
    if (!number) {
        return std::nullopt;
    }
    Piece piece{.number = *number,
                .number_place = place.part(0, number->length),
                .words = {},
                .unit = nullptr,
                .value = 0.0};
    const std::size_t length = words_length(place.text.substr(number->length));
    piece.words = trimmed(place.part(number->length, length));
    // Names are compared with hyphens as spaces; a unit has none.
    const bool has_hyphen = piece.words.text.find('-') != std::string_view::npos;
    piece.unit = has_hyphen ? nullptr : find_unit(unit_key(piece.words.text));
    if (piece.unit != nullptr) {
        piece.value = piece.unit->is_power_of_ten ? number->scaled(piece.unit->power_of_ten)
                                                  : number->value * piece.unit->factor;
    }
    return piece;
}

std::size_t end_of(const Piece& piece, const SourcedText& place) {
    const char* end = piece.words.text.empty()
                          ? piece.number_place.text.data() + piece.number_place.text.size()
                          : piece.words.text.data() + piece.words.text.size();
    return static_cast<std::size_t>(end - place.text.data());
}

// Says what is wrong with words that are no unit.
void report_unit(const SourcedText& words, Dimension wanted, Diagnostics& diagnostics) {
    // A unit with something behind it: "650 g warm".
    const std::size_t space = words.text.find(' ');
    if (space != std::string_view::npos && find_unit(unit_key(words.text.substr(0, space))) != nullptr) {
        diagnostics.error(Code::text_after_amount, words.part(space + 1, words.text.size()),
                          in_quotes(words.text.substr(space + 1)) + " stands after the amount",
                          "keep the amount alone; other words belong to the name or to a comment, "
                          "which begins with #");
        return;
    }
    std::vector<std::string_view> names;
    for (const Unit& unit : unit_table()) {
        if (unit.dimension == wanted) {
            names.push_back(unit.name);
        }
    }
    const std::string key = unit_key(words.text);
    const std::string_view near = nearest_word(key, names);
    std::string hint(units_text(wanted));
    if (!near.empty()) {
        hint = "did you mean '" + std::string(near) + "'? " + hint;
    }
    diagnostics.error(Code::unit_unknown, words, "unknown unit " + in_quotes(words.text), hint);
}

void report_unit_missing(const Piece& piece, std::string_view example, Diagnostics& diagnostics) {
    const std::string number(piece.number_place.text);
    diagnostics.error(Code::unit_missing, piece.number_place,
                      in_quotes(number) + " of what? a unit is missing",
                      "write the unit behind it: " + number + " " + std::string(example));
}

bool check_bounds(double value, double most, const SourcedText& place, Diagnostics& diagnostics) {
    if (!(value > 0.0)) {
        diagnostics.error(Code::amount_not_positive, place,
                          in_quotes(place.text) + " is nothing; an amount has to be more",
                          "write how much it is, or leave it out");
        return false;
    }
    if (!(value <= most)) {
        diagnostics.error(Code::amount_too_large, place, in_quotes(place.text) + " is too much",
                          "check the number and its unit");
        return false;
    }
    return true;
}

// "5 lb 4 oz", "1 h 30 min": units of one dimension, added up. Reads the whole of `place`.
std::optional<double> read_sum(const SourcedText& place, Piece piece, Diagnostics& diagnostics) {
    const Dimension dimension = piece.unit->dimension;
    double sum = piece.value;
    for (std::size_t at = end_of(piece, place); at < place.text.size();) {
        const SourcedText rest = trimmed(place.part(at, place.text.size()));
        const auto next = read_piece(rest, diagnostics);
        if (!next) {
            return std::nullopt;
        }
        if (next->unit == nullptr) {
            if (next->words.text.empty()) {
                report_unit_missing(*next, piece.unit->name == "h" ? "min" : piece.unit->name, diagnostics);
            } else {
                report_unit(next->words, dimension, diagnostics);
            }
            return std::nullopt;
        }
        if (next->unit->dimension != dimension) {
            diagnostics.error(Code::unit_unfit, next->words,
                              in_quotes(next->words.text) + " does not add to " +
                                  std::string(name_of(dimension)),
                              "give one amount");
            return std::nullopt;
        }
        if (!(next->unit->factor <= piece.unit->factor)) { // "20 g 1 kg"
            diagnostics.error(Code::unit_unfit, next->words,
                              in_quotes(next->words.text) + " is a larger unit than " +
                                  in_quotes(piece.words.text) + " before it",
                              "give one amount; parts go from large to small: 5 lb 4 oz");
            return std::nullopt;
        }
        sum += next->value;
        piece = *next;
        at = end_of(piece, place);
    }
    if (!check_bounds(sum, largest(dimension), place, diagnostics)) {
        return std::nullopt;
    }
    return sum;
}

// A quantity of one dimension, in SI.
std::optional<double> read_measured(const SourcedText& untrimmed, Dimension dimension,
                                    std::string_view example, Diagnostics& diagnostics) {
    const SourcedText place = trimmed(untrimmed);
    const auto piece = read_piece(place, diagnostics);
    if (!piece) {
        return std::nullopt;
    }
    if (piece->words.text.empty()) {
        constexpr double most_hours = 24.0; // nobody waits so few minutes
        const bool is_of_hours = dimension == Dimension::time && piece->number.value <= most_hours;
        report_unit_missing(*piece, is_of_hours ? "h" : example, diagnostics);
        return std::nullopt;
    }
    if (piece->unit == nullptr) {
        report_unit(piece->words, dimension, diagnostics);
        return std::nullopt;
    }
    if (piece->unit->dimension != dimension) {
        diagnostics.error(Code::unit_unfit, piece->words,
                          in_quotes(piece->words.text) + " is " +
                              std::string(name_of(piece->unit->dimension)) + "; " +
                              std::string(name_of(dimension)) + " belongs here",
                          std::string(units_text(dimension)));
        return std::nullopt;
    }
    return read_sum(place, *piece, diagnostics);
}

std::optional<WrittenPercentage> percentage_of(const Piece& piece, const SourcedText& place,
                                               Diagnostics& diagnostics) {
    const std::size_t end = end_of(piece, place);
    if (end < place.text.size() || piece.words.text != "%") {
        const SourcedText rest =
            trimmed(piece.words.text == "%" ? place.part(end, place.text.size())
                                            : piece.words.part(1, piece.words.text.size()));
        diagnostics.error(Code::text_after_amount, rest,
                          in_quotes(rest.text) + " stands after the percentage", "keep the percentage alone");
        return std::nullopt;
    }
    const double ratio = piece.number.scaled(-2);
    if (!check_bounds(ratio * 100.0, largest_percentage, place, diagnostics)) {
        return std::nullopt;
    }
    return WrittenPercentage(ratio);
}

std::optional<Amount> count_of(const Piece& piece, const SourcedText& place, Diagnostics& diagnostics) {
    const std::size_t end = end_of(piece, place);
    if (end < place.text.size()) {
        const SourcedText rest = trimmed(place.part(end, place.text.size()));
        diagnostics.error(Code::text_after_amount, rest, in_quotes(rest.text) + " stands after the amount",
                          "give one amount");
        return std::nullopt;
    }
    if (!check_bounds(piece.number.value, largest_count, place, diagnostics)) {
        return std::nullopt;
    }
    return Count{.number = piece.number.value, .word = piece.words.text};
}

} // namespace

SourcedText trimmed(const SourcedText& place) {
    constexpr std::string_view space = " \t\r\n";
    const std::size_t begin = place.text.find_first_not_of(space);
    if (begin == std::string_view::npos) {
        return place.part(0, 0);
    }
    const std::size_t end = place.text.find_last_not_of(space);
    return place.part(begin, end - begin + 1);
}

std::optional<Amount> read_amount(const SourcedText& untrimmed, Diagnostics& diagnostics) {
    const SourcedText place = trimmed(untrimmed);
    const auto piece = read_piece(place, diagnostics);
    if (!piece) {
        return std::nullopt;
    }
    if (piece->words.text.starts_with('%')) {
        return percentage_of(*piece, place, diagnostics);
    }
    if (piece->unit == nullptr) {
        const std::size_t space = piece->words.text.find(' ');
        if (space != std::string_view::npos &&
            find_unit(unit_key(piece->words.text.substr(0, space))) != nullptr) {
            report_unit(piece->words, Dimension::mass, diagnostics);
            return std::nullopt;
        }
        return count_of(*piece, place, diagnostics);
    }
    const Dimension dimension = piece->unit->dimension;
    if (dimension != Dimension::mass && dimension != Dimension::volume) {
        diagnostics.error(Code::unit_unfit, piece->words,
                          in_quotes(piece->words.text) + " is " + std::string(name_of(dimension)) +
                              "; an ingredient has a weight, a volume, a count or a percentage",
                          "write 650 g, 2 cups, 3 or 65%");
        return std::nullopt;
    }
    const auto sum = read_sum(place, *piece, diagnostics);
    if (!sum) {
        return std::nullopt;
    }
    return dimension == Dimension::mass ? Amount(kilograms(*sum)) : Amount(cubic_metres(*sum));
}

std::optional<WrittenPercentage> read_percentage(const SourcedText& untrimmed, Diagnostics& diagnostics) {
    const SourcedText place = trimmed(untrimmed);
    const auto piece = read_piece(place, diagnostics);
    if (!piece) {
        return std::nullopt;
    }
    if (piece->words.text.empty()) {
        const std::string number(piece->number_place.text);
        const std::string hundredfold = exact_decimal(piece->number.value, 2); // 0.2 is a fifth, most often
        diagnostics.error(
            Code::unit_missing, piece->number_place, in_quotes(place.text) + " needs a percent sign",
            piece->number.value <= 1.0 ? "write " + hundredfold + "%, or " + number + "% if it is that little"
                                       : "write " + number + "%");
        return std::nullopt;
    }
    if (!piece->words.text.starts_with('%')) {
        diagnostics.error(Code::unit_unfit, piece->words, in_quotes(place.text) + " is not a percentage",
                          "write a share with its percent sign: 20%");
        return std::nullopt;
    }
    return percentage_of(*piece, place, diagnostics);
}

std::optional<Mass> read_mass(const SourcedText& place, Diagnostics& diagnostics) {
    const auto value = read_measured(place, Dimension::mass, "g", diagnostics);
    return value ? std::optional(kilograms(*value)) : std::nullopt;
}

namespace {

struct Degrees {
    double number;
    bool is_fahrenheit;
};

// A number of degrees, and of which.
std::optional<Degrees> read_degrees(const SourcedText& place, Diagnostics& diagnostics) {
    const bool is_below_zero = place.text.starts_with('-');
    const SourcedText unsigned_place = is_below_zero ? place.part(1, place.text.size()) : place;
    const auto piece = read_piece(unsigned_place, diagnostics);
    if (!piece) {
        return std::nullopt;
    }
    if (piece->words.text.empty()) {
        report_unit_missing(*piece, "C", diagnostics);
        return std::nullopt;
    }
    const bool is_temperature = piece->unit != nullptr && piece->unit->dimension == Dimension::temperature &&
                                end_of(*piece, unsigned_place) == unsigned_place.text.size();
    if (!is_temperature) {
        diagnostics.error(Code::unit_unfit, place, in_quotes(place.text) + " is not a temperature",
                          std::string(units_text(Dimension::temperature)) + "; write 24 C or 75 F");
        return std::nullopt;
    }
    return Degrees{.number = is_below_zero ? -piece->number.value : piece->number.value,
                   .is_fahrenheit = piece->unit->name == "F"};
}

} // namespace

std::optional<Temperature> read_temperature(const SourcedText& untrimmed, Diagnostics& diagnostics) {
    const SourcedText place = trimmed(untrimmed);
    const auto degrees = read_degrees(place, diagnostics);
    if (!degrees) {
        return std::nullopt;
    }
    const Temperature temperature = degrees->is_fahrenheit ? Temperature::fahrenheit(degrees->number)
                                                           : Temperature::celsius(degrees->number);
    if (temperature < coldest_temperature() || temperature > hottest_temperature()) {
        diagnostics.error(Code::temperature_out_of_range, place,
                          in_quotes(place.text) + " is outside what a kitchen sees",
                          "between -40 and 550 C, or -40 and 1022 F");
        return std::nullopt;
    }
    return temperature;
}

std::optional<TemperatureDifference> read_temperature_difference(const SourcedText& untrimmed,
                                                                 Diagnostics& diagnostics) {
    constexpr double largest_k = 50.0;
    const SourcedText place = trimmed(untrimmed);
    const auto degrees = read_degrees(place, diagnostics);
    if (!degrees) {
        return std::nullopt;
    }
    const TemperatureDifference difference =
        kelvins(degrees->is_fahrenheit ? degrees->number * 5.0 / 9.0 : degrees->number);
    if (!(std::abs(difference.value()) <= largest_k)) {
        diagnostics.error(Code::temperature_out_of_range, place,
                          in_quotes(place.text) + " is too large a difference",
                          "between -50 and 50 C, or -90 and 90 F");
        return std::nullopt;
    }
    return difference;
}

namespace {

struct RangeText {
    SourcedText least;
    SourcedText most; // empty text where there is one time
};

RangeText split_range(const SourcedText& place) {
    for (const std::string_view mark : {" to ", "\xE2\x80\x93", "-"}) {
        const std::size_t at = place.text.find(mark);
        if (at != std::string_view::npos && at > 0) {
            return {trimmed(place.part(0, at)), trimmed(place.part(at + mark.size(), place.text.size()))};
        }
    }
    return {place, place.part(place.text.size(), 0)};
}

} // namespace

std::optional<DurationRange> read_duration(const SourcedText& untrimmed, Diagnostics& diagnostics) {
    const SourcedText place = trimmed(untrimmed);
    const RangeText range = split_range(place);
    if (range.most.text.empty()) {
        const auto value = read_measured(place, Dimension::time, "min", diagnostics);
        return value ? std::optional(DurationRange{seconds(*value), seconds(*value)}) : std::nullopt;
    }
    const auto most = read_measured(range.most, Dimension::time, "min", diagnostics);
    const auto bare = read_piece(range.least, diagnostics);
    if (!most || !bare) {
        return std::nullopt;
    }
    double least = 0.0;
    const bool is_bare = bare->number.length == range.least.text.size();
    if (is_bare) { // "45 to 60 min"
        const Unit* unit = read_piece(range.most, diagnostics)->unit;
        least = bare->number.value * unit->factor;
    } else {
        const auto value = read_measured(range.least, Dimension::time, "min", diagnostics);
        if (!value) {
            return std::nullopt;
        }
        least = *value;
    }
    if (!check_bounds(least, largest_time_s, range.least, diagnostics)) {
        return std::nullopt;
    }
    if (least > *most) {
        diagnostics.error(Code::unit_unfit, place, in_quotes(place.text) + " ends before it begins",
                          "put the shorter time first");
        return std::nullopt;
    }
    return DurationRange{seconds(least), seconds(*most)};
}

} // namespace leavenwright
