#include "transcribe/write_transcription.hpp"

#include "document/document.hpp"
#include "formula/read_process.hpp"
#include "quantity/number.hpp"
#include "quantity/show.hpp"
#include "source/unicode.hpp"
#include "transcribe/kitchen_words.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/stage_row.hpp"

#include <algorithm>
#include <array>

namespace leavenwright {
namespace {

constexpr auto preferments =
    std::to_array<std::string_view>({"poolish", "biga", "sponge", "preferment", "levain", "old dough"});
constexpr auto soakers = std::to_array<std::string_view>({"soaker", "scald"});

// Words fit for a comment of a formula file, which may hold no byte order marks.
std::string comment(std::string_view words) {
    constexpr std::string_view mark = "\xEF\xBB\xBF";
    std::string spaced(words);
    std::replace(spaced.begin(), spaced.end(), '\t', ' '); // between the cells of a table
    std::string text = printable(spaced, 160);
    for (std::size_t at = text.find(mark); at != std::string::npos; at = text.find(mark, at)) {
        text.erase(at, mark.size());
    }
    return text;
}

// Lines of one ingredient, which a map can hold only once.
struct Entry {
    std::string key;
    std::vector<const IngredientLine*> lines;

    /// "2 cup 1/2 cup" adds up where it is read; unlike measures become grams. Percentages, which weigh
    /// nothing by themselves, stand with no weight in one entry.
    std::string amount() const {
        if (lines.front()->unit == "%") {
            return sum_of_percentages();
        }
        std::string text;
        Mass sum{};
        bool is_alike = true;
        const auto is_number = [](const IngredientLine& line) {
            return line.amount.find_first_not_of("0123456789 ./") == std::string::npos;
        };
        for (const IngredientLine* line : lines) {
            const bool is_weight = line->amount.ends_with(" g");
            is_alike = is_alike && line->unit == lines.front()->unit && !is_number(*line) && !is_weight;
            text += (text.empty() ? "" : " ") + line->amount;
            sum += line->weight ? line->weight->likely : Mass{};
        }
        const bool is_measured = lines.front()->amount.find("stick") == std::string::npos;
        return lines.size() == 1 || (is_alike && is_measured && has_unit())
                   ? text
                   : exact_decimal(without_dust(sum.value(), 12), 3) + " g";
    }

    std::string sum_of_percentages() const {
        double sum = 0.0;
        for (const IngredientLine* line : lines) {
            sum += line->number.value_or(0.0);
        }
        return exact_decimal(without_dust(sum, 12), 0) + "%";
    }

    bool has_unit() const {
        constexpr auto units =
            std::to_array<std::string_view>({"cup", "tbsp", "tsp", "lb", "oz", "ml", "l", "kg"});
        return std::find(units.begin(), units.end(), lines.front()->unit) != units.end();
    }
};

class Writer {
public:
    Writer(const Transcription& transcription, const RecipeText& recipe)
        : transcription_(transcription), recipe_(recipe) {}

    std::string write(const std::vector<DirectionStep>& steps) {
        out_ = "# Transcribed by leavenwright. " + summary_of(transcription_) + ".\n";
        out_ += "# The words of the recipe stand behind each line.\n";
        write_hydration();
        out_ += "formula: 1\nname: " + yaml_scalar(comment(transcription_.name)) + "\n";
        write_yield();
        out_ += "dough:\n";
        write_list("dough", "  ");
        write_stage_rows();
        write_stages("preferments", preferments);
        write_stages("soakers", soakers);
        write_process(steps);
        write_apart();
        return std::move(out_);
    }

private:
    void write_hydration() {
        constexpr double noticeable = 0.005;
        const auto& hydration = transcription_.hydration;
        if (hydration && hydration->most - hydration->least > 2.0 * noticeable) {
            out_ += "# True hydration " + show_decimal(hydration->likely * 100.0, 0) +
                    " %; cups, spoons and counts leave it " + show_decimal(hydration->least * 100.0, 0) +
                    " to " + show_decimal(hydration->most * 100.0, 0) + " %.\n";
        }
    }

    // A number of pieces with their name; other words are kept as a comment.
    void write_yield() {
        if (recipe_.yield.empty()) {
            return;
        }
        std::string text;
        const auto tokens = line_tokens(plain_line(std::string_view(recipe_.yield).substr(0, 200)));
        for (std::size_t at = 0; at + 1 < tokens.size() && text.empty(); ++at) {
            const double number = tokens[at].is_number() ? tokens[at].value : number_named(tokens[at].folded);
            if (number > 0.0 && at + 2 < tokens.size() && tokens[at + 2].is_word() &&
                !size_named(tokens[at + 1].folded).empty()) { // "two medium braids"
                text = exact_decimal(number, 0) + " " + tokens[at + 2].folded;
                break;
            }
            const bool is_piece = tokens[at + 1].is_word() && !tokens[at + 1].is("prep") &&
                                  !tokens[at + 1].is("inch") && !tokens[at + 1].is("servings") &&
                                  !tokens[at + 1].is("people") && !tokens[at + 1].is("cm");
            if (number > 0.0 && is_piece) {
                text = exact_decimal(number, 0) + " " + tokens[at + 1].folded;
            }
        }
        const auto source = std::make_shared<SourceText>("", text);
        Diagnostics unused;
        const bool is_readable =
            !text.empty() && read_yield({source, {0, text.size()}, source->text()}, unused);
        out_ += is_readable ? "makes: " + yaml_scalar(text) + "  # " + comment(recipe_.yield) + "\n"
                            : "# makes: " + comment(recipe_.yield) + "\n";
    }

    void write_list(std::string_view role, std::string_view indent) {
        std::vector<Entry> entries;
        for (const IngredientLine& line : transcription_.lines) {
            if (line.role != role || !line.is_known()) {
                continue;
            }
            const auto same = std::find_if(entries.begin(), entries.end(),
                                           [&](const Entry& entry) { return entry.key == line.key; });
            if (same == entries.end()) {
                entries.push_back({.key = line.key, .lines = {&line}});
            } else {
                same->lines.push_back(&line);
            }
        }
        for (const Entry& entry : entries) {
            out_ += std::string(indent) + yaml_scalar(entry.key) + ": " + entry.amount();
            std::string mark = "  # ";
            for (const IngredientLine* line : entry.lines) {
                out_ += mark + (line->is_sure ? "" : "(doubtful) ") + comment(line->text);
                mark = "; ";
            }
            out_ += "\n";
        }
        for (const IngredientLine& line : transcription_.lines) {
            if (line.role == role && !line.is_known()) {
                write_unknown(line, indent);
            }
        }
    }

    void write_stage_rows() {
        for (const IngredientLine& line : transcription_.lines) {
            if (line.role == role_of_stage_row) {
                out_ += "  # and the " + line.name + " below  # " + comment(line.text) + "\n";
            }
        }
    }

    void write_unknown(const IngredientLine& line, std::string_view indent) {
        std::string amount =
            line.number ? exact_decimal(*line.number, 0) + (line.unit.empty() ? "" : " " + line.unit) : "? g";
        const std::string name = line.key.empty() ? (line.name.empty() ? "?" : line.name) : line.key;
        out_ += std::string(indent) + "# " + comment(name) + ": " + comment(amount) +
                "  # to fill in: " + comment(line.text) + "\n";
    }

    void write_stages(std::string_view section, std::span<const std::string_view> names) {
        bool is_first = true;
        for (const std::string_view name : names) {
            const bool is_there =
                std::any_of(transcription_.lines.begin(), transcription_.lines.end(),
                            [&](const IngredientLine& line) { return line.role == name && line.is_known(); });
            if (!is_there) {
                continue;
            }
            out_ += is_first ? std::string(section) + ":\n" : "";
            is_first = false;
            out_ += "  " + std::string(name) + ":\n";
            write_list(name, "    ");
        }
    }

    void write_process(const std::vector<DirectionStep>& steps) {
        if (steps.empty()) {
            return;
        }
        out_ += "process:  # read from the words behind each step\n";
        for (const DirectionStep& step : steps) {
            std::string keys = step.time.empty() ? "" : "for: " + yaml_scalar(step.time);
            keys += step.temperature.empty() ? "" : (keys.empty() ? "" : ", ") + ("at: " + step.temperature);
            out_ += "  - " + step.verb + (keys.empty() ? "" : ": { " + keys + " }") + "  # " +
                    comment(step.words) + "\n";
        }
    }

    bool is_apart(const IngredientLine& line) const {
        const auto is = [&](std::string_view name) { return line.role == name; };
        return !is("dough") && !is(role_of_stage_row) &&
               std::none_of(preferments.begin(), preferments.end(), is) &&
               std::none_of(soakers.begin(), soakers.end(), is);
    }

    void write_apart() {
        bool is_first = true;
        for (const IngredientLine& line : transcription_.lines) {
            if (!is_apart(line)) {
                continue;
            }
            out_ += is_first ? "# kept apart, not counted in the dough:\n" : "";
            is_first = false;
            const std::string what = line.amount.empty() ? "" : line.key + ": " + line.amount + "  # ";
            out_ += "#   " + line.role + ": " + comment(what) + comment(line.text) + "\n";
        }
    }

    const Transcription& transcription_;
    const RecipeText& recipe_;
    std::string out_;
};

} // namespace

std::string write_transcription(const Transcription& transcription, const RecipeText& recipe,
                                const std::vector<DirectionStep>& steps) {
    return Writer(transcription, recipe).write(steps);
}

} // namespace leavenwright
