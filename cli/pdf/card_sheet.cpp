#include "pdf/card_sheet.hpp"

#include "pdf/card_blocks.hpp"

#include <algorithm>
#include <string>

namespace leavenwright {
namespace {

constexpr double margin = 32.0;
constexpr double gutter = 22.0;
constexpr double page_line_size = 8.0;
constexpr double page_line = 14.0; // for "page 2 of 3" on pages behind the first
// The largest first; the smallest still has weights of 12 points.
constexpr double sizes[] = {1.1, 1.0, 0.9, 0.82, 0.75};
constexpr double size_of_many_pages = 0.9;

// A card laid out in one size of type: heading, weigh-out beside work, figures beside cautions.
class Sheet {
public:
    Sheet(const Card& card, PdfDocument& pdf, double size)
        : card_(card), pdf_(pdf), width_((pdf.width() - 2.0 * margin - gutter) / 2.0),
          blocks_(card, pdf, size, width_), heading_(blocks_.heading(pdf.width() - 2.0 * margin)),
          weigh_out_(blocks_.weigh_out()), work_(blocks_.work()), figures_(blocks_.figures()),
          cautions_(blocks_.cautions()) {
        lay_out();
    }
    Sheet(const Sheet&) = delete;
    Sheet& operator=(const Sheet&) = delete;

    std::size_t pages() const { return pages_; }

    void draw() {
        for (std::size_t page = 0; page < pages_; ++page) {
            if (pages_ > 1) {
                draw_page_line(page);
            }
            for (const PlacedBlock& placed : placed_) {
                if (placed.page == page) {
                    placed.block->draw(placed.at);
                }
            }
            pdf_.end_page();
        }
    }

private:
    void draw_page_line(std::size_t page) {
        const double width = pdf_.width() - 2.0 * margin;
        const Point at{margin, margin - 8.0};
        if (page > 0) {
            pdf_.draw_text(at, width * 0.8, card_.title, {.size = page_line_size, .bold = true});
        }
        pdf_.draw_text(at, width, "page " + std::to_string(page + 1) + " of " + std::to_string(pages_),
                       {.size = page_line_size, .align = Align::right});
    }

    void lay_out() {
        const PageRoom room{.top = margin + page_line, .bottom = pdf_.height() - margin};
        const double right = margin + width_ + gutter;
        const PagePlace begin = flow(heading_, margin, {0, margin}, room, placed_);
        const PagePlace left_end = flow(weigh_out_, margin, begin, room, placed_);
        const PagePlace right_end = flow(work_, right, begin, room, placed_);
        const PagePlace below = later(left_end, right_end);
        const PagePlace figures_end = flow(figures_, margin, below, room, placed_);
        pages_ = later(figures_end, flow(cautions_, right, below, room, placed_)).page + 1;
    }

    static PagePlace later(const PagePlace& left, const PagePlace& right) {
        const bool is_left = left.page != right.page ? left.page > right.page : left.y > right.y;
        return is_left ? left : right;
    }

    const Card& card_;
    PdfDocument& pdf_;
    double width_;
    CardBlocks blocks_;
    std::vector<Block> heading_;
    std::vector<Block> weigh_out_;
    std::vector<Block> work_;
    std::vector<Block> figures_;
    std::vector<Block> cautions_;
    std::vector<PlacedBlock> placed_;
    std::size_t pages_ = 1;
};

} // namespace

void draw_card(const Card& card, PdfDocument& pdf) {
    for (const double size : sizes) {
        Sheet sheet(card, pdf, size);
        if (sheet.pages() == 1) {
            sheet.draw();
            return;
        }
    }
    Sheet(card, pdf, size_of_many_pages).draw();
}

} // namespace leavenwright
