// Files in and out: read within a bound, written whole or not at all.
#pragma once

#include "source/source_text.hpp"

#include <string>
#include <string_view>

namespace leavenwright {

struct ReadFile {
    SourceHandle source; // null where it cannot be read
    std::string fault;   // why
};

/// The file at `path`, or standard input for "-". Reads one byte more than a document may have,
/// so that larger ones are refused without being read.
ReadFile read_file(const std::string& path);

/// Writes `text` to `path` by way of a file beside it. An existing file is replaced only with
/// `force`; devices and pipes are written to. Returns what went wrong, empty if nothing did.
std::string write_file(const std::string& path, std::string_view text, bool force);

/// Writes to standard output and returns the exit status; a reader that has gone away is no fault.
int deliver_output(std::string_view text);
void write_error(std::string_view text);

} // namespace leavenwright
