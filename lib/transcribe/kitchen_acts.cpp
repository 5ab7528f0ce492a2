#include "transcribe/kitchen_acts.hpp"

#include <array>

namespace leavenwright {
namespace {

struct ActWords {
    std::string_view words;
    AsideAct act;
};

constexpr auto acts = std::to_array<ActWords>({
    {"brush|wash|glaze|baste|gild", {.role = "brushing", .joints = "with|over"}},
    {"brushed|washed|glazed|basted|gilded", {.role = "brushing", .joints = "with", .is_participle = true}},
    {"sprinkle|strew|scatter|dredge", {.role = "topping", .joints = "with|over|on|upon", .is_direct = true}},
    {"sprinkled|strewn|strewed|scattered|dredged|frosted|iced|decorated",
     {.role = "topping", .joints = "with", .is_participle = true}},
    {"frost|garnish|decorate|ornament|ice|shake|top|finish", {.role = "topping", .joints = "with"}},
    {"dust", {.role = "dusting", .joints = "with|over|on", .is_direct = true}},
    {"dusted|floured", {.role = "dusting", .joints = "with", .is_participle = true}},
    {"grease|smear|oil|anoint", {.role = "greasing", .joints = "with"}},
    {"greased|rubbed|smeared|swabbed|buttered|oiled",
     {.role = "greasing", .joints = "with", .is_participle = true}},
    {"fry|fried|simmer|poach", {.role = "bath", .joints = "in"}},
    {"dip", {.role = "topping", .joints = "in|into"}},
    {"roll|rolled|toss|coat", {.role = "topping", .joints = "in"}}, // "while warm in powdered sugar"
    {"spread|fill|stuff|filled|stuffed", {.role = "filling", .joints = "with|over"}},
    {"serve|eat|served|eaten", {.role = "serving", .joints = "with"}},
});

} // namespace

bool is_one_of(std::string_view words, std::string_view word) {
    while (!words.empty() && !word.empty()) {
        const std::size_t end = words.find('|');
        if (words.substr(0, end) == word) {
            return true;
        }
        words.remove_prefix(end == std::string_view::npos ? words.size() : end + 1);
    }
    return false;
}

AsideAct aside_act(std::string_view folded) {
    for (const ActWords& row : acts) {
        if (is_one_of(row.words, folded)) {
            return row.act;
        }
    }
    return {};
}

bool is_mixing_verb(std::string_view folded) {
    return ends_name(folded) ||
           is_one_of("mix|warm|melt|cream|set|have|use|scald|make|sift|whisk|moisten|thin|"
                     "stiffen|thicken|soften|crumble|heat|wet",
                     folded);
}

bool ends_name(std::string_view folded) {
    return is_one_of(
        "put|add|mix|stir|beat|pour|knead|work|rub|let|take|dissolve|strew|sprinkle|brush|fry|serve|eat|"
        "bake|boil|soak|adding|stirring|beating|kneading|turn|cover|allow",
        folded);
}

bool is_surface(std::string_view folded) {
    return is_one_of(
        "pan|pans|tin|tins|griddle|girdle|board|sheet|sheets|mould|moulds|mold|molds|dish|dishes|plate|"
        "plates|iron|irons|basin|bowl|rings|kettle|table|slab|moulding-board",
        folded);
}

} // namespace leavenwright
