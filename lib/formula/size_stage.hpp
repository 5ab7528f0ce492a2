// How large a stage is, in terms of the total flour. Private to the formula folder.
#pragma once

#include "formula/written_formula.hpp"

#include <vector>

namespace leavenwright {

/// A mass up to the total flour F: fixed + share F.
struct Affine {
    double fixed_kg = 0.0;
    double share = 0.0;

    double at(double flour_kg) const { return fixed_kg + share * flour_kg; }
    Affine& operator+=(Affine other) {
        fixed_kg += other.fixed_kg;
        share += other.share;
        return *this;
    }
    friend Affine operator*(double factor, Affine value) {
        return {factor * value.fixed_kg, factor * value.share};
    }
};

/// A line's mass where its percentages are of the total flour.
Affine amount_of(const WrittenLine& line);

/// Flours "33.3 + 33.3 + 33.4" add up in decimals.
inline constexpr double percent_sum_slack = 1e-4;

/// Which flours do not add up.
enum class FlourSum { of_one_list, with_stages, beside_weights };
void report_flour_sum(Diagnostics& diagnostics, const SourcedText& place, double sum, FlourSum which);

/// A stage with its size in terms of F: the fresh flour that its percentages are of.
struct SizedStage {
    Affine fresh_flour;
    Affine flour; // culture's included
    Affine mass;
    Affine used;
};

/// Sums over the lines of a stage, apart for masses and percentages of its fresh flour.
struct StageSums {
    double fixed_kg = 0.0;
    double fixed_flour_kg = 0.0;
    double fixed_water_kg = 0.0;
    double ratio = 0.0;
    double flour_ratio = 0.0;
    double water_ratio = 0.0;
    double culture_kg = 0.0;
    double culture_ratio = 0.0;
    bool has_culture = false;
};

class StageSizer {
public:
    /// `lines` are the formula's own: a preferment may leave the name of the only flour out.
    StageSizer(const std::vector<WrittenLine>& lines, Diagnostics& diagnostics)
        : lines_(lines), diagnostics_(diagnostics) {}

    /// Sizes a stage; fills in its culture's hydration, and its flour where it is left out.
    SizedStage size(WrittenStage& stage);

private:
    static SizedStage size_soaker(const WrittenStage& stage);
    SizedStage size_preferment(WrittenStage& stage);
    void name_only_flour(WrittenStage& stage);
    Hydration culture_hydration(const WrittenStage& stage, const StageSums& sums);
    Affine fresh_flour(const WrittenStage& stage, const StageSums& sums, double culture_flour);

    const std::vector<WrittenLine>& lines_;
    Diagnostics& diagnostics_;
};

} // namespace leavenwright
