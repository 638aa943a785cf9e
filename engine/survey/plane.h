#pragma once
// The plane that ground comes closest to, and the point that does not belong to it.
//
// Only sums, products and square roots of the given numbers, in their order: the same on every
// machine. Lengths in mm; z up.

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

namespace hs::survey {

struct Spot3 {
  double x_mm = 0, y_mm = 0, z_mm = 0;
};

// z = level + across x + back y; across and back are shares (mm per mm).
struct Plane {
  double level_mm = 0;
  double across = 0, back = 0;

  double at(double x_mm, double y_mm) const { return level_mm + across * x_mm + back * y_mm; }
};

// What plane lies closest, by least squares of the upright distances? Normal equations about the
// points' middle. nullopt: fewer than three points, or all on one line. Exact but for rounding.
std::optional<Plane> fit_plane(std::span<const Spot3> spots);

// Upright distances of the points from it, positive above.
std::vector<double> residuals(const Plane& plane, std::span<const Spot3> spots);

struct Slope {
  double share = 0;  // steepest fall, mm per mm
  // Which way water runs: unit vector downhill; both 0 on the level.
  double x = 0, y = 0;
};
Slope slope_of(const Plane& plane);

// Which points do not belong to the plane of the rest? The plane through three of the points with
// the least median of squared distances; a point is doubtful that is farther from it than 2.5 of
// the scale 1.4826 (1 + 5 / (n - 3)) times the root of that median. Source: Rousseeuw 1984, least
// median of squares; scale and 2.5 as in Rousseeuw and Leroy 1987 (from memory). Never nearer than
// kLip_mm, our judgement: stones stand proud of each other by as much, and it would not spoil a
// cut. Where all or most lie on one line as seen from above, that line is judged first, by the
// straight line through two of its points (n - 2 in place of n - 3), then what is beside it, by the
// plane through that line and one of them (n - 1). Nobody is judged among fewer than kFewest
// points.
inline constexpr double kLip_mm = 10;
inline constexpr std::size_t kFewest = 6;
// A plane can be tilted to meet one point beside a line, and of two it cannot say which is wrong.
inline constexpr std::size_t kFewestBeside = 3;  // computed
inline constexpr double kOneLine_mm = 60;        // as kOnLine_mm of scribe.h: our judgement

struct Outliers {
  // For each point: 0, or how far it is above (positive) or below what the others say, mm.
  std::vector<double> off_mm;
  std::vector<bool> judged;  // false: nothing yet speaks for or against it
  bool one_line = false;     // all on one line as seen from above
};
Outliers outliers(std::span<const Spot3> spots);

// Do all points lie within kOneLine_mm of one line, as seen from above? Then no plane is told.
bool on_one_line(std::span<const Spot3> spots);

}  // namespace hs::survey
