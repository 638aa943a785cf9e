#include "engine/evaluate/lamp_map.h"

#include <algorithm>
#include <cmath>

#include "engine/evaluate/lighting.h"

namespace hs::evaluate {
namespace {

LampPlace place_of(const light::Setup& setup, const std::vector<Vec>& points,
                   const heat::Mouth& mouth, const Vec& head) {
  if (heat::in_hot_zone(mouth, head)) return LampPlace::HotZone;
  switch (light::against(setup, points, head)) {
    case light::Against::Peel:
      return LampPlace::Peel;
    case light::Against::Eye:
      return LampPlace::Eye;
    case light::Against::Shadow:
      return LampPlace::Shadow;
    case light::Against::TooNear:
      return LampPlace::TooNear;
    case light::Against::Nothing:
      break;
  }
  // Heat last: it costs most to compute, and what it forbids is forbidden in any order.
  if (heat::irradiance_facing_kw_m2(mouth, head) > kLampHeat_kw_m2) return LampPlace::TooHot;
  return round_to(light::neck_needed_mm(setup, head), 10) <= setup.neck_mm
             ? LampPlace::Good
             : LampPlace::NeckTooShort;
}

}  // namespace

LampMap lamp_map(const config::Config& config, const Evaluation& e, double across_mm,
                 double step_mm) {
  const light::Setup setup = lamp_setup(config, e);
  const std::vector<Vec> points = light::points_of(setup.target, setup.oven.floor);
  LampMap map;
  map.across_mm = across_mm;
  map.step_mm = std::max(5.0, step_mm);
  const auto count = [&](int steps) {
    return static_cast<int>(std::floor(steps * light::kGrid_mm / map.step_mm + 1e-9));
  };
  map.columns = count(light::kDeep);
  map.rows = count(light::kUp);
  map.places.reserve(static_cast<std::size_t>(map.columns) * static_cast<std::size_t>(map.rows));
  for (int row = 1; row <= map.rows; ++row) {
    for (int column = 1; column <= map.columns; ++column) {
      const Vec head{across_mm, -column * map.step_mm, row * map.step_mm};
      map.places.push_back(place_of(setup, points, e.mouth, head));
    }
  }
  return map;
}

std::vector<LampRay> lamp_rays(const config::Config& config, const Evaluation& e) {
  if (!e.light.lamp || !e.light.lamp->head) return {};
  const light::Setup setup = lamp_setup(config, e);
  const Vec head = *e.light.lamp->head;
  const Vec axis = e.light.lamp->light.aim - head;
  const double least_cos = std::cos(deg_to_rad(setup.beam_deg / 2));
  std::vector<LampRay> rays;
  constexpr int kRays = 5;
  for (int i = 0; i < kRays; ++i) {
    const double out = 2.0 * i / (kRays - 1) - 1;
    const Vec to{0, setup.target.y_mm + out * setup.target.radius_mm, 0};
    const Vec ray = to - head;
    const bool in_beam = dot(axis, ray) >= least_cos * length(axis) * length(ray) - 1e-6;
    rays.push_back({to, in_beam && light::passes_mouth(setup.oven, head, to)});
  }
  return rays;
}

}  // namespace hs::evaluate
