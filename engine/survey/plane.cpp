#include "engine/survey/plane.h"

#include <algorithm>
#include <cmath>

namespace hs::survey {
namespace {

// Through three points; nullopt where they lie on one line, or nearly.
std::optional<Plane> through(const Spot3& a, const Spot3& b, const Spot3& c) {
  const double ux = b.x_mm - a.x_mm, uy = b.y_mm - a.y_mm, uz = b.z_mm - a.z_mm;
  const double vx = c.x_mm - a.x_mm, vy = c.y_mm - a.y_mm, vz = c.z_mm - a.z_mm;
  const double det = ux * vy - uy * vx;
  const double size = std::sqrt((ux * ux + uy * uy) * (vx * vx + vy * vy));
  // Below 3 degrees between the sides the plane says nothing about the rest.
  if (std::abs(det) <= 0.05 * size || size <= 0) return {};
  Plane plane;
  plane.across = (uz * vy - vz * uy) / det;
  plane.back = (vz * ux - uz * vx) / det;
  plane.level_mm = a.z_mm - plane.across * a.x_mm - plane.back * a.y_mm;
  return plane;
}

}  // namespace

std::optional<Plane> fit_plane(std::span<const Spot3> spots) {
  const auto n = static_cast<double>(spots.size());
  if (spots.size() < 3) return {};
  double x = 0, y = 0, z = 0;
  for (const Spot3& s : spots) {
    x += s.x_mm;
    y += s.y_mm;
    z += s.z_mm;
  }
  x /= n;
  y /= n;
  z /= n;
  double xx = 0, xy = 0, yy = 0, xz = 0, yz = 0;
  for (const Spot3& s : spots) {
    const double dx = s.x_mm - x, dy = s.y_mm - y, dz = s.z_mm - z;
    xx += dx * dx;
    xy += dx * dy;
    yy += dy * dy;
    xz += dx * dz;
    yz += dy * dz;
  }
  const double det = xx * yy - xy * xy;
  // On one line the determinant is rounding only.
  if (!(det > 1e-9 * (xx + yy) * (xx + yy))) return {};
  Plane plane;
  plane.across = (xz * yy - yz * xy) / det;
  plane.back = (yz * xx - xz * xy) / det;
  plane.level_mm = z - plane.across * x - plane.back * y;
  return plane;
}

std::vector<double> residuals(const Plane& plane, std::span<const Spot3> spots) {
  std::vector<double> out;
  out.reserve(spots.size());
  for (const Spot3& s : spots) out.push_back(s.z_mm - plane.at(s.x_mm, s.y_mm));
  return out;
}

Slope slope_of(const Plane& plane) {
  Slope slope;
  slope.share = std::sqrt(plane.across * plane.across + plane.back * plane.back);
  if (slope.share > 0) {
    slope.x = -plane.across / slope.share;
    slope.y = -plane.back / slope.share;
  }
  return slope;
}

std::vector<double> outliers(std::span<const Spot3> spots) {
  const std::size_t n = spots.size();
  std::vector<double> off(n, 0.0);
  if (n < kFewest) return off;
  const std::size_t middle = n / 2 + 2;  // of the squared distances, counted from 1
  std::vector<double> squares(n);
  std::optional<Plane> best;
  double least = 0;
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = i + 1; j < n; ++j) {
      for (std::size_t k = j + 1; k < n; ++k) {
        const auto plane = through(spots[i], spots[j], spots[k]);
        if (!plane) continue;
        for (std::size_t m = 0; m < n; ++m) {
          const double d = spots[m].z_mm - plane->at(spots[m].x_mm, spots[m].y_mm);
          squares[m] = d * d;
        }
        const auto at = squares.begin() + static_cast<std::ptrdiff_t>(middle - 1);
        std::nth_element(squares.begin(), at, squares.end());
        if (best && !(*at < least)) continue;
        best = plane;
        least = *at;
      }
    }
  }
  if (!best) return off;
  const double scale = 1.4826 * (1 + 5 / (static_cast<double>(n) - 3)) * std::sqrt(least);
  const double limit = std::max(2.5 * scale, kLip_mm);
  for (std::size_t m = 0; m < n; ++m) {
    const double d = spots[m].z_mm - best->at(spots[m].x_mm, spots[m].y_mm);
    if (std::abs(d) > limit) off[m] = d;
  }
  return off;
}

}  // namespace hs::survey
