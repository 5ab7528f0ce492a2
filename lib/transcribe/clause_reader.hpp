// Times and temperatures in the words of a direction. Private to the transcribe folder.
#pragma once

#include "transcribe/line_tokens.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

/// One thing that a sentence of directions says to do.
class ClauseReader {
public:
    explicit ClauseReader(std::string_view words) : tokens_(line_tokens(words)) {}

    const std::vector<LineToken>& tokens() const { return tokens_; }

    /// How long it takes, as the formula reads it: "45 to 60 min"; empty where the words do not say.
    std::string time() const;
    /// The first temperature between two bounds in Celsius, as the formula reads it: "75 F".
    std::string temperature(double least_c, double most_c) const;
    /// The oven's: of any scale, of a gas mark, and of three digits whose scale is plain by their size.
    std::string oven() const;

private:
    std::string time_at(std::size_t at) const;
    char scale_behind(std::size_t at) const;
    bool next_is(std::size_t at, std::string_view word) const {
        return at < tokens_.size() && tokens_[at].is(word);
    }

    std::vector<LineToken> tokens_;
};

} // namespace leavenwright
