#pragma once
// One eye at one oven, made ready for many depths: what sight.cpp and outline.cpp share. Nobody
// else needs it.
//
// How the seen part of the floor is measured.
//
// A ray to the floor point (x, y) crosses a plane at depth p when it has gone the share
// t = (p + d) / (y + d) of its way, at height eye * (1 - t) and at eye_x * (1 - t) + t * x. At a
// depth y the crossing's height is fixed, so each outline lets through one interval of x, and
// what is seen there is the overlap of a few intervals: exact across. Each outline, thrown on the
// floor from the eye, is convex, as is the floor, so the seen region is convex and its width is a
// concave function of depth. Two things follow. The depths between which anything is seen are
// found by a search that cannot miss. And a Gauss rule of n nodes between exactly those depths is
// off by at most about (largest width * depth range) / n^2 wherever the kinks lie: the nearer
// one is to an end the steeper it can be, and the closer the nodes stand there.

#include <algorithm>
#include <cmath>
#include <limits>

#include "engine/oven/oven.h"
#include "engine/sight/sight.h"

namespace hs::sight {

constexpr double kInf = std::numeric_limits<double>::infinity();

// One outline as it bounds x at each depth.
struct Window {
  double per_plane = 0;  // 1 / (plane + distance)
  double half_width_mm = 0;
  bool curved = false;
  // Rise into the curve (0 at the springing, 1 at the top): rise_far - rise_near / (y + distance).
  double rise_far = 0, rise_near = 0;
};

// Half a width that depends on depth: a rectangle's side or an ellipse.
struct Band {
  double half_width_mm = kInf;
  double middle_mm = 0;
  double per_half_depth = 0;  // 0: a rectangle

  double half_width_at(double y_mm) const {
    if (per_half_depth == 0) return half_width_mm;
    const double along = (y_mm - middle_mm) * per_half_depth;
    return half_width_mm * std::sqrt(std::max(0.0, 1 - along * along));
  }
};

struct Scene {
  double eye_x_mm = 0, distance_mm = 0;
  Window outer, inner;
  Band floor, disc;
  double near_mm = 0, far_mm = -1;  // depths outside which nothing is seen; near > far: nothing

  double depth_mm() const { return far_mm - near_mm; }
};

inline bool looks_in(const Eye& eye) { return eye.height_mm > 0 && eye.distance_mm > 0; }

// Depth at which the eye's ray under an edge lands: the edge lies `plane` deep, and the ray has
// fallen by the share `fall` of the eye's height where it passes it.
inline double landing_mm(double plane_mm, double fall, const Eye& eye) {
  if (fall >= 1) return kInf;
  return (plane_mm + eye.distance_mm) / (1 - fall) - eye.distance_mm;
}

// The brow's plane lies in front of the outer one; an eye closer than it looks in under it.
inline bool behind_brow(const oven::Geometry& oven, const Eye& eye) {
  return oven.brow_mm > 0 && eye.distance_mm > oven.brow_mm;
}

double brow_landing_mm(const oven::Geometry& oven, const Eye& eye);

Scene scene_of(const oven::Geometry& oven, const Eye& eye);

inline double window_half_width(const Window& window, double from_eye_mm) {
  if (!window.curved) return window.half_width_mm;
  const double rise = std::max(0.0, window.rise_far - window.rise_near / from_eye_mm);
  return window.half_width_mm * std::sqrt(std::max(0.0, 1 - rise * rise));
}

// The overlap of the intervals at one depth between near and far; right - left is concave in y,
// and negative where nothing is seen.
inline Span overlap_at(const Scene& scene, double y_mm) {
  const double from_eye = y_mm + scene.distance_mm;
  const double outer = window_half_width(scene.outer, from_eye);
  const double inner = window_half_width(scene.inner, from_eye);
  const double outer_scale = from_eye * scene.outer.per_plane;
  const double inner_scale = from_eye * scene.inner.per_plane;
  const double x = scene.eye_x_mm;
  const double side = std::min(scene.floor.half_width_at(y_mm), scene.disc.half_width_at(y_mm));
  return {std::max({x - outer_scale * (x + outer), x - inner_scale * (x + inner), -side}),
          std::min({x + outer_scale * (outer - x), x + inner_scale * (inner - x), side})};
}

inline double width_at(const Scene& scene, double y_mm) {
  const Span span = overlap_at(scene, y_mm);
  return span.right_mm - span.left_mm;
}

// How closely the first and last depth with something seen are searched for, and which side of
// them is taken.
struct Search {
  double tolerance;  // of the depth range
  int steps;
  bool take_seen;  // the last depth that shows something; otherwise the first that shows nothing
};

// Narrows near and far to the depths between which something is seen. False: nothing is.
bool narrow(Scene& scene, const Search& search);

}  // namespace hs::sight
