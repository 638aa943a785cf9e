// What each eye sees, and where it would have to be to see the target.

#include <algorithm>
#include <cmath>
#include <limits>

#include "engine/base/quantity.h"
#include "engine/config/fields.h"
#include "engine/evaluate/steps.h"

namespace hs::evaluate {
namespace {

double round_up_tenth(double mm) { return std::ceil(mm * 10 - 1e-6) / 10; }

// Smallest x in low..high with holds(x), found on a grid and then to 0.05 mm. A grid, because from
// the side or through an arch what is seen from one place need not be seen from a step further.
// `also` is one more place to try, where the answer is already asked for. nullopt: nowhere tried.
template <typename Holds>
std::optional<double> first_that_holds(double low, double high, double step, double also,
                                       Holds holds) {
  if (!(high > low)) return {};
  if (holds(low)) return round_up_tenth(low);
  double before = low;
  for (;;) {
    const double next = std::min(before + step, high);
    double at = next;
    if (also > before && also < next && holds(also)) {
      at = also;
    } else if (!holds(next)) {
      if (next >= high) return {};
      before = next;
      continue;
    }
    while (at - before > 0.05) {
      const double middle = (before + at) / 2;
      (holds(middle) ? at : before) = middle;
    }
    return round_up_tenth(at);
  }
}

// The range of a number's row in the field table.
Band range_of(std::string_view path) {
  const config::Field* field = config::find_field(path);
  return field ? Band{field->min, field->max} : Band{};
}

}  // namespace

Scene scene_of(const config::Config& config) {
  Scene scene;
  scene.geometry = oven::geometry_of(config.oven);
  const oven::Floor& floor = scene.geometry.floor;
  scene.pizza = {(floor.near_mm + floor.far_mm) / 2, config.view.pizza_diameter_mm / 2};
  scene.floor_above_base_mm = config.oven.floor_above_base_mm;
  scene.cover_ceiling_mm = clearance::highest_base_under_cover_mm(config);
  scene.bases = range_of("station.oven_base_height_mm");
  scene.counters = range_of("station.counter_height_mm");
  scene.standoffs = range_of("view.standoff_mm");
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
  // Cheap and nearly always decisive: a disc of which a thirtieth of the middle line is hidden has
  // lost far more than a thousandth of its area.
  const double hidden_mm = scene.need.far_mm - sight::reach_on_middle(scene.geometry, eye);
  if (hidden_mm > (scene.need.far_mm - scene.target_near_mm) / 30) return false;
  if (view.target == config::Target::WholeFloor) return hidden_mm <= 0;
  if (sight::seen_share_of_disc(scene.geometry, eye, scene.pizza) < sight::kAllSeen) return false;
  return scene.need.z_mm <= 0 ||
         sight::sees_point(scene.geometry, eye, scene.need.far_mm, scene.need.z_mm);
}

std::optional<double> lowest_floor_showing(const Scene& scene, const config::View& view,
                                           const cook::Body& body, double standoff_mm,
                                           double also_floor_mm) {
  constexpr double kStep_mm = 25;
  return first_that_holds(0, body.eye.value_mm - 0.1, kStep_mm, also_floor_mm, [&](double f) {
    return sees_target(scene, view, eye_of(body, view, standoff_mm, f));
  });
}

std::optional<double> nearest_standoff_showing(const Scene& scene, const config::View& view,
                                               const cook::Body& body, double oven_floor_mm) {
  constexpr double kStep_mm = 50;
  return first_that_holds(
      scene.standoffs.low_mm, scene.standoffs.high_mm, kStep_mm, view.standoff_mm,
      [&](double d) { return sees_target(scene, view, eye_of(body, view, d, oven_floor_mm)); });
}

bool young_child(const config::Cook& cook, const cook::Body& body) {
  return cook.build == config::Build::Child && body.age_years < 13;
}

}  // namespace hs::evaluate
