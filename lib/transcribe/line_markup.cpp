#include "transcribe/line_markup.hpp"

#include <algorithm>
#include <array>
#include <initializer_list>
#include <utility>

namespace leavenwright {
namespace {

constexpr std::size_t longest_link = 300; // bytes; what closes later is no link

constexpr auto entities = std::to_array<std::pair<std::string_view, std::string_view>>({
    {"&nbsp;", " "},
    {"&amp;", "&"},
    {"&quot;", "\""},
    {"&apos;", "'"},
    {"&#39;", "'"},
    {"&#039;", "'"},
    {"&rsquo;", "'"},
    {"&lt;", "<"},
    {"&gt;", ">"},
    {"&deg;", "\xC2\xB0"},
    {"&#176;", "\xC2\xB0"},
    {"&frac14;", "\xC2\xBC"},
    {"&#188;", "\xC2\xBC"},
    {"&frac12;", "\xC2\xBD"},
    {"&#189;", "\xC2\xBD"},
    {"&frac34;", "\xC2\xBE"},
    {"&#190;", "\xC2\xBE"},
    {"&frac13;", "\xE2\x85\x93"},
    {"&frac23;", "\xE2\x85\x94"},
    {"&frac18;", "\xE2\x85\x9B"},
    {"&frasl;", "/"},
    {"&ndash;", "-"},
    {"&mdash;", " - "},
    {"&times;", "x"},
    {"&eacute;", "\xC3\xA9"},
    {"&egrave;", "\xC3\xA8"},
});

constexpr auto tags = std::to_array<std::string_view>(
    {"br",      "b",       "i",   "em",   "strong", "u",   "s",    "sub",    "sup", "small",
     "span",    "a",       "p",   "li",   "ul",     "ol",  "div",  "center", "hr",  "img",
     "details", "summary", "kbd", "mark", "del",    "ins", "nobr", "wbr"});

class MarkupReader {
public:
    explicit MarkupReader(std::string_view line) : line_(line) {}

    std::string read() {
        out_.reserve(line_.size());
        while (at_ < line_.size()) {
            const char byte = line_[at_];
            const bool is_taken = (byte == '&' && take_entity()) || (byte == '\'' && take_quotes()) ||
                                  (byte == '[' && (take_wiki_link() || take_link())) ||
                                  (byte == '{' && take_template()) || (byte == '<' && take_tag()) ||
                                  (byte == '!' && rest().substr(1).starts_with('[') && take_picture());
            if (!is_taken) {
                out_ += byte;
                ++at_;
            }
        }
        return std::move(out_);
    }

private:
    std::string_view rest() const { return line_.substr(at_); }

    bool take_entity() {
        for (const auto& [name, character] : entities) {
            if (rest().starts_with(name)) {
                out_ += character;
                at_ += name.size();
                return true;
            }
        }
        return false;
    }

    // '''bold''' and ''slanted''; behind a number they are inches.
    bool take_quotes() {
        const std::size_t end = rest().find_first_not_of('\'');
        const std::size_t length = end == std::string_view::npos ? rest().size() : end;
        const bool is_behind_number = at_ > 0 && line_[at_ - 1] >= '0' && line_[at_ - 1] <= '9';
        if (length < 2 || (length == 2 && is_behind_number)) {
            return false;
        }
        at_ += length;
        return true;
    }

    bool take_wiki_link() {
        const std::string_view link = rest().substr(0, longest_link);
        const std::size_t end = link.starts_with("[[") ? link.find("]]") : std::string_view::npos;
        if (end == std::string_view::npos) {
            return false;
        }
        std::string_view words = link.substr(2, end - 2);
        const std::size_t bar = words.find('|');
        words.remove_prefix(bar == std::string_view::npos ? 0 : bar + 1);
        out_ += words;
        at_ += end + 2;
        return true;
    }

    // "1/3" of "{{frac|1|3}}", "2 1/2" of "{{frac|2|1|2}}"
    static std::string fraction_of(std::string_view parts) {
        std::string text(parts);
        const auto bars = std::count(text.begin(), text.end(), '|');
        if (bars == 2) {
            text[text.find('|')] = ' ';
        }
        if (bars == 1 || bars == 2) {
            text[text.find('|')] = '/';
        }
        const bool is_plain = text.find('=') == std::string::npos; // "num=1|den=2" is not read
        return bars > 2 || !is_plain ? std::string() : text;
    }

    // "{{Tablespoon}}" of a wiki is its name; one that holds more, "{{summary|bread|2}}", is none of the
    // text.
    bool take_template() {
        const std::string_view text = rest().substr(0, longest_link);
        const std::size_t end = text.starts_with("{{") ? text.find("}}") : std::string_view::npos;
        if (end == std::string_view::npos) {
            return false;
        }
        const std::string_view words = text.substr(2, end - 2);
        if (words.starts_with("frac|") || words.starts_with("fraction|")) {
            out_ += fraction_of(words.substr(words.find('|') + 1));
            at_ += end + 2;
            return true;
        }
        out_ += words.find('|') == std::string_view::npos ? words : std::string_view();
        at_ += end + 2;
        return true;
    }

    // "<br>" and "<b>" among Markdown, and "<!-- seen by nobody -->".
    bool take_tag() {
        const std::string_view text = rest().substr(0, longest_link);
        if (text.starts_with("<!--")) {
            const std::size_t end = text.find("-->");
            at_ += end == std::string_view::npos ? 0 : end + 3;
            return end != std::string_view::npos;
        }
        const std::size_t begin = text.starts_with("</") ? 2 : 1;
        const std::size_t name_end = std::min(text.find_first_of(" />", begin), text.size());
        const std::string_view name = text.substr(begin, name_end - begin);
        const std::size_t end = text.find('>', begin);
        if (end == std::string_view::npos || std::find(tags.begin(), tags.end(), name) == tags.end()) {
            return false;
        }
        out_ += name == "br" ? " " : "";
        at_ += end + 1;
        return true;
    }

    // Bytes of "[words](target)", and of its words; 0 where it is no link.
    std::pair<std::size_t, std::size_t> link_length(std::size_t begin) const {
        const std::string_view link = line_.substr(begin, longest_link);
        const std::size_t middle = link.find(']');
        const std::size_t end = middle != std::string_view::npos && link.substr(middle).starts_with("](")
                                    ? link.find(')', middle)
                                    : std::string_view::npos;
        return end == std::string_view::npos ? std::pair<std::size_t, std::size_t>(0, 0)
                                             : std::pair<std::size_t, std::size_t>(end + 1, middle - 1);
    }

    bool take_link() {
        const auto [length, words] = link_length(at_);
        out_ += line_.substr(at_ + 1, words);
        at_ += length;
        return length > 0;
    }

    bool take_picture() {
        const std::size_t length = link_length(at_ + 1).first;
        at_ += length > 0 ? length + 1 : 0;
        return length > 0;
    }

    std::string_view line_;
    std::size_t at_ = 0;
    std::string out_;
};

std::string_view trimmed(std::string_view text) {
    const std::size_t begin = text.find_first_not_of(" \t\"'");
    const std::size_t end = text.find_last_not_of(" \t\r\"'");
    return begin == std::string_view::npos ? std::string_view() : text.substr(begin, end + 1 - begin);
}

// The value of the first of `keys` in "qty: 500, unit: g, item: flour"; quotes keep their commas.
std::string value_of(std::string_view map, std::initializer_list<std::string_view> keys) {
    while (!map.empty()) {
        std::size_t end = 0;
        for (char quote = '\0'; end < map.size() && (quote != '\0' || map[end] != ','); ++end) {
            const bool is_quote =
                map[end] == '"' || (map[end] == '\'' && (quote != '\0' || end == 0 || map[end - 1] == ' '));
            quote = !is_quote ? quote : quote == map[end] ? '\0' : quote == '\0' ? map[end] : quote;
        }
        const std::string_view pair = map.substr(0, end);
        const std::size_t colon = std::min(pair.find(':'), pair.size());
        if (std::find(keys.begin(), keys.end(), trimmed(pair.substr(0, colon))) != keys.end()) {
            return std::string(trimmed(pair.substr(std::min(colon + 1, pair.size()))));
        }
        map.remove_prefix(std::min(end + 1, map.size()));
    }
    return {};
}

} // namespace

std::string without_map(std::string_view line) {
    constexpr std::size_t longest = 400;
    const std::size_t end = line.find_last_not_of(" \t\r,"); // of a list of them
    const bool is_map =
        line.starts_with('{') && !line.starts_with("{{") && end < longest && end > 1 && line[end] == '}';
    const std::string_view map = is_map ? line.substr(1, end - 1) : std::string_view();
    const std::string name = value_of(map, {"item", "name", "ingredient", "food"});
    if (name.empty()) {
        return std::string(line);
    }
    std::string text;
    for (const std::string& part :
         {value_of(map, {"qty", "quantity", "amount", "value"}), value_of(map, {"unit", "units"}), name}) {
        text += part == "null" ? "" : (text.empty() || part.empty() ? "" : " ") + part;
    }
    return text;
}

std::string without_markup(std::string_view line) {
    return line.find_first_of("[&'!{<") == std::string_view::npos ? std::string(line)
                                                                  : MarkupReader(line).read();
}

} // namespace leavenwright
