#include "document/document.hpp"

#include <doctest/doctest.h>

#include <memory>
#include <string>

using namespace leavenwright;
using namespace std::string_literals;

namespace {

struct Read {
    SourceHandle source;
    std::optional<Document> document;
    std::vector<Diagnostic> findings;
    std::string codes;
};

Read read(const std::string& text) {
    Read result{.source = std::make_shared<SourceText>("test.yaml", text),
                .document = {},
                .findings = {},
                .codes = {}};
    Diagnostics diagnostics;
    result.document = read_document(result.source, diagnostics);
    result.findings = diagnostics.in_order();
    for (const Diagnostic& item : result.findings) {
        result.codes += (result.codes.empty() ? "" : " ") + std::string(name_of(item.code));
    }
    const bool is_whole = result.document && !result.document->has_twice;
    CHECK(is_whole == !diagnostics.has_errors());
    return result;
}

std::string codes(const std::string& text) {
    return read(text).codes;
}

// Line and column of the first finding, and the bytes that it stands on.
struct Place {
    std::size_t line = 0;
    std::size_t column = 0;
    std::string text;
};

Place first_place(const Read& result) {
    REQUIRE_FALSE(result.findings.empty());
    const SourceSpan span = result.findings.front().span;
    const SourcePosition position = result.source->position(span.offset);
    return {position.line, position.column,
            std::string(result.source->text().substr(span.offset, span.length))};
}

std::string bytes_at(const Read& result, const Node& node) {
    return std::string(result.source->text().substr(node.span.offset, node.span.length));
}

} // namespace

TEST_CASE("yaml reader: maps, lists and texts") {
    const Read result =
        read("name: Pier loaf\nlist: [a, b]\nmap:\n  key: value\nempty:\nblock:\n  - one\n  - two: 2\n");
    REQUIRE(result.document.has_value());
    const Node& root = result.document->root;
    CHECK(root.kind == Node::Kind::map);
    REQUIRE(root.entries.size() == 5);
    CHECK(root.find("name")->text == "Pier loaf");
    REQUIRE(root.find("list")->items.size() == 2);
    CHECK(root.find("list")->items[1].text == "b");
    CHECK(root.find("map")->find("key")->text == "value");
    CHECK(root.find("empty")->kind == Node::Kind::empty);
    CHECK(root.find("block")->items[1].find("two")->text == "2");
    CHECK(root.find("none") == nullptr);
}

TEST_CASE("yaml reader: keys and values stand where they are") {
    const Read result =
        read("# levûre\nlevûre: 7 g # note\n½ cup: \"a\\tb\"\nflow: { wàter: 'it''s', x: y }\n");
    REQUIRE(result.document.has_value());
    const auto& entries = result.document->root.entries;
    REQUIRE(entries.size() == 3);
    CHECK(bytes_at(result, entries[0].key) == "levûre");
    CHECK(bytes_at(result, entries[0].value) == "7 g");
    CHECK(result.source->position(entries[0].value.span.offset).line == 2);
    CHECK(result.source->position(entries[0].value.span.offset).column == 9);
    CHECK(bytes_at(result, entries[1].key) == "½ cup");
    CHECK(bytes_at(result, entries[1].value) == "\"a\\tb\"");
    CHECK(entries[1].value.text == "a\tb");
    CHECK(entries[1].value.is_quoted);
    const auto& flow = entries[2].value.entries;
    REQUIRE(flow.size() == 2);
    CHECK(bytes_at(result, flow[0].key) == "wàter");
    CHECK(bytes_at(result, flow[0].value) == "'it''s'");
    CHECK(flow[0].value.text == "it's");
    CHECK(bytes_at(result, flow[1].value) == "y");
    CHECK_FALSE(flow[1].value.is_quoted);
}

TEST_CASE("yaml reader: a byte order mark and CRLF move nothing") {
    const Read result = read("\xEF\xBB\xBF"
                             "name: x\r\nsalt: 20 g\r\n");
    REQUIRE(result.document.has_value());
    const auto& entries = result.document->root.entries;
    REQUIRE(entries.size() == 2);
    CHECK(bytes_at(result, entries[0].key) == "name");
    CHECK(bytes_at(result, entries[1].key) == "salt");
    CHECK(bytes_at(result, entries[1].value) == "20 g");
    CHECK(entries[1].value.text == "20 g");
}

TEST_CASE("yaml reader: a second byte order mark does not move places") {
    const Read result = read("\xEF\xBB\xBF\xEF\xBB\xBF"
                             "name: x\nsalt: 20 g\n");
    if (result.document) {
        CHECK(bytes_at(result, result.document->root.entries.back().key) == "salt");
        CHECK(bytes_at(result, result.document->root.entries.back().value) == "20 g");
    }
}

TEST_CASE("yaml reader: an open quotation mark") {
    const Read result = read("name: \"Pier loaf\ndough:\n  salt: 1 g\n");
    CHECK(result.codes == "quote-unterminated");
    CHECK(first_place(result).line == 1);
    CHECK(first_place(result).column == 7);
    CHECK(codes("name: 'Pier loaf\n") == "quote-unterminated");
    CHECK(codes("name: \"a\\\"\n") == "quote-unterminated"); // the mark at the end is escaped
    CHECK(codes("name: 'it''s\n") == "quote-unterminated");
    CHECK(codes("name: 'it''s'\n").empty());
}

TEST_CASE("yaml reader: an anchor hides nothing") {
    CHECK_FALSE(codes("name: &a \"never closed\n").empty());
    CHECK_FALSE(codes("salt: &usual 20 g\n").empty());
}

TEST_CASE("yaml reader: text after the root") {
    const Read result = read("{ a: 1 }\nb: 2\n");
    CHECK_FALSE(result.codes.empty());
    CHECK(first_place(result).line == 2);
    CHECK(codes("- mix\nname: x\n") == "text-after-root");
}

TEST_CASE("yaml reader: a second document") {
    const Read result = read("a: 1\n---\nb: 2\n");
    CHECK(result.codes == "second-document");
    CHECK(codes("---\na: 1\n").empty());
    CHECK(codes("---\na: 1\n...\n").empty());
    CHECK(codes("a: 1\n---\n") == "second-document");
}

TEST_CASE("yaml reader: a key given twice") {
    const Read result = read("a:\n  salt: 10 g\n  wàter: 1 g\n  salt: 8 g\n");
    CHECK(result.codes == "key-duplicate");
    CHECK(first_place(result).line == 4);
    CHECK(first_place(result).column == 3);
    CHECK(first_place(result).text == "salt");
    REQUIRE(result.findings.front().notes.size() == 1);
    CHECK(result.source->position(result.findings.front().notes.front().span.offset).line == 2);
    CHECK(codes("{ a: 1, a: 2 }") == "key-duplicate");
    CHECK(codes("a: 1\n\"a\": 2\n") == "key-duplicate");
    CHECK(codes("a: 1\nb: { a: 2 }\n").empty());
}

TEST_CASE("yaml reader: no space after the colon") {
    const Read result = read("formula:1\n");
    CHECK(result.codes == "root-not-a-map");
    CHECK(result.findings.front().hint.find("space") != std::string::npos);
}

TEST_CASE("yaml reader: the root is a map") {
    CHECK(codes("- a\n- b\n") == "root-not-a-map");
    CHECK(codes("just text\n") == "root-not-a-map");
    CHECK(codes("[a]\n") == "root-not-a-map");
}

TEST_CASE("yaml reader: aliases, merge keys and tags are refused") {
    const Read alias = read("a: 1\nb: *a\n");
    CHECK_FALSE(alias.codes.empty());
    const Read known = read("a: &a 1\nb: *a\n");
    CHECK(known.codes.find("alias-refused") != std::string::npos);
    CHECK(codes("a:\n  <<: b\n").find("alias-refused") != std::string::npos);
    const Read tag = read("a: !!str 1\n");
    CHECK(tag.codes == "tag-refused");
    CHECK(first_place(tag).text == "!!str");
    CHECK(codes("a: !mine { b: 1 }\n") == "tag-refused");
    CHECK(codes("a: !mine [b]\n") == "tag-refused");
}

TEST_CASE("yaml reader: a tab for indentation") {
    const Read result = read("a:\n\tb: 1\n");
    CHECK(result.codes == "yaml-syntax");
    CHECK(first_place(result).line == 2);
    CHECK(result.findings.front().message.find("tab") != std::string::npos);
}

TEST_CASE("yaml reader: nothing to read") {
    CHECK(codes("") == "file-empty");
    CHECK(codes("# only\n# comments\n") == "file-empty");
    CHECK(codes(" \n\n") == "file-empty");
    CHECK(codes("---\n") == "file-empty");
    CHECK(codes("\xEF\xBB\xBF") == "file-empty");
}

TEST_CASE("yaml reader: at most 32 levels") {
    const auto nested = [](std::size_t levels) {
        return "a: " + std::string(levels - 1, '[') + std::string(levels - 1, ']') + "\n";
    };
    CHECK(codes(nested(deepest_nesting)).empty());
    CHECK(codes(nested(deepest_nesting + 1)) == "nesting-too-deep");
    CHECK(codes(std::string(1000, '[')) == "nesting-too-deep");
}

TEST_CASE("yaml reader: bytes that are no text") {
    const Read nul = read("a: 1\nsalt: 20\0 g\n"s);
    CHECK(nul.codes == "control-character");
    CHECK(first_place(nul).line == 2);
    CHECK(first_place(nul).column == 9);
    const Read latin = read("a: 1\nlev\xFBre: 7 g\n");
    CHECK(latin.codes == "text-not-utf8");
    CHECK(first_place(latin).line == 2);
    CHECK(first_place(latin).column == 4);
    CHECK(codes("\xFF\xFE"
                "a\0:\0"s) == "text-not-utf8");
}

TEST_CASE("yaml reader: escapes bring in no control characters") {
    CHECK_FALSE(codes("name: \"a\\e[31mb\"\n").empty());
    CHECK_FALSE(codes("name: \"a\\0b\"\n").empty());
    CHECK(codes("name: \"a\\tb\\nc \\u00e9\"\n").empty());
}

TEST_CASE("yaml reader: limits of size") {
    CHECK(codes(std::string(largest_document_bytes + 1, ' ')) == "file-too-large");
    std::string keys;
    for (std::size_t i = 0; i < most_entries_of_a_map; ++i) {
        keys += "k" + std::to_string(i) + ": 1\n";
    }
    CHECK(codes(keys).empty());
    CHECK(codes(keys + "one more: 1\n") == "formula-too-long");
    std::string items = "list:\n";
    for (std::size_t i = 0; i < most_nodes; ++i) {
        items += "- a\n";
    }
    CHECK(codes(items) == "formula-too-long");
}

TEST_CASE("yaml reader: what is not well-formed") {
    CHECK(codes("dough: { salt: 20 g\n") == "yaml-syntax");
    CHECK(codes("a: [1, 2\n") == "yaml-syntax");
    CHECK(codes("a: b: c\n") == "yaml-syntax");
    CHECK(codes("a: @b\n") == "yaml-syntax");
    CHECK(codes("a: 1\n  b: 2\n") == "yaml-syntax");
    CHECK(codes("? [a]\n: b\n") == "value-not-text");
}

TEST_CASE("yaml reader: texts over several lines") {
    const Read result = read("note: |\n  one\n  two\nfolded: >\n  one\n  two\nplain: one\n  two\n");
    REQUIRE(result.document.has_value());
    CHECK(result.document->root.find("note")->text == "one\ntwo\n");
    CHECK(result.document->root.find("folded")->text == "one two\n");
    CHECK(result.document->root.find("plain")->text == "one two");
}

TEST_CASE("yaml scalar: text reads back as it was") {
    for (const std::string text : {"bread flour",
                                   "",
                                   " a ",
                                   "a: b",
                                   "a #b",
                                   "#",
                                   "null",
                                   "~",
                                   "- a",
                                   "?",
                                   "doubled?",
                                   "a, b",
                                   "[x]",
                                   "{",
                                   "it's",
                                   "\"",
                                   "a\\b",
                                   "two\nlines",
                                   "tab\there",
                                   "...",
                                   "---",
                                   "&a",
                                   "*a",
                                   "!a",
                                   "%",
                                   "@",
                                   "`",
                                   "|",
                                   ">",
                                   "a:",
                                   ":a",
                                   "½ cup",
                                   "\xEF\xBB\xBF",
                                   "\xE2\x80\xA8",
                                   "<<",
                                   "'",
                                   "\r",
                                   "a \n b",
                                   "yes",
                                   "1e5",
                                   "0x10",
                                   "=",
                                   "a -",
                                   "-",
                                   "x: [y",
                                   "key",
                                   "\xC2\xA0"}) {
        CAPTURE(text);
        const std::string scalar = yaml_scalar(text);
        const Read result = read("value: " + scalar + "\nflow: { k: " + scalar + ", l: [" + scalar + "] }\n" +
                                 (text == "<<" ? "" : "map:\n  " + scalar + ": 1\n"));
        REQUIRE_MESSAGE(result.document.has_value(), scalar);
        const Node& root = result.document->root;
        CHECK(root.find("value")->text == text);
        CHECK(root.find("flow")->find("k")->text == text);
        CHECK(root.find("flow")->find("l")->items.at(0).text == text);
        if (text != "<<") {
            CHECK(root.find("map")->entries.at(0).key.text == text);
        }
    }
}
