// What each eye sees, and where it would have to be to see the target.

#include <algorithm>
#include <cmath>
#include <limits>

#include "engine/base/quantity.h"
#include "engine/evaluate/steps.h"

namespace hs::evaluate {
namespace {

constexpr double kSeenShare = 0.999;           // of the pizza's disc: the contract's "all of it"
constexpr double kFarthestStandoff_mm = 4000;  // the field's own range
constexpr double kNearestStandoff_mm = 100;

double round_up_tenth(double mm) { return std::ceil(mm * 10 - 1e-6) / 10; }

// Smallest x in low..high with holds(x), to 0.05 mm, when holds is false below and true above some
// point; nullopt when it does not hold at high.
template <typename Holds>
std::optional<double> first_that_holds(double low, double high, Holds holds) {
  if (!(high > low) || !holds(high)) return {};
  if (holds(low)) return low;
  while (high - low > 0.05) {
    const double middle = (low + high) / 2;
    (holds(middle) ? high : low) = middle;
  }
  return high;
}

// Both searches: the middle line decides cheaply where to look, the whole target settles it.
template <typename LineSeen, typename AllSeen>
std::optional<double> search(double low, double high, LineSeen line_seen, AllSeen all_seen) {
  const std::optional<double> line = first_that_holds(low, high, line_seen);
  if (!line) return {};
  // 99.9 % of a disc is seen a little before its far end is.
  constexpr double kBefore_mm = 40;
  std::optional<double> found;
  if (all_seen(*line)) {
    found = first_that_holds(std::max(low, *line - kBefore_mm), *line, all_seen);
    if (!found) found = line;
  } else {
    found = first_that_holds(*line, high, all_seen);
  }
  if (!found) return {};
  return round_up_tenth(*found);
}

}  // namespace

Scene scene_of(const config::Config& config) {
  Scene scene;
  scene.geometry = oven::geometry_of(config.oven);
  const oven::Floor& floor = scene.geometry.floor;
  scene.pizza = {(floor.near_mm + floor.far_mm) / 2, config.view.pizza_diameter_mm / 2};
  scene.floor_above_base_mm = config.oven.floor_above_base_mm;
  if (config.view.target == config::Target::WholeFloor) {
    scene.target_near_mm = floor.near_mm;
    scene.need.far_mm = floor.far_mm;
  } else {
    // A pizza larger than the floor is a finding; what lies on the floor is still to be seen.
    scene.target_near_mm = std::max(floor.near_mm, scene.pizza.y_mm - scene.pizza.radius_mm);
    scene.need.far_mm = std::min(floor.far_mm, scene.pizza.y_mm + scene.pizza.radius_mm);
    if (config.view.target == config::Target::FarCrust) scene.need.z_mm = config.view.crust_mm;
  }
  scene.bodies.reserve(config.cooks.size());
  for (const config::Cook& cook : config.cooks) scene.bodies.push_back(cook::body_of(cook));
  return scene;
}

sight::Eye eye_of(const cook::Body& body, const config::View& view, double standoff_mm,
                  double oven_floor_mm) {
  return {view.lateral_mm, standoff_mm, body.eye.value_mm - oven_floor_mm};
}

double unseen_line(const Scene& scene, const sight::Eye& eye) {
  if (eye.height_mm <= 0) return 1;
  double reach_mm = sight::reach_on_middle(scene.geometry, eye);
  if (scene.need.z_mm > 0) {
    reach_mm = std::min(reach_mm, sight::reach_at_height(scene.geometry, eye, scene.need.z_mm));
  }
  const double length_mm = scene.need.far_mm - scene.target_near_mm;
  return std::clamp((scene.need.far_mm - reach_mm) / length_mm, 0.0, 1.0);
}

bool sees_target(const Scene& scene, const config::View& view, const sight::Eye& eye) {
  if (eye.height_mm <= 0) return false;
  if (view.target == config::Target::WholeFloor) return unseen_line(scene, eye) <= 0;
  if (sight::seen_share_of_disc(scene.geometry, eye, scene.pizza) < kSeenShare) return false;
  return scene.need.z_mm <= 0 ||
         sight::sees_point(scene.geometry, eye, scene.need.far_mm, scene.need.z_mm);
}

std::optional<double> lowest_floor_showing(const Scene& scene, const config::View& view,
                                           const cook::Body& body, double standoff_mm) {
  const auto eye = [&](double floor_mm) { return eye_of(body, view, standoff_mm, floor_mm); };
  return search(
      0, body.eye.value_mm - 0.1, [&](double f) { return unseen_line(scene, eye(f)) <= 0; },
      [&](double f) { return sees_target(scene, view, eye(f)); });
}

std::optional<double> nearest_standoff_showing(const Scene& scene, const config::View& view,
                                               const cook::Body& body, double oven_floor_mm) {
  const auto eye = [&](double d) { return eye_of(body, view, d, oven_floor_mm); };
  return search(
      kNearestStandoff_mm, kFarthestStandoff_mm,
      [&](double d) { return unseen_line(scene, eye(d)) <= 0; },
      [&](double d) { return sees_target(scene, view, eye(d)); });
}

bool young_child(const config::Cook& cook, const cook::Body& body) {
  return cook.build == config::Build::Child && body.age_years < 13;
}

}  // namespace hs::evaluate
