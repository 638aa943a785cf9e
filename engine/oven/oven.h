#pragma once
// The oven as the sight and reach modules see it: outlines of its mouth and its floor.
//
// Oven frame: origin at the middle of the outer mouth plane, on the oven floor; x to the cook's
// right, y into the oven, z up. Both openings stand on the floor level (z = 0).

#include <string>
#include <vector>

#include "engine/base/result.h"
#include "engine/config/config.h"

namespace hs::oven {

// An opening in a plane y = const. Rectangle; arch: vertical sides, then half an ellipse; half
// round: half an ellipse from the floor. Convex, symmetric in x, standing on z = 0.
struct Outline {
  double half_width_mm = 0;
  double height_mm = 0;
  double spring_mm = 0;  // where the curve starts: = height for a rectangle, 0 for a half round

  // Half the clear width at height z; negative when z is outside 0..height.
  double half_width_at(double z_mm) const;
  // The largest s with (s*x, s*z) inside; infinity for the origin itself. x any, z >= 0.
  double scale_to_edge(double x_mm, double z_mm) const;
};

struct Floor {
  bool round = false;
  double half_width_mm = 0;
  double near_mm = 0, far_mm = 0;           // y of its front and back edge
  double half_width_at(double y_mm) const;  // negative outside
  double area_mm2() const;
};

struct Geometry {
  Outline outer, inner;     // the same when there is no separate outer mouth
  double throat_mm = 0;     // inner plane at y = throat
  double brow_mm = 0;       // brow edge at y = -brow
  double brow_edge_mm = 0;  // height of the brow's edge above the floor: the mouth's height
  Floor floor;
};

// The shape of a valid oven (impossible() empty).
Geometry geometry_of(const config::Oven& oven);

// Everything about this oven that cannot be built, in words: mouth wider than the body, arch
// springing above its top, mouth above the body's top, outer opening smaller than the inner,
// floor larger than the body... Paths are field paths.
std::vector<Problem> impossible(const config::Oven& oven);

}  // namespace hs::oven
