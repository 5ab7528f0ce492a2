#include "transcribe/list_item.hpp"

#include "transcribe/ingredient_line.hpp"
#include "transcribe/recipe_text.hpp"
#include "transcribe/recipe_words.hpp"

#include <string>

namespace leavenwright {

bool is_item(std::string_view text, const Pantry& pantry) {
    constexpr std::size_t longest_item = 70;
    return text.size() < longest_item && is_ingredient_line(text, pantry) && !is_sentence(text) &&
           !text.ends_with('.');
}

bool begins_list(std::string_view text, const Pantry& pantry) {
    constexpr std::size_t longest = 60;
    return is_item(text, pantry) ||
           (text.size() <= longest && !is_sentence(text) && !stage_named(heading_text(text)).empty());
}

bool begins_group(std::string_view title, std::string_view next_line, const Pantry& pantry) {
    constexpr std::size_t most_words = 4;
    return count_words(title) <= most_words && is_ingredient_line(next_line, pantry) &&
           !is_ingredient_line("1 cup " + std::string(title), pantry);
}

bool is_item_apart(std::string_view text, const Pantry& pantry) {
    constexpr std::size_t longest = 120;
    const std::size_t colon = text.find(':');
    if (text.size() > longest || colon == std::string_view::npos || text.ends_with('.')) {
        return false;
    }
    const auto role = role_of_heading(heading_text(text.substr(0, colon)));
    return role && !is_in_dough(*role) && *role != role_of_total &&
           is_ingredient_line(text.substr(colon + 1), pantry);
}

bool is_ended_by_colon(std::string_view text) {
    const std::size_t end = text.find_last_not_of(" *_|\t");
    return end != std::string_view::npos && text[end] == ':';
}

} // namespace leavenwright
