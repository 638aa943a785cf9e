#include "engine/light/lamp.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

namespace hs::light {
namespace {

constexpr Vec kUpward{0, 0, 1};

// Radii (of the pizza's) and counts of the rings of points: each point stands for a nineteenth of
// the area, from the middle out to 0.23, 0.61 and 1.
struct Ring {
  double radius;
  int count;
};
constexpr Ring kRings[] = {{0, 1}, {0.45, 6}, {0.83, 12}};

bool inside(const oven::Outline& outline, double x_mm, double z_mm) {
  return std::abs(x_mm) <= outline.half_width_at(z_mm);
}

}  // namespace

double candela_of(double lumens, double beam_deg) {
  return lumens / (2 * std::numbers::pi * (1 - std::cos(deg_to_rad(beam_deg / 2))));
}

double lux_at(const Vec& point, const Vec& normal, const Vec& head, double candela) {
  const Vec ray = head - point;
  const double up_mm = dot(normal, ray);
  if (up_mm <= 0) return 0;
  const double far_mm = length(ray);
  return candela * up_mm * 1e6 / (far_mm * far_mm * far_mm);
}

bool passes_mouth(const oven::Geometry& oven, const Vec& head, const Vec& inside_at) {
  const auto crossing = [&](double y_mm) {
    return head + (y_mm - head.y) / (inside_at.y - head.y) * (inside_at - head);
  };
  const Vec outer = crossing(0), inner = crossing(oven.throat_mm);
  if (!inside(oven.outer, outer.x, outer.z) || !inside(oven.inner, inner.x, inner.z)) return false;
  // As for eyes: the brow stops what is above its edge where it passes under it.
  if (oven.brow_mm <= 0 || -head.y <= oven.brow_mm) return true;
  return crossing(-oven.brow_mm).z <= oven.brow_edge_mm;
}

std::vector<Vec> points_of(const Target& target, const oven::Floor& floor) {
  std::vector<Vec> points;
  points.reserve(kPoints);
  for (const Ring& ring : kRings) {
    for (int i = 0; i < ring.count; ++i) {
      const double turn = 2 * std::numbers::pi * i / ring.count;
      const Vec point{target.radius_mm * ring.radius * std::sin(turn),
                      target.y_mm + target.radius_mm * ring.radius * std::cos(turn), 0};
      if (std::abs(point.x) <= floor.half_width_at(point.y)) points.push_back(point);
    }
  }
  return points;
}

Throw best_throw(const Setup& setup, std::span<const Vec> points, const Vec& head) {
  std::array<double, kPoints> lux{};
  std::array<Vec, kPoints> ray{};
  std::array<bool, kPoints> lit{};
  const std::size_t count = std::min(points.size(), kPoints);
  std::size_t lit_count = 0;
  for (std::size_t i = 0; i < count; ++i) {
    lit[i] = passes_mouth(setup.oven, head, points[i]);
    lit_count += lit[i] ? 1U : 0U;
    const Vec out = points[i] - head;
    ray[i] = (1 / length(out)) * out;
    if (lit[i]) lux[i] = lux_at(points[i], kUpward, head, setup.candela);
  }
  Throw best;
  if (count == 0) return best;
  const double least_cos = std::cos(deg_to_rad(setup.beam_deg / 2));
  bool first = true;
  for (std::size_t aim = 0; aim < count; ++aim) {
    if (!lit[aim]) continue;
    Throw here{.aim = points[aim], .lux = 0, .least_lux = lux[aim], .lit_share = 0};
    for (std::size_t i = 0; i < count; ++i) {
      const bool shone_on = lit[i] && dot(ray[aim], ray[i]) >= least_cos;
      here.lux += shone_on ? lux[i] : 0;
      here.lit_share += shone_on ? 1 : 0;
      here.least_lux = std::min(here.least_lux, shone_on ? lux[i] : 0);
    }
    here.lux /= static_cast<double>(count);
    here.lit_share /= static_cast<double>(count);
    if (first || round_to(here.lux, 1) > round_to(best.lux, 1)) best = here;
    first = false;
    // No aim does better than one that puts every lit point inside the beam.
    if (here.lit_share * static_cast<double>(count) > static_cast<double>(lit_count) - 0.5) break;
  }
  return best;
}

double most_lux(const Setup& setup, std::span<const Vec> points, const Vec& head) {
  double sum = 0;
  for (const Vec& point : points) sum += lux_at(point, kUpward, head, setup.candela);
  return points.empty() ? 0 : sum / static_cast<double>(points.size());
}

bool hides_target(const Setup& setup, const Vec& eye, const Vec& head) {
  if (eye.z <= 0) return false;
  const Vec ray = head - eye;
  const double near_mm = length(ray);
  if (near_mm <= kHead_mm / 2) return true;
  // Down to the floor past the head, and past its upper edge: the head's shadow reaches as far from
  // where its middle falls as between these two, and nowhere farther.
  const double down = std::asin(std::clamp((eye.z - head.z) / near_mm, -1.0, 1.0));
  const double half = std::asin(kHead_mm / 2 / near_mm);
  const double least_down = down - half;
  if (down + half <= 0) return false;
  // Where the head's upper edge is level with the eye the shadow is endless.
  const double level_mm = std::hypot(ray.x, ray.y);
  if (least_down <= 0.02 || level_mm <= 0) {
    const double across_mm = std::abs(ray.x * (setup.target.y_mm - eye.y) + ray.y * eye.x);
    const double beside_mm = level_mm > 0 ? across_mm / level_mm : 0;
    const double far_mm = std::hypot(eye.x, setup.target.y_mm - eye.y) + setup.target.radius_mm;
    return beside_mm < setup.target.radius_mm + far_mm * kHead_mm / 2 / std::max(1.0, level_mm);
  }
  const double middle_mm = eye.z / std::tan(down);
  const double reach_mm =
      std::max(eye.z / std::tan(least_down) - middle_mm, kHead_mm / 2 * eye.z / (eye.z - head.z));
  const double x_mm = eye.x + ray.x / level_mm * middle_mm;
  const double y_mm = eye.y + ray.y / level_mm * middle_mm;
  return std::hypot(x_mm, y_mm - setup.target.y_mm) < setup.target.radius_mm + reach_mm;
}

bool in_peel_path(const Setup& setup, const Vec& head) {
  const double play_mm = kPeelPlay_mm + kHead_mm / 2;
  return std::abs(head.x) < setup.peel_half_mm + play_mm && head.z < setup.peel_top_mm + play_mm;
}

double neck_needed_mm(const Setup& setup, const Vec& head) {
  return kNeckPerSpan * length(head - setup.mount);
}

bool in_shadow(const Setup& setup, std::span<const Vec> points, const Vec& head) {
  const auto allowed = static_cast<std::size_t>(
      std::floor((1 - kLitShare) * static_cast<double>(points.size()) + 1e-9));
  std::size_t dark = 0;
  for (const Vec& point : points) {
    if (!passes_mouth(setup.oven, head, point) && ++dark > allowed) return true;
  }
  return points.empty();
}

bool too_near(std::span<const Vec> points, const Vec& head) {
  return std::any_of(points.begin(), points.end(), [&](const Vec& point) {
    return length(head - point) < law_holds_from_mm(kHead_mm);
  });
}

namespace {

bool hides_from_anyone(const Setup& setup, const Vec& head) {
  return std::any_of(setup.eyes.begin(), setup.eyes.end(),
                     [&](const Vec& eye) { return hides_target(setup, eye, head); });
}

}  // namespace

Against against(const Setup& setup, std::span<const Vec> points, const Vec& head) {
  if (in_peel_path(setup, head)) return Against::Peel;
  if (hides_from_anyone(setup, head)) return Against::Eye;
  if (in_shadow(setup, points, head)) return Against::Shadow;
  return too_near(points, head) ? Against::TooNear : Against::Nothing;
}

Judged judge(const Setup& setup, std::span<const Vec> points, const Vec& head) {
  return {in_peel_path(setup, head), hides_from_anyone(setup, head), in_shadow(setup, points, head),
          too_near(points, head)};
}

double lux_below(double candela, double beam_deg, double height_mm, double aside_mm) {
  if (!(height_mm > 0)) return 0;
  if (std::atan2(aside_mm, height_mm) > deg_to_rad(beam_deg / 2)) return 0;
  return lux_at({aside_mm, 0, 0}, kUpward, {0, 0, height_mm}, candela);
}

}  // namespace hs::light
