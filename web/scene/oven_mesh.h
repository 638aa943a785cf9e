#pragma once
// The oven to true size: body, mouth, throat and floor are the oven's own sizes; the curve of the
// vault and of the shell around it is drawn, as in the section (engine/report/oven_cut.h).

#include "engine/config/config.h"
#include "engine/oven/oven.h"
#include "engine/sight/sight.h"
#include "web/scene/mesh.h"

namespace hs::web::scene {

struct OvenShape {
  Shape shell;   // outside, with the face around the mouth; open at the mouth
  Shape inside;  // throat, inner face, vault and back; looks inward
  Shape hearth;  // the floor of all that, looking up
  Shape solid;   // what is under the floor, legs, brow, flue
  double top_mm = 0;
};

// Shell, inside and hearth together are one closed surface.
OvenShape oven_shape(const config::Oven& oven, const oven::Geometry& geometry, double base_mm);

// The outline of an opening standing on the oven's floor, clockwise from its lower left as seen by
// the cook, with its corners.
Ring opening(const oven::Outline& outline, double y_mm, double floor_mm);

// The oven's floor, and a disc on it, counter-clockwise from above.
Ring floor_outline(const oven::Floor& floor, double z_mm);
Ring disc_outline(const sight::Disc& disc, double z_mm);

// What two convex outlines, both counter-clockwise from above, have in common.
Ring common(std::span<const Vec> a, std::span<const Vec> b);

}  // namespace hs::web::scene
