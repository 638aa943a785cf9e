// Where a lamp's head may be, against what the station says of a head at each of these places.

#include "engine/evaluate/lamp_map.h"

#include <cmath>
#include <string>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/evaluate.h"
#include "engine/evaluate/lighting.h"
#include "engine/light/lamp.h"
#include "tests/support/sweep.h"

using namespace hs;
using evaluate::LampPlace;

namespace {

config::Config with_lamp(config::Mount mount = config::Mount::Right) {
  config::Config c;
  c.cooks.push_back({.name = "Other", .stature_mm = 1540});
  c.light.mount = mount;
  return c;
}

}  // namespace

TEST_CASE("the map of a lamp says what the station says of a head there", "[evaluate][light]") {
  const config::Config c = with_lamp();
  const evaluate::Evaluation e = evaluate::evaluate_fit(c);
  int seen[8] = {};
  for (const double across_mm : {-300.0, 0.0, 250.0, 400.0}) {
    const evaluate::LampMap map = evaluate::lamp_map(c, e, across_mm, 50);
    REQUIRE(map.columns == light::kDeep);
    REQUIRE(map.rows == light::kUp);
    for (int row = 0; row < map.rows; ++row) {
      for (int column = 0; column < map.columns; ++column) {
        config::Config there = c;
        there.light.head = {across_mm, (column + 1) * 50.0, (row + 1) * 50.0};
        const Vec head{across_mm, -(column + 1) * 50.0, (row + 1) * 50.0};
        const evaluate::Lamp lamp = evaluate::lamp_at(there, e, head);
        const LampPlace place = map.at(column, row);
        ++seen[static_cast<std::size_t>(place)];
        INFO(across_mm << ", " << head.y << ", " << head.z);
        CHECK((place == LampPlace::Good) == (lamp.against.empty() && lamp.checks.neck_reaches));
        if (place == LampPlace::NeckTooShort)
          CHECK((lamp.against.empty() && !lamp.checks.neck_reaches));
        if (place == LampPlace::HotZone) CHECK(lamp.checks.in_hot_zone);
        if (place == LampPlace::TooHot) CHECK(lamp.checks.too_hot);
        if (place == LampPlace::Peel) CHECK(lamp.checks.light.in_peel_path);
        if (place == LampPlace::Eye) CHECK(lamp.checks.light.hides_target);
        if (place == LampPlace::Shadow) CHECK(lamp.checks.light.in_shadow);
      }
    }
  }
  // It shows something of nearly everything.
  for (const LampPlace place : {LampPlace::Good, LampPlace::NeckTooShort, LampPlace::HotZone,
                                LampPlace::Peel, LampPlace::Eye, LampPlace::Shadow}) {
    CHECK(seen[static_cast<std::size_t>(place)] > 0);
  }
}

TEST_CASE("the places of all planes are those that the search counts", "[evaluate][light]") {
  for (const config::Mount mount : {config::Mount::Left, config::Mount::Right}) {
    config::Config c = with_lamp(mount);
    c.light.neck_mm = 700;
    const evaluate::Evaluation e = evaluate::evaluate(c);
    int good = 0;
    for (int across = -light::kAcross; across <= light::kAcross; ++across) {
      const evaluate::LampMap map =
          evaluate::lamp_map(c, e, across * light::kGrid_mm, light::kGrid_mm);
      for (const LampPlace place : map.places) good += place == LampPlace::Good ? 1 : 0;
    }
    CHECK(good == e.light.lamp->search.places);
    CHECK(good > 0);
    // The best of them is one of them.
    const Vec best = *e.light.lamp->search.best;
    const evaluate::LampMap map = evaluate::lamp_map(c, e, best.x, light::kGrid_mm);
    CHECK(map.at(static_cast<int>(std::lround(-best.y / light::kGrid_mm)) - 1,
                 static_cast<int>(std::lround(best.z / light::kGrid_mm)) - 1) == LampPlace::Good);
  }
}

TEST_CASE("no lamp goes in the hot zone however cold the oven's floor is",
          "[evaluate][light][caution]") {
  config::Config c = with_lamp();
  for (const double floor_c : {0.0, 100.0, 430.0, 600.0}) {
    c.oven.floor_temp_c = floor_c;
    const evaluate::Evaluation e = evaluate::evaluate_fit(c);
    const double wide_mm = e.mouth.half_width_mm + heat::kHotZoneBeside_mm;
    for (const double across_mm : {0.0, wide_mm - 1, 1 - wide_mm}) {
      const evaluate::LampMap map = evaluate::lamp_map(c, e, across_mm, 25);
      for (int row = 0; row < map.rows; ++row) {
        for (int column = 0; column < map.columns; ++column) {
          const double ahead_mm = (column + 1) * 25.0, up_mm = (row + 1) * 25.0;
          if (ahead_mm >= heat::kHotZoneReach_mm || up_mm <= e.mouth.height_mm / 2) continue;
          REQUIRE(map.at(column, row) == LampPlace::HotZone);
        }
      }
    }
  }
}

TEST_CASE("a head with several faults has all of them told apart", "[evaluate][light]") {
  const config::Config c = with_lamp();
  const evaluate::Evaluation e = evaluate::evaluate_fit(c);
  // Right before the mouth, low: hot, in the peel's way, and the peel comes out there.
  const evaluate::Lamp low = evaluate::lamp_at(c, e, Vec{0, -60, 70});
  CHECK(low.checks.in_hot_zone);
  CHECK(low.checks.too_hot);
  CHECK(low.checks.light.in_peel_path);
  CHECK(low.against == "in the hot zone above and before the mouth");
  // Far to the side and high: only the mouth's edge and the neck are against it.
  const evaluate::Lamp far = evaluate::lamp_at(c, e, Vec{-1200, -100, 700});
  CHECK(far.checks.light.in_shadow);
  CHECK_FALSE(far.checks.neck_reaches);
  CHECK_FALSE(far.checks.in_hot_zone);
  CHECK_FALSE(far.checks.light.in_peel_path);
  // At the place found nothing is against it.
  const evaluate::Evaluation all = evaluate::evaluate(c);
  REQUIRE(all.light.lamp->search.best.has_value());
  const evaluate::Lamp best = evaluate::lamp_at(c, all, all.light.lamp->search.best);
  CHECK(best.against.empty());
  CHECK(best.checks.neck_reaches);
  CHECK(best.light.lux == all.light.lamp->light.lux);
}

TEST_CASE("rays of the lamp end on the pizza where it is lit", "[evaluate][light]") {
  config::Config c = with_lamp();
  CHECK(evaluate::lamp_rays(c, evaluate::evaluate_fit(c)).empty());
  const evaluate::Evaluation e = evaluate::evaluate(c);
  const auto rays = evaluate::lamp_rays(c, e);
  REQUIRE(rays.size() == 5);
  CHECK(rays.front().to.y == Catch::Approx(e.pizza.y_mm - e.pizza.radius_mm));
  CHECK(rays.back().to.y == Catch::Approx(e.pizza.y_mm + e.pizza.radius_mm));
  // Nine tenths of the pizza have light, so its middle has.
  CHECK(rays[2].lit);
  // From beside the oven's face nothing comes in.
  c.light.head = {1200, 10, 50};
  for (const evaluate::LampRay& ray : evaluate::lamp_rays(c, evaluate::evaluate_fit(c))) {
    CHECK_FALSE(ray.lit);
  }
}
