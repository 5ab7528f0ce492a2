// A recipe as pieces of text: its name, what it makes, the lines of its ingredients and its directions.
// Private to the transcribe folder.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "pantry/pantry.hpp"
#include "source/source_text.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

struct RecipeLine {
    SourcedText place;
    std::string role = "dough"; // by the heading above it
    std::string words = {};     // what it says, amount first, where that does not stand so at `place`
    std::size_t group = 0;      // of lines below a heading that says no role, counted from 1; 0 below others
    std::string title = {};     // folded, of the heading of such a group
    bool is_column = false;     // of a group that is a column beside another
    bool has_amount = true;     // of something that the pantry knows; sentences name things without one
    bool is_part = false;       // of what a list may hold: "a spoonful of the sugar"

    std::string_view said() const { return words.empty() ? place.text : std::string_view(words); }
    /// What it says where `more` goes on behind it.
    std::string said_with(std::string_view more) const {
        return std::string(said()).append(" ").append(more);
    }
};

/// What a recipe says, before any of it is understood.
struct RecipeText {
    std::string name;
    std::string yield;
    std::vector<RecipeLine> lines;
    std::vector<std::string> directions; // paragraphs
    /// What stands behind the list, which may name more.
    std::optional<SourcedText> behind_list;
    /// For how many its table has columns, where it has them for more than one: the first is read.
    std::vector<std::string> batches = {};
    /// Behind sentences that are the recipe, whatever list follows; nothing where none are.
    std::optional<std::size_t> sentences_end = {};
    bool is_list_left = false;  // another list of a dough stands behind the first, and is not read
    bool is_list_whole = false; // a line for each: sentences add only what is strewn, brushed or eaten with
};

inline constexpr std::size_t most_recipe_lines = 500;

/// Of rows that add up the whole dough, beside its parts.
inline constexpr std::string_view role_of_total = "total";

/// The role that a heading gives to the lines below it: "dough", a stage's name or a purpose; nothing where
/// it is no heading of ingredients.
std::optional<std::string> role_of_heading(std::string_view heading);

/// Plain text or Markdown.
RecipeText read_plain_recipe(const SourceHandle& source, const Pantry& pantry);

/// Text without a list: the amounts that stand in its sentences, of its first `length` bytes.
RecipeText read_prose_recipe(const SourceHandle& source, std::size_t length, const Pantry& pantry);
/// Of a line or paragraph, with what each is for ("wash them over with the yolk of an egg"). Linear time.
std::vector<RecipeLine> ingredients_in_prose(const SourcedText& text, const Pantry& pantry);
/// Whether it names more than one amount of something that the pantry knows.
bool names_amounts(const SourcedText& text, const Pantry& pantry);

/// A list that runs on in sentences: "One pint of milk, three eggs, butter the size of an egg. Beat the
/// eggs".
struct RunOnList {
    std::vector<RecipeLine> items; // with the words behind each that name nothing themselves
    std::size_t length = 0;        // bytes of the list; what follows says what to do
};
/// The list that begins a paragraph; no items where it is none.
RunOnList read_run_on_list(const SourcedText& paragraph, const Pantry& pantry);

/// The first schema.org Recipe of a JSON-LD text, inside lists and @graph too; nothing where it holds none.
std::optional<RecipeText> read_json_recipe(const SourceHandle& source, std::string_view json,
                                           Diagnostics& diagnostics);

struct PageText {
    std::vector<std::string> json; // contents of its scripts of type application/ld+json
    std::string text;              // what a reader sees, a block a line
    bool is_tangled = false;       // nested deeper than any real page; not read
};
PageText read_page(std::string_view html);

} // namespace leavenwright
