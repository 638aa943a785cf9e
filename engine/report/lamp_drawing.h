#pragma once
// The lamp at the oven from the side, as a display list: the mouth, where its head may be and may
// not, the eyes, the neck and the light on the pizza.
//
// Frame: as the side section's, x = 0 at the outer mouth plane, to the right into the oven; y above
// the ground. What is beside the drawn plane is seen through it: the neck's foot, an eye.

#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"
#include "engine/evaluate/lamp_map.h"
#include "engine/report/drawing.h"

namespace hs::report {

struct LampView {
  double text_mm = 60;  // height of a line of text in the drawing
  bool names = true;    // the zones' names in the drawing
};

// Room that the drawing takes; all nought without an oven.
Box lamp_frame(const config::Config& config, const evaluate::Evaluation& evaluation);

// `map`: of the plane that the head is in. Empty without an oven.
Drawing lamp_drawing(const config::Config& config, const evaluate::Evaluation& evaluation,
                     const evaluate::LampMap& map, const LampView& view);

}  // namespace hs::report
