#pragma once
// How much room wires and devices ask for in a box: NEC 314.16(B), read at second hand.

#include <cstdint>
#include <span>
#include <string>
#include <vector>

#include "engine/base/result.h"

namespace hs::power {

// Editions differ in the equipment grounding conductors: to 2017 all of them together count as one
// of the largest; from 2020 the first four do, and each one more counts a quarter.
enum class Edition : std::uint8_t { To2017, From2020 };

struct Conductors {
  int awg = 14;
  int count = 0;
};
// A switch or receptacle on one yoke; the largest conductor connected to it, not the largest in the
// box, as some pages have it.
struct Device {
  int awg = 14;
};

struct BoxContents {
  std::vector<Conductors> conductors;  // current-carrying, each that ends or is spliced in the box
  std::vector<Conductors> grounds;     // equipment grounding conductors
  std::vector<Device> devices;
  bool inside_clamps = false;  // any: all together count once
  int support_fittings = 0;    // studs, hickeys: each counts once
};

// One line of the reckoning.
struct BoxLine {
  std::string what;  // "4 conductors of 12 AWG"
  double in3 = 0;
};
struct BoxFill {
  double in3 = 0;
  std::vector<BoxLine> lines;
};

// Room asked for, cubic inches (x 16.387 is cm3). Counts 0 to 200. Exact. A gauge that the table
// as we have it lacks is a problem in words: ask the licensed electrician.
Result<BoxFill> box_fill(const BoxContents& contents, Edition edition);

// What the two editions say, and by how much the later one asks for more, cubic inches.
struct BoxByEdition {
  BoxFill to2017, from2020;
  double difference_in3 = 0;
};
Result<BoxByEdition> box_fill_by_edition(const BoxContents& contents);

}  // namespace hs::power
