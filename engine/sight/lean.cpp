#include "engine/sight/lean.h"

#include <algorithm>
#include <cmath>
#include <limits>

#include "engine/base/quantity.h"

namespace hs::sight {
namespace {

constexpr double kInfinity = std::numeric_limits<double>::infinity();

// Largest s in 0..1 for which every crossing point from s = 0 on is inside the outline, where the
// crossing is (eye.x s, z + (eye.z - z) s). Convexity makes it one interval; bisection because an
// arch met off its middle has no short closed form.
double inside_until(const oven::Outline& outline, const Eye& eye, double z_mm) {
  const auto inside = [&](double s) {
    const double half_mm = outline.half_width_at(z_mm + (eye.height_mm - z_mm) * s);
    return half_mm >= 0 && std::abs(eye.x_mm) * s <= half_mm;
  };
  if (!inside(0)) return -1;
  if (inside(1)) return 1;
  double low = 0, high = 1;
  for (int i = 0; i < 40; ++i) {
    const double middle = (low + high) / 2;
    (inside(middle) ? low : high) = middle;
  }
  return low;
}

// Depth whose ray has run the part s of its way back to the eye when it crosses y = plane.
double depth_for(double plane_mm, double distance_mm, double s) {
  return s >= 1 ? kInfinity : (plane_mm + distance_mm) / (1 - s) - distance_mm;
}

}  // namespace

Eye bent(const Eye& upright, const BodyLine& body, const Posture& posture) {
  const double trunk_rad = deg_to_rad(posture.trunk_deg);
  // Thigh and shank are taken as equal halves of the leg with the hips above the ankles.
  const double half_knee_rad = deg_to_rad(posture.knee_deg / 2);
  Eye eye = upright;
  eye.height_mm -= body.eye_lever_mm * (1 - std::cos(trunk_rad));
  eye.height_mm -= body.leg_mm * (1 - std::cos(half_knee_rad));
  eye.distance_mm -= body.eye_lever_mm * std::sin(trunk_rad);
  return eye;
}

double reach_at_height(const oven::Geometry& oven, const Eye& eye, double z_mm) {
  double reach_mm = kInfinity;
  const auto limit = [&](const oven::Outline& outline, double plane_mm) {
    const double s = inside_until(outline, eye, z_mm);
    reach_mm = std::min(reach_mm, s < 0 ? -kInfinity : depth_for(plane_mm, eye.distance_mm, s));
  };
  limit(oven.outer, 0);
  limit(oven.inner, oven.throat_mm);
  if (oven.brow_mm > 0 && eye.distance_mm > oven.brow_mm && eye.height_mm > oven.brow_edge_mm) {
    const double s = (oven.brow_edge_mm - z_mm) / (eye.height_mm - z_mm);
    reach_mm = std::min(reach_mm, depth_for(-oven.brow_mm, eye.distance_mm, s));
  }
  return reach_mm;
}

bool bending_hides(const oven::Geometry& oven, const Eye& upright, const BodyLine& body) {
  const Eye eye = bent(upright, body, {20, 0});
  if (eye.distance_mm <= 0 || upright.height_mm <= 0) return false;
  const double floor_far_mm = oven.floor.far_mm;
  const auto seen_to = [&](const Eye& e) {
    return e.height_mm <= 0 ? -kInfinity : std::min(reach_on_middle(oven, e), floor_far_mm);
  };
  return seen_to(eye) < seen_to(upright) - 0.1;
}

double neck_deg(double gaze_down_deg, double trunk_deg) {
  return std::clamp(0.0, gaze_down_deg - 40 - trunk_deg, gaze_down_deg - trunk_deg);
}

}  // namespace hs::sight
