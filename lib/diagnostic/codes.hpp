// The catalogue of diagnostics: every code with its cause, an example that brings it
// about and the same example put right. Codes are permanent.
#pragma once

#include <optional>
#include <span>
#include <string_view>

namespace leavenwright {

enum class Code {
    alias_refused,
    amount_doubtful,
    amount_missing,
    amount_not_positive,
    amount_too_large,
    amounts_disagree,
    blend_moved,
    class_unknown,
    composition_impossible,
    control_character,
    culture_outside_levain,
    dough_and_overall,
    file_empty,
    file_too_large,
    file_unreadable,
    flour_missing,
    flour_percent_sum,
    formula_already,
    formula_size_missing,
    formula_too_long,
    hydration_unusual,
    ingredient_ambiguous,
    ingredient_doubtful,
    ingredient_unknown,
    keep_refused,
    key_duplicate,
    key_missing,
    key_unknown,
    levain_does_not_fit,
    levain_flour_sum,
    levain_flour_unfit,
    levain_hydration_unusual,
    makes_mismatch,
    makes_unreadable,
    markup_unreadable,
    measure_missing,
    name_taken,
    nesting_too_deep,
    number_comma,
    number_unreadable,
    piece_unknown,
    prefermented_unusual,
    quote_unterminated,
    quoted_number,
    recipe_transcribed,
    recipe_without_ingredients,
    root_not_a_map,
    salt_unusual,
    scale_target_unfit,
    second_document,
    size_given_twice,
    soaker_with_yeast,
    stage_empty,
    stage_flour_missing,
    stage_kind_unknown,
    stage_overdrawn,
    stage_size_missing,
    stage_unknown,
    step_unknown,
    tag_refused,
    temperature_out_of_range,
    text_after_amount,
    text_after_root,
    text_not_utf8,
    transcription_doubtful,
    unit_missing,
    unit_unfit,
    unit_unknown,
    value_missing,
    value_not_a_list,
    value_not_a_map,
    value_not_text,
    version_unknown,
    water_missing,
    water_source_unfit,
    yaml_syntax,
};

struct CatalogueEntry {
    Code code;
    std::string_view name;
    std::string_view cause;
    std::string_view wrong;
    std::string_view right;
};

/// All entries, in the order of the enumeration, which is the order of the names.
std::span<const CatalogueEntry> diagnostic_catalogue();
std::string_view name_of(Code code);

} // namespace leavenwright
