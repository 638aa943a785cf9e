#include "engine/report/station_layout.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/base/quantity.h"
#include "engine/frame/places.h"

namespace hs::report {
namespace {

// Drawn sizes, mm.
constexpr double kThick_mm = 100;  // of a wall or what else was measured to
constexpr double kWallHeight_mm = 2000;
constexpr double kRoofOver_mm = 300;  // a cover past the station on every side
constexpr double kRoofThick_mm = 80;
constexpr double kPost_mm = 100;
constexpr double kPlace_mm = 650;  // between people side by side
constexpr double kSeatedPlace_mm = 800;
constexpr double kTableWide_mm = 600, kTableDeep_mm = 450;
constexpr double kTableGap_mm = 200;
constexpr double kStepWide_mm = 460, kStepDeep_mm = 350;  // a child's standing place: 18 in wide
constexpr double kBeforeEdge_mm = 25;                     // belly to the counter's edge
constexpr int kCurve = 24;

using clearance::Side;

std::vector<Spot> mouth_outline(const oven::Outline& mouth, double floor_mm) {
  const double w = mouth.half_width_mm, spring = mouth.spring_mm;
  const double rise = mouth.height_mm - spring;
  std::vector<Spot> points{{-w, floor_mm}, {w, floor_mm}};
  if (rise <= 0) {
    points.push_back({w, floor_mm + mouth.height_mm});
    points.push_back({-w, floor_mm + mouth.height_mm});
    return points;
  }
  for (int i = spring > 0 ? 0 : 1; i <= kCurve - (spring > 0 ? 0 : 1); ++i) {
    const double turn = std::numbers::pi * i / kCurve;
    points.push_back({w * std::cos(turn), floor_mm + spring + rise * std::sin(turn)});
  }
  return points;
}

std::vector<Spot> floor_outline(const oven::Floor& floor) {
  const double w = floor.half_width_mm;
  if (floor.round) {
    return ellipse({0, (floor.near_mm + floor.far_mm) / 2}, w, (floor.far_mm - floor.near_mm) / 2);
  }
  return {{-w, floor.near_mm}, {w, floor.near_mm}, {w, floor.far_mm}, {-w, floor.far_mm}};
}

std::vector<Spot> spots(const std::vector<PlanSpot>& plan) {
  std::vector<Spot> out;
  out.reserve(plan.size());
  for (const PlanSpot& at : plan) out.push_back({at.x_mm, at.y_mm});
  return out;
}

void place_oven(StationLayout& out, const config::Config& config, const evaluate::Evaluation& e) {
  const config::Oven& oven = config.oven;
  const oven::Geometry& g = e.geometry;
  const double base = *e.used.oven_base_mm, half = oven.width_mm / 2;
  out.oven_body = clearance::oven_body(config, base);
  out.floor_mm = base + oven.floor_above_base_mm;
  out.outer_mouth = mouth_outline(g.outer, out.floor_mm);
  out.inner_mouth = mouth_outline(g.inner, out.floor_mm);
  out.throat_mm = g.throat_mm;
  if (g.brow_mm > 0) {
    const double edge = out.floor_mm + g.brow_edge_mm;
    out.brow = Block{-half, half, -g.brow_mm, 0, edge, std::min(edge + 60, out.oven_body->top_mm)};
  }
  out.oven_floor = floor_outline(g.floor);
  out.child_free_mm = clearance::kChildFree_mm;
  out.child_free = spots(e.surroundings.child_free);
  out.feet_line_y_mm = out.front_mm - e.feet_line_mm;
  for (const clearance::Zone& zone : e.surroundings.hot) {
    const Block box =
        zone.box.value_or(clearance::beside(zone.body, zone.need.side, kUnknownRoom_mm));
    out.clear.push_back({zone.hot, zone.need, box});
    if (zone.hot == clearance::Hot::Flue) out.flue = zone.body;
    if (zone.hot == clearance::Hot::Grill) out.grill = zone.body;
  }
}

// What was measured to: beside and behind the oven's body, and behind the cook.
void place_things(StationLayout& out, const config::Config& config) {
  const config::Station& s = config.station;
  const Block& extent = out.extent;
  if (s.aisle_mm) {
    const double face = out.front_mm - *s.aisle_mm;
    out.things.push_back(
        {Side::Front,
         {extent.left_mm, extent.right_mm, face - kThick_mm, face, 0, kWallHeight_mm / 2}});
  }
  if (!out.oven_body) return;
  const Block& body = *out.oven_body;
  if (s.back_gap_mm) {
    const double face = body.far_mm + *s.back_gap_mm;
    out.things.push_back(
        {Side::Back, {extent.left_mm, extent.right_mm, face, face + kThick_mm, 0, kWallHeight_mm}});
  }
  // Beside the body only: a counter may run on under it.
  if (s.left_gap_mm) {
    const double face = body.left_mm - *s.left_gap_mm;
    out.things.push_back(
        {Side::Left,
         {face - kThick_mm, face, body.near_mm, body.far_mm, body.bottom_mm, body.top_mm}});
  }
  if (s.right_gap_mm) {
    const double face = body.right_mm + *s.right_gap_mm;
    out.things.push_back(
        {Side::Right,
         {face, face + kThick_mm, body.near_mm, body.far_mm, body.bottom_mm, body.top_mm}});
  }
}

// Where nobody has said how wide, only the side of a cook's hand has one, as wide as is advised.
void place_landings(StationLayout& out, const config::Config& config,
                    const evaluate::Evaluation& e) {
  const Block& body = *out.oven_body;
  const auto asked = [&](bool right) {
    return std::any_of(e.findings.begin(), e.findings.end(), [&](const Finding& finding) {
      if (finding.rule != "reach.landing" || !finding.cook) return false;
      return (config.cooks[*finding.cook].handed == config::Hand::Right) == right;
    });
  };
  for (const RoomZone& zone : out.room) {
    if (zone.rule != "reach.landing") continue;
    const bool right = zone.outline[0].x_mm > 0;
    if (!zone.available_mm && !asked(right)) continue;
    const double wide = zone.available_mm.value_or(zone.required_mm.value_or(0));
    const bool on_dough = out.dough_counter && right == out.dough_right;
    const Block& under = on_dough ? *out.dough_counter : *out.oven_stand;
    const double edge = right ? body.right_mm : body.left_mm - wide;
    (right ? out.landing_right : out.landing_left) =
        Landing{{edge, edge + wide, out.front_mm, under.far_mm, under.top_mm, under.top_mm},
                zone.available_mm.has_value()};
  }
}

void grow(Block& extent, const std::optional<Block>& by) {
  if (!by) return;
  extent = {std::min(extent.left_mm, by->left_mm),     std::max(extent.right_mm, by->right_mm),
            std::min(extent.near_mm, by->near_mm),     std::max(extent.far_mm, by->far_mm),
            std::min(extent.bottom_mm, by->bottom_mm), std::max(extent.top_mm, by->top_mm)};
}

Block extent_of(const StationLayout& out) {
  Block extent{0, 0, out.front_mm, 0, 0, 0};
  for (const std::optional<Block>* part :
       {&out.oven_stand, &out.riser, &out.dough_counter, &out.oven_body, &out.brow}) {
    grow(extent, *part);
  }
  for (const CookPlace& place : out.cooks) {
    grow(extent, place.table_box);
    grow(extent, place.step_box);
  }
  return extent;
}

// x of the n-th place along the dough counter, counted from the oven's end.
double along(const StationLayout& out, double from_oven_mm) {
  const Block& counter = *out.dough_counter;
  if (!out.oven_stand || out.dough_right) return counter.left_mm + from_oven_mm;
  return counter.right_mm - from_oven_mm;
}

// A young child's places: on a step at the far end of the dough counter where that is long enough,
// and at a low table past everything, both outside the child-free zone.
void place_child(StationLayout& out, const evaluate::CookResult& cook, std::size_t child,
                 CookPlace& place) {
  const double way = !out.oven_stand || out.dough_right ? 1 : -1;
  const double body_mm = cook.body.belly_mm + kBeforeEdge_mm;
  if (cook.step_mm && out.dough_counter) {
    const double x = along(out, out.dough_counter->width_mm() - kStepWide_mm / 2);
    place.prep = Stand{x, out.front_mm - body_mm, *cook.step_mm, 0};
    const double far = out.front_mm;
    place.step_box = Block{x - kStepWide_mm / 2, x + kStepWide_mm / 2, far - kStepDeep_mm, far, 0,
                           *cook.step_mm};
  }
  if (cook.table_mm) {
    const Block built = extent_of(out);
    double edge = way > 0 ? built.right_mm : -built.left_mm;
    if (child == 0 && out.oven_body) {
      edge = std::max(edge, out.oven_body->right_mm + out.child_free_mm - kTableGap_mm);
    }
    const double x = way * (edge + kTableGap_mm + kTableWide_mm / 2);
    place.table = Stand{x, out.front_mm - body_mm, 0, 0};
    place.table_box = Block{
        x - kTableWide_mm / 2, x + kTableWide_mm / 2, out.front_mm, out.front_mm + kTableDeep_mm, 0,
        *cook.table_mm};
    place.home = *place.table;
  } else if (place.prep) {
    place.home = *place.prep;
  }
}

void place_cooks(StationLayout& out, const config::Config& config, const evaluate::Evaluation& e) {
  out.cooks.resize(e.cooks.size());
  double taken_mm = 0;  // of the dough counter, from the oven's end
  std::size_t waiting = 0, children = 0;
  for (std::size_t i = 0; i < e.cooks.size(); ++i) {
    const evaluate::CookResult& cook = e.cooks[i];
    CookPlace& place = out.cooks[i];
    if (cook.at_oven) {
      place.watching = Stand{config.view.lateral_mm, -config.view.standoff_mm, 0, 0};
      place.working = Stand{config.view.lateral_mm, -config.view.working_standoff_mm, 0, 0};
    }
    if (cook.young_child && (cook.at_prep || cook.table_mm)) {
      place_child(out, cook, children++, place);
      continue;
    }
    if (cook.at_prep && out.dough_counter) {
      const double wide = cook.body.seated ? kSeatedPlace_mm : kPlace_mm;
      place.prep = Stand{along(out, taken_mm + wide / 2),
                         out.front_mm - cook.body.belly_mm - kBeforeEdge_mm, 0, 0};
      place.home = *place.prep;
      taken_mm += wide;
      continue;
    }
    // Works at the oven only: waits on the other side, a step behind, looking at the mouth.
    const double edge = out.oven_body ? out.oven_body->right_mm : 0;
    const double way = out.dough_right ? -1 : 1;
    place.home.x_mm = way * (edge + kPlace_mm * (0.6 + static_cast<double>(waiting++)));
    place.home.y_mm = -config.view.standoff_mm - 200;
    place.home.facing_deg = std::round(rad_to_deg(std::atan2(-place.home.x_mm, -place.home.y_mm)));
  }
}

void place_cover(StationLayout& out, const config::Config& config) {
  if (!config.site.cover_height_mm) return;
  Cover cover;
  cover.underside_mm = *config.site.cover_height_mm;
  const Block& e = out.extent;
  cover.roof = {e.left_mm - kRoofOver_mm, e.right_mm + kRoofOver_mm,
                e.near_mm - kRoofOver_mm, e.far_mm + kRoofOver_mm,
                cover.underside_mm,       cover.underside_mm + kRoofThick_mm};
  if (config.site.cover.out_mm) {
    cover.front_given = true;
    cover.roof.near_mm = out.front_mm - *config.site.cover.out_mm;
    cover.roof.far_mm = std::max(cover.roof.far_mm, cover.roof.near_mm + 2 * kPost_mm);
  }
  for (const double x : {cover.roof.left_mm, cover.roof.right_mm - kPost_mm}) {
    for (const double y : {cover.roof.near_mm, cover.roof.far_mm - kPost_mm}) {
      cover.posts.push_back({x, x + kPost_mm, y, y + kPost_mm, 0, cover.underside_mm});
    }
  }
  out.cover = std::move(cover);
}

}  // namespace

StationLayout station_layout(const config::Config& config, const evaluate::Evaluation& e) {
  StationLayout out;
  const frame::Places places = frame::places(config, {e.used.counter_mm, e.used.oven_base_mm});
  out.front_mm = places.front_mm;
  out.dough_right = places.dough_right;
  out.masonry_base = places.masonry_base;
  out.oven_stand = places.oven_stand;
  out.riser = places.riser;
  out.dough_counter = places.dough_counter;
  for (const reach::Zone& zone : e.surroundings.room) {
    out.room.push_back({zone.rule, spots(zone.outline), zone.required_mm, zone.available_mm});
  }
  if (e.used.oven_base_mm) {
    place_oven(out, config, e);
    place_landings(out, config, e);
  }
  place_cooks(out, config, e);
  out.extent = extent_of(out);
  place_things(out, config);
  place_cover(out, config);
  return out;
}

const Stand& stand_of(const StationLayout& layout, std::size_t index, std::size_t person) {
  const CookPlace& place = layout.cooks[index];
  return index == person && place.watching ? *place.watching : place.home;
}

}  // namespace hs::report
