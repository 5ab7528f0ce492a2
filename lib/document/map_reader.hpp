// Reading a map of a document key by key. Keeps account of the keys that were asked for,
// so that the others can be reported, with what was probably meant.
#pragma once

#include "document/document.hpp"

#include <optional>
#include <string_view>
#include <vector>

namespace leavenwright {

class MapReader {
public:
    /// `node` must be a map; `what` names it in messages ("a formula", "a step").
    MapReader(const Document& document, const Node& node, std::string_view what, Diagnostics& diagnostics);

    /// The value of `key` if it is there, with its key counted as read. A key without a value is
    /// reported and counts as not there.
    const Node* take(std::string_view key);
    /// As take, and reports the key's absence.
    const Node* require(std::string_view key, std::string_view example);
    /// As take, for a value that must be one text.
    std::optional<SourcedText> take_text(std::string_view key);
    /// As take_text, for an amount: in quotation marks it is reported.
    std::optional<SourcedText> take_amount(std::string_view key);
    /// A list of texts; empty where the key is not there.
    std::vector<SourcedText> take_texts(std::string_view key);

    /// Entries that no one has asked for yet, in order.
    std::vector<const Node::Entry*> rest() const;
    /// Reports each of them.
    void report_rest();

private:
    const Node::Entry* take_entry(std::string_view key);

    const Document& document_;
    const Node& node_;
    std::string_view what_;
    Diagnostics& diagnostics_;
    std::vector<std::string_view> known_;
};

/// The text of a scalar node; reports lists, maps and nothing at all. `key` is its key.
std::optional<SourcedText> text_of(const Document& document, const Node& key, const Node& value,
                                   Diagnostics& diagnostics);
/// As text_of, for an amount: reports quotation marks.
std::optional<SourcedText> amount_of(const Document& document, const Node& key, const Node& value,
                                     Diagnostics& diagnostics);
/// Whether `value` is a map; reports it if not.
bool expect_map(const Document& document, const Node& key, const Node& value, std::string_view example,
                Diagnostics& diagnostics);

} // namespace leavenwright
