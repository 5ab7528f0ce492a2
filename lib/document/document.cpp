#include "document/document.hpp"

#include <algorithm>

namespace leavenwright {

const Node* Node::find(std::string_view key) const {
    for (const Entry& entry : entries) {
        if (entry.key.text == key) {
            return &entry.value;
        }
    }
    return nullptr;
}

namespace {

bool is_plain_safe(std::string_view text) {
    constexpr std::string_view never_first = " ?:,[]{}#&*!|>'\"%@`~<";
    if (text.empty() || text.back() == ' ' || text == "null" || text == "Null" || text == "NULL" ||
        never_first.find(text.front()) != std::string_view::npos || text.starts_with("...")) {
        return false;
    }
    const bool is_dash = text.front() == '-' && (text.size() == 1 || text[1] == ' ' || text[1] == '-');
    if (is_dash) { // a list, or the mark between documents
        return false;
    }
    const bool has_layout = std::any_of(text.begin(), text.end(), [](char byte) {
        return static_cast<unsigned char>(byte) < ' ' || byte == '\x7F';
    });
    // Marks that end a plain text, in block or in flow.
    return !has_layout && text.find(": ") == std::string_view::npos && text.back() != ':' &&
           text.find(" #") == std::string_view::npos &&
           text.find_first_of(",[]{}?\"\\") == std::string_view::npos &&
           text.find("\xEF\xBB\xBF") == std::string_view::npos &&
           text.find("\xC2\x85") == std::string_view::npos &&
           text.find("\xE2\x80\xA8") == std::string_view::npos &&
           text.find("\xE2\x80\xA9") == std::string_view::npos;
}

} // namespace

std::string yaml_scalar(std::string_view text) {
    if (is_plain_safe(text)) {
        return std::string(text);
    }
    std::string quoted = "\"";
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    for (std::size_t at = 0; at < text.size(); ++at) {
        if (text.substr(at).starts_with(byte_order_mark)) {
            quoted += "\\uFEFF";
            at += byte_order_mark.size() - 1;
            continue;
        }
        const char byte = text[at];
        switch (byte) {
        case '"':
            quoted += "\\\"";
            break;
        case '\\':
            quoted += "\\\\";
            break;
        case '\n':
            quoted += "\\n";
            break;
        case '\t':
            quoted += "\\t";
            break;
        case '\r':
            quoted += "\\r";
            break;
        default:
            quoted += byte;
        }
    }
    return quoted + "\"";
}

} // namespace leavenwright
