// Bend arithmetic against published examples and tables.
#include "engine/sheet/bend.h"

#include <array>
#include <cmath>
#include <numbers>

#include "catch_amalgamated.hpp"

using namespace hs::sheet;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double kInch = 25.4;

// Published examples are in inches.
Metal inches(double thick, double radius, double k) { return {thick * kInch, radius * kInch, k}; }

}  // namespace

TEST_CASE("bend allowance comes out as published", "[sheet][source]") {
  // calcady.com, bend allowance (read): T .125, R .125, K .44, 90 degrees: 0.2827 in.
  CHECK_THAT(allowance_mm(inches(0.125, 0.125, 0.44), 90) / kInch, WithinAbs(0.28274, 1e-5));
  // A scraped page (read): T .024, R .020, K .33: 0.0438558984 in. It uses 0.017453 for pi/180,
  // which is all of the difference.
  const double exact = allowance_mm(inches(0.024, 0.020, 0.33), 90) / kInch;
  CHECK_THAT(exact, WithinAbs(0.0438566, 5e-8));
  CHECK_THAT(exact * 0.017453 / (std::numbers::pi / 180), WithinAbs(0.0438558984, 1e-9));
  // Computed by hand: (pi/2)(1.5 + 0.44 x 1.5) = 3.3929; 2 x 3 - 3.3929.
  const Metal metric{1.5, 1.5, 0.44};
  CHECK_THAT(allowance_mm(metric, 90), WithinAbs(3.3929, 1e-4));
  CHECK_THAT(deduction_mm(metric, 90), WithinAbs(2.6071, 1e-4));
}

TEST_CASE("setback is the airframe handbook's", "[sheet][source]") {
  // FAA airframe handbook vol. 1, U-channel (read): R .16, T .040: 0.200 in.
  CHECK_THAT(setback_mm(inches(0.040, 0.16, 0.45), 90) / kInch, WithinAbs(0.200, 1e-12));
  CHECK_THAT(setback_mm(inches(0.040, 0.16, 0.45), 60) / kInch,
             WithinAbs(0.2 / std::sqrt(3.0), 1e-12));
}

TEST_CASE("the aircraft shops' figures are a K of about 0.447", "[sheet][source]") {
  // sheetmetalworkbook.com/90bends.htm (read): T .050, R .032: allowance .085, deduction .079.
  const double arc = shop_allowance_mm(0.050 * kInch, 0.032 * kInch, 90) / kInch;
  CHECK_THAT(arc, WithinAbs(0.08530, 1e-5));
  CHECK_THAT(arc, WithinAbs(0.085, 5e-4));
  const double deduct = 2 * (0.050 + 0.032) - arc;
  CHECK_THAT(deduct, WithinAbs(0.07870, 1e-5));
  CHECK_THAT(deduct, WithinAbs(0.079, 5e-4));
  // The same page: .740 + .420 + 1.050 + 1.000 with three bends is 2.973 in flat, its deduction
  // rounded to .079; 2.9739 with it unrounded.
  const double sum = 0.740 + 0.420 + 1.050 + 1.000;
  CHECK_THAT(sum - 3 * 0.079, WithinAbs(2.973, 1e-9));
  const std::array legs{0.740 * kInch, 0.420 * kInch, 1.050 * kInch, 1.000 * kInch};
  const double k = 0.0078 * 180 / std::numbers::pi;
  CHECK_THAT(k, WithinAbs(0.447, 5e-4));
  CHECK_THAT(sum - 3 * deduct, WithinAbs(2.9739, 1e-4));
  // By K the radius counts 0.017453 a degree, not the page's 0.01743: 0.0002 in over three bends.
  const double by_k = flat_mm(legs, inches(0.050, 0.032, k)) / kInch;
  CHECK_THAT(by_k - 270 * (std::numbers::pi / 180 - 0.01743) * 0.032, WithinAbs(2.9739, 1e-4));
  // Its exercises without answers: both ways of reckoning agree to a thousandth of an inch.
  const std::array<std::array<double, 2>, 3> exercises{
      {{0.063, 3.0 / 32}, {0.075, 1.0 / 8}, {0.048, 1.0 / 16}}};
  for (const auto& one : exercises) {
    CHECK_THAT(shop_allowance_mm(one[0] * kInch, one[1] * kInch, 90),
               WithinAbs(allowance_mm(inches(one[0], one[1], k), 90), 0.0254));
  }
}

TEST_CASE("the handbook's K for stainless, and bends by it", "[sheet][source]") {
  // Machinery's Handbook 26th ed., as tabulated on a page (second hand).
  const double radii[] = {0.030, 0.060, 0.090, 0.120, 0.188};
  const double heavy[] = {0.449, 0.446, 0.446, 0.446, 0.438};
  const double thin[] = {0.483, 0.479, 0.475, 0.475, 0.454};
  for (int i = 0; i < 5; ++i) {
    CHECK_THAT(handbook_k(0.078 * kInch, radii[i] * kInch).value_or(0), WithinAbs(heavy[i], 1e-9));
    CHECK_THAT(handbook_k(0.029 * kInch, radii[i] * kInch).value_or(0), WithinAbs(thin[i], 1e-9));
  }
  // Between the rows a K is between theirs; beyond them there is none.
  const double middle = handbook_k(0.0625 * kInch, 0.0625 * kInch).value_or(0);
  CHECK(middle > 0.446);
  CHECK(middle < 0.479);
  CHECK_FALSE(handbook_k(0.1 * kInch, 0.06 * kInch).has_value());
  CHECK_FALSE(handbook_k(0.05 * kInch, 0.02 * kInch).has_value());
  CHECK_FALSE(handbook_k(std::nan(""), 1).has_value());
  // Its first row at R .090 (computed): allowance 0.19602, deduction 0.13998 in.
  const Metal metal = inches(0.078, 0.090, 0.446);
  CHECK_THAT(allowance_mm(metal, 90) / kInch, WithinAbs(0.19602, 1e-5));
  CHECK_THAT(deduction_mm(metal, 90) / kInch, WithinAbs(0.13998, 1e-5));
}

TEST_CASE("two legs of sixteen gauge come to the length computed by hand", "[sheet]") {
  const Metal metal = inches(0.0625, 0.0625, 0.446);
  CHECK_THAT(deduction_mm(metal, 90) / kInch, WithinAbs(0.10804, 1e-5));
  const std::array legs{3 * kInch, 1 * kInch};
  CHECK_THAT(flat_mm(legs, metal) / kInch, WithinAbs(3.8920, 1e-4));
  CHECK(flat_mm({}, metal) == 0);
}

TEST_CASE("a gauge number names three thicknesses", "[sheet][source]") {
  // US standard gauge for stainless (read).
  const double stainless[] = {0.0781, 0.0625, 0.0500, 0.0375};
  for (int i = 0; i < 4; ++i) {
    const auto read = gauge_readings(14 + 2 * i);
    REQUIRE(read.has_value());
    CHECK_THAT(read->stainless_mm / kInch, WithinAbs(stainless[i], 1e-12));
    CHECK(read->aluminium_mm < read->carbon_steel_mm);
    CHECK(read->carbon_steel_mm < read->stainless_mm);
  }
  // mm of the same table (read): 1.984, 1.588, 1.270, 0.953.
  const double metric[] = {1.984, 1.588, 1.270, 0.953};
  for (int i = 0; i < 4; ++i) {
    CHECK_THAT(gauge_readings(14 + 2 * i)->stainless_mm, WithinAbs(metric[i], 6e-4));
  }
  // Charts in circulation that mix them up (read): 16 as 0.0508 is AWG, 14 as 0.0747 carbon steel.
  CHECK_THAT(gauge_readings(16)->aluminium_mm / kInch, WithinAbs(0.0508, 5e-5));
  CHECK_THAT(gauge_readings(14)->carbon_steel_mm / kInch, WithinAbs(0.0747, 1e-12));
  CHECK_FALSE(gauge_readings(15).has_value());
  CHECK(gauge_words(16, hs::Unit::Inch) ==
        "16 gauge is 0.0625 in in stainless, 0.0598 in carbon steel, 0.0508 in aluminium: order "
        "0.0625 in, not a gauge.");
  CHECK(gauge_words(16, hs::Unit::Mm).find("1.59 mm") != std::string::npos);
  CHECK(gauge_words(15, hs::Unit::Mm).empty());
  // A top ordered at 0.0508 in was read off the AWG chart; 0.0500 in is stainless of 18 gauge.
  CHECK(wrong_chart(0.0508 * kInch) == 16);
  CHECK(wrong_chart(0.0747 * kInch) == 14);
  CHECK_FALSE(wrong_chart(0.0500 * kInch).has_value());
  CHECK_FALSE(wrong_chart(1.5).has_value());
}

TEST_CASE("a hem of half-thickness neutral line adds the trade's figure", "[sheet][source]") {
  // Trade figure (from memory): a closed hem takes 0.43 T from its return.
  const Metal metal{1.5, 1.5, 0.5};
  CHECK_THAT((9 - hem_mm(metal, 9, 0)) / 1.5, WithinAbs(0.43, 0.005));
  // An open hem by the same rule, by hand: gap 3, r 1.5: 9 + pi (1.5 + 0.75) - 2 x 3.
  CHECK_THAT(hem_mm(metal, 9, 3), WithinAbs(9 + std::numbers::pi * 2.25 - 6, 1e-12));
}

TEST_CASE("stainless weighs and grows as its data sheets say", "[sheet][source]") {
  // 16 gauge: 2.60 lb/ft2 (gauge chart, read), 12.7 kg/m2 at 8.0 g/cm3.
  CHECK_THAT(mass_kg(1e6, 0.0625 * kInch), WithinAbs(12.7, 0.005));
  const double lb_ft2 =
      mass_kg(12 * 12 * kInch * kInch, 0.0625 * kInch, 0.289 * 27.6799) / 0.45359237;
  CHECK_THAT(lb_ft2, WithinRel(2.601, 0.005));
  // The chart's 20.808 lb/ft2 for half an inch.
  const double half = mass_kg(12 * 12 * kInch * kInch, 0.5 * kInch, 0.289 * 27.6799) / 0.45359237;
  CHECK_THAT(half, WithinRel(20.808, 0.0005));
  // 304, 60 in, 100 F warmer at 9.61e-6 /F: 0.0577 in.
  CHECK_THAT(growth_mm(60, 100, 9.61e-6), WithinAbs(0.0577, 1e-4));
  CHECK_THAT(growth_mm(60, 100 / 1.8), WithinAbs(0.0577, 1e-4));
}
