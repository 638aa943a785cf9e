#pragma once
// Where an eye goes when a cook bends, and the least bending that shows the target.
//
// Feet stay where they are. Bending the knees lowers the eye; a hip hinge lowers it and brings it
// forward (eye lever (0.936 - 0.530) H, Drillis & Contini 1966 in Winter, Fig. 4.1). A bent face
// never comes nearer the mouth than kFaceLimit: the hot air that rolls out of the mouth and rises
// in front of it is taken to fill that space, above the mouth's top edge too.

#include <optional>

#include "engine/sight/sight.h"

namespace hs::sight {

// Nearest that a face may come to the outer mouth plane, mm: our judgement. Not a clearance and not
// from the heat model; it keeps a stoop from ending in the hot air.
inline constexpr double kFaceLimit_mm = 450;

struct BodyLine {  // the lengths that bending uses, mm
  double eye_lever_mm = 0;
  double leg_mm = 0;  // 0: seated, no knees to bend
};

struct Posture {
  double trunk_deg = 0;  // hip hinge from upright, 0..60
  double knee_deg = 0;   // flexion, 0 = straight, 0..40 (a half squat held briefly: our judgement)
  bool operator==(const Posture&) const = default;
};

// The eye after bending. Check value: H 1750, hip bend 20 degrees: 42.8 down, 243.0 forward.
Eye bent(const Eye& upright, const BodyLine& body, const Posture& posture);

// Farthest y at which a point z above the floor's middle line is seen; infinite when nothing cuts
// it off, -infinity when no such point is. z = 0 is reach_on_middle. Accuracy 0.01 mm.
double reach_at_height(const oven::Geometry& oven, const Eye& eye, double z_mm);

// Steps and ends of the search, degrees. Deeper knees than a half squat are not held at an oven:
// our judgement; a trunk past 60 is outside ISO 11226's zones (second hand).
inline constexpr int kBendStep_deg = 2, kMostTrunk_deg = 60, kMostKnee_deg = 40;

// The posture with the least bending (knees before the hip hinge) whose eye satisfies `shows`;
// upright when that is enough, nullopt when nothing within the limits does. Any bend keeps the face
// kFaceLimit_mm or more from the mouth.
template <typename Shows>
std::optional<Posture> least_stoop(const Eye& upright, const BodyLine& body, Shows shows) {
  const int most_knee_deg = body.leg_mm > 0 ? kMostKnee_deg : 0;
  if (shows(upright)) return Posture{};
  for (int trunk_deg = 0; trunk_deg <= kMostTrunk_deg; trunk_deg += kBendStep_deg) {
    // A lower eye at the same place sees deeper as long as it is above the floor, so where the
    // deepest knee bend does not help no smaller one is tried.
    const Eye lowest = bent(upright, body, {1.0 * trunk_deg, 1.0 * most_knee_deg});
    if (lowest.distance_mm < kFaceLimit_mm) return {};
    if (lowest.height_mm > 0 && !shows(lowest)) continue;
    for (int knee_deg = 0; knee_deg <= most_knee_deg; knee_deg += kBendStep_deg) {
      const Posture posture{1.0 * trunk_deg, 1.0 * knee_deg};
      if (shows(bent(upright, body, posture))) return posture;
    }
  }
  return {};
}

// True when a 20 degree hip hinge shows less of the middle line than standing upright.
bool bending_hides(const oven::Geometry& oven, const Eye& upright, const BodyLine& body);

// Head over trunk that keeps the line of sight within 0..40 degrees below the head's own level
// (EN 1005-4 as quoted second-hand); negative: the head tilts back.
double neck_deg(double gaze_down_deg, double trunk_deg);

}  // namespace hs::sight
