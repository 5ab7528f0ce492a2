// What the verbs of a sentence do with the things they name: into the dough, or aside. Private to the
// transcribe folder.
#pragma once

#include "transcribe/kitchen_acts.hpp"
#include "transcribe/prose_names.hpp"

#include <string>

namespace leavenwright {

/// Reads the words of clauses from left to right.
class ProseRoles {
public:
    explicit ProseRoles(const ProseNames& names) : names_(names) {}

    void open_clause();
    /// At a word: the verbs before it have been read.
    void read_word(std::size_t at);
    /// Behind a word that began no item.
    void pass_word(std::size_t at);
    /// Behind an item: what is joined to a bare name may be one too.
    void pass_item(bool is_bare);

    const std::string& role() const { return role_; }
    /// Behind "brush with", where a name without an amount is an item.
    bool is_name_expected() const { return is_name_expected_; }
    bool is_behind_verb() const { return is_behind_verb_; }
    /// Behind "keep back".
    bool is_held_back() const { return is_held_back_; }

private:
    bool is_label() const;
    std::string role_of_opening() const;
    bool is_rolled_in_sugar(std::size_t at) const;
    bool is_strewn_behind(std::size_t at) const;
    bool has_surface(std::size_t at) const;
    bool is_fat_behind(std::size_t at) const;
    void read_verb(std::size_t at);

    const ProseNames& names_;
    std::string role_ = "dough";
    std::string sentence_role_ = "dough";
    std::string group_role_ = "dough"; // behind "For the icing:"
    AsideAct pending_;                 // whose "with" has not come yet
    bool is_name_expected_ = false;
    bool was_name_expected_ = false; // before the word being read
    bool is_behind_name_ = false;
    bool is_behind_verb_ = false;
    bool is_held_back_ = false;
};

} // namespace leavenwright
