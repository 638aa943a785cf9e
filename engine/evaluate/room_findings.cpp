#include "engine/evaluate/room_findings.h"

#include <algorithm>

#include "engine/frame/stack.h"

namespace hs::evaluate {
namespace {

using clearance::Side;

constexpr double kPeelPlay_mm = 20;  // blade to mouth, both sides together: judgement

std::string_view clearance_rule(Side side) {
  switch (side) {
    case Side::Left:
    case Side::Right:
      return "clearance.side";
    case Side::Back:
      return "clearance.back";
    case Side::Above:
      return "clearance.above";
    case Side::Front:
      return "clearance.front";
    case Side::Below:
      return "clearance.below";
  }
  return "clearance.side";
}

std::string_view place_words(Side side) {
  switch (side) {
    case Side::Left:
      return "on the left";
    case Side::Right:
      return "on the right";
    case Side::Back:
      return "at the back";
    case Side::Above:
      return "above";
    case Side::Front:
      return "in front";
    case Side::Below:
      return "below";
  }
  return "";
}

void add_standing(Findings& out, const config::Config& config) {
  const clearance::Standing standing = clearance::standing(config);
  constexpr std::string_view kRule = "clearance.on_combustible";
  if (standing.top_combustible == false || standing.allowed_on_combustible == true) {
    out.add({kRule, Verdict::Ok, {}, {}, {}, {}, {}});
  } else if (standing.top_combustible && standing.allowed_on_combustible) {
    out.add({kRule, Verdict::Fail, {}, {}, {}, {}, {}});
  } else {
    out.add({kRule, Verdict::Unknown, {}, {}, {}, {}, {}});
  }
}

void add_landing(Findings& out, const config::Config& config, std::size_t i) {
  const bool right = config.cooks[i].handed == config::Hand::Right;
  const config::Station& station = config.station;
  const auto& beside_mm = right ? station.landing_right_mm : station.landing_left_mm;
  const bool short_of = !beside_mm || *beside_mm < kLanding_mm - kTolerance;
  if (short_of && station.landing_across == true && station.aisle_mm &&
      *station.aisle_mm <= reach::kLandingAcross_mm + kTolerance) {
    out.add({"reach.landing", Verdict::Ok, i, {}, kLanding_mm, {}, "across the aisle"});
    return;
  }
  out.at_least("reach.landing", beside_mm, kLanding_mm, Verdict::Warn, i,
               right ? "on the right" : "on the left");
}

void add_seated(Findings& out, const config::Config& config, const Evaluation& e, std::size_t i) {
  const config::Station& station = config.station;
  const auto high_mm = reach::forward_reach_high_mm(station.prep_depth_mm);
  if (high_mm && e.used.counter_mm) {
    out.at_most("reach.seated_reach", *e.used.counter_mm, *high_mm, Verdict::Fail, i);
  } else if (!high_mm) {
    out.add({"reach.seated_reach", Verdict::Fail, i, station.prep_depth_mm, {}, {}, {}});
  }
  // No knee fits above the lowest of the counter's top. That there is room under it nobody knows
  // before it is said.
  std::optional<double> knee_mm = station.knee_height_mm;
  std::string_view under;
  if (e.used.counter_mm) {
    const double edge_mm = *e.used.counter_mm - frame::edge_mm(config.build);
    const bool less = edge_mm < knee_mm.value_or(height::kKneeClear_mm) - kTolerance;
    if (less) knee_mm = edge_mm;
    if (less) under = "the metal's turned-down edge";
  }
  out.at_least("reach.knee_room", knee_mm, height::kKneeClear_mm, Verdict::Fail, i, under);
  if (e.used.counter_mm) {
    const double at_mm = *e.used.counter_mm;
    const auto [low_mm, top_mm] = height::kSeatedCounter;
    const bool inside = at_mm >= low_mm && at_mm <= top_mm;
    const double limit_mm = at_mm > top_mm ? top_mm : low_mm;
    out.add({"reach.seated_counter",
             inside ? Verdict::Ok : Verdict::Fail,
             i,
             at_mm,
             inside ? top_mm : limit_mm,
             std::min(at_mm - low_mm, top_mm - at_mm),
             {}});
  }
}

}  // namespace

void add_clearances(Findings& out, const config::Config& config, const Evaluation& e) {
  for (const clearance::Need& need : e.clearances) {
    const std::string_view rule = clearance_rule(need.side);
    if (!need.required_mm) {
      out.add({rule, Verdict::Unknown, {}, need.available_mm, {}, {}, place_words(need.side)});
    } else if (need.side == Side::Above && clearance::covered(config) == false) {
      out.add({rule, Verdict::Ok, {}, {}, need.required_mm, {}, place_words(need.side)});
    } else {
      // What does not burn may stand nearer than what does; the maker may still want the air.
      out.at_least(rule, need.available_mm, *need.required_mm,
                   need.burns == false ? Verdict::Warn : Verdict::Fail, {}, place_words(need.side));
    }
  }
  add_standing(out, config);
}

void add_room(Findings& out, const config::Config& config, const Evaluation& e) {
  const config::Station& station = config.station;
  const config::Oven& oven = config.oven;
  for (const reach::Zone& zone : e.surroundings.room) {
    if (zone.rule != "reach.aisle" && zone.rule != "reach.peel_room") continue;
    out.at_least(zone.rule, zone.available_mm, *zone.required_mm, Verdict::Warn, {});
  }
  // Drawn clear of the mouth, the handle's end is a peel's length in front of it.
  out.at_least("reach.peel_drawback", station.aisle_mm,
               reach::drawback_mm(config.peel.length_mm, station.oven_setback_mm), Verdict::Warn,
               {});
  out.at_most("reach.peel_fits", config.peel.blade_width_mm, oven.mouth_width_mm - kPeelPlay_mm,
              Verdict::Fail, {});
  out.at_most("reach.pizza_fits", config.view.pizza_diameter_mm,
              std::min({oven.floor_width_mm, oven.floor_depth_mm, oven.mouth_width_mm}),
              Verdict::Fail, {});
  bool prep = false;
  for (std::size_t i = 0; i < e.cooks.size(); ++i) {
    const CookResult& cook = e.cooks[i];
    if (cook.at_oven) {
      out.at_least("reach.nearest_standoff", config.view.working_standoff_mm,
                   cook.nearest_standoff_mm, Verdict::Warn, i);
      add_landing(out, config, i);
    }
    if (cook.at_prep && !cook.young_child) {
      prep = true;
      out.at_most("reach.prep_depth", station.prep_depth_mm, cook.zones.far_mm, Verdict::Warn, i);
      if (config.cooks[i].seated) add_seated(out, config, e, i);
    }
  }
  if (prep) {
    out.at_least("reach.prep_area", station.prep_width_mm, reach::kPrepWidth_mm, Verdict::Warn, {},
                 "along the front");
    out.at_least("reach.prep_area", station.prep_depth_mm, reach::kPrepDepth_mm, Verdict::Warn, {},
                 "front to back");
  }
}

}  // namespace hs::evaluate
