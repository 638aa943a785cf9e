#pragma once
// A person seen from the side as a plain shape, for drawings. The heights that matter (eye, top of
// the head, shoulder, elbow, hip) and the reach to the front (belly, toes) are the body's own; the
// rest is drawn, not measured.

#include <vector>

#include "engine/cook/body.h"
#include "engine/report/drawing.h"

namespace hs::report {

struct Figure {
  std::vector<Spot> shape;  // closed, smooth, facing right
  std::vector<Spot> arm;    // closed, smooth, in front of the trunk
  std::vector<Spot> seat;   // closed, what a seated cook sits on; empty when standing
  Spot eye;
  double toes_mm = 0;  // x of the toe tips
  double back_mm = 0;  // x of the rearmost point
  double top_mm = 0;   // top of the head above the ground
};

// Standing or sitting upright with the eye's plumb line at x = eye_x_mm, the ground at y = 0.
Figure figure_of(const cook::Body& body, double eye_x_mm);

}  // namespace hs::report
