// Lines of ingredients: a name that the pantry knows, and an amount. Private to the formula folder.
#pragma once

#include "document/document.hpp"
#include "formula/written_formula.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

class LineReader {
public:
    /// `remarks` takes a line for each name that an entry of the pantry only stands in for.
    LineReader(const Document& document, Pantry& pantry, Diagnostics& diagnostics,
               std::vector<std::string>& remarks)
        : document_(document), pantry_(pantry), diagnostics_(diagnostics), remarks_(remarks) {}

    /// The ingredient of a name; records what is unknown. A name that an entry of the pantry only
    /// stands in for becomes an ingredient of its own in this formula's pantry: T65 and T80 are
    /// two flours, though the same entry is the nearest to both.
    const Ingredient* resolve(const SourcedText& name);
    /// One line; `stage` is null for the dough's own list.
    std::optional<WrittenLine> read(const Node::Entry& entry, const WrittenStage* stage);

private:
    bool weigh(const Amount& amount, WrittenLine& line);
    bool check_weight(const WrittenLine& line);
    void report_count(const WrittenLine& line, const Amount& amount);
    void report_unit_missing(const SourcedText& place, std::span<const std::string_view> pieces);
    void report_piece(const WrittenLine& line, const Count& count);

    const Document& document_;
    Pantry& pantry_;
    Diagnostics& diagnostics_;
    std::vector<std::string>& remarks_;
};

} // namespace leavenwright
