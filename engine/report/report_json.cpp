#include "engine/report/report_json.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <string_view>
#include <vector>

#include "engine/base/version.h"
#include "engine/config/read.h"
#include "engine/report/build_json.h"
#include "engine/report/cited.h"
#include "engine/report/headline.h"
#include "engine/report/heat_json.h"
#include "engine/report/json_values.h"
#include "engine/report/packet_json.h"
#include "engine/report/phrases.h"
#include "engine/report/rules_json.h"
#include "engine/report/summary.h"
#include "engine/report/surroundings_json.h"
#include "engine/report/survey_words.h"
#include "engine/rules/cautions.h"
#include "engine/rules/rules.h"

namespace hs::report {
namespace {

using evaluate::Evaluation;

void put_band(JsonWriter& out, std::string_view key, const std::optional<height::Band>& band) {
  if (!band) {
    put_null(out, key);
    return;
  }
  out.key(key);
  out.begin_list();
  out.number(trimmed(band->low_mm, 1));
  out.number(trimmed(band->high_mm, 1));
  out.end_list();
}

void put_heights(JsonWriter& out, const evaluate::Heights& heights) {
  put_mm(out, "counter_height_mm", heights.counter_mm);
  put_mm(out, "oven_base_height_mm", heights.oven_base_mm);
  put_mm(out, "oven_floor_height_mm", heights.oven_floor_mm);
  put_mm(out, "riser_mm", heights.riser_mm);
}

void put_recommended(JsonWriter& out, const Evaluation& e) {
  const evaluate::Recommended& r = e.recommended;
  const bool oven = r.heights.oven_base_mm.has_value();
  const auto if_oven = [oven](double mm) { return oven ? std::optional(mm) : std::nullopt; };
  out.key("recommended");
  out.begin_object();
  put_heights(out, r.heights);
  put_mm(out, "prep_depth_mm", r.prep_depth_mm);
  put_mm(out, "standoff_mm", if_oven(r.standoff_mm));
  put_mm(out, "working_standoff_mm", if_oven(r.working_standoff_mm));
  put_mm(out, "feet_line_mm", if_oven(r.feet_line_mm));
  put_band(out, "comfort_band_mm", r.oven_band);
  put_band(out, "dough_band_mm", r.dough_band);
  put_text_or_null(out, "binding", r.binding);
  out.end_object();
}

void put_used(JsonWriter& out, const config::Config& config, const Evaluation& e) {
  const config::Station& station = config.station;
  const bool given = given_heights(station).oven_base;
  const bool oven = e.used.oven_base_mm.has_value();
  const auto if_oven = [oven](double mm) { return oven ? std::optional(mm) : std::nullopt; };
  out.key("used");
  out.begin_object();
  put_heights(out, e.used);
  put_mm(out, "prep_depth_mm", station.prep_depth_mm);
  put_mm(out, "standoff_mm", if_oven(config.view.standoff_mm));
  put_mm(out, "working_standoff_mm", if_oven(config.view.working_standoff_mm));
  put_mm(out, "feet_line_mm", if_oven(e.feet_line_mm));
  put_band(out, "comfort_band_mm", e.recommended.oven_band);
  put_band(out, "dough_band_mm", e.recommended.dough_band);
  put_text_or_null(out, "binding", given && oven ? "height.given" : e.recommended.binding);
  out.end_object();
}

// The searched heights at one kind of marks. The floor of a tabletop oven is rounded by itself: it
// is read off, not built.
evaluate::Heights build_marks(const config::Config& config, const Evaluation& e,
                              evaluate::Marks marks) {
  evaluate::Heights marked = marked_heights(config, e.recommended.searched, marks);
  const auto base_top_mm = evaluate::highest_base_mm(config);
  const auto floor_top_mm =
      base_top_mm ? std::optional(*base_top_mm + config.oven.floor_above_base_mm) : std::nullopt;
  const auto to_mark = [marks](std::optional<double>& mm, std::optional<double> highest_mm) {
    if (mm) mm = evaluate::at_mark(*mm, marks, highest_mm);
  };
  to_mark(marked.oven_floor_mm, floor_top_mm);
  to_mark(marked.oven_base_mm, base_top_mm);
  if (marked.counter_mm && marked.oven_base_mm) {
    marked.riser_mm = *marked.oven_base_mm - *marked.counter_mm;
  }
  return marked;
}

void put_build(JsonWriter& out, const config::Config& config, const Evaluation& e) {
  out.key("recommended_build");
  out.begin_object();
  out.key("mm");
  out.begin_object();
  put_heights(out, build_marks(config, e, evaluate::Marks::FiveMillimetres));
  out.end_object();
  const evaluate::Heights inch = build_marks(config, e, evaluate::Marks::QuarterInch);
  struct Mark {
    std::string_view name;
    std::optional<double> at_mm;
  };
  const std::array<Mark, 4> marks{{{"counter_height", inch.counter_mm},
                                   {"oven_base_height", inch.oven_base_mm},
                                   {"oven_floor_height", inch.oven_floor_mm},
                                   {"riser", inch.riser_mm}}};
  out.key("inch");
  out.begin_object();
  for (const Mark& mark : marks) {
    const auto inches = mark.at_mm ? std::optional(*mark.at_mm / 25.4) : std::nullopt;
    put_number(out, std::string(mark.name) + "_in", inches, 2);
    put_text_or_null(out, std::string(mark.name) + "_text",
                     mark.at_mm ? plain_length(*mark.at_mm, Units::Inch, false) : "");
  }
  out.end_object();
  out.end_object();
}

std::string_view arrangement_name(config::Arrangement arrangement) {
  switch (arrangement) {
    case config::Arrangement::OneLevel:
      return "one_level";
    case config::Arrangement::Riser:
      return "riser";
    case config::Arrangement::TwoLevel:
      return "two_level";
  }
  return "";
}

std::string_view cook_name(const config::Config& config, const std::optional<std::size_t>& cook) {
  return cook && *cook < config.cooks.size() ? std::string_view(config.cooks[*cook].name)
                                             : std::string_view();
}

void put_arrangements(JsonWriter& out, const config::Config& config, const Evaluation& e) {
  out.key("arrangements");
  out.begin_list();
  for (const evaluate::ArrangementResult& a : e.arrangements) {
    out.begin_object();
    put_text(out, "arrangement", arrangement_name(a.arrangement));
    out.key("heights");
    out.begin_object();
    put_heights(out, a.heights);
    out.end_object();
    put_text_or_null(out, "worst_cook", cook_name(config, a.worst_cook));
    put_number(out, "worst_cost", a.worst_cost, 4);
    put_number(out, "household_cost", a.household_cost, 4);
    out.key("given_up");
    out.begin_object();
    put_share(out, "unseen_fraction", a.unseen_line);
    put_mm(out, "dough_off_mm", a.dough_off_mm);
    out.end_object();
    out.end_object();
  }
  out.end_list();
}

std::string_view measure_name(evaluate::Measure measure) {
  switch (measure) {
    case evaluate::Measure::Eye:
      return "eye";
    case evaluate::Measure::Elbow:
      return "elbow";
    case evaluate::Measure::Shoulder:
      return "shoulder";
  }
  return "";
}

void put_sensitivity(JsonWriter& out, const config::Config& config, const Evaluation& e) {
  out.key("sensitivity");
  out.begin_list();
  for (const evaluate::Sensitivity& s : e.sensitivity) {
    const bool oven = std::abs(s.oven_moves_mm) >= std::abs(s.dough_moves_mm);
    out.begin_object();
    put_text_or_null(out, "cook", cook_name(config, s.cook));
    put_text(out, "measure", measure_name(s.measure));
    put_mm(out, "sd_mm", s.sd_mm);
    put_mm(out, "moves_mm", oven ? s.oven_moves_mm : s.dough_moves_mm);
    put_mm(out, "oven_moves_mm", s.oven_moves_mm);
    put_mm(out, "dough_moves_mm", s.dough_moves_mm);
    out.end_object();
  }
  out.end_list();
  out.key("weight_moves");
  out.begin_list();
  for (const evaluate::WeightMove& move : e.weight_moves) {
    out.begin_object();
    put_text(out, "weight", move.weight);
    put_number(out, "factor", move.factor, 2);
    put_mm(out, "oven_moves_mm", move.oven_moves_mm);
    put_mm(out, "dough_moves_mm", move.dough_moves_mm);
    out.end_object();
  }
  out.end_list();
}

void put_trial(JsonWriter& out, const config::Config& config, const Evaluation& e) {
  out.key("trial");
  if (!e.trial) {
    out.null();
    return;
  }
  const evaluate::ColdTrial& trial = *e.trial;
  out.begin_object();
  put_text_or_null(out, "cook", cook_name(config, trial.cook));
  put_mm(out, "measured_mm", trial.measured_mm);
  put_mm(out, "predicted_mm", trial.predicted_mm);
  put_mm(out, "difference_mm",
         trial.predicted_mm ? std::optional(trial.difference_mm) : std::nullopt);
  put_flag(out, "agrees", trial.agrees);
  put_text_or_null(out, "likely_field", trial.likely_field);
  put_mm(out, "corrected_mm", trial.corrected_mm);
  put_number(out, "standard_errors",
             trial.corrected_mm ? std::optional(trial.standard_errors) : std::nullopt, 2);
  out.end_object();
}

void put_clearances(JsonWriter& out, const Evaluation& e) {
  out.key("clearances");
  out.begin_list();
  for (const clearance::Need& need : e.clearances) {
    out.begin_object();
    put_text(out, "side", clearance::side_name(need.side));
    put_mm(out, "required_mm", need.required_mm);
    put_text(out, "from", clearance::from_name(need.from));
    put_mm(out, "available_mm", need.available_mm);
    out.end_object();
  }
  out.end_list();
}

void put_existing(JsonWriter& out, const Evaluation& e) {
  out.key("existing_counter");
  if (!e.existing) {
    out.null();
    return;
  }
  out.begin_object();
  put_mm(out, "height_mm", e.existing->height_mm);
  put_mm(out, "block_mm", e.existing->block_mm);
  put_mm(out, "platform_mm", e.existing->platform_mm);
  out.end_object();
}

void put_seen(JsonWriter& out, std::string_view key, bool at_oven, const evaluate::Seen& seen) {
  if (!at_oven) {
    put_null(out, key);
    return;
  }
  out.key(key);
  out.begin_object();
  put_share(out, "visible_floor_fraction", seen.floor_share);
  put_share(out, "visible_pizza_fraction", seen.pizza_share);
  put_mm(out, "farthest_visible_mm", seen.farthest_mm);
  put_deg(out, "steepest_gaze_deg", seen.steepest_gaze_deg);
  put_deg(out, "shallowest_gaze_deg", seen.shallowest_gaze_deg);
  put_flag(out, "far_rim_seen", seen.crust_seen);
  put_flag(out, "target_seen", seen.target_seen);
  put_flag(out, "edge_on", seen.edge_on);
  out.end_object();
}

void put_stoop(JsonWriter& out, const evaluate::CookResult& cook) {
  if (!cook.at_oven || !cook.stoop) {
    put_null(out, "least_stoop");
    return;
  }
  out.key("least_stoop");
  out.begin_object();
  put_deg(out, "trunk_deg", cook.stoop->posture.trunk_deg);
  put_deg(out, "knee_deg", cook.stoop->posture.knee_deg);
  put_deg(out, "neck_deg", cook.stoop->neck_deg);
  put_mm(out, "face_to_mouth_mm", cook.stoop->face_to_mouth_mm);
  put_share(out, "visible_floor_fraction", cook.stoop->floor_share);
  out.end_object();
}

std::optional<double> error_of(const cook::Estimate& estimate) {
  if (estimate.basis == cook::Basis::Measured) return {};
  return estimate.sd_mm;
}

void put_cook(JsonWriter& out, const config::Cook& who, const evaluate::CookResult& cook) {
  const cook::Body& body = cook.body;
  out.begin_object();
  put_text(out, "name", who.name);
  put_flag(out, "at_oven", cook.at_oven);
  put_flag(out, "at_prep", cook.at_prep);
  put_mm(out, "eye_height_mm", body.eye.value_mm);
  put_mm(out, "elbow_height_mm", body.elbow.value_mm);
  put_mm(out, "shoulder_height_mm", body.shoulder.value_mm);
  out.key("estimate_sd_mm");
  out.begin_object();
  put_mm(out, "eye", error_of(body.eye));
  put_mm(out, "elbow", error_of(body.elbow));
  put_mm(out, "shoulder", error_of(body.shoulder));
  out.end_object();
  put_number(out, "taller_than_percent", cook.standing.stature_percent, 0);
  put_number(out, "eye_above_percent", cook.standing.eye_percent, 0);
  put_seen(out, "upright", cook.at_oven, cook.watching);
  put_seen(out, "working", cook.at_oven, cook.working);
  out.key("full_view");
  out.begin_object();
  const evaluate::FullView view = cook.at_oven ? cook.full_view : evaluate::FullView{};
  put_mm(out, "oven_floor_height_mm", view.oven_floor_height_mm);
  put_mm(out, "standoff_mm", view.standoff_mm);
  out.end_object();
  put_stoop(out, cook);
  if (cook.at_oven) {
    put_flag(out, "bending_hides", cook.bending_hides);
    out.key("hand_at_oven");
    out.begin_object();
    put_mm(out, "above_elbow_mm", cook.hand_above_elbow_mm);
    put_mm(out, "below_shoulder_mm", cook.hand_below_shoulder_mm);
    put_mm(out, "highest_oven_floor_mm", cook.ceiling_floor_mm);
    out.end_object();
  } else {
    put_null(out, "bending_hides");
    put_null(out, "hand_at_oven");
  }
  put_mm(out, "nearest_standoff_mm", cook.nearest_standoff_mm);
  if (cook.at_prep) {
    out.key("prep");
    out.begin_object();
    put_mm(out, "offset_mm", cook.prep_offset_mm);
    put_band(out, "band_mm", cook.prep_band);
    put_band(out, "light_work_band_mm", cook.light_band);
    put_band(out, "kitchen_rule_counter_mm", cook.kitchen_rule);
    put_text(out, "verdict", verdict_name(cook.prep_verdict));
    put_mm(out, "near_reach_mm", cook.zones.near_mm);
    put_mm(out, "far_reach_mm", cook.zones.far_mm);
    out.end_object();
  } else {
    put_null(out, "prep");
  }
  put_mm(out, "step_mm", cook.step_mm);
  put_mm(out, "table_mm", cook.table_mm);
  out.end_object();
}

void put_in_unit(JsonWriter& out, std::string_view key, rules::Unit unit,
                 const std::optional<double>& value) {
  switch (unit) {
    case rules::Unit::None:
    case rules::Unit::Length:
    case rules::Unit::Distance:
      put_mm(out, key, value);
      return;
    case rules::Unit::Angle:
      put_deg(out, key, value);
      return;
    case rules::Unit::Share:
      put_share(out, key, value);
      return;
    case rules::Unit::HeatFlux:
      put_flux(out, key, value);
      return;
    case rules::Unit::Lux:
      put_lux(out, key, value);
      return;
    case rules::Unit::Factor:
      put_factor(out, key, value);
      return;
    case rules::Unit::Mass:
      put_number(out, key, value, 1);
      return;
  }
}

void put_finding(JsonWriter& out, const config::Config& config, const Evaluation& e,
                 const Finding& finding) {
  const rules::Rule* rule = rules::find_rule(finding.rule);
  const rules::Unit unit = rule ? rule->unit : rules::Unit::None;
  out.begin_object();
  put_text(out, "id", finding_id(finding, e.findings));
  put_text(out, "rule", finding.rule);
  put_text_or_null(out, "cook", cook_name(config, finding.cook));
  put_text(out, "verdict", verdict_name(finding.verdict));
  put_in_unit(out, "measured", unit, finding.measured);
  put_in_unit(out, "limit", unit, finding.limit);
  put_in_unit(out, "margin", unit, finding.margin);
  put_text_or_null(out, "unit", rules::unit_name(unit));
  put_text_or_null(out, "where", finding.where);
  put_text(out, "sentence", sentence(finding, config, e, Units::Millimetre));
  put_text_or_null(out, "source", rule ? rule->source : "");
  put_text_or_null(out, "clause", rule ? rule->clause : "");
  put_text_or_null(out, "basis", rule ? rules::basis_name(rule->basis) : "");
  out.end_object();
}

void put_sources(JsonWriter& out, const config::Config& config, const Evaluation& e) {
  out.key("sources");
  out.begin_list();
  for (const Cited& cited : cited_sources(config, e)) {
    out.begin_object();
    put_text(out, "id", cited.source);
    put_text(out, "citation", citation(cited.source));
    put_text_or_null(out, "clause", cited.clauses);
    put_text(out, "basis", rules::basis_name(cited.basis));
    out.end_object();
  }
  out.end_list();
}

void put_cautions(JsonWriter& out, config::Fuel fuel) {
  out.key("cautions");
  out.begin_list();
  for (const rules::Caution& caution : rules::cautions()) {
    if (!applies(caution, fuel)) continue;
    out.begin_object();
    put_text(out, "id", caution.id);
    put_text(out, "title", caution.title);
    put_text(out, "sentence", caution.text);
    put_text(out, "source", caution.source);
    put_text_or_null(out, "clause", caution.clause);
    put_text(out, "basis", rules::basis_name(caution.basis));
    out.end_object();
  }
  out.end_list();
}

}  // namespace

std::string config_fingerprint(const config::Config& config) {
  constexpr std::uint64_t kOffset = 14695981039346656037ULL, kPrime = 1099511628211ULL;
  constexpr std::string_view kHex = "0123456789abcdef";
  std::uint64_t hash = kOffset;
  for (const char c : config::config_json(config)) {
    hash = (hash ^ static_cast<unsigned char>(c)) * kPrime;
  }
  std::string text;
  for (unsigned shift = 64; shift > 0; shift -= 4)
    text.push_back(kHex[(hash >> (shift - 4)) & 15U]);
  return text;
}

std::string report_json(const config::Config& config, const Evaluation& e) {
  JsonWriter out;
  out.begin_object();
  put_text(out, "format", "hearthsight-report/1");
  put_recommended(out, e);
  put_build(out, config, e);
  put_arrangements(out, config, e);
  put_sensitivity(out, config, e);
  put_share(out, "fits_adults_fraction", e.fits_adults_share);
  put_trial(out, config, e);
  out.key("engine");
  out.begin_object();
  put_text(out, "version", version());
  put_text(out, "config_fingerprint", config_fingerprint(config));
  out.end_object();
  put_clearances(out, e);
  put_surroundings(out, e);
  out.key("survey");
  if (e.survey) {
    put_survey(out, *e.survey);
  } else {
    out.null();
  }
  put_existing(out, e);
  put_used(out, config, e);
  out.key("cooks");
  out.begin_list();
  for (std::size_t i = 0; i < e.cooks.size(); ++i) put_cook(out, config.cooks[i], e.cooks[i]);
  out.end_list();
  put_heat(out, config, e);
  put_light(out, e);
  put_build_stage(out, e);
  put_packet_stage(out, config, e);
  out.key("findings");
  out.begin_list();
  for (const Finding& finding : e.findings) put_finding(out, config, e, finding);
  out.end_list();
  put_sources(out, config, e);
  put_cautions(out, config.oven.fuel);
  out.end_object();
  return out.take();
}

}  // namespace hs::report
