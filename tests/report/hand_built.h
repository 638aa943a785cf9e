#pragma once
// A household whose evaluation is written down by hand, so that the report's words are tested apart
// from what works the numbers out. Ana is too far under the mouth's edge; Ben kneads only.

#include "engine/config/config.h"
#include "engine/evaluate/evaluate.h"

namespace hs::test {

inline config::Config hand_built_config() {
  config::Config config;
  config.cooks.clear();
  config.cooks.push_back({.name = "Ana", .stature_mm = 1750});
  config.cooks.push_back({.name = "Ben", .stature_mm = 1600});
  config.cooks[1].elbow_height_mm = 1030;
  config.cooks[1].at = config::At::Prep;
  config.station.prep_depth_mm = 600;
  config.station.left_gap_mm = 200;
  config.oven.listed_clearance.side_mm = 300;
  return config;
}

// Heights as marked in millimetres.
inline evaluate::Evaluation hand_built_evaluation(const config::Config& config) {
  using cook::Basis;
  evaluate::Evaluation e;
  e.geometry = oven::geometry_of(config.oven);
  e.pizza = {215, 160};

  evaluate::CookResult ana;
  ana.body.eye = {1661.04, 8.6, Basis::SurveyAdult};
  ana.body.elbow = {1126.2, 16.5, Basis::SurveyAdult};
  ana.body.shoulder = {1460, 16.2, Basis::SurveyAdult};
  ana.body.toes_mm = 130;
  ana.standing = {74.6, {}};
  ana.at_oven = ana.at_prep = true;
  ana.watching = {.eye = {0, 700, 435},
                  .floor_share = 0.7012,
                  .pizza_share = 0.76444,
                  .unseen_line = 0.21,
                  .farthest_mm = 298.36,
                  .steepest_gaze_deg = 31.88,
                  .shallowest_gaze_deg = 23.5};
  ana.working = ana.watching;
  ana.working.pizza_share = 0.41;
  ana.full_view = {1180.0, 877.3};
  ana.stoop = evaluate::Stoop{{0, 24}, 12, 690, 0.93};
  ana.bending_hides = true;
  ana.hand_above_elbow_mm = 148.8;
  ana.hand_below_shoulder_mm = 185;
  ana.ceiling_floor_mm = 1226.2;
  ana.nearest_standoff_mm = 235;
  ana.prep_offset_mm = 216.2;
  ana.prep_band = {170, 270};
  ana.zones = {310, 520};
  e.cooks.push_back(ana);

  evaluate::CookResult ben;
  ben.body.eye = {1520, 8, Basis::SurveyAdult};
  ben.body.elbow = {1030, 0, Basis::Measured};
  ben.body.shoulder = {1330, 14, Basis::SurveyAdult};
  ben.standing = {19.2, {}};
  ben.at_prep = true;
  ben.nearest_standoff_mm = 230;
  ben.prep_offset_mm = 120;
  ben.prep_band = {170, 270};
  ben.prep_verdict = Verdict::Warn;
  ben.zones = {300, 470};
  e.cooks.push_back(ben);

  e.recommended.heights = e.recommended.searched = {910, 1075, 1225, 165};
  e.recommended.oven_band = height::Band{1052, 1076};
  e.recommended.dough_band = height::Band{880, 930};
  e.recommended.prep_depth_mm = 470;
  e.recommended.standoff_mm = 880;
  e.recommended.working_standoff_mm = 500;
  e.recommended.feet_line_mm = 670;
  e.recommended.binding = "height.hand_ceiling";
  e.used = e.recommended.heights;
  e.feet_line_mm = 490;  // 700 - 80 - 130
  e.arrangements.push_back(
      {config::Arrangement::OneLevel, {990, 990, 1140, 0}, 0, 0.61, 0.5, 0.4, 60, 1});
  e.clearances = clearance::needs(config, 1075);
  e.sensitivity.push_back({0, evaluate::Measure::Elbow, 16.5, 16, -7});
  e.weight_moves.push_back({"sight", 2, 12.34, 0});
  e.fits_adults_share = 0.71239;

  e.mouth.emissivity = 0.98964;
  e.mouth.emissive_kw_m2 = 15.3467;
  e.mouth.flame_factor = 2.1261;
  e.cooks[0].heat = {0.3456, 1.6543, 380, 2.3456, 1.1728, 4.6299, 0.9144, 450, {}};
  e.findings = {
      {"clearance.side", Verdict::Fail, {}, 200, 300, -100, "on the left"},
      {"clearance.side", Verdict::Unknown, {}, {}, 300, {}, "on the right"},
      {"clearance.back", Verdict::Unknown, {}, {}, {}, {}, "at the back"},
      {"heat.not_computed", Verdict::Unknown, {}, {}, {}, {}, {}},
      {"sight.pizza_share", Verdict::Warn, 0, 0.76444, 0.999, -0.23456, {}},
      {"height.dough_band", Verdict::Warn, 1, 120, 170, -50, {}},
      {"height.hand_ceiling", Verdict::Ok, 0, 1225, 1226.2, 1.2, {}},
      {"height.dough_band", Verdict::Ok, 0, 216.2, 270, 46.2, {}},
  };
  return e;
}

// The same with its heights as marked in inches.
inline evaluate::Evaluation hand_built_in_inches(const config::Config& config) {
  evaluate::Evaluation e = hand_built_evaluation(config);
  e.marks = evaluate::Marks::QuarterInch;
  e.recommended.heights = {35.75 * 25.4, 42.25 * 25.4, 42.25 * 25.4 + 150, 6.5 * 25.4};
  e.used = e.recommended.heights;
  return e;
}

}  // namespace hs::test
