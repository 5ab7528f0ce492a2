// Blocks of a card and where they come to stand: down a column, on to the next page where one is
// full, headings never left behind alone.
#pragma once

#include "pdf/page.hpp"

#include <functional>
#include <vector>

namespace leavenwright {

/// Something that is drawn whole, as wide as its column.
struct Block {
    double height = 0.0;
    double gap = 0.0;             // above it, where it does not begin a page
    bool stays_with_next = false; // a heading
    std::function<void(Point)> draw;
};

struct PlacedBlock {
    std::size_t page = 0;
    Point at;
    const Block* block = nullptr;
};

/// Where something begins or ends.
struct PagePlace {
    std::size_t page = 0;
    double y = 0.0;
};

struct PageRoom {
    double top = 0.0; // of pages behind the first
    double bottom = 0.0;
};

/// Places `blocks` from `begin` on at `x`; returns where the last one ends.
PagePlace flow(const std::vector<Block>& blocks, double x, PagePlace begin, const PageRoom& room,
               std::vector<PlacedBlock>& placed);

} // namespace leavenwright
