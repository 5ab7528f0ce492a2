#include "transcribe/prose_roles.hpp"

#include "transcribe/ingredient_line.hpp"
#include "transcribe/recipe_text.hpp"

#include <algorithm>

namespace leavenwright {

void ProseRoles::open_clause() {
    const bool is_joined = names_.clause().mark_before == '&' || names_.clause().mark_before == ',';
    is_name_expected_ = is_joined && is_behind_name_ && names_.size() <= 4;
    is_behind_name_ = false;
    is_behind_verb_ = is_held_back_ = false;
    const ProseClause* before = names_.clause_before();
    const std::string_view word_before =
        before != nullptr ? std::string_view(before->words.back().folded) : std::string_view();
    if (names_.clause().begins_sentence()) {
        // "sprinkle with the following:", above what it is
        const bool is_announced = word_before == "following" && names_.text().substr(before->end, 1) == ":";
        sentence_role_ = role_ = is_announced && !pending_.role.empty() ? std::string(pending_.role)
                                 : is_announced                         ? role_
                                                                        : group_role_;
        pending_ = {};
    } else if (names_.word(0) == "made" && names_.word(1) == "by") {
        // "cover with streusel, made by rubbing together one-half cup of flour"
        const auto role = role_of_heading(word_before);
        role_ = role && !is_in_dough(*role) ? *role : role_; // until something is added
        return;
    } else if (names_.clause().mark_before != '-' && names_.clause().mark_before != ':') {
        return;
    }
    if (const std::string opening = role_of_opening(); !opening.empty()) {
        sentence_role_ = role_ = opening;
        group_role_ = is_label() ? opening : group_role_;
    }
}

// "Glaze:", "For the icing.--"
bool ProseRoles::is_label() const {
    return names_.size() <= 4 && (names_.clause().mark_behind == ':' || names_.clause().mark_behind == '-' ||
                                  (names_.clause().mark_behind == '.' && names_.size() <= 3));
}

std::string ProseRoles::role_of_opening() const {
    if (is_one_of("serve|eat", names_.word(1)) && names_.word(0) == "to") {
        return "serving";
    }
    if (names_.word(0) == "when" && is_one_of("done|baked", names_.word(1))) {
        return "serving";
    }
    const bool is_for = names_.word(0) == "for";
    if (!is_for && !is_label()) {
        return {};
    }
    const std::size_t begin = (is_for ? 1U : 0U) + (names_.word(is_for ? 1 : 0) == "the" ? 1U : 0U);
    std::string title(names_.word(begin));
    for (std::size_t at = begin + 1; is_label() && at < names_.size(); ++at) { // "Streusel coffee cake.--"
        title += " " + std::string(names_.word(at));
    }
    const auto role = role_of_heading(title);
    return role && !is_in_dough(*role) ? *role : std::string();
}

void ProseRoles::read_word(std::size_t at) {
    const std::string_view word = names_.word(at);
    was_name_expected_ = is_name_expected_;
    if (!pending_.role.empty() && is_one_of(pending_.joints, word)) {
        role_ = has_surface(at) && pending_.role == "topping" ? "dusting" : std::string(pending_.role);
        is_name_expected_ = true;
        return;
    }
    if (is_one_of("in|into", word) && is_one_of("hot|boiling|deep|smoking", names_.word(at + 1)) &&
        is_fat_behind(at + 1)) {
        role_ = "bath";
        is_name_expected_ = true;
        return;
    }
    if (!names_.is_noun(at)) {
        read_verb(at);
    }
}

void ProseRoles::read_verb(std::size_t at) {
    const std::string_view verb = names_.word(at);
    if (at > 0 && is_one_of("while|still|yet|when", names_.word(at - 1))) { // "roll while warm in sugar"
        return;
    }
    if (verb == "warm" && at == 0 && !names_.clause().begins_sentence() &&
        names_.named(0, names_.size()) != nullptr) { // "6 oz. of currants, warm milk"
        return;
    }
    const AsideAct act =
        is_one_of("roll|rolled|toss|coat", verb) && !is_rolled_in_sugar(at) ? AsideAct() : aside_act(verb);
    if (!act.role.empty() && (!act.is_participle || names_.word(at + 1) == "with")) {
        pending_ = act;
        if (act.is_direct && !is_one_of("in|into", names_.word(at + 1))) {
            role_ = has_surface(at) ? "dusting" : act.role;
            is_name_expected_ = true;
        }
        is_behind_verb_ = true;
    } else if (verb == "rub" && has_surface(at)) { // "rub the pans with lard"
        pending_ = {.role = "greasing", .joints = "with"};
    } else if (verb == "rub" && names_.word(at + 1) == "each" && names_.word(at + 2) == "with") {
        pending_ = {.role = "brushing", .joints = "with"};
    } else if (is_one_of("rub|wet|moisten", verb) &&
               is_one_of("top|tops|crust|crusts|loaf|loaves|buns|rolls|over",
                         names_.word(at + (names_.word(at + 1) == "the" ? 2 : 1)))) {
        pending_ = {.role = "brushing", .joints = "with"};
    } else if (verb == "allow" && may_begin_amount(names_.word(at + 1))) {
        return; // "to 2 lbs. of flour allow 1/2 lb. of sugar" lists
    } else if (verb == "go" && names_.word(at + 1) == "over" && // "the tops with the white of an egg"
               is_one_of("top|tops|loaf|loaves|buns|rolls|cakes|rusks|crust", names_.word(at + 3))) {
        pending_ = {.role = "brushing", .joints = "with"};
    } else if (verb == "sift" && (names_.word(at + 1) == "on" || is_strewn_behind(at))) {
        role_ = "topping";
        is_name_expected_ = true;
    } else if (is_mixing_verb(verb)) {
        role_ = sentence_role_;
        pending_ = {};
        is_held_back_ = is_name_expected_ = false;
        is_behind_verb_ = is_behind_verb_ || verb != "take";
    } else if (is_one_of("reserve|reserving|save|saving|keep|keeping", verb)) {
        is_held_back_ = true;
    }
}

// "with plenty of", "and": words before a name do not end the wait for it.
void ProseRoles::pass_word(std::size_t at) {
    is_name_expected_ =
        is_name_expected_ && (!was_name_expected_ || is_one_of("and|with|over", names_.word(at)));
}

void ProseRoles::pass_item(bool is_bare) {
    is_name_expected_ = false;
    is_behind_name_ = is_bare;
}

// "roll while warm in powdered sugar"; butter that is rolled in goes into the dough.
bool ProseRoles::is_rolled_in_sugar(std::size_t at) const {
    constexpr std::size_t near = 8;
    bool is_behind_in = false;
    for (std::size_t next = at + 1; next < std::min(at + near, names_.size()); ++next) {
        if (is_behind_in &&
            is_one_of("sugar|cinnamon|seeds|seed|crumbs|coconut|cornmeal|meal|nuts", names_.word(next))) {
            return true;
        }
        is_behind_in = is_behind_in || names_.word(next) == "in";
    }
    return false;
}

// "sift a little cinnamon upon them"
bool ProseRoles::is_strewn_behind(std::size_t at) const {
    constexpr std::size_t near = 7;
    for (std::size_t next = at + 1; next < std::min(at + near, names_.size()); ++next) {
        if (names_.word(next) == "flour") { // which is sifted over what it goes into
            return false;
        }
        if (is_one_of("on|upon|over", names_.word(next)) &&
            is_one_of("them|it|the|each|top|tops", names_.word(next + 1))) {
            return names_.word(next + 1) != "the" ||
                   is_one_of("top|tops|loaf|loaves|buns|cakes|rusks", names_.word(next + 2));
        }
    }
    return false;
}

bool ProseRoles::has_surface(std::size_t at) const {
    constexpr std::size_t near = 6;
    for (std::size_t other = at - std::min(at, near); other < std::min(at + near, names_.size()); ++other) {
        if (is_surface(names_.word(other))) {
            return true;
        }
    }
    return false;
}

bool ProseRoles::is_fat_behind(std::size_t at) const {
    for (std::size_t end = at + 1; end <= std::min(at + 4, names_.size()); ++end) {
        const Ingredient* known = names_.named(at, end);
        if (known != nullptr && known->ingredient_class == IngredientClass::fat) {
            return true;
        }
    }
    return false;
}

} // namespace leavenwright
