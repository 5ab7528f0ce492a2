#include "source/unicode.hpp"

#include <utf8proc.h>

#include <algorithm>
#include <cstdlib>

namespace leavenwright {
namespace {

struct Character {
    utf8proc_int32_t code_point; // negative where the bytes are not UTF-8
    std::size_t length;
};

Character first_character(std::string_view text) {
    const auto lead = static_cast<unsigned char>(text.front());
    if (lead < 0x80U) {
        return {lead, 1};
    }
    utf8proc_int32_t code_point = -1;
    const auto* bytes = reinterpret_cast<const utf8proc_uint8_t*>(text.data());
    const auto available = static_cast<utf8proc_ssize_t>(std::min<std::size_t>(text.size(), 4));
    const utf8proc_ssize_t used = utf8proc_iterate(bytes, available, &code_point);
    if (used <= 0) {
        return {-1, 1};
    }
    return {code_point, static_cast<std::size_t>(used)};
}

bool is_control(utf8proc_int32_t code_point) {
    return code_point < 0x20 || (code_point >= 0x7F && code_point < 0xA0);
}

// Marks that reorder the text around them could make a message read as another.
bool reorders_text(utf8proc_int32_t code_point) {
    return (code_point >= 0x202A && code_point <= 0x202E) || (code_point >= 0x2066 && code_point <= 0x2069);
}

std::size_t width_of(utf8proc_int32_t code_point) {
    if (code_point < 0) {
        return 1;
    }
    return static_cast<std::size_t>(std::max(utf8proc_charwidth(code_point), 0));
}

bool is_plain_ascii(std::string_view text) {
    return std::all_of(text.begin(), text.end(), [](char byte) { return byte >= ' ' && byte < 0x7F; });
}

// Words of small letters with a space between them.
bool is_folded(std::string_view name) {
    char last = ' ';
    for (const char byte : name) {
        const bool is_letter = byte >= 'a' && byte <= 'z';
        if (!is_letter && (byte != ' ' || last == ' ')) {
            return false;
        }
        last = byte;
    }
    return last != ' ';
}

std::string without_accents(std::string_view name) {
    const auto options =
        static_cast<utf8proc_option_t>(UTF8PROC_STABLE | UTF8PROC_COMPOSE | UTF8PROC_CASEFOLD |
                                       UTF8PROC_STRIPMARK | UTF8PROC_COMPAT | UTF8PROC_IGNORE);
    utf8proc_uint8_t* mapped = nullptr;
    const auto* bytes = reinterpret_cast<const utf8proc_uint8_t*>(name.data());
    const utf8proc_ssize_t length =
        utf8proc_map(bytes, static_cast<utf8proc_ssize_t>(name.size()), &mapped, options);
    if (length < 0) {
        return std::string(name);
    }
    std::string result(reinterpret_cast<const char*>(mapped), static_cast<std::size_t>(length));
    std::free(mapped); // NOLINT: utf8proc hands over malloc'ed memory
    return result;
}

} // namespace

std::optional<TextFaultPlace> find_text_fault(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const auto byte = static_cast<unsigned char>(text[at]);
        if (byte >= 0x20U && byte < 0x7FU) {
            ++at;
            continue;
        }
        const Character character = first_character(text.substr(at, 4));
        if (character.code_point < 0) {
            return TextFaultPlace{TextFault::not_utf8, at, byte};
        }
        const bool is_layout = byte == '\t' || byte == '\n' || byte == '\r';
        if (is_control(character.code_point) && !is_layout) {
            return TextFaultPlace{TextFault::control_character, at, byte};
        }
        at += character.length;
    }
    return std::nullopt;
}

std::size_t display_width(std::string_view text) {
    if (is_plain_ascii(text)) {
        return text.size();
    }
    std::size_t width = 0;
    while (!text.empty()) {
        const Character character = first_character(text);
        width += width_of(character.code_point);
        text.remove_prefix(character.length);
    }
    return width;
}

std::string_view fit_width(std::string_view text, std::size_t columns) {
    std::size_t width = 0;
    std::size_t at = 0;
    while (at < text.size()) {
        const Character character = first_character(text.substr(at));
        width += width_of(character.code_point);
        if (width > columns) {
            break;
        }
        at += character.length;
    }
    return text.substr(0, at);
}

std::size_t character_length(std::string_view text) {
    return text.empty() ? 0 : first_character(text).length;
}

std::string fold_name(std::string_view name) {
    if (is_folded(name)) { // as most names are written
        return std::string(name);
    }
    std::string folded = is_plain_ascii(name) ? std::string(name) : without_accents(name);
    std::string result;
    result.reserve(folded.size());
    for (std::size_t at = 0; at < folded.size(); ++at) {
        char byte = folded[at];
        if ((static_cast<unsigned char>(byte) & 0x80U) != 0U) {
            const std::string_view rest = std::string_view(folded).substr(at);
            if (rest.starts_with("\xC5\x93") || rest.starts_with("\xC3\xA6")) { // the ligatures oe and ae
                result += rest.starts_with("\xC5\x93") ? "oe" : "ae";
                ++at;
                continue;
            }
            if (rest.starts_with("\xE2\x80\x99")) { // an apostrophe
                at += 2;
                continue;
            }
        }
        if (byte == '\'') {
            continue;
        }
        if (byte >= 'A' && byte <= 'Z') {
            byte = static_cast<char>(byte - 'A' + 'a');
        }
        if (byte == '-' || byte == '_' || byte == '\t' || byte == '\n' || byte == '\r') {
            byte = ' ';
        }
        if (byte != ' ' || (!result.empty() && result.back() != ' ')) {
            result.push_back(byte);
        }
    }
    if (!result.empty() && result.back() == ' ') {
        result.pop_back();
    }
    return result;
}

std::string on_one_line(std::string_view text) {
    std::string words;
    bool is_apart = false;
    for (const char byte : text) {
        if (byte == ' ' || byte == '\t' || byte == '\n' || byte == '\r') {
            is_apart = !words.empty();
        } else {
            words += is_apart ? " " : "";
            words += byte;
            is_apart = false;
        }
    }
    return words;
}

std::string printable(std::string_view text, std::size_t most) {
    if (text.size() <= most && is_plain_ascii(text)) {
        return std::string(text);
    }
    std::string result;
    std::size_t width = 0;
    while (!text.empty()) {
        const Character character = first_character(text);
        const std::size_t character_width = width_of(character.code_point);
        if (width + character_width > most) {
            return result + "\xE2\x80\xA6";
        }
        if (character.code_point < 0 || is_control(character.code_point) ||
            reorders_text(character.code_point)) {
            result += "\xEF\xBF\xBD";
            width += 1;
        } else {
            result.append(text.substr(0, character.length));
            width += character_width;
        }
        text.remove_prefix(character.length);
    }
    return result;
}

} // namespace leavenwright
