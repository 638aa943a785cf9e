#pragma once
// A person seen from the side as a plain shape, for drawings. The heights that matter (eye, top of
// the head, shoulder, elbow, hip) and the reach to the front (belly, toes) are the body's own; the
// rest is drawn, not measured.

#include <vector>

#include "engine/cook/body.h"
#include "engine/report/drawing.h"
#include "engine/sight/lean.h"

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

// The same person bent at knees and hips, feet where they are. The eye is where sight::bent() takes
// it; the rest follows as drawn.
Figure bent_figure_of(const cook::Body& body, double eye_x_mm, const sight::Posture& posture);

// The same person from the front, standing on z_mm: arms at the sides, plain. Heights are the
// body's; breadths are shares of the stature, drawn.
std::vector<Spot> front_figure_of(const cook::Body& body, double middle_x_mm, double z_mm);

// From above, looking along `facing_deg` (0: up the sheet, positive to the right): shoulders, and
// the head over them.
struct PlanFigure {
  std::vector<Spot> shoulders, head;
};
PlanFigure plan_figure_of(const cook::Body& body, Spot eye, double facing_deg);

}  // namespace hs::report
