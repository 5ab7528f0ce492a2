// Plain text and Markdown: which lines are ingredients, which are directions.
#include "source/unicode.hpp"
#include "transcribe/find_name.hpp"
#include "transcribe/group_heading.hpp"
#include "transcribe/ingredient_line.hpp"
#include "transcribe/ingredient_list.hpp"
#include "transcribe/kitchen_amount.hpp"
#include "transcribe/kitchen_words.hpp"
#include "transcribe/later_list.hpp"
#include "transcribe/line_continuation.hpp"
#include "transcribe/line_cursor.hpp"
#include "transcribe/line_tokens.hpp"
#include "transcribe/list_item.hpp"
#include "transcribe/match_name.hpp"
#include "transcribe/page_marks.hpp"
#include "transcribe/read_table.hpp"
#include "transcribe/recipe_frame.hpp"
#include "transcribe/recipe_text.hpp"
#include "transcribe/recipe_words.hpp"
#include "transcribe/running_text.hpp"
#include "transcribe/split_line.hpp"
#include "transcribe/table_cells.hpp"
#include "transcribe/table_head.hpp"

#include <algorithm>
#include <array>
#include <utility>

namespace leavenwright {
namespace {

class PlainReader {
public:
    PlainReader(const SourceHandle& source, const Pantry& pantry)
        : source_(source), pantry_(pantry), whole_dough_(pantry), cursor_(source),
          list_(recipe_, cursor_, pantry) {}

    RecipeText read() {
        const FrontMatter front = read_front_matter(*source_);
        recipe_.name = front.title;
        recipe_.yield = front.yield;
        is_quote_left_ = has_list_beside_quote(*source_, pantry_);
        const bool has_rings = has_typed_rings(*source_);
        const std::size_t page_begin = length_of_page_head(*source_, pantry_);
        for (std::size_t number = front.line_count + 1; number <= source_->line_count(); ++number) {
            const std::string_view line = without_page_marks(source_->line(number));
            const bool is_boxed = is_in_drawn_box(source_->line(number));
            const std::size_t begin = line.find_first_not_of(is_boxed ? " \t|" : " \t");
            if (begin == std::string_view::npos ||
                line.find_first_not_of(" \t>") == std::string_view::npos) { // of a quoted mail too
                blank_before_ = true;
                continue;
            }
            if (is_in_comment(line) || (is_quote_left_ && line[begin] == '>')) {
                continue;
            }
            if (source_->line_start(number) < page_begin) {
                continue;
            }
            const std::size_t end = line.find_last_not_of(" \t\r");
            const std::size_t ring = has_rings && line.substr(begin).starts_with("o ") ? 2 : 0;
            const SourcedText whole{
                .source = source_, .span = {source_->line_start(number), line.size()}, .text = line};
            cursor_.move_to(number);
            if (number < unread_line_ || take_batch_heads(whole.part(begin, end - begin + 1)) ||
                take_table()) {
                continue;
            }
            const bool is_table_head = !is_boxed && line.find('|') != std::string_view::npos &&
                                       is_rule(cursor_.next_line()) &&
                                       cursor_.next_line().find('|') != std::string_view::npos;
            const bool is_read = source_->line_start(number) + begin < read_to_; // of a list that runs on
            if (part_ != RecipePart::heading &&
                frame_.is_signature_mark(line, source_->line_count() - number)) {
                if (recipe_.behind_list) {
                    recipe_.behind_list = recipe_.behind_list->part(0, source_->line_start(number) -
                                                                           recipe_.behind_list->span.offset);
                }
                break;
            }
            if (!is_rule(line) && !is_table_head && !is_read) {
                const SourcedText text = whole.part(begin + ring, end - begin - ring + 1);
                for (const SourcedText& piece : between_bullets(text, pantry_)) {
                    take(piece);
                    blank_before_ = false;
                }
            }
            blank_before_ = false;
        }
        list_.flush_columns();
        if (has_heading_) { // there is a list
            recipe_.sentences_end.reset();
        }
        return std::move(recipe_);
    }

private:
    // "<!-- seen by nobody" down to "-->", where it is more than one line, or a line of its own.
    bool is_in_comment(std::string_view line) {
        const std::size_t begin = std::min(line.find_first_not_of(" \t"), line.size());
        const bool is_begun = line.substr(begin).starts_with("<!--");
        const std::size_t end = line.find("-->");
        if (is_comment_open_ || is_begun) {
            is_comment_open_ = end == std::string_view::npos;
            return is_comment_open_ || is_blank(line.substr(end + 3));
        }
        return false;
    }

    // A table of ingredients; what follows it are directions.
    bool take_table() {
        const bool is_in_directions = part_ == RecipePart::directions;
        if (is_in_directions && !recipe_.lines.empty() &&
            source_->line(cursor_.number()).find('|') == std::string_view::npos) {
            return false;
        }
        const std::string_view head = source_->line(cursor_.number());
        const auto tabs = std::count(head.begin(), head.end(), '\t');
        if (tabs == 1 && frame_line(head).kind != FrameLine::Kind::none) {
            return false; // "Yield   2 loaves" in a page's box
        }
        auto table = read_table(source_, cursor_.number());
        if (!table) {
            return false;
        }
        if (is_in_directions && whole_dough_.is_in(recipe_.lines)) { // another dough
            recipe_.is_list_left = true;
            return false;
        }
        // the list of a levain, and below an empty line a table that has the levain in it
        const bool is_behind_stage =
            is_below_stage() &&
            std::any_of(table->lines.begin(), table->lines.end(), [&](const RecipeLine& line) {
                return stage_named(heading_text(without_figures(line.said()))) == list_.role();
            });
        if (is_in_directions || is_behind_stage) {
            list_.set_role("dough");
        }
        list_.flush_columns();
        for (RecipeLine& line : table->lines) {
            list_.add(std::move(line));
        }
        for (const std::string& line : table->directions) {
            take_direction(
                {.source = source_, .span = {source_->line_start(cursor_.number()), 0}, .text = line});
            blank_before_ = false;
        }
        if (table->batches.size() > 1) {
            recipe_.batches = std::move(table->batches);
        }
        if (recipe_.yield.empty() && !recipe_.batches.empty() && is_batch_label(recipe_.batches.front())) {
            recipe_.yield = recipe_.batches.front();
        }
        part_ = table->directions.empty() ? RecipePart::ingredients : RecipePart::directions;
        unread_line_ = table->end_line;
        blank_before_ = true;
        return true;
    }

    void take(const SourcedText& whole) {
        if (blank_before_) {
            list_.flush_columns();
        }
        if (begins_dough_block()) {
            list_.set_role("dough");
        }
        if (part_ == RecipePart::heading && recipe_.name.empty() && !numbered_title(whole.text).empty() &&
            !part_label(whole.text) && !is_ingredient_line(numbered_title(whole.text), pantry_)) {
            set_name(numbered_title(whole.text));
            return;
        }
        if (part_ != RecipePart::directions && take_batch(whole)) {
            return;
        }
        if (goes_on_as_list() && !is_item(whole.text, pantry_)) {
            return; // "Next day", over its items
        }
        if (part_ == RecipePart::ingredients && !recipe_.lines.empty() && begins_with_clock(whole.text)) {
            list_.flush_columns();
            part_ = RecipePart::directions;
            take_direction(whole);
            return;
        }
        if (part_ != RecipePart::directions && (take_part_on_a_line(whole) || take_two_joined(whole))) {
            return;
        }
        if (part_ == RecipePart::ingredients && take_stacked(whole)) {
            return;
        }
        if (part_ != RecipePart::directions && take_leader_row(whole)) {
            return;
        }
        if (take_frame(whole) ||
            (part_ == RecipePart::ingredients && !blank_before_ && list_.take_continuation(whole))) {
            return;
        }
        const SourcedText line = part_ == RecipePart::directions ? whole : list_.left_of(whole);
        if (line.text.empty() || (line.text.size() < whole.text.size() && part_ == RecipePart::ingredients &&
                                  list_.take_left_continuation(line))) {
            return;
        }
        const bool may_run_on = blank_before_ || part_ == RecipePart::heading || recipe_.lines.empty();
        if (take_label(line) || (may_run_on && take_run_on(line))) {
            return;
        }
        const std::string heading = heading_text(line.text);
        const bool is_over_money =
            part_named(heading_text(first_cell(line.text))) == RecipePart::ingredients &&
            !has_digit(line.text); // "Ingredients          s.  d."
        if (const auto part = is_over_money ? RecipePart::ingredients : part_named(heading)) {
            if (*part == RecipePart::ingredients && !has_heading_ && recipe_.lines.size() == 1) {
                recipe_.lines.clear(); // "Made with 500 g of flour" above the list
            }
            begin_part(*part);
            take_role_around();
            return;
        }
        if (take_yield(line.text, heading) || take_heading(line, heading) || is_worded_rule(line.text)) {
            return;
        }
        if (part_ != RecipePart::directions && is_column_head(line.text)) {
            part_ = RecipePart::ingredients;
            return;
        }
        if (part_ == RecipePart::directions && is_item_apart(line.text, pantry_)) {
            list_.push(line);
        } else if (part_ == RecipePart::directions) {
            take_among_directions(line);
        } else if (part_ == RecipePart::heading) {
            take_before(line);
        } else if (is_markup_heading(line.text)) { // "## Day 2", "## Schedule"
            take_markup_heading(heading);
        } else {
            take_ingredient(line);
        }
    }

    // A block with flour and salt below the list of a soaker or a levain, where no heading of the dough
    // stands.
    bool begins_dough_block() const {
        if (part_ != RecipePart::ingredients || !is_below_stage()) {
            return false;
        }
        constexpr std::size_t most_lines = 40;
        const std::size_t last = std::min(source_->line_count(), cursor_.number() + most_lines);
        bool has_flour = false;
        bool has_salt = false;
        bool is_block = true;
        for (std::size_t number = cursor_.number(); number <= last; ++number) {
            const std::string_view line = plain_line_of(number);
            const bool is_one = is_item(line, pantry_);
            is_block = is_block && is_one;
            has_flour = has_flour || (is_block && names_flour(line, pantry_));
            has_salt = has_salt || (is_block && line.find("salt") != std::string_view::npos);
            constexpr std::size_t longest_heading = 30;
            if (!is_one && line.size() < longest_heading && !is_sentence(line) &&
                role_of_heading(heading_text(line)) == "dough") {
                return false;
            }
        }
        return has_flour && has_salt;
    }

    // Behind an empty line below the items of a soaker or a levain.
    bool is_below_stage() const {
        return blank_before_ && is_in_dough(list_.role()) && list_.role() != "dough" &&
               !recipe_.lines.empty() && recipe_.lines.back().role == list_.role();
    }

    std::string_view plain_line_of(std::size_t number) const {
        const std::string_view line = source_->line(number);
        const std::string_view words = line.substr(std::min(line.find_first_not_of(" \t"), line.size()));
        return without_bullet(words.substr(0, 200));
    }

    // A list behind the dough that has no flour of its own is of what is filled in or strewn on; one that has
    // is another recipe's.
    void take_among_directions(const SourcedText& line) {
        const bool is_list = blank_before_ && is_list_block(*source_, cursor_.number(), pantry_);
        if (is_list && whole_dough_.is_in(recipe_.lines) && is_item(line.text, pantry_) &&
            end_of_list_with_flour(*source_, cursor_.number(), pantry_) == 0 && is_spread_below()) {
            begin_part(RecipePart::ingredients);
            list_.set_role("topping");
            list_.push(line);
        } else {
            recipe_.is_list_left = recipe_.is_list_left || is_list;
            take_direction(line);
        }
    }

    // Whether the lines below the list that begins here spread or strew.
    bool is_spread_below() const {
        constexpr std::size_t most_lines = 20;
        const std::size_t last = std::min(source_->line_count(), cursor_.number() + most_lines);
        bool is_behind = false; // the list
        for (std::size_t number = cursor_.number(); number <= last; ++number) {
            const std::string_view line = source_->line(number);
            if (is_blank(line) && is_behind) {
                return false;
            }
            const std::string folded =
                is_item(line, pantry_) ? std::string() : fold_name(plain_line(line.substr(0, 200)));
            is_behind = is_behind || !folded.empty();
            for (const std::string_view act :
                 {"spread", "sprinkle", "brush", "drizzle", "pour over", "frost", "fill"}) {
                if (folded.find(act) != std::string::npos) {
                    return true;
                }
            }
        }
        return false;
    }

    // A heading of no group that is known: the list goes on below it, or has ended.
    void take_markup_heading(const std::string& heading) {
        if (!has_items_below()) {
            begin_part(RecipePart::directions);
        } else if (heading.find("dough") != std::string::npos || list_.role() == role_of_total ||
                   (is_in_dough(list_.role()) && cursor_.heading_level() <= list_.role_level())) {
            list_.set_role("dough"); // "## 2nd dough"; a stage behind the whole formula, or behind another
        }
    }

    // "### Ingredients" below "## Levain"
    void take_role_around() {
        const std::string heading = heading_text(cursor_.heading_around());
        const std::string_view behind = behind_for_the(heading);
        const std::string_view what = behind.empty() ? std::string_view(heading) : behind;
        const bool is_plain = count_words(what) == 1 || !behind.empty(); // "Poolish bread" is a title
        if (const auto role = is_plain ? role_of_heading(heading) : std::nullopt) {
            list_.set_role(*role);
        }
    }

    // Down to the next heading of this level.
    bool has_items_below() const {
        constexpr std::size_t most_lines = 60;
        constexpr std::size_t longest_name = 40;
        const std::size_t level = cursor_.heading_level();
        const std::size_t last = std::min(source_->line_count(), cursor_.number() + most_lines);
        for (std::size_t number = cursor_.number() + 1; number <= last; ++number) {
            const std::string_view line = source_->line(number);
            const std::size_t begin = std::min(line.find_first_not_of(" \t"), line.size());
            const std::string_view words = line.substr(begin);
            const std::size_t other = cursor_.heading_level(number);
            if (other > level && !part_named(heading_text(words))) { // "### Autolyse" below "## Next morning"
                continue;
            }
            if (other > 0) {
                return false;
            }
            const std::string_view name = without_bullet(words);
            const bool is_name = name.size() < words.size() && name.size() < longest_name && // "- Salt."
                                 names_ingredient(name.substr(0, name.find_last_not_of(". \r") + 1), pantry_);
            if (is_name) {
                return true;
            }
            const bool is_row = words.starts_with('|');
            if (is_row ? read_table(source_, number).has_value() : is_item(words, pantry_)) {
                return true;
            }
        }
        return false;
    }

    bool is_markup_heading(std::string_view line) const {
        const std::size_t words = line.find_first_not_of("#=");
        return words != 0 && words != std::string_view::npos && !is_item(line.substr(words), pantry_);
    }

    // "Evening: 50 g starter, 250 g rye flour. Leave it till morning", and below that the items of the next
    // day a line each: a list among directions, of what the dough still lacks, or of what it is spread with.
    bool goes_on_as_list() {
        const bool may_go_on = part_ == RecipePart::directions && blank_before_ && recipe_.behind_list;
        if (!may_go_on || role_of_heading(heading_text(source_->line(cursor_.number()))) ||
            !is_list_block(*source_, cursor_.number(), pantry_)) {
            return false;
        }
        const bool has_flour = end_of_list_with_flour(*source_, cursor_.number(), pantry_) > 0;
        const std::string_view apart = has_flour ? std::string_view() : role_of_lead(cursor_.words_above());
        if (apart.empty() && whole_dough_.is_in(recipe_.lines)) {
            recipe_.is_list_left = true;
            return false;
        }
        part_ = RecipePart::ingredients;
        list_.set_role(apart.empty() ? "dough" : std::string(apart));
        return true;
    }

    // What stands around the recipe. Times among the directions are theirs.
    bool take_frame(const SourcedText& line) {
        if (part_ == RecipePart::directions || part_named(heading_text(line.text))) {
            return false;
        }
        const FrameLine frame = frame_.read(line.text, blank_before_, is_item(line.text, pantry_));
        if (frame.kind == FrameLine::Kind::title && part_ == RecipePart::heading) {
            recipe_.name = frame.value;
        } else if (frame.kind == FrameLine::Kind::yield) {
            set_yield(frame.value);
        }
        return frame.kind != FrameLine::Kind::none;
    }

    void set_yield(std::string text) {
        recipe_.yield = std::move(text);
        if (part_ == RecipePart::heading && !blank_before_ &&
            may_be_title(source_->line(cursor_.number() - 1))) {
            set_name(source_->line(cursor_.number() - 1));
        }
    }

    void set_name(std::string_view line) {
        recipe_.name = plain_line(line);
        recipe_.name.erase(0, std::min(recipe_.name.find_first_not_of("# "), recipe_.name.size()));
    }

    // "INGREDIENTS.--1 lb. of flour", "Method: Cream the yeast".
    bool take_label(const SourcedText& line) {
        const auto label = is_behind_label_ ? std::nullopt : part_label(line.text);
        if (!label) {
            return false;
        }
        begin_part(label->part);
        blank_before_ = true; // a paragraph begins
        is_behind_label_ = true;
        take(line.part(label->length, line.text.size() - label->length));
        is_behind_label_ = false;
        return true;
    }

    void begin_part(RecipePart part) {
        part_ = part;
        has_heading_ = true;
        list_.begin_part();
    }

    // "1.5-lb loaf          2-lb loaf", over two columns.
    bool take_batch_heads(const SourcedText& line) {
        auto labels = part_ != RecipePart::directions ? batch_heads(line.text) : std::vector<std::string>();
        const auto below = labels.empty() ? std::vector<TableCell>() : table_cells(cursor_.next_words());
        const bool is_row = below.size() > labels.size() && is_amount_alone(below[1].text); // behind its name
        if (labels.empty() || !(is_row || is_item(first_cell(cursor_.next_words()), pantry_))) {
            return false;
        }
        recipe_.batches = std::move(labels);
        return true;
    }

    // "Large loaf" over a list with a flour, where that of the small loaf was read: for another batch.
    bool take_batch(const SourcedText& line) {
        const std::string label = batch_heading(line.text);
        std::string_view below = first_cell(cursor_.next_words());
        below.remove_suffix(below.ends_with('.') ? 1U : 0U);
        if (label.empty() || !is_item(below, pantry_)) {
            return false;
        }
        if (!whole_dough_.is_in(recipe_.lines)) {
            const bool is_open = is_ended_by_colon(line.text) || line.text.ends_with("--");
            const bool is_heading = is_open || !begins_with_number(line.text);
            batch_label_ = is_heading ? label : batch_label_;
            if (is_heading && is_in_dough(list_.role())) { // behind the levain, say
                list_.set_role("dough");
            }
            return is_heading && (part_ == RecipePart::ingredients || is_open);
        }
        const std::size_t end = end_of_list_with_flour(*source_, cursor_.number() + 1, pantry_);
        if (end == 0) { // "Makes 2 loaves", "Large pan"
            return false;
        }
        if (recipe_.batches.empty()) {
            recipe_.batches.push_back(batch_label_.empty() ? "the first list" : batch_label_);
        }
        recipe_.batches.push_back(label);
        part_ = RecipePart::ingredients;
        unread_line_ = end;
        return true;
    }

    static constexpr std::size_t longest_label = 40;

    // "Levain (night before): 25 g starter, 50 g whole wheat flour, 50 g water", "Fruit: 350 g raisins"
    bool take_part_on_a_line(const SourcedText& line) {
        constexpr std::size_t longest = 300;
        if (line.text.size() > longest || frame_line(line.text).kind != FrameLine::Kind::none) {
            return false;
        }
        const std::size_t colon = line.text.substr(0, longest_label).find(": ");
        if (colon != std::string_view::npos) {
            return take_labelled(line, colon, colon + 2);
        }
        for (const std::string_view dash :
             {" - ", " \xE2\x80\x93 ", " \xE2\x80\x94 "}) { // "Filling - 50 g butter, 4 oz currants"
            const std::size_t at = line.text.substr(0, longest_label).find(dash);
            if (at != std::string_view::npos && role_of_heading(heading_text(line.text.substr(0, at))) &&
                take_labelled(line, at, at + dash.size())) {
                return true;
            }
        }
        // "filling 85 g butter, 110 g sugar"
        const std::size_t space = line.text.substr(0, longest_label).find(' ');
        if (space != std::string_view::npos && line.text.find_first_of("0123456789", space) == space + 1) {
            return take_labelled(line, space, space + 1);
        }
        constexpr std::size_t fewest = 4; // "500 g flour, 300 ml milk, 10 g salt, 1 egg"
        const std::string_view below = cursor_.next_line();
        const bool is_whole = line.text.front() >= '0' && line.text.front() <= '9' &&
                              !line.text.ends_with(',') && !line.text.ends_with(';') &&
                              (is_blank(below) || !(below.front() >= 'a' && below.front() <= 'z'));
        const auto items = is_whole ? items_in_row(line, pantry_) : std::vector<SourcedText>();
        if (items.size() < fewest) {
            return false;
        }
        push_row(items, list_.role());
        return true;
    }

    bool take_labelled(const SourcedText& line, std::size_t label_end, std::size_t begin) {
        const bool is_in_sentences =
            cursor_.next_line().substr(0, longest_label).find(": ") == std::string_view::npos &&
            is_sentence(cursor_.next_line()) &&
            measured_amounts(cursor_.next_line()) > 2; // fewer are of scaling and dusting
        if (is_in_sentences) { // "Sponge: 1 cup milk, 1 cup flour. Let it rise", "Then beat in 2 eggs, ..."
            return false;
        }
        const bool is_marked = begin > label_end + 1;
        const std::string_view label = line.text.substr(0, label_end);
        const std::string heading = without_brackets(heading_text(label));
        const std::string_view made = role_of_made(heading);
        auto role = made.empty() ? role_of_heading(heading) : std::optional(std::string(made));
        if (heading == "pan" && !names_flour(line.text, pantry_)) { // "Pan: 1/2 c. butter, 1 c. brown sugar"
            role = "topping";
        }
        const auto items =
            items_in_row(line.part(begin, before_sentence(line.text.substr(begin)).size()), pantry_);
        const bool is_known = std::all_of(items.begin(), items.end(), [&](const SourcedText& item) {
            return is_item(item.text, pantry_) || names_ingredient(item.text, pantry_);
        });
        const bool is_apart = // "Glaze: 1 egg, 2 tbsp milk" is read as one line
            made.empty() && role && !is_in_dough(*role) &&
            (items.size() < 2 ||
             (line.text[label_end] == ':' && is_known && line.text.find(';') == std::string_view::npos));
        if (items.empty() || (is_marked ? is_apart : !role || items.size() < 2) || part_named(heading) ||
            (has_digit(heading) && !(is_known && heading.starts_with("add "))) ||
            (!role && names_ingredient(label, pantry_)) || heading.ends_with("paste")) { // of crosses
            return false;
        }
        push_row(items, role.value_or(list_.role()));
        return true;
    }

    void push_row(const std::vector<SourcedText>& items, const std::string& role) {
        const std::string role_before = list_.role();
        part_ = RecipePart::ingredients;
        list_.flush_columns();
        list_.set_role(role);
        for (const SourcedText& item : items) {
            list_.push(item);
        }
        list_.set_role(role_before);
    }

    // A number without a measure is one where the list names its batches.
    bool is_stacked_amount(std::string_view text) const {
        const auto tokens = line_tokens(plain_line(text.substr(0, 80)));
        const bool is_number = tokens.size() == 1 && tokens.front().is_number();
        return is_amount_alone(text) || (is_number && !recipe_.batches.empty());
    }

    // A name over its amounts, one for each batch, or an amount over its name.
    bool take_stacked(const SourcedText& line) {
        const bool may_be_label = // "6 small rolls" amid a list are soaked for it
            blank_before_ || !recipe_.batches.empty() || is_batch_label(cursor_.next_line());
        if (may_be_label && is_batch_label(line.text)) {
            recipe_.batches.push_back(plain_line(line.text));
            return true;
        }
        const bool is_amount_first = is_stacked_amount(line.text);
        if (is_rule(cursor_.next_line()) || is_amount_first == is_stacked_amount(cursor_.next_line())) {
            return false;
        }
        const std::string_view name = is_amount_first ? cursor_.next_line() : line.text;
        const std::string_view amount = is_amount_first ? line.text : cursor_.next_line();
        const bool is_over = blank_before_ && name.data() == line.text.data();
        const bool is_under = name.starts_with("  ") && !line.text.starts_with("  ");
        if (!(is_over || is_under) || !names_ingredient(name, pantry_)) {
            return false;
        }
        list_.push(joined(line, cursor_.next()), plain_line(amount) + " " + plain_line(name));
        unread_line_ = cursor_.number() + 2;
        while (is_over && unread_line_ <= source_->line_count() &&
               is_stacked_amount(source_->line(unread_line_))) {
            ++unread_line_; // of another batch
        }
        return true;
    }

    // "Water ..... 1 cup      Yeast ..... 1 cake": one row, or two side by side.
    bool take_leader_row(const SourcedText& whole) {
        const auto rows = leader_rows(whole.text, leader_unit_);
        if (rows.empty()) {
            return false;
        }
        part_ = RecipePart::ingredients;
        list_.push_rows(whole, rows);
        return true;
    }

    // "Raised muffins.--Take one quart of flour": the name and what follows it in one paragraph.
    SourcedText without_title(const SourcedText& line) {
        constexpr std::size_t longest_title = 60;
        const std::string_view text = line.text.substr(0, longest_title);
        for (const std::string_view mark : {".--", ".\xE2\x80\x94", ". --", ". \xE2\x80\x94"}) {
            const std::size_t end = text.find(mark);
            if (part_ == RecipePart::heading && recipe_.name.empty() && end != std::string_view::npos &&
                end > 0) {
                recipe_.name = plain_line(text.substr(0, end));
                const std::size_t begin = end + mark.size();
                return line.part(begin, line.text.size() - begin);
            }
        }
        return line;
    }

    static std::string_view first_words(std::string_view text) {
        std::size_t end = 0;
        for (int words = 0; words < 3 && end < text.size(); ++words) {
            end = std::min(text.find(' ', end + 1), text.size());
        }
        return text.substr(0, end);
    }

    // "One pint of milk, one quart of flour, three eggs": a list in sentences, down to the first that says
    // what to do.
    bool take_run_on(const SourcedText& first_line) {
        if (part_ == RecipePart::directions) {
            return false;
        }
        const SourcedText line = without_title(first_line);
        const SourcedText paragraph = cursor_.paragraph_from(line);
        const bool is_running = blank_before_ && is_running_text(paragraph.text);
        const std::size_t end = paragraph.span.offset + paragraph.text.size();
        constexpr std::size_t shortest_broken = 45; // of a line with a margin
        const bool is_list = !is_running && line.text.size() < shortest_broken &&
                             is_item(cursor_.next_line(), pantry_); // "5 dl / 500 ml milk" over its like
        const bool is_step = // "Dissolve the yeast in 300 g water, stir in flour, then 10 g salt"
            blank_before_ && is_sentence(first_words(line.text)) && whole_dough_.is_in(recipe_.lines);
        if (!is_list && !is_step &&
            names_amounts(is_running || is_behind_label_ ? paragraph : line, pantry_) &&
            take_list(paragraph)) {
            read_to_ = end;
            return true;
        }
        if (!is_running || part_ != RecipePart::heading) {
            return false;
        }
        read_to_ = end; // sentences above a list are no part of it, unless they are the recipe
        if (is_recipe_in_sentences(paragraph, pantry_)) {
            recipe_.sentences_end = end;
        }
        return true;
    }

    bool take_list(const SourcedText& paragraph) {
        const RunOnList list = read_run_on_list(paragraph, pantry_);
        if (list.items.empty()) {
            return false;
        }
        for (const RecipeLine& item : list.items) {
            list_.add({.place = item.place, .role = item.role, .words = item.words});
        }
        part_ = RecipePart::ingredients;
        const std::string_view all = source_->text();
        const std::size_t list_end = paragraph.span.offset + list.length;
        recipe_.behind_list = SourcedText{
            .source = source_, .span = {list_end, all.size() - list_end}, .text = all.substr(list_end)};
        recipe_.is_list_whole = false;
        // the sentences of the list may say what to do as well
        take_direction(paragraph);
        const std::string_view rest = paragraph.text.substr(list.length);
        if (rest.find_first_not_of(" \t\r\n") != std::string_view::npos) {
            part_ = RecipePart::directions;
        }
        return true;
    }

    // "For the filling:", "## Dough", "**Glaze**"; lines among ingredients that name a group.
    bool take_heading(const SourcedText& line, const std::string& heading) {
        const HeadingPlace place{.part = part_,
                                 .is_below_blank = blank_before_,
                                 .has_parts = has_heading_,
                                 .has_name = !recipe_.name.empty(),
                                 .has_whole_dough = whole_dough_.is_in(recipe_.lines),
                                 .role = list_.role(),
                                 .role_level = list_.role_level(),
                                 .lines = recipe_.lines,
                                 .is_dough_begun = list_.is_dough_begun()};
        auto group = read_group_heading(line, heading, cursor_, place, pantry_);
        if (!group || !group->role) {
            return group.has_value();
        }
        list_.flush_columns();
        if (group->says_more) {
            take_direction(line);
        }
        part_ = RecipePart::ingredients;
        list_.begin_below_heading(*std::move(group->role), group->says_role, std::move(group->title));
        return true;
    }

    bool take_yield(std::string_view line, std::string_view heading) {
        const std::size_t length = part_ != RecipePart::directions ? length_of_yield_word(heading) : 0U;
        if (length > 0) {
            const std::string text = plain_line(line);
            set_yield(text.substr(std::min(length, text.size())));
        }
        return length > 0;
    }

    // "lev 100": grams of something not known; not "Recipe 45", nor "Serves 8".
    static bool is_name_with_number(std::string_view text) {
        constexpr double fewest = 20.0;
        const auto tokens = line_tokens(plain_line(text));
        return tokens.size() == 2 && tokens[0].is_word() && tokens[1].is_number() &&
               tokens[1].value >= fewest &&
               !tokens[0].is_any({"page", "p", "recipe", "no", "number", "serves", "makes", "formula",
                                  "chapter", "version", "batch", "yield", "bread", "loaf", "card", "sheet",
                                  "day"});
    }

    // "Moss | 500 g" right above the first line that the pantry knows: of the list too.
    void keep_above_list(const SourcedText& line) {
        constexpr std::size_t longest = 70;
        if (blank_before_) {
            above_list_.clear();
        }
        const SplitLine split = split_line(plain_line(line.text.substr(0, longest)));
        const bool is_amount =
            split.amount && (!split.amount->measure.is_piece() || is_name_with_number(line.text));
        if (line.text.size() < longest && !recipe_.name.empty() && is_amount && !is_sentence(line.text)) {
            above_list_.push_back(line);
        } else {
            above_list_.clear();
        }
    }

    void take_before(const SourcedText& line) {
        // of a name not known
        const bool is_above_list =
            names_pack(line.text) && (is_blank(cursor_.next_line()) || names_pack(cursor_.next_line()));
        const bool begins_list = begins_with_number(line.text) &&
                                 (is_item(cursor_.next_line(), pantry_) || has_measure(cursor_.next_line()));
        if (is_above_list) {
            return; // how an ingredient is sold
        }
        if (names_several(line, pantry_)) {
            return; // a sentence with the whole recipe, perhaps
        }
        if (recipe_.name.empty() && names_batch_in_brackets(line.text) &&
            !is_ingredient_line(line.text.substr(0, line.text.find('(')), pantry_)) {
            set_name(line.text);
            return;
        }
        if ((begins_list || is_ingredient_line(line.text, pantry_)) && !is_sentence(line.text)) {
            part_ = RecipePart::ingredients;
            for (const SourcedText& above : std::exchange(above_list_, {})) {
                list_.push(above);
            }
            take_ingredient(line);
        } else if (recipe_.name.empty() && line.text.size() <= (is_sentence(line.text) ? 100U : 120U) &&
                   !is_ended_by_colon(line.text)) {
            const std::string name = bold_name(line.text);
            set_name(name.empty() ? line.text : name);
        } else {
            keep_above_list(line);
        }
    }

    // "Salt 12 g + 50 g water": the second amount is of another thing.
    bool take_two_joined(const SourcedText& line) {
        constexpr std::size_t longest = 100;
        constexpr std::string_view plus = " + ";
        const std::size_t at = line.text.size() < longest ? line.text.find(plus) : std::string_view::npos;
        if (at == std::string_view::npos || begins_with_number(line.text)) {
            return false;
        }
        const SourcedText first = line.part(0, at);
        const SourcedText second = line.part(at + plus.size(), line.text.size() - at - plus.size());
        const std::size_t digit = first.text.find_first_of("0123456789");
        const bool is_two = is_item(first.text, pantry_) && digit != std::string_view::npos &&
                            is_amount_alone(first.text.substr(digit)) && begins_with_number(second.text) &&
                            has_measure(second.text) && is_ingredient_line(second.text, pantry_) &&
                            second.text.find(" for ") == std::string_view::npos;
        if (!is_two) {
            return false;
        }
        part_ = RecipePart::ingredients;
        list_.flush_columns();
        list_.push(first);
        list_.push(second);
        return true;
    }

    // Prose that was broken at the margin.
    bool goes_on(std::string_view text) const {
        constexpr std::size_t margin = 45;
        const std::string_view next = cursor_.next_line().substr(
            std::min(cursor_.next_line().find_first_not_of(' '), cursor_.next_line().size()));
        return text.size() > margin && !next.empty() && next.front() >= 'a' && next.front() <= 'z' &&
               !has_measure(text);
    }

    // Whether words are an ingredient, and no other measure of the last one or a choice beside it.
    bool is_another_item(std::string_view text) const {
        const auto key_of = [&](std::string_view words) {
            constexpr std::size_t longest = 200;
            return name_in(words.substr(0, longest), pantry_).key;
        };
        return is_ingredient_line(text, pantry_) && !text.starts_with("or ") &&
               key_of(text) != key_of(recipe_.lines.back().said());
    }

    void take_ingredient(const SourcedText& line) {
        if (!recipe_.lines.empty() && line.text.starts_with('(') && line.text.ends_with(')')) {
            const SourcedText inside = line.part(1, line.text.size() - 2);
            const std::size_t equals = inside.text.find("= ");
            const bool is_note = equals != std::string_view::npos && has_digit(inside.text.substr(equals));
            if (!is_note && is_another_item(inside.text)) { // "(1/2 cup raisins)"
                list_.push(line, std::string(inside.text));
            } else { // "(4 cups)", "(or milk)": of the line above
                take_direction(line);
            }
            return;
        }
        if (has_leader(line.text) && is_ingredient_line(line.text, pantry_)) {
            list_.push(line); // "Olive oil ..... optional, 1 tbsp. Only for cool ovens"
            return;
        }
        if (blank_before_ && is_item_for_purpose(line.text, pantry_)) {
            list_.push(line);
            return;
        }
        const bool is_paragraph =
            blank_before_ && !is_item(line.text, pantry_); // directions without a heading
        const bool is_remark =
            is_paragraph && !recipe_.lines.empty() &&
            (line.text.ends_with('.') || line.text.starts_with("I'll ") || line.text.starts_with("I ")) &&
            !has_digit(line.text) && !is_ingredient_line(line.text, pantry_) &&
            !names_ingredient(line.text, pantry_); // "All in grams."
        if (is_remark || begins_with_time(line.text) || (is_paragraph && goes_on(line.text)) ||
            (is_sentence(line.text) && (!has_heading_ || is_paragraph) && !is_numbered_item(line.text)) ||
            (blank_before_ && is_step_without_mark(line.text))) {
            list_.flush_columns();
            // "In the morning, remove the potatoes and add", over what is added
            const bool is_amid = is_item(cursor_.next_line(), pantry_) &&
                                 (!blank_before_ || line.text.find_first_of(".;") == std::string_view::npos);
            // no end of a list, but for the first of numbered steps
            const bool is_note = (has_heading_ && !(blank_before_ && ends_list(line.text))) || is_amid;
            part_ = is_note ? part_ : RecipePart::directions;
            take_direction(line);
            return;
        }
        if (is_sentence(line.text) && !is_ingredient_line(line.text, pantry_) && line.text.size() > 60) {
            take_direction(line); // directions without a heading of their own
            return;
        }
        list_.push(line);
    }

    // "2. Warm water 300 g"
    bool is_numbered_item(std::string_view text) const {
        constexpr std::size_t longest = 40;
        const std::string plain = plain_line(text.substr(0, longest));
        return text.size() < longest && is_numbered_step(text) && is_ingredient_line(plain, pantry_) &&
               has_digit(plain);
    }

    // "1. Cream the yeast"; "1. Warm water 300 g" is an item.
    bool ends_list(std::string_view text) const {
        return (is_numbered_step(text) && !is_ingredient_line(text, pantry_) &&
                !is_item(cursor_.next_words(), pantry_)) ||
               is_step_without_mark(text);
    }

    void take_direction(const SourcedText& line) {
        if (!recipe_.lines.empty() && !recipe_.behind_list) {
            const std::string_view all = source_->text().substr(line.span.offset);
            recipe_.behind_list =
                SourcedText{.source = source_, .span = {line.span.offset, all.size()}, .text = all};
            recipe_.is_list_whole = true;
        }
        const std::string text = plain_line(line.text.substr(0, 4000));
        if (!blank_before_ && !recipe_.directions.empty() && recipe_.directions.back().size() < 4000 &&
            !line.text.starts_with('-') && !line.text.starts_with('*')) {
            recipe_.directions.back() += " " + text;
        } else if (recipe_.directions.size() < most_recipe_lines) {
            recipe_.directions.push_back(text);
        }
    }

    SourceHandle source_;
    const Pantry& pantry_;
    WholeDough whole_dough_;
    RecipeText recipe_;
    LineCursor cursor_;
    RecipePart part_ = RecipePart::heading;
    IngredientList list_;
    std::string batch_label_;             // over the list that is read
    std::vector<SourcedText> above_list_; // lines with amounts of nothing known
    FrameReader frame_;
    std::size_t unread_line_ = 0; // the first line behind those that were read together
    std::size_t read_to_ = 0;     // bytes that a list which runs on took
    std::string leader_unit_;     // of the last row
    bool is_comment_open_ = false;
    bool is_quote_left_ = false; // lines of a mail before are not read
    bool has_heading_ = false;
    bool is_behind_label_ = false;
    bool blank_before_ = true;
};

} // namespace

RecipeText read_plain_recipe(const SourceHandle& source, const Pantry& pantry) {
    return PlainReader(without_page_markup(source), pantry).read();
}

} // namespace leavenwright
