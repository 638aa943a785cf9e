#pragma once
// Which way the wind blows against the mouth and carries smoke. Directions only: eddies round a
// wall, a roof or the cook turn any of it round, and no speed or amount of smoke is worked out.

#include <cstdint>

#include "engine/config/config.h"

namespace hs::weather {

enum class AtMouth : std::uint8_t {
  Into,    // from in front, within 45 degrees: into the mouth, past the cook
  Across,  // from a side
  Behind,  // over the oven towards the cook
};
AtMouth at_mouth(config::WindFrom from);

// Does smoke that leaves the mouth or the flue drift towards somebody at the mouth, or at a counter
// on that side? Within 45 degrees of straight at them.
bool smoke_to_cook(config::WindFrom from);
bool smoke_to_side(config::WindFrom from, bool right_side);

}  // namespace hs::weather
