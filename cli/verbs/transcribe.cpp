#include "transcribe/transcribe.hpp"

#include "exit_status.hpp"
#include "files.hpp"
#include "render/transcription.hpp"
#include "session.hpp"
#include "verbs/verbs.hpp"

namespace leavenwright {
namespace {

bool has_formula_key(const SourceText& source) {
    for (std::size_t number = 1; number <= source.line_count(); ++number) {
        if (source.line(number).starts_with("formula:")) {
            return true;
        }
    }
    return false;
}

} // namespace

int run_transcribe(const Options& options) {
    Session session(options);
    const SourceHandle source = session.has_files() ? session.read(options.arguments.front()) : nullptr;
    if (!source) {
        return session.finish();
    }
    const SourcedText beginning{.source = source, .span = {0, 0}, .text = {}};
    if (has_formula_key(*source)) {
        session.diagnostics.error(Code::formula_already, beginning, "the file is a formula already",
                                  "convert, scale and check read it as it is");
        return session.finish();
    }
    const auto transcription = transcribe(source, session.pantry, session.diagnostics);
    if (!transcription) {
        return session.finish();
    }
    if (options.has("--strict") && transcription->has_doubt()) {
        session.diagnostics.error(Code::transcription_doubtful, beginning, summary_of(*transcription),
                                  "mend the lines named above, or leave out --strict");
    }
    const std::string report = session.format() == "json"
                                   ? render_transcription_json(*transcription, session.diagnostics)
                                   : transcription->formula;
    const int status = session.deliver(report);
    if (status == exit_done && options.value("--diagnostics") != "json") {
        write_error("transcribed " + summary_of(*transcription) + "\n");
    }
    return status;
}

} // namespace leavenwright
