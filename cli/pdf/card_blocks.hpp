// The parts of a card as blocks of a given size of type.
#pragma once

#include "card/card.hpp"
#include "pdf/flow.hpp"

namespace leavenwright {

class CardBlocks {
public:
    /// `size` scales all type; 1 has weights of 16 points. All widths are of one column but that of
    /// heading(). The card and the document outlive the blocks.
    CardBlocks(const Card& card, PdfDocument& pdf, double size, double width);

    std::vector<Block> heading(double page_width);
    std::vector<Block> weigh_out();
    std::vector<Block> work(); // steps, windows, curve, notes
    std::vector<Block> figures();
    std::vector<Block> cautions();

private:
    Block text(const std::string& words, const Lettering& lettering, double gap, double text_width);
    Block small(const std::string& words, double gap);
    Block title(std::string words, const std::string& beside);
    Block row(const CardRow& row);
    Block sum(const CardRow& row);
    Block step(const CardStep& step, double clock_width);
    Block curve();
    Block figure_row(const std::vector<std::string>& cells, double grey);
    void add_steps(std::vector<Block>& blocks);
    void add_windows(std::vector<Block>& blocks);
    void add_figures(std::vector<Block>& blocks, const std::string& heading,
                     const std::vector<CardFigure>& figures);
    void measure_columns();
    void draw_box(Point at, double height);
    void draw_hairline(Point at, double y);

    const Card& card_;
    PdfDocument& pdf_;
    double size_;
    double width_;
    double weight_width_ = 0.0;
    double percent_width_ = 0.0;
};

} // namespace leavenwright
