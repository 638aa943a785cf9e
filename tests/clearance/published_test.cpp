#include "engine/clearance/published.h"

#include "catch_amalgamated.hpp"

namespace {

using Catch::Matchers::WithinAbs;
using namespace hs::clearance;
using hs::config::Fuel;

constexpr double kInch_mm = 25.4, kFoot_mm = 304.8;
constexpr double kSquareInch_cm2 = 6.4516;
constexpr double kPound_kg = 0.45359237;
constexpr double kExact = 1e-9;  // plain arithmetic on doubles

}  // namespace

TEST_CASE("a chimney ends 3 ft above its roof and 2 ft above what is within 10 ft",
          "[clearance][source]") {
  // IRC R1003.9, second hand; safety reference, check value 13: penetration at 8 ft, ridge 9.5 ft.
  const double out = 8 * kFoot_mm, ridge = 9.5 * kFoot_mm;
  CHECK_THAT(chimney_top_mm(out, Obstacle{ridge, 6 * kFoot_mm}) / kFoot_mm,
             WithinAbs(11.5, kExact));
  CHECK_THAT(chimney_top_mm(out, Obstacle{ridge, 12 * kFoot_mm}) / kFoot_mm,
             WithinAbs(11.0, kExact));
  // 10 ft away still counts.
  CHECK_THAT(chimney_top_mm(out, Obstacle{ridge, 10 * kFoot_mm}) / kFoot_mm,
             WithinAbs(11.5, kExact));
  CHECK_THAT(chimney_top_mm(out, {}) / kFoot_mm, WithinAbs(11.0, kExact));
  CHECK_THAT(chimney_top_mm({}, Obstacle{ridge, 0}) / kFoot_mm, WithinAbs(11.5, kExact));
  CHECK(chimney_top_mm({}, {}) == 0);
}

TEST_CASE("the strip before an opening grows with the opening", "[clearance][source]") {
  // IRC R1001.10 (2006), read; check value 14: 30 x 26 in is 5.42 sq ft, 36 x 28 in is 7.0.
  const Apron small = hearth_extension(30 * kInch_mm, 26 * kInch_mm);
  CHECK_THAT(small.front_mm / kInch_mm, WithinAbs(16, kExact));
  CHECK_THAT(small.side_mm / kInch_mm, WithinAbs(8, kExact));
  const Apron large = hearth_extension(36 * kInch_mm, 28 * kInch_mm);
  CHECK_THAT(large.front_mm / kInch_mm, WithinAbs(20, kExact));
  CHECK_THAT(large.side_mm / kInch_mm, WithinAbs(12, kExact));
  // Just under and at 6 square feet.
  CHECK(hearth_extension(36 * kInch_mm, 23.99 * kInch_mm).front_mm == small.front_mm);
  CHECK(hearth_extension(36 * kInch_mm, 24 * kInch_mm + 1e-6).front_mm == large.front_mm);
}

TEST_CASE("a masonry heater asks for 36 in unless walls and channels are thick",
          "[clearance][source]") {
  // IRC R1002.5, read; check value 15.
  CHECK_THAT(masonry_heater_mm(8 * kInch_mm, 5 * kInch_mm) / kInch_mm, WithinAbs(4, kExact));
  CHECK_THAT(masonry_heater_mm(7.9 * kInch_mm, 5 * kInch_mm) / kInch_mm, WithinAbs(36, kExact));
  CHECK_THAT(masonry_heater_mm(8 * kInch_mm, 4.9 * kInch_mm) / kInch_mm, WithinAbs(36, kExact));
  CHECK_THAT(masonry_heater_mm({}, {}) / kInch_mm, WithinAbs(36, kExact));
}

TEST_CASE("an oven without a listing falls back on the larger published figure",
          "[clearance][source]") {
  // NFPA 211 (2016) 12.6, 36 in all round; IFGC 623, 18 in sides and back, 48 in above and front.
  for (const Fuel fuel : {Fuel::Gas, Fuel::Wood, Fuel::GasAndWood, Fuel::Pellet, Fuel::Charcoal}) {
    for (const Side side : {Side::Left, Side::Right, Side::Back}) {
      CHECK_THAT(*unlisted_mm(side, fuel) / kInch_mm, WithinAbs(36, kExact));
    }
    for (const Side side : {Side::Above, Side::Front}) {
      CHECK_THAT(*unlisted_mm(side, fuel) / kInch_mm, WithinAbs(48, kExact));
    }
    CHECK_FALSE(unlisted_mm(Side::Below, fuel));
  }
  for (int i = 0; i < 6; ++i) CHECK_FALSE(unlisted_mm(static_cast<Side>(i), Fuel::Electric));
}

TEST_CASE("a gas cylinder's space has the openings that manuals print", "[clearance][source]") {
  // Check value 16. ANSI Z21.58 wording, five makers: 20 lb 10 sq in, 30 lb 15 sq in, each.
  const auto square_in = [](double cm2) { return cm2 / kSquareInch_cm2; };
  CHECK_THAT(square_in(grill_vents(20 * kPound_kg).high_cm2), WithinAbs(10, kExact));
  CHECK_THAT(square_in(grill_vents(30 * kPound_kg).low_cm2), WithinAbs(15, kExact));
  CHECK_THAT(square_in(grill_vents(5 * kPound_kg).low_cm2), WithinAbs(10, kExact));  // never less
  CHECK(grill_vents(9).each);
  // Z21.97 wording: 20 lb 20 and 10 sq in, 30 lb 30 and 15, together.
  CHECK_THAT(square_in(fire_feature_vents(20 * kPound_kg).high_cm2), WithinAbs(20, kExact));
  CHECK_THAT(square_in(fire_feature_vents(20 * kPound_kg).low_cm2), WithinAbs(10, kExact));
  CHECK_THAT(square_in(fire_feature_vents(30 * kPound_kg).high_cm2), WithinAbs(30, kExact));
  CHECK_THAT(square_in(fire_feature_vents(30 * kPound_kg).low_cm2), WithinAbs(15, kExact));
  CHECK_FALSE(fire_feature_vents(9).each);
  // 1/2 sq in per lb is 7.11 cm2/kg; the 3.2 that several manuals print is wrong.
  CHECK_THAT(fire_feature_vents(1).low_cm2, WithinAbs(7.11, 0.005));
}
