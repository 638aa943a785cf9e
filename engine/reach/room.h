#pragma once
// Room to work, as zones in plan: what each asks for, what there is, and where it lies.
//
// Station frame, seen from above: x to the cook's right, 0 at the middle of the mouth; y into the
// oven, 0 at the outer mouth plane. Free ground is in front of the counter's front edge, at
// negative y.

#include <optional>
#include <string_view>
#include <vector>

#include "engine/base/vec.h"

namespace hs::reach {

// US kitchen planning guidelines: work aisles 42 and 48 in (second hand), landing 15 in beside the
// oven or not more than 48 in across (guideline 23, read), preparation area 36 x 24 in (guideline
// 12, read), walkway 36 in (second hand).
inline constexpr double kAisleOne_mm = 1067, kAisleSeveral_mm = 1219;
inline constexpr double kLanding_mm = 381, kLandingAcross_mm = 1219;
inline constexpr double kPrepWidth_mm = 914, kPrepDepth_mm = 610;
// Wheelchair turning space: a circle of 60 in, ADA 2010 304.3.1 (the number read second hand, in a
// state code's figure).
inline constexpr double kWheelchairTurn_mm = 1525;
// Standing or crouching before an open drawer: our judgement.
inline constexpr double kBeforeDrawer_mm = 600;
// Free ground in front of a deck oven for each mm of its depth: one expert of the trade.
inline constexpr double kPeelRoomPerDepth = 1.5;

struct Zone {
  std::string_view rule;                            // id of the rule that asks for it
  std::vector<PlanSpot> outline;                    // closed, anticlockwise from above
  std::optional<double> required_mm, available_mm;  // absent: nobody has said
};

// A cook at the oven with a peel: where the body is, and how the peel lies when its blade's tip is
// just clear of the mouth, held as it is for turning.
struct PeelHold {
  double x_mm = 0, before_mm = 0;  // body's axis: sideways, and in front of the mouth
  double tip_mm = 0, tail_mm = 0;  // blade's tip and handle's end from that axis, both 0 or more
};
// Tip at the mouth; the handle ends behind the body where the peel is longer than the distance.
PeelHold peel_hold(double lateral_mm, double working_standoff_mm, double peel_mm);

// Free ground in front of the counter that each movement takes, mm, measured from its front edge.
// Straight out: the whole peel in front of the mouth.
double drawback_mm(double peel_mm, double setback_mm);
// Turned aside about the body: the handle's end sweeps behind it.
double turn_behind_mm(const PeelHold& hold, double setback_mm);

struct Station {
  double setback_mm = 0;  // mouth behind the counter's front edge
  double oven_width_mm = 0, oven_depth_mm = 0;
  std::optional<double> aisle_mm;  // free ground in front of the counter
  std::optional<double> landing_left_mm, landing_right_mm;
  std::optional<double> opens_mm, opens_across_mm;
  double blade_mm = 0, peel_mm = 0;
  int cooks = 1;
  bool seated = false;  // somebody cooks from a wheelchair or chair
};

// Every zone that is asked for: the aisle, the expert's peel room, the peel straight out and turned
// (for the first hold), landings beside the oven, a door or drawer with somebody before it, doors
// on both sides at once, and the turning circle where a seated cook is named.
std::vector<Zone> zones(const Station& station, const std::optional<PeelHold>& hold);

}  // namespace hs::reach
