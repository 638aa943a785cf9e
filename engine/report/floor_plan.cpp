// The oven's floor from above: what of it, and of the pizza, an eye sees.

#include <algorithm>
#include <array>
#include <cmath>
#include <vector>

#include "engine/report/section.h"
#include "engine/sight/sight.h"

namespace hs::report {
namespace {

// A convex shape cut by another convex one (both anticlockwise).
std::vector<Spot> overlap(std::vector<Spot> shape, const std::vector<Spot>& by) {
  for (std::size_t i = 0; i < by.size() && !shape.empty(); ++i) {
    const Spot a = by[i];
    const Spot b = by[(i + 1) % by.size()];
    const auto side = [&](const Spot& p) {
      return (b.x_mm - a.x_mm) * (p.y_mm - a.y_mm) - (b.y_mm - a.y_mm) * (p.x_mm - a.x_mm);
    };
    std::vector<Spot> kept;
    Spot before = shape.back();
    for (const Spot& p : shape) {
      const double here = side(p);
      const double was = side(before);
      if ((here >= 0) != (was >= 0)) {
        const double part = was / (was - here);
        kept.push_back({before.x_mm + (p.x_mm - before.x_mm) * part,
                        before.y_mm + (p.y_mm - before.y_mm) * part});
      }
      if (here >= 0) kept.push_back(p);
      before = p;
    }
    shape = std::move(kept);
  }
  return shape;
}

}  // namespace

Drawing floor_plan(const config::Config&, const evaluate::Evaluation& evaluation,
                   std::size_t person) {
  Drawing d;
  if (evaluation.cooks.empty() || !evaluation.used.oven_base_mm) return d;
  const evaluate::CookResult& cook =
      evaluation.cooks[std::min(person, evaluation.cooks.size() - 1)];
  if (!cook.at_oven) return d;
  const oven::Geometry& g = evaluation.geometry;
  const oven::Floor& floor = g.floor;
  const double middle = (floor.near_mm + floor.far_mm) / 2;
  const double half_depth = (floor.far_mm - floor.near_mm) / 2;

  std::vector<Spot> stone;
  if (floor.round) {
    stone = ellipse({0, middle}, floor.half_width_mm, half_depth);
  } else {
    stone = {{-floor.half_width_mm, floor.near_mm},
             {floor.half_width_mm, floor.near_mm},
             {floor.half_width_mm, floor.far_mm},
             {-floor.half_width_mm, floor.far_mm}};
  }
  d.polygon(Role::OvenInside, stone);
  std::vector<Spot> seen;
  for (const sight::Point& p : sight::seen_outline(g, cook.watching.eye)) {
    seen.push_back({p.x_mm, p.y_mm});
  }
  d.hatch(Role::Hidden, stone);
  // What the eye reaches covers the hatch of what it does not.
  if (seen.size() >= 3) d.polygon(Role::Seen, seen);

  const double radius = evaluation.pizza.radius_mm;
  const std::vector<Spot> pizza = ellipse({0, evaluation.pizza.y_mm}, radius, radius);
  d.polygon(Role::OvenInside, pizza);
  d.hatch(Role::Hidden, pizza);
  const std::vector<Spot> part = seen.size() >= 3 ? overlap(pizza, seen) : std::vector<Spot>{};
  if (part.size() >= 3) d.polygon(Role::Pizza, part);
  d.outline(Role::Pizza, pizza, Weight::Normal);
  d.outline(Role::OvenBody, stone, Weight::Normal);
  // The mouth: its clear width at the floor.
  d.line(Role::OvenBody, {-floor.half_width_mm, floor.near_mm},
         {-g.inner.half_width_at(0), floor.near_mm}, Weight::Heavy);
  d.line(Role::OvenBody, {g.inner.half_width_at(0), floor.near_mm},
         {floor.half_width_mm, floor.near_mm}, Weight::Heavy);
  return d;
}

}  // namespace hs::report
