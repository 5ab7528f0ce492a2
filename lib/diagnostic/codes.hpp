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
    clock_time_unreadable,
    composition_impossible,
    control_character,
    culture_outside_levain,
    directions_unread,
    dough_and_overall,
    fermentation_stopped,
    file_empty,
    file_too_large,
    file_unreadable,
    flour_missing,
    flour_percent_sum,
    font_missing,
    formula_already,
    formula_size_missing,
    formula_too_long,
    hydration_unusual,
    ingredient_ambiguous,
    ingredient_doubtful,
    ingredient_unknown,
    ingredients_in_prose,
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
    mix_temperature_missing,
    name_taken,
    nesting_too_deep,
    never_ready,
    no_answer,
    nothing_ferments,
    number_comma,
    number_unreadable,
    out_of_range,
    over_proofed,
    pdf_unavailable,
    piece_unknown,
    prefermented_unusual,
    profile_malformed,
    profile_short,
    quote_unterminated,
    quoted_number,
    recipe_batches,
    recipe_transcribed,
    recipe_without_ingredients,
    root_not_a_map,
    salt_unusual,
    scale_target_unfit,
    second_document,
    seed_unfit,
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
    timeline_unknown,
    too_warm,
    transcription_doubtful,
    under_proofed,
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
    water_temperature_unfit,
    water_unweighed,
    yaml_syntax,
    yeast_unusual,
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
