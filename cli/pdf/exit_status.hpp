// How leavenwright-pdf ends; the command reads it.
#pragma once

namespace leavenwright {

inline constexpr int pdf_done = 0;
inline constexpr int pdf_faulty = 1;       // why stands on standard error
inline constexpr int pdf_font_missing = 3; // for the text on standard output

} // namespace leavenwright
