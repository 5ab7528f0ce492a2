// Amounts as recipes give them, from the tokens of a line. Private to the transcribe folder.
#pragma once

#include "transcribe/kitchen_words.hpp"
#include "transcribe/line_tokens.hpp"

#include <optional>
#include <span>
#include <string>

namespace leavenwright {

/// A number of a measure; `least` and `most` differ where a range or a vague measure was written.
struct KitchenAmount {
    double number = 0.0;
    double least = 0.0;
    double most = 0.0;
    Measure measure;
    std::string size; // "large", beside the measure or alone
    std::string how;  // "sifted", "packed": what it was measured as
    bool is_range = false;
    bool is_vague = false; // scant, heaping, a few: nobody knows how much
    /// "1-2 cup": what a half is where a printer has no fractions.
    enum class Hyphen { none, maybe_fraction, likely_fraction };
    Hyphen hyphen = Hyphen::none;
    std::size_t length = 0; // tokens read

    double in_same(const KitchenAmount& other) const;
    /// "1-2 cup" is half a cup.
    void take_as_fraction();
};

/// The amount that begins `tokens`: number, range, size, measure, and what is added to it ("1 lb 2 oz", "1
/// cup plus 2 tbsp"); nothing where there is none.
std::optional<KitchenAmount> read_kitchen_amount(std::span<const LineToken> tokens);

} // namespace leavenwright
