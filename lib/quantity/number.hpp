// Numbers as text: our grammar for reading them, and the shortest text that reads back
// to the same number.
//
//     number   = mixed | decimal
//     decimal  = digits [ "." digits ] [ ("e" | "E") [ "+" | "-" ] digits ]  |  "." digits
//     mixed    = [ digits ] fraction | digits " " fraction
//     fraction = digits "/" digits | one of the vulgar-fraction characters
//
// No decimal comma, no grouping, no hexadecimal, no infinity.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "source/source_text.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace leavenwright {

/// A number that was read. `decimal` holds its digits where it was a plain decimal.
struct ReadNumber {
    double value = 0.0;
    std::string_view decimal;
    std::size_t length = 0; // bytes read

    /// value x 10^exponent, correctly rounded from the digits where there are any, so
    /// that 20.1 g is the double nearest to 0.0201 kg.
    double scaled(int exponent) const;
};

/// Reads the number that begins `place.text`. A minus sign, a decimal comma or anything
/// else is recorded at its place, and nothing is returned.
std::optional<ReadNumber> read_number(const SourcedText& place, Diagnostics& diagnostics);

/// The shortest decimal, without exponent, that reads back as `value` x 10^-exponent:
/// with exponent 3, a mass in kg shown in g. Reading it with scaled(-exponent) gives
/// the same bits.
std::string exact_decimal(double value, int exponent);

/// The double nearest to that decimal: a mass in kg as a number of grams without the
/// dust of a multiplication.
double exact_shift(double value, int exponent);

/// The double nearest to `value` in so many significant digits: sums and differences of decimal amounts
/// without the last bits that binary arithmetic leaves (0.69 - 0.2 is 0.49 again).
double without_dust(double value, int digits = 15);

} // namespace leavenwright
