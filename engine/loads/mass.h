#pragma once
// What the pieces of the frame weigh, and where their weight acts.

#include <span>

#include "engine/base/block.h"
#include "engine/frame/piece.h"

namespace hs::loads {

// Weight taken as at one place. Station frame.
struct Lump {
  double mass_kg = 0;
  double x_mm = 0, y_mm = 0, z_mm = 0;
};

// kg/m3. Plywood 577: 3.0 lb a square foot for each inch (APA's rule of thumb, second hand).
// Cellular PVC 550: makers' sheets, from memory; a denser board of 650 was seen. Boards 545: coast
// Douglas-fir, 34 lb/ft3 (Wood Handbook, second hand); treated lumber is heavier while it is wet.
// Stainless 8000: data sheets give 7900 to 8030. Stone or concrete slab 2400: common practice.
double density_kg_m3(frame::Material material);

// One block of this density, at its middle.
Lump lump_of(const Block& block, double density_kg_m3);

// A piece with its folds, full: what is cut out of it is left in (2 % of a door at most).
Lump lump_of(const frame::Piece& piece);

// All of them as one. No mass: everything is 0.
Lump sum_of(std::span<const Lump> lumps);

}  // namespace hs::loads
