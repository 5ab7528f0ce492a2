#include "pantry/resolve_ingredient.hpp"
#include "render/pantry_text.hpp"
#include "session.hpp"
#include "verbs/verbs.hpp"

namespace leavenwright {

int run_pantry(const Options& options) {
    Session session(options);
    std::string report;
    if (options.arguments.empty()) {
        report = render_pantry_list(session.pantry, report_columns);
    }
    std::vector<std::string> remarks;
    for (const std::string& name : session.has_files() ? options.arguments : std::vector<std::string>()) {
        const SourcedText text{.source = nullptr, .span = {0, 0}, .text = name};
        if (resolve_ingredient(text, session.pantry, session.diagnostics, remarks) != nullptr) {
            report += report.empty() ? "" : "\n";
            report += render_pantry_entry(session.pantry, name, session.pantry.find(name), report_columns);
        }
    }
    return session.deliver(report);
}

} // namespace leavenwright
