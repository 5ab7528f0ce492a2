#include "diagnostic/codes.hpp"

#include <array>

namespace leavenwright {
namespace {

constexpr auto catalogue = std::to_array<CatalogueEntry>({
    {Code::alias_refused, "alias-refused",
     "A formula says every amount where it stands; YAML's anchors and aliases are not read.", "salt: *usual",
     "salt: 20 g"},
    {Code::amount_not_positive, "amount-not-positive",
     "An amount, a time or a share has to be more than nothing.", "water: 0 g", "water: 650 g"},
    {Code::amount_too_large, "amount-too-large",
     "An amount is beyond what any bakery weighs (1,000 t, 1,000,000 %, 1,000 days).", "water: 1e300 g",
     "water: 650 g"},
    {Code::blend_moved, "blend-moved",
     "The levain's flour holds more of one kind than the formula has, so the blend would move, "
     "and --keep-blend forbids that.",
     "--keep-blend --levain-flour \"rye flour 100%\" on a formula without rye",
     "--levain-flour \"bread flour 100%\""},
    {Code::class_unknown, "class-unknown", "The class of an ingredient is one of a fixed list.",
     "class: flower", "class: flour"},
    {Code::composition_impossible, "composition-impossible",
     "The parts of an ingredient add up to more than the whole.", "per 100 g: { water: 80 g, fat: 30 g }",
     "per 100 g: { water: 70 g, fat: 30 g }"},
    {Code::control_character, "control-character",
     "The text holds a byte that no editor shows (NUL, escape, backspace and the like).", "salt: 20\\0 g",
     "salt: 20 g"},
    {Code::culture_outside_levain, "culture-outside-levain",
     "Culture (seed) is an ingredient of a preferment of kind levain, where its flour and water "
     "are known.",
     "dough: { bread flour: 500 g, culture: 100 g }",
     "preferments: { levain: { bread flour: 45 g, water: 45 g, culture: 10 g } }"},
    {Code::dough_and_overall, "dough-and-overall",
     "A formula is written either as what is added at mixing (dough) or as everything (overall).",
     "dough: {...} and overall: {...}", "dough: {...}"},
    {Code::file_empty, "file-empty", "The file holds nothing but space and comments.", "(nothing)",
     "formula: 1, name: ..., dough: ..."},
    {Code::file_too_large, "file-too-large",
     "A formula file may have at most 1 MiB; the longest real one has a few kilobytes.", "a file of 100 MB",
     "a file of 2 kB"},
    {Code::flour_missing, "flour-missing",
     "Baker's percentages and levain are shares of the flour, so there has to be some.",
     "dough: { water: 650 g }", "dough: { bread flour: 1000 g, water: 650 g }"},
    {Code::flour_percent_sum, "flour-percent-sum",
     "All flours together are 100 %: flours given as percentages must add up to that.",
     "bread flour: 80%, rye flour: 10%", "bread flour: 90%, rye flour: 10%"},
    {Code::formula_size_missing, "formula-size-missing",
     "A formula in percentages needs something that gives its size.",
     "dough: { bread flour: 100%, water: 65% }", "makes: 2 x 850 g"},
    {Code::formula_too_long, "formula-too-long",
     "A formula may have at most 2,000 lines of ingredients, keys and steps.", "a dough of 5,000 ingredients",
     "a dough of 40 ingredients"},
    {Code::ingredient_ambiguous, "ingredient-ambiguous",
     "The name stands for several things that weigh or work differently.", "yeast: 7 g",
     "instant yeast: 7 g"},
    {Code::ingredient_unknown, "ingredient-unknown",
     "The name is not in the pantry, so its class and water are not known.", "bred flour: 500 g",
     "bread flour: 500 g"},
    {Code::keep_refused, "keep-refused",
     "The stage cannot be kept: it is a levain, which the conversion replaces.", "--keep levain",
     "--keep poolish"},
    {Code::key_duplicate, "key-duplicate", "A key stands twice in one list.", "salt: 10 g ... salt: 8 g",
     "salt: 18 g"},
    {Code::key_missing, "key-missing", "A key that is required is not there.", "dough: {...} alone",
     "formula: 1, name: Pier loaf, dough: {...}"},
    {Code::key_unknown, "key-unknown", "The key is not one that this place reads.", "proces: [ mix ]",
     "process: [ mix ]"},
    {Code::levain_does_not_fit, "levain-does-not-fit",
     "The levain would hold more flour or water than the dough can give up.",
     "--prefermented-flour 50% --levain-hydration 125% on 1000 g flour and 550 g water",
     "--prefermented-flour 44% --levain-hydration 125%"},
    {Code::levain_flour_sum, "levain-flour-sum",
     "The flours of a levain are shares of its flour and add up to 100 %.",
     "--levain-flour \"rye flour 50%, bread flour 40%\"",
     "--levain-flour \"rye flour 50%, bread flour 50%\""},
    {Code::makes_mismatch, "makes-mismatch",
     "The dough weighs less, or far more, than the formula says it makes.",
     "makes: 2 x 850 g with 1200 g of dough", "makes: 2 x 600 g"},
    {Code::makes_unreadable, "makes-unreadable",
     "What a formula makes is pieces by dough weight, a dough weight, or a number of pieces.",
     "makes: two big ones", "makes: 2 x 850 g"},
    {Code::measure_missing, "measure-missing",
     "The pantry has no weight for a volume or a piece of this ingredient.", "vital wheat gluten: 2 tbsp",
     "vital wheat gluten: 18 g"},
    {Code::name_taken, "name-taken", "Two ingredients of one pantry claim the same name.",
     "also: [salt] twice", "also: [harbour salt]"},
    {Code::nesting_too_deep, "nesting-too-deep", "Lists within lists go deeper than 32 levels.", "[[[[[[ ...",
     "dough: { salt: 20 g }"},
    {Code::number_comma, "number-comma", "Decimals are written with a point.", "salt: 1,8%", "salt: 1.8%"},
    {Code::number_unreadable, "number-unreadable",
     "A number was expected: digits with one decimal point, or a fraction.", "water: lots", "water: 650 g"},
    {Code::piece_unknown, "piece-unknown", "The pantry does not know this piece of the ingredient.",
     "egg: 2 gigantic", "egg: 2 extra large"},
    {Code::quote_unterminated, "quote-unterminated",
     "A quotation mark opens and never closes, so the rest of the file would be read as one text.",
     "name: \"Pier loaf", "name: \"Pier loaf\""},
    {Code::quoted_number, "quoted-number", "An amount stands in quotation marks; it needs none.",
     "salt: \"20 g\"", "salt: 20 g"},
    {Code::root_not_a_map, "root-not-a-map", "A formula begins with keys: a word, a colon, a space.",
     "formula:1", "formula: 1"},
    {Code::second_document, "second-document", "A file holds one formula; `---` begins another.",
     "... --- ...", "two files"},
    {Code::size_given_twice, "size-given-twice",
     "The size follows from the amounts already, and something else gives it again.",
     "flour weight: 800 g with bread flour: 900 g", "bread flour: 900 g"},
    {Code::stage_empty, "stage-empty", "A stage without ingredients.", "soakers: { seeds: {} }",
     "soakers: { seeds: { flaxseed: 50 g, water: 75 g } }"},
    {Code::stage_flour_missing, "stage-flour-missing",
     "A preferment has no flour, or leaves its flour's name out where the formula has several.",
     "poolish: { water: 100 g }", "poolish: { bread flour: 100 g, water: 100 g }"},
    {Code::stage_kind_unknown, "stage-kind-unknown",
     "The kind of a stage is poolish, biga, sponge, old dough or levain; of a soaker, soaker or "
     "scald.",
     "kind: starter", "kind: levain"},
    {Code::stage_overdrawn, "stage-overdrawn",
     "More is taken than there is: by a stage out of the overall formula, or by the dough out of a "
     "stage.",
     "overall: { water: 300 g } with 400 g of water in the poolish", "water: 700 g in overall"},
    {Code::stage_size_missing, "stage-size-missing",
     "A stage in percentages needs something that gives its size.",
     "poolish: { bread flour: 100%, water: 100% }",
     "poolish: { prefermented flour: 33%, bread flour: 100%, water: 100% }"},
    {Code::stage_unknown, "stage-unknown", "No stage of the formula has this name.", "--keep poolsh",
     "--keep poolish"},
    {Code::step_unknown, "step-unknown", "The step is not one of the format's.", "- knead_it",
     "- mix: { note: knead for 8 min }"},
    {Code::tag_refused, "tag-refused", "YAML tags have no meaning in a formula.", "salt: !!str 20 g",
     "salt: 20 g"},
    {Code::temperature_out_of_range, "temperature-out-of-range",
     "A temperature outside -40 to 400 C (-40 to 752 F) is a slip of the pen.", "at: 2400 C", "at: 240 C"},
    {Code::text_after_amount, "text-after-amount", "Something follows an amount that was complete.",
     "water: 650 g warm", "warm water: 650 g"},
    {Code::text_after_root, "text-after-root",
     "Something stands after the end of the formula, often a line indented less than it should be.",
     "- mix\nname: x", "name: x"},
    {Code::text_not_utf8, "text-not-utf8", "The file is not UTF-8 text. An editor can save it as UTF-8.",
     "a file in Latin-1", "the same file saved as UTF-8"},
    {Code::unit_missing, "unit-missing", "An amount is a number with its unit.", "water: 650",
     "water: 650 g"},
    {Code::unit_unfit, "unit-unfit", "The unit measures another thing than this place needs.", "for: 20 g",
     "for: 20 min"},
    {Code::unit_unknown, "unit-unknown", "The unit is not one that is read.", "water: 650 gg",
     "water: 650 g"},
    {Code::value_missing, "value-missing", "A key has nothing after its colon.", "salt:", "salt: 20 g"},
    {Code::value_not_a_list, "value-not-a-list", "A list was expected.", "process: mix", "process: [ mix ]"},
    {Code::value_not_a_map, "value-not-a-map", "Keys with values were expected.", "dough: 500 g of flour",
     "dough: { bread flour: 500 g }"},
    {Code::value_not_text, "value-not-text", "One value was expected, not a list or keys.", "salt: [ 20 g ]",
     "salt: 20 g"},
    {Code::version_unknown, "version-unknown", "The version of the format is not one that is read.",
     "formula: 7", "formula: 1"},
    {Code::water_source_unfit, "water-source-unfit",
     "The ingredient is not in the dough, or holds no water to give up.", "--water-from salt",
     "--water-from milk"},
    {Code::yaml_syntax, "yaml-syntax", "The text is not well-formed YAML.", "dough: { salt: 20 g",
     "dough: { salt: 20 g }"},
});

constexpr bool is_in_order() {
    for (std::size_t i = 0; i < catalogue.size(); ++i) {
        const bool is_placed = static_cast<std::size_t>(catalogue[i].code) == i;
        const bool ascends = i == 0 || catalogue[i - 1].name < catalogue[i].name;
        if (!is_placed || !ascends) {
            return false;
        }
    }
    return true;
}
static_assert(is_in_order(), "the catalogue has the order of the enumeration");

} // namespace

std::span<const CatalogueEntry> diagnostic_catalogue() {
    return catalogue;
}

std::string_view name_of(Code code) {
    return catalogue[static_cast<std::size_t>(code)].name;
}

} // namespace leavenwright
