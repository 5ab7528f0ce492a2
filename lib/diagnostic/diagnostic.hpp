// Findings about an input, as values: what is wrong, where, and what to type instead.
// Readers record them and go on, so that one run shows all of them.
#pragma once

#include "diagnostic/codes.hpp"
#include "source/source_text.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

enum class Severity { error, warning };

struct Diagnostic {
    Severity severity = Severity::error;
    Code code = Code::yaml_syntax;
    SourceHandle source; // may be empty for findings that stand nowhere
    SourceSpan span;
    std::string message;
    std::string hint;

    /// A second place that belongs to the finding.
    struct Note {
        std::string message;
        SourceSpan span;
    };
    std::vector<Note> notes;
};

class Diagnostics {
public:
    /// Records an error at `place` and returns it for notes to be added.
    Diagnostic& error(Code code, const SourcedText& place, std::string message, std::string hint = {});
    Diagnostic& warning(Code code, const SourcedText& place, std::string message, std::string hint = {});

    bool has_errors() const { return errors_ > 0; }
    std::size_t error_count() const { return errors_; }
    bool empty() const { return items_.empty(); }

    /// By file, then place; a code that is repeated at one place is left out.
    std::vector<Diagnostic> in_order() const;

private:
    Diagnostic& add(Severity severity, Code code, const SourcedText& place, std::string message,
                    std::string hint);

    std::vector<Diagnostic> items_;
    std::size_t errors_ = 0;
};

/// The user's own words inside a message: quoted, shortened, and harmless to a terminal.
std::string in_quotes(std::string_view words);

/// `count` and the noun in the number that it needs: "1 error", "3 errors".
std::string counted(std::size_t count, std::string_view noun);

} // namespace leavenwright
