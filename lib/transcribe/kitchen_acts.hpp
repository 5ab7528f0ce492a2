// What sentences of a recipe do with a thing: mix it into the dough, or grease, brush, strew, fry or serve
// with it. Private to the transcribe folder.
#pragma once

#include <string_view>

namespace leavenwright {

/// An act beside the dough, as a verb of the sentence names it.
struct AsideAct {
    std::string_view role;      // "brushing"
    std::string_view joints;    // words behind which stands what it is done with, separated by '|'
    bool is_participle = false; // "strewn": only what "with" follows
    bool is_direct = false;     // what is strewn may stand right behind the verb
};

/// The act that a folded word names; its role is empty where the word names none.
AsideAct aside_act(std::string_view folded);
/// "add", "stir", "knead": what follows goes into the dough.
bool is_mixing_verb(std::string_view folded);
/// A verb that no name of an ingredient holds: one that stands behind a name ends it.
bool ends_name(std::string_view folded);
/// "griddle", "tins", "board": what is greased and floured.
bool is_surface(std::string_view folded);
/// Whether one of `words`, which are separated by '|', is `word`.
bool is_one_of(std::string_view words, std::string_view word);

} // namespace leavenwright
