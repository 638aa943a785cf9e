#pragma once
// A cook in three dimensions: a plain jointed figure made from the body's own heights and lengths.
//
// Eye, shoulder, elbow, hip, stature, arm and foot are the body's (engine/cook); widths are drawn,
// not measured. Bent, the eye is where engine/sight puts it.

#include <optional>

#include "engine/cook/body.h"
#include "engine/sight/lean.h"
#include "web/scene/mesh.h"

namespace hs::web::scene {

struct Stance {
  Vec under_eye;          // the ground under the upright eye
  double turned_deg = 0;  // 0 faces the oven (+y), positive to the cook's left
  sight::Posture posture{};
  std::optional<Vec> hands{};  // where they rest; absent: they hang
};

// The joints in the station's frame.
struct Joints {
  Vec eye, head, neck, pivot;                    // pivot: what the trunk turns on
  Vec shoulder[2], elbow[2], wrist[2], hand[2];  // left, right
  Vec hip[2], knee[2], ankle[2], toe[2];
};
Joints joints_of(const cook::Body& body, const Stance& stance);

// Closed shapes for head, trunk and limbs, which overlap where they join. The eye is a dot on the
// head. `seat` under a seated cook.
void add_figure(Mesh& mesh, const cook::Body& body, const Stance& stance, Material material);

}  // namespace hs::web::scene
