#pragma once
// What lies on the boxes: sheets, a bed, metal whose edges hang past the sheets.

#include "engine/config/config.h"

namespace hs::frame {

// Thickness of the sheets together, as drawn.
constexpr double sheets_mm(const config::Materials& build) {
  return (build.layers == config::Layers::Two ? 2 : 1) * build.sheet_mm;
}

// From the boxes to the metal's top.
constexpr double stack_mm(const config::Materials& build, double sheets_mm) {
  return sheets_mm + build.bedding_mm + build.metal_mm;
}

// From the metal's top to the lowest of its turned-down edge, under which knees go.
constexpr double edge_mm(const config::Materials& build) {
  return stack_mm(build, sheets_mm(build)) + build.drip_mm;
}

}  // namespace hs::frame
