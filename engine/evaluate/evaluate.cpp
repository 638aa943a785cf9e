#include "engine/evaluate/evaluate.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "engine/evaluate/lighting.h"
#include "engine/evaluate/steps.h"
#include "engine/evaluate/surroundings.h"
#include "engine/evaluate/surveying.h"
#include "engine/rules/rules.h"

namespace hs::evaluate {
namespace {

double round_up_10(double mm) { return std::ceil(mm / 10 - 1e-6) * 10; }
double round_down_5(double mm) { return std::floor(mm / 5 + 1e-6) * 5; }

Heights used_heights(const config::Config& config, const Scene& scene, const Heights& recommended) {
  const config::Station& station = config.station;
  Heights used = recommended;
  if (station.counter_height_mm) used.counter_mm = station.counter_height_mm;
  if (station.oven_base_height_mm) used.oven_base_mm = station.oven_base_height_mm;
  if (station.arrangement == config::Arrangement::OneLevel) {
    if (!station.oven_base_height_mm) used.oven_base_mm = used.counter_mm;
    if (!station.counter_height_mm) used.counter_mm = used.oven_base_mm;
  }
  const bool oven = std::any_of(config.cooks.begin(), config.cooks.end(), config::works_at_oven);
  if (!oven && !station.oven_base_height_mm) used.oven_base_mm.reset();
  // A riser lifts the oven off the counter it stands on; it cannot lower it.
  if (station.arrangement == config::Arrangement::Riser && !station.oven_base_height_mm &&
      used.oven_base_mm && used.counter_mm) {
    used.oven_base_mm = std::max(*used.oven_base_mm, *used.counter_mm);
  }
  follow_heights(used, scene);
  return used;
}

// What holds the oven's height where it is.
std::string_view binding_rule(const config::Config& config, const Scene& scene, const Plan& plan) {
  if (!plan.heights.oven_base_mm) return {};
  const Ceiling ceiling = ceiling_of(config, scene);
  if (!ceiling.rule.empty() && *plan.heights.oven_base_mm > ceiling.oven_base_mm - 1.5) {
    return ceiling.rule;
  }
  // Every oven cook sees (nearly) all of the target: seeing asks no more.
  double worst_unseen = 0;
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    if (!config::works_at_oven(config.cooks[i])) continue;
    const sight::Eye eye =
        eye_of(scene.bodies[i], config.view, config.view.standoff_mm, *plan.heights.oven_floor_mm);
    worst_unseen = std::max(worst_unseen, unseen_line(scene, eye));
  }
  return worst_unseen < 0.02 ? "height.full_view" : "height.compromise";
}

Recommended recommend(const config::Config& config, const Scene& scene, const Plan& plan,
                      const Plan& marked) {
  Recommended r;
  r.heights = marked.heights;
  r.searched = plan.heights;
  r.oven_band = oven_band(config, scene, plan);
  r.dough_band = dough_band(config, scene, plan);
  r.binding = binding_rule(config, scene, plan);
  r.working_standoff_mm = config.view.working_standoff_mm;
  return r;
}

// Where the toes are, in front of the counter's edge, when every oven cook's eye is at the standoff
// or nearer.
double feet_line_mm(const config::Config& config, const Scene& scene, double standoff_mm) {
  double toes_mm = 0;
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    if (!config::works_at_oven(config.cooks[i])) continue;
    toes_mm = std::max(toes_mm, scene.bodies[i].toes_mm);
  }
  return reach::feet_line_mm(standoff_mm, config.station.oven_setback_mm, toes_mm);
}

// The household's watching distance: far enough for every oven cook to see the target, never nearer
// than the one asked about. A search made for the heights in use serves where those are the ones
// recommended.
void set_distances(const config::Config& config, const Scene& scene, Evaluation& e) {
  Recommended& r = e.recommended;
  const bool in_use = r.heights.oven_floor_mm == e.used.oven_floor_mm;
  r.standoff_mm = config.view.standoff_mm;
  double prep_depth_mm = -1;
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    const cook::Body& body = scene.bodies[i];
    const config::Cook& cook = config.cooks[i];
    if (config::works_at_oven(cook) && r.heights.oven_floor_mm) {
      const auto standoff =
          in_use ? e.cooks[i].full_view.standoff_mm
                 : nearest_standoff_showing(scene, config.view, body, *r.heights.oven_floor_mm);
      r.standoff_mm = std::max(r.standoff_mm, round_up_10(standoff.value_or(0)));
    }
    if (config::works_at_prep(cook) && r.heights.counter_mm && !young_child(cook, body)) {
      const reach::Zones zones = reach::zones_over(*r.heights.counter_mm, reach_arm(body));
      // A cook who cannot reach over this counter at all has a finding; the depth is the others'.
      if (zones.far_mm <= 0) continue;
      prep_depth_mm = prep_depth_mm < 0 ? zones.far_mm : std::min(prep_depth_mm, zones.far_mm);
    }
  }
  r.prep_depth_mm = prep_depth_mm < 0 ? config.station.prep_depth_mm : round_down_5(prep_depth_mm);
  r.feet_line_mm = feet_line_mm(config, scene, r.standoff_mm);
}

ArrangementResult arrangement_result(const config::Config& config, const Scene& scene,
                                     config::Arrangement arrangement, const Plan& plan) {
  ArrangementResult result;
  result.arrangement = arrangement;
  result.heights = plan.heights;
  result.worst_cook = plan.worst_cook;
  result.worst_cost = plan.worst_cost;
  result.household_cost = plan.household_cost;
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    const cook::Body& body = scene.bodies[i];
    const config::Cook& cook = config.cooks[i];
    if (config::works_at_oven(cook) && plan.heights.oven_floor_mm) {
      const sight::Eye eye =
          eye_of(body, config.view, config.view.standoff_mm, *plan.heights.oven_floor_mm);
      result.unseen_line = std::max(result.unseen_line, unseen_line(scene, eye));
    }
    if (config::works_at_prep(cook) && plan.heights.counter_mm && !young_child(cook, body)) {
      const Band band = prep_band_of(config, cook, body);
      const double offset_mm = body.elbow.value_mm - *plan.heights.counter_mm;
      const double off_mm = std::max(band.low_mm - offset_mm, offset_mm - band.high_mm);
      if (off_mm > result.dough_off_mm) {
        result.dough_off_mm = off_mm;
        if (off_mm > height::kHandTolerance_mm) result.dough_off_cook = i;
      }
    }
  }
  return result;
}

// What the cabinet that is there needs to bring the oven to the height in use: block and cabinet
// together are the oven counter that the page shows.
std::optional<ExistingCounter> existing_counter(const config::Config& config, const Heights& used) {
  if (!config.station.existing_counter_mm || !used.oven_base_mm) return {};
  ExistingCounter existing;
  existing.height_mm = *config.station.existing_counter_mm;
  existing.block_mm = *used.oven_base_mm - existing.height_mm;
  existing.platform_mm = std::max(0.0, -existing.block_mm);
  return existing;
}

Evaluation evaluate_with(const config::Config& config, const Scene& scene, Marks marks,
                         bool search) {
  using config::Arrangement;
  Evaluation e;
  e.marks = marks;
  e.geometry = scene.geometry;
  e.pizza = scene.pizza;
  e.mouth = heat::mouth_of(scene.geometry, config.oven.floor_temp_c);
  const Plan level = plan_heights(config, scene, Arrangement::OneLevel);
  const Plan apart = plan_heights(config, scene, Arrangement::TwoLevel);
  const auto add = [&](Arrangement arrangement, const Plan& plan) {
    const Plan marked = marked_plan(config, scene, arrangement, plan, marks);
    e.arrangements.push_back(arrangement_result(config, scene, arrangement, marked));
    if (arrangement == config.station.arrangement) {
      e.recommended = recommend(config, scene, plan, marked);
    }
  };
  add(Arrangement::OneLevel, level);
  // A riser's own plan is one of the other two: a search of the heights is not made again.
  add(Arrangement::Riser, riser_serves(apart) ? apart : level);
  add(Arrangement::TwoLevel, apart);
  e.used = used_heights(config, scene, e.recommended.heights);
  e.feet_line_mm = feet_line_mm(config, scene, config.view.standoff_mm);
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    e.cooks.push_back(cook_result(config, scene, i, e.used));
    if (e.cooks.back().at_oven) fill_heat(config, scene, e.mouth, e.cooks.back());
  }
  set_distances(config, scene, e);
  e.clearances = clearance::needs(config, e.used.oven_base_mm.value_or(0));
  e.cover_ceiling_mm = scene.cover_ceiling_mm;
  e.surroundings = surroundings_of(config, e);
  e.existing = existing_counter(config, e.used);
  e.trial = cold_trial(config, scene, e.used);
  e.light = lighting(config, e, search);
  e.findings = findings_of(config, scene, e);
  order_by_harm(e.findings);
  return e;
}

}  // namespace

void order_by_harm(std::vector<Finding>& findings) {
  struct Place {
    int rank;
    std::size_t of;
  };
  std::vector<Place> places;
  places.reserve(findings.size());
  for (const Finding& finding : findings) {
    const rules::Rule* rule = rules::find_rule(finding.rule);
    const int harm = rule ? static_cast<int>(rule->harm) : 0;
    const Place place{-100 * badness(finding.verdict) + harm, places.size()};
    // A few dozen: by insertion, which keeps the order of equals and is a tenth of the code of
    // std::stable_sort. The places move, not the findings, which are many times their size.
    std::size_t at = places.size();
    places.push_back(place);
    for (; at > 0 && places[at - 1].rank > place.rank; --at) places[at] = places[at - 1];
    places[at] = place;
  }
  std::vector<Finding> ordered;
  ordered.reserve(findings.size());
  for (const Place& place : places) ordered.push_back(findings[place.of]);
  findings = std::move(ordered);
}

Evaluation evaluate_fit(const config::Config& config, Marks marks) {
  return evaluate_with(config, scene_of(config), marks, false);
}

Evaluation evaluate(const config::Config& config, Marks marks) {
  Evaluation e = evaluate_station(config, marks);
  add_survey(config, e);
  return e;
}

void keep_survey(Evaluation& next, const Evaluation& before) {
  if (!before.survey) return;
  next.survey = before.survey;
  for (const Finding& finding : before.findings) {
    if (finding.rule.starts_with("survey.")) next.findings.push_back(finding);
  }
  order_by_harm(next.findings);
}

Evaluation evaluate_station(const config::Config& config, Marks marks) {
  const Scene scene = scene_of(config);
  Evaluation e = evaluate_with(config, scene, marks, true);
  add_sensitivity(config, scene, e);
  e.fits_adults_share = guests_share(config, scene, e.used, e.recommended.standoff_mm);
  return e;
}

}  // namespace hs::evaluate
