#include "engine/evaluate/lighting.h"

#include <algorithm>

#include "engine/height/height.h"

namespace hs::evaluate {
namespace {

constexpr double kGeneralBeam_deg =
    120;  // an even cone as wide as a plain bulb's fitting: judgement

Vec place_of(const config::LampHead& head) {
  return {head.across_mm.value_or(0), -head.ahead_mm.value_or(0), head.up_mm.value_or(0)};
}

bool too_hot(const heat::Mouth& mouth, const Vec& head) {
  return heat::irradiance_facing_kw_m2(mouth, head) > kLampHeat_kw_m2;
}

std::string_view words_for(const LampChecks& checks) {
  if (checks.in_hot_zone) return "in the hot zone above and before the mouth";
  if (checks.too_hot) return "where more than the midday sun's heat reaches it";
  if (checks.light.in_peel_path) return "in the peel's way";
  if (checks.light.hides_target) return "in the way of a cook's eye";
  if (checks.light.in_shadow) return "where the mouth's edge shades the pizza";
  if (checks.light.too_near) return "too near the pizza";
  return {};
}

void add_level(Findings& out, std::string_view rule, const std::optional<double>& lux) {
  if (!lux) {
    out.add({rule, Verdict::Unknown, {}, {}, kFoodWork_lx, {}, {}});
    return;
  }
  out.add({rule,
           *lux >= kFoodWork_lx      ? Verdict::Ok
           : *lux >= kHomeWorktop_lx ? Verdict::Warn
                                     : Verdict::Fail,
           {},
           *lux,
           kFoodWork_lx,
           *lux - kFoodWork_lx,
           {}});
}

void add_lamp(Findings& out, const config::Config& config, const Lamp& lamp) {
  if (config.light.head.given()) {
    out.add({"light.head",
             lamp.against.empty() ? Verdict::Ok : Verdict::Fail,
             {},
             {},
             {},
             {},
             lamp.against});
  }
  if (!lamp.head) {
    // Looked for everywhere, and there is none; while a finger moves nobody has looked yet.
    if (!lamp.search.done) return;
    out.add({"light.neck",
             Verdict::Fail,
             {},
             lamp.search.shortest_neck_mm,
             config.light.neck_mm,
             {},
             {}});
    return;
  }
  add_level(out, "light.pizza", lamp.light.lux);
  out.at_most("light.neck", lamp.neck_needed_mm, config.light.neck_mm, Verdict::Fail, {});
}

}  // namespace

light::Setup lamp_setup(const config::Config& config, const Evaluation& e) {
  const config::Light& lamp = config.light;
  light::Setup setup;
  setup.oven = e.geometry;
  setup.target = {e.pizza.y_mm, e.pizza.radius_mm};
  const double side = lamp.mount == config::Mount::Left ? -1 : 1;
  setup.mount = {side * lamp.mount_across_mm, -lamp.mount_ahead_mm,
                 lamp.mount_up_mm - config.oven.floor_above_base_mm};
  setup.neck_mm = lamp.neck_mm;
  setup.beam_deg = lamp.beam_deg;
  setup.candela = light::candela_of(lamp.lumens, lamp.beam_deg);
  for (const CookResult& cook : e.cooks) {
    if (!cook.at_oven) continue;
    for (const sight::Eye* eye : {&cook.watching.eye, &cook.working.eye}) {
      setup.eyes.push_back({eye->x_mm, -eye->distance_mm, eye->height_mm});
    }
  }
  setup.peel_half_mm = config.peel.blade_width_mm / 2;
  setup.peel_top_mm = height::kHandOverFloor_mm;
  return setup;
}

Lamp lamp_at(const config::Config& config, const Evaluation& e, const std::optional<Vec>& head) {
  const light::Setup setup = lamp_setup(config, e);
  Lamp lamp;
  lamp.mount = setup.mount;
  lamp.head = head;
  if (!head) return lamp;
  const auto points = light::points_of(setup.target, setup.oven.floor);
  lamp.light = light::best_throw(setup, points, *head);
  lamp.neck_needed_mm = light::neck_needed_mm(setup, *head);
  lamp.heat_kw_m2 = heat::irradiance_facing_kw_m2(e.mouth, *head);
  lamp.checks = {light::judge(setup, points, *head), heat::in_hot_zone(e.mouth, *head),
                 lamp.heat_kw_m2 > kLampHeat_kw_m2,
                 round_to(lamp.neck_needed_mm, 10) <= setup.neck_mm};
  lamp.against = words_for(lamp.checks);
  return lamp;
}

LightResult lighting(const config::Config& config, const Evaluation& e, bool search) {
  LightResult result;
  if (config.light.mount != config::Mount::None && e.used.oven_floor_mm) {
    Lamp::Search found;
    if (search) {
      const light::Best best = light::search(lamp_setup(config, e), [&](const Vec& head) {
        return heat::in_hot_zone(e.mouth, head) || too_hot(e.mouth, head);
      });
      found = {true, best.places, best.head, best.shortest_neck_mm};
    }
    const std::optional<Vec> head =
        config.light.head.given() ? std::optional(place_of(config.light.head)) : found.best;
    result.lamp = lamp_at(config, e, head);
    result.lamp->search = found;
  }
  const config::Light& light = config.light;
  if (light.general_lumens && light.general_up_mm) {
    const double candela = light::candela_of(*light.general_lumens, kGeneralBeam_deg);
    const auto at = [&](double aside_mm) {
      return light::lux_below(candela, kGeneralBeam_deg, *light.general_up_mm, aside_mm);
    };
    const double half_mm = config.station.prep_width_mm / 2;
    result.prep_lux = at(half_mm);
    result.landing_lux = at(half_mm + kLanding_mm / 2);
  }
  return result;
}

void add_light(Findings& out, const config::Config& config, const Evaluation& e) {
  if (e.light.lamp) {
    add_lamp(out, config, *e.light.lamp);
  } else if (e.used.oven_floor_mm) {
    add_level(out, "light.pizza", {});
  }
  add_level(out, "light.prep", e.light.prep_lux);
  add_level(out, "light.landing", e.light.landing_lux);
}

}  // namespace hs::evaluate
