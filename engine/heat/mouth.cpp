#include "engine/heat/mouth.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "engine/heat/tolerance.h"

namespace hs::heat {
namespace {

constexpr double kZero_k = 273.15;
// Chords of a half ellipse. With the area kept, 12 of them are within 0.02 % of 4000 at any place
// farther from the mouth than a fifth of its height (tests/heat).
constexpr int kChords = 32;

// Chords inside an ellipse would lose area. The corners between the two ends are moved out by one
// factor k, so that (n - 2) k^2 sin + 2 k sin is what the n sectors hold: the ends keep the width.
double chord_factor(int chords) {
  const double step = std::numbers::pi / chords;
  const double inner = (chords - 2) * std::sin(step), ends = 2 * std::sin(step);
  return (-ends + std::sqrt(ends * ends + 4 * inner * std::numbers::pi)) / (2 * inner);
}

std::vector<Vec> polygon_of(const oven::Outline& outline) {
  const double half_mm = outline.half_width_mm, rise_mm = outline.height_mm - outline.spring_mm;
  std::vector<Vec> points;
  if (!(rise_mm > 0)) {
    return {{-half_mm, 0, 0},
            {half_mm, 0, 0},
            {half_mm, 0, outline.height_mm},
            {-half_mm, 0, outline.height_mm}};
  }
  points.reserve(kChords + 3);
  if (outline.spring_mm > 0) points.push_back({-half_mm, 0, 0});
  if (outline.spring_mm > 0) points.push_back({half_mm, 0, 0});
  const double factor = chord_factor(kChords);
  for (int i = 0; i <= kChords; ++i) {
    const double turn = std::numbers::pi * i / kChords;
    const double out = i == 0 || i == kChords ? 1 : factor;
    const double up = i == 0 || i == kChords ? 0 : std::sin(turn);
    points.push_back({out * half_mm * std::cos(turn), 0, outline.spring_mm + out * rise_mm * up});
  }
  return points;
}

double area_of(const oven::Outline& outline) {
  const double rise_mm = outline.height_mm - outline.spring_mm;
  return 2 * outline.half_width_mm * outline.spring_mm +
         std::numbers::pi / 2 * outline.half_width_mm * rise_mm;
}

// Mouth's area over the inside's least area: floor, a flat roof and walls as high as the mouth.
double mouth_share(const oven::Geometry& oven) {
  const oven::Floor& floor = oven.floor;
  const double half_depth_mm = (floor.far_mm - floor.near_mm) / 2;
  const double half_mm = floor.half_width_mm;
  // Ramanujan 1914 for the ellipse's circumference, from memory.
  const double round_mm =
      std::numbers::pi * (3 * (half_mm + half_depth_mm) -
                          std::sqrt((3 * half_mm + half_depth_mm) * (half_mm + 3 * half_depth_mm)));
  const double edge_mm = floor.round ? round_mm : 4 * (half_mm + half_depth_mm);
  const double inside_mm2 = 2 * floor.area_mm2() + edge_mm * oven.inner.height_mm;
  return std::min(1.0, area_of(oven.inner) / inside_mm2);
}

}  // namespace

double black_body_kw_m2(double temperature_c) {
  const double kelvin2 = (temperature_c + kZero_k) * (temperature_c + kZero_k);
  return kStefanBoltzmann * kelvin2 * kelvin2 / 1000;
}

double cavity_emissivity(double wall_emissivity, double mouth_share) {
  return wall_emissivity / (wall_emissivity + (1 - wall_emissivity) * mouth_share);
}

Mouth mouth_of(const oven::Geometry& oven, double floor_temp_c) {
  Mouth mouth;
  mouth.outline = polygon_of(oven.outer);
  mouth.half_width_mm = oven.outer.half_width_mm;
  mouth.height_mm = oven.outer.height_mm;
  mouth.middle = {0, 0, oven.outer.height_mm / 2};
  mouth.area_mm2 = area_of(oven.outer);
  mouth.emissivity = cavity_emissivity(kWallEmissivity, mouth_share(oven));
  mouth.emissive_kw_m2 = mouth.emissivity * black_body_kw_m2(floor_temp_c);
  mouth.flame_factor = std::max(1.0, black_body_kw_m2(kFlame_c) / black_body_kw_m2(floor_temp_c));
  return mouth;
}

double irradiance_kw_m2(const Mouth& mouth, const Receiver& receiver) {
  if (receiver.at.y >= 0) return mouth.emissive_kw_m2;
  return mouth.emissive_kw_m2 * view_factor(receiver, mouth.outline);
}

double irradiance_facing_kw_m2(const Mouth& mouth, const Vec& at) {
  const Vec towards = mouth.middle - at;
  const double distance_mm = length(towards);
  if (!(distance_mm > 0)) return mouth.emissive_kw_m2;
  return irradiance_kw_m2(mouth, {at, (1 / distance_mm) * towards});
}

bool in_hot_zone(const Mouth& mouth, const Vec& at) {
  return at.z > mouth.height_mm / 2 && -at.y < kHotZoneReach_mm &&
         std::abs(at.x) < mouth.half_width_mm + kHotZoneBeside_mm;
}

double linger_standoff_mm(const Mouth& mouth, double x_mm, double z_mm) {
  // Beyond this no place gets more, whatever its height: F is at most area / (pi distance^2).
  const double far_mm =
      std::sqrt(mouth.emissive_kw_m2 * mouth.area_mm2 / (std::numbers::pi * kLinger_kw_m2));
  const bool zone = in_hot_zone(mouth, {x_mm, -1, z_mm});
  const double nearest_mm = zone ? kHotZoneReach_mm : 0;
  const auto too_hot = [&](double standoff_mm) {
    return irradiance_facing_kw_m2(mouth, {x_mm, -standoff_mm, z_mm}) > kLinger_kw_m2;
  };
  constexpr double kStep_mm = 25;
  double cool_mm = far_mm;
  while (cool_mm > nearest_mm) {
    double hot_mm = std::max(nearest_mm, cool_mm - kStep_mm);
    if (!too_hot(hot_mm)) {
      cool_mm = hot_mm;
      continue;
    }
    while (cool_mm - hot_mm > 0.05) {
      const double middle_mm = (cool_mm + hot_mm) / 2;
      (too_hot(middle_mm) ? hot_mm : cool_mm) = middle_mm;
    }
    break;
  }
  return std::ceil(std::max(cool_mm, nearest_mm) / 10 - 1e-3) * 10;
}

}  // namespace hs::heat
