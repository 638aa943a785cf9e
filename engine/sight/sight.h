#pragma once
// What an eye in front of the oven sees of its floor.
//
// A point of the floor is seen when the straight ray from the eye to it passes through the outer
// and the inner outline of the mouth and under the brow. The eye is in the oven frame: x to the
// cook's right of the mouth's middle, y = -distance in front of the outer plane, z above the floor.
// The tunnel between the two outlines is taken as straight and convex, so its two ends decide.

#include <optional>
#include <vector>

#include "engine/oven/oven.h"

namespace hs::sight {

// From this share of a disc on it counts as all of it (the report's own definition): the last
// thousandth is a sliver at the rim.
inline constexpr double kAllSeen = 0.999;

// A point that is seen at less than this to the floor is seen only edge-on: our judgement.
inline constexpr double kEdgeOn_deg = 8;

struct Eye {
  double x_mm = 0;
  double distance_mm = 0;  // in front of the outer mouth plane, > 0
  double height_mm = 0;    // above the oven's floor; <= 0 sees no floor
};

struct Disc {  // a pizza on the floor
  double y_mm = 0;
  double radius_mm = 0;
};

struct Point {
  double x_mm = 0, y_mm = 0;
};

// Interval of x seen at depth y (oven frame), clipped to the floor; empty when left >= right.
struct Span {
  double left_mm = 0, right_mm = 0;
};
Span seen_at(const oven::Geometry& oven, const Eye& eye, double y_mm);

// Farthest point seen on the floor's middle line, from the outer plane; nullopt when none of it is
// seen. Closed form. Not beyond the floor's far edge.
std::optional<double> farthest_on_middle(const oven::Geometry& oven, const Eye& eye);

// Same without the clip to the floor's far edge (may be infinite): what a search compares. Never
// grows as the eye rises. 0 for an eye that is not above the floor.
double reach_on_middle(const oven::Geometry& oven, const Eye& eye);

// Share (0..1) of the floor's area, and of a disc on it, that is seen. Within 0.0005. What hangs
// over the floor's edge counts as part of the disc and as unseen.
double seen_share_of_floor(const oven::Geometry& oven, const Eye& eye);
double seen_share_of_disc(const oven::Geometry& oven, const Eye& eye, const Disc& disc);

// Whether a point at height z over the floor's middle line at depth y is seen (a risen far rim).
bool sees_point(const oven::Geometry& oven, const Eye& eye, double y_mm, double z_mm);

// Outline of the seen region as a closed polygon, counter-clockwise, for drawing; empty when
// nothing is seen. At most 2 * steps points, steps >= 4; with 32 of them the polygon's area is
// within 0.25 % of the floor's.
std::vector<Point> seen_outline(const oven::Geometry& oven, const Eye& eye, int steps = 32);

// Angle of the ray from eye to (0, y, 0): degrees below the horizontal, positive down.
double gaze_down_deg(const Eye& eye, double y_mm);

}  // namespace hs::sight
