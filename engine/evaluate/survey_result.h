#pragma once
// What follows from the readings of the ground: its heights, its fall, and the base cut to it.
//
// Survey frame, mm: x to the cook's right from the counters' left end, y back from their front
// edge, z up from the finished ground at the working side's feet.

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "engine/base/block.h"
#include "engine/survey/levels.h"
#include "engine/survey/plane.h"
#include "engine/survey/scribe.h"

namespace hs::evaluate {

// One height in use, as it is measured from elsewhere than the feet.
struct AboveBase {
  double feet_mm = 0;              // as used: above the ground at the feet
  double base_mm = 0;              // above the base's top
  double low_mm = 0, high_mm = 0;  // above the lowest and the highest ground under the base
};

// Where a panel of the base is, and what it is called. One that does not show may stand clear of
// the ground; the others are cut to it.
enum class PanelPlace : std::uint8_t {
  OvenFront,
  DoughFront,
  LeftEnd,
  RightEnd,
  Between,
  OvenBack,
  DoughBack
};
std::string_view panel_name(PanelPlace place);
constexpr bool shows(PanelPlace place) { return place < PanelPlace::Between; }

struct SurveyResult {
  std::uint64_t digest = 0;       // of every input; equal inputs, equal digest
  survey::Levels levels;          // heights above the feet
  std::vector<std::size_t> zero;  // the points that heights are above
  int feet = 0;          // points read where feet stand; 0: heights are above the point nearest
                         // to the front's middle instead
  int feet_missing = 0;  // to be read before the ground there is called even
  double feet_spread_mm = 0;
  std::optional<std::size_t> high, low;  // of the points
  std::optional<survey::Plane> plane;    // without what is doubtful
  std::optional<survey::Slope> slope;
  double worst_off_mm = 0, usual_off_mm = 0;  // from the plane: largest, root of the mean square
  std::vector<std::size_t> doubts;            // points to be read again, the farthest off first
  double reading_error_mm = 0;                // plus or minus, of one reading
  std::optional<double> closing_mm;           // worst loop; absent: no loop
  double closing_limit_mm = 0;                // for that loop
  std::vector<survey::PanelLine> panels;
  std::vector<PanelPlace> places;  // of the panels
  std::vector<Block> within;       // each base as seen from above, its boards with it
  // The highest and the lowest point that was read within a base, off its boards' lines as well.
  std::optional<std::size_t> inside_high, inside_low;
  std::vector<survey::Ground> grounds;
  std::optional<survey::Base> base;
  bool built = false;  // its top is the one measured when it was built
  // As the panels: readings, by index, to be taken again before that one is cut. Those under it,
  // at the feet, and what the base's top was made for.
  std::vector<std::vector<std::size_t>> stops;
  std::optional<AboveBase> counter, oven;
};

}  // namespace hs::evaluate
