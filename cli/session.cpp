#include "session.hpp"

#include "diagnostic/render_diagnostic.hpp"
#include "exit_status.hpp"
#include "files.hpp"
#include "pantry/read_pantry.hpp"

#include <unistd.h>

#include <cstdlib>

namespace leavenwright {
namespace {

bool wants_color() {
    const char* no_color = std::getenv("NO_COLOR");
    const bool is_refused = no_color != nullptr && *no_color != '\0';
    return !is_refused && ::isatty(STDERR_FILENO) == 1;
}

} // namespace

SourceHandle Session::read(const std::string& path) {
    ReadFile file = read_file(path);
    if (!file.source) {
        write_error("leavenwright: cannot read '" + path + "': " + file.fault + "\n");
        file_status_ = exit_cannot_read;
    }
    return file.source;
}

void Session::add_pantry_files(const std::vector<std::string>& paths) {
    for (const std::string& path : paths) {
        const SourceHandle source = read(path);
        const auto document = source ? read_document(source, diagnostics) : std::nullopt;
        if (document) {
            pantry.add(read_pantry_file(*document, diagnostics).shelf);
        }
    }
}

SourcedText Session::option_text(const std::string& option, const std::string& value) {
    const auto source = std::make_shared<SourceText>(option, value);
    return {.source = source, .span = {0, value.size()}, .text = source->text()};
}

int Session::status() const {
    if (file_status_ != 0) {
        return file_status_;
    }
    return diagnostics.has_errors() ? exit_input_faulty : exit_done;
}

int Session::finish() {
    write_error(render_diagnostics(diagnostics, {.color = wants_color()}));
    return status();
}

int Session::deliver(const OutputOptions& output, const std::string& report) {
    const int so_far = finish();
    if (so_far != exit_done) {
        return so_far;
    }
    if (output.file.empty() || output.file == "-") {
        return write_output(report) ? exit_done : exit_cannot_write;
    }
    const std::string fault = write_file(output.file, report, output.force);
    if (!fault.empty()) {
        write_error("leavenwright: cannot write '" + output.file + "': " + fault + "\n");
        return exit_cannot_write;
    }
    return exit_done;
}

std::string format_of(const OutputOptions& output) {
    if (!output.format.empty()) {
        return output.format;
    }
    const std::string_view file = output.file;
    if (file.ends_with(".json")) {
        return "json";
    }
    return file.ends_with(".yaml") || file.ends_with(".yml") ? "formula" : "text";
}

} // namespace leavenwright
