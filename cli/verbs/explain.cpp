#include "diagnostic/codes.hpp"
#include "diagnostic/diagnostic.hpp"
#include "diagnostic/suggestion.hpp"
#include "exit_status.hpp"
#include "files.hpp"
#include "session.hpp"
#include "source/wrap_text.hpp"
#include "verbs/verbs.hpp"

#include <algorithm>
#include <vector>

namespace leavenwright {
namespace {

std::string page_of(const CatalogueEntry& entry) {
    return std::string(entry.name) + "\n" + wrap_text(entry.cause, "  ", "  ", report_columns) +
           wrap_text(entry.wrong, "  wrong: ", "         ", report_columns) +
           wrap_text(entry.right, "  right: ", "         ", report_columns);
}

} // namespace

int run_explain(const Options& options) {
    Session session(options);
    std::vector<std::string_view> names;
    for (const CatalogueEntry& entry : diagnostic_catalogue()) {
        names.push_back(entry.name);
    }
    std::string report;
    if (options.arguments.empty()) {
        for (const CatalogueEntry& entry : diagnostic_catalogue()) {
            report += std::string(entry.name) + "\n" + wrap_text(entry.cause, "  ", "  ", report_columns);
        }
    }
    int status = exit_done;
    for (const std::string& code : options.arguments) {
        const auto known = std::find(names.begin(), names.end(), code);
        if (known != names.end()) {
            const auto index = static_cast<std::size_t>(known - names.begin());
            report += (report.empty() ? "" : "\n") + page_of(diagnostic_catalogue()[index]);
            continue;
        }
        const std::string_view near = nearest_word(code, names);
        write_error("leavenwright: no diagnostic has the code " + in_quotes(code) + "\n" +
                    (near.empty() ? "'leavenwright explain' lists the codes.\n"
                                  : "did you mean '" + std::string(near) + "'?\n"));
        status = exit_wrong_usage;
    }
    const int delivered = session.deliver(report);
    return status == exit_done ? delivered : status;
}

} // namespace leavenwright
