#pragma once
// Points and directions of the oven frame, mm: x to the cook's right, y into the oven, z up from
// the oven's floor. What stands in front of the mouth has y < 0.

#include <cmath>

namespace hs {

struct Vec {
  double x = 0, y = 0, z = 0;
  bool operator==(const Vec&) const = default;
};

constexpr Vec operator+(const Vec& a, const Vec& b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
constexpr Vec operator-(const Vec& a, const Vec& b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
constexpr Vec operator*(double s, const Vec& a) { return {s * a.x, s * a.y, s * a.z}; }
constexpr double dot(const Vec& a, const Vec& b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
constexpr Vec cross(const Vec& a, const Vec& b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
inline double length(const Vec& a) { return std::sqrt(dot(a, a)); }

// A place on the ground, seen from above: x and y as above.
struct PlanSpot {
  double x_mm = 0, y_mm = 0;
};

}  // namespace hs
