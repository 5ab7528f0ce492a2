// The tree of a YAML text, with the place of every key and value: maps, lists and texts,
// nothing else. What YAML lets pass that a formula should not contain has been reported
// by the time a Document exists.
#pragma once

#include "diagnostic/diagnostic.hpp"
#include "source/source_text.hpp"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace leavenwright {

class Node {
public:
    enum class Kind { empty, text, list, map };
    struct Entry;

    Kind kind = Kind::empty;
    SourceSpan span;
    std::string text;
    bool is_quoted = false;
    std::vector<Node> items;    // of a list
    std::vector<Entry> entries; // of a map, in the order of the file

    /// The value of a key of a map; null if it is not there.
    const Node* find(std::string_view key) const;
};

struct Node::Entry {
    Node key; // always a text
    Node value;
};

struct Document {
    SourceHandle source;
    Node root; // a map
    /// A key stood twice, and was recorded: the first is kept, so that more faults can be found, but no value
    /// may be made of the document.
    bool has_twice = false;

    SourcedText place(const Node& node) const {
        return {.source = source, .span = node.span, .text = node.text};
    }
};

/// Largest input that is read, and deepest nesting.
inline constexpr std::size_t largest_document_bytes = std::size_t{1} << 20;
inline constexpr std::size_t deepest_nesting = 32;
inline constexpr std::size_t most_nodes = 50000;
inline constexpr std::size_t longest_key = 500; // bytes
inline constexpr std::size_t most_entries_of_a_map = 2000;

/// Reads a YAML text whose root is a map. Records every fault it can see; returns
/// nothing if there was an error other than a key that stands twice. Time and memory are bounded by the
/// limits above.
std::optional<Document> read_document(const SourceHandle& source, Diagnostics& diagnostics);

/// Quotes `text` for YAML where it would not read back as the same plain text.
std::string yaml_scalar(std::string_view text);

} // namespace leavenwright
