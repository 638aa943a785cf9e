// What the numbers mean against each rule. One place builds findings; limits carry their source in
// the rule's row (engine/rules).

#include <algorithm>
#include <cmath>

#include "engine/base/quantity.h"
#include "engine/cook/percentiles.h"
#include "engine/evaluate/lighting.h"
#include "engine/evaluate/room_findings.h"
#include "engine/evaluate/steps.h"
#include "engine/evaluate/surroundings.h"

namespace hs::evaluate {
namespace {

constexpr double kHalfSeen = 0.5;
constexpr double kGazeLow_deg = 40;  // EN 1005-4, second hand
constexpr double kArmGood_deg = 20, kArmLimit_deg = 60;
constexpr double kTrunkGood_deg = 20;
constexpr double kNeckGood_deg = 25;                                 // ISO 11226, second hand
constexpr double kKitchenCounter_mm = 914.4;                         // 36 in
constexpr double kChildTableLow_mm = 660, kChildTableHigh_mm = 760;  // ADA 2010 902.4.2

// Angle of the upper arm when a bent elbow carries the hand this far above the hanging elbow: the
// elbow itself must rise by as much while the forearm stays level, so this is the most it can be.
double upper_arm_deg(const CookResult& cook) {
  const double upper_arm_mm = cook.body.shoulder.value_mm - cook.body.elbow.value_mm;
  const double rise = std::clamp(cook.hand_above_elbow_mm / upper_arm_mm, 0.0, 2.0);
  return rad_to_deg(std::acos(1 - rise));
}

void add_hands(Findings& out, const config::Config& config, const Evaluation& e, std::size_t i) {
  const CookResult& cook = e.cooks[i];
  const double floor_mm = *e.used.oven_floor_mm;
  const double over_mm = floor_mm - cook.ceiling_floor_mm;
  const bool over = over_mm > height::kHandTolerance_mm;
  out.add({"height.hand_ceiling",
           over ? Verdict::Fail : Verdict::Ok,
           i,
           floor_mm,
           cook.ceiling_floor_mm,
           over ? -over_mm : std::max(0.0, -over_mm),
           {}});
  const double arm_deg = upper_arm_deg(cook);
  const bool good = arm_deg <= kArmGood_deg;
  const double limit_deg = good ? kArmGood_deg : kArmLimit_deg;
  out.add({"height.upper_arm",
           good                       ? Verdict::Ok
           : arm_deg <= kArmLimit_deg ? Verdict::Warn
                                      : Verdict::Fail,
           i,
           arm_deg,
           limit_deg,
           limit_deg - arm_deg,
           {}});
  if (cook.step_mm && !cook.young_child) {
    out.add({"height.platform", Verdict::Warn, i, *cook.step_mm, {}, {}, {}});
  }
  if (config.cooks[i].build == config::Build::Child) {
    out.add({"cook.child_at_oven",
             cook.young_child ? Verdict::Fail : Verdict::Warn,
             i,
             {},
             {},
             {},
             {}});
  }
}

void add_sight(Findings& out, const config::Config& config, const Evaluation& e, std::size_t i) {
  const CookResult& cook = e.cooks[i];
  const Seen& seen = cook.watching;
  if (seen.eye.height_mm <= 0) {
    out.add({"sight.floor_above_eye",
             Verdict::Fail,
             i,
             *e.used.oven_floor_mm,
             cook.body.eye.value_mm,
             seen.eye.height_mm,
             {}});
    return;
  }
  const auto share_verdict = [](double share) {
    return share >= sight::kAllSeen ? Verdict::Ok
           : share >= kHalfSeen     ? Verdict::Warn
                                    : Verdict::Fail;
  };
  out.add({"sight.pizza_share",
           share_verdict(seen.pizza_share),
           i,
           seen.pizza_share,
           sight::kAllSeen,
           seen.pizza_share - sight::kAllSeen,
           {}});
  out.add({"sight.working_share",
           cook.working.pizza_share >= sight::kAllSeen ? Verdict::Ok : Verdict::Warn,
           i,
           cook.working.pizza_share,
           sight::kAllSeen,
           cook.working.pizza_share - sight::kAllSeen,
           {}});
  out.add({"sight.far_crust", seen.crust_seen ? Verdict::Ok : Verdict::Warn, i, {}, {}, {}, {}});
  const double watching_mm = config.view.standoff_mm;
  if (const auto& standoff = cook.full_view.standoff_mm) {
    out.add({"sight.full_view",
             *standoff <= watching_mm + 0.05 ? Verdict::Ok : Verdict::Warn,
             i,
             *standoff,
             watching_mm,
             watching_mm - *standoff,
             {}});
  } else {
    out.add({"sight.full_view", Verdict::Fail, i, {}, watching_mm, {}, {}});
  }
  if (seen.edge_on) {
    const double flat_deg = sight::gaze_down_deg(
        seen.eye, std::min(e.geometry.floor.far_mm, e.pizza.y_mm + e.pizza.radius_mm));
    out.add({"sight.edge_on",
             Verdict::Warn,
             i,
             flat_deg,
             sight::kEdgeOn_deg,
             flat_deg - sight::kEdgeOn_deg,
             {}});
  }
  out.add({"sight.gaze",
           seen.steepest_gaze_deg <= kGazeLow_deg ? Verdict::Ok : Verdict::Warn,
           i,
           seen.steepest_gaze_deg,
           kGazeLow_deg,
           kGazeLow_deg - seen.steepest_gaze_deg,
           {}});
  if (seen.target_seen) return;
  if (cook.stoop && cook.stoop->posture != sight::Posture{}) {
    const double neck_deg = cook.stoop->neck_deg;
    const bool good = neck_deg >= 0 && neck_deg <= kNeckGood_deg;
    out.add({"sight.neck",
             good ? Verdict::Ok : Verdict::Warn,
             i,
             neck_deg,
             neck_deg < 0 ? 0 : kNeckGood_deg,
             neck_deg < 0 ? neck_deg : kNeckGood_deg - neck_deg,
             {}});
  }
  if (cook.stoop) {
    const double trunk_deg = cook.stoop->posture.trunk_deg;
    out.add({"sight.stoop",
             trunk_deg <= kTrunkGood_deg ? Verdict::Ok : Verdict::Warn,
             i,
             trunk_deg,
             kTrunkGood_deg,
             kTrunkGood_deg - trunk_deg,
             {}});
  } else {
    // Stepping back comes first; only where that does not help either is this a failure.
    out.add({"sight.stoop",
             cook.full_view.standoff_mm ? Verdict::Warn : Verdict::Fail,
             i,
             {},
             kTrunkGood_deg,
             {},
             {}});
  }
  if (cook.bending_hides) out.add({"sight.bending_hides", Verdict::Warn, i, {}, {}, {}, {}});
}

void add_prep(Findings& out, const config::Config& config, const CookResult& cook, std::size_t i) {
  if (cook.young_child) {
    // The low table is the answer; a step only where the run of counter clears the zone.
    out.add({"cook.child_place",
             cook.step_mm ? Verdict::Ok : Verdict::Warn,
             i,
             config.station.prep_width_mm,
             kChildRun_mm,
             config.station.prep_width_mm - kChildRun_mm,
             {}});
    return;
  }
  // A seated cook's counter is judged by where knees fit (reach.seated_counter), not by the elbow.
  if (config.cooks[i].seated) return;
  const auto distance_inside = [&](const Band& band) {
    return std::min(cook.prep_offset_mm - band.low_mm, band.high_mm - cook.prep_offset_mm);
  };
  const double margin_mm = distance_inside(cook.prep_band);
  const bool too_high = cook.prep_offset_mm < cook.prep_band.middle_mm();
  out.add({"height.dough_band",
           cook.prep_verdict,
           i,
           cook.prep_offset_mm,
           too_high ? cook.prep_band.low_mm : cook.prep_band.high_mm,
           margin_mm,
           {}});
  const Band& light = cook.light_band;
  const double light_margin_mm = distance_inside(light);
  if (light_margin_mm >= 0) {
    out.add({"height.light_band",
             Verdict::Ok,
             i,
             cook.prep_offset_mm,
             cook.prep_offset_mm < light.middle_mm() ? light.low_mm : light.high_mm,
             light_margin_mm,
             {}});
  }
}

void add_body(Findings& out, const config::Config& config, const CookResult& cook, std::size_t i) {
  const config::Cook& person = config.cooks[i];
  const bool child = person.build == config::Build::Child;
  if (cook.body.outside_survey) {
    out.add({"cook.outside_survey", Verdict::Warn, i, person.stature_mm, {}, {}, {}});
  }
  const cook::Estimate& elbow = cook.body.elbow;
  if (elbow.basis != cook::Basis::Measured) {
    out.add({child ? "cook.survey_child" : "cook.survey_adult",
             Verdict::Ok,
             i,
             elbow.sd_mm,
             {},
             {},
             {}});
  }
  if (person.seated) {
    const bool known =
        elbow.basis == cook::Basis::Measured && cook.body.eye.basis == cook::Basis::Measured;
    out.add({"cook.seated",
             known ? Verdict::Ok : Verdict::Warn,
             i,
             cook.body.eye.value_mm,
             {},
             {},
             {}});
  }
  if (child && cook.body.age_assumed) {
    out.add({"cook.stature_for_age", Verdict::Unknown, i, person.stature_mm, {}, {}, {}});
  } else if (child && person.age_years &&
             cook::child_stature_check(person.stature_mm, *person.age_years).unusual) {
    out.add({"cook.stature_for_age", Verdict::Warn, i, person.stature_mm, {}, {}, {}});
  }
  if (cook.table_mm) {
    const bool usual = *cook.table_mm >= kChildTableLow_mm && *cook.table_mm <= kChildTableHigh_mm;
    out.add(
        {"cook.child_table", usual ? Verdict::Ok : Verdict::Warn, i, *cook.table_mm, {}, {}, {}});
  }
}

// What a kitchen's usual counter would show: common practice, told beside ours.
void add_kitchen_counter(Findings& out, const config::Config& config, const Scene& scene,
                         const Evaluation& e) {
  double worst_share = 2;
  const double floor_mm = kKitchenCounter_mm + config.oven.floor_above_base_mm;
  for (std::size_t i = 0; i < e.cooks.size(); ++i) {
    if (!e.cooks[i].at_oven) continue;
    const sight::Eye eye = eye_of(scene.bodies[i], config.view, config.view.standoff_mm, floor_mm);
    const double share =
        eye.height_mm <= 0 ? 0 : sight::seen_share_of_disc(scene.geometry, eye, scene.pizza);
    worst_share = std::min(worst_share, share);
  }
  if (worst_share > 1) return;
  out.add({"height.kitchen_counter",
           worst_share >= sight::kAllSeen ? Verdict::Ok : Verdict::Warn,
           {},
           worst_share,
           sight::kAllSeen,
           worst_share - sight::kAllSeen,
           {}});
}

void add_station_heights(Findings& out, const config::Config& config, const Evaluation& e) {
  const config::Station& station = config.station;
  const Heights& best = e.recommended.heights;
  const auto given = [&](const std::optional<double>& mine, const std::optional<double>& ours,
                         std::string_view where) {
    if (!mine || !ours) return;
    const double off_mm = *mine - *ours;
    // Within what a builder rounds to it is the recommendation.
    constexpr double kSame_mm = 5;
    out.add({"height.given",
             std::abs(off_mm) <= kSame_mm ? Verdict::Ok : Verdict::Warn,
             {},
             *mine,
             *ours,
             -std::abs(off_mm),
             where});
  };
  given(station.oven_base_height_mm, best.oven_base_mm, "oven counter");
  given(station.counter_height_mm, best.counter_mm, "dough counter");
  if (e.used.riser_mm && *e.used.riser_mm < -kTolerance &&
      station.arrangement == config::Arrangement::Riser) {
    out.add({"height.riser",
             Verdict::Fail,
             {},
             *e.used.oven_base_mm,
             *e.used.counter_mm,
             *e.used.riser_mm,
             {}});
  }
  if (e.existing) {
    const bool fits = e.existing->block_mm >= 0;
    out.add({"height.existing_counter",
             fits ? Verdict::Ok : Verdict::Warn,
             {},
             e.existing->height_mm,
             *e.used.oven_base_mm,
             e.existing->block_mm,
             {}});
  }
  if (e.cover_ceiling_mm && e.used.oven_base_mm) {
    out.at_most("height.cover_ceiling", *e.used.oven_base_mm, *e.cover_ceiling_mm, Verdict::Fail,
                {});
  }
  if (config::is_masonry(config.oven.kind)) {
    out.add({"oven.masonry_base", Verdict::Warn, {}, {}, {}, {}, {}});
    constexpr double kLightest_kg = 150;  // our judgement
    if (config.oven.mass_kg < kLightest_kg) {
      out.add({"oven.masonry_mass",
               Verdict::Warn,
               {},
               config.oven.mass_kg,
               kLightest_kg,
               config.oven.mass_kg - kLightest_kg,
               {}});
    }
  }
}

void add_trial(Findings& out, const config::Config& config, const Evaluation& e) {
  if (!e.trial) {
    // A mark was typed, but from what height is not known.
    if (config.trial.cold_farthest_seen_mm) {
      out.add({"sight.cold_trial",
               Verdict::Unknown,
               {},
               *config.trial.cold_farthest_seen_mm,
               {},
               {},
               {}});
    }
    return;
  }
  if (!e.trial->predicted_mm) {
    out.add({"sight.cold_trial", Verdict::Fail, e.trial->cook, e.trial->measured_mm, {}, {}, {}});
    return;
  }
  out.add({"sight.cold_trial",
           e.trial->agrees ? Verdict::Ok : Verdict::Warn,
           e.trial->cook,
           e.trial->measured_mm,
           *e.trial->predicted_mm,
           -std::abs(e.trial->difference_mm),
           {}});
}

}  // namespace

std::vector<Finding> findings_of(const config::Config& config, const Scene& scene,
                                 const Evaluation& e) {
  Findings out;
  add_clearances(out, config, e);
  out.add({"heat.not_computed", Verdict::Unknown, {}, {}, {}, {}, {}});
  for (std::size_t i = 0; i < e.cooks.size(); ++i) {
    const CookResult& cook = e.cooks[i];
    add_body(out, config, cook, i);
    if (cook.at_oven) {
      add_hands(out, config, e, i);
      add_sight(out, config, e, i);
      add_heat(out, e, i);
    }
    if (cook.at_prep) add_prep(out, config, cook, i);
  }
  const auto nobody = [&](bool CookResult::*place) {
    return std::none_of(e.cooks.begin(), e.cooks.end(),
                        [place](const CookResult& cook) { return cook.*place; });
  };
  if (nobody(&CookResult::at_oven)) {
    out.add({"cook.nobody_at_oven", Verdict::Unknown, {}, {}, {}, {}, {}});
  }
  if (nobody(&CookResult::at_prep)) {
    out.add({"cook.nobody_at_prep", Verdict::Unknown, {}, {}, {}, {}, {}});
  }
  add_station_heights(out, config, e);
  add_kitchen_counter(out, config, scene, e);
  add_trial(out, config, e);
  add_room(out, config, e);
  add_light(out, config, e);
  add_surroundings(out, config, e);
  add_weather(out, config, e);
  return std::move(out.list);
}

}  // namespace hs::evaluate
