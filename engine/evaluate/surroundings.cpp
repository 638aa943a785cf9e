#include "engine/evaluate/surroundings.h"

#include <algorithm>

#include "engine/weather/rain.h"

namespace hs::evaluate {
namespace {

using clearance::Side;
using config::CoverKind;
using config::Fuel;

constexpr double kRailing_mm = 914;  // 3 ft, NFPA and USFA tips, second hand
constexpr double kHouse_mm = 3048;   // 10 ft, IFC 308.1.4, second hand
constexpr double kFaceLow_mm = 100;  // top of a usual toe space: custom of the trade, from memory

bool gas(Fuel fuel) { return fuel == Fuel::Gas || fuel == Fuel::GasAndWood; }
bool solid(Fuel fuel) { return fuel != Fuel::Gas && fuel != Fuel::Electric; }

// The front that rain is judged on: the dough counter, or the oven's where there is no other.
weather::Front front_of(const config::Config& config, const Heights& used) {
  const config::Station& station = config.station;
  weather::Front front;
  front.counter_mm = used.counter_mm.value_or(used.oven_base_mm.value_or(0));
  front.depth_mm = station.prep_depth_mm;
  front.overhang_mm = station.overhang_mm;
  front.face_low_mm = std::min(kFaceLow_mm, front.counter_mm);
  return front;
}

// absent: no cover, or not known how it reaches.
std::optional<weather::Edge> edge_of(const config::Config& config) {
  const config::Site& site = config.site;
  // Rain comes through slats.
  if (site.cover.kind == CoverKind::None || site.cover.kind == CoverKind::Slats) return {};
  if (!site.cover_height_mm || !site.cover.out_mm) return {};
  return weather::Edge{*site.cover_height_mm, *site.cover.out_mm};
}

// How the cover reaches does not matter where rain falls on everything anyway.
bool shelter_known(const config::Config& config) {
  const auto& kind = config.site.cover.kind;
  const bool no_shelter = kind == CoverKind::None || kind == CoverKind::Slats;
  return no_shelter || edge_of(config).has_value();
}

constexpr double kRain_mm_h[] = {1, 10, 50, 100};

std::vector<Storm> storms_in(double wind_m_s) {
  std::vector<Storm> out;
  for (const double rain_mm_h : kRain_mm_h) {
    Storm storm;
    storm.rain_mm_h = rain_mm_h;
    storm.drop_air_mm = weather::median_drop_best_mm(rain_mm_h);
    storm.drop_landing_mm = weather::median_drop_laws_parsons_mm(rain_mm_h);
    storm.slant_deg = weather::slant_deg(wind_m_s, storm.drop_landing_mm);
    storm.onto_front_mm_h = weather::driving_rain_mm_h(wind_m_s, rain_mm_h, 0);
    out.push_back(storm);
  }
  return out;
}

void add_verdict(Findings& out, std::string_view rule, Verdict verdict) {
  out.add({rule, verdict, {}, {}, {}, {}, {}});
}

void add_cover(Findings& out, const config::Config& config) {
  const config::Site& site = config.site;
  const std::optional<bool> covered = clearance::covered(config);
  const auto allowed = [](const std::optional<bool>& said) {
    if (!said) return Verdict::Warn;
    return *said ? Verdict::Ok : Verdict::Fail;
  };
  if (!covered) {
    add_verdict(out, "clearance.cover", Verdict::Unknown);
    return;
  }
  add_verdict(out, "clearance.cover",
              *covered ? allowed(clearance::under_cover(config).yes) : Verdict::Ok);
  if (*covered && site.grill.at && *site.grill.at != config::GrillAt::None) {
    add_verdict(out, "clearance.grill_cover", allowed(site.grill.under_cover));
  }
  Verdict sides = Verdict::Ok;
  if (*covered && !site.cover.walls) sides = Verdict::Unknown;
  if (*covered && site.cover.walls == config::Walls::Three) sides = Verdict::Warn;
  if (*covered && site.cover.walls == config::Walls::Four) sides = Verdict::Fail;
  add_verdict(out, "clearance.open_sides", sides);
}

void add_post(Findings& out, const config::Config& config, const Evaluation& e) {
  const config::Cover& cover = config.site.cover;
  if (clearance::covered(config) != true) return;
  std::optional<double> asked_mm;
  bool all_known = true;
  for (const clearance::Need& need : e.clearances) {
    if (need.side != Side::Left && need.side != Side::Back) continue;
    if (!need.required_mm) all_known = false;
    if (need.required_mm) asked_mm = std::max(asked_mm.value_or(0), *need.required_mm);
  }
  if (cover.post_combustible == false) {
    out.add({"clearance.post", Verdict::Ok, {}, cover.post_gap_mm, asked_mm, {}, {}});
  } else if (!asked_mm || !cover.post_gap_mm) {
    out.add({"clearance.post", Verdict::Unknown, {}, cover.post_gap_mm, asked_mm, {}, {}});
  } else {
    // One figure may already say that it is too near; that it is far enough takes both, and
    // whether it burns does not matter then.
    const bool near = *cover.post_gap_mm < *asked_mm - kTolerance;
    Verdict verdict = all_known ? Verdict::Ok : Verdict::Unknown;
    if (near) verdict = cover.post_combustible ? Verdict::Fail : Verdict::Unknown;
    out.add({"clearance.post",
             verdict,
             {},
             *cover.post_gap_mm,
             *asked_mm,
             *cover.post_gap_mm - *asked_mm,
             {}});
  }
}

void add_house(Findings& out, const config::Config& config) {
  const config::Site& site = config.site;
  Verdict verdict = Verdict::Unknown;
  if (site.dwelling == config::Dwelling::OneOrTwoFamily) verdict = Verdict::Warn;
  if (site.dwelling == config::Dwelling::Other) verdict = Verdict::Fail;
  out.at_least("clearance.house", site.house_gap_mm, kHouse_mm, verdict, {});
}

// Room that somebody else's figure asks for; unknown until that and the gap are.
void add_need(Findings& out, std::string_view rule, const clearance::Need& need) {
  if (need.required_mm) {
    out.at_least(rule, need.available_mm, *need.required_mm, Verdict::Fail, {});
  } else {
    out.add({rule, Verdict::Unknown, {}, need.available_mm, {}, {}, {}});
  }
}

void add_flue(Findings& out, const config::Config& config) {
  const config::Flue& flue = config.site.flue;
  if (!flue.kind) {
    // A gas oven on a counter has none as a rule.
    if (solid(config.oven.fuel)) add_verdict(out, "clearance.flue_top", Verdict::Unknown);
    return;
  }
  if (*flue.kind == config::FlueKind::None) return;
  add_need(out, "clearance.flue", clearance::flue_need(config));

  const bool through = *flue.kind == config::FlueKind::ThroughRoof;
  // Under a cover that it does not pass it can only end below the underside, which is too low.
  const bool under = !through && clearance::covered(config) == true;
  std::optional<double> limit_mm;
  if (under) {
    if (config.site.cover_height_mm) {
      limit_mm = *config.site.cover_height_mm + clearance::kOverRoof_mm;
    }
  } else if (flue.near_top_mm && (!through || flue.roof_mm)) {
    limit_mm = clearance::chimney_top_mm(through ? flue.roof_mm : std::nullopt,
                                         clearance::Obstacle{*flue.near_top_mm, 0});
  }
  if (limit_mm && flue.top_mm) {
    out.at_least("clearance.flue_top", *flue.top_mm, *limit_mm, Verdict::Fail, {});
  } else {
    out.add({"clearance.flue_top", Verdict::Unknown, {}, flue.top_mm, limit_mm, {}, {}});
  }
}

// Embers fall where something burns; a gas flame drops none.
void add_apron(Findings& out, const config::Config& config) {
  if (!solid(config.oven.fuel)) return;
  const config::Station& station = config.station;
  const config::Oven& oven = config.oven;
  const auto& outer = oven.outer_mouth;
  const double limit_mm =
      clearance::hearth_extension(outer.width_mm.value_or(oven.mouth_width_mm),
                                  outer.height_mm.value_or(oven.mouth_height_mm))
          .front_mm;
  const auto& ground = config.site.ground;
  const double strip_mm = station.oven_setback_mm;
  constexpr std::string_view kRule = "clearance.apron";
  if (station.top_combustible == true) {
    out.add({kRule, Verdict::Fail, {}, 0.0, limit_mm, -limit_mm, {}});
  } else if (station.top_combustible == false && strip_mm >= limit_mm - kTolerance) {
    out.add({kRule, Verdict::Ok, {}, strip_mm, limit_mm, strip_mm - limit_mm, {}});
  } else if (!station.top_combustible || !ground) {
    out.add({kRule, Verdict::Unknown, {}, {}, limit_mm, {}, {}});
  } else if (*ground == config::Ground::Deck) {
    out.add({kRule, Verdict::Warn, {}, strip_mm, limit_mm, strip_mm - limit_mm, {}});
  } else {
    out.add({kRule, Verdict::Ok, {}, {}, limit_mm, {}, {}});
  }
}

void add_things_to_hand(Findings& out, const config::Config& config) {
  const config::Site& site = config.site;
  Verdict extinguisher = Verdict::Unknown;
  if (site.extinguisher) {
    switch (*site.extinguisher) {
      case config::Extinguisher::InReach:
        extinguisher = Verdict::Ok;
        break;
      case config::Extinguisher::Away:
        extinguisher = Verdict::Warn;
        break;
      case config::Extinguisher::Behind:
      case config::Extinguisher::None:
        extinguisher = Verdict::Fail;
        break;
    }
  }
  add_verdict(out, "clearance.extinguisher", extinguisher);
  if (!gas(config.oven.fuel)) return;
  Verdict cylinder = Verdict::Unknown;
  if (site.cylinder == config::Cylinder::None || site.cylinder == config::Cylinder::OpenSide) {
    cylinder = Verdict::Ok;
  } else if (site.cylinder == config::Cylinder::WithBurner) {
    cylinder = Verdict::Fail;
  }
  add_verdict(out, "clearance.cylinder", cylinder);
}

void add_rain(Findings& out, const Evaluation& e) {
  const auto& rain = e.surroundings.rain;
  if (!rain) {
    out.add({"weather.rain_counter", Verdict::Unknown, {}, {}, 0.0, {}, {}});
    out.add({"weather.rain_face", Verdict::Unknown, {}, {}, {}, {}, {}});
    return;
  }
  out.at_most("weather.rain_counter", rain->top_mm, 0, Verdict::Warn, {});
  out.at_least("weather.rain_face", rain->face_dry_mm, rain->face_mm, Verdict::Warn, {});
}

void add_drip(Findings& out, const config::Config& config) {
  const config::Station& station = config.station;
  const double overhang_mm = station.overhang_mm;
  constexpr double kLimit_mm = weather::kDripOverhang_mm;
  if (!station.drip_groove && overhang_mm >= kLimit_mm - kTolerance) {
    out.add({"weather.drip", Verdict::Unknown, {}, overhang_mm, kLimit_mm, {}, {}});
    return;
  }
  const bool good = station.drip_groove == true && overhang_mm >= kLimit_mm - kTolerance;
  out.add({"weather.drip",
           good ? Verdict::Ok : Verdict::Warn,
           {},
           overhang_mm,
           kLimit_mm,
           overhang_mm - kLimit_mm,
           {}});
}

void add_drainage(Findings& out, const config::Config& config) {
  const config::Site& site = config.site;
  // Water falls through a deck.
  if (site.ground == config::Ground::Deck) return;
  constexpr std::string_view kRule = "weather.drainage";
  std::optional<double> limit;
  if (site.ground) {
    limit = *site.ground == config::Ground::Bare ? weather::kBareFall : weather::kHardFall;
  }
  if (!site.fall_mm) {
    out.add({kRule, Verdict::Unknown, {}, {}, limit, {}, {}});
    return;
  }
  const double fall = weather::fall_share(*site.fall_mm);
  if (fall < 0) {
    out.add({kRule, Verdict::Fail, {}, fall, limit, fall, {}});
  } else if (!limit) {
    out.add({kRule, Verdict::Unknown, {}, fall, {}, {}, {}});
  } else {
    // To what a board and a tape show over 10 ft: 0.1 mm.
    const bool good = *site.fall_mm >= *limit * weather::kFallRun_mm - kTolerance;
    out.add({kRule, good ? Verdict::Ok : Verdict::Warn, {}, fall, *limit, fall - *limit, {}});
  }
}

void add_wind(Findings& out, const config::Config& config) {
  const auto& from = config.site.wind_from;
  Verdict mouth = Verdict::Unknown, smoke = Verdict::Unknown;
  if (from) {
    mouth = weather::at_mouth(*from) == weather::AtMouth::Into ? Verdict::Warn : Verdict::Ok;
    smoke = weather::smoke_to_cook(*from) ? Verdict::Warn : Verdict::Ok;
  }
  add_verdict(out, "weather.wind_mouth", mouth);
  add_verdict(out, "weather.smoke", smoke);
}

}  // namespace

Surroundings surroundings_of(const config::Config& config, const Evaluation& e) {
  Surroundings out;
  const config::Station& given = config.station;
  const config::Site& site = config.site;
  if (e.used.oven_base_mm) {
    out.hot = clearance::zones(config, *e.used.oven_base_mm);
    out.child_free = clearance::around(clearance::oven_body(config, *e.used.oven_base_mm),
                                       clearance::kChildFree_mm);
  }

  reach::Station station;
  station.setback_mm = given.oven_setback_mm;
  station.oven_width_mm = config.oven.width_mm;
  station.oven_depth_mm = config.oven.depth_mm;
  station.aisle_mm = given.aisle_mm;
  station.landing_left_mm = given.landing_left_mm;
  station.landing_right_mm = given.landing_right_mm;
  station.opens_mm = given.opens_mm;
  station.opens_across_mm = given.opens_across_mm;
  station.blade_mm = config.peel.blade_width_mm;
  station.peel_mm = config.peel.length_mm;
  station.cooks = static_cast<int>(config.cooks.size());
  station.seated = std::any_of(config.cooks.begin(), config.cooks.end(),
                               [](const config::Cook& cook) { return cook.seated; });
  const bool at_oven = std::any_of(config.cooks.begin(), config.cooks.end(), config::works_at_oven);
  std::optional<reach::PeelHold> hold;
  if (at_oven) {
    hold = reach::peel_hold(config.view.lateral_mm, config.view.working_standoff_mm,
                            config.peel.length_mm);
  }
  out.room = reach::zones(station, hold);

  const weather::Front front = front_of(config, e.used);
  const auto edge = edge_of(config);
  if (site.wind_m_s && shelter_known(config)) {
    out.rain = weather::wet_front(front, edge, *site.wind_m_s, weather::kUsualDrop_mm);
  }
  if (site.wind_m_s) out.storms = storms_in(*site.wind_m_s);
  if (edge) {
    out.dry_up_to_m_s = weather::dry_up_to_m_s(edge->out_mm, edge->height_mm - front.counter_mm,
                                               weather::kUsualDrop_mm);
  }
  const bool cylinder = site.cylinder && *site.cylinder != config::Cylinder::None;
  if (gas(config.oven.fuel) && cylinder && site.cylinder_kg) {
    out.grill_vents = clearance::grill_vents(*site.cylinder_kg);
    out.fire_feature_vents = clearance::fire_feature_vents(*site.cylinder_kg);
  }
  return out;
}

void add_surroundings(Findings& out, const config::Config& config, const Evaluation& e) {
  add_cover(out, config);
  add_post(out, config, e);
  out.at_least("clearance.railing", config.site.railing_gap_mm, kRailing_mm, Verdict::Fail, {});
  if (config.oven.fuel != Fuel::Electric) add_house(out, config);
  if (config.site.grill.at && *config.site.grill.at != config::GrillAt::None) {
    add_need(out, "clearance.grill", clearance::grill_need(config));
  }
  add_flue(out, config);
  add_apron(out, config);
  add_things_to_hand(out, config);
  for (const reach::Zone& zone : e.surroundings.room) {
    if (!zone.rule.starts_with("room.")) continue;
    const bool chair = zone.rule == "room.wheelchair_turn";
    out.at_least(zone.rule, zone.available_mm, *zone.required_mm,
                 chair ? Verdict::Fail : Verdict::Warn, {});
  }
}

void add_weather(Findings& out, const config::Config& config, const Evaluation& e) {
  add_rain(out, e);
  add_drip(out, config);
  add_drainage(out, config);
  add_wind(out, config);
}

}  // namespace hs::evaluate
