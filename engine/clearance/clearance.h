#pragma once
// Free room around the oven: what is asked for, by whom, and what the station gives.
//
// The oven's own manual, then a local rule; for an oven that is said to have no listing, then the
// published fallback (engine/clearance/published.h). Where none speaks the answer is "unknown":
// never a guess, never from the heat model.

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
enum class From : std::uint8_t { Unknown, Listed, Local, Published };

constexpr std::string_view side_name(Side s) {
  constexpr std::string_view kNames[] = {"left", "right", "back", "above", "front", "below"};
  return kNames[static_cast<std::size_t>(s)];
}
constexpr std::string_view from_name(From f) {
  constexpr std::string_view kNames[] = {"unknown", "listed", "local", "published"};
  return kNames[static_cast<std::size_t>(f)];
}

struct Need {
  Side side = Side::Left;
  std::optional<double> required_mm;  // absent: nobody has said
  From from = From::Unknown;
  std::optional<double> available_mm;  // absent: not measured; open sky is not "available"
  std::optional<bool> burns;           // what was measured to; absent: nobody has said
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

// A yes or no of the manual and of a local rule: either may forbid, and a permission counts only
// where the other does not. absent: nobody has said.
struct Allowed {
  std::optional<bool> yes;
  From from = From::Unknown;
};
// May the oven stand under a cover?
Allowed under_cover(const config::Config& config);

// Is there a roof, slats or fabric over the oven? absent: nobody has said; a height says yes.
std::optional<bool> covered(const config::Config& config);

// Room that the flue asks for on its sides, to what burns: its maker's figure; for a masonry
// chimney the published air space; otherwise unknown. `available_mm` is what was measured.
Need flue_need(const config::Config& config);

// Room between the oven's body and a grill beside it: the larger of what the two ask for at their
// sides; unknown until both have spoken.
Need grill_need(const config::Config& config);

}  // namespace hs::clearance
