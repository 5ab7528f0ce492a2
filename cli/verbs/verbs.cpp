#include "verbs/verbs.hpp"

#include "exit_status.hpp"

#include <array>
#include <string_view>
#include <utility>

namespace leavenwright {

int run_verb(const Options& options) {
    constexpr auto verbs = std::to_array<std::pair<std::string_view, int (*)(const Options&)>>({
        {"convert", run_convert},
        {"scale", run_scale},
        {"check", run_check},
        {"proof", run_proof},
        {"ripen", run_ripen},
        {"card", run_card},
        {"water", run_water},
        {"transcribe", run_transcribe},
        {"pantry", run_pantry},
        {"explain", run_explain},
    });
    for (const auto& [name, run] : verbs) {
        if (name == options.verb) {
            return run(options);
        }
    }
    return exit_our_fault; // a row of verb_table without its function; a test runs them all
}

} // namespace leavenwright
