// What a line of a recipe's text is, by its words alone. Private to the transcribe folder.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace leavenwright {

/// A part of a recipe, as its headings name it.
enum class RecipePart { heading, ingredients, directions };

/// A heading without its marks, folded; the text of other lines comes back too.
std::string heading_text(std::string_view line);
/// The part that a heading begins: "Ingredients", "Method".
std::optional<RecipePart> part_named(std::string_view heading);
struct PartLabel {
    RecipePart part = RecipePart::heading;
    std::size_t length = 0; // bytes up to the words below it
};
/// A heading and the words below it on one line: "INGREDIENTS.--1 lb. of flour", "Method: Cream the yeast",
/// "1718. INGREDIENTS".
std::optional<PartLabel> part_label(std::string_view line);
/// "YEAST-CAKES" of "1722.--YEAST-CAKES": a title in capitals behind its number in a book; empty where the
/// line is no such title.
std::string_view numbered_title(std::string_view line);
/// "levain build" of the line "Saturday 8:00 - Levain build" and its heading: what begins then; other
/// headings as they are.
std::string title_behind_time(std::string_view line, std::string heading);
/// Bytes of the word that says what a recipe makes, before what it is: "makes ", "yield: "; 0 where none
/// does. `heading` is folded.
std::size_t length_of_yield_word(std::string_view heading);
/// "filling" of "for the filling", in the languages that are read; empty where a heading begins otherwise.
std::string_view behind_for_the(std::string_view heading);
/// Whether one of the words of a text is one of `words`.
bool has_word_of(std::string_view text, std::span<const std::string_view> words);
/// What a heading makes that goes in or on the dough under a name of its own: "pastry cream" is a filling,
/// "garlic butter" a topping; empty where it is nothing of the kind. `heading` is folded.
std::string_view role_of_made(std::string_view heading);
/// "everything else", "next day": over what a dough takes behind its first stage.
bool names_rest(std::string_view heading);
/// "levain" of "1. levain, 8 am": without its figures and the words that go with them.
std::string without_figures(std::string_view heading);
/// "fruit (soak the night before)": the words outside.
std::string without_brackets(std::string_view heading);
/// Whether a line is drawn: "-----", "|---|---|", or opens or closes a wiki's table.
bool is_rule(std::string_view line);
/// Whether nothing but white space stands in a text.
bool is_blank(std::string_view text);
std::size_t count_words(std::string_view text);
bool has_digit(std::string_view text);
bool begins_with_number(std::string_view text);
/// Whether an amount with a measure begins a line.
bool has_measure(std::string_view text);
/// Whether a time or a temperature begins a line: "24 h at 20 C", "170° 50 min".
bool begins_with_time(std::string_view text);
/// "22:00 Mix the levain"
bool begins_with_clock(std::string_view text);
/// Whether nothing but an amount stands in a text, with its measure or another amount in brackets: "10 ounces
/// (1 1/4 cups)".
bool is_amount_alone(std::string_view text);
/// The stage that words name, as formulas call it: "rye sour" is a preferment, "tangzhong" a scald; empty
/// where they name none.
std::string_view stage_named(std::string_view heading);
/// Prose: long, and ended by a full stop, or begun by what a cook does.
bool is_sentence(std::string_view text);
/// "1. Cream the yeast", "(1) Scald the milk".
bool is_numbered_step(std::string_view text);
/// "1 Bring the milk to the boil"
bool is_step_without_mark(std::string_view text);

} // namespace leavenwright
