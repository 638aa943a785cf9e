#include "engine/survey/plane.h"

#include <algorithm>
#include <cmath>
#include <utility>

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

// Seen from above: the line with the most points on it; ties: the first.
struct Row {
  std::vector<bool> on;
  std::size_t count = 0;
  double x_mm = 0, y_mm = 0, ux = 0, uy = 0;

  double along_mm(const Spot3& s) const { return (s.x_mm - x_mm) * ux + (s.y_mm - y_mm) * uy; }
  double beside_mm(const Spot3& s) const { return (s.y_mm - y_mm) * ux - (s.x_mm - x_mm) * uy; }
  bool has(const Spot3& s) const { return std::abs(beside_mm(s)) <= kOneLine_mm; }
};

Row longest_row(std::span<const Spot3> spots) {
  const std::size_t n = spots.size();
  Row best;
  best.on.assign(n, true);
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = i + 1; j < n; ++j) {
      const double dx = spots[j].x_mm - spots[i].x_mm, dy = spots[j].y_mm - spots[i].y_mm;
      const double length = std::sqrt(dx * dx + dy * dy);
      if (length <= 0) continue;
      Row row{{}, 0, spots[i].x_mm, spots[i].y_mm, dx / length, dy / length};
      for (const Spot3& s : spots) {
        row.on.push_back(row.has(s));
        row.count += row.on.back() ? 1U : 0U;
      }
      if (row.count > best.count) best = std::move(row);
    }
  }
  if (best.count == 0) best.count = n;  // all at one place
  return best;
}

// The h-th smallest square, h counted from 1.
double least_of(std::vector<double>& squares, std::size_t h) {
  const auto at = squares.begin() + static_cast<std::ptrdiff_t>(h - 1);
  std::nth_element(squares.begin(), at, squares.end());
  return *at;
}

// Of the points that are on the row, or of those beside it; `bends`: how many numbers were fitted
// to them.
void keep_far(std::vector<double>& off_mm, const std::vector<bool>& on, bool of, double median,
              double bends) {
  const auto rest = static_cast<double>(std::count(on.begin(), on.end(), of)) - bends;
  const double limit = std::max(2.5 * 1.4826 * (1 + 5 / rest) * std::sqrt(median), kLip_mm);
  for (std::size_t m = 0; m < off_mm.size(); ++m) {
    if (on[m] == of && std::abs(off_mm[m]) <= limit) off_mm[m] = 0;
  }
}

double median_of(const std::vector<double>& off_mm, const std::vector<bool>& on, bool of,
                 std::size_t bends) {
  std::vector<double> squares;
  for (std::size_t m = 0; m < off_mm.size(); ++m) {
    if (on[m] == of) squares.push_back(off_mm[m] * off_mm[m]);
  }
  return least_of(squares, squares.size() / 2 + (bends + 1) / 2);
}

// By the line through two points of the row, and for those beside it, if there are enough, by the
// plane through that line and one of them.
std::vector<double> off_row(std::span<const Spot3> spots, const Row& row) {
  const std::size_t n = spots.size();
  std::vector<double> off(n), best;
  double least = 0;
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = i + 1; j < n; ++j) {
      const double from = row.along_mm(spots[i]), length = row.along_mm(spots[j]) - from;
      if (!row.on[i] || !row.on[j] || std::abs(length) <= kOneLine_mm) continue;
      const double rise = (spots[j].z_mm - spots[i].z_mm) / length;
      for (std::size_t m = 0; m < n; ++m) {
        off[m] = spots[m].z_mm - spots[i].z_mm - rise * (row.along_mm(spots[m]) - from);
      }
      const double median = median_of(off, row.on, true, 2);
      if (!best.empty() && !(median < least)) continue;
      best = off;
      least = median;
    }
  }
  if (best.empty()) return best;
  keep_far(best, row.on, true, least, 2);
  const std::vector<double> above = best;
  const bool enough = n - row.count >= kFewestBeside;
  bool any = false;
  for (std::size_t i = 0; i < n; ++i) {
    if (row.on[i]) continue;
    if (!enough) best[i] = 0;
    if (!enough) continue;
    const double tilt = above[i] / row.beside_mm(spots[i]);
    for (std::size_t m = 0; m < n; ++m) {
      off[m] = row.on[m] ? above[m] : above[m] - tilt * row.beside_mm(spots[m]);
    }
    const double median = median_of(off, row.on, false, 1);
    if (any && !(median < least)) continue;
    any = true;
    best = off;
    least = median;
  }
  if (any) keep_far(best, row.on, false, least, 1);
  return best;
}

std::vector<double> off_plane(std::span<const Spot3> spots) {
  const std::size_t n = spots.size();
  std::vector<double> squares(n), off(n), best;
  double least = 0;
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = i + 1; j < n; ++j) {
      for (std::size_t k = j + 1; k < n; ++k) {
        const auto plane = through(spots[i], spots[j], spots[k]);
        if (!plane) continue;
        for (std::size_t m = 0; m < n; ++m) {
          off[m] = spots[m].z_mm - plane->at(spots[m].x_mm, spots[m].y_mm);
          squares[m] = off[m] * off[m];
        }
        const double median = least_of(squares, n / 2 + 2);
        if (!best.empty() && !(median < least)) continue;
        best = off;
        least = median;
      }
    }
  }
  if (!best.empty()) keep_far(best, std::vector<bool>(n, true), true, least, 3);
  return best;
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

Outliers outliers(std::span<const Spot3> spots) {
  const std::size_t n = spots.size();
  const Row row = longest_row(spots);
  Outliers out{std::vector<double>(n, 0.0), std::vector<bool>(n, false), row.count == n};
  if (n < kFewest) return out;
  // A row and one point beside it meet a plane of any tilt: where they alone make up the median, it
  // says nothing of the others.
  const bool by_row = row.count + 1 >= n / 2 + 2;
  std::vector<double> off = by_row ? off_row(spots, row) : off_plane(spots);
  if (off.empty()) return out;
  const bool enough = !by_row || n - row.count >= kFewestBeside;
  for (std::size_t m = 0; m < n; ++m) out.judged[m] = enough || row.on[m];
  out.off_mm = std::move(off);
  return out;
}

bool on_one_line(std::span<const Spot3> spots) { return longest_row(spots).count == spots.size(); }

}  // namespace hs::survey
