// Names of ingredients in the words of a clause: alone, behind "a little" or "enough", and likened to a
// thing. Private to the transcribe folder.
#pragma once

#include "pantry/pantry.hpp"
#include "transcribe/prose_clauses.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

inline constexpr std::size_t longest_prose_item = 120; // bytes of one amount and its name

/// Where an item of a clause stands, in words; `end` is behind the last.
struct FoundItem {
    std::size_t begin = 0;
    std::size_t end = 0;
    std::size_t text_begin = 0; // bytes: a name in the clause before may begin it
    std::size_t text_end = 0;   // 0: where its last word ends
    const Ingredient* ingredient = nullptr;
    std::string words = {}; // of a ProseItem
    bool has_amount = false;
    bool is_known = true;
    bool is_part = false;
};

/// A clause of a text, with the clause before it and the one behind.
class ProseNames {
public:
    ProseNames(std::string_view text, const std::vector<ProseClause>& clauses, const Pantry& pantry)
        : text_(text), clauses_(clauses), pantry_(pantry) {}

    /// `last_end` is the byte where the last item ended: names before it are taken.
    void open(std::size_t clause, std::size_t last_end) {
        at_clause_ = clause;
        last_end_ = last_end;
    }

    std::size_t clause_number() const { return at_clause_; }
    const ProseClause& clause() const { return clauses_[at_clause_]; }
    const ProseClause* next_clause() const {
        return at_clause_ + 1 < clauses_.size() ? &clauses_[at_clause_ + 1] : nullptr;
    }
    /// The clause before; null where none is.
    const ProseClause* clause_before() const { return at_clause_ > 0 ? &clauses_[at_clause_ - 1] : nullptr; }
    std::string_view word(std::size_t at) const { return clause().word(at); }
    std::size_t size() const { return clause().words.size(); }
    std::string_view text() const { return text_; }
    std::string_view text_of(std::size_t begin, std::size_t end) const;
    const Pantry& pantry() const { return pantry_; }

    /// "the glaze", "of cream": what stands there is no verb.
    bool is_noun(std::size_t at) const;
    /// Where the words of an item that begins at `at` end: at a verb, or where it grows too long.
    std::size_t end_of_words(std::size_t at) const;

    /// The pantry's ingredient that all of the words name; null where they name none.
    const Ingredient* known(std::string_view text) const;
    const Ingredient* named(std::size_t begin, std::size_t end) const;

    /// An item that begins at `begin` with the known name at `name`; `is_bare` where no amount stands before.
    std::optional<FoundItem> known_from(std::size_t begin, std::size_t name, bool is_bare) const;
    /// What an act is done with: "melted butter", "and plenty of sugar".
    std::optional<FoundItem> bare_name(std::size_t at) const;
    /// The name that ends the clause before; only its first byte and its ingredient are set.
    std::optional<FoundItem> name_before() const;
    /// "a little hot water", "flour to make a stiff batter"; of what is `apart` from the dough, unknown
    /// things too.
    std::optional<FoundItem> without_amount(std::size_t at, bool is_apart) const;
    /// Whether "size" or "as large as" stands near behind `at`.
    bool is_likened(std::size_t at) const;
    /// "a piece of butter the size of an egg", "butter as large as a walnut"
    std::optional<FoundItem> likened(std::size_t at) const;

private:
    std::optional<FoundItem> thing_from(std::size_t begin, std::size_t name, bool is_apart) const;
    /// "Milk and water, one pint": the first byte of "Milk", plus 1; 0 where nothing is mixed.
    std::size_t begin_of_mixture(const Ingredient* second) const;
    std::optional<FoundItem> enough_behind(std::size_t at) const;
    bool is_stirred_in(std::size_t at, const Ingredient* thing) const;

    std::string_view text_;
    const std::vector<ProseClause>& clauses_;
    const Pantry& pantry_;
    std::size_t at_clause_ = 0;
    std::size_t last_end_ = 0;
};

/// Whether it is a liquid or a dairy product, either of which wets a dough.
bool is_fluid(const Ingredient& one);

/// Whether two things may be meant by one word: "the sugar" of a list with brown sugar.
bool is_same_kind(const Ingredient* one, const Ingredient* other);
/// "Butter and lard", "milk and water": whether one amount may be of both.
bool may_be_mixed(const Ingredient* one, const Ingredient* other);

/// A small word, an adverb or a participle: no name of an ingredient goes on with it.
bool ends_prose_name(std::string_view folded);

} // namespace leavenwright
