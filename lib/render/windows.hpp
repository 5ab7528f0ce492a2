// Windows and ripening for the terminal, as JSON and as a table of curves.
#pragma once

#include "culture/ripening.hpp"
#include "ferment/windows.hpp"
#include "render/weigh_out.hpp"
#include "schedule/search.hpp"

#include <optional>
#include <string>

namespace leavenwright {

/// What `proof` found: the dough as it is, and where its packaged yeast was replaced, the dough as
/// it was written.
struct ProofReport {
    std::string name;
    std::string raised_by; // "a levain, 20 % of the flour prefermented"
    Windows windows;
    std::optional<Windows> as_written;
    std::optional<Answer> answer; // of a search
};

std::string render_proof_text(const ProofReport& report, const TextStyle& style);
std::string render_proof_json(const ProofReport& report);
/// `sour`: compute_souring of the same build.
std::string render_ripening_text(const LevainBuild& build, const Ripening& ripening, const Window& sour,
                                 const TextStyle& style);
std::string render_ripening_json(const LevainBuild& build, const Ripening& ripening, const Window& sour);
/// One line per time: hours after mixing, then the rest with the unit in each column's name.
std::string render_curve_csv(const std::vector<CurvePoint>& curve);
/// The windows alone, below other reports: of the levain's dough, and of the dough as written if
/// there is one.
std::string render_rising_text(const Windows& windows, const Windows* as_written, const TextStyle& style);

} // namespace leavenwright
