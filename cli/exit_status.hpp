// How the command ends. Documented under EXIT STATUS in README.md.
#pragma once

namespace leavenwright {

inline constexpr int exit_done = 0;
inline constexpr int exit_input_faulty = 1; // or a check failed
inline constexpr int exit_wrong_usage = 2;
inline constexpr int exit_cannot_read = 66;
inline constexpr int exit_our_fault = 70;
inline constexpr int exit_cannot_write = 73;

} // namespace leavenwright
