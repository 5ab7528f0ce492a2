// What every verb does alike: reading its inputs, showing diagnostics, delivering its report.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "formula/formula.hpp"
#include "options.hpp"
#include "pantry/pantry.hpp"
#include "quantity/weigh.hpp"

#include <optional>
#include <string>

namespace leavenwright {

/// Words from the command line as a text with a place; `name` is shown as the file.
SourcedText text_from(std::string_view name, const std::string& words);
/// The beginning of a text: the place of what is reported about the whole.
SourcedText beginning_of(const SourceHandle& source);

class Session {
public:
    /// Reads the user's pantry files, if there are any.
    explicit Session(const Options& options);

    Diagnostics diagnostics;
    Pantry pantry;

    /// Reads a file; says so where it cannot be read and remembers the exit status.
    SourceHandle read(const std::string& path);
    /// Whether every file could be read so far.
    bool has_files() const { return file_status_ == 0; }
    /// The text of a formula: the file itself, or its transcription where it is a recipe's text.
    SourceHandle read_formula_text(const std::string& path);
    std::optional<Formula> read_formula_file(const std::string& path);

    /// The value of an option as a text with a place, for diagnostics; none where it was not given.
    std::optional<SourcedText> option_text(std::string_view option) const;
    /// The scale to weigh for, by --units and --weigh-to.
    WeighingScale scale();
    /// The format asked for, or the one that the ending of the output file means, or text.
    std::string format() const;

    /// Shows diagnostics on standard error; returns the exit status.
    int finish();
    /// Shows diagnostics, then writes the report where it belongs; returns the exit status.
    int deliver(const std::string& report);

private:
    const Options& options_;
    int file_status_ = 0;
};

} // namespace leavenwright
