#include "formula/read_formula.hpp"

#include "diagnostic/suggestion.hpp"
#include "document/map_reader.hpp"
#include "formula/read_lines.hpp"
#include "formula/read_process.hpp"
#include "formula/written_formula.hpp"
#include "pantry/read_pantry.hpp"
#include "source/unicode.hpp"

#include <algorithm>
#include <array>
#include <map>

namespace leavenwright {
namespace {

struct KindName {
    std::string_view name;
    StageKind kind;
};

constexpr auto preferment_kinds = std::to_array<KindName>({
    {"poolish", StageKind::poolish},
    {"biga", StageKind::biga},
    {"sponge", StageKind::sponge},
    {"old dough", StageKind::old_dough},
    {"levain", StageKind::levain},
});

constexpr auto soaker_kinds = std::to_array<KindName>({
    {"soaker", StageKind::soaker},
    {"scald", StageKind::scald},
});

// Names of one list, which are compared without capitals and accents.
class NamesOnce {
public:
    void add(const Node& key, const std::string& folded, const Document& document, Diagnostics& diagnostics) {
        const auto [first, is_new] = firsts_.emplace(folded, key.span);
        if (!is_new) {
            diagnostics
                .error(Code::key_duplicate, document.place(key), in_quotes(key.text) + " is given twice",
                       "keep one of the two, or add their amounts up")
                .notes.push_back({.message = "first given", .span = first->second});
        }
    }

private:
    std::map<std::string, SourceSpan> firsts_; // by the folded name
};

class FormulaReader {
public:
    FormulaReader(const Document& document, const Pantry& pantry, Diagnostics& diagnostics)
        : document_(document), diagnostics_(diagnostics), pantry_(std::make_shared<Pantry>(pantry)),
          lines_(document, *pantry_, diagnostics, written_.formula.remarks) {}

    std::optional<Formula> read() {
        const std::size_t errors_before = diagnostics_.error_count();
        MapReader reader(document_, document_.root, "a formula", diagnostics_);
        read_heading(reader);
        read_own_pantry(reader);
        read_sizes(reader);
        const Node* preferments = reader.take("preferments");
        const Node* soakers = reader.take("soakers");
        note_stage_names(preferments);
        note_stage_names(soakers);
        read_lists(reader);
        read_stages(preferments, true);
        read_stages(soakers, false);
        for (const SourcedText& name : reader.take_texts("count as water")) {
            const Ingredient* ingredient = resolve(name);
            if (ingredient == nullptr) {
                continue;
            }
            if (ingredient->can_give_water()) {
                written_.formula.count_as_water.push_back(ingredient);
            } else {
                diagnostics_.error(Code::water_source_unfit, name,
                                   in_quotes(name.text) + " holds no water to count",
                                   "name liquids and what holds water: milk, egg, butter");
            }
        }
        written_.formula.process = process_of(reader, document_.root);
        reader.report_rest();
        written_.formula.pantry = pantry_;
        if (document_.has_twice) {
            return std::nullopt;
        }
        if (diagnostics_.error_count() != errors_before) {
            check_amounts(std::move(written_), diagnostics_);
            return std::nullopt;
        }
        return solve_amounts(std::move(written_), diagnostics_);
    }

private:
    const Ingredient* resolve(const SourcedText& name) { return lines_.resolve(name); }

    void read_heading(MapReader& reader) {
        written_.place = {.source = document_.source, .span = {document_.root.span.offset, 1}, .text = {}};
        reader.require("formula", "formula: 1");
        const auto version = reader.take_text("formula");
        if (version && version->text != "1") {
            diagnostics_.error(Code::version_unknown, *version,
                               in_quotes(version->text) + " is not a version of the format",
                               "write formula: 1");
        }
        reader.require("name", "name: Pier loaf");
        if (const auto text = reader.take_text("name")) {
            written_.formula.name = std::string(text->text);
            if (trimmed(*text).text.empty()) {
                diagnostics_.error(Code::value_missing, *text, "the name is empty",
                                   "write what the bread is called");
            }
        }
        if (const auto text = reader.take_text("note")) {
            written_.formula.note = std::string(text->text);
        }
    }

    void read_own_pantry(MapReader& reader) {
        if (const Node* own = reader.take("pantry")) {
            written_.formula.own_ingredients = read_ingredients(document_, *own, diagnostics_);
            pantry_->add(written_.formula.own_ingredients);
        }
    }

    void read_sizes(MapReader& reader) {
        if (const auto text = reader.take_text("makes")) {
            written_.formula.makes = read_yield(*text, diagnostics_);
            written_.makes_place = *text;
        }
        if (const auto text = reader.take_amount("flour weight")) {
            written_.flour_weight = read_mass(*text, diagnostics_);
            written_.flour_weight_place = *text;
        }
    }

    void note_stage_names(const Node* stages) {
        if (stages == nullptr || stages->kind != Node::Kind::map) {
            return;
        }
        for (const Node::Entry& entry : stages->entries) {
            const std::string folded = fold_name(entry.key.text);
            if (std::find(stage_names_.begin(), stage_names_.end(), folded) != stage_names_.end()) {
                diagnostics_.error(Code::key_duplicate, document_.place(entry.key),
                                   in_quotes(entry.key.text) + " is the name of another stage too",
                                   "give each stage a name of its own");
            }
            if (const Ingredient* known = pantry_->find(entry.key.text).ingredient;
                known != nullptr && (known->is_flour() || known->is_yeast() || known->is_water())) {
                diagnostics_.error(Code::key_duplicate, document_.place(entry.key),
                                   in_quotes(entry.key.text) + " is the name of an ingredient too",
                                   "give the stage a name of its own: rye sponge");
            }
            stage_names_.push_back(folded);
        }
    }

    void read_lists(MapReader& reader) {
        const Node* dough = reader.take("dough");
        const Node* overall = reader.take("overall");
        if (dough != nullptr && overall != nullptr) {
            diagnostics_.error(
                Code::dough_and_overall, document_.place(key_of(document_.root, *overall)),
                "a formula has either 'dough' or 'overall', not both",
                "keep 'dough' for what is added at mixing, or 'overall' for everything, the stages included");
        }
        if (dough == nullptr && overall == nullptr) {
            constexpr auto keys = std::to_array<std::string_view>({"dough", "overall"});
            const bool is_there = // without a value, or with a slip in it
                std::any_of(document_.root.entries.begin(), document_.root.entries.end(),
                            [&](const Node::Entry& entry) {
                                return !nearest_word(fold_name(entry.key.text), keys).empty();
                            });
            if (!is_there) {
                diagnostics_.error(
                    Code::key_missing, written_.place, "a formula needs the key 'dough' or 'overall'",
                    "add a line 'dough:' with the ingredients on the lines below it, set in by two spaces");
            }
            return;
        }
        written_.formula.notation = dough != nullptr ? Notation::dough : Notation::overall;
        const Node& list = dough != nullptr ? *dough : *overall;
        const Node& key = key_of(document_.root, list);
        written_.lines_place = document_.place(key);
        if (!expect_map(document_, key, list, "bread flour: 500 g", diagnostics_)) {
            return;
        }
        const std::size_t errors_before = diagnostics_.error_count();
        NamesOnce names;
        for (const Node::Entry& entry : list.entries) {
            const std::string folded = fold_name(entry.key.text);
            names.add(entry.key, folded, document_, diagnostics_);
            if (std::find(stage_names_.begin(), stage_names_.end(), folded) != stage_names_.end()) {
                read_use(entry, folded);
            } else if (auto line = lines_.read(entry, nullptr)) {
                written_.lines.push_back(*std::move(line));
            }
        }
        written_.are_lines_whole = diagnostics_.error_count() == errors_before;
    }

    static const Node& key_of(const Node& map, const Node& value) {
        const auto entry =
            std::find_if(map.entries.begin(), map.entries.end(),
                         [&](const Node::Entry& candidate) { return &candidate.value == &value; });
        return entry->key;
    }

    void read_use(const Node::Entry& entry, const std::string& stage) {
        if (written_.formula.notation == Notation::overall) {
            diagnostics_.error(Code::key_unknown, document_.place(entry.key),
                               in_quotes(entry.key.text) +
                                   " is a stage; 'overall' lists what is in the stages, not the stages",
                               "take the line out, or write 'dough' for what is added at mixing");
            return;
        }
        const auto text = amount_of(document_, entry.key, entry.value, diagnostics_);
        if (!text) {
            return;
        }
        WrittenUse use{.place = *text, .is_all = fold_name(text->text) == "all", .amount = {}};
        if (!use.is_all) {
            const auto amount = read_amount(*text, diagnostics_);
            if (!amount) {
                return;
            }
            use.amount.place = *text;
            if (const auto* percentage = std::get_if<WrittenPercentage>(&*amount)) {
                use.amount.is_percentage = true;
                use.amount.ratio = percentage->value();
            } else if (const auto* mass = std::get_if<Mass>(&*amount)) {
                use.amount.mass = *mass;
            } else {
                diagnostics_.error(Code::unit_unfit, *text,
                                   "a stage is taken by weight, in percent, or 'all'",
                                   "write " + entry.key.text + ": all");
                return;
            }
        }
        const auto same =
            std::find_if(uses_.begin(), uses_.end(), [&](const auto& known) { return known.first == stage; });
        if (same != uses_.end()) {
            diagnostics_
                .error(Code::key_duplicate, document_.place(entry.key),
                       in_quotes(entry.key.text) + " is given twice", "keep one of the two")
                .notes.push_back({.message = "first given", .span = same->second.place.span});
            return;
        }
        uses_.emplace_back(stage, use);
    }

    std::vector<Step> process_of(MapReader& reader, const Node& map) {
        const Node* process = reader.take("process");
        return process == nullptr ? std::vector<Step>()
                                  : read_process(document_, key_of(map, *process), *process, diagnostics_);
    }

    void read_stages(const Node* stages, bool are_preferments) {
        if (stages == nullptr) {
            return;
        }
        const Node& key = key_of(document_.root, *stages);
        const std::string_view example = are_preferments ? "poolish: { bread flour: 100 g, water: 100 g }"
                                                         : "seeds: { flaxseed: 50 g, water: 75 g }";
        if (!expect_map(document_, key, *stages, example, diagnostics_)) {
            return;
        }
        for (const Node::Entry& entry : stages->entries) {
            if (expect_map(document_, entry.key, entry.value, "bread flour: 100 g", diagnostics_)) {
                read_stage(entry, are_preferments);
            }
        }
    }

    void read_stage(const Node::Entry& entry, bool is_preferment_list) {
        MapReader reader(document_, entry.value, is_preferment_list ? "a preferment" : "a soaker",
                         diagnostics_);
        const std::size_t errors_before = diagnostics_.error_count();
        WrittenStage stage;
        stage.name = entry.key.text;
        stage.place = document_.place(entry.key);
        stage.kind = read_kind(reader, entry.key.text, is_preferment_list);
        read_stage_sizes(reader, stage, is_preferment_list);
        stage.process = process_of(reader, entry.value);
        NamesOnce names;
        for (const Node::Entry* line : reader.rest()) {
            const std::string folded = fold_name(line->key.text);
            names.add(line->key, folded, document_, diagnostics_);
            if (!is_preferment_list && is_size_of_preferment(folded)) {
                diagnostics_.error(Code::key_unknown, document_.place(line->key),
                                   in_quotes(line->key.text) + " is a key of preferments; a soaker has none",
                                   "take it out, or move the stage to 'preferments:'");
                continue;
            }
            if (auto read = lines_.read(*line, &stage)) {
                stage.lines.push_back(*std::move(read));
            }
        }
        const bool has_culture =
            std::any_of(stage.lines.begin(), stage.lines.end(),
                        [](const WrittenLine& line) { return line.ingredient->is_culture(); });
        if (stage.culture_hydration && !has_culture && diagnostics_.error_count() == errors_before) {
            diagnostics_.warning(Code::key_unknown, stage.place,
                                 in_quotes(stage.name) + " has a culture hydration, but no culture",
                                 "add the culture, culture: 10 g, or take the line out");
        }
        const bool has_lines = !stage.lines.empty() || stage.prefermented_flour;
        if (!has_lines && reader.rest().empty()) {
            diagnostics_.error(Code::stage_empty, stage.place, in_quotes(stage.name) + " has no ingredients",
                               "list them below it, or take it out");
        }
        for (const auto& [name, use] : uses_) {
            if (name == fold_name(stage.name)) {
                stage.use = use;
            }
        }
        stage.is_whole = diagnostics_.error_count() == errors_before;
        written_.stages.push_back(std::move(stage));
    }

    static bool is_size_of_preferment(std::string_view folded) {
        return folded == "prefermented flour" || folded == "weight" || folded == "culture hydration";
    }

    StageKind read_kind(MapReader& reader, std::string_view name, bool is_preferment_list) {
        const std::span<const KindName> kinds = is_preferment_list
                                                    ? std::span<const KindName>(preferment_kinds)
                                                    : std::span<const KindName>(soaker_kinds);
        const auto kind_named = [&](std::string_view text) {
            return std::find_if(kinds.begin(), kinds.end(),
                                [&](const KindName& kind) { return kind.name == fold_name(text); });
        };
        if (const auto text = reader.take_text("kind")) {
            const auto kind = kind_named(text->text);
            if (kind != kinds.end()) {
                return kind->kind;
            }
            diagnostics_.error(
                Code::stage_kind_unknown, *text, in_quotes(text->text) + " is not a kind of stage here",
                is_preferment_list ? "one of: poolish, biga, sponge, old dough, levain" : "soaker or scald");
        }
        if (const auto kind = kind_named(name); kind != kinds.end()) {
            return kind->kind;
        }
        if (is_preferment_list && (is_culture_name(name) || fold_name(name).ends_with(" levain"))) {
            return StageKind::levain;
        }
        return is_preferment_list ? StageKind::preferment : StageKind::soaker;
    }

    void read_stage_sizes(MapReader& reader, WrittenStage& stage, bool is_preferment_list) {
        if (!is_preferment_list) {
            return;
        }
        if (const auto text = reader.take_amount("prefermented flour")) {
            if (const auto share = read_percentage(*text, diagnostics_)) {
                stage.prefermented_flour = Entered<double>{share->value(), std::string(text->text)};
                stage.size_place = *text;
            }
        }
        if (const auto text = reader.take_amount("weight")) {
            if (const auto weight = read_mass(*text, diagnostics_)) {
                stage.weight = Entered<Mass>{*weight, std::string(text->text)};
                stage.size_place = *text;
            }
        }
        if (const auto text = reader.take_amount("culture hydration")) {
            if (const auto hydration = read_percentage(*text, diagnostics_)) {
                stage.culture_hydration = Hydration(hydration->value());
            }
        }
    }

    const Document& document_;
    Diagnostics& diagnostics_;
    std::shared_ptr<Pantry> pantry_;
    WrittenFormula written_;
    LineReader lines_;
    std::vector<std::string> stage_names_;
    std::vector<std::pair<std::string, WrittenUse>> uses_;
};

} // namespace

std::optional<Formula> read_formula(const Document& document, const Pantry& pantry,
                                    Diagnostics& diagnostics) {
    return FormulaReader(document, pantry, diagnostics).read();
}

std::optional<Formula> read_formula(const SourceHandle& source, const Pantry& pantry,
                                    Diagnostics& diagnostics) {
    const auto document = read_document(source, diagnostics);
    return document ? read_formula(*document, pantry, diagnostics) : std::nullopt;
}

} // namespace leavenwright
