#include "document/map_reader.hpp"

#include "diagnostic/suggestion.hpp"
#include "source/unicode.hpp"

#include <algorithm>

namespace leavenwright {

std::optional<SourcedText> text_of(const Document& document, const Node& key, const Node& value,
                                   Diagnostics& diagnostics) {
    if (value.kind == Node::Kind::text) {
        return document.place(value);
    }
    if (value.kind == Node::Kind::empty) {
        diagnostics.error(Code::value_missing, document.place(key), in_quotes(key.text) + " has no value",
                          "write one behind the colon, or take the line out");
    } else {
        diagnostics.error(Code::value_not_text, document.place(key),
                          in_quotes(key.text) + " holds " +
                              (value.kind == Node::Kind::map ? "keys" : "a list") +
                              " where one value was expected",
                          "write it behind the colon, on the same line");
    }
    return std::nullopt;
}

std::optional<SourcedText> amount_of(const Document& document, const Node& key, const Node& value,
                                     Diagnostics& diagnostics) {
    const auto text = text_of(document, key, value, diagnostics);
    if (text && value.is_quoted) {
        diagnostics.error(Code::quoted_number, *text,
                          "the amount of " + in_quotes(key.text) + " is in quotation marks",
                          "write it without: " + printable(value.text, 48));
        return std::nullopt;
    }
    return text;
}

bool expect_map(const Document& document, const Node& key, const Node& value, std::string_view example,
                Diagnostics& diagnostics) {
    if (value.kind == Node::Kind::map) {
        return true;
    }
    if (value.kind == Node::Kind::empty) {
        diagnostics.error(Code::value_missing, document.place(key), in_quotes(key.text) + " holds nothing",
                          "write what belongs to it on the lines below, set in by two spaces: " +
                              std::string(example));
    } else {
        diagnostics.error(Code::value_not_a_map, document.place(key),
                          in_quotes(key.text) + " needs keys with values",
                          "write them on the lines below, set in by two spaces: " + std::string(example));
    }
    return false;
}

MapReader::MapReader(const Document& document, const Node& node, std::string_view what,
                     Diagnostics& diagnostics)
    : document_(document), node_(node), what_(what), diagnostics_(diagnostics) {}

const Node* MapReader::take(std::string_view key) {
    if (std::find(known_.begin(), known_.end(), key) == known_.end()) {
        known_.push_back(key);
    }
    for (const Node::Entry& entry : node_.entries) {
        if (entry.key.text == key) {
            if (entry.value.kind == Node::Kind::empty) {
                diagnostics_.error(Code::value_missing, document_.place(entry.key),
                                   in_quotes(key) + " has no value",
                                   "write one behind the colon, or take the line out");
                return nullptr;
            }
            return &entry.value;
        }
    }
    return nullptr;
}

const Node* MapReader::require(std::string_view key, std::string_view example) {
    const Node* value = take(key);
    if (value != nullptr) {
        return value;
    }
    // A slip of the key is reported as such, once.
    const std::string_view keys[] = {key};
    const bool is_there =
        std::any_of(node_.entries.begin(), node_.entries.end(), [&](const Node::Entry& entry) {
            return entry.key.text == key || !nearest_word(fold_name(entry.key.text), keys).empty();
        });
    if (!is_there) {
        const SourcedText place{.source = document_.source, .span = {node_.span.offset, 1}, .text = {}};
        diagnostics_.error(Code::key_missing, place, std::string(what_) + " needs the key " + in_quotes(key),
                           "add a line: " + std::string(example));
    }
    return nullptr;
}

const Node::Entry* MapReader::take_entry(std::string_view key) {
    const Node* value = take(key);
    if (value == nullptr) {
        return nullptr;
    }
    const auto entry = std::find_if(node_.entries.begin(), node_.entries.end(),
                                    [&](const Node::Entry& candidate) { return &candidate.value == value; });
    return &*entry;
}

std::optional<SourcedText> MapReader::take_text(std::string_view key) {
    const Node::Entry* entry = take_entry(key);
    return entry == nullptr ? std::nullopt : text_of(document_, entry->key, entry->value, diagnostics_);
}

std::optional<SourcedText> MapReader::take_amount(std::string_view key) {
    const Node::Entry* entry = take_entry(key);
    return entry == nullptr ? std::nullopt : amount_of(document_, entry->key, entry->value, diagnostics_);
}

std::vector<SourcedText> MapReader::take_texts(std::string_view key) {
    const Node* value = take(key);
    std::vector<SourcedText> texts;
    if (value == nullptr) {
        return texts;
    }
    if (value->kind != Node::Kind::list) {
        diagnostics_.error(
            Code::value_not_a_list, document_.place(*value), in_quotes(key) + " is a list",
            "write it in brackets: " + std::string(key) + ": [" +
                (value->kind == Node::Kind::text ? printable(value->text, 48) : std::string("...")) + "]");
        return texts;
    }
    for (const Node& item : value->items) {
        if (item.kind == Node::Kind::text) {
            texts.push_back(document_.place(item));
        } else {
            diagnostics_.error(Code::value_not_text, document_.place(item),
                               "an entry of " + in_quotes(key) + " is not one text", "write a name");
        }
    }
    return texts;
}

std::vector<const Node::Entry*> MapReader::rest() const {
    std::vector<const Node::Entry*> entries;
    for (const Node::Entry& entry : node_.entries) {
        if (std::find(known_.begin(), known_.end(), entry.key.text) == known_.end()) {
            entries.push_back(&entry);
        }
    }
    return entries;
}

void MapReader::report_rest() {
    for (const Node::Entry* entry : rest()) {
        const std::string_view near = nearest_word(fold_name(entry->key.text), known_);
        const std::string keys = "keys of " + std::string(what_) + ": " + listed(known_);
        diagnostics_.error(Code::key_unknown, document_.place(entry->key),
                           "unknown key " + in_quotes(entry->key.text),
                           near.empty() ? keys : "did you mean '" + std::string(near) + "'? " + keys);
    }
}

} // namespace leavenwright
