// What stands around a recipe in files, mails and posts, and is no part of its list: front matter, the heads
// of a mail, times and tags, tables of nutrition. Private to the transcribe folder.
#pragma once

#include "pantry/pantry.hpp"
#include "source/source_text.hpp"

#include <cstddef>
#include <string>
#include <string_view>

namespace leavenwright {

/// What a line of the frame says.
struct FrameLine {
    enum class Kind {
        none, // no frame
        other,
        mail, // the head of one
        title,
        yield,
        nutrition, // figures may follow it
        notes      // heads what is no list
    };

    Kind kind = Kind::none;
    std::string value; // of a title or yield
};

/// By the words before its colon and what it begins with: "Date: 9 Nov", "Servings: 8", "![the loaf](a.png)".
/// "Salt: 2 tsp" and "Date: 1 cup" are none.
FrameLine frame_line(std::string_view line);

/// Follows the frame through a text, line by line: figures below a head of nutrition, and notes down to a
/// blank line, are frame too.
class FrameReader {
public:
    /// `is_item`: the line is one of a list, if it is no frame.
    FrameLine read(std::string_view line, bool is_below_blank, bool is_item);
    /// Whether "--" stands alone above what a mailer signs with.
    bool is_signature_mark(std::string_view line, std::size_t lines_below) const;

private:
    FrameLine::Kind before_ = FrameLine::Kind::none;
    bool is_mail_ = false;
};

/// Whether the line above "Makes 2 loaves" may be the title.
bool may_be_title(std::string_view line);

/// "|  2 cups flour       |" in a box of bars; a table's row has more of them.
bool is_in_drawn_box(std::string_view line);

/// A line without what a page prints beside it: "Ingredients" of "Ingredients [edit | edit source]" in a
/// wiki, "1 egg" of "1 egg  ..   ..   ..      0  1" in a book that says what things cost; empty where a line
/// holds nothing but money.
std::string_view without_page_marks(std::string_view line);

/// Bytes down to the end of the first line with words, where it is the head of a book's page:
/// "61            BREAD AND YEAST.", "MANUAL FOR BAKERS.      31", "119"; 0 where it is none.
std::size_t length_of_page_head(const SourceText& source, const Pantry& pantry);

/// "---------- Recipe Export ----------"
bool is_worded_rule(std::string_view line);

/// "Amount  Measure  Ingredient -- Preparation Method": a head over columns that begin with the amount.
bool is_column_head(std::string_view line);

/// "Lock-keeper's loaf" in "The '''lock-keeper's loaf''' is a rye loaf": what a sentence draws bold first;
/// empty where it draws nothing so.
std::string bold_name(std::string_view line);

/// "Flour, whole wheat    5 lb bag": how a thing is sold.
bool names_pack(std::string_view line);

struct FrontMatter {
    std::size_t line_count = 0; // of the lines that it takes, and blank ones above
    std::string title;
    std::string yield;
};

/// The keys between "---" lines, or of a wiki's "{{...}}", that begin a text; none where they hold a list of
/// ingredients.
FrontMatter read_front_matter(const SourceText& source);

} // namespace leavenwright
