#pragma once
// The gas cylinder that a bay is for: what room it wants, and where its valve is.

#include <cstdint>
#include <optional>
#include <string_view>

#include "engine/config/config.h"

namespace hs::frame {

// A size as it is sold, with the room that it wants.
struct Cylinder {
  double holds_kg = 0;   // of gas, full: sold as 20, 30, 40 and 100 lb
  double across_mm = 0;  // clear: its own, and 25 mm on every side
  double high_mm = 0;    // clear: its own, and 25 mm
  double valve_mm = 0;   // top of the valve above what it stands on
};

inline constexpr double kUsualGas_kg = 9.07;  // 20 lb

// The smallest size sold that holds this much. nullopt: more than any that we have a size for.
// Sizes from memory: 12 1/2 in across and 18 in high, 12 1/2 and 24, 14 3/4 and 30, 15 and 48.
std::optional<Cylinder> cylinder_for(double gas_kg);

// The one that is given, else the usual one.
std::optional<Cylinder> cylinder_of(const config::Config& config);

// One direction of a gas bay, in words that last: "clear width of bay 2 from the left". Bays are
// counted from 0; kEveryBay, and one past the twentieth: of the gas bay.
enum class Way : std::uint8_t { Width, Depth, Height };
inline constexpr int kEveryBay = -1;
std::string_view clear_words(Way way, int bay);

}  // namespace hs::frame
