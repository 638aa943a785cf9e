#pragma once
// Arms over counters, bodies at counter edges, peels and aisles. Lengths in mm.

#include <optional>

namespace hs::reach {

struct Arm {
  double shoulder_mm = 0;      // above the ground
  double arm_to_grip_mm = 0;   // straight
  double forearm_hand_mm = 0;  // elbow to fingertip
  double hip_mm = 0;           // above the ground; 0: seated, no lean
  double belly_mm = 0;         // front of the body before the shoulder's plumb line
};

// Depth of counter a cook can use, from its front edge.
struct Zones {
  double near_mm = 0;  // forearm sweep, elbow at the side
  double far_mm = 0;   // grip at arm's length, trunk leaning 20 degrees (ISO 11226's good zone)
};
// Geometry: sqrt(arm^2 - (shoulder - surface)^2) - body; 0 when the surface is out of reach.
Zones zones_over(double surface_mm, const Arm& arm);

// How near the mouth a body can stand upright: the belly stops at the counter's front edge, the
// toes at the kick board.
struct Edge {
  double setback_mm = 0, overhang_mm = 0, toe_space_mm = 0;
};
// Eye to outer mouth plane, level, with kBodyGap between belly and counter.
inline constexpr double kBodyGap_mm = 25;  // our judgement
double nearest_standoff_mm(const Edge& edge, double belly_mm, double toes_mm);

// Where the toe tips are, in front of the counter's front edge, when the eye is at a standoff;
// negative: under the counter.
double feet_line_mm(double standoff_mm, double setback_mm, double toes_mm);

// ADA 2010 306.3: knee clearance depth needed at a height above the ground, 230..685 mm;
// 280 at 230, 205 at 685, shrinking 25 per 150. nullopt outside that range.
std::optional<double> knee_depth_mm(double height_mm);

// ADA 2010 308.2.2: highest forward reach over a counter this deep; nullopt when it is too deep
// (over 635 mm).
std::optional<double> forward_reach_high_mm(double counter_depth_mm);

}  // namespace hs::reach
