#pragma once
// The parts of loads_of(), for loads' own files.

#include <span>
#include <vector>

#include "engine/loads/loads.h"

namespace hs::loads {

std::vector<Growth> growth_over_year(const config::Config& config,
                                     std::span<const frame::Piece> pieces);

// Heaviest of each kind, heaviest first.
std::vector<Lift> lifts_of(const config::Config& config, const Asked& asked);

// One run against all that may tip it.
RunLoads run_loads(const config::Config& config, const Asked& asked, const Stands& run);

// As it stands on its feet; absent without an oven.
std::optional<OvenLoads> oven_loads(const config::Config& config, const Asked& asked);

// Where the oven's feet are: as given, or 50 mm inside its body on every side (our judgement).
struct Feet {
  double across_mm = 0, deep_mm = 0;
  bool known = false;
};
Feet feet_of(const config::Config& config);

}  // namespace hs::loads
