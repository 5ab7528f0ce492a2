#include "formula/size_stage.hpp"

#include <fmt/core.h>

#include <cmath>

namespace leavenwright {
namespace {

StageSums sums_of(const WrittenStage& stage) {
    StageSums sums;
    for (const WrittenLine& line : stage.lines) {
        const double kg = line.is_percentage ? 0.0 : line.mass.value();
        const double ratio = line.is_percentage ? line.ratio : 0.0;
        sums.fixed_kg += kg;
        sums.ratio += ratio;
        if (line.ingredient->is_culture()) {
            sums.culture_kg += kg;
            sums.culture_ratio += ratio;
            sums.has_culture = true;
        } else if (line.ingredient->is_flour()) {
            sums.fixed_flour_kg += kg;
            sums.flour_ratio += ratio;
        } else if (line.ingredient->is_water()) {
            sums.fixed_water_kg += kg;
            sums.water_ratio += ratio;
        }
    }
    return sums;
}

} // namespace

Affine amount_of(const WrittenLine& line) {
    return line.is_percentage ? Affine{0.0, line.ratio} : Affine{line.mass.value(), 0.0};
}

void report_flour_sum(Diagnostics& diagnostics, const SourcedText& place, double sum, FlourSum which) {
    const auto hint = [&]() -> std::string {
        switch (which) {
        case FlourSum::beside_weights:
            return "beside flours with weights they have to stay below 100 %";
        case FlourSum::with_stages:
            return "the stages' flour counts too: write less flour in 'dough', or write everything under "
                   "'overall'";
        case FlourSum::of_one_list:
            break;
        }
        return "all flours together are 100 %: write the shares so that they add up to that";
    };
    diagnostics.error(Code::flour_percent_sum, place,
                      fmt::format("the flours that are percentages add up to {:.6g} %", sum * 100.0), hint());
}

SizedStage StageSizer::size(WrittenStage& stage) {
    SizedStage sized = is_preferment(stage.kind) ? size_preferment(stage) : size_soaker(stage);
    sized.used = sized.mass;
    if (stage.use && !stage.use->is_all) {
        sized.used = amount_of(stage.use->amount);
    }
    return sized;
}

SizedStage StageSizer::size_soaker(const WrittenStage& stage) {
    SizedStage sized;
    for (const WrittenLine& line : stage.lines) {
        const Affine amount = amount_of(line);
        sized.mass += amount;
        if (line.ingredient->is_flour()) {
            sized.flour += amount;
        }
    }
    return sized;
}

void StageSizer::name_only_flour(WrittenStage& stage) {
    const Ingredient* flour = nullptr;
    std::string name;
    bool is_only = true;
    for (const WrittenLine& line : lines_) {
        if (line.ingredient->is_flour() && flour != line.ingredient) {
            is_only = flour == nullptr;
            flour = line.ingredient;
            name = line.name;
        }
    }
    if (flour != nullptr && is_only) {
        stage.lines.insert(stage.lines.begin(), {.name = name,
                                                 .ingredient = flour,
                                                 .place = stage.place,
                                                 .is_percentage = true,
                                                 .ratio = 1.0,
                                                 .mass = {},
                                                 .uncertainty = {}});
    }
}

Hydration StageSizer::culture_hydration(const WrittenStage& stage, const StageSums& sums) {
    if (stage.culture_hydration) {
        return *stage.culture_hydration;
    }
    const bool is_fixed = sums.fixed_flour_kg > 0.0 && sums.flour_ratio == 0.0 && sums.water_ratio == 0.0;
    const bool is_ratio = sums.flour_ratio > 0.0 && sums.fixed_flour_kg == 0.0 && sums.fixed_water_kg == 0.0;
    if (sums.has_culture && !is_fixed && !is_ratio) {
        diagnostics_.error(Code::stage_size_missing, stage.place,
                           "the hydration of the culture in " + in_quotes(stage.name) + " is not known",
                           "add: culture hydration: 100%");
    }
    return Hydration(is_fixed   ? sums.fixed_water_kg / sums.fixed_flour_kg
                     : is_ratio ? sums.water_ratio / sums.flour_ratio
                                : 1.0);
}

SizedStage StageSizer::size_preferment(WrittenStage& stage) {
    StageSums sums = sums_of(stage);
    if (sums.fixed_flour_kg == 0.0 && sums.flour_ratio == 0.0 && stage.prefermented_flour) {
        name_only_flour(stage);
        sums = sums_of(stage);
    }
    if (sums.fixed_flour_kg == 0.0 && sums.flour_ratio == 0.0) {
        diagnostics_.error(Code::stage_flour_missing, stage.place, in_quotes(stage.name) + " has no flour",
                           "write which flour and how much: bread flour: 100 g, or bread flour: 100%");
        return {};
    }
    const Hydration hydration = culture_hydration(stage, sums);
    stage.culture_hydration = hydration;
    const double culture_flour = 1.0 / (1.0 + hydration.value());
    SizedStage sized;
    sized.fresh_flour = fresh_flour(stage, sums, culture_flour);
    sized.flour = sized.fresh_flour;
    sized.flour += Affine{sums.culture_kg * culture_flour, 0.0};
    sized.flour += sums.culture_ratio * culture_flour * sized.fresh_flour;
    sized.mass = Affine{sums.fixed_kg, 0.0};
    sized.mass += sums.ratio * sized.fresh_flour;
    return sized;
}

Affine StageSizer::fresh_flour(const WrittenStage& stage, const StageSums& sums, double culture_flour) {
    if (sums.fixed_flour_kg > 0.0) {
        if (stage.prefermented_flour || stage.weight) {
            diagnostics_.error(Code::size_given_twice, stage.size_place,
                               "the flour of " + in_quotes(stage.name) + " has its weight already",
                               "take this line out, or write the stage's flour as 100%");
        }
        if (sums.flour_ratio >= 1.0) {
            report_flour_sum(diagnostics_, stage.place, sums.flour_ratio, FlourSum::beside_weights);
            return {};
        }
        return {sums.fixed_flour_kg / (1.0 - sums.flour_ratio), 0.0};
    }
    if (std::abs(sums.flour_ratio - 1.0) > percent_sum_slack) {
        report_flour_sum(diagnostics_, stage.place, sums.flour_ratio, FlourSum::of_one_list);
        return {};
    }
    if (stage.prefermented_flour && stage.weight) {
        diagnostics_.error(Code::size_given_twice, stage.size_place,
                           "the size of " + in_quotes(stage.name) + " is given twice",
                           "keep either 'prefermented flour' or 'weight'");
    }
    if (stage.prefermented_flour && stage.use && !stage.use->is_all) {
        diagnostics_.error(Code::size_given_twice, stage.size_place,
                           "the dough takes a part of " + in_quotes(stage.name) +
                               "; its share of the flour is not known then",
                           "give the stage a 'weight', or take all of it");
    }
    if (stage.prefermented_flour) {
        const double per_fresh = 1.0 + sums.culture_ratio * culture_flour;
        return {-sums.culture_kg * culture_flour / per_fresh, stage.prefermented_flour->value / per_fresh};
    }
    Affine whole;
    if (stage.weight) {
        whole = {stage.weight->value.value(), 0.0};
    } else if (stage.use && !stage.use->is_all) {
        whole = amount_of(stage.use->amount);
    } else {
        diagnostics_.error(Code::stage_size_missing, stage.place,
                           in_quotes(stage.name) + " is in percentages; nothing says how much of it there is",
                           "add 'prefermented flour: 20%' or 'weight: 300 g' to it");
        return {};
    }
    whole += Affine{-sums.fixed_kg, 0.0};
    return 1.0 / sums.ratio * whole;
}

} // namespace leavenwright
