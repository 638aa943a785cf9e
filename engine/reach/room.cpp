#include "engine/reach/room.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace hs::reach {
namespace {

std::vector<PlanSpot> box(double left_mm, double right_mm, double near_mm, double far_mm) {
  return {{left_mm, near_mm}, {right_mm, near_mm}, {right_mm, far_mm}, {left_mm, far_mm}};
}

// Part of a ring of no inner radius, from one turn to another, anticlockwise.
void arc(std::vector<PlanSpot>& out, PlanSpot middle, double radius_mm, double from, double to) {
  constexpr int kSteps = 24;
  for (int i = 0; i <= kSteps; ++i) {
    const double turn = from + (to - from) * i / kSteps;
    out.push_back(
        {middle.x_mm + radius_mm * std::cos(turn), middle.y_mm + radius_mm * std::sin(turn)});
  }
}

constexpr double kHalfTurn = std::numbers::pi;

// Tip before the cook and handle's end behind, swung to either side: two half discs.
std::vector<PlanSpot> swung(const PeelHold& hold) {
  std::vector<PlanSpot> out;
  const PlanSpot middle{hold.x_mm, -hold.before_mm};
  arc(out, middle, hold.tip_mm, 0, kHalfTurn);
  arc(out, middle, hold.tail_mm, kHalfTurn, 2 * kHalfTurn);
  return out;
}

}  // namespace

PeelHold peel_hold(double lateral_mm, double working_standoff_mm, double peel_mm) {
  PeelHold hold;
  hold.x_mm = lateral_mm;
  hold.before_mm = working_standoff_mm;
  hold.tip_mm = std::min(working_standoff_mm, peel_mm);
  hold.tail_mm = std::max(0.0, peel_mm - working_standoff_mm);
  return hold;
}

double drawback_mm(double peel_mm, double setback_mm) {
  return std::max(0.0, peel_mm - setback_mm);
}

double turn_behind_mm(const PeelHold& hold, double setback_mm) {
  return std::max(0.0, hold.before_mm + hold.tail_mm - setback_mm);
}

std::vector<Zone> zones(const Station& station, const std::optional<PeelHold>& hold) {
  std::vector<Zone> out;
  const double front = -station.setback_mm;
  const double half = station.oven_width_mm / 2;
  const auto ground = [&](std::string_view rule, double left, double right, double required_mm,
                          std::optional<double> available_mm) {
    out.push_back({rule, box(left, right, front - required_mm, front), required_mm, available_mm});
  };
  ground("reach.aisle", -half - kLanding_mm, half + kLanding_mm,
         station.cooks > 1 ? kAisleSeveral_mm : kAisleOne_mm, station.aisle_mm);
  ground("reach.peel_room", -half, half, kPeelRoomPerDepth * station.oven_depth_mm,
         station.aisle_mm);
  if (hold) {
    const double blade = station.blade_mm / 2;
    out.push_back({"reach.peel_drawback",
                   box(hold->x_mm - blade, hold->x_mm + blade, -station.peel_mm, 0),
                   drawback_mm(station.peel_mm, station.setback_mm), station.aisle_mm});
    out.push_back({"room.peel_turn", swung(*hold), turn_behind_mm(*hold, station.setback_mm),
                   station.aisle_mm});
  }
  out.push_back({"reach.landing", box(-half - kLanding_mm, -half, front, station.oven_depth_mm),
                 kLanding_mm, station.landing_left_mm});
  out.push_back({"reach.landing", box(half, half + kLanding_mm, front, station.oven_depth_mm),
                 kLanding_mm, station.landing_right_mm});
  if (station.opens_mm) {
    ground("room.drawer", -half, half, *station.opens_mm + kBeforeDrawer_mm, station.aisle_mm);
    if (station.opens_across_mm) {
      ground("room.doors_both", -half, half, *station.opens_mm + *station.opens_across_mm,
             station.aisle_mm);
    }
  }
  if (station.seated) {
    Zone turn{"room.wheelchair_turn", {}, kWheelchairTurn_mm, station.aisle_mm};
    arc(turn.outline, {0, front - kWheelchairTurn_mm / 2}, kWheelchairTurn_mm / 2, 0,
        2 * kHalfTurn);
    turn.outline.pop_back();  // the last is the first
    out.push_back(std::move(turn));
  }
  return out;
}

}  // namespace hs::reach
