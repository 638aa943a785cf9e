#include "engine/evaluate/room_findings.h"

#include <algorithm>

namespace hs::evaluate {
namespace {

using clearance::Side;

// US kitchen planning guidelines, second hand: 42 and 48 in work aisle, 36 x 24 in
// preparation area.
constexpr double kAisleOne_mm = 1067, kAisleSeveral_mm = 1219;
constexpr double kPrepWidth_mm = 914, kPrepDepth_mm = 610;
constexpr double kPeelRoomPerDepth = 1.5;  // one expert of the trade
constexpr double kPeelPlay_mm = 20;        // blade to mouth, both sides together: judgement
constexpr double kKneeClear_mm = 685;      // ADA 2010 306.3.1

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
  out.at_least("reach.landing",
               right ? config.station.landing_right_mm : config.station.landing_left_mm,
               kLanding_mm, Verdict::Warn, i, right ? "on the right" : "on the left");
}

void add_seated(Findings& out, const config::Config& config, const Evaluation& e, std::size_t i) {
  const config::Station& station = config.station;
  const auto high_mm = reach::forward_reach_high_mm(station.prep_depth_mm);
  if (high_mm && e.used.counter_mm) {
    out.at_most("reach.seated_reach", *e.used.counter_mm, *high_mm, Verdict::Fail, i);
  } else if (!high_mm) {
    out.add({"reach.seated_reach", Verdict::Fail, i, station.prep_depth_mm, {}, {}, {}});
  }
  // No knee fits above the counter that it is under.
  std::optional<double> knee_mm = station.knee_height_mm;
  if (knee_mm && e.used.counter_mm) knee_mm = std::min(*knee_mm, *e.used.counter_mm);
  out.at_least("reach.knee_room", knee_mm, kKneeClear_mm, Verdict::Fail, i);
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
    } else {
      out.at_least(rule, need.available_mm, *need.required_mm, Verdict::Fail, {},
                   place_words(need.side));
    }
  }
  add_standing(out, config);
}

void add_room(Findings& out, const config::Config& config, const Evaluation& e) {
  const config::Station& station = config.station;
  const config::Oven& oven = config.oven;
  const bool several = config.cooks.size() > 1;
  out.at_least("reach.aisle", station.aisle_mm, several ? kAisleSeveral_mm : kAisleOne_mm,
               Verdict::Warn, {});
  out.at_least("reach.peel_room", station.aisle_mm, kPeelRoomPerDepth * oven.depth_mm,
               Verdict::Warn, {});
  // Drawn clear of the mouth, the handle's end is a peel's length in front of it.
  out.at_least("reach.peel_drawback", station.aisle_mm,
               std::max(0.0, config.peel.length_mm - station.oven_setback_mm), Verdict::Warn, {});
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
    out.at_least("reach.prep_area", station.prep_width_mm, kPrepWidth_mm, Verdict::Warn, {},
                 "along the front");
    out.at_least("reach.prep_area", station.prep_depth_mm, kPrepDepth_mm, Verdict::Warn, {},
                 "front to back");
  }
}

}  // namespace hs::evaluate
