#pragma once
// The fit map as numbers: for tables.

#include <cstddef>
#include <span>
#include <vector>

#include "engine/config/config.h"

namespace hs::evaluate {

struct FitCell {
  double share = 0;      // of the pizza that this cook sees
  bool see_all = false;  // the whole target
  bool too_hot = false;  // for the face to linger, at the least
};
struct FitRows {
  std::size_t cook = 0;
  std::vector<FitCell> cells;  // floor by floor, each from the first standoff to the last
  std::vector<bool> too_high;  // for these hands, by floor
};
// What does each cook at the oven see with its floor at each of these heights, from each of these
// standoffs (mm above the ground at the feet, and from the outer mouth plane to the eye)? Empty
// where nobody works at the oven. As exact as fit_map(), whose rules these are.
std::vector<FitRows> fit_rows(const config::Config& config, std::span<const double> floors_mm,
                              std::span<const double> standoffs_mm);

}  // namespace hs::evaluate
