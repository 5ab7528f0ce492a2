// What directions do with a listed thing once the dough is made: brush, fill, dip, boil. Private to the
// transcribe folder.
#pragma once

#include "transcribe/call_index.hpp"

#include <cstddef>
#include <string_view>
#include <vector>

namespace leavenwright {

/// The first sentence behind those that make the dough and the rise that follows; 0 where none makes one.
std::size_t end_of_making(const CallIndex& index);

/// A sentence that puts a thing on or into pieces of the dough.
struct LateUse {
    std::string_view role;
    std::size_t sentence;
    bool is_batch; // it is mixed with another listed thing first: a glaze
    bool is_paste; // of flour: crosses
};

/// The uses of what goes by one call (a group of the index) from sentence `first` on. Fat that is folded in
/// is the dough's, and so is what a sentence works in.
std::vector<LateUse> late_uses(const CallIndex& index, std::size_t group, std::size_t first);

/// Whether a sentence kneads, works or folds it into the dough.
bool is_worked_in(const CallIndex& index, std::size_t group);

/// Whether from sentence `first` on it is strewn on the dough, which the next sentence folds.
bool is_layered(const CallIndex& index, std::size_t group, std::size_t first);

} // namespace leavenwright
