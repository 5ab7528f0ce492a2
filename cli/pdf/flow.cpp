#include "pdf/flow.hpp"

namespace leavenwright {

PagePlace flow(const std::vector<Block>& blocks, double x, PagePlace begin, const PageRoom& room,
               std::vector<PlacedBlock>& placed) {
    PagePlace now = begin;
    for (std::size_t i = 0; i < blocks.size(); ++i) {
        // A heading needs room for what follows it too.
        double needed = blocks[i].gap + blocks[i].height;
        for (std::size_t next = i + 1; next < blocks.size() && blocks[next - 1].stays_with_next; ++next) {
            needed += blocks[next].gap + blocks[next].height;
        }
        const bool is_fresh = now.page > begin.page && now.y == room.top;
        if (now.y + needed > room.bottom && !is_fresh) {
            now = {now.page + 1, room.top};
        }
        now.y += now.y == room.top ? 0.0 : blocks[i].gap;
        placed.push_back({now.page, {x, now.y}, &blocks[i]});
        now.y += blocks[i].height;
    }
    return now;
}

} // namespace leavenwright
