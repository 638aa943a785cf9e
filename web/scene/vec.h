#pragma once
// Points and directions of the scene, mm in the station's frame: x to the cook's right along the
// front with 0 at the mouth's middle, y from the cook into the oven with 0 at the outer mouth
// plane, z up from the finished ground.

#include <cmath>

#include "engine/base/vec.h"

namespace hs::web::scene {

using hs::Vec;

constexpr Vec operator*(const Vec& a, double s) { return s * a; }
// Of the zero vector: up.
inline Vec unit(const Vec& a) {
  const double l = length(a);
  return l > 0 ? a * (1 / l) : Vec{0, 0, 1};
}
constexpr Vec mixed(const Vec& a, const Vec& b, double t) { return a + (b - a) * t; }

}  // namespace hs::web::scene
