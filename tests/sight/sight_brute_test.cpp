// Sight against brute force: straight rays to the points of a regular grid on the floor, by the
// file format's own words. Nothing here calls the engine but for the answer under test.

#include <cmath>

#include "catch_amalgamated.hpp"
#include "engine/oven/oven.h"
#include "engine/sight/sight.h"
#include "tests/sight/random_ovens.h"
#include "tests/support/random.h"
#include "tests/support/sweep.h"

using Catch::Matchers::WithinAbs;
using hs::config::FloorShape;
using hs::config::MouthShape;
using hs::config::Oven;
using hs::sight::Eye;
using hs::test::Look;
using hs::test::Random;

namespace {

// Within 0.2 % of the floor's area. A grid of 700 x 700 is itself off by at most half a row
// at each straight edge, 0.07 % an edge.
constexpr double kAgreement = 0.002;
constexpr int kRows = 700;

struct Opening {
  double width_mm, height_mm, side_height_mm;
  MouthShape shape;
};

bool lets_through(const Opening& opening, double x_mm, double z_mm) {
  if (z_mm > opening.height_mm || std::abs(x_mm) > opening.width_mm / 2) return false;
  double spring_mm = opening.height_mm;
  if (opening.shape == MouthShape::Arch) spring_mm = opening.side_height_mm;
  if (opening.shape == MouthShape::HalfRound) spring_mm = 0;
  if (z_mm <= spring_mm) return true;
  const double a = x_mm / (opening.width_mm / 2);
  const double b = (z_mm - spring_mm) / (opening.height_mm - spring_mm);
  return a * a + b * b <= 1;
}

// Does the ray from the eye to the floor point (x, y) get through?
bool ray_arrives(const Oven& oven, const Eye& eye, double x_mm, double y_mm) {
  const Opening mouth{oven.mouth_width_mm, oven.mouth_height_mm, oven.mouth_side_height_mm,
                      oven.mouth_shape};
  const Opening front{oven.outer_mouth.width_mm.value_or(mouth.width_mm),
                      oven.outer_mouth.height_mm.value_or(mouth.height_mm),
                      oven.outer_mouth.side_height_mm.value_or(mouth.side_height_mm),
                      oven.outer_mouth.shape.value_or(mouth.shape)};
  // The point of the ray in the plane at this depth.
  const double from_x = eye.x_mm, from_y = -eye.distance_mm, from_z = eye.height_mm;
  const auto at_depth = [&](double depth_mm, double& px, double& pz) {
    const double along = (depth_mm - from_y) / (y_mm - from_y);
    px = from_x + along * (x_mm - from_x);
    pz = from_z + along * (0 - from_z);
  };
  double px = 0, pz = 0;
  if (oven.brow_mm > 0 && eye.distance_mm > oven.brow_mm) {
    at_depth(-oven.brow_mm, px, pz);
    if (pz > oven.mouth_height_mm) return false;
  }
  at_depth(0, px, pz);
  if (!lets_through(front, px, pz)) return false;
  at_depth(oven.throat_mm, px, pz);
  return lets_through(mouth, px, pz);
}

bool on_floor(const Oven& oven, double x_mm, double y_mm) {
  const double a = x_mm / (oven.floor_width_mm / 2);
  const double b = (y_mm - oven.throat_mm - oven.floor_depth_mm / 2) / (oven.floor_depth_mm / 2);
  if (oven.floor_shape == FloorShape::Round) return a * a + b * b <= 1;
  return std::abs(a) <= 1 && std::abs(b) <= 1;
}

struct Count {
  int points = 0, seen = 0;
  double share() const { return points == 0 ? 0 : static_cast<double>(seen) / points; }
};

Count count_floor(const Oven& oven, const Eye& eye) {
  Count count;
  for (int row = 0; row < kRows; ++row) {
    const double y_mm = oven.throat_mm + oven.floor_depth_mm * (row + 0.5) / kRows;
    for (int column = 0; column < kRows; ++column) {
      const double x_mm = oven.floor_width_mm * ((column + 0.5) / kRows - 0.5);
      if (!on_floor(oven, x_mm, y_mm)) continue;
      ++count.points;
      count.seen += ray_arrives(oven, eye, x_mm, y_mm);
    }
  }
  return count;
}

Count count_disc(const Oven& oven, const Eye& eye, double middle_mm, double radius_mm) {
  Count count;
  for (int row = 0; row < kRows; ++row) {
    const double dy = radius_mm * (2 * (row + 0.5) / kRows - 1);
    for (int column = 0; column < kRows; ++column) {
      const double dx = radius_mm * (2 * (column + 0.5) / kRows - 1);
      if (dx * dx + dy * dy > radius_mm * radius_mm) continue;
      ++count.points;
      count.seen +=
          on_floor(oven, dx, middle_mm + dy) && ray_arrives(oven, eye, dx, middle_mm + dy);
    }
  }
  return count;
}

void describe(const Look& look, int number) {
  UNSCOPED_INFO("case " << number << ": eye x " << look.eye.x_mm << " distance "
                        << look.eye.distance_mm << " height " << look.eye.height_mm << ", mouth "
                        << look.oven.mouth_width_mm << " x " << look.oven.mouth_height_mm
                        << " shape " << static_cast<int>(look.oven.mouth_shape) << " throat "
                        << look.oven.throat_mm << " brow " << look.oven.brow_mm << ", floor "
                        << look.oven.floor_width_mm << " x " << look.oven.floor_depth_mm);
}

}  // namespace

TEST_CASE("the seen share of the floor agrees with a ray to every point of a grid",
          "[sight][brute]") {
  Random random(20260);
  int partly = 0;
  const int cases = hs::test::sweep(200);
  for (int i = 0; i < cases; ++i) {
    const Look look = i % 4 == 3 ? hs::test::odd_look(random) : hs::test::usual_look(random);
    const double share = hs::sight::seen_share_of_floor(hs::oven::geometry_of(look.oven), look.eye);
    const double counted = count_floor(look.oven, look.eye).share();
    describe(look, i);
    REQUIRE_THAT(share, WithinAbs(counted, kAgreement));
    partly += counted > 0.01 && counted < 0.99;
  }
  CHECK(partly > cases / 3);  // the sweep is of cases that can go wrong
}

TEST_CASE("the seen share of a pizza agrees with a ray to every point of a grid",
          "[sight][brute]") {
  Random random(20261);
  int partly = 0;
  const int cases = hs::test::sweep(80);
  for (int i = 0; i < cases; ++i) {
    const Look look = hs::test::usual_look(random);
    const double radius_mm = random.between(80, 200);  // some hang over a small floor's edge
    const double middle_mm =
        look.oven.throat_mm + look.oven.floor_depth_mm * random.between(0.3, 0.7);
    const double share = hs::sight::seen_share_of_disc(hs::oven::geometry_of(look.oven), look.eye,
                                                       {.y_mm = middle_mm, .radius_mm = radius_mm});
    const double counted = count_disc(look.oven, look.eye, middle_mm, radius_mm).share();
    describe(look, i);
    REQUIRE_THAT(share, WithinAbs(counted, kAgreement));
    partly += counted > 0.01 && counted < 0.99;
  }
  CHECK(partly > cases / 5);
}

TEST_CASE("the interval seen at a depth begins and ends where rays do", "[sight][brute]") {
  Random random(20262);
  for (int i = 0; i < hs::test::sweep(4000); ++i) {
    const Look look = i % 2 == 0 ? hs::test::odd_look(random) : hs::test::usual_look(random);
    const hs::oven::Geometry geometry = hs::oven::geometry_of(look.oven);
    const double y_mm = random.between(geometry.floor.near_mm, geometry.floor.far_mm);
    const hs::sight::Span span = hs::sight::seen_at(geometry, look.eye, y_mm);
    describe(look, i);
    const auto arrives = [&](double x_mm) {
      return on_floor(look.oven, x_mm, y_mm) && ray_arrives(look.oven, look.eye, x_mm, y_mm);
    };
    constexpr double kNudge_mm = 1e-4;  // rounding, at the steep end of a flat arch
    if (span.right_mm - span.left_mm > 2 * kNudge_mm) {
      REQUIRE(arrives(span.left_mm + kNudge_mm));
      REQUIRE(arrives(span.right_mm - kNudge_mm));
      REQUIRE_FALSE(arrives(span.left_mm - kNudge_mm));
      REQUIRE_FALSE(arrives(span.right_mm + kNudge_mm));
    } else {
      for (int k = 0; k < 50; ++k) {
        const double half_mm = geometry.floor.half_width_mm;
        const double x_mm = random.between(-half_mm, half_mm);
        if (std::abs(x_mm - span.left_mm) > kNudge_mm) REQUIRE_FALSE(arrives(x_mm));
      }
    }
  }
}

TEST_CASE("the farthest point of the middle line is where its rays stop", "[sight][brute]") {
  Random random(20263);
  for (int i = 0; i < hs::test::sweep(4000); ++i) {
    const Look look = i % 2 == 0 ? hs::test::odd_look(random) : hs::test::usual_look(random);
    const hs::oven::Geometry geometry = hs::oven::geometry_of(look.oven);
    const auto arrives = [&](double y_mm) { return ray_arrives(look.oven, look.eye, 0, y_mm); };
    constexpr double kNudge = 1e-6;  // of the distance: rounding
    describe(look, i);
    const auto farthest = hs::sight::farthest_on_middle(geometry, look.eye);
    const double near_mm = geometry.floor.near_mm, far_mm = geometry.floor.far_mm;
    if (!farthest) {
      REQUIRE_FALSE(arrives(near_mm + kNudge * (near_mm + look.eye.distance_mm)));
      REQUIRE_FALSE(arrives((near_mm + far_mm) / 2));
      REQUIRE_FALSE(arrives(far_mm));
      continue;
    }
    REQUIRE(*farthest >= near_mm);
    REQUIRE(*farthest <= far_mm);
    const double nudge_mm = kNudge * (*farthest + look.eye.distance_mm);
    if (*farthest - nudge_mm > near_mm) REQUIRE(arrives(*farthest - nudge_mm));
    if (*farthest < far_mm) REQUIRE_FALSE(arrives(*farthest + nudge_mm));
    // A point on the floor, seen as a point of no height.
    REQUIRE(hs::sight::sees_point(geometry, look.eye, (near_mm + far_mm) / 2, 0) ==
            arrives((near_mm + far_mm) / 2));
  }
}
