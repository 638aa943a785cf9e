#include "engine/clearance/boxes.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace hs::clearance {
namespace {

// Drawn sizes, mm.
constexpr double kFlue_mm = 150;
constexpr double kGrillWide_mm = 700, kGrillDeep_mm = 550, kGrillHigh_mm = 350;

void add(std::vector<Zone>& out, Hot hot, const Need& need, const Box& body, bool drawn) {
  Zone zone{hot, need, {}, body, drawn};
  if (need.required_mm) zone.box = beside(body, need.side, *need.required_mm);
  out.push_back(zone);
}

}  // namespace

Box beside(const Box& body, Side side, double room_mm) {
  Box box = body;
  switch (side) {
    case Side::Left:
      box.right_mm = body.left_mm;
      box.left_mm = body.left_mm - room_mm;
      break;
    case Side::Right:
      box.left_mm = body.right_mm;
      box.right_mm = body.right_mm + room_mm;
      break;
    case Side::Back:
      box.near_mm = body.far_mm;
      box.far_mm = body.far_mm + room_mm;
      break;
    case Side::Front:
      box.far_mm = body.near_mm;
      box.near_mm = body.near_mm - room_mm;
      break;
    case Side::Above:
      box.bottom_mm = body.top_mm;
      box.top_mm = body.top_mm + room_mm;
      break;
    case Side::Below:
      box.top_mm = body.bottom_mm;
      box.bottom_mm = body.bottom_mm - room_mm;
      break;
  }
  return box;
}

std::vector<PlanSpot> around(const Box& body, double room_mm) {
  constexpr int kCorner = 16;
  const PlanSpot corners[] = {{body.right_mm, body.far_mm},
                              {body.left_mm, body.far_mm},
                              {body.left_mm, body.near_mm},
                              {body.right_mm, body.near_mm}};
  std::vector<PlanSpot> points;
  for (int c = 0; c < 4; ++c) {
    for (int i = 0; i <= kCorner; ++i) {
      const double turn = (c + static_cast<double>(i) / kCorner) * std::numbers::pi / 2;
      points.push_back(
          {corners[c].x_mm + room_mm * std::cos(turn), corners[c].y_mm + room_mm * std::sin(turn)});
    }
  }
  return points;
}

Box oven_body(const config::Config& config, double oven_base_mm) {
  const config::Oven& oven = config.oven;
  const double half_mm = oven.width_mm / 2;
  return {-half_mm, half_mm, 0, oven.depth_mm, oven_base_mm, oven_base_mm + oven.height_mm};
}

std::vector<Zone> zones(const config::Config& config, double oven_base_mm) {
  const config::Oven& oven = config.oven;
  const Box body = oven_body(config, oven_base_mm);
  const double half_mm = body.right_mm, top_mm = body.top_mm;
  std::vector<Zone> out;
  for (const Need& need : needs(config, oven_base_mm)) add(out, Hot::Oven, need, body, false);

  constexpr Side kSides[] = {Side::Left, Side::Right, Side::Back, Side::Front};
  const config::Flue& flue = config.site.flue;
  if (flue.kind && *flue.kind != config::FlueKind::None) {
    const double middle_mm = oven.depth_mm / 2;
    const Box pipe{-kFlue_mm / 2,
                   kFlue_mm / 2,
                   middle_mm - kFlue_mm / 2,
                   middle_mm + kFlue_mm / 2,
                   top_mm,
                   std::max(top_mm, flue.top_mm.value_or(top_mm))};
    for (const Side side : kSides) {
      Need need = flue_need(config);
      need.side = side;
      add(out, Hot::Flue, need, pipe, true);
    }
  }
  const config::Grill& grill = config.site.grill;
  if (grill.at && *grill.at != config::GrillAt::None && grill.gap_mm) {
    const bool right = *grill.at == config::GrillAt::Right;
    const double edge_mm = half_mm + *grill.gap_mm;
    const Box grill_body{right ? edge_mm : -edge_mm - kGrillWide_mm,
                         right ? edge_mm + kGrillWide_mm : -edge_mm,
                         0,
                         kGrillDeep_mm,
                         oven_base_mm,
                         oven_base_mm + kGrillHigh_mm};
    for (const Side side : {Side::Left, Side::Right, Side::Back}) {
      Need need;
      need.side = side;
      need.required_mm = grill.listed_side_mm;
      if (grill.listed_side_mm) need.from = From::Listed;
      add(out, Hot::Grill, need, grill_body, true);
    }
  }
  return out;
}

}  // namespace hs::clearance
