#include "engine/weather/wind.h"

#include <cstdlib>

namespace hs::weather {
namespace {

// Eighths of a turn between two directions, 0..4.
int apart(config::WindFrom a, config::WindFrom b) {
  const int steps = std::abs(static_cast<int>(a) - static_cast<int>(b));
  return steps > 4 ? 8 - steps : steps;
}

}  // namespace

AtMouth at_mouth(config::WindFrom from) {
  if (apart(from, config::WindFrom::Front) <= 1) return AtMouth::Into;
  if (apart(from, config::WindFrom::Back) <= 1) return AtMouth::Behind;
  return AtMouth::Across;
}

bool smoke_to_cook(config::WindFrom from) { return at_mouth(from) == AtMouth::Behind; }

bool smoke_to_side(config::WindFrom from, bool right_side) {
  // Smoke goes where the wind goes: to the right when it comes from the left.
  return apart(from, right_side ? config::WindFrom::Left : config::WindFrom::Right) <= 1;
}

}  // namespace hs::weather
