// Sight against formulas worked out elsewhere: the closed form for the middle line, the worked
// published check values, and cases that a pencil settles.

#include <cmath>

#include "catch_amalgamated.hpp"
#include "engine/oven/oven.h"
#include "engine/sight/sight.h"
#include "tests/support/random.h"
#include "tests/support/sweep.h"

using Catch::Matchers::WithinAbs;
using hs::config::Oven;
using hs::oven::Geometry;
using hs::sight::Eye;

namespace {

constexpr double kShareAccuracy = 0.0005;  // what sight.h promises

// A mouth `height` high, no throat, floor `depth` long and wide enough to matter nowhere.
Geometry tabletop(double height_mm, double depth_mm) {
  Oven oven;
  oven.mouth_height_mm = height_mm;
  oven.floor_depth_mm = depth_mm;
  return hs::oven::geometry_of(oven);
}

// Lowest floor height, to 0.001 mm, from which this eye sees the middle line to the back. Found by
// halving on what is reported seen, so it uses none of the closed form.
double lowest_floor_mm(const Geometry& oven, double eye_mm, double distance_mm) {
  double low = 0, high = eye_mm - 0.001;
  while (high - low > 0.001) {
    const double floor = (low + high) / 2;
    const auto seen = hs::sight::farthest_on_middle(
        oven, {.distance_mm = distance_mm, .height_mm = eye_mm - floor});
    (seen && *seen >= oven.floor.far_mm ? high : low) = floor;
  }
  return high;
}

}  // namespace

TEST_CASE("the deepest floor seen, and the floor height that shows it all", "[sight][source]") {
  // Ergonomics reference section 7, row 23 (geometry of section 3a): eye 1640, deck 1000, mouth
  // 200 high, eye 500 away; tolerance 0.1 mm, from the printed digits.
  const Geometry oven = tabletop(200, 600);
  const auto seen = hs::sight::farthest_on_middle(oven, {.distance_mm = 500, .height_mm = 640});
  REQUIRE(seen.has_value());
  CHECK_THAT(*seen, WithinAbs(227.3, 0.1));
  CHECK_THAT(lowest_floor_mm(oven, 1640, 500), WithinAbs(1273.3, 0.1));
}

TEST_CASE("how far to stand back, and the slope of the last ray", "[sight][source]") {
  // Row 24: eye 1642.44, deck 1105.49, mouth 200 high, floor 600 deep; tolerances 0.2 mm and
  // 0.01 degree, from the printed digits.
  const Geometry oven = tabletop(200, 600);
  double near = 100, far = 3000;
  while (far - near > 0.001) {
    const double middle = (near + far) / 2;
    const Eye eye{.distance_mm = middle, .height_mm = 1642.44 - 1105.49};
    (*hs::sight::farthest_on_middle(oven, eye) >= 600 ? far : near) = middle;
  }
  CHECK_THAT(far, WithinAbs(1010.9, 0.2));
  const Eye eye{.distance_mm = far, .height_mm = 1642.44 - 1105.49};
  CHECK_THAT(hs::sight::gaze_down_deg(eye, 600), WithinAbs(18.43, 0.01));
}

TEST_CASE("the whole middle line is seen when floor >= E - h (1 + d/D)", "[sight][source]") {
  // Closed form; D is the floor's end from the outer plane. With a throat the
  // inner plane, nearer to the floor's end, lets more through, so the outer one still decides.
  hs::test::Random random(3);
  constexpr double kSearch_mm = 0.002;  // the halving's last step, both sides
  for (int i = 0; i < hs::test::sweep(500); ++i) {
    Oven oven;
    oven.mouth_height_mm = random.between(60, 400);
    oven.floor_depth_mm = random.between(200, 1500);
    oven.throat_mm = random.one_in(2) ? 0 : random.between(0, 400);
    oven.floor_shape = static_cast<hs::config::FloorShape>(random.below(2));
    oven.mouth_shape = static_cast<hs::config::MouthShape>(random.below(3));
    oven.mouth_side_height_mm = oven.mouth_height_mm / 2;
    const double eye_mm = random.between(1400, 1900), distance_mm = random.between(200, 1500);
    const Geometry geometry = hs::oven::geometry_of(oven);
    const double end_mm = oven.throat_mm + oven.floor_depth_mm;
    const double formula_mm = eye_mm - oven.mouth_height_mm * (1 + distance_mm / end_mm);
    CAPTURE(i, oven.mouth_height_mm, end_mm, eye_mm, distance_mm);
    REQUIRE_THAT(lowest_floor_mm(geometry, eye_mm, distance_mm),
                 WithinAbs(std::max(0.0, formula_mm), kSearch_mm));
  }
}

TEST_CASE("a cook of 1750 mm at the default oven sees what the hand calculation says",
          "[sight][source]") {
  // Hand calculation: eye 1661, mouth 130, floor 430 deep and 150 above its
  // base, pizza 320 centred. All of the pizza from a counter of about 1139 at 700 mm; at a counter
  // of 914 only from near 1350 mm. "About" and "near" there are rounded to 1 and 10 mm.
  const Geometry oven = hs::oven::geometry_of({});
  const double pizza_end_mm = 215 + 160;
  const auto reach_mm = [&](double counter_mm, double distance_mm) {
    return hs::sight::reach_on_middle(
        oven, {.distance_mm = distance_mm, .height_mm = 1661 - counter_mm - 150});
  };
  CHECK(reach_mm(1138, 700) < pizza_end_mm);
  CHECK(reach_mm(1139, 700) >= pizza_end_mm);
  CHECK(reach_mm(914, 1340) < pizza_end_mm);
  CHECK(reach_mm(914, 1350) >= pizza_end_mm);
}

TEST_CASE("the shadow line of a rectangular mouth cuts the floor straight across", "[sight]") {
  // Floor as wide as the mouth, eye on the middle line: seen is everything before the shadow.
  const Geometry oven = tabletop(130, 430);
  const Eye eye{.distance_mm = 700, .height_mm = 500};
  const double shadow_mm = 130.0 * 700 / (500 - 130);
  CHECK_THAT(hs::sight::seen_share_of_floor(oven, eye), WithinAbs(shadow_mm / 430, kShareAccuracy));
  CHECK_THAT(*hs::sight::farthest_on_middle(oven, eye), WithinAbs(shadow_mm, 1e-9));
}

TEST_CASE("the corner of a triangle behind the jamb is hidden from one side", "[sight]") {
  // Mouth as wide as the floor (2w), no throat, all depths seen: the ray past the near jamb runs
  // from the eye (X, -d) through (w, 0); to its right a triangle of the floor is hidden.
  Oven wide;
  wide.mouth_height_mm = 400;  // the eye is below the mouth's top
  const Geometry oven = hs::oven::geometry_of(wide);
  const Eye eye{.x_mm = 600, .distance_mm = 500, .height_mm = 300};
  const double slope = (600.0 - 215) / 500;  // x lost per mm of depth
  const double hidden_mm2 = 430 * slope * 430 / 2;
  CHECK_THAT(hs::sight::seen_share_of_floor(oven, eye),
             WithinAbs(1 - hidden_mm2 / (430.0 * 430), kShareAccuracy));
}

TEST_CASE("a risen far rim needs a lower eye than the floor under it", "[sight]") {
  const Geometry oven = tabletop(130, 430);
  // At the far rim (375) with a crust of 25: crossing height 25 + 375/1075 (E - 25) <= 130.
  const double limit_mm = 25 + 105.0 * 1075 / 375;
  const auto sees = [&](double eye_mm) {
    return hs::sight::sees_point(oven, {.distance_mm = 700, .height_mm = eye_mm}, 375, 25);
  };
  CHECK(sees(limit_mm - 0.01));
  CHECK_FALSE(sees(limit_mm + 0.01));
  // The floor below it is still seen there: 130 * 1075 / 375 is higher.
  CHECK(hs::sight::sees_point(oven, {.distance_mm = 700, .height_mm = limit_mm + 1}, 375, 0));
}

TEST_CASE("a brow hides from behind it and not from in front of it", "[sight]") {
  Oven with_brow;
  with_brow.brow_mm = 100;
  const Geometry oven = hs::oven::geometry_of(with_brow);
  const Geometry bare = hs::oven::geometry_of({});
  const Eye back{.distance_mm = 700, .height_mm = 400};
  // Brow edge 130 high, 100 in front: landing at 600 / (1 - 130/400) - 700.
  CHECK_THAT(hs::sight::reach_on_middle(oven, back),
             WithinAbs(600 / (1 - 130.0 / 400) - 700, 1e-9));
  CHECK(hs::sight::reach_on_middle(oven, back) < hs::sight::reach_on_middle(bare, back));
  const Eye close{.distance_mm = 100, .height_mm = 400};
  CHECK(hs::sight::reach_on_middle(oven, close) == hs::sight::reach_on_middle(bare, close));
}

TEST_CASE("a larger outer mouth shows more than one outline all the way", "[sight]") {
  Oven straight;
  straight.mouth_height_mm = 280;
  straight.throat_mm = 250;
  straight.floor_depth_mm = 700;
  straight.height_mm = 800;
  straight.depth_mm = 1200;
  Oven flared = straight;
  flared.outer_mouth.height_mm = 360;
  const Eye eye{.distance_mm = 700, .height_mm = 560};
  const double narrow_mm = hs::sight::reach_on_middle(hs::oven::geometry_of(straight), eye);
  const double flared_mm = hs::sight::reach_on_middle(hs::oven::geometry_of(flared), eye);
  // Outer edge decides in the straight one; the outer edge at 360 still lies under the inner's.
  CHECK_THAT(narrow_mm, WithinAbs(700 / (1 - 280.0 / 560) - 700, 1e-9));
  CHECK_THAT(flared_mm,
             WithinAbs(std::min(700 / (1 - 360.0 / 560), 950 / (1 - 280.0 / 560)) - 700, 1e-9));
  CHECK(flared_mm > narrow_mm);
}

TEST_CASE("the gaze is the ray's slope, sideways distance included", "[sight]") {
  CHECK_THAT(hs::sight::gaze_down_deg({.distance_mm = 400, .height_mm = 500}, 100),
             WithinAbs(45, 1e-9));
  CHECK_THAT(hs::sight::gaze_down_deg({.x_mm = 300, .distance_mm = 300, .height_mm = 500}, 100),
             WithinAbs(45, 1e-9));
  CHECK(hs::sight::gaze_down_deg({.distance_mm = 400, .height_mm = -10}, 100) < 0);
}
