#pragma once
// Where an eye goes when a cook bends, and the least bending that shows the target.
//
// Feet stay where they are. Bending the knees lowers the eye; a hip hinge lowers it and brings it
// forward (eye lever (0.936 - 0.530) H, Drillis & Contini 1966 in Winter, Fig. 4.1). The face never
// comes nearer the mouth than kFaceLimit and never into the hot plume's zone.

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

// What must be seen: the middle line to far_mm at height z above the floor.
struct Need {
  double far_mm = 0;
  double z_mm = 0;
};

// Farthest y at which a point z above the floor's middle line is seen; infinite when nothing cuts
// it off, -infinity when no such point is. z = 0 is reach_on_middle. Accuracy 0.01 mm.
double reach_at_height(const oven::Geometry& oven, const Eye& eye, double z_mm);

// The posture with the least bending (knees before the hip hinge) that shows the need, at 2 degree
// steps; nullopt when none within the limits does. Upright when that is enough.
std::optional<Posture> least_stoop(const oven::Geometry& oven, const Eye& upright,
                                   const BodyLine& body, const Need& need);

// True when a 20 degree hip hinge shows less of the middle line than standing upright.
bool bending_hides(const oven::Geometry& oven, const Eye& upright, const BodyLine& body);

// Head over trunk that keeps the line of sight within 0..40 degrees below the head's own level
// (EN 1005-4 as quoted second-hand); negative: the head tilts back.
double neck_deg(double gaze_down_deg, double trunk_deg);

}  // namespace hs::sight
