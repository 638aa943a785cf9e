// The fit map: what the household sees over oven floor height and standoff.

#include <algorithm>

#include "engine/evaluate/steps.h"

namespace hs::evaluate {
namespace {

// The map's frame: heights around every cook's elbow, standoffs from arm's length to a few steps.
constexpr double kBelowElbow_mm = 300, kAboveElbow_mm = 300;
constexpr double kNearStandoff_mm = 300, kFarStandoff_mm = 1500;

}  // namespace

FitMap fit_map(const config::Config& config, int columns, int rows) {
  const Scene scene = scene_of(config);
  FitMap map;
  std::vector<const cook::Body*> bodies;
  double ceiling_mm = 1e9, lowest_elbow_mm = 1e9, highest_elbow_mm = 0;
  const std::vector<bool> at_oven = pull_the_oven(config, scene);
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    if (!at_oven[i]) continue;
    const double elbow_mm = scene.bodies[i].elbow.value_mm;
    bodies.push_back(&scene.bodies[i]);
    ceiling_mm = std::min(ceiling_mm, height::floor_ceiling_mm(elbow_mm));
    lowest_elbow_mm = std::min(lowest_elbow_mm, elbow_mm);
    highest_elbow_mm = std::max(highest_elbow_mm, elbow_mm);
  }
  if (bodies.empty() || columns < 2 || rows < 2) return map;
  map.columns = columns;
  map.rows = rows;
  map.floor_low_mm = std::max(0.0, lowest_elbow_mm - kBelowElbow_mm);
  map.floor_high_mm = highest_elbow_mm + kAboveElbow_mm;
  map.standoff_low_mm = kNearStandoff_mm;
  map.standoff_high_mm = std::max(kFarStandoff_mm, config.view.standoff_mm + 200);
  const std::size_t cells = static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows);
  map.share.reserve(cells);
  map.good.reserve(cells);
  const heat::Mouth mouth = heat::mouth_of(scene.geometry, config.oven.floor_temp_c);
  for (int column = 0; column < columns; ++column) {
    double limit_mm = 0;
    for (const cook::Body* body : bodies) {
      const double floor_mm =
          map.floor_low_mm + (map.floor_high_mm - map.floor_low_mm) * column / (columns - 1);
      limit_mm = std::max(limit_mm, heat::linger_standoff_mm(mouth, config.view.lateral_mm,
                                                             body->eye.value_mm - floor_mm));
    }
    map.heat_limit_mm.push_back(static_cast<float>(limit_mm));
  }
  for (int row = 0; row < rows; ++row) {
    const double standoff_mm =
        map.standoff_low_mm + (map.standoff_high_mm - map.standoff_low_mm) * row / (rows - 1);
    for (int column = 0; column < columns; ++column) {
      const double floor_mm =
          map.floor_low_mm + (map.floor_high_mm - map.floor_low_mm) * column / (columns - 1);
      double worst_share = 1;
      bool all_see = true;
      for (const cook::Body* body : bodies) {
        const sight::Eye eye = eye_of(*body, config.view, standoff_mm, floor_mm);
        const double share =
            eye.height_mm <= 0 ? 0 : sight::seen_share_of_disc(scene.geometry, eye, scene.pizza);
        worst_share = std::min(worst_share, share);
        all_see = all_see && share >= sight::kAllSeen && unseen_line(scene, eye) < 0.02;
      }
      map.share.push_back(static_cast<float>(worst_share));
      map.good.push_back(all_see && floor_mm <= ceiling_mm + height::kHandTolerance_mm ? 1 : 0);
    }
  }
  return map;
}

}  // namespace hs::evaluate
