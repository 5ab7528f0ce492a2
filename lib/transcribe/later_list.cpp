#include "transcribe/later_list.hpp"

#include "source/unicode.hpp"
#include "transcribe/ingredient_line.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/recipe_words.hpp"

#include <algorithm>
#include <initializer_list>

namespace leavenwright {
namespace {

bool names_any(std::string_view words, std::initializer_list<std::string_view> names) {
    constexpr std::size_t longest = 300;
    const std::string folded = fold_name(words.substr(0, longest));
    return std::any_of(names.begin(), names.end(),
                       [&](std::string_view name) { return folded.find(name) != std::string::npos; });
}

// Yeast, or the culture that is used in its place, by any of its names.
bool names_leaven(std::string_view words) {
    return names_any(words, {"yeast", "levain", "leaven", "starter", "sourdough", "hefe", "levure", "lievito",
                             "levadura"});
}

} // namespace

bool is_list_block(const SourceText& source, std::size_t first_line, const Pantry& pantry) {
    constexpr std::size_t fewest_items = 2;
    constexpr std::size_t longest_item = 90;
    std::size_t items = 0;
    std::size_t others = 0;
    for (std::size_t number = first_line; number <= source.line_count(); ++number) {
        const std::string_view line = source.line(number);
        if (line.find_first_not_of(" \t\r") == std::string_view::npos) {
            break;
        }
        const bool is_item = line.size() <= longest_item && !is_sentence(line) && !line.ends_with('.') &&
                             (is_ingredient_line(line, pantry) || has_measure(line));
        (is_item ? items : others) += 1;
    }
    return items >= fewest_items && others < items;
}

std::string label_before_words(std::string_view line) {
    constexpr std::size_t longest_label = 40;
    std::size_t end = std::string_view::npos;
    if (line.starts_with("**")) {
        end = line.find("**", 2);
    } else {
        end = line.find(':');
    }
    if (end == std::string_view::npos || end > longest_label || has_digit(line)) {
        return {};
    }
    return heading_text(line.substr(0, end));
}

bool WholeDough::is_in(std::span<const RecipeLine> lines) {
    for (; seen_ < lines.size(); ++seen_) {
        const RecipeLine& line = lines[seen_];
        if (line.role == "dough" || line.role == role_of_total) {
            const std::string_view words =
                line.words.empty() ? line.place.text : std::string_view(line.words);
            has_flour_ = has_flour_ || names_flour(words, pantry_);
            has_leaven_ = has_leaven_ || names_leaven(words);
            has_salt_ = has_salt_ || names_any(words, {"salt", "salz", "sel", "sale", "sal"});
        }
    }
    return has_flour_ && has_leaven_ && has_salt_;
}

} // namespace leavenwright
