// The fit map: what the household sees over oven floor height and standoff.

#include <algorithm>

#include "engine/evaluate/fit_rows.h"
#include "engine/evaluate/steps.h"

namespace hs::evaluate {
namespace {

// The map's frame: heights around every cook's elbow, standoffs from arm's length to a few steps.
constexpr double kBelowElbow_mm = 300, kAboveElbow_mm = 300;
constexpr double kNearStandoff_mm = 300, kFarStandoff_mm = 1500;

constexpr double kBorder_mm = 1;

double share_from(const Scene& scene, const config::View& view, const sight::Eye& eye, bool all) {
  // Who sees the target sees all of the pizza, unless the target is the floor.
  if (all && view.target != config::Target::WholeFloor) return 1;
  return eye.height_mm <= 0 ? 0 : sight::seen_share_of_disc(scene.geometry, eye, scene.pizza);
}

bool hands_reach(const cook::Body& body, double floor_mm) {
  return floor_mm <= height::floor_ceiling_mm(body.elbow.value_mm) + height::kHandTolerance_mm;
}

// Where the border, whose floors fall from near to far, crosses this floor.
std::optional<double> standoff_at(const std::vector<FitPlace>& border, double floor_mm) {
  for (std::size_t i = 1; i < border.size(); ++i) {
    const FitPlace &near = border[i - 1], &far = border[i];
    if (near.floor_mm < floor_mm || far.floor_mm > floor_mm) continue;
    const double run_mm = near.floor_mm - far.floor_mm;
    const double part = run_mm > 0 ? (near.floor_mm - floor_mm) / run_mm : 0;
    return near.standoff_mm + part * (far.standoff_mm - near.standoff_mm);
  }
  return {};
}

}  // namespace

FitMap fit_map(const config::Config& config, int columns, int rows) {
  const Scene scene = scene_of(config);
  FitMap map;
  double lowest_elbow_mm = 1e9, highest_elbow_mm = 0;
  const std::vector<bool> at_oven = pull_the_oven(config, scene);
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    if (!at_oven[i]) continue;
    const double elbow_mm = scene.bodies[i].elbow.value_mm;
    map.cooks.push_back({i, height::floor_ceiling_mm(elbow_mm), {}, {}});
    lowest_elbow_mm = std::min(lowest_elbow_mm, elbow_mm);
    highest_elbow_mm = std::max(highest_elbow_mm, elbow_mm);
  }
  if (map.cooks.empty() || columns < 2 || rows < 2) return {};
  map.columns = columns;
  map.rows = rows;
  map.floor_low_mm = std::max(0.0, lowest_elbow_mm - kBelowElbow_mm);
  map.floor_high_mm = highest_elbow_mm + kAboveElbow_mm;
  map.standoff_low_mm = kNearStandoff_mm;
  map.standoff_high_mm = std::max(kFarStandoff_mm, config.view.standoff_mm + 200);
  const std::size_t cells = static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows);
  map.share.assign(cells, 1);
  map.good.assign(cells, 1);
  const auto floor_at = [&](int column) {
    return map.floor_low_mm + (map.floor_high_mm - map.floor_low_mm) * column / (columns - 1);
  };
  const heat::Mouth mouth = heat::mouth_of(scene.geometry, config.oven.floor_temp_c);
  for (int column = 0; column < columns; ++column) {
    double limit_mm = 0;
    for (const FitCook& cook : map.cooks) {
      const double eye_mm = scene.bodies[cook.cook].eye.value_mm - floor_at(column);
      limit_mm =
          std::max(limit_mm, heat::linger_standoff_mm(mouth, config.view.lateral_mm, eye_mm));
    }
    map.heat_limit_mm.push_back(static_cast<float>(limit_mm));
  }
  for (FitCook& cook : map.cooks) {
    const cook::Body& body = scene.bodies[cook.cook];
    std::size_t cell = 0;
    for (int row = 0; row < rows; ++row) {
      const double standoff_mm =
          map.standoff_low_mm + (map.standoff_high_mm - map.standoff_low_mm) * row / (rows - 1);
      const auto sees = [&](double floor_mm) {
        return sees_target(scene, config.view, eye_of(body, config.view, standoff_mm, floor_mm));
      };
      bool seen_before = true;  // a row that begins seen has its border outside the map
      bool crossed = false;
      for (int column = 0; column < columns; ++column, ++cell) {
        const double floor_mm = floor_at(column);
        const bool all = sees(floor_mm);
        const double share =
            share_from(scene, config.view, eye_of(body, config.view, standoff_mm, floor_mm), all);
        map.share[cell] = std::min(map.share[cell], static_cast<float>(share));
        if (!all || !hands_reach(body, floor_mm)) map.good[cell] = 0;
        if (all && !seen_before && !crossed) {
          double hidden_mm = floor_at(column - 1), seen_mm = floor_mm;
          while (seen_mm - hidden_mm > kBorder_mm) {
            const double middle_mm = (hidden_mm + seen_mm) / 2;
            (sees(middle_mm) ? seen_mm : hidden_mm) = middle_mm;
          }
          cook.border.push_back({seen_mm, standoff_mm});
          crossed = true;
        }
        seen_before = all;
      }
    }
    cook.corner_standoff_mm = standoff_at(cook.border, cook.ceiling_mm);
  }
  return map;
}

FitSpot fit_at(const config::Config& config, double oven_floor_mm, double standoff_mm) {
  const Scene scene = scene_of(config);
  const std::vector<bool> at_oven = pull_the_oven(config, scene);
  const heat::Mouth mouth = heat::mouth_of(scene.geometry, config.oven.floor_temp_c);
  FitSpot spot;
  spot.share = 2;  // more than anybody sees
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    if (!at_oven[i]) continue;
    ++spot.cooks;
    const cook::Body& body = scene.bodies[i];
    const sight::Eye eye = eye_of(body, config.view, standoff_mm, oven_floor_mm);
    const bool all = sees_target(scene, config.view, eye);
    const double share = share_from(scene, config.view, eye, all);
    if (share < spot.share) {
      spot.share = share;
      spot.worst = i;
    }
    if (all) spot.see_all.push_back(i);
    if (!hands_reach(body, oven_floor_mm)) spot.too_high.push_back(i);
    if (standoff_mm < heat::linger_standoff_mm(mouth, eye.x_mm, eye.height_mm)) {
      spot.too_hot.push_back(i);
    }
  }
  if (spot.cooks == 0) spot.share = 0;
  return spot;
}

std::vector<FitRows> fit_rows(const config::Config& config, std::span<const double> floors_mm,
                              std::span<const double> standoffs_mm) {
  const Scene scene = scene_of(config);
  const std::vector<bool> at_oven = pull_the_oven(config, scene);
  const heat::Mouth mouth = heat::mouth_of(scene.geometry, config.oven.floor_temp_c);
  std::vector<FitRows> all;
  for (std::size_t i = 0; i < config.cooks.size(); ++i) {
    if (!at_oven[i]) continue;
    const cook::Body& body = scene.bodies[i];
    FitRows rows{i, {}, {}};
    for (const double floor_mm : floors_mm) {
      rows.too_high.push_back(!hands_reach(body, floor_mm));
      for (const double standoff_mm : standoffs_mm) {
        const sight::Eye eye = eye_of(body, config.view, standoff_mm, floor_mm);
        const bool see_all = sees_target(scene, config.view, eye);
        rows.cells.push_back(
            {share_from(scene, config.view, eye, see_all), see_all,
             standoff_mm < heat::linger_standoff_mm(mouth, eye.x_mm, eye.height_mm)});
      }
    }
    all.push_back(std::move(rows));
  }
  return all;
}

}  // namespace hs::evaluate
