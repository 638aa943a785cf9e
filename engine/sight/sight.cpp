#include "engine/sight/sight.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <numbers>

#include "engine/base/quantity.h"
#include "engine/sight/gauss.h"
#include "engine/sight/scene.h"

namespace hs::sight {
namespace {

constexpr auto kRule = gauss_rule<48>();

double seen_area_mm2(Scene scene) {
  // A depth range that is a little too long only leaves a kink near its end.
  constexpr Search kSearch{.tolerance = 1e-3, .steps = 12, .take_seen = false};
  if (!narrow(scene, kSearch)) return 0;
  const double depth = scene.depth_mm();
  double sum = 0;
  for (std::size_t i = 0; i < kRule.size; ++i) {
    const double y = scene.near_mm + depth * kRule.node[i];
    sum += kRule.weight[i] * std::max(0.0, width_at(scene, y));
  }
  return sum * depth;
}

double share_of(double seen_mm2, double whole_mm2) {
  return whole_mm2 > 0 ? std::clamp(seen_mm2 / whole_mm2, 0.0, 1.0) : 0;
}

}  // namespace

Span seen_at(const oven::Geometry& oven, const Eye& eye, double y_mm) {
  if (!looks_in(eye)) return {};
  const Scene scene = scene_of(oven, eye);
  if (!(y_mm >= scene.near_mm) || y_mm > scene.far_mm) return {};
  const Span span = overlap_at(scene, y_mm);
  return span.left_mm < span.right_mm ? span : Span{};
}

double reach_on_middle(const oven::Geometry& oven, const Eye& eye) {
  if (!looks_in(eye)) return 0;
  return std::min(
      {landing_mm(0, oven.outer.scale_to_edge(eye.x_mm, eye.height_mm), eye),
       landing_mm(oven.throat_mm, oven.inner.scale_to_edge(eye.x_mm, eye.height_mm), eye),
       brow_landing_mm(oven, eye)});
}

std::optional<double> farthest_on_middle(const oven::Geometry& oven, const Eye& eye) {
  if (!looks_in(eye)) return std::nullopt;
  const double reach_mm = reach_on_middle(oven, eye);
  if (reach_mm < oven.floor.near_mm) return std::nullopt;
  return std::min(reach_mm, oven.floor.far_mm);
}

double seen_share_of_floor(const oven::Geometry& oven, const Eye& eye) {
  if (!looks_in(eye)) return 0;
  return share_of(seen_area_mm2(scene_of(oven, eye)), oven.floor.area_mm2());
}

double seen_share_of_disc(const oven::Geometry& oven, const Eye& eye, const Disc& disc) {
  if (!looks_in(eye) || !(disc.radius_mm > 0)) return 0;
  Scene scene = scene_of(oven, eye);
  scene.disc = {.half_width_mm = disc.radius_mm,
                .middle_mm = disc.y_mm,
                .per_half_depth = 1 / disc.radius_mm};
  scene.near_mm = std::max(scene.near_mm, disc.y_mm - disc.radius_mm);
  scene.far_mm = std::min(scene.far_mm, disc.y_mm + disc.radius_mm);
  const double whole_mm2 = std::numbers::pi * disc.radius_mm * disc.radius_mm;
  return share_of(seen_area_mm2(scene), whole_mm2);
}

bool sees_point(const oven::Geometry& oven, const Eye& eye, double y_mm, double z_mm) {
  if (!looks_in(eye)) return false;
  // Where the ray from the eye to (0, y, z) crosses the plane at this depth. A plane behind the
  // point does not stand in its way.
  const double from_eye = y_mm + eye.distance_mm;
  const auto passes = [&](const oven::Outline& outline, double plane_mm) {
    if (y_mm < plane_mm) return true;
    const double left_to_go = (y_mm - plane_mm) / from_eye;
    const double crossing_z = z_mm + left_to_go * (eye.height_mm - z_mm);
    return std::abs(eye.x_mm * left_to_go) <= outline.half_width_at(crossing_z);
  };
  if (behind_brow(oven, eye)) {
    const double left_to_go = (y_mm + oven.brow_mm) / from_eye;
    if (z_mm + left_to_go * (eye.height_mm - z_mm) > oven.brow_edge_mm) return false;
  }
  return passes(oven.outer, 0) && passes(oven.inner, oven.throat_mm);
}

double gaze_down_deg(const Eye& eye, double y_mm) {
  const double away_mm = y_mm + eye.distance_mm;
  const double level_mm = std::sqrt(eye.x_mm * eye.x_mm + away_mm * away_mm);
  return rad_to_deg(std::atan2(eye.height_mm, level_mm));
}

}  // namespace hs::sight
