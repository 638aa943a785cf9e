#include "engine/reach/reach.h"

#include <algorithm>
#include <cmath>

#include "engine/base/quantity.h"

namespace hs::reach {
namespace {

constexpr double kLean_deg = 20;  // ISO 11226, good zone of the trunk, second hand

// How far in front of a shoulder a straight arm grips on a surface; negative: it does not get
// there.
double arm_over(double surface_mm, double shoulder_mm, double arm_mm) {
  const double drop_mm = shoulder_mm - surface_mm;
  const double left_mm2 = arm_mm * arm_mm - drop_mm * drop_mm;
  return left_mm2 < 0 ? -1 : std::sqrt(left_mm2);
}

}  // namespace

Zones zones_over(double surface_mm, const Arm& arm) {
  double before_shoulder_mm = arm_over(surface_mm, arm.shoulder_mm, arm.arm_to_grip_mm);
  const double trunk_mm = arm.shoulder_mm - arm.hip_mm;
  if (arm.hip_mm > 0 && trunk_mm > 0) {
    // A hinge at the hips brings the shoulder forward and down; the belly stays at the edge.
    const double lean = deg_to_rad(kLean_deg);
    const double leaning_mm =
        arm_over(surface_mm, arm.hip_mm + trunk_mm * std::cos(lean), arm.arm_to_grip_mm);
    if (leaning_mm >= 0) {
      before_shoulder_mm = std::max(before_shoulder_mm, leaning_mm + trunk_mm * std::sin(lean));
    }
  }
  Zones zones;
  zones.far_mm = std::max(0.0, before_shoulder_mm - arm.belly_mm);
  zones.near_mm = std::clamp(arm.forearm_hand_mm - arm.belly_mm, 0.0, zones.far_mm);
  return zones;
}

double nearest_standoff_mm(const Edge& edge, double belly_mm, double toes_mm) {
  const double by_belly_mm = edge.setback_mm + kBodyGap_mm + belly_mm;
  const double by_toes_mm = edge.setback_mm + toes_mm - edge.overhang_mm - edge.toe_space_mm;
  return std::max({0.0, by_belly_mm, by_toes_mm});
}

double feet_line_mm(double standoff_mm, double setback_mm, double toes_mm) {
  return standoff_mm - setback_mm - toes_mm;
}

std::optional<double> knee_depth_mm(double height_mm) {
  constexpr double kLow_mm = 230, kHigh_mm = 685;
  constexpr double kDeep_mm = 280, kShallow_mm = 205;
  constexpr double kPerHeight = 25.0 / 150;
  if (!(height_mm >= kLow_mm) || height_mm > kHigh_mm) return {};
  return std::max(kShallow_mm, kDeep_mm - kPerHeight * (height_mm - kLow_mm));
}

std::optional<double> forward_reach_high_mm(double counter_depth_mm) {
  constexpr double kShallow_mm = 510, kDeep_mm = 635;
  if (counter_depth_mm <= kShallow_mm) return 1220;
  if (counter_depth_mm <= kDeep_mm) return 1120;
  return {};
}

}  // namespace hs::reach
