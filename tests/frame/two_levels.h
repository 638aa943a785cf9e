#pragma once
// A plain station at two levels, its heights given.

#include "engine/config/config.h"

namespace hs::test {

inline config::Config two_levels() {
  config::Config c;
  c.station.arrangement = config::Arrangement::TwoLevel;
  c.station.counter_height_mm = 920;
  c.station.oven_base_height_mm = 1010.3;
  c.station.prep_width_mm = 1500;
  return c;
}

}  // namespace hs::test
