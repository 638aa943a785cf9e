#pragma once
// Where the counters stand: cabinet or pier under the oven, and the dough counter beside it. One
// rule for what is drawn and for the base that is cut to the ground.
//
// Station frame, as engine/report/station_layout.h, which adds everything else to them.

#include <optional>

#include "engine/clearance/boxes.h"
#include "engine/evaluate/evaluate.h"

namespace hs::evaluate {

struct Stands {
  double front_mm = 0;                  // y of the counters' front edge
  bool dough_right = true;              // which side of the oven the dough counter is on (drawn)
  std::optional<clearance::Box> oven;   // with the landing beside it; absent: nobody at an oven
  std::optional<clearance::Box> dough;  // absent: no dough counter

  double left_mm() const;  // of whatever is farthest left
};
Stands stands_of(const config::Config& config, const Heights& used);

}  // namespace hs::evaluate
