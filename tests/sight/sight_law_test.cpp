// What must hold for every oven and eye, and the promised accuracy against many thin strips.

#include <algorithm>
#include <cmath>
#include <numbers>
#include <vector>

#include "catch_amalgamated.hpp"
#include "engine/oven/oven.h"
#include "engine/sight/sight.h"
#include "tests/sight/random_ovens.h"
#include "tests/support/random.h"
#include "tests/support/sweep.h"

using Catch::Matchers::WithinAbs;
using hs::oven::Geometry;
using hs::sight::Eye;
using hs::sight::Point;
using hs::sight::Span;
using hs::test::Look;
using hs::test::Random;

namespace {

constexpr double kShareAccuracy = 0.0005;  // what sight.h promises

Look any_look(Random& random, int number) {
  return number % 2 == 0 ? hs::test::usual_look(random) : hs::test::odd_look(random);
}

double width_mm(const Span& span) { return std::max(0.0, span.right_mm - span.left_mm); }

// The area of thin strips, each as wide as what is seen at its middle depth.
template <typename Width>
double strips_mm2(double from_mm, double to_mm, int count, Width width) {
  double sum = 0;
  for (int i = 0; i < count; ++i) sum += width(from_mm + (to_mm - from_mm) * (i + 0.5) / count);
  return sum * (to_mm - from_mm) / count;
}

double polygon_mm2(const std::vector<Point>& points) {
  double twice = 0;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const Point& a = points[i];
    const Point& b = points[(i + 1) % points.size()];
    twice += a.x_mm * b.y_mm - b.x_mm * a.y_mm;
  }
  return twice / 2;
}

// Everything that `less` sees at this depth, `more` sees too.
bool covers(const Span& more, const Span& less) {
  constexpr double kRounding_mm = 1e-7;
  return width_mm(less) == 0 || (more.left_mm <= less.left_mm + kRounding_mm &&
                                 more.right_mm >= less.right_mm - kRounding_mm);
}

}  // namespace

TEST_CASE("the share of the floor is within 0.0005 of 4000 strips", "[sight][accuracy]") {
  constexpr int kStrips = 4000;
  // A shadow line inside a strip puts the strips themselves off by up to half of one.
  constexpr double kAllowed = kShareAccuracy - 0.5 / kStrips;
  Random random(31);
  for (int i = 0; i < hs::test::sweep(2000); ++i) {
    const Look look = any_look(random, i);
    const Geometry oven = hs::oven::geometry_of(look.oven);
    const double fine =
        strips_mm2(oven.floor.near_mm, oven.floor.far_mm, kStrips,
                   [&](double y) { return width_mm(hs::sight::seen_at(oven, look.eye, y)); }) /
        oven.floor.area_mm2();
    CAPTURE(i, look.eye.x_mm, look.eye.distance_mm, look.eye.height_mm);
    REQUIRE_THAT(hs::sight::seen_share_of_floor(oven, look.eye), WithinAbs(fine, kAllowed));
  }
}

TEST_CASE("the share of a pizza is within 0.0005 of 4000 strips", "[sight][accuracy]") {
  constexpr int kStrips = 4000;
  // At a disc's widest a shadow line inside a strip counts 4/pi of that of a square.
  constexpr double kAllowed = kShareAccuracy - 0.5 / kStrips * 4 / std::numbers::pi;
  Random random(32);
  for (int i = 0; i < hs::test::sweep(2000); ++i) {
    const Look look = any_look(random, i);
    const Geometry oven = hs::oven::geometry_of(look.oven);
    const double radius = random.between(50, 500);
    const double middle = random.between(oven.floor.near_mm, oven.floor.far_mm);
    const double fine =
        strips_mm2(
            middle - radius, middle + radius, kStrips,
            [&](double y) {
              const Span span = hs::sight::seen_at(oven, look.eye, y);
              const double side = std::sqrt((radius - (y - middle)) * (radius + (y - middle)));
              return std::max(0.0, std::min(span.right_mm, side) - std::max(span.left_mm, -side));
            }) /
        (std::numbers::pi * radius * radius);
    CAPTURE(i, look.eye.x_mm, look.eye.distance_mm, look.eye.height_mm, radius, middle);
    REQUIRE_THAT(hs::sight::seen_share_of_disc(oven, look.eye, {middle, radius}),
                 WithinAbs(fine, kAllowed));
  }
}

TEST_CASE("of two eyes above the floor at one place the higher never sees more", "[sight][law]") {
  // Raising the oven's floor at the same standoff lowers the eye above it: the same law.
  Random random(33);
  for (int i = 0; i < hs::test::sweep(3000); ++i) {
    const Look look = any_look(random, i);
    const Geometry oven = hs::oven::geometry_of(look.oven);
    Eye lower = look.eye;
    lower.height_mm *= random.between(0.01, 1);
    CAPTURE(i, look.eye.x_mm, look.eye.distance_mm, look.eye.height_mm, lower.height_mm);
    for (int k = 0; k < 20; ++k) {
      const double y = random.between(oven.floor.near_mm, oven.floor.far_mm);
      REQUIRE(covers(hs::sight::seen_at(oven, lower, y), hs::sight::seen_at(oven, look.eye, y)));
    }
    REQUIRE(hs::sight::reach_on_middle(oven, lower) >=
            hs::sight::reach_on_middle(oven, look.eye) * (1 - 1e-12));
    REQUIRE(hs::sight::seen_share_of_floor(oven, lower) >=
            hs::sight::seen_share_of_floor(oven, look.eye) - kShareAccuracy);
  }
}

TEST_CASE("raising the oven's floor never hides more while the eye stays above it",
          "[sight][law]") {
  const Geometry oven = hs::oven::geometry_of({});
  constexpr double kEye_mm = 1661;
  double before = 0, reach_before = 0;
  for (double floor_mm = 900; floor_mm < kEye_mm; floor_mm += 1) {
    const Eye eye{.distance_mm = 700, .height_mm = kEye_mm - floor_mm};
    const double share = hs::sight::seen_share_of_floor(oven, eye);
    const double reach = hs::sight::reach_on_middle(oven, eye);
    CAPTURE(floor_mm);
    REQUIRE(share >= before - kShareAccuracy);
    REQUIRE(reach >= reach_before);
    before = share;
    reach_before = reach;
  }
  CHECK(before == Catch::Approx(1));
}

TEST_CASE("from the other side the mirrored region is seen", "[sight][law]") {
  Random random(34);
  constexpr double kRounding_mm = 1e-9;
  for (int i = 0; i < hs::test::sweep(1000); ++i) {
    const Look look = any_look(random, i);
    const Geometry oven = hs::oven::geometry_of(look.oven);
    Eye other = look.eye;
    other.x_mm = -other.x_mm;
    for (int k = 0; k < 10; ++k) {
      const double y = random.between(oven.floor.near_mm, oven.floor.far_mm);
      const Span here = hs::sight::seen_at(oven, look.eye, y);
      const Span there = hs::sight::seen_at(oven, other, y);
      REQUIRE_THAT(here.left_mm, WithinAbs(-there.right_mm, kRounding_mm));
      REQUIRE_THAT(here.right_mm, WithinAbs(-there.left_mm, kRounding_mm));
    }
    REQUIRE_THAT(hs::sight::seen_share_of_floor(oven, look.eye),
                 WithinAbs(hs::sight::seen_share_of_floor(oven, other), 1e-12));
    REQUIRE(hs::sight::reach_on_middle(oven, look.eye) == hs::sight::reach_on_middle(oven, other));
  }
}

TEST_CASE("shares are finite and between 0 and 1 over the whole input box", "[sight][law]") {
  Random random(35);
  const double heights[] = {-500, 0, 1e-6, 0.1, 40, 1200, 3500};
  const double distances[] = {-10, 0, 1e-6, 0.1, 100, 600, 4000};
  const double sides[] = {0, 1e-9, 50, 1000, -1500, 5000};
  for (int i = 0; i < hs::test::sweep(3000); ++i) {
    Look look = hs::test::odd_look(random);
    if (random.one_in(2)) look.eye.height_mm = heights[random.below(7)];
    if (random.one_in(2)) look.eye.distance_mm = distances[random.below(7)];
    if (random.one_in(2)) look.eye.x_mm = sides[random.below(6)];
    const Geometry oven = hs::oven::geometry_of(look.oven);
    CAPTURE(i, look.eye.x_mm, look.eye.distance_mm, look.eye.height_mm);
    const double floor = hs::sight::seen_share_of_floor(oven, look.eye);
    const double disc = hs::sight::seen_share_of_disc(
        oven, look.eye, {random.between(0, 2000), random.between(50, 500)});
    REQUIRE((floor >= 0 && floor <= 1));
    REQUIRE((disc >= 0 && disc <= 1));
    REQUIRE_FALSE(std::isnan(hs::sight::reach_on_middle(oven, look.eye)));
    for (const Point& point : hs::sight::seen_outline(oven, look.eye)) {
      REQUIRE((std::isfinite(point.x_mm) && std::isfinite(point.y_mm)));
    }
    if (look.eye.height_mm <= 0 || look.eye.distance_mm <= 0) REQUIRE(floor == 0);
  }
}

TEST_CASE("an eye at or below the floor sees none of it", "[sight]") {
  const Geometry oven = hs::oven::geometry_of({});
  for (const double height_mm : {0.0, -1.0, -300.0}) {
    const Eye eye{.distance_mm = 700, .height_mm = height_mm};
    CHECK(hs::sight::seen_share_of_floor(oven, eye) == 0);
    CHECK(hs::sight::seen_share_of_disc(oven, eye, {215, 160}) == 0);
    CHECK_FALSE(hs::sight::farthest_on_middle(oven, eye).has_value());
    CHECK(hs::sight::reach_on_middle(oven, eye) == 0);
    CHECK_FALSE(hs::sight::sees_point(oven, eye, 200, 0));
    CHECK(hs::sight::seen_outline(oven, eye).empty());
    CHECK(width_mm(hs::sight::seen_at(oven, eye, 200)) == 0);
  }
}

TEST_CASE("a wholly seen floor and pizza have a share of 1", "[sight]") {
  hs::config::Oven round;
  round.floor_shape = hs::config::FloorShape::Round;
  const Eye eye{.distance_mm = 700, .height_mm = 60};
  constexpr double kTip = 1e-5;  // the rule's error at a round edge's two ends
  CHECK_THAT(hs::sight::seen_share_of_floor(hs::oven::geometry_of({}), eye), WithinAbs(1, 1e-12));
  CHECK_THAT(hs::sight::seen_share_of_floor(hs::oven::geometry_of(round), eye), WithinAbs(1, kTip));
  CHECK_THAT(hs::sight::seen_share_of_disc(hs::oven::geometry_of({}), eye, {215, 160}),
             WithinAbs(1, kTip));
}

TEST_CASE("the outline is the seen region's, counter-clockwise and small", "[sight][law]") {
  Random random(36);
  constexpr int kSteps = 32;
  // A whole ellipse, inscribed with the 62 points that 32 depths give, loses 6.6 / 62^2 of itself.
  constexpr double kDrawing = 0.0025;
  constexpr double kRounding_mm = 1e-9;
  constexpr double kTurn_mm2 = 1e-6;  // rounding, of products of lengths up to some metres
  for (int i = 0; i < hs::test::sweep(2000); ++i) {
    const Look look = any_look(random, i);
    const Geometry oven = hs::oven::geometry_of(look.oven);
    const std::vector<Point> outline = hs::sight::seen_outline(oven, look.eye, kSteps);
    CAPTURE(i, look.eye.x_mm, look.eye.distance_mm, look.eye.height_mm, outline.size());
    REQUIRE(outline.size() <= 2 * kSteps);
    const double share = hs::sight::seen_share_of_floor(oven, look.eye);
    const double drawn = polygon_mm2(outline) / oven.floor.area_mm2();
    REQUIRE_THAT(drawn, WithinAbs(share, kDrawing));
    REQUIRE(drawn <= share + kShareAccuracy);
    for (std::size_t k = 0; k < outline.size(); ++k) {  // convex: it never turns right
      const Point& a = outline[k];
      const Point& b = outline[(k + 1) % outline.size()];
      const Point& c = outline[(k + 2) % outline.size()];
      REQUIRE((b.x_mm - a.x_mm) * (c.y_mm - b.y_mm) - (b.y_mm - a.y_mm) * (c.x_mm - b.x_mm) >=
              -kTurn_mm2);
    }
    for (const Point& point : outline) {
      REQUIRE(point.y_mm >= oven.floor.near_mm);
      REQUIRE(point.y_mm <= oven.floor.far_mm);
      REQUIRE(std::abs(point.x_mm) <= oven.floor.half_width_mm + kRounding_mm);
    }
  }
}
