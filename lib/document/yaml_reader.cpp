// The only user of yaml-cpp. Its event interface gives the place of aliases, hands over
// duplicate keys, and tells of text after the root; its node interface does none of that.
#include "document/document.hpp"
#include "document/yaml_faults.hpp"
#include "source/unicode.hpp"

#include <fmt/core.h>
#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <istream>
#include <streambuf>

namespace leavenwright {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

// Thrown through yaml-cpp to end the reading early, once the reason is recorded.
struct StopReading {};

// Reads from memory without a copy.
class ViewBuffer : public std::streambuf {
public:
    explicit ViewBuffer(std::string_view text) {
        char* begin = const_cast<char*>(text.data()); // never written: there is no put area
        setg(begin, begin, begin + text.size());
    }
};

class TreeBuilder : public YAML::EventHandler {
public:
    TreeBuilder(SourceHandle source, std::size_t shift, Diagnostics& diagnostics)
        : source_(std::move(source)), shift_(shift), diagnostics_(diagnostics) {}

    Node take_root() { return std::move(root_); }
    std::size_t twice() const { return twice_; } // keys that stood before

    /// The innermost brace or bracket that is open; nothing if none is.
    std::optional<SourcedText> open_bracket() const {
        for (auto open = open_.rbegin(); open != open_.rend(); ++open) {
            const SourcedText place = place_of({open->node.span.offset, 1});
            if (place.text == "{" || place.text == "[") {
                return place;
            }
        }
        return std::nullopt;
    }

    void OnDocumentStart(const YAML::Mark& mark) override {
        if (has_root_) {
            report_second_root(offset_of(mark));
            throw StopReading{};
        }
    }
    void OnDocumentEnd() override { has_root_ = true; }

    void OnAnchor(const YAML::Mark& mark, const std::string& name) override {
        // The mark is that of the node; the name stands before it, or at it.
        const std::string_view text = source_->text();
        const std::size_t from = std::min(offset_of(mark), text.size());
        std::size_t at = text.substr(from).starts_with("&" + name) ? from : text.rfind("&" + name, from);
        at = at == std::string_view::npos ? from : at;
        diagnostics_.error(Code::alias_refused, place_of({at, name.size() + 1}),
                           "YAML anchors are not read: " + in_quotes("&" + name),
                           "take it out, and write values in full");
    }

    void OnNull(const YAML::Mark& mark, YAML::anchor_t) override {
        add(Node{.kind = Node::Kind::empty,
                 .span = {offset_of(mark), 0},
                 .text = {},
                 .is_quoted = false,
                 .items = {},
                 .entries = {}});
    }

    void OnAlias(const YAML::Mark& mark, YAML::anchor_t) override {
        const SourcedText place = word_at(offset_of(mark));
        diagnostics_.error(Code::alias_refused, place, "YAML aliases are not read: " + in_quotes(place.text),
                           "write the value here in full");
        add(Node{.kind = Node::Kind::empty,
                 .span = place.span,
                 .text = {},
                 .is_quoted = false,
                 .items = {},
                 .entries = {}});
    }

    void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t,
                  const std::string& value) override {
        const std::size_t offset = offset_of(mark);
        refuse_tag(tag, offset);
        Node node{.kind = Node::Kind::text,
                  .span = {offset, 0},
                  .text = value,
                  .is_quoted = false,
                  .items = {},
                  .entries = {}};
        const std::string_view rest = source_->text().substr(std::min(offset, source_->text().size()));
        const char first = rest.empty() ? '\0' : rest.front();
        refuse_hidden_bytes(value, offset);
        node.is_quoted = first == '"' || first == '\'';
        node.span.length = node.is_quoted ? quoted_length(offset, rest) : plain_length(rest, value);
        add(std::move(node));
    }

    void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t,
                         YAML::EmitterStyle::value) override {
        open(Node::Kind::list, mark, tag);
    }
    void OnSequenceEnd() override { close(); }
    void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t,
                    YAML::EmitterStyle::value) override {
        open(Node::Kind::map, mark, tag);
    }
    void OnMapEnd() override { close(); }

private:
    struct Open {
        Node node;
        Node key;
        bool has_key = false;
        bool is_twice = false; // the key stood before
    };

    std::size_t offset_of(const YAML::Mark& mark) const {
        return shift_ + static_cast<std::size_t>(std::max(mark.pos, 0));
    }

    SourcedText place_of(SourceSpan span) const {
        const std::string_view text = source_->text();
        span.offset = std::min(span.offset, text.size());
        span.length = std::min(span.length, text.size() - span.offset);
        return {.source = source_, .span = span, .text = text.substr(span.offset, span.length)};
    }

    SourcedText word_at(std::size_t offset) const {
        const std::string_view rest = source_->text().substr(std::min(offset, source_->text().size()));
        const std::size_t end = rest.find_first_of(" \t\r\n,]}");
        return place_of(
            {offset, std::max<std::size_t>(end == std::string_view::npos ? rest.size() : end, 1)});
    }

    void refuse_tag(const std::string& tag, std::size_t offset) {
        // "!" is what the parser calls a quoted text; written out it is a tag too.
        const bool is_written = word_at(offset).text.starts_with('!');
        if (is_written || (!tag.empty() && tag != "?" && tag != "!")) {
            diagnostics_.error(Code::tag_refused, word_at(offset), "YAML tags are not read",
                               "leave out the word that begins with '!'");
        }
    }

    // An escape in a quoted text can put in what the file itself may not hold.
    void refuse_hidden_bytes(const std::string& value, std::size_t offset) {
        if (const auto fault = find_text_fault(value)) {
            diagnostics_.error(
                Code::control_character, word_at(offset),
                fmt::format("an escape in this text makes a control character (byte 0x{:02X})", fault->byte),
                "write the text without it");
        }
    }

    static std::size_t plain_length(std::string_view rest, std::string_view value) {
        if (rest.starts_with(value)) {
            return value.size();
        }
        const std::size_t end = std::min(rest.find_first_of("\r\n"), rest.size());
        return std::max<std::size_t>(end, 1);
    }

    // yaml-cpp 0.7 takes the end of the text for the closing mark; we do not.
    std::size_t quoted_length(std::size_t offset, std::string_view rest) {
        const char mark = rest.front();
        for (std::size_t at = 1; at < rest.size(); ++at) {
            if (rest[at] == '\\' && mark == '"') {
                ++at;
            } else if (rest[at] == mark) {
                const bool is_doubled = mark == '\'' && at + 1 < rest.size() && rest[at + 1] == mark;
                if (!is_doubled) {
                    return at + 1;
                }
                ++at;
            }
        }
        report_open_quote(offset, mark);
        throw StopReading{};
    }

    void report_open_quote(std::size_t offset, char mark) {
        const std::string_view rest = source_->text().substr(offset);
        const std::size_t end = std::min(rest.find_first_of("\r\n"), rest.size());
        diagnostics_.error(Code::quote_unterminated, place_of({offset, end}),
                           "the quotation mark that opens here never closes",
                           fmt::format("close it with {} on the same line, or leave both out", mark));
    }

    void report_second_root(std::size_t offset) {
        const std::string_view before = source_->text().substr(0, offset);
        const bool is_marked = before.ends_with("---") || before.find("\n---") != std::string_view::npos ||
                               word_at(offset).text.starts_with("---");
        if (is_marked) {
            diagnostics_.error(Code::second_document, word_at(offset),
                               "a second formula begins here; a file holds one",
                               "put it into a file of its own");
        } else {
            diagnostics_.error(Code::text_after_root, word_at(offset),
                               "this stands after the end of the formula",
                               "is the line indented like the one it belongs to?");
        }
    }

    void open(Node::Kind kind, const YAML::Mark& mark, const std::string& tag) {
        const std::size_t offset = offset_of(mark);
        refuse_tag(tag, offset);
        if (open_.size() >= deepest_nesting) {
            diagnostics_.error(Code::nesting_too_deep, word_at(offset),
                               fmt::format("lists within lists are deeper than {} levels", deepest_nesting),
                               "a formula needs four");
            throw StopReading{};
        }
        open_.push_back({.node = Node{.kind = kind,
                                      .span = {offset, 1},
                                      .text = {},
                                      .is_quoted = false,
                                      .items = {},
                                      .entries = {}},
                         .key = {},
                         .has_key = false,
                         .is_twice = false});
    }

    void close() {
        Node node = std::move(open_.back().node);
        open_.pop_back();
        add(std::move(node));
    }

    void add(Node node) {
        const bool is_map_full = !open_.empty() && open_.back().node.entries.size() >= most_entries_of_a_map;
        if (++nodes_ > most_nodes || is_map_full) {
            diagnostics_.error(Code::formula_too_long, word_at(node.span.offset),
                               fmt::format("more than {} entries in a list or {} in the file",
                                           most_entries_of_a_map, most_nodes),
                               "a formula has some dozens; is this the right file?");
            throw StopReading{};
        }
        if (open_.empty()) {
            root_ = std::move(node);
            return;
        }
        Open& parent = open_.back();
        if (parent.node.kind == Node::Kind::list) {
            parent.node.items.push_back(std::move(node));
        } else if (!parent.has_key) {
            take_key(parent, std::move(node));
        } else {
            parent.has_key = false;
            if (node.kind == Node::Kind::empty) {
                node.span = parent.key.span; // the parser puts it on the next line
            }
            if (!parent.is_twice) {
                parent.node.entries.push_back({.key = std::move(parent.key), .value = std::move(node)});
            }
            parent.is_twice = false;
        }
    }

    void take_key(Open& parent, Node key) {
        if (key.kind != Node::Kind::text) {
            diagnostics_.error(Code::value_not_text, word_at(key.span.offset),
                               "a name was expected before the colon",
                               "write a word, a colon, a space, a value");
        } else if (key.text == "<<") {
            diagnostics_.error(Code::alias_refused, place_of(key.span), "YAML merge keys are not read",
                               "write the lines here in full");
        }
        if (key.text.size() > longest_key) {
            diagnostics_.error(Code::formula_too_long, word_at(key.span.offset),
                               fmt::format("a name has more than {} bytes", longest_key),
                               "give it a shorter one");
        }
        for (const Node::Entry& entry : parent.node.entries) {
            if (entry.key.text == key.text && key.kind == Node::Kind::text) {
                diagnostics_
                    .error(Code::key_duplicate, place_of(key.span), in_quotes(key.text) + " is given twice",
                           open_.size() > 1 ? "keep one of the two, or add their amounts up"
                                            : "keep one of the two")
                    .notes.push_back({.message = "first given", .span = entry.key.span});
                parent.is_twice = true;
                ++twice_;
                break;
            }
        }
        parent.key = std::move(key);
        parent.has_key = true;
    }

    SourceHandle source_;
    std::size_t shift_;
    Diagnostics& diagnostics_;
    std::vector<Open> open_;
    Node root_;
    std::size_t nodes_ = 0;
    std::size_t twice_ = 0;
    bool has_root_ = false;
};

} // namespace

std::optional<Document> read_document(const SourceHandle& source, Diagnostics& diagnostics) {
    const std::size_t errors_before = diagnostics.error_count();
    std::string_view text = source->text();
    const SourcedText beginning{.source = source, .span = {0, 0}, .text = {}};
    if (text.size() > largest_document_bytes) {
        diagnostics.error(Code::file_too_large, beginning, "the file has more than 1 MiB",
                          "a formula has a few kilobytes; is this the right file?");
        return std::nullopt;
    }
    if (report_hidden_bytes(source, diagnostics)) {
        return std::nullopt;
    }
    const std::size_t shift = text.starts_with(byte_order_mark) ? byte_order_mark.size() : 0;
    text.remove_prefix(shift);
    // What a bracket costs in the parser adds up to hundreds of megabytes in a file of nothing else.
    const auto brackets =
        std::count_if(text.begin(), text.end(), [](char byte) { return byte == '[' || byte == '{'; });
    if (static_cast<std::size_t>(brackets) > most_nodes) {
        diagnostics.error(Code::formula_too_long, beginning,
                          fmt::format("the file opens more than {} brackets", most_nodes),
                          "a formula has some dozens; is this the right file?");
        return std::nullopt;
    }
    TreeBuilder builder(source, shift, diagnostics);
    ViewBuffer buffer(text);
    std::istream stream(&buffer);
    try {
        YAML::Parser parser(stream);
        while (parser.HandleNextDocument(builder)) {
        }
    } catch (const StopReading&) {
        return std::nullopt;
    } catch (const YAML::Exception& fault) {
        const std::size_t offset =
            fault.mark.is_null() ? 0 : shift + static_cast<std::size_t>(std::max(fault.mark.pos, 0));
        report_syntax(fault.msg, source, offset, builder.open_bracket(), diagnostics);
        return std::nullopt;
    }
    Document document{.source = source, .root = builder.take_root(), .has_twice = builder.twice() > 0};
    if (document.root.kind == Node::Kind::empty) {
        diagnostics.error(Code::file_empty, beginning, "the file holds nothing to read",
                          "begin with: formula: 1, or in a pantry file with: pantry: 1");
    } else if (document.root.kind != Node::Kind::map) {
        SourcedText place = whole_line(source, document.root.span.offset);
        const bool lacks_space =
            document.root.kind == Node::Kind::text && document.root.text.find(':') != std::string::npos;
        diagnostics.error(Code::root_not_a_map, place, "the file does not begin with a key",
                          lacks_space ? "put a space after the colon: formula: 1" : "begin with: formula: 1");
    }
    if (diagnostics.error_count() != errors_before + builder.twice()) {
        return std::nullopt;
    }
    return document;
}

} // namespace leavenwright
