#include "engine/heat/contour.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace hs::heat {
namespace {

// Angle that the edge from a to b subtends, times how much its plane leans to the normal. An edge
// seen end on subtends nothing.
double edge_term(const Vec& normal, const Vec& a, const Vec& b) {
  const Vec across = cross(a, b);
  const double size = length(across);
  return size > 0 ? std::atan2(size, dot(a, b)) * dot(normal, across) / size : 0;
}

}  // namespace

double view_factor(const Receiver& receiver, std::span<const Vec> polygon) {
  if (polygon.size() < 3) return 0;
  // The polygon is cut at the receiver's plane while its edges are walked: where it dives behind
  // the plane and comes up again the two points are joined along the plane.
  double sum = 0;
  Vec left_at, first_in;
  bool has_left = false, has_first = false;
  Vec before = polygon.back() - receiver.at;
  double before_up = dot(receiver.normal, before);
  for (const Vec& corner : polygon) {
    const Vec here = corner - receiver.at;
    const double here_up = dot(receiver.normal, here);
    const bool was_in = before_up > 0, is_in = here_up > 0;
    if (was_in && is_in) {
      sum += edge_term(receiver.normal, before, here);
    } else if (was_in != is_in) {
      const double part = before_up / (before_up - here_up);
      const Vec cut = before + part * (here - before);
      if (was_in) {
        sum += edge_term(receiver.normal, before, cut);
        left_at = cut;
        has_left = true;
      } else {
        sum += edge_term(receiver.normal, cut, here);
        if (has_left) {
          sum += edge_term(receiver.normal, left_at, cut);
          has_left = false;
        } else {
          first_in = cut;
          has_first = true;
        }
      }
    }
    before = here;
    before_up = here_up;
  }
  if (has_left && has_first) sum += edge_term(receiver.normal, left_at, first_in);
  return std::min(1.0, std::abs(sum) / (2 * std::numbers::pi));
}

}  // namespace hs::heat
