// What the heights in use mean for one cook.

#include <algorithm>
#include <cmath>
#include <limits>

#include "engine/base/quantity.h"
#include "engine/evaluate/room_findings.h"
#include "engine/evaluate/steps.h"

namespace hs::evaluate {
namespace {

constexpr double kChildTableBelowElbow_mm =
    100;                             // light work, lower end (see height::light_offset)
constexpr double kNearBand_mm = 50;  // this far outside the dough band is a warning, farther fails

double round_up_5(double mm) { return std::ceil(mm / 5 - 1e-6) * 5; }

Seen seen_from(const config::Config& config, const Scene& scene, const cook::Body& body,
               double standoff_mm, double oven_floor_mm) {
  Seen seen;
  seen.eye = eye_of(body, config.view, standoff_mm, oven_floor_mm);
  const double near_mm = scene.geometry.floor.near_mm;
  if (seen.eye.height_mm <= 0) {
    seen.unseen_line = 1;
    seen.steepest_gaze_deg = seen.shallowest_gaze_deg = sight::gaze_down_deg(seen.eye, near_mm);
    return seen;
  }
  seen.floor_share = sight::seen_share_of_floor(scene.geometry, seen.eye);
  seen.pizza_share = sight::seen_share_of_disc(scene.geometry, seen.eye, scene.pizza);
  seen.unseen_line = unseen_line(scene, seen.eye);
  seen.farthest_mm = sight::farthest_on_middle(scene.geometry, seen.eye);
  seen.steepest_gaze_deg = sight::gaze_down_deg(seen.eye, near_mm);
  seen.shallowest_gaze_deg = sight::gaze_down_deg(seen.eye, seen.farthest_mm.value_or(near_mm));
  const double rim_mm =
      std::min(scene.geometry.floor.far_mm, scene.pizza.y_mm + scene.pizza.radius_mm);
  seen.crust_seen = sight::sees_point(scene.geometry, seen.eye, rim_mm, config.view.crust_mm);
  seen.target_seen = sees_target(scene, config.view, seen.eye);
  seen.edge_on = sight::gaze_down_deg(seen.eye, scene.need.far_mm) < sight::kEdgeOn_deg;
  return seen;
}

std::optional<Stoop> stoop_of(const config::Config& config, const Scene& scene,
                              const CookResult& cook) {
  const sight::BodyLine line{cook.body.eye_lever_mm, cook.body.leg_mm};
  const auto posture = sight::least_stoop(cook.watching.eye, line, [&](const sight::Eye& eye) {
    return sees_target(scene, config.view, eye);
  });
  if (!posture) return {};
  const sight::Eye eye = sight::bent(cook.watching.eye, line, *posture);
  Stoop stoop;
  stoop.posture = *posture;
  stoop.face_to_mouth_mm = eye.distance_mm;
  stoop.floor_share = sight::seen_share_of_floor(scene.geometry, eye);
  stoop.neck_deg =
      sight::neck_deg(sight::gaze_down_deg(eye, scene.need.far_mm), posture->trunk_deg);
  return stoop;
}

Verdict prep_verdict(double offset_mm, const Band& band) {
  // A counter rounded for building must not leave a band by that alone.
  if (offset_mm >= band.low_mm - height::kHandTolerance_mm &&
      offset_mm <= band.high_mm + height::kHandTolerance_mm) {
    return Verdict::Ok;
  }
  const bool near =
      offset_mm >= band.low_mm - kNearBand_mm && offset_mm <= band.high_mm + kNearBand_mm;
  return near ? Verdict::Warn : Verdict::Fail;
}

void fill_oven(const config::Config& config, const Scene& scene, const config::Cook& cook,
               double oven_floor_mm, CookResult& result) {
  const cook::Body& body = result.body;
  const config::View& view = config.view;
  result.watching = seen_from(config, scene, body, view.standoff_mm, oven_floor_mm);
  result.working = seen_from(config, scene, body, view.working_standoff_mm, oven_floor_mm);
  result.full_view = {lowest_floor_showing(scene, view, body, view.standoff_mm, oven_floor_mm),
                      nearest_standoff_showing(scene, view, body, oven_floor_mm)};
  result.stoop = stoop_of(config, scene, result);
  result.bending_hides =
      sight::bending_hides(scene.geometry, result.watching.eye, {body.eye_lever_mm, body.leg_mm});
  const double hand_mm = oven_floor_mm + height::kHandOverFloor_mm;
  result.hand_above_elbow_mm = hand_mm - body.elbow.value_mm;
  result.hand_below_shoulder_mm = body.shoulder.value_mm - hand_mm;
  const config::Weights& w = config.weights;
  result.oven_cost =
      height::oven_cost({cook.share, body.elbow.value_mm, true, false, {}}, oven_floor_mm,
                        result.watching.unseen_line, {w.sight, w.prep, w.hands, w.worst_off});
  // A platform is the last resort of a short standing adult: never for a child or a seated cook.
  const double too_high_mm = oven_floor_mm - result.ceiling_floor_mm;
  if (too_high_mm > height::kHandTolerance_mm && !cook.seated &&
      cook.build != config::Build::Child) {
    result.step_mm = round_up_5(too_high_mm);
  }
}

void fill_prep(const config::Config& config, const config::Cook& cook, double counter_mm,
               CookResult& result) {
  const cook::Body& body = result.body;
  const config::Station& station = config.station;
  const double elbow_mm = body.elbow.value_mm;
  result.prep_offset_mm = elbow_mm - counter_mm;
  result.prep_band = prep_band_of(config, cook, body);
  result.light_band = height::light_offset(station.board_mm);
  result.kitchen_rule = height::kitchen_rule(cook.stature_mm);
  result.prep_verdict = prep_verdict(result.prep_offset_mm, result.prep_band);
  result.prep_cost = height::prep_cost({cook.share, elbow_mm, false, true, result.prep_band},
                                       counter_mm, {1, 1, 1, 0});
  result.zones = reach::zones_over(counter_mm, reach_arm(body));
  if (!result.young_child) return;
  result.table_mm = std::floor((elbow_mm - kChildTableBelowElbow_mm) / 5) * 5;
  const double low_end_mm = elbow_mm - result.prep_band.middle_mm();
  if (counter_mm > low_end_mm && station.prep_width_mm >= kChildRun_mm) {
    result.step_mm = round_up_5(counter_mm - low_end_mm);
  }
}

}  // namespace

reach::Arm reach_arm(const cook::Body& body) {
  return {body.shoulder.value_mm, body.arm_to_grip_mm, body.forearm_hand_mm,
          body.seated ? 0 : body.hip_mm, body.belly_mm};
}

CookResult cook_result(const config::Config& config, const Scene& scene, std::size_t index,
                       const Heights& used) {
  const config::Cook& cook = config.cooks[index];
  CookResult result;
  result.body = scene.bodies[index];
  result.standing = cook::standing_of(cook);
  result.young_child = young_child(cook, result.body);
  result.ceiling_floor_mm = height::floor_ceiling_mm(result.body.elbow.value_mm);
  const config::Station& station = config.station;
  result.nearest_standoff_mm = reach::nearest_standoff_mm(
      {station.oven_setback_mm, station.overhang_mm, station.toe_space_mm}, result.body.belly_mm,
      result.body.seated ? 0 : result.body.toes_mm);  // a seated cook's feet go under the counter
  result.at_oven = config::works_at_oven(cook) && used.oven_floor_mm.has_value();
  result.at_prep = config::works_at_prep(cook) && used.counter_mm.has_value();
  if (result.at_oven) fill_oven(config, scene, cook, *used.oven_floor_mm, result);
  if (result.at_prep) fill_prep(config, cook, *used.counter_mm, result);
  return result;
}

}  // namespace hs::evaluate
