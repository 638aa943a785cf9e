#pragma once
// Where the head of the station's lamp may be, in one upright plane before the mouth, and what
// keeps it from everywhere else.

#include <cstdint>
#include <vector>

#include "engine/evaluate/evaluate.h"

namespace hs::evaluate {

// The first that applies, as a finding says it.
enum class LampPlace : std::uint8_t {
  Good,
  NeckTooShort,  // good but for the neck
  HotZone,
  TooHot,
  Peel,
  Eye,
  Shadow,
  TooNear,
};

// Places on a grid: columns from the mouth towards the cook, rows up from the oven's floor.
struct LampMap {
  double across_mm = 0;  // of the plane, to the cook's right
  double step_mm = 0;    // column i is (i + 1) steps ahead, row j (j + 1) steps up
  int columns = 0, rows = 0;
  std::vector<LampPlace> places;  // row by row
  LampPlace at(int column, int row) const {
    return places[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) +
                  static_cast<std::size_t>(column)];
  }
};

// The room that evaluate() looks for places in, in steps of at least 5 mm. Also where there is no
// lamp: then as if its neck were fixed on the right. 1 ms native in steps of 25 mm for four cooks.
LampMap lamp_map(const config::Config& config, const Evaluation& evaluation, double across_mm,
                 double step_mm);

// A ray from the head to a place on the pizza's middle line.
struct LampRay {
  Vec to;
  bool lit = false;  // in the beam and not in the mouth's shadow
};
// From the pizza's near edge to its far one. Empty without a head.
std::vector<LampRay> lamp_rays(const config::Config& config, const Evaluation& evaluation);

}  // namespace hs::evaluate
