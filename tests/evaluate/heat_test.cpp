#include <cmath>
#include <numbers>

#include "catch_amalgamated.hpp"
#include "engine/evaluate/check.h"
#include "engine/evaluate/evaluate.h"
#include "engine/heat/tolerance.h"
#include "engine/height/height.h"
#include "tests/support/findings.h"
#include "tests/support/random_config.h"
#include "tests/support/sweep.h"

using namespace hs;
using evaluate::Evaluation;
using test::found;
using test::verdict;

namespace {

// A large masonry oven at 480 C whose mouth is 500 x 300 mm, on a slab at a given height.
config::Config hot_oven() {
  config::Config c;
  c.oven.kind = config::OvenKind::MasonryDome36;
  c.oven.width_mm = 1300;
  c.oven.depth_mm = 1300;
  c.oven.height_mm = 900;
  c.oven.mouth_width_mm = 500;
  c.oven.mouth_height_mm = 300;
  c.oven.floor_width_mm = c.oven.floor_depth_mm = 900;
  c.oven.floor_temp_c = 480;
  c.station.oven_base_height_mm = 900;
  c.peel.length_mm = 1500;
  return c;
}

// Sum over small squares of a rectangular mouth for a face turned to its middle.
double brute_kw_m2(const Evaluation& e, const sight::Eye& eye) {
  const auto& mouth = e.mouth;
  const Vec at{eye.x_mm, -eye.distance_mm, eye.height_mm};
  const Vec towards = mouth.middle - at;
  constexpr int kAcross = 300, kUp = 200;
  const double dx = 2 * mouth.half_width_mm / kAcross, dz = mouth.height_mm / kUp;
  double sum = 0;
  for (int i = 0; i < kAcross; ++i) {
    for (int j = 0; j < kUp; ++j) {
      const Vec ray = Vec{-mouth.half_width_mm + (i + 0.5) * dx, 0, (j + 0.5) * dz} - at;
      const double r2 = dot(ray, ray);
      const double facing = dot(ray, towards) / length(towards);
      if (facing > 0) sum += facing * ray.y / (std::numbers::pi * r2 * r2) * dx * dz;
    }
  }
  return sum * mouth.emissive_kw_m2;
}

}  // namespace

TEST_CASE("each cook's face gets what a sum over the mouth gives", "[evaluate][heat][brute]") {
  config::Config c = hot_oven();
  for (const double stature : {1500.0, 1750.0, 1950.0}) {
    for (const double lateral : {0.0, 300.0}) {
      c.cooks[0].stature_mm = stature;
      c.view.lateral_mm = lateral;
      const Evaluation e = evaluate::evaluate_fit(c);
      const auto& cook = e.cooks[0];
      // 0.1 % is what sixty thousand squares are good for at these distances.
      CHECK(std::abs(cook.heat.face_watching_kw_m2 / brute_kw_m2(e, cook.watching.eye) - 1) <
            0.001);
      CHECK(std::abs(cook.heat.face_working_kw_m2 / brute_kw_m2(e, cook.working.eye) - 1) < 0.001);
    }
  }
}

TEST_CASE("the mouth emits its cavity's emissivity times sigma T^4", "[evaluate][heat][source]") {
  const Evaluation e = evaluate::evaluate_fit(hot_oven());
  // 18.245 kW/m2 at 480 C (check value 1); floor 900 x 900, walls as high as the mouth:
  // f = 0.15 / (2 x 0.81 + 3.6 x 0.3).
  const double f = 0.15 / (1.62 + 1.08);
  CHECK(std::abs(e.mouth.emissive_kw_m2 - 18.245 * 0.9 / (0.9 + 0.1 * f)) < 0.01);
}

TEST_CASE("watching is easy from the lingering distance and not from nearer", "[evaluate][heat]") {
  config::Config c = hot_oven();
  const double at = evaluate::evaluate_fit(c).cooks[0].heat.linger_standoff_mm;
  REQUIRE(at > heat::kHotZoneReach_mm + 30);
  c.view.standoff_mm = at;
  CHECK(verdict(evaluate::evaluate_fit(c), "heat.face") == Verdict::Ok);
  c.view.standoff_mm = at - 20;
  CHECK(verdict(evaluate::evaluate_fit(c), "heat.face") == Verdict::Warn);
  c.view.standoff_mm = 460;
  c.station.oven_base_height_mm = 1250;
  const Evaluation near = evaluate::evaluate_fit(c);
  CHECK(near.cooks[0].heat.face_watching_kw_m2 > heat::kBrief_kw_m2);
  CHECK(verdict(near, "heat.face") == Verdict::Fail);
}

TEST_CASE("working is a short reach up to 2.5 kW/m2", "[evaluate][heat]") {
  config::Config c = hot_oven();
  c.view.working_standoff_mm = 700;
  const Evaluation far = evaluate::evaluate_fit(c);
  CHECK(far.cooks[0].heat.face_working_kw_m2 < heat::kBrief_kw_m2);
  CHECK(verdict(far, "heat.face_working") == Verdict::Ok);
  c.view.working_standoff_mm = 460;
  c.station.oven_base_height_mm = 1250;
  const Evaluation near = evaluate::evaluate_fit(c);
  CHECK(near.cooks[0].heat.face_working_kw_m2 > heat::kBrief_kw_m2);
  CHECK(verdict(near, "heat.face_working") == Verdict::Warn);
}

TEST_CASE("the hot zone admits no face, hot or cold", "[evaluate][heat]") {
  for (const double temperature_c : {0.0, 480.0}) {
    config::Config c;
    c.oven.floor_temp_c = temperature_c;
    c.view.standoff_mm = 450;
    c.view.working_standoff_mm = 449.9;
    const Evaluation e = evaluate::evaluate_fit(c);
    CHECK(verdict(e, "heat.hot_zone", "watching") == Verdict::Ok);
    CHECK(verdict(e, "heat.hot_zone", "working") == Verdict::Fail);
  }
}

TEST_CASE("a longer peel, a gauntlet and a plate each take heat off the hand", "[evaluate][heat]") {
  config::Config c;
  c.peel.length_mm = 400;
  const Evaluation in_the_mouth = evaluate::evaluate_fit(c);
  // Blade under the far rim at 375 mm, grip 60 mm from the end: the hand is 35 mm inside.
  CHECK(std::abs(in_the_mouth.cooks[0].heat.hand_ahead_mm - (400 - 375 - 60)) < 1e-9);
  CHECK(in_the_mouth.cooks[0].heat.hand_kw_m2 == in_the_mouth.mouth.emissive_kw_m2);
  CHECK(verdict(in_the_mouth, "heat.hand") == Verdict::Fail);

  c.peel.length_mm = 700;
  const Evaluation bare = evaluate::evaluate_fit(c);
  CHECK(verdict(bare, "heat.hand") == Verdict::Warn);
  c.heat.glove = config::Glove::Gauntlet;
  const Evaluation gloved = evaluate::evaluate_fit(c);
  CHECK(gloved.cooks[0].heat.hand_kw_m2 == bare.cooks[0].heat.hand_kw_m2);
  CHECK(gloved.cooks[0].heat.hand_through_kw_m2 == bare.cooks[0].heat.hand_kw_m2 / 2);
  c.heat.shield = config::Shield::Plate;
  CHECK(std::abs(evaluate::evaluate_fit(c).cooks[0].heat.hand_through_kw_m2 -
                 bare.cooks[0].heat.hand_kw_m2 / 3) < 1e-12);

  c.heat = {};
  c.peel.length_mm = 1200;
  const Evaluation far = evaluate::evaluate_fit(c);
  CHECK(verdict(far, "heat.hand") == Verdict::Ok);
  // Past the eye's own distance the handle goes on behind the hand.
  CHECK(far.cooks[0].heat.hand_ahead_mm == c.view.working_standoff_mm);
  CHECK(far.cooks[0].heat.short_peel_kw_m2 > far.cooks[0].heat.long_peel_kw_m2);
}

TEST_CASE("a stoop that brings the face past the limit is taken back", "[evaluate][heat]") {
  // Not for any stature: a tall cook before a hot low oven bends far towards it.
  int taken_back = 0, offered = 0;
  for (double stature = 1500; stature <= 2000; stature += 20) {
    for (const double base : {900.0, 1000.0, 1100.0, 1200.0}) {
      config::Config c = hot_oven();
      c.cooks[0].stature_mm = stature;
      c.station.oven_base_height_mm = base;
      c.oven.mouth_height_mm = 280;
      c.oven.throat_mm = 120;
      c.view.standoff_mm = base < 1050 ? 700 : 500;
      config::Config cold = c;
      cold.oven.floor_temp_c = 20;
      const Evaluation hot_e = evaluate::evaluate_fit(c), cold_e = evaluate::evaluate_fit(cold);
      const auto &hot = hot_e.cooks[0], &same = cold_e.cooks[0];
      if (hot.heat.withdrawn_stoop_kw_m2) {
        ++taken_back;
        CHECK_FALSE(hot.stoop.has_value());
        CHECK(same.stoop.has_value());
        CHECK(*hot.heat.withdrawn_stoop_kw_m2 > heat::kLinger_kw_m2);
        CHECK(verdict(hot_e, "heat.stoop") == Verdict::Warn);
      } else {
        offered += hot.stoop && hot.stoop->posture != sight::Posture{} ? 1 : 0;
        CHECK(hot.stoop.has_value() == same.stoop.has_value());
        CHECK(found(hot_e, "heat.stoop") == nullptr);
      }
    }
  }
  CHECK(taken_back > 0);
  CHECK(offered > 0);
}

TEST_CASE("heat gives no clearance and no offered stoop is past the limit",
          "[evaluate][heat][law]") {
  test::Random random(71);
  for (int i = 0; i < test::sweep(400); ++i) {
    config::Config c = test::random_config(random);
    if (!evaluate::check(c).empty()) continue;
    c.oven.floor_temp_c = 600;
    const Evaluation hot = evaluate::evaluate_fit(c);
    c.oven.floor_temp_c = 0;
    const Evaluation cold = evaluate::evaluate_fit(c);
    for (std::size_t side = 0; side < hot.clearances.size(); ++side) {
      CHECK(hot.clearances[side].required_mm == cold.clearances[side].required_mm);
      CHECK(hot.clearances[side].from == cold.clearances[side].from);
    }
    for (const auto& cook : hot.cooks) {
      if (!cook.at_oven) continue;
      CHECK(cook.heat.face_watching_kw_m2 >= 0);
      CHECK(cook.heat.face_watching_kw_m2 <= hot.mouth.emissive_kw_m2);
      CHECK(std::isfinite(cook.heat.linger_standoff_mm));
      if (!cook.stoop || cook.stoop->posture == sight::Posture{}) continue;
      const auto eye = sight::bent(cook.watching.eye, {cook.body.eye_lever_mm, cook.body.leg_mm},
                                   cook.stoop->posture);
      CHECK(heat::band_of(heat::irradiance_facing_kw_m2(
                hot.mouth, {eye.x_mm, -eye.distance_mm, eye.height_mm})) == heat::Band::Linger);
    }
    // What no figure holds is told whatever the figures are.
    CHECK(found(cold, "heat.not_computed") != nullptr);
  }
}

TEST_CASE("the fit map knows below which distance it is too hot to linger", "[evaluate][heat]") {
  const config::Config c = hot_oven();
  const auto map = evaluate::fit_map(c, 24, 8);
  REQUIRE(map.heat_limit_mm.size() == 24);
  const Evaluation e = evaluate::evaluate_fit(c);
  for (int column = 0; column < map.columns; ++column) {
    const double floor_mm =
        map.floor_low_mm + (map.floor_high_mm - map.floor_low_mm) * column / (map.columns - 1);
    const double limit_mm =
        static_cast<double>(map.heat_limit_mm[static_cast<std::size_t>(column)]);
    const auto face = [&](double standoff_mm) {
      return heat::irradiance_facing_kw_m2(
          e.mouth, {0, -standoff_mm, e.cooks[0].body.eye.value_mm - floor_mm});
    };
    CHECK(face(limit_mm) <= heat::kLinger_kw_m2);
    CHECK((limit_mm == heat::kHotZoneReach_mm || face(limit_mm - 10.1) > heat::kLinger_kw_m2));
  }
}
