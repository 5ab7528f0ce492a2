#include "diagnostic/diagnostic.hpp"

#include "source/unicode.hpp"

#include <algorithm>
#include <tuple>
#include <utility>

namespace leavenwright {

Diagnostic& Diagnostics::add(Severity severity, Code code, const SourcedText& place, std::string message,
                             std::string hint) {
    errors_ += severity == Severity::error ? 1U : 0U;
    items_.push_back({.severity = severity,
                      .code = code,
                      .source = place.source,
                      .span = place.span,
                      .message = std::move(message),
                      .hint = std::move(hint),
                      .notes = {}});
    return items_.back();
}

Diagnostic& Diagnostics::error(Code code, const SourcedText& place, std::string message, std::string hint) {
    return add(Severity::error, code, place, std::move(message), std::move(hint));
}

Diagnostic& Diagnostics::warning(Code code, const SourcedText& place, std::string message, std::string hint) {
    return add(Severity::warning, code, place, std::move(message), std::move(hint));
}

std::vector<Diagnostic> Diagnostics::in_order() const {
    std::vector<Diagnostic> sorted = items_;
    const auto name = [](const Diagnostic& item) {
        return item.source ? std::string_view(item.source->name()) : std::string_view();
    };
    const auto place = [&](const Diagnostic& item) {
        return std::tuple(name(item), item.span.offset, item.span.length, item.code);
    };
    std::stable_sort(sorted.begin(), sorted.end(), [&](const Diagnostic& left, const Diagnostic& right) {
        return place(left) < place(right);
    });
    const auto same = [&](const Diagnostic& left, const Diagnostic& right) {
        return place(left) == place(right) && left.message == right.message;
    };
    sorted.erase(std::unique(sorted.begin(), sorted.end(), same), sorted.end());
    return sorted;
}

std::string in_quotes(std::string_view words) {
    return "'" + printable(words, 48) + "'";
}

std::string counted(std::size_t count, std::string_view noun) {
    return std::to_string(count) + " " + std::string(noun) + (count == 1 ? "" : "s");
}

} // namespace leavenwright
