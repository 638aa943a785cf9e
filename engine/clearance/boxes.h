#pragma once
// Boxes of free room round everything hot, in the station frame: x to the cook's right, 0 at the
// middle of the mouth; y into the oven, 0 at the outer mouth plane; z up from the ground.

#include <cstdint>
#include <optional>
#include <string_view>
#include <vector>

#include "engine/base/block.h"
#include "engine/base/vec.h"
#include "engine/clearance/clearance.h"

namespace hs::clearance {

using Box = Block;

// The room that lies against one side of a box.
Box beside(const Box& body, Side side, double room_mm);

enum class Hot : std::uint8_t { Oven, Flue, Grill };
constexpr std::string_view hot_name(Hot hot) {
  constexpr std::string_view kNames[] = {"oven", "flue", "grill"};
  return kNames[static_cast<std::size_t>(hot)];
}

struct Zone {
  Hot hot = Hot::Oven;
  Need need;
  std::optional<Box> box;  // absent: nobody has said how much room
  Box body;                // what the room lies against
  bool drawn = false;      // the body's own place is drawn, not measured
};

// Every side of every hot body that is there, oven first; the oven's six are needs(). The flue and
// the grill have sides only; the flue stands on the middle of the oven, the grill where its gap
// says, both with drawn sizes.
std::vector<Zone> zones(const config::Config& config, double oven_base_mm);

// Everything within `room_mm` of a box, seen from above: closed, anticlockwise, corners rounded.
std::vector<PlanSpot> around(const Box& body, double room_mm);

// Where the oven's body stands: its front is the outer mouth plane.
Box oven_body(const config::Config& config, double oven_base_mm);

}  // namespace hs::clearance
