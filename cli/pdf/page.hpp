// Pages of a PDF: texts, lines and areas at places in points from the upper left corner. The only
// user of Pango and Cairo.
#pragma once

#include "render/card.hpp"

#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace leavenwright {

enum class Align { left, right, middle };

struct Lettering {
    double size = 10.0;
    bool bold = false;
    Align align = Align::left;
    double grey = 0.0;          // 0 black, 1 white
    std::size_t bold_bytes = 0; // of the beginning, where not all is bold
};

struct Point {
    double x = 0.0;
    double y = 0.0;
};

struct Stroke {
    double width = 0.5;
    double grey = 0.0;
    bool is_broken = false;
};

class PdfDocument {
public:
    PdfDocument(Paper paper, const std::string& title);
    ~PdfDocument();
    PdfDocument(const PdfDocument&) = delete;
    PdfDocument& operator=(const PdfDocument&) = delete;

    double width() const;
    double height() const;

    /// How high `text` is when broken into lines of `width`.
    double text_height(std::string_view text, const Lettering& style, double width);
    /// How wide it is on one line.
    double text_width(std::string_view text, const Lettering& style);
    /// `at` is the upper left corner of a box of `width`.
    void draw_text(Point at, double width, std::string_view text, const Lettering& style);
    /// On one line, `at` its baseline and, by the style's alignment, its left end, middle or right end.
    void draw_label(Point at, std::string_view text, const Lettering& style);
    void draw_line(const std::vector<Point>& points, const Stroke& stroke);
    void fill(const std::vector<Point>& corners, double grey);
    void end_page();

    /// Texts with characters that no font has.
    const std::vector<std::string>& texts_without_font() const;

    /// The whole file; nothing can be drawn after it.
    std::string finish();

private:
    struct State;
    std::unique_ptr<State> state_;
};

} // namespace leavenwright
