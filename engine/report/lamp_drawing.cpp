#include "engine/report/lamp_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>
#include <vector>

#include "engine/evaluate/lighting.h"
#include "engine/report/oven_cut.h"
#include "engine/report/sheet_parts.h"

namespace hs::report {
namespace {

// Drawn sizes, mm: margins, a counter's thickness, dots, the neck's foot.
constexpr double kMargin_mm = 60, kTop_mm = 40, kUnder_mm = 160;
constexpr double kEyeDot_mm = 18, kFoot_mm = 36;

std::vector<Spot> rectangle(double left, double bottom, double right, double top) {
  return {{left, bottom}, {right, bottom}, {right, top}, {left, top}};
}

struct Pen {
  const config::Config& config;
  const evaluate::Evaluation& e;
  const evaluate::LampMap& map;
  const LampView& view;
  Box box;
  double floor_mm = 0;
  Drawing d{};

  Spot spot(const Vec& at) const { return {at.y, floor_mm + at.z}; }
  void name(Spot at, std::string_view words, Align align = Align::Centre) {
    if (view.names) d.text(Role::Label, at, words, align);
  }
};

void draw_oven(Pen& p) {
  const double base = *p.e.used.oven_base_mm;
  p.d.polygon(Role::Counter, rectangle(-p.config.station.oven_setback_mm, base - kTop_mm,
                                       std::max(p.config.oven.depth_mm, p.box.right_mm), base));
  const OvenCut cut = oven_cut(p.config.oven, p.e.geometry, base);
  if (!cut.flue.empty()) p.d.polygon(Role::OvenBody, cut.flue);
  for (const std::vector<Spot>& leg : cut.legs) {
    if (!leg.empty()) p.d.polygon(Role::OvenBody, leg);
  }
  p.d.polygon(Role::OvenBody, cut.shell);
  if (!cut.brow.empty()) p.d.polygon(Role::OvenBody, cut.brow);
  p.d.polygon(Role::OvenInside, cut.hollow);
}

// The fixed zone that admits no lamp, and the peel's way: both only in their own width.
void draw_forbidden(Pen& p, const light::Setup& setup) {
  const heat::Mouth& mouth = p.e.mouth;
  const double across = std::abs(p.map.across_mm), text = p.view.text_mm;
  if (across < mouth.half_width_mm + heat::kHotZoneBeside_mm) {
    // It has no top; its name stands above what is drawn of it.
    const double top = p.box.top_mm - (p.view.names ? 1.4 * text : 0);
    const std::vector<Spot> zone =
        rectangle(-heat::kHotZoneReach_mm, p.floor_mm + mouth.height_mm / 2, 0, top);
    p.d.hatch(Role::HeatLimit, zone);
    p.d.outline(Role::HeatLimit, zone, Weight::Normal, true);
    p.name({-heat::kHotZoneReach_mm / 2, p.box.top_mm - 0.7 * text}, "hot: no lamp");
  }
  const double play = light::kPeelPlay_mm + light::kHead_mm / 2;
  if (across < setup.peel_half_mm + play) {
    const std::vector<Spot> way =
        rectangle(p.box.left_mm, p.floor_mm, 0, p.floor_mm + setup.peel_top_mm + play);
    p.d.hatch(Role::Peel, way);
    p.d.line(Role::Peel, way[3], way[2], Weight::Normal, true);
    p.name({p.box.left_mm + 0.4 * text, p.floor_mm - 0.8 * text}, "peel's way", Align::Left);
  }
}

// Every good place is hatched; where good and bad meet there is a line.
void draw_good(Pen& p) {
  const evaluate::LampMap& map = p.map;
  const auto good = [&](int column, int row) {
    return column >= 0 && row >= 0 && column < map.columns && row < map.rows &&
           map.at(column, row) == evaluate::LampPlace::Good;
  };
  // The corner of a cell that is nearest to mouth and floor.
  const auto corner = [&](int column, int row) {
    return Spot{-(column + 0.5) * map.step_mm, p.floor_mm + (row + 0.5) * map.step_mm};
  };
  for (int row = 0; row <= map.rows; ++row) {
    int from = -1;
    for (int column = 0; column <= map.columns; ++column) {
      if (good(column, row) && from < 0) from = column;
      if (from >= 0 && !good(column, row)) {
        const Spot a = corner(from, row), b = corner(column, row + 1);
        p.d.hatch(Role::GoodBand, rectangle(b.x_mm, a.y_mm, a.x_mm, b.y_mm));
        from = -1;
      }
      if (good(column, row) != good(column - 1, row)) {
        p.d.line(Role::GoodBand, corner(column, row), corner(column, row + 1), Weight::Normal);
      }
      if (good(column, row) != good(column, row - 1)) {
        p.d.line(Role::GoodBand, corner(column, row), corner(column + 1, row), Weight::Normal);
      }
    }
  }
}

// As far as the neck goes in this plane, bent as necks are.
void draw_reach(Pen& p, const light::Setup& setup) {
  const double span = setup.neck_mm / light::kNeckPerSpan;
  const double aside = p.map.across_mm - setup.mount.x;
  if (std::abs(aside) >= span) return;
  const double radius = std::sqrt(span * span - aside * aside);
  const Spot middle = p.spot(setup.mount);
  // Only in front of the mouth.
  const double cosine = -middle.x_mm / radius;
  if (cosine <= -1) return;
  const double from = cosine >= 1 ? 0 : std::acos(cosine) * 180 / std::numbers::pi;
  const std::vector<Spot> reach = arc(middle, radius, from, 360 - from);
  p.d.polyline(Role::Dimension, reach, Weight::Normal, true);
}

void draw_eyes(Pen& p) {
  const sight::Disc& pizza = p.e.pizza;
  for (std::size_t i = 0; i < p.e.cooks.size(); ++i) {
    const evaluate::CookResult& cook = p.e.cooks[i];
    if (!cook.at_oven) continue;
    for (const sight::Eye* eye : {&cook.watching.eye, &cook.working.eye}) {
      const Spot at{-eye->distance_mm, p.floor_mm + eye->height_mm};
      const bool working = eye == &cook.working.eye;
      for (const double edge : {-pizza.radius_mm, pizza.radius_mm}) {
        p.d.line(Role::Sightline, at, {pizza.y_mm + edge, p.floor_mm}, Weight::Thin, working);
      }
      p.d.dot(Role::Eye, at, working ? 0.7 * kEyeDot_mm : kEyeDot_mm);
    }
    const sight::Eye& eye = cook.watching.eye;
    const Spot beside{-eye.distance_mm - 1.5 * kEyeDot_mm, p.floor_mm + eye.height_mm};
    // Only where its name has room.
    const std::string& name = p.config.cooks[i].name;
    const double room = beside.x_mm - p.box.left_mm;
    if (text_width_mm(name, p.view.text_mm) < room) p.name(beside, name, Align::Right);
  }
}

void draw_light(Pen& p, const Vec& head) {
  const Spot from = p.spot(head);
  const std::vector<evaluate::LampRay> rays = evaluate::lamp_rays(p.config, p.e);
  for (std::size_t i = 0; i + 1 < rays.size(); ++i) {
    if (!rays[i].lit || !rays[i + 1].lit) continue;
    p.d.polygon(Role::Seen, std::array{from, p.spot(rays[i].to), p.spot(rays[i + 1].to)});
  }
  for (const evaluate::LampRay& ray : rays) {
    if (ray.lit) continue;
    // Light stops at the mouth's plane, where the edge is.
    const Spot to = p.spot(ray.to);
    const double part = from.x_mm < 0 ? from.x_mm / (from.x_mm - to.x_mm) : 0;
    p.d.line(Role::Hidden, from,
             {from.x_mm + part * (to.x_mm - from.x_mm), from.y_mm + part * (to.y_mm - from.y_mm)},
             Weight::Normal, true);
  }
}

void draw_pizza(Pen& p) {
  const sight::Disc& pizza = p.e.pizza;
  const double high = std::max(20.0, p.config.view.crust_mm);
  p.d.polygon(Role::Pizza, rectangle(pizza.y_mm - pizza.radius_mm, p.floor_mm,
                                     pizza.y_mm + pizza.radius_mm, p.floor_mm + high));
  p.d.line(Role::OvenFloor, {0, p.floor_mm}, {p.e.geometry.floor.far_mm, p.floor_mm});
}

// From its foot up and over, as a bent neck stands.
void draw_lamp(Pen& p, const evaluate::Lamp& lamp) {
  const Spot foot = p.spot(lamp.mount);
  p.d.polygon(Role::Label, rectangle(foot.x_mm - kFoot_mm / 2, foot.y_mm - kFoot_mm / 2,
                                     foot.x_mm + kFoot_mm / 2, foot.y_mm + kFoot_mm / 2));
  if (!lamp.head) return;
  const Spot head = p.spot(*lamp.head);
  const Spot over{foot.x_mm, std::max(foot.y_mm, head.y_mm) +
                                 0.25 * std::hypot(head.x_mm - foot.x_mm, head.y_mm - foot.y_mm)};
  std::vector<Spot> neck;
  constexpr int kSteps = 16;
  for (int i = 0; i <= kSteps; ++i) {
    const double t = static_cast<double>(i) / kSteps, s = 1 - t;
    neck.push_back({s * s * foot.x_mm + 2 * s * t * over.x_mm + t * t * head.x_mm,
                    s * s * foot.y_mm + 2 * s * t * over.y_mm + t * t * head.y_mm});
  }
  p.d.polyline(Role::Label, neck, Weight::Heavy);
  const Spot aim = p.spot(lamp.light.aim);
  if (lamp.light.lit_share > 0) {
    p.d.line(Role::Label, head, aim, Weight::Thin, true);
    p.d.dot(Role::Label, aim, 10);
  }
}

}  // namespace

Box lamp_frame(const config::Config& config, const evaluate::Evaluation& e) {
  if (!e.used.oven_floor_mm || !e.used.oven_base_mm) return {};
  const double floor = *e.used.oven_floor_mm;
  Box box;
  box.left_mm = -light::kDeep * light::kGrid_mm - kMargin_mm;
  box.right_mm = std::min(e.geometry.floor.far_mm + kMargin_mm, config.oven.depth_mm + kMargin_mm);
  box.bottom_mm = std::min(floor, *e.used.oven_base_mm) - kUnder_mm;
  box.top_mm = floor + light::kUp * light::kGrid_mm + kMargin_mm;
  return box;
}

Drawing lamp_drawing(const config::Config& config, const evaluate::Evaluation& e,
                     const evaluate::LampMap& map, const LampView& view) {
  if (!e.used.oven_floor_mm || !e.used.oven_base_mm) return {};
  Pen p{config, e, map, view, lamp_frame(config, e), *e.used.oven_floor_mm};
  const light::Setup setup = evaluate::lamp_setup(config, e);
  const auto& lamp = e.light.lamp;
  draw_oven(p);
  if (lamp && lamp->head) draw_light(p, *lamp->head);
  draw_pizza(p);
  draw_forbidden(p, setup);
  if (lamp) draw_good(p);
  draw_eyes(p);
  if (lamp) {
    draw_reach(p, setup);
    draw_lamp(p, *lamp);
  }
  return std::move(p.d);
}

}  // namespace hs::report
