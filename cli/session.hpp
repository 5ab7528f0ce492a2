// What every verb does alike: reading its inputs, showing diagnostics, delivering its report.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "options.hpp"
#include "pantry/pantry.hpp"

#include <optional>
#include <string>
#include <vector>

namespace leavenwright {

class Session {
public:
    Diagnostics diagnostics;
    Pantry pantry;

    /// Reads a file; says so where it cannot be read and remembers the exit status.
    SourceHandle read(const std::string& path);
    /// Adds the ingredients of the user's pantry files.
    void add_pantry_files(const std::vector<std::string>& paths);
    /// The value of an option as a text with a place, for diagnostics.
    SourcedText option_text(const std::string& option, const std::string& value);

    /// The exit status so far.
    int status() const;
    /// Shows diagnostics on standard error; returns the exit status.
    int finish();
    /// Shows diagnostics, then writes the report where it belongs; returns the exit status.
    int deliver(const OutputOptions& output, const std::string& report);

private:
    int file_status_ = 0;
};

/// The format asked for, or the one that the file's ending means, or text.
std::string format_of(const OutputOptions& output);

} // namespace leavenwright
