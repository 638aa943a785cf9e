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
// cut. All 0 for fewer than kFewest points, or where the others lie on one line.
inline constexpr double kLip_mm = 10;
inline constexpr std::size_t kFewest = 6;
// For each point: 0, or how far it is above (positive) or below the plane of the others, mm.
std::vector<double> outliers(std::span<const Spot3> spots);

}  // namespace hs::survey
