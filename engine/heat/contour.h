#pragma once
// How much of what a small flat surface faces is taken up by a polygon, seen from it.

#include <span>

#include "engine/base/vec.h"

namespace hs::heat {

// A small flat surface: a piece of a face, a hand, a lamp head.
struct Receiver {
  Vec at;
  Vec normal;  // of length 1, out of the surface
};

// View factor (0..1) from the receiver to a flat simple polygon, any position and tilt. What lies
// behind the receiver's own plane is cut off. Either turning; a polygon seen from its back counts
// as from its front. Fewer than three corners: 0. Exact but for rounding, 1e-12 for a receiver that
// is not on the polygon; one that lies in its plane gets 0.
//
// F = 1/(2 pi) sum over edges of angle x (normal . unit(r1 x r2)): the contour integral of a
// diffuse polygon (Lambert 1760; Sparrow 1963; from memory; checked against published view factors
// and brute force in tests/heat).
double view_factor(const Receiver& receiver, std::span<const Vec> polygon);

}  // namespace hs::heat
