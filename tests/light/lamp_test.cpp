#include "engine/light/lamp.h"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "catch_amalgamated.hpp"
#include "tests/support/random.h"
#include "tests/support/sweep.h"

using namespace hs;
using light::Against;

namespace {

oven::Geometry random_oven(test::Random& random) {
  oven::Geometry oven;
  const double half = random.between(120, 300), height = random.between(100, 300);
  const double spring = random.one_in(3) ? height : random.between(0, height);
  oven.inner = {half, height, spring};
  oven.outer = random.one_in(2) ? oven.inner : oven::Outline{half * 1.2, height * 1.3, spring};
  oven.throat_mm = random.one_in(2) ? 0 : random.between(0, 200);
  oven.brow_mm = random.one_in(2) ? 0 : random.between(0, 150);
  oven.brow_edge_mm = height;
  oven.floor = {.round = random.one_in(2),
                .half_width_mm = random.between(half, 500),
                .near_mm = oven.throat_mm,
                .far_mm = oven.throat_mm + random.between(350, 900)};
  return oven;
}

light::Setup random_setup(test::Random& random) {
  light::Setup setup;
  setup.oven = random_oven(random);
  setup.target = {(setup.oven.floor.near_mm + setup.oven.floor.far_mm) / 2,
                  random.between(100, 200)};
  setup.mount = {random.between(-500, 500), random.between(-200, 100), random.between(-150, 300)};
  setup.neck_mm = random.between(300, 1200);
  setup.beam_deg = random.between(15, 100);
  setup.candela = light::candela_of(random.between(100, 1500), setup.beam_deg);
  for (int i = random.below(3) + 1; i > 0; --i) {
    setup.eyes.push_back(
        {random.between(-150, 150), -random.between(450, 1200), random.between(50, 700)});
  }
  setup.peel_half_mm = random.between(100, 200);
  setup.peel_top_mm = random.between(30, 120);
  return setup;
}

double distance_to_ray(const Vec& point, const Vec& from, const Vec& to) {
  const Vec along = to - from;
  const double part = std::clamp(dot(point - from, along) / dot(along, along), 0.0, 1.0);
  return length(point - (from + part * along));
}

}  // namespace

TEST_CASE("lumens in a beam become the published candela", "[light][source]") {
  // Lumen tables, second hand (check value 25): 1000 lm in 60 degrees, 400 cd and 100 cd back.
  CHECK(std::abs(light::candela_of(1000, 60) - 1187.95) < 0.01);
  CHECK(std::abs(400 / light::candela_of(1, 60) - 336.7) < 0.1);
  CHECK(std::abs(100 / light::candela_of(1, 120) - 314.2) < 0.1);
}

TEST_CASE("light falls with the square of the distance and the cosine", "[light][source]") {
  // Check value 25: 100 cd at 3 m and 2 m give 11.11 and 25.0 lx.
  const Vec up{0, 0, 1};
  CHECK(std::abs(light::lux_at({0, 0, 0}, up, {0, 0, 3000}, 100) - 11.11) < 0.01);
  CHECK(std::abs(light::lux_at({0, 0, 0}, up, {0, 0, 2000}, 100) - 25) < 0.01);
  // 40 lx at 0.5 m are 10 lx at 1 m.
  CHECK(std::abs(light::lux_at({0, 0, 0}, up, {0, 0, 500}, 10) - 40) < 1e-9);
  CHECK(std::abs(light::lux_at({0, 0, 0}, up, {0, 0, 1000}, 10) - 10) < 1e-9);
  // 90 cd, 25 degrees off, give 18 lm/ft2 at 2.13 ft: published worked example.
  const double off = 25 * std::numbers::pi / 180, far = 2.13 * 304.8;
  const Vec head{far * std::sin(off), 0, far * std::cos(off)};
  CHECK(std::abs(light::lux_at({0, 0, 0}, up, head, 90) / (18 * 10.764) - 1) < 0.005);
  // Nothing from below.
  CHECK(light::lux_at({0, 0, 0}, up, {100, 0, -1}, 90) == 0);
  CHECK(light::law_holds_from_mm(60) == 300);
}

TEST_CASE("a lamp over a counter gives candela cos^3 / height^2", "[light][source]") {
  // I cos^3 / h^2, inverse-square cosine law: 1000 cd, 1.5 m up, 0.6 m aside.
  const double slope = std::cos(std::atan(0.4));
  CHECK(std::abs(light::lux_below(1000, 120, 1500, 600) - 1000 * slope * slope * slope / 2.25) <
        1e-9);
  CHECK(light::lux_below(1000, 43.5, 1500, 600) == 0);  // half of 43.6 degrees is atan(0.4)
  CHECK(light::lux_below(1000, 43.7, 1500, 600) > 0);
  CHECK(light::lux_below(1000, 120, 0, 600) == 0);
}

TEST_CASE("a ray that is walked step by step passes the mouth where the formula says so",
          "[light][brute]") {
  test::Random random(61);
  int passed = 0, stopped = 0;
  for (int i = 0; i < test::sweep(4000); ++i) {
    const auto oven = random_oven(random);
    const Vec head{random.between(-500, 500), -random.between(5, 900), random.between(20, 500)};
    const Vec at{random.between(-150, 150), oven.throat_mm + random.between(10, 400), 0};
    // The walls of the tunnel between the outlines are straight; walked at a thousand depths.
    bool free = true;
    double closest = 1e9;
    const auto within = [&](const oven::Outline& outline, const Vec& p) {
      const double room = outline.half_width_at(p.z) - std::abs(p.x);
      closest = std::min({closest, std::abs(room), std::abs(outline.height_mm - p.z)});
      return outline.half_width_at(p.z) >= 0 && room >= 0;
    };
    constexpr int kSteps = 20000;
    Vec before = head;
    for (int step = 1; step <= kSteps; ++step) {
      const Vec here = head + (1.0 * step / kSteps) * (at - head);
      const auto crosses = [&](double y) { return before.y <= y && here.y > y; };
      if (crosses(0)) free = within(oven.outer, here) && free;
      if (crosses(oven.throat_mm)) free = within(oven.inner, here) && free;
      if (oven.brow_mm > 0 && crosses(-oven.brow_mm)) {
        closest = std::min(closest, std::abs(here.z - oven.brow_edge_mm));
        free = here.z <= oven.brow_edge_mm && free;
      }
      before = here;
    }
    if (closest < 0.3) continue;  // nearer to an edge than a few steps of the walk
    CAPTURE(i, head.x, head.y, head.z, at.x, at.y);
    CHECK(light::passes_mouth(oven, head, at) == free);
    (free ? passed : stopped) += 1;
  }
  CHECK(passed > test::sweep(4000) / 20);
  CHECK(stopped > test::sweep(4000) / 20);
}

TEST_CASE("a head that is said to hide nothing is in no eye's way", "[light][brute]") {
  test::Random random(62);
  int clear = 0, hidden = 0;
  for (int i = 0; i < test::sweep(3000); ++i) {
    const auto setup = random_setup(random);
    const Vec& eye = setup.eyes.front();
    const Vec head{random.between(-400, 400), -random.between(20, 1000), random.between(20, 700)};
    bool in_the_way = false;
    for (int ring = 0; ring <= 8; ++ring) {
      for (int k = 0; k < 48; ++k) {
        const double turn = 2 * std::numbers::pi * k / 48, r = setup.target.radius_mm * ring / 8;
        const Vec spot{r * std::sin(turn), setup.target.y_mm + r * std::cos(turn), 0};
        in_the_way |= distance_to_ray(head, eye, spot) < light::kHead_mm / 2;
      }
    }
    CAPTURE(i, eye.x, eye.y, eye.z, head.x, head.y, head.z);
    if (!light::hides_target(setup, eye, head)) {
      CHECK_FALSE(in_the_way);
      ++clear;
    } else {
      hidden += in_the_way ? 1 : 0;
    }
  }
  CHECK(clear > test::sweep(3000) / 4);
  CHECK(hidden > test::sweep(3000) / 100);
}

TEST_CASE("the light on the pizza is the sum over its points, each with its own shadow",
          "[light][brute]") {
  test::Random random(63);
  int lit = 0;
  for (int i = 0; i < test::sweep(500); ++i) {
    auto setup = random_setup(random);
    setup.oven.floor = {.round = false,
                        .half_width_mm = 400,
                        .near_mm = setup.oven.throat_mm,
                        .far_mm = setup.oven.throat_mm + 600};
    setup.target = {setup.oven.throat_mm + 300, 160};
    setup.beam_deg = 150;  // everything is inside the beam, whatever the aim
    const Vec head{random.between(-300, 300), -random.between(350, 800), random.between(80, 450)};
    double sum = 0;
    int count = 0, in_light = 0;
    for (double x = -160; x <= 160; x += 4) {
      for (double y = -160; y <= 160; y += 4) {
        if (x * x + y * y > 160 * 160) continue;
        const Vec spot{x, setup.target.y_mm + y, 0};
        ++count;
        if (!light::passes_mouth(setup.oven, head, spot)) continue;
        ++in_light;
        sum += light::lux_at(spot, {0, 0, 1}, head, setup.candela);
      }
    }
    const auto points = light::points_of(setup.target, setup.oven.floor);
    REQUIRE(points.size() == light::kPoints);
    const auto thrown = light::best_throw(setup, points, head);
    CAPTURE(i, thrown.lux, sum / count, thrown.lit_share);
    if (in_light < count) {
      // A shadow's edge is told to a point of nineteen.
      CHECK(std::abs(thrown.lit_share - 1.0 * in_light / count) < 0.16);
      continue;
    }
    ++lit;
    CHECK(thrown.lit_share == 1);
    // Nineteen points of equal area, each in its part's middle: 2 % of the mean.
    CHECK(std::abs(thrown.lux - sum / count) < 0.02 * sum / count);
    CHECK(thrown.least_lux <= thrown.lux);
  }
  CHECK(lit > test::sweep(500) / 20);
}

TEST_CASE("every place that is found works, and no shorter neck on the grid does", "[light][law]") {
  test::Random random(64);
  int found = 0;
  for (int i = 0; i < test::sweep(60); ++i) {
    const auto setup = random_setup(random);
    // A stand-in for heat: what is near the middle of the mouth is too hot.
    const auto too_hot = [](const Vec& head) { return length(head - Vec{0, 0, 60}) < 450; };
    const auto best = light::search(setup, too_hot);
    const auto points = light::points_of(setup.target, setup.oven.floor);
    std::optional<double> shortest;
    int places = 0;
    double most_lux = 0;
    for (int up = 1; up <= light::kUp; ++up) {
      for (int ahead = 1; ahead <= light::kDeep; ++ahead) {
        for (int across = -light::kAcross; across <= light::kAcross; ++across) {
          const Vec head{across * light::kGrid_mm, -ahead * light::kGrid_mm, up * light::kGrid_mm};
          if (light::against(setup, points, head) != Against::Nothing || too_hot(head)) continue;
          const double neck = round_to(light::neck_needed_mm(setup, head), 10);
          if (!shortest || neck < *shortest) shortest = neck;
          if (neck > setup.neck_mm) continue;
          ++places;
          most_lux = std::max(most_lux, light::best_throw(setup, points, head).lux);
        }
      }
    }
    CHECK(best.shortest_neck_mm == shortest);
    CHECK(best.places == places);
    CHECK(best.head.has_value() == (places > 0));
    if (!best.head) continue;
    ++found;
    CHECK(best.light.lux > most_lux - 1);  // compared whole
    CHECK_FALSE(too_hot(*best.head));
    CHECK(light::neck_needed_mm(setup, *best.head) <= setup.neck_mm + 0.05);
    for (const Vec& eye : setup.eyes) CHECK_FALSE(light::hides_target(setup, eye, *best.head));
    CHECK_FALSE(light::in_peel_path(setup, *best.head));
  }
  CHECK(found > test::sweep(60) / 6);
}

TEST_CASE("a narrow beam is aimed where it does most", "[light][law]") {
  light::Setup setup;
  setup.oven.outer = setup.oven.inner = {215, 130, 130};
  setup.oven.floor = {.round = false, .half_width_mm = 215, .near_mm = 0, .far_mm = 430};
  setup.target = {215, 160};
  setup.beam_deg = 12;
  setup.candela = light::candela_of(300, setup.beam_deg);
  const Vec head{-150, -500, 200};
  const auto points = light::points_of(setup.target, setup.oven.floor);
  const auto best = light::best_throw(setup, points, head);
  CHECK(best.lit_share > 0);
  CHECK(best.lit_share < 1);
  // No other aim at one of the points puts more light there.
  for (const Vec& aim : points) {
    double sum = 0;
    for (const Vec& spot : points) {
      if (!light::passes_mouth(setup.oven, head, spot)) continue;
      const Vec a = aim - head, b = spot - head;
      const double away = std::acos(std::min(1.0, dot(a, b) / (length(a) * length(b))));
      if (away <= 6 * std::numbers::pi / 180) {
        sum += light::lux_at(spot, {0, 0, 1}, head, setup.candela);
      }
    }
    CHECK(sum / static_cast<double>(points.size()) <= best.lux + 1);
  }
}
