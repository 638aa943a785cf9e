#pragma once
// Least costs that are seen at once, without looking at fillings.

#include <cstdint>

#include "engine/cuts/lines.h"

namespace hs::cuts {

// Material alone: every size pays for its length at the best price a unit of room has.
std::int64_t material_bound(const Lines& lines);

// One kind of board with one room, else 0: the most that dual feasible functions prove. Sizes above
// half a board stand alone (Martello and Toth 1990, bound L2, from memory); rounding to k-ths of a
// board (Fekete and Schepers 2001, u(k), from memory). Both checked against full searches.
std::int64_t rounding_bound(const Lines& lines);

}  // namespace hs::cuts
