#include "verbs/pantry.hpp"

#include "formula/read_formula.hpp"
#include "render/pantry_text.hpp"
#include "session.hpp"

namespace leavenwright {

int run_pantry(const PantryOptions& options) {
    Session session;
    session.add_pantry_files(options.pantry_files);
    std::string report;
    if (options.names.empty()) {
        report = render_pantry_list(session.pantry, report_columns);
    }
    std::vector<std::string> remarks;
    for (const std::string& name : options.names) {
        const SourcedText text = session.option_text("NAME", name);
        if (resolve_ingredient(text, session.pantry, session.diagnostics, remarks) != nullptr) {
            report += report.empty() ? "" : "\n";
            report += render_pantry_entry(session.pantry, name, session.pantry.find(name), report_columns);
        }
    }
    return session.deliver({}, report);
}

} // namespace leavenwright
