// Tipping against a small rigid body put together here, and against published examples.

#include "engine/loads/tip.h"

#include <cmath>
#include <vector>

#include "catch_amalgamated.hpp"
#include "tests/support/random.h"
#include "tests/support/sweep.h"

using namespace hs;
using namespace hs::loads;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

// Does the body stand? Its feet only push up. The forces that they must give together act at one
// place; it stands where three of the feet can give them without pulling.
bool stands(const std::vector<Lump>& lumps, const std::vector<Push>& pushes,
            const std::vector<Spot>& feet) {
  double up = 0, about_x = 0, about_y = 0;
  for (const Lump& lump : lumps) {
    const double n = lump.mass_kg * kGravity_m_s2;
    up += n;
    about_y += n * lump.x_mm;
    about_x += n * lump.y_mm;
  }
  for (const Push& push : pushes) {
    about_y += push.x_n * push.z_mm;
    about_x += push.y_n * push.z_mm;
  }
  const double x = about_y / up, y = about_x / up;
  for (std::size_t i = 0; i < feet.size(); ++i) {
    for (std::size_t j = i + 1; j < feet.size(); ++j) {
      for (std::size_t k = j + 1; k < feet.size(); ++k) {
        const Spot &a = feet[i], &b = feet[j], &c = feet[k];
        const double whole =
            (b.x_mm - a.x_mm) * (c.y_mm - a.y_mm) - (c.x_mm - a.x_mm) * (b.y_mm - a.y_mm);
        if (std::abs(whole) < 1e-9) continue;
        const double at_b =
            ((x - a.x_mm) * (c.y_mm - a.y_mm) - (c.x_mm - a.x_mm) * (y - a.y_mm)) / whole;
        const double at_c =
            ((b.x_mm - a.x_mm) * (y - a.y_mm) - (x - a.x_mm) * (b.y_mm - a.y_mm)) / whole;
        if (at_b >= 0 && at_c >= 0 && at_b + at_c <= 1) return true;
      }
    }
  }
  return false;
}

std::vector<Spot> square(double wide_mm, double deep_mm) {
  return {{0, 0}, {wide_mm, 0}, {wide_mm, deep_mm}, {0, deep_mm}};
}

}  // namespace

TEST_CASE("300 lb on a base of 24 in is tipped by 100 lb at 36 in", "[loads][source]") {
  // F h = W b / 2: statics, a published example.
  const double kg = 300 * 0.45359237;
  const std::vector<Lump> body{{kg, 12 * 25.4, 12 * 25.4, 500}};
  const auto feet = square(24 * 25.4, 24 * 25.4);
  const auto least = tips_at_n(body, feet, {0, -1, 36 * 25.4});
  REQUIRE(least);
  CHECK_THAT(*least / 4.4482216, WithinAbs(100, 0.01));
  const Push half{0, -50 * 4.4482216, 36 * 25.4};
  const Tip tip = tip_of(body, std::span(&half, 1), feet);
  CHECK_THAT(tip.factor, WithinAbs(2, 1e-3));
  CHECK(tip.side == Side::Front);
  CHECK_THAT(tip.reach_mm, WithinAbs(24 * 25.4, 1e-9));
}

TEST_CASE("wind's pressure is ASCE 7's", "[loads][source]") {
  // 26.10-1, worked example: Kz 0.90, Kzt 1, Kd 0.85, 100 mph: 19.58 lb/ft2. 0.613 is 0.00256 in
  // metric, rounded.
  constexpr double kMph = 0.44704, kPsf_pa = 47.880259;
  CHECK_THAT(wind_pressure_pa(100 * kMph, 0.90, 0.85) / kPsf_pa, WithinAbs(19.58, 0.01));
}

TEST_CASE("a body's weight outside of its feet tips it, and no push holds it", "[loads]") {
  const auto feet = square(400, 400);
  const std::vector<Lump> outside{{10, 200, -50, 100}};
  CHECK(tip_of(outside, {}, feet).factor < 1);
  CHECK(tips_at_n(outside, feet, {0, -1, 100}) == 0.0);
  const Push back{0, 100, 500};
  CHECK(tip_of(outside, std::span(&back, 1), feet).factor < 1);
  // On no area at all.
  CHECK(tip_of(outside, {}, std::vector<Spot>{{0, 0}, {100, 0}}).factor == 0);
  CHECK(tip_of(outside, {}, std::vector<Spot>{}).factor == 0);
  // Nothing turns it.
  const std::vector<Lump> inside{{10, 200, 200, 100}};
  CHECK(tip_of(inside, {}, feet).factor == kMost);
  CHECK_FALSE(tips_at_n(inside, feet, {0, 0, 100}));
}

TEST_CASE("tipping agrees with a rigid body summed up foot by foot", "[loads][law]") {
  test::Random random(20260606);
  int stood = 0, fell = 0;
  for (int i = 0; i < test::sweep(4000); ++i) {
    std::vector<Spot> feet;
    for (int n = 3 + random.below(6); n > 0; --n) {
      feet.push_back({1.0 * random.below(1500), 1.0 * random.below(800)});
    }
    std::vector<Lump> lumps;
    for (int n = 1 + random.below(6); n > 0; --n) {
      lumps.push_back({1.0 + random.below(80), 1.0 * random.below(1500), 1.0 * random.below(800),
                       1.0 * random.below(1200)});
    }
    if (!stands(lumps, {}, feet)) {
      CHECK(tip_of(lumps, {}, feet).factor <= 1 + 1e-9);
      continue;
    }
    CHECK(tip_of(lumps, {}, feet).factor >= 1 - 1e-9);
    const double angle = random.below(360) * 3.14159265358979 / 180;
    const Push one{std::cos(angle), std::sin(angle), 100.0 + random.below(1500)};
    const auto least = tips_at_n(lumps, feet, one);
    if (!least) continue;
    for (const double share : {0.2, 0.9, 0.999, 1.001, 1.1, 3.0}) {
      const double force = *least * share;
      const Push push{one.x_n * force, one.y_n * force, one.z_mm};
      const bool stood_there = stands(lumps, {push}, feet);
      CAPTURE(i, share, *least);
      if (*least > 1e-3) CHECK(stood_there == (share < 1));
      const Tip tip = tip_of(lumps, std::span(&push, 1), feet);
      if (*least > 1e-3) CHECK((tip.factor >= 1) == (share < 1));
      (stood_there ? stood : fell) += 1;
    }
  }
  CHECK(stood > test::sweep(4000) / 2);
  CHECK(fell > test::sweep(4000) / 2);
}

TEST_CASE("tipping does not change when all is moved, turned or made heavier", "[loads][law]") {
  test::Random random(11);
  for (int i = 0; i < test::sweep(500); ++i) {
    std::vector<Lump> lumps{{20, 300, 250, 600}, {1.0 + random.below(40), 500, 100, 900}};
    std::vector<Spot> feet = square(800 + random.below(900), 400 + random.below(300));
    const Push push{0, -1.0 * random.below(300), 900};
    const double before = tip_of(lumps, std::span(&push, 1), feet).factor;
    const double dx = random.below(3000) - 1500, dy = random.below(3000) - 1500;
    std::vector<Lump> moved = lumps;
    std::vector<Spot> moved_feet = feet;
    for (Lump& lump : moved) lump.x_mm += dx, lump.y_mm += dy;
    for (Spot& foot : moved_feet) foot.x_mm += dx, foot.y_mm += dy;
    CHECK_THAT(tip_of(moved, std::span(&push, 1), moved_feet).factor, WithinRel(before, 1e-9));
    std::vector<Lump> heavier = lumps;
    for (Lump& lump : heavier) lump.mass_kg *= 1.5;
    CHECK(tip_of(heavier, std::span(&push, 1), feet).factor >= before - 1e-9);
  }
}
