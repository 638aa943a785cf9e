// Outlines and floors against their own definitions, and the way a config becomes a geometry.

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

#include "catch_amalgamated.hpp"
#include "engine/oven/oven.h"
#include "tests/support/random.h"
#include "tests/support/sweep.h"

using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using hs::oven::Floor;
using hs::oven::Geometry;
using hs::oven::Outline;

namespace {

constexpr double kRounding = 1e-9;  // formulas of a few operations on sizes up to some metres

// The definition in the file format's words, written apart from the engine.
bool inside(const Outline& outline, double x_mm, double z_mm) {
  if (z_mm < 0 || z_mm > outline.height_mm) return false;
  if (std::abs(x_mm) > outline.half_width_mm) return false;
  if (z_mm <= outline.spring_mm) return true;
  const double a = x_mm / outline.half_width_mm;
  const double b = (z_mm - outline.spring_mm) / (outline.height_mm - outline.spring_mm);
  return a * a + b * b <= 1;
}

Outline random_outline(hs::test::Random& random) {
  Outline outline{.half_width_mm = random.between(50, 1000), .height_mm = random.between(40, 1200)};
  switch (random.below(4)) {
    case 0:
      outline.spring_mm = outline.height_mm;
      break;
    case 1:
      outline.spring_mm = 0;
      break;
    case 2:
      outline.spring_mm = outline.height_mm - 0.1;
      break;
    default:
      outline.spring_mm = random.between(0, outline.height_mm);
  }
  return outline;
}

}  // namespace

TEST_CASE("a rectangle is as wide at its top as at its floor", "[oven]") {
  const Outline mouth{.half_width_mm = 215, .height_mm = 130, .spring_mm = 130};
  CHECK(mouth.half_width_at(0) == 215);
  CHECK(mouth.half_width_at(130) == 215);
  CHECK(mouth.half_width_at(130.1) < 0);
  CHECK(mouth.half_width_at(-0.1) < 0);
}

TEST_CASE("an arch narrows above its springing only, to nothing at its top", "[oven]") {
  const Outline mouth{.half_width_mm = 250, .height_mm = 300, .spring_mm = 100};
  CHECK(mouth.half_width_at(100) == 250);
  // Half way up the curve an ellipse is sqrt(3)/2 of its width.
  CHECK_THAT(mouth.half_width_at(200), WithinRel(250 * std::sqrt(3.0) / 2, kRounding));
  CHECK(mouth.half_width_at(300) == 0);
}

TEST_CASE("a half round mouth is half an ellipse from the floor", "[oven]") {
  const Outline mouth{.half_width_mm = 300, .height_mm = 300, .spring_mm = 0};
  CHECK(mouth.half_width_at(0) == 300);
  CHECK_THAT(mouth.half_width_at(180), WithinRel(240.0, kRounding));  // 180, 240, 300
}

TEST_CASE("scaling a direction to the edge lands on the edge", "[oven][brute]") {
  hs::test::Random random(11);
  for (int i = 0; i < hs::test::sweep(20000); ++i) {
    const Outline outline = random_outline(random);
    const double x = random.one_in(5) ? 0 : random.between(-2000, 2000);
    const double z = random.one_in(5) && x != 0 ? 0 : random.between(0.1, 2500);
    const double scale = outline.scale_to_edge(x, z);
    CAPTURE(i, outline.half_width_mm, outline.height_mm, outline.spring_mm, x, z, scale);
    REQUIRE(scale > 0);
    REQUIRE(inside(outline, scale * x * (1 - kRounding), scale * z * (1 - kRounding)));
    // A curve 0.1 mm high turns so sharply that a rounding error outward may stay inside it.
    REQUIRE_FALSE(inside(outline, scale * x * (1 + 1e-6), scale * z * (1 + 1e-6)));
  }
}

TEST_CASE("the origin of an outline can be scaled without end", "[oven]") {
  const Outline mouth{.half_width_mm = 215, .height_mm = 130, .spring_mm = 80};
  CHECK(mouth.scale_to_edge(0, 0) == std::numeric_limits<double>::infinity());
}

TEST_CASE("a round floor is the ellipse in its rectangle", "[oven]") {
  const Floor floor{.round = true, .half_width_mm = 300, .near_mm = 250, .far_mm = 850};
  CHECK(floor.half_width_at(249.9) < 0);
  CHECK(floor.half_width_at(850.1) < 0);
  CHECK_THAT(floor.half_width_at(250), WithinAbs(0, 1e-6));
  CHECK(floor.half_width_at(550) == 300);
  CHECK_THAT(floor.half_width_at(550 + 180), WithinRel(240.0, kRounding));
  CHECK_THAT(floor.area_mm2(), WithinRel(std::numbers::pi * 300 * 300, kRounding));
}

TEST_CASE("the default oven's geometry is its config's, mouth and outer mouth alike", "[oven]") {
  const Geometry geometry = hs::oven::geometry_of({});
  CHECK(geometry.inner.half_width_mm == 215);
  CHECK(geometry.inner.height_mm == 130);
  CHECK(geometry.inner.spring_mm == 130);
  CHECK(geometry.outer.half_width_mm == 215);
  CHECK(geometry.outer.height_mm == 130);
  CHECK(geometry.outer.spring_mm == 130);
  CHECK(geometry.throat_mm == 0);
  CHECK(geometry.floor.near_mm == 0);
  CHECK(geometry.floor.far_mm == 430);
  CHECK(geometry.floor.half_width_at(100) == 215);
  CHECK(geometry.floor.area_mm2() == 430.0 * 430.0);
}

TEST_CASE("what is not said of the outer mouth is the mouth's own", "[oven]") {
  hs::config::Oven oven;
  oven.mouth_shape = hs::config::MouthShape::Arch;
  oven.mouth_side_height_mm = 90;
  oven.throat_mm = 250;
  oven.brow_mm = 40;
  oven.outer_mouth.width_mm = 500;
  const Geometry geometry = hs::oven::geometry_of(oven);
  CHECK(geometry.outer.half_width_mm == 250);
  CHECK(geometry.outer.height_mm == 130);
  CHECK(geometry.outer.spring_mm == 90);
  CHECK(geometry.inner.half_width_mm == 215);
  CHECK(geometry.floor.near_mm == 250);
  CHECK(geometry.floor.far_mm == 680);
  CHECK(geometry.brow_mm == 40);
  CHECK(geometry.brow_edge_mm == 130);
}

TEST_CASE("an arch that springs from the floor is the half round", "[oven][law]") {
  hs::config::Oven arch, half_round;
  arch.mouth_shape = hs::config::MouthShape::Arch;
  arch.mouth_side_height_mm = 0;
  half_round.mouth_shape = hs::config::MouthShape::HalfRound;
  const Geometry a = hs::oven::geometry_of(arch), b = hs::oven::geometry_of(half_round);
  CHECK(a.inner.spring_mm == b.inner.spring_mm);
  CHECK(a.outer.spring_mm == b.outer.spring_mm);
}
