#pragma once
// Actual sizes of what is sold by a name. Softwood and cellular PVC boards: DOC PS 20, size table,
// dry (second hand, public copies; PVC widths from memory). Sheets: 4 x 8 ft.

#include <optional>

namespace hs::frame {

inline constexpr double kInch_mm = 25.4;

// Dressed dry thickness of 1x, 5/4 and 2x; nullopt for any other name. `nominal_quarters`: 4 is 1x.
std::optional<double> dressed_thickness_mm(int nominal_quarters);
// Dressed dry width of a board 2 to 12 in wide by name; nullopt for another.
std::optional<double> dressed_width_mm(int nominal_in);
// The narrowest of 2, 3, 4, 6, 8, 10, 12 that is at least this wide, by name; nullopt: none is.
std::optional<int> board_at_least(double width_mm);

inline constexpr double kOneBy_mm = 0.75 * kInch_mm;  // 1x: 19.05
inline constexpr double kTwoBy_mm = 1.5 * kInch_mm;   // 2x: 38.1
inline constexpr double kWidest_mm = 11.25 * kInch_mm;
inline constexpr double kSheetLong_mm = 96 * kInch_mm, kSheetWide_mm = 48 * kInch_mm;
inline constexpr double kMetalLong_mm = 120 * kInch_mm;  // sheets of 48 x 120 in: from memory

// Supports on the ground under a board that carries: one at each end, and between them no farther
// apart than this (our judgement).
inline constexpr double kSupports_mm = 400;
int supports_under(double board_mm);

}  // namespace hs::frame
