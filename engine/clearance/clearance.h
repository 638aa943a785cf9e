#pragma once
// Free room around the oven: what is asked for, by whom, and what the station gives.
//
// Only figures that somebody published for this oven or this place count: the oven's own manual,
// then a local rule. Where neither speaks the answer is "unknown", never a guess, never heat.

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

#include "engine/config/config.h"

namespace hs::clearance {

// Children and pets stay this far from the hot oven: 3 ft, NFPA and US Fire Administration, outdoor
// cooking safety tips, second hand (rules::cautions, "caution.child_free_zone").
inline constexpr double kChildFree_mm = 914;

enum class Side : std::uint8_t { Left, Right, Back, Above, Front, Below };
enum class From : std::uint8_t { Unknown, Listed, Local };

constexpr std::string_view side_name(Side s) {
  constexpr std::string_view kNames[] = {"left", "right", "back", "above", "front", "below"};
  return kNames[static_cast<std::size_t>(s)];
}
constexpr std::string_view from_name(From f) {
  constexpr std::string_view kNames[] = {"unknown", "listed", "local"};
  return kNames[static_cast<std::size_t>(f)];
}

struct Need {
  Side side = Side::Left;
  std::optional<double> required_mm;  // absent: nobody has said
  From from = From::Unknown;
  std::optional<double> available_mm;  // absent: not measured; open sky is not "available"
};

// The six sides of the oven's body at this base height. Where both the manual and a local rule give
// a figure the larger holds, and `from` says whose it is.
std::array<Need, 6> needs(const config::Config& config, double oven_base_mm);

// Highest base, mm above the ground, at which the oven keeps the room above it that is asked for
// under its cover; below 0 where it fits nowhere. nullopt: no cover, or nobody has said how much.
std::optional<double> highest_base_under_cover_mm(const config::Config& config);

// May it stand on what it stands on? absent: unknown. Either the manual or a local rule may forbid
// it; where neither does, the one that allows it is named, the manual first.
struct Standing {
  std::optional<bool> allowed_on_combustible;
  From from = From::Unknown;
  std::optional<bool> top_combustible;
};
Standing standing(const config::Config& config);

}  // namespace hs::clearance
