#include "engine/report/oven_cut.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace hs::report {
namespace {

// Drawn, not measured: how thick walls look, where the dome is highest, how high a flue is drawn.
constexpr double kCrown = 0.46;  // share of the depth
constexpr int kCurve = 14;

bool masonry(config::OvenKind kind) {
  return kind == config::OvenKind::MasonryDome28 || kind == config::OvenKind::MasonryDome36 ||
         kind == config::OvenKind::MasonryBarrel;
}

bool boxed(config::OvenKind kind) {
  return kind == config::OvenKind::SteelCabinet || kind == config::OvenKind::MasonryBarrel ||
         kind == config::OvenKind::Other;
}

// From (near, low_near) over the crown to (far, low_far), front to back.
void add_dome(std::vector<Spot>& points, double near, double far, double low_near, double low_far,
              double crown, double floor) {
  const double middle = near + kCrown * (far - near);
  for (int i = 0; i <= kCurve; ++i) {
    const double t = static_cast<double>(i) / kCurve;
    const double rise = std::sin(t * std::numbers::pi / 2);
    points.push_back({middle - (middle - near) * std::cos(t * std::numbers::pi / 2),
                      floor + low_near + (crown - low_near) * rise});
  }
  for (int i = 1; i <= kCurve; ++i) {
    const double t = static_cast<double>(i) / kCurve;
    const double fall = std::cos(t * std::numbers::pi / 2);
    points.push_back({middle + (far - middle) * std::sin(t * std::numbers::pi / 2),
                      floor + low_far + (crown - low_far) * fall});
  }
}

// `points` with what is on the wrong side of the line from `a` to `b` (its right) cut away.
std::vector<Spot> left_of(std::span<const Spot> points, Spot a, Spot b) {
  std::vector<Spot> kept;
  if (points.empty()) return kept;
  const auto side = [&](Spot p) {
    return (b.x_mm - a.x_mm) * (p.y_mm - a.y_mm) - (b.y_mm - a.y_mm) * (p.x_mm - a.x_mm);
  };
  Spot before = points.back();
  double side_before = side(before);
  for (const Spot& p : points) {
    const double side_here = side(p);
    if ((side_before > 0) != (side_here > 0)) {
      const double part = side_before / (side_before - side_here);
      kept.push_back({before.x_mm + (p.x_mm - before.x_mm) * part,
                      before.y_mm + (p.y_mm - before.y_mm) * part});
    }
    if (side_here > 0) kept.push_back(p);
    before = p;
    side_before = side_here;
  }
  return kept;
}

}  // namespace

OvenCut oven_cut(const config::Oven& oven, const oven::Geometry& g, double base_mm) {
  OvenCut cut;
  cut.floor_mm = base_mm + oven.floor_above_base_mm;
  cut.floor_near_mm = g.floor.near_mm;
  cut.floor_far_mm = g.floor.far_mm;
  cut.top_mm = base_mm + oven.height_mm;
  const double floor = cut.floor_mm;
  const double depth = std::max(oven.depth_mm, g.floor.far_mm);
  const double above = cut.top_mm - floor;  // of the body over the oven's floor

  // The hollow: its crown leaves a wall over it, and is never under the mouth.
  const double wall = std::clamp(0.14 * above, 15.0, 160.0);
  const double crown = std::max({above - wall, g.inner.height_mm, g.outer.height_mm});
  const double back_mm = std::min(g.floor.far_mm, depth);
  cut.hollow.push_back({0, floor});
  cut.hollow.push_back({0, floor + g.outer.height_mm});
  // A tunnel of one outline, or the outer opening in front of the inner one.
  if (g.throat_mm > 0 && g.outer.height_mm > g.inner.height_mm) {
    cut.hollow.push_back({0.55 * g.throat_mm, floor + g.outer.height_mm});
    cut.hollow.push_back({0.55 * g.throat_mm, floor + g.inner.height_mm});
  }
  if (g.throat_mm > 0) cut.hollow.push_back({g.throat_mm, floor + g.inner.height_mm});
  const double low_near = std::min(crown, g.inner.height_mm + 0.25 * (crown - g.inner.height_mm));
  add_dome(cut.hollow, g.throat_mm, back_mm, low_near, 0.30 * crown, crown, floor);
  cut.hollow.push_back({back_mm, floor});

  // The shell around it, underside first.
  const bool solid = masonry(oven.kind) || oven.kind == config::OvenKind::SteelCabinet ||
                     oven.floor_above_base_mm < 50;
  const double stone = std::min(oven.floor_above_base_mm,
                                solid ? oven.floor_above_base_mm : 0.45 * oven.floor_above_base_mm);
  const double under = floor - stone;
  cut.shell = {{0, under}};
  if (boxed(oven.kind)) {
    const double round = std::min(0.12 * above, 60.0);
    cut.shell.push_back({0, cut.top_mm - round});
    cut.shell.push_back({0.3 * round, cut.top_mm - 0.3 * round});
    cut.shell.push_back({round, cut.top_mm});
    cut.shell.push_back({depth - round, cut.top_mm});
    cut.shell.push_back({depth - 0.3 * round, cut.top_mm - 0.3 * round});
    cut.shell.push_back({depth, cut.top_mm - round});
  } else {
    const double front =
        std::max(g.outer.height_mm + std::min(wall, above - g.outer.height_mm), 0.62 * above);
    add_dome(cut.shell, 0, depth, std::min(front, above), 0.42 * above, above, floor);
  }
  cut.shell.push_back({depth, under});

  if (!solid) {
    const double foot = std::min(0.10 * depth, 70.0);
    const double places[] = {0.06 * depth, depth - 0.06 * depth - foot};
    for (int i = 0; i < 2; ++i) {
      const double x = places[i];
      cut.legs[i] = {
          {x, under}, {x + foot, under}, {x + 0.8 * foot, base_mm}, {x + 0.2 * foot, base_mm}};
    }
  }
  if (g.brow_mm > 0) {
    const double edge = floor + g.brow_edge_mm;
    const double top = std::min(cut.top_mm, edge + std::max(30.0, 0.5 * g.brow_mm));
    cut.brow = {{-g.brow_mm, edge}, {0, edge}, {0, top}, {-g.brow_mm, edge + 0.3 * (top - edge)}};
  }
  if (solid && oven.kind != config::OvenKind::Other && oven.floor_above_base_mm >= 50) {
    const double width = std::clamp(0.16 * depth, 90.0, 200.0);
    const double x = masonry(oven.kind) ? 0.30 * g.throat_mm : 0.62 * depth;
    const double foot = masonry(oven.kind) ? floor + 0.62 * above : cut.top_mm - 10;
    cut.flue = {{x, foot}, {x + width, foot}, {x + width, cut.top_mm + 260}, {x, cut.top_mm + 260}};
    cut.top_mm += 260;
  }
  return cut;
}

Spot limiting_edge(const OvenCut& cut, const oven::Geometry& g, Spot eye, Spot landing) {
  std::vector<Spot> edges{{0, cut.floor_mm + g.outer.height_mm},
                          {g.throat_mm, cut.floor_mm + g.inner.height_mm}};
  if (g.brow_mm > 0) edges.push_back({-g.brow_mm, cut.floor_mm + g.brow_edge_mm});
  Spot nearest = edges[0];
  double least_mm = 1e9;
  for (const Spot& edge : edges) {
    const double part = (edge.x_mm - eye.x_mm) / (landing.x_mm - eye.x_mm);
    const double gap_mm = edge.y_mm - (eye.y_mm + (landing.y_mm - eye.y_mm) * part);
    if (gap_mm < least_mm) {
      least_mm = gap_mm;
      nearest = edge;
    }
  }
  return nearest;
}

std::vector<Spot> unseen_hollow(const OvenCut& cut, Spot edge, Spot landing) {
  // Left of the way from the landing to the edge is below the ray for a ray that falls into the
  // oven, so the way is taken from the edge to the landing.
  const std::vector<Spot> above = left_of(cut.hollow, edge, landing);
  return left_of(above, {edge.x_mm, landing.y_mm + 1e4}, {edge.x_mm, landing.y_mm});
}

}  // namespace hs::report
