#include "engine/sight/scene.h"

namespace hs::sight {

double brow_landing_mm(const oven::Geometry& oven, const Eye& eye) {
  if (!behind_brow(oven, eye)) return kInf;
  return landing_mm(-oven.brow_mm, oven.brow_edge_mm / eye.height_mm, eye);
}

namespace {

Window window_of(const oven::Outline& outline, double plane_mm, const Eye& eye) {
  const double to_plane = plane_mm + eye.distance_mm;
  Window window;
  window.per_plane = 1 / to_plane;
  window.half_width_mm = outline.half_width_mm;
  const double rise = outline.height_mm - outline.spring_mm;
  window.curved = rise > 0 && eye.height_mm > outline.spring_mm;
  if (window.curved) {
    window.rise_far = (eye.height_mm - outline.spring_mm) / rise;
    window.rise_near = eye.height_mm * to_plane / rise;
  }
  return window;
}

}  // namespace

Scene scene_of(const oven::Geometry& oven, const Eye& eye) {
  Scene scene;
  scene.eye_x_mm = eye.x_mm;
  scene.distance_mm = eye.distance_mm;
  scene.outer = window_of(oven.outer, 0, eye);
  scene.inner = window_of(oven.inner, oven.throat_mm, eye);
  scene.floor.half_width_mm = oven.floor.half_width_mm;
  if (oven.floor.round) {
    scene.floor.middle_mm = (oven.floor.near_mm + oven.floor.far_mm) / 2;
    scene.floor.per_half_depth = 2 / (oven.floor.far_mm - oven.floor.near_mm);
  }
  scene.near_mm = oven.floor.near_mm;
  scene.far_mm =
      std::min({oven.floor.far_mm, landing_mm(0, oven.outer.height_mm / eye.height_mm, eye),
                landing_mm(oven.throat_mm, oven.inner.height_mm / eye.height_mm, eye),
                brow_landing_mm(oven, eye)});
  return scene;
}

namespace {

// A depth at which something is seen, though nothing is at either end: the top of a concave
// function by golden section, stopping at the first depth that will do. False when there is none.
bool find_seen_depth(const Scene& scene, double& y_mm) {
  constexpr double kGolden = 0.6180339887498949;
  constexpr int kSteps = 30;  // narrows the range to 5e-7 of itself
  double low = scene.near_mm, high = scene.far_mm;
  double left = high - kGolden * (high - low), right = low + kGolden * (high - low);
  double at_left = width_at(scene, left), at_right = width_at(scene, right);
  for (int i = 0; i < kSteps; ++i) {
    if (at_left > 0 || at_right > 0) {
      y_mm = at_left > at_right ? left : right;
      return true;
    }
    if (at_left > at_right) {
      high = right;
      right = left;
      at_right = at_left;
      left = high - kGolden * (high - low);
      at_left = width_at(scene, left);
    } else {
      low = left;
      left = right;
      at_left = at_right;
      right = low + kGolden * (high - low);
      at_right = width_at(scene, right);
    }
  }
  return false;
}

// Where the width falls to nought between a depth with something seen and one with nothing.
// Regula falsi, halving the weight of an end that stays (the Illinois rule).
double edge_between(const Scene& scene, double seen_mm, double empty_mm, double at_seen,
                    double at_empty, double tolerance_mm, const Search& search) {
  int stayed = 0;  // +1: the empty end moved last, -1: the other
  for (int i = 0; i < search.steps && std::abs(empty_mm - seen_mm) > tolerance_mm; ++i) {
    const double y = (seen_mm * at_empty - empty_mm * at_seen) / (at_empty - at_seen);
    const double width = width_at(scene, y);
    if (width == 0) return y;
    if (width > 0) {
      seen_mm = y;
      at_seen = width;
      if (stayed == -1) at_empty /= 2;
      stayed = -1;
    } else {
      empty_mm = y;
      at_empty = width;
      if (stayed == 1) at_seen /= 2;
      stayed = 1;
    }
  }
  return search.take_seen ? seen_mm : empty_mm;
}

}  // namespace

bool narrow(Scene& scene, const Search& search) {
  if (!(scene.near_mm < scene.far_mm)) return false;
  const double at_near = width_at(scene, scene.near_mm);
  const double at_far = width_at(scene, scene.far_mm);
  double seen = scene.near_mm, at_seen = at_near;
  if (!(at_near > 0)) {
    seen = scene.far_mm;
    at_seen = at_far;
    if (!(at_far > 0)) {
      if (!find_seen_depth(scene, seen)) return false;
      at_seen = width_at(scene, seen);
    }
  }
  // A width of exactly nought is a tip of the region itself: a round floor's edge, an arch's top.
  const double tolerance_mm = search.tolerance * scene.depth_mm();
  if (at_near < 0) {
    scene.near_mm =
        edge_between(scene, seen, scene.near_mm, at_seen, at_near, tolerance_mm, search);
  }
  if (at_far < 0) {
    scene.far_mm = edge_between(scene, seen, scene.far_mm, at_seen, at_far, tolerance_mm, search);
  }
  return true;
}

}  // namespace hs::sight
