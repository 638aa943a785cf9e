#include "engine/cook/percentiles.h"

#include <cmath>

#include "catch_amalgamated.hpp"
#include "tests/cook/quantiles.h"

namespace {

using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using namespace hs::cook;
using hs::config::Build;
using hs::test::lms_value;
using hs::test::normal_percentile;
using hs::test::normal_quantile;

}  // namespace

TEST_CASE("normal quantiles are the printed ones", "[cook][source]") {
  // Standard normal table: z of 95 %, 97.5 %, 99 %, 99.9 %, to six decimals.
  constexpr double kPrinted = 5e-7;
  CHECK_THAT(normal_quantile(0.95), WithinAbs(1.644854, kPrinted));
  CHECK_THAT(normal_quantile(0.975), WithinAbs(1.959964, kPrinted));
  CHECK_THAT(normal_quantile(0.99), WithinAbs(2.326348, kPrinted));
  CHECK_THAT(normal_quantile(0.001), WithinAbs(-3.090232, kPrinted));
  CHECK_THAT(normal_quantile(0.5), WithinAbs(0, 1e-12));
  CHECK(std::isinf(normal_quantile(0)));
  CHECK(std::isinf(normal_quantile(1)));
}

TEST_CASE("share below a normal quantile is the share asked for", "[cook][law]") {
  for (double z = -6.3; z <= 6.3; z += 0.01) {
    const double share = normal_share_below(z);
    CAPTURE(z);
    // Above 0 the share itself is rounded near 1, which the steep quantile magnifies.
    const double rounding = z > 0 ? 1e-15 * std::exp(z * z / 2) : 0;
    CHECK_THAT(normal_quantile(share), WithinAbs(z, 1e-12 + 3 * rounding));
  }
  for (double share = 1e-10; share < 0.999; share = share * 1.07) {
    CHECK_THAT(normal_share_below(normal_quantile(share)), WithinRel(share, 1e-11));
  }
}

TEST_CASE("normal percentiles give the published examples", "[cook][source]") {
  // British women's eye height, mean 1505, SD 61: printed P5 1405 and P95 1610, rounded to 5
  // (Pheasant, Bodyspace, teaching reproduction).
  CHECK_THAT(normal_percentile(1505, 61, 5), WithinAbs(1405, 5));
  CHECK_THAT(normal_percentile(1505, 61, 95), WithinAbs(1605, 5));
  // Doorway for 99 % of men, mean 175.58 cm, SD 6.68: 191.1 cm.
  CHECK_THAT(normal_percentile(175.58, 6.68, 99), WithinAbs(191.1, 0.1));
  // Women, mean 63.6 in, SD 5: 63, 60 and 62.5 in are z -0.12, -0.72, -0.22 and 45.2, 23.6 and
  // 41.3 % (printed z to two decimals, percent to one).
  CHECK_THAT((60 - 63.6) / 5.0, WithinAbs(-0.72, 0.01));
  CHECK_THAT(100 * normal_share_below(-0.12), WithinAbs(45.2, 0.1));
  CHECK_THAT(100 * normal_share_below(-0.72), WithinAbs(23.6, 0.1));
  CHECK_THAT(100 * normal_share_below(-0.22), WithinAbs(41.3, 0.1));
}

TEST_CASE("LMS gives CDC's printed percentiles for boys of 72.5 months", "[cook][source]") {
  // CDC 2000 stature-for-age file, cm there, mm here.
  constexpr double kCheck_mm = 0.1;
  const Lms printed{1.137442868, 1156.608862, 0.043673359};
  for (const Lms& lms : {printed, cdc_stature(ChildSex::Boy, 72.5 / 12)}) {
    CHECK_THAT(lms_value(lms, normal_quantile(0.05)), WithinAbs(1073.1, kCheck_mm));
    CHECK_THAT(lms_value(lms, 0), WithinAbs(1156.6, kCheck_mm));
    CHECK_THAT(lms_value(lms, normal_quantile(0.95)), WithinAbs(1239.3, kCheck_mm));
  }
}

TEST_CASE("CDC medians are the printed ones at every age from 3 to 17", "[cook][source]") {
  // CDC 2000, P50 in cm at age and half a month: boys, girls. Printed to 1 mm.
  constexpr double kMedians[][2] = {{95.3, 94.2},   {102.5, 101.0}, {109.2, 108.0}, {115.7, 115.0},
                                    {122.0, 121.8}, {128.1, 127.8}, {133.7, 133.1}, {138.8, 138.2},
                                    {143.7, 144.3}, {149.3, 151.5}, {156.4, 157.3}, {164.1, 160.5},
                                    {170.1, 161.9}, {173.6, 162.6}, {175.3, 162.9}};
  double age = 3 + 0.5 / 12;
  for (const auto& [boys_cm, girls_cm] : kMedians) {
    CAPTURE(age);
    CHECK_THAT(cdc_stature(ChildSex::Boy, age).m, WithinAbs(10 * boys_cm, 0.5 + 1e-6));
    CHECK_THAT(cdc_stature(ChildSex::Girl, age).m, WithinAbs(10 * girls_cm, 0.5 + 1e-6));
    age += 1;
  }
}

TEST_CASE("LMS z and value undo each other and pass smoothly through L = 0", "[cook][law]") {
  for (const double l : {-1.3, -1e-9, 0.0, 1e-9, 0.5, 1.0, 2.4}) {
    const Lms lms{l, 1400, 0.045};
    for (double z = -3; z <= 3; z += 0.25) {
      CAPTURE(l, z);
      CHECK_THAT(lms_z(lms, lms_value(lms, z)), WithinAbs(z, 1e-9));
    }
  }
  const double at_zero = lms_value({0, 1400, 0.045}, 1.5);
  CHECK_THAT(lms_value({1e-9, 1400, 0.045}, 1.5), WithinAbs(at_zero, 1e-5));
  // The formula as printed: z = ((x/M)^L - 1) / (L S).
  CHECK_THAT(
      lms_z({1.137442868, 1156.608862, 0.043673359}, 1200),
      WithinAbs((std::pow(1200 / 1156.608862, 1.137442868) - 1) / (1.137442868 * 0.043673359),
                1e-9));
}

TEST_CASE("the age of the median child undoes the median of that age", "[cook][law]") {
  for (double age = 3; age <= 17; age += 0.05) {
    CAPTURE(age);
    CHECK_THAT(age_at_median(child_median_stature(age)), WithinAbs(age, 1e-6));
  }
  CHECK(age_at_median(500) == 3);
  CHECK(age_at_median(2300) == 17);
}

TEST_CASE("survey percentiles meet the survey's own sample percentiles", "[cook][source]") {
  // US Army survey 2012, sample P5, P50 and P95 of stature; a normal curve is within 2.
  CHECK_THAT(survey_percentile(Build::AdultA, 1648), WithinAbs(5, 2));
  CHECK_THAT(survey_percentile(Build::AdultA, 1755), WithinAbs(50, 2));
  CHECK_THAT(survey_percentile(Build::AdultA, 1870), WithinAbs(95, 2));
  CHECK_THAT(survey_percentile(Build::AdultB, 1525), WithinAbs(5, 2));
  CHECK_THAT(survey_percentile(Build::AdultB, 1626), WithinAbs(50, 2));
  CHECK_THAT(survey_percentile(Build::AdultB, 1740), WithinAbs(95, 2));
  const double both = survey_percentile(Build::Adult, 1700);
  CHECK(both > survey_percentile(Build::AdultA, 1700));
  CHECK(both < survey_percentile(Build::AdultB, 1700));
}

TEST_CASE("eye percentiles meet the survey's own sample percentiles", "[cook][source]") {
  // US Army survey 2012, sample P5, P50 and P95 of standing eye height; a normal curve is within 2.
  CHECK_THAT(survey_eye_percentile(Build::AdultA, 1536), WithinAbs(5, 2));
  CHECK_THAT(survey_eye_percentile(Build::AdultA, 1640), WithinAbs(50, 2));
  CHECK_THAT(survey_eye_percentile(Build::AdultA, 1753), WithinAbs(95, 2));
  CHECK_THAT(survey_eye_percentile(Build::AdultB, 1421), WithinAbs(5, 2));
  CHECK_THAT(survey_eye_percentile(Build::AdultB, 1517), WithinAbs(50, 2));
  CHECK_THAT(survey_eye_percentile(Build::AdultB, 1626), WithinAbs(95, 2));
}

TEST_CASE("a cook's standing is told only where something is known", "[cook]") {
  hs::config::Cook cook{.name = "A", .stature_mm = 1755, .build = Build::AdultA};
  CHECK(standing_of(cook).stature_percent == survey_percentile(Build::AdultA, 1755));
  CHECK_FALSE(standing_of(cook).eye_percent);  // an estimated eye says what the stature says
  cook.eye_height_mm = 1665;
  cook.shoe_mm = 25;
  CHECK(standing_of(cook).eye_percent == survey_eye_percentile(Build::AdultA, 1640));
  cook.seated = true;
  CHECK_FALSE(standing_of(cook).eye_percent);
  cook = {.name = "A", .stature_mm = 1156.6, .build = Build::Child};
  CHECK_FALSE(standing_of(cook).stature_percent);  // its age would be taken from its stature
  cook.age_years = 72.5 / 12;
  const ChildStature child = child_stature_check(1156.6, 72.5 / 12);
  CHECK(standing_of(cook).stature_percent == 0.5 * (child.boys_percent + child.girls_percent));
}

TEST_CASE("a child's stature is questioned only when neither boys nor girls are like it",
          "[cook][source]") {
  // CDC 2000, boys of 72.5 months: P5 107.31, P50 115.66, P95 123.93 cm.
  const ChildStature median = child_stature_check(1156.6, 72.5 / 12);
  CHECK_THAT(median.boys_percent, WithinAbs(50, 0.1));
  CHECK(median.girls_percent > 50);  // girls of that age are shorter
  CHECK_THAT(child_stature_check(1073.1, 72.5 / 12).boys_percent, WithinAbs(5, 0.1));
  CHECK_THAT(child_stature_check(1239.3, 72.5 / 12).boys_percent, WithinAbs(95, 0.1));
  CHECK_FALSE(median.unusual);
  CHECK_FALSE(child_stature_check(1073.1, 72.5 / 12).unusual);
  CHECK(child_stature_check(1000, 72.5 / 12).unusual);
  CHECK(child_stature_check(1350, 72.5 / 12).unusual);
  // 1860 mm at 17: ordinary for a boy (P95 is 187 cm), beyond P99 for a girl.
  const ChildStature tall = child_stature_check(1860, 17);
  CHECK(tall.girls_percent > 99);
  CHECK(tall.boys_percent < 99);
  CHECK_FALSE(tall.unusual);
}
